import type { ClothSize } from '../calculator/fabric/plan.ts';
import { BAND, type TemplateSheet, templateSheet } from '../calculator/fabric/template-sheet.ts';
import { cutPatch } from '../calculator/shapes/cut.ts';
import type { CornerStyle, Dimensions, ShapeName } from '../calculator/shapes/shape.ts';
import { INCHES } from '../measure/length.ts';
import { widthOf, wrapped } from './lettering.ts';
import { INK, SOFT_INK } from './palette.ts';
import { BOLD, bytesOf, newPaper, type Paper, PLAIN, POINTS } from './paper.ts';
import type { Scale } from './path.ts';
import { template } from './template.ts';

/** Templates to print at true size. Lengths in inches. */
export interface TemplatesRecipe {
  readonly draw: 'templates';
  readonly title: string;
  /** What a template is marked with: the first of these that it has room for. */
  readonly names: readonly string[];
  readonly shape: ShapeName;
  readonly dimensions: Dimensions;
  readonly seam: number;
  readonly cornerStyle: CornerStyle;
  readonly sheet: ClothSize;
  readonly margin: number;
  /** How many sheets the file has. */
  readonly pages: number;
  /** The words on each sheet under the title, `{page}` standing for its number. */
  readonly words: readonly string[];
  /** False leaves the lines readable in the file. */
  readonly compress?: boolean;
}

/** The bytes of the PDF: every line in vector form, one inch of the patch one inch (72 points) of the paper. */
export async function drawTemplates(recipe: TemplatesRecipe): Promise<Uint8Array> {
  const { title, shape, dimensions, seam, cornerStyle, sheet, margin, pages, compress = true } = recipe;
  const laid = templateSheet(cutPatch(shape, dimensions, seam, cornerStyle), sheet, margin);
  if (!laid) throw new Error('the templates fitted the sheet when they were asked for');
  const paper = newPaper({ title, size: sheet, compress });
  for (let page = 1; page <= pages; page++) {
    paper.addPage();
    templates(paper, laid, recipe.names);
    band(
      paper,
      laid,
      title,
      recipe.words.map((line) => line.replace('{page}', String(page))),
    );
  }
  return bytesOf(paper);
}

function templates(paper: Paper, { sheet, plan, up }: TemplateSheet, names: readonly string[]): void {
  const scale: Scale = { perInch: POINTS, x: 0, y: (sheet.length - up) * POINTS, down: -1 };
  for (const place of plan.placements()) template(paper, plan.patch, place, scale, names);
}

/** The bars by which a print is checked, each its true length. */
const BARS = [
  { words: '2 in', length: 2 },
  { words: '5 cm', length: 50 * INCHES.mm },
] as const;

const BAR_GAP = 0.3 * POINTS;
const TICK = 5;
const TITLE_SIZE = 9;
const SIZE = 7.5;

/** The words and the check bars; along the side of the sheet they are turned a quarter. */
function band(
  paper: Paper,
  { sheet, margin, band: where }: TemplateSheet,
  title: string,
  words: readonly string[],
): void {
  const edge = margin * POINTS;
  const [width, length] = [sheet.width * POINTS, sheet.length * POINTS];
  paper.save();
  if (where === 'foot') paper.translate(edge, length - edge - BAND * POINTS);
  else paper.translate(width - edge - BAND * POINTS, length - edge).rotate(-90);
  const along = (where === 'foot' ? width : length) - 2 * edge;
  const barsFrom =
    along - BARS.reduce((sum, bar) => sum + bar.length * POINTS, 0) - BAR_GAP * (BARS.length - 1);
  lines(paper, title, words, barsFrom - BAR_GAP);
  bars(paper, barsFrom);
  paper.restore();
}

function lines(paper: Paper, title: string, words: readonly string[], room: number): void {
  const [first = ''] = wrapped(title, TITLE_SIZE, room, { bold: true, most: 1 });
  paper.font(BOLD).fontSize(TITLE_SIZE).fillColor(INK).text(first, 0, 6, { lineBreak: false });
  paper.font(PLAIN).fontSize(SIZE).fillColor(SOFT_INK);
  words.forEach((line, i) => {
    const [shown = ''] = wrapped(line, SIZE, room, { most: 1 });
    paper.text(shown, 0, 20 + i * 11, { lineBreak: false });
  });
}

function bars(paper: Paper, from: number): void {
  const y = BAND * POINTS - 12;
  let x = from;
  paper.font(PLAIN).fontSize(SIZE).fillColor(INK).strokeColor(INK);
  for (const { words, length } of BARS) {
    const end = x + length * POINTS;
    paper.lineWidth(1).moveTo(x, y).lineTo(end, y).stroke();
    paper.lineWidth(0.5);
    for (const tick of [x, end])
      paper
        .moveTo(tick, y - TICK)
        .lineTo(tick, y + TICK)
        .stroke();
    paper.text(words, (x + end - widthOf(words, SIZE)) / 2, y - 14, { lineBreak: false });
    x = end + BAR_GAP;
  }
}
