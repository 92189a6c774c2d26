import { INK, SOFT_INK } from './palette.ts';
import { BOLD, bytesOf, newPaper, type Paper, PLAIN, POINTS } from './paper.ts';
import type { PlanSheetRecipe, SheetSection } from './plan-sheet-recipe.ts';
import {
  HEAD_HEIGHT,
  headRow,
  rowHeight,
  type TablePlace,
  tableRow,
  totalRow,
  wordsHeight,
} from './plan-table.ts';

/** Sheets in inches: letter, and A4 of ISO 216. */
const SHEETS = {
  letter: { width: 8.5, length: 11 },
  a4: { width: 210 / 25.4, length: 297 / 25.4 },
} as const;

/** Left free along every edge, points; the foot stands in it. */
const MARGIN = 0.7 * POINTS;

/** Something that is not cut by the end of a page. */
interface Block {
  readonly height: number;
  /** So much of what follows stays on the same page with it. */
  readonly keeps?: number;
  /** What is written again where a page begins with this. */
  readonly again?: Block;
  write(y: number): void;
}

/**
 * The bytes of a PDF with a plan or a packing list on it, at true size on letter or A4. A row is never cut by
 * the end of a page, and a table that goes on has its titles again.
 */
export async function drawPlanSheet(recipe: PlanSheetRecipe): Promise<Uint8Array> {
  const size = SHEETS[recipe.sheet];
  const paper = newPaper({ title: recipe.title, size });
  const place = { left: MARGIN, width: size.width * POINTS - 2 * MARGIN };
  const bottom = size.length * POINTS - MARGIN;
  paper.addPage();
  const pages = onPages(blocksOf(paper, recipe, place), bottom - MARGIN);
  pages.forEach((blocks, i) => {
    if (i > 0) paper.addPage();
    let y = MARGIN;
    for (const block of blocks) {
      block.write(y);
      y += block.height;
    }
    foot(paper, recipe, place, bottom + 14, `page ${i + 1} of ${pages.length}`);
  });
  return bytesOf(paper);
}

/** The blocks shared out among pages of a height. */
function onPages(blocks: readonly Block[], height: number): Block[][] {
  const pages: Block[][] = [[]];
  let left = height;
  for (const block of blocks) {
    if (block.height + (block.keeps ?? 0) > left && pages.at(-1)?.length !== 0) {
      const again = block.again ? [block.again] : [];
      pages.push([...again]);
      left = height - (block.again?.height ?? 0);
    }
    pages.at(-1)?.push(block);
    left -= block.height;
  }
  return pages;
}

function blocksOf(paper: Paper, recipe: PlanSheetRecipe, place: TablePlace): Block[] {
  const { title, under, lines, sections, notes } = recipe;
  const words = (text: string, look: Look) => wordBlock(paper, text, look, place);
  return [
    words(title, { font: BOLD, size: 20, after: 4 }),
    words(under, { font: PLAIN, size: 12, after: 10 }),
    ...lines.map((line) => words(line, { font: PLAIN, size: 10, after: 3 })),
    ...sections.flatMap((section) => sectionBlocks(paper, section, place)),
    gap(8),
    ...notes.map((note) => words(note, { font: PLAIN, size: 8.5, after: 3, colour: SOFT_INK })),
  ];
}

interface Look {
  readonly font: string;
  readonly size: number;
  readonly after: number;
  readonly colour?: string;
}

function wordBlock(paper: Paper, text: string, look: Look, { left, width }: TablePlace): Block {
  const { font, size, after, colour = INK } = look;
  const height = wordsHeight(paper.font(font).fontSize(size), text, size, width) + after;
  return {
    height,
    write: (y) => {
      if (text !== '') paper.font(font).fontSize(size).fillColor(colour).text(text, left, y, { width });
    },
  };
}

const gap = (height: number): Block => ({ height, write: () => {} });

function sectionBlocks(paper: Paper, section: SheetSection, place: TablePlace): Block[] {
  const head: Block = { height: HEAD_HEIGHT, write: (y) => headRow(paper, section, place, y) };
  const rowOf =
    (draw: typeof tableRow) =>
    (row: readonly string[]): Block => {
      const height = rowHeight(paper, section, row, place);
      return { height, again: head, write: (y) => draw(paper, section, row, place, { y, height }) };
    };
  const rows = section.rows.map(rowOf(tableRow));
  const heading = wordBlock(paper, section.title, { font: BOLD, size: 12, after: 5 }, place);
  const first = rows[0]?.height ?? 0;
  return [
    gap(16),
    { ...heading, keeps: HEAD_HEIGHT + first },
    { ...head, keeps: first },
    ...rows,
    ...(section.total ? [section.total].map(rowOf(totalRow)) : []),
  ];
}

function foot(
  paper: Paper,
  { foot: said, title }: PlanSheetRecipe,
  place: TablePlace,
  y: number,
  page: string,
): void {
  const { left, width } = place;
  paper.font(PLAIN).fontSize(8).fillColor(SOFT_INK);
  paper.text(`${said}  ·  ${shortened(title)}`, left, y, { lineBreak: false });
  paper.text(page, left, y, { width, align: 'right', lineBreak: false });
}

/** A title for the foot of a page. */
const shortened = (title: string): string =>
  [...title].length > 50 ? `${[...title].slice(0, 49).join('')}…` : title;
