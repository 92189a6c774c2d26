import { type Border, type BorderJoin, border } from '../src/calculator/finishing/border.ts';
import { form, type Here } from '../src/chat/command.ts';
import { bare, neededUnless, otherwise, signed, usually } from '../src/chat/option.ts';
import { choice, length } from '../src/chat/option-kinds.ts';
import { count, type Figure, inches, type Reply, reply } from '../src/chat/reply.ts';
import { wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { capital, many } from '../src/measure/speech.ts';
import { assumedNote, whose } from './assumed.ts';
import { bought, metresFigure, purchaseFor, tightWords, yardsFigure } from './bought.ts';
import { bladeCaution } from './cautions.ts';
import {
  neededQuilt,
  quiltAssumed,
  quiltCautions,
  tooWide,
  usableOption,
  usableWidth,
  widthAssumed,
} from './finish-words.ts';
import { seamOf } from './patch.ts';

const joinChoice = choice('How the corners are made', [
  { name: 'butted', title: 'butted', words: ['butt', 'square'] },
  { name: 'mitred', title: 'mitred', words: ['mitered', 'mitre', 'miter'] },
]);

export const borderForm = form({
  name: 'border',
  summary: 'Strips for a border, butted or mitred, and the new size',
  examples: [
    '/finish border 50x60in border:3in',
    '/finish border quilt:50x60in border:3in join:mitred width:40in',
    '/finish border quilt:50x60in border:1in outer:5in',
  ],
  options: {
    quilt: neededQuilt,
    border: neededUnless(bare(length('How wide the border finishes', 1 / 4, 40, '3in')), 'strip'),
    strip: signed(length('In place of border: how wide its strips are cut', 1 / 4, 42, '3 1/2in')),
    outer: length('A second border, round the first', 1 / 4, 40, '6in'),
    join: otherwise(bare(joinChoice), 'butted'),
    width: usableOption,
    seam: usually(length('Seam allowance', 0, 2, '1/4in'), 'what /me and /guild keep, or 1/4in'),
  },
  run(values, here) {
    const { quilt, strip, outer, join } = values;
    if (values.border !== undefined && strip !== undefined)
      return wrong('one-of-these', { got: 'border, strip' });
    const usable = usableWidth(values, here);
    const seam = seamOf(values, here);
    const wide = values.border ?? strip! - 2 * seam;
    if (wide <= 0)
      return wrong('nothing-left', { got: here.say.plain(strip!), least: here.say.plain(2 * seam) });
    const widest = Math.max(wide, outer ?? 0) + 2 * seam;
    if (widest > usable + 1e-9) return tooWide('strip', widest, usable, here);
    const first = border({ width: quilt.width, height: quilt.height, border: wide, seam, usable, join });
    const round = { width: first.newWidth, height: first.newHeight };
    const second = outer === undefined ? null : border({ ...round, border: outer, seam, usable, join });
    const { say } = here;
    const told = { join, here };
    return reply({
      ...(second ? bothTold([wide, first], [outer ?? 0, second], told) : oneTold(first, told)),
      title: `${second ? `${say.plain(wide)} and ${say.plain(outer ?? 0)} borders` : `${say.plain(wide)} border`} for ${say.size(quilt.width, quilt.height)}, ${join}`,
      figures: {
        ...figuresOf(first),
        ...(second ? outerFigures(second) : {}),
        newWidth: inches((second ?? first).newWidth),
        newLength: inches((second ?? first).newHeight),
      },
      notes: [
        'Measure your own top through its middle before you cut.',
        ...assumedNote([
          ...quiltAssumed(quilt, here),
          ...(here.given.has('join') ? [] : ['butted corners']),
          ...(here.given.has('seam') ? [] : [`${whose(here.defaults.seam.from)}${say.plain(seam)} seam`]),
          ...widthAssumed(usable, here),
        ]),
      ],
      cautions: [...bladeCaution(here), ...quiltCautions(quilt)],
      choices: [otherJoin(join, here)],
    });
  },
});

interface Told {
  readonly join: BorderJoin;
  readonly here: Here;
}

function oneTold(made: Border, { join, here }: Told): Pick<Reply, 'lines'> {
  const { say } = here;
  return {
    lines: [
      `Cut ${many(made.strips, 'strip', 'strips')} of ${say.plain(made.cutStrip)}: buy ${bought(made.length, say)}.`,
      ...cutWords(made, join, here),
      finishesAt(made, here),
      ...tightIn(made, here),
    ],
  };
}

type Wide = readonly [wide: number, made: Border];

/** Two borders, the second round the first: a column each. */
function bothTold([inner, first]: Wide, [outer, second]: Wide, { join, here }: Told): Omit<Reply, 'title'> {
  const { say } = here;
  const row = (what: string, of: (made: Border) => string) => [what, of(first), of(second)];
  const buy = [first, second].map((made) => bought(made.length, say));
  return reply({
    title: '',
    lines: [
      `Buy ${buy[0]} for the inner border, ${buy[1]} for the outer.`,
      finishesAt(second, here),
      ...(join === 'butted'
        ? ['Each border: its sides first, then top and bottom.']
        : [`${say.plain(4)} of each piece is for the mitres, trimmed after.`]),
      ...tightIn(first, here, 'inner border'),
      ...tightIn(second, here, 'outer border'),
    ],
    table: {
      columns: ['', `inner, ${say.plain(inner)}`, `outer, ${say.plain(outer)}`],
      rows: [
        row('strips', ({ strips, cutStrip }) => `${grouped(strips)} of ${say.plain(cutStrip)}`),
        row('sides', ({ sides }) => `2 of ${say.plain(sides)}`),
        row('top, bottom', ({ topBottom }) => `2 of ${say.plain(topBottom)}`),
      ],
    },
  });
}

const finishesAt = ({ newWidth, newHeight }: Border, { say }: Here): string =>
  `Finishes at ${say.size(newWidth, newHeight)}.`;

const tightIn = ({ length: needed }: Border, { say }: Here, what = ''): string[] =>
  purchaseFor(needed, say).tight ? [tightWords(needed, say, what)] : [];

const figuresOf = (made: Border): Record<string, Figure> => ({
  cutStrip: inches(made.cutStrip),
  sides: inches(made.sides),
  topBottom: inches(made.topBottom),
  total: inches(made.total),
  strips: count(made.strips),
  length: inches(made.length),
  yards: yardsFigure(made.length),
  metres: metresFigure(made.length),
});

/** The same of the second border: `outerSides`, `outerYards`. */
const outerFigures = (made: Border): Record<string, Figure> =>
  Object.fromEntries(
    Object.entries(figuresOf(made)).map(([name, figure]) => [`outer${capital(name)}`, figure]),
  );

function cutWords({ sides, topBottom }: Border, join: BorderJoin, { say }: Here): string[] {
  if (join === 'butted')
    return [`Sides first, 2 of ${say.plain(sides)}.`, `Then top and bottom, 2 of ${say.plain(topBottom)}.`];
  return [
    `Sides 2 of ${say.plain(sides)}, top and bottom 2 of ${say.plain(topBottom)}.`,
    `${say.plain(4)} of each is for the mitres, trimmed after.`,
  ];
}

const otherJoin = (join: BorderJoin, { again }: Here) =>
  join === 'butted'
    ? { label: 'Mitred corners', ask: again({ join: 'mitred' }) }
    : { label: 'Butted corners', ask: again({ join: 'butted' }) };
