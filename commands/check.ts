import {
  checkRow,
  type RowAlong,
  type RowCheck,
  type RowEnds,
  rowsOf,
} from '../src/calculator/finishing/row-check.ts';
import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import { type Command, form, type Here } from '../src/chat/command.ts';
import { alsoNamed, bare, otherwise, required, usually } from '../src/chat/option.ts';
import { choice, LONGEST, length } from '../src/chat/option-kinds.ts';
import { count, inches, reply } from '../src/chat/reply.ts';
import { wrong } from '../src/measure/result.ts';
import { decimal, fraction, grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import { assumedNote, whose } from './assumed.ts';
import { measuredRow, rowCount } from './check-options.ts';
import { askedEdge, edgeOptions } from './edge.ts';
import { seamOf } from './patch.ts';
import { shapeChoices } from './patch-options.ts';

const checkOptions = {
  row: required(bare(rowCount)),
  measured: usually(
    bare(alsoNamed(measuredRow, 'measure', 'measures')),
    'none: only what the row should be is told',
  ),
  short: length('In place of measured: how much less than it should be', 1 / 64, LONGEST, '1/2in'),
  over: length('In place of measured: how much more than it should be', 1 / 64, LONGEST, '1/2in'),
  shape: otherwise(bare(choice('The shape of the patches', shapeChoices)), 'hexagon'),
  ...edgeOptions,
  along: bare(
    choice('Which way the row runs', [
      { name: 'flats', title: 'flat to flat', words: ['flat to flat', 'across the flats', 'side to side'] },
      { name: 'corners', title: 'point to point', words: ['point to point', 'corner to corner'] },
      { name: 'edge', title: 'side along side', words: ['side along side', 'along the side'] },
    ]),
  ),
  ends: otherwise(
    bare(
      choice('Where the tape was laid', [
        { name: 'sewn', title: 'between sewn edges', words: ['finished'] },
        { name: 'raw', title: 'raw edge to raw edge', words: ['raw edges', 'raw edge to raw edge'] },
      ]),
    ),
    'sewn',
  ),
  seam: usually(length('Seam allowance', 1 / 16, 2, '1/4in'), 'what /me and /guild keep, or 1/4in'),
};

const check: Command = {
  name: 'check',
  summary: 'A sewn row that came out wrong: what it should be, and which seam to take',
  forms: [
    form({
      name: '',
      summary: 'What a row of patches should measure, the error in each patch, and what to sew differently',
      examples: [
        '/check 20 in a row came out 33 3/4in',
        '/check row:20 measured:33 3/4in size:1in shape:hexagon along:flats',
        '/check row:10 measured:14 7/8in size:1in along:corners',
        '/check row:20 size:1in',
      ],
      options: checkOptions,
      run(values, here) {
        const { shape, row, ends } = values;
        const said = MEASURES.filter((name) => values[name] !== undefined);
        if (said.length > 1) return wrong('one-of-these', { got: said.join(', ') });
        const asked = askedEdge(values, here, shape === 'diamond' ? 'diamond' : 'hexagon');
        if ('asks' in asked) return asked.asks;
        if (!asked.ok) return asked;
        const ways = rowsOf(shape);
        const along = values.along ?? ways[0];
        const edge = asked.value.edge;
        const seam = seamOf(values, here);
        const of = { shape, row, ends, edge, seam };
        const should = along && checkRow({ ...of, along, measured: edge });
        if (!should)
          return along && ways.length > 0
            ? wrong('row-not-that-way', { shape: CATALOGUE[shape].titles, known: ways })
            : wrong('row-not-of-shape', { shape: CATALOGUE[shape].titles });
        const measured = measuredOf(values, should.expected);
        if (measured !== undefined && measured <= 0)
          return wrong('row-all-short', {
            short: here.say.plain(values.short ?? 0),
            expected: here.say.plain(should.expected),
          });
        const found = measured === undefined ? should : (checkRow({ ...of, along, measured }) ?? should);
        const told: Told = { here, found, row, measured, seam, ends, along: along as RowAlong };
        return reply({
          title: `${many(row, CATALOGUE[shape].title, CATALOGUE[shape].titles)} in a row, ${WAY[along as RowAlong]}, ${here.say.plain(edge)} side`,
          lines: [shouldBe(told), ...(measured === undefined ? [] : whereFrom(told))],
          figures: measured === undefined ? shouldFigures(found) : figuresOf(found),
          notes: [
            `Ten of them should be ${here.say.length(found.tenPatches)}: measure ten, not one.`,
            ...assumedNote([
              ...(here.given.has('shape') ? [] : ['hexagons']),
              ...asked.value.assumed,
              ...(values.along === undefined ? [`rows ${WAY[along as RowAlong]}`] : []),
              ...(here.given.has('ends') ? [] : ['measured between sewn edges']),
              ...(here.given.has('seam')
                ? []
                : [`${whose(here.defaults.seam.from)}${here.say.plain(seam)} seam`]),
            ]),
          ],
          choices: asked.value.otherwise,
        });
      },
    }),
  ],
};

export default check;

/** The ways to say what a row measures. */
const MEASURES = ['measured', 'short', 'over'] as const;

type Measures = { readonly [Name in (typeof MEASURES)[number]]?: number };

/** What the row measures: as it was said, or by how much it is out. */
function measuredOf({ measured, short, over }: Measures, expected: number): number | undefined {
  if (short !== undefined) return expected - short;
  return over === undefined ? measured : expected + over;
}

const WAY: Readonly<Record<RowAlong, string>> = {
  flats: 'flat to flat',
  corners: 'point to point',
  edge: 'side along side',
};

interface Told {
  readonly here: Here;
  readonly found: RowCheck;
  readonly row: number;
  readonly measured: number | undefined;
  readonly seam: number;
  readonly ends: RowEnds;
  readonly along: RowAlong;
}

/** Less than this, inches over the whole row, is how the tape lay. */
const TAPE = 1 / 16;

function shouldBe({ found: { expected, error }, measured, here: { say } }: Told): string {
  const off = Math.abs(error);
  if (measured === undefined) return `It should be ${say.length(expected)}.`;
  if (off < TAPE) return `It should be ${say.length(expected)}, and it is: nothing to change.`;
  return `It should be ${say.length(expected)}; ${say.plain(measured)} is ${say.length(off)} ${error < 0 ? 'short' : 'long'}.`;
}

function whereFrom(told: Told): string[] {
  const { found, here, row } = told;
  if (Math.abs(found.error) < TAPE) return [];
  if (found.miscounted !== 0) {
    const off = Math.abs(found.miscounted);
    return [
      `That is ${many(off, 'whole patch', 'whole patches')}: count again.`,
      `Perhaps the row has ${grouped(row + found.miscounted)}.`,
    ];
  }
  const small = found.error < 0;
  return [
    `Each patch is ${fine(Math.abs(found.perPatch), here)} too ${small ? 'small' : 'large'} that way.`,
    ...seamWords(told, small),
    `Or the patches are cut ${small ? 'small' : 'large'}: side ${fine(found.edgeSewn, here)} as sewn. Lay one on its template first.`,
  ];
}

/** A seam that would be this far off, inches, is no slip of sewing: the patches were cut another size. */
const NO_SLIP = 3 / 32;

function seamWords({ found, here, seam }: Told, small: boolean): string[] {
  const off = Math.abs(found.seamError);
  if (off > NO_SLIP) return ['Too much for the seams alone: the patches must be cut another size.'];
  const way = small ? 'shallower' : 'deeper';
  return [
    `Sew ${adjustment(off, here)} ${way}: your ${here.say.plain(seam)} seam comes out at ${fine(found.seamTaken, here)}.`,
  ];
}

/** By how much, as a sewer can take it: a thread, or a mark of 1/64 in, scant or full. */
function adjustment(off: number, { say }: Here): string {
  if (say.reading === 'metric') return off < 1 / 64 ? 'a thread' : `${decimal(off * 25.4, 1)} mm`;
  if (off < 1 / 64) return 'a thread (under 1/64 in)';
  const mark = Math.round(off * 64) / 64;
  const exact = Math.abs(mark - off) < 1 / 512;
  return `${exact ? '' : mark > off ? 'a scant ' : 'a full '}${fraction(mark, 64)} in`;
}

/** A small length, finer than a ruler has it. */
const fine = (value: number, { say }: Here): string =>
  say.reading === 'metric' ? `${decimal(value * 25.4, 1)} mm` : `${decimal(value, 3)} in`;

const shouldFigures = ({ expected, tenPatches }: RowCheck) => ({
  expected: inches(expected),
  tenPatches: inches(tenPatches),
});

const figuresOf = (found: RowCheck) => ({
  ...shouldFigures(found),
  error: inches(found.error),
  perPatch: inches(found.perPatch),
  seamError: inches(found.seamError),
  seamTaken: inches(found.seamTaken),
  edgeSewn: inches(found.edgeSewn),
  miscounted: count(found.miscounted),
});
