import type { Growing } from '../src/calculator/layouts/as-large-as.ts';
import { blocksOver } from '../src/calculator/layouts/blocks.ts';
import type { DiamondField, Middle } from '../src/calculator/layouts/diamonds.ts';
import { GROWING_ROSETTE, GROWING_STAR, growingDiamonds } from '../src/calculator/layouts/growing.ts';
import type { Layout } from '../src/calculator/layouts/layout.ts';
import type { Rosette } from '../src/calculator/layouts/rosette.ts';
import type { Star } from '../src/calculator/layouts/star.ts';
import type { Answer } from '../src/chat/command.ts';
import { count, type Figure, inches } from '../src/chat/reply.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import type { LayoutAsk } from '../src/pictures/laid.ts';
import {
  clothFigures,
  clothTable,
  coloured,
  inTheCloths,
  roundAbout,
  roundOf,
  shadeCloths,
  shadeTable,
} from './colours.ts';
import { manyWords } from './count-field.ts';
import { type Asked, asWished, forQuilt } from './count-wish.ts';
import { layoutFigures } from './count-words.ts';
import { BLOCK_SEAMS, countedFrom } from './layouts.ts';
import { layoutPicture } from './pictures.ts';
import { type planChoice, roundCloths } from './plan-choice.ts';
import { type GrowingNoun, growingFigures, growingLines, growingWish } from './wish-growing.ts';

const ROOT3 = Math.sqrt(3);
const HEXAGON = (3 * ROOT3) / 2;
const DIAMOND = ROOT3 / 2;

const HEXAGONS = { one: 'hexagon', more: 'hexagons' };
const DIAMONDS = { one: 'diamond', more: 'diamonds' };

interface Kind<L extends Layout & { readonly rounds: readonly number[] }> {
  readonly title: string;
  readonly noun: GrowingNoun;
  readonly called: 'Rounds' | 'Side';
  readonly roundName: (place: number) => string;
  readonly growing: Growing<L>;
  /** What its picture is made from. */
  readonly ask: (n: number) => LayoutAsk;
  /** The same in the words of a plan. */
  readonly plan: (n: number) => Parameters<typeof planChoice>[0];
  /** Figures of its own. */
  readonly own: (layout: L) => Record<string, Figure>;
}

function grownFor<L extends Layout & { readonly rounds: readonly number[] }>(
  { title: what, noun, called, roundName, growing, ask, plan, own }: Kind<L>,
  colours: readonly string[] | undefined,
  asked: Asked,
): Answer {
  const found = growingWish(growing, asked);
  if (!found.ok) return manyWords(found);
  const { reach } = found.value;
  const cloths = coloured(reach.layout.rounds, colours);
  const title = forQuilt(asked, what);
  return asWished(
    {
      title,
      lines: growingLines(found.value, noun, asked),
      table: clothTable(cloths, noun.pieces.more, { called: 'rounds', name: roundName }),
      figures: {
        ...layoutFigures(reach),
        ...{ rounds: count(reach.layout.rounds), ...own(reach.layout) },
        ...growingFigures(found.value, noun, called, asked),
        ...clothFigures(cloths),
      },
      pictures: [
        layoutPicture(
          { title, made: reach, ask: { ...ask(found.value.found.reach.n), ...inTheCloths(colours) } },
          asked.here,
        ),
      ],
    },
    asked,
    { plan: { ...plan(found.value.found.reach.n), ...roundCloths(reach.layout.patches.roles, colours) } },
  );
}

const inRounds = (n: number): string => many(n, 'round', 'rounds');

/** One rosette as large as a quilt. */
export const rosetteFor = (colours: readonly string[] | undefined, asked: Asked): Answer =>
  grownFor<Rosette>(
    {
      ...{ title: 'One rosette', called: 'Rounds', roundName: roundAbout },
      noun: { pieces: HEXAGONS, number: inRounds, area: HEXAGON, open: 'Its four corners are' },
      growing: GROWING_ROSETTE,
      ask: (rounds) => ({ layout: 'rosette', rounds }),
      plan: (rounds) => ({ layout: 'rosette', rounds }),
      own: () => ({}),
    },
    colours,
    asked,
  );

/** One star as large as a quilt. */
export const starFor = (colours: readonly string[] | undefined, asked: Asked): Answer =>
  grownFor<Star>(
    {
      ...{ title: 'One star', called: 'Side', roundName: roundOf },
      noun: {
        ...{ pieces: DIAMONDS, number: (n: number) => `${grouped(n)} a side`, area: DIAMOND },
        open: 'Its notches and corners are',
      },
      growing: GROWING_STAR,
      ask: (side) => ({ layout: 'star', side }),
      plan: (side) => ({ layout: 'star', side }),
      own: ({ perPoint }) => ({ perPoint: count(perPoint) }),
    },
    colours,
    asked,
  );

/** A large diamond as large as a quilt. */
export const diamondsFor = (from: Middle, colours: readonly string[] | undefined, asked: Asked): Answer =>
  grownFor<DiamondField>(
    {
      ...{ title: 'One large diamond', called: 'Rounds', roundName: roundAbout },
      noun: { pieces: DIAMONDS, number: inRounds, area: DIAMOND, open: 'Its four corners are' },
      growing: growingDiamonds(from),
      ask: (rounds) => ({ layout: 'diamonds', from, rounds }),
      // One more diamond to a side at both ends of it with each round.
      plan: (rounds) => ({ layout: 'diamonds', side: (from === 4 ? 2 : 1) + 2 * rounds }),
      own: ({ side }) => ({ side: count(side) }),
    },
    colours,
    asked,
  );

/** Blocks of three diamonds over a quilt: each is a hexagon of them, so they cover as hexagons do. */
export function blocksFor(colours: readonly string[] | undefined, asked: Asked): Answer {
  const { quilt, edge, here } = asked;
  const made = countedFrom(blocksOver(quilt.width, quilt.height, edge), edge);
  if (!made.ok) return manyWords(made);
  const { layout, counted } = made.value;
  const { blocks, inside, straightWhole, straightHalf, rowCount } = layout;
  const cloths = shadeCloths(counted.total / 3, colours);
  if (!cloths.ok) return cloths;
  const title = forQuilt(asked, 'Blocks of three diamonds');
  const { width, height } = quilt;
  const ask = { layout: 'blocks over', ...{ width, height, edge }, ...inTheCloths(colours) } as const;
  return asWished(
    {
      title,
      lines: [
        `${many(blocks, 'block', 'blocks')} cover it, to be trimmed: ${many(rowCount, 'row', 'rows')}.`,
        `${many(counted.total, 'diamond', 'diamonds')}, ${grouped(counted.total / 3)} of each of 3 shades.`,
        `Or straight sides: ${grouped(straightWhole)} whole and ${grouped(straightHalf)} half blocks.`,
        `Inside it: ${many(inside, 'whole block', 'whole blocks')}.`,
        `${grouped(counted.seams)} seams, ${here.say.run(counted.seams * edge)} of sewing.`,
      ],
      figures: {
        ...layoutFigures(made.value),
        ...{ blocks: count(blocks), perShade: count(counted.total / 3), rows: count(rowCount) },
        ...{ inside: count(inside), straightWhole: count(straightWhole), straightHalf: count(straightHalf) },
        ...{ blockSeams: count(blocks * BLOCK_SEAMS), blockSeamLength: inches(blocks * BLOCK_SEAMS * edge) },
        ...clothFigures(cloths.value),
      },
      table: shadeTable(cloths.value),
      pictures: [layoutPicture({ title, made: made.value, ask }, here)],
    },
    asked,
    { plan: { layout: 'blocks', quilt } },
  );
}
