import {
  type AsLargeAs,
  asLargeAs,
  type Growing,
  type Grown,
} from '../src/calculator/layouts/as-large-as.ts';
import type { Layout } from '../src/calculator/layouts/layout.ts';
import { count, type Figure, inches, squareInches } from '../src/chat/reply.ts';
import { ok, type Result } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import type { Counted } from './layouts.ts';
import { beside, counted, marginFigures, margins, type Noun, round, type Wished } from './wish.ts';

/** One layout that grows, for a quilt. */
export interface GrowingWish<L extends Layout> {
  readonly found: AsLargeAs<L>;
  readonly reach: Counted<L>;
  readonly cover: Counted<L> | null;
  readonly inside: Counted<L> | null;
}

export function growingWish<L extends Layout>(
  of: Growing<L>,
  { quilt, edge }: Wished,
): Result<GrowingWish<L>> {
  const found = asLargeAs(of, quilt.width / edge, quilt.height / edge);
  if (!found.ok) return found;
  const { reach, cover, inside } = found.value;
  return ok({
    found: found.value,
    reach: counted(reach.layout, reach, edge),
    cover: cover && counted(cover.layout, cover, edge),
    inside: inside && counted(inside.layout, inside, edge),
  });
}

/** What a growing layout is of, and how its number is said: "24 rounds", "8 a side". */
export interface GrowingNoun {
  readonly pieces: Noun;
  readonly number: (n: number) => string;
  /** Of one piece, in square edges. */
  readonly area: number;
  /** What is open beside it. */
  readonly open: string;
}

const grown = ({ n }: Grown<Layout>, of: Counted, { pieces, number }: GrowingNoun): string =>
  `${number(n)}, ${many(of.counted.total, pieces.one, pieces.more)}`;

const openArea = ({ width, height, counted: { total }, edge }: Counted, { area }: GrowingNoun): number =>
  Math.max(0, width * height - total * area * edge * edge);

export function growingLines(
  wish: GrowingWish<Layout>,
  noun: GrowingNoun,
  { quilt, edge, here }: Wished,
): string[] {
  const { found, reach, cover, inside } = wish;
  const { say } = here;
  const over = margins(reach, quilt);
  const covering =
    found.cover && cover ? [`To cover the corners too and trim: ${grown(found.cover, cover, noun)}.`] : [];
  return [
    `At least so large: ${grown(found.reach, reach, noun)}, ${say.size(round(reach.width), round(reach.height))}.`,
    `${beside('It is over by', over, here)} ${noun.open} open, ${say.area(Math.round(openArea(reach, noun)))}: fill with background.`,
    ...covering,
    found.inside && inside
      ? `Inside it: ${grown(found.inside, inside, noun)}, ${say.size(round(inside.width), round(inside.height))}. ${beside('A border fills', margins(quilt, { width: inside.width, height: inside.height }), here)}`
      : 'None lies inside it.',
    `${grouped(reach.counted.seams)} seams, ${say.run(reach.counted.seamLength * edge)} of sewing.`,
  ];
}

/** `called` is what the number is: rounds, or a side. */
export function growingFigures(
  wish: GrowingWish<Layout>,
  noun: GrowingNoun,
  called: 'Rounds' | 'Side',
  { quilt }: Wished,
): Record<string, Figure> {
  const { found, reach, cover, inside } = wish;
  const over = margins(reach, quilt);
  const figures: Record<string, Figure> = {
    [`reach${called}`]: count(found.reach.n),
    ...marginFigures('over', over),
    openArea: squareInches(openArea(reach, noun)),
  };
  if (found.cover && cover) {
    figures[`cover${called}`] = count(found.cover.n);
    figures.coverTotal = count(cover.counted.total);
  }
  if (found.inside && inside) {
    figures[`inside${called}`] = count(found.inside.n);
    figures.insideTotal = count(inside.counted.total);
    figures.insideWidth = inches(inside.width);
    figures.insideHeight = inches(inside.height);
  }
  return figures;
}
