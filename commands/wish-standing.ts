import {
  type AsManyAsMake,
  asManyAsMake,
  type Standing,
  type Stood,
} from '../src/calculator/layouts/as-many-as-make.ts';
import type { Layout } from '../src/calculator/layouts/layout.ts';
import { count, type Figure, inches } from '../src/chat/reply.ts';
import { ok, type Result } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import type { Counted } from './layouts.ts';
import { beside, counted, margins, type Noun, round, type Wished } from './wish.ts';

/** Rosettes or stars for a quilt. */
export interface StandingWish<L extends Layout> {
  readonly found: AsManyAsMake<L>;
  readonly cover: Counted<L>;
  readonly inside: Counted<L> | null;
}

export function standingWish<L extends Layout>(
  of: Standing<L>,
  { quilt, edge }: Wished,
): Result<StandingWish<L>> {
  const found = asManyAsMake(of, quilt.width / edge, quilt.height / edge);
  if (!found.ok) return found;
  const { cover, inside } = found.value;
  return ok({
    found: found.value,
    cover: counted(cover.layout, cover.box, edge),
    inside: inside && counted(inside.layout, inside.box, edge),
  });
}

const standingIn = ({ rows, perRow }: Stood<Layout>): number => rows * perRow;

const inRows = ({ rows, perRow }: Stood<Layout>): string =>
  rows === 1 ? `one row of ${grouped(perRow)}` : `${grouped(rows)} rows of ${grouped(perRow)}`;

/** How many cover it and hang over, what halves at the ends do, and how many lie inside. */
export function standingLines(
  { found, cover, inside }: StandingWish<Layout>,
  noun: Noun,
  pieces: string,
  { quilt, edge, here }: Wished,
): string[] {
  const { say } = here;
  const { straight } = found;
  const stagger = found.cover.rows > 1 ? ', each second row half a place along' : '';
  return [
    `${many(standingIn(found.cover), noun.one, noun.more)} cover it: ${inRows(found.cover)}${stagger}.`,
    `${pieces}, ${say.size(round(cover.width), round(cover.height))} before trimming.`,
    `Trim ${beside(margins(cover, quilt), here)}.`,
    `Or halves at the row ends: ${grouped(straight.wholes)} whole and ${grouped(straight.halves)} half ${noun.more}, ${say.plain(round(straight.width * edge))} wide.`,
    found.inside && inside
      ? `Inside it: ${inRows(found.inside)}, ${say.size(round(inside.width), round(inside.height))}. A border fills ${beside(margins(quilt, { width: inside.width, height: inside.height }), here)}.`
      : `Not one whole ${noun.one} lies inside it.`,
    `${grouped(cover.counted.seams)} seams, ${say.run(cover.counted.seamLength * edge)} of sewing.`,
  ];
}

export function standingFigures({ found, cover, inside }: StandingWish<Layout>, { quilt, edge }: Wished) {
  const over = margins(cover, quilt);
  const { straight } = found;
  const figures: Record<string, Figure> = {
    rows: count(found.cover.rows),
    perRow: count(found.cover.perRow),
    overSides: inches(over.sides),
    overEnds: inches(over.ends),
    straightWhole: count(straight.wholes),
    straightHalf: count(straight.halves),
    straightWidth: inches(straight.width * edge),
    inside: count(found.inside ? standingIn(found.inside) : 0),
  };
  if (!found.inside || !inside) return figures;
  const short = margins(quilt, { width: inside.width, height: inside.height });
  return {
    ...figures,
    insideRows: count(found.inside.rows),
    insidePerRow: count(found.inside.perRow),
    insideTotal: count(inside.counted.total),
    insideWidth: inches(inside.width),
    insideHeight: inches(inside.height),
    shortSides: inches(short.sides),
    shortEnds: inches(short.ends),
  };
}

/** The pieces by role, covering and inside. */
export const standingRows = (
  { cover, inside }: StandingWish<Layout>,
  words: Readonly<Record<string, string>>,
): string[][] =>
  Object.entries(words)
    .filter(([role]) => (cover.counted.byRole[role] ?? 0) > 0)
    .map(([role, said]) => [
      said,
      grouped(cover.counted.byRole[role] ?? 0),
      grouped(inside?.counted.byRole[role] ?? 0),
    ]);
