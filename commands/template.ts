import { type TemplateSheet, templateSheet } from '../src/calculator/fabric/template-sheet.ts';
import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import type { CutPatch } from '../src/calculator/shapes/shape.ts';
import { type Command, form, type Here } from '../src/chat/command.ts';
import { alsoNamed, bare, otherwise, usually } from '../src/chat/option.ts';
import { choice, length, whole } from '../src/chat/option-kinds.ts';
import { count, type Picture, type Reply, reply } from '../src/chat/reply.ts';
import { PIECES } from '../src/measure/cloth.ts';
import { wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import type { TemplatesRecipe } from '../src/pictures/templates.ts';
import { assumedNote } from './assumed.ts';
import { bladeCaution } from './cautions.ts';
import { type AskedPatch, askedPatch, titled } from './patch.ts';
import { patchOptions } from './patch-options.ts';
import { fileName } from './pictures.ts';
import { sheetFor } from './sheet.ts';

const SHEETS = {
  letter: { title: 'letter', size: sizeOf('letter') },
  a4: { title: 'A4', size: sizeOf('a4') },
} as const;

function sizeOf(name: string) {
  const piece = PIECES.find((one) => one.name === name);
  return { width: piece?.width ?? 0, length: piece?.length ?? 0 };
}

/** Most home printers leave this much blank at the edge: common practice, no source. */
const PRINTERS_MARGIN = 1 / 4;

/** More sheets than this are one page, printed again and again. */
const MOST_PAGES = 60;

const template: Command = {
  name: 'template',
  summary: 'Templates and papers to print at true size',
  forms: [
    form({
      name: '',
      summary: 'A sheet of templates to print at true size, with both lines; with seam:0 papers only',
      examples: [
        '/template hexagon 1in',
        '/template hexagon 1in seam:0in papers:120 sheet:a4',
        '/template kite 2in seam:3/8in corners:blunt',
      ],
      options: {
        papers: bare(
          alsoNamed(
            whole('How many are needed', 1, 100_000, '120'),
            'paper',
            'pieces',
            'patches',
            'templates',
          ),
        ),
        ...patchOptions,
        sheet: usually(
          bare(
            choice('The paper', [
              { name: 'letter', title: 'letter, 8½ x 11 in', words: ['letter sheet', 'letter paper'] },
              { name: 'a4', title: 'A4, 210 x 297 mm', words: ['a4 sheet', 'a4 paper'] },
            ]),
          ),
          'letter, or a4 where you measure in cm or mm',
        ),
        margin: otherwise(
          length('Left free along every edge for the printer', 0, 3 / 4, '1/4in'),
          PRINTERS_MARGIN,
        ),
      },
      run(values, here) {
        const sheet = values.sheet ?? sheetFor(here);
        const { title, size } = SHEETS[sheet];
        const laid = (patch: CutPatch) => templateSheet(patch, size, values.margin);
        const asked = askedPatch(values, here, (patch) => {
          const onSheet = laid(patch)?.plan.count ?? 0;
          return onSheet === 0 ? 'too large for the sheet' : `${grouped(onSheet)} on a sheet`;
        });
        if ('asks' in asked) return asked.asks;
        if (!asked.ok) return asked;
        const found = laid(asked.value.patch);
        if (!found) return tooLarge(asked.value, title, here);
        const assumed = [...asked.value.assumed, ...(here.given.has('sheet') ? [] : [`${title} paper`])];
        return answer(asked.value, found, { here, title, papers: values.papers, assumed });
      },
    }),
  ],
};

export default template;

function tooLarge({ patch, shape }: AskedPatch, sheet: string, { say }: Here) {
  const { height = 0, width = 0 } = patch.cut.measures;
  return wrong('patch-wider-than-cloth', {
    patch: `${CATALOGUE[shape].title} cut ${say.size(width, height)}`,
    cloth: `a ${sheet} sheet with room for the check bars`,
  });
}

interface Told {
  readonly here: Here;
  /** What the paper is called. */
  readonly title: string;
  readonly papers: number | undefined;
  readonly assumed: readonly string[];
}

function answer(asked: AskedPatch, laid: TemplateSheet, told: Told): Reply {
  const { here, papers, title } = told;
  const perSheet = laid.plan.count;
  const sheets = papers === undefined ? 1 : Math.ceil(papers / perSheet);
  const { seam } = asked.patch;
  const name = `${seam > 0 ? 'Templates' : 'Papers'}: ${titled(asked, here).replace(/^./, (c) => c.toLowerCase())}`;
  const lines =
    seam > 0
      ? `Solid line: cut. Dashed line: sew, ${here.say.plain(seam)} inside.`
      : 'The line is the finished edge, nothing added.';
  return reply({
    title: name,
    lines: [
      papers === undefined
        ? `${grouped(perSheet)} on ${title === 'A4' ? 'an' : 'a'} ${title} sheet.`
        : `${many(sheets, 'sheet', 'sheets')} for ${grouped(papers)}, ${grouped(perSheet)} on each.`,
      lines,
      'Print at 100 %, then measure the two bars.',
    ],
    figures: { perSheet: count(perSheet), ...(papers === undefined ? {} : { sheets: count(sheets) }) },
    notes: assumedNote(told.assumed),
    cautions: bladeCaution(here),
    choices: asked.otherwise,
    pictures: [pdf(asked, laid, { ...told, name, lines, sheets })],
  });
}

interface Printed extends Told {
  readonly name: string;
  readonly lines: string;
  readonly sheets: number;
}

function pdf(
  { patch, shape, said }: AskedPatch,
  { sheet, margin, plan }: TemplateSheet,
  printed: Printed,
): Picture {
  const { here, name, lines, sheets, title } = printed;
  const { dimensions, seam, cornerStyle } = patch;
  const again = sheets > MOST_PAGES;
  const size =
    said.second === undefined ? here.say.plain(said.value) : here.say.size(said.value, said.second);
  const page = again ? `Print this sheet ${grouped(sheets)} times` : `Page {page} of ${sheets}`;
  const marks = seam > 0 ? 'Dots mark the sewing corners, an arrow the grain.' : 'An arrow marks the grain.';
  const of: TemplatesRecipe = {
    draw: 'templates',
    title: name,
    names: [`${CATALOGUE[shape].title}, ${size}`, size],
    ...{ shape, dimensions, seam, cornerStyle, sheet, margin },
    pages: again ? 1 : sheets,
    words: [`Print at 100 %. ${lines}`, `${page}, ${grouped(plan.count)} on each sheet.`],
  };
  return {
    name: fileName(name, 'pdf', title),
    alt: `${name}, at true size on ${title} paper, ${grouped(plan.count)} on a sheet${sheets > 1 ? `, ${grouped(sheets)} sheets` : ''}. ${lines} ${marks} A 2-inch and a 5-cm bar show whether it is printed at 100 %.`,
    of: { ...of },
  };
}
