import { inEachRow } from '../src/calculator/layouts/arrangement.ts';
import {
  type AsManyAsMake,
  asManyAsMake,
  type Standing,
  type Stood,
} from '../src/calculator/layouts/as-many-as-make.ts';
import type { Layout } from '../src/calculator/layouts/layout.ts';
import { count, type Figure, inches, type Picture } from '../src/chat/reply.ts';
import { ok, type Result } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import type { LayoutAsk } from '../src/pictures/laid.ts';
import type { Counted } from './layouts.ts';
import { layoutPicture } from './pictures.ts';
import {
  beside,
  counted,
  type Margins,
  marginFigures,
  margins,
  type Noun,
  round,
  type Wished,
} from './wish.ts';

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

/** "10 rows of 7", or "10 rows, 7 and 8 by turns". */
function inRows({ arrangement }: Stood<Layout>): string {
  const { rows } = arrangement;
  const [first, second] = inEachRow(arrangement);
  if (rows === 1) return `one row of ${grouped(first)}`;
  const each =
    first === second ? ` of ${grouped(first)}` : `, ${grouped(first)} and ${grouped(second)} by turns`;
  return `${grouped(rows)} rows${each}`;
}

/** What hangs over on each side of the quilt, in inches. */
function trimmings({ cover: { box }, trim }: AsManyAsMake<Layout>, edge: number): Margins {
  const [left, top] = [trim.left - box.left, trim.top - box.top];
  return {
    left: left * edge,
    right: (box.width - trim.width - left) * edge,
    top: top * edge,
    bottom: (box.height - trim.height - top) * edge,
  };
}

/** How many cover it and hang over, what halves at the ends do, and how many lie inside. */
export function standingLines(
  { found, cover, inside }: StandingWish<Layout>,
  noun: Noun,
  pieces: string,
  { quilt, edge, here }: Wished,
): string[] {
  const { say } = here;
  const { straight } = found;
  const stagger = found.cover.arrangement.rows > 1 ? ', half a place along each time' : '';
  return [
    `${many(found.cover.count, noun.one, noun.more)} cover it: ${inRows(found.cover)}${stagger}.`,
    `${pieces}, ${say.size(round(cover.width), round(cover.height))} before trimming.`,
    beside('Trim', trimmings(found, edge), here),
    `Or halves at the row ends: ${grouped(straight.wholes)} whole and ${grouped(straight.halves)} half ${noun.more}, ${say.plain(round(straight.width * edge))} wide.`,
    found.inside && inside
      ? `Inside it: ${many(found.inside.count, noun.one, noun.more)}, ${inRows(found.inside)}, ${say.size(round(inside.width), round(inside.height))}. ${beside('A border fills', margins(quilt, { width: inside.width, height: inside.height }), here)}`
      : `Not one whole ${noun.one} lies inside it.`,
    `${grouped(cover.counted.seams)} seams, ${say.run(cover.counted.seamLength * edge)} of sewing.`,
  ];
}

export function standingFigures({ found, inside }: StandingWish<Layout>, { quilt, edge }: Wished) {
  const { straight } = found;
  const figures: Record<string, Figure> = {
    rows: count(found.cover.arrangement.rows),
    perRow: count(inEachRow(found.cover.arrangement)),
    ...marginFigures('over', trimmings(found, edge)),
    straightWhole: count(straight.wholes),
    straightHalf: count(straight.halves),
    straightWidth: inches(straight.width * edge),
    inside: count(found.inside?.count ?? 0),
    byArea: count(found.byArea),
  };
  if (!found.inside || !inside) return figures;
  const short = margins(quilt, { width: inside.width, height: inside.height });
  return {
    ...figures,
    insideRows: count(found.inside.arrangement.rows),
    insidePerRow: count(inEachRow(found.inside.arrangement)),
    insideTotal: count(inside.counted.total),
    insideWidth: inches(inside.width),
    insideHeight: inches(inside.height),
    ...marginFigures('short', short),
  };
}

/**
 * What covers, with the line that it is trimmed to. Where the rows run level only when the layout is turned there
 * is none: its own sides would not be those of the quilt.
 */
export function standingPictures(
  { found, cover }: StandingWish<Layout>,
  ask: LayoutAsk,
  title: string,
  called: Readonly<Record<string, string>>,
  { edge, here }: Wished,
): Picture[] {
  if (!found.level) return [];
  const { left, top, width, height } = found.trim;
  const trimTo = { left: left * edge, top: top * edge, width: width * edge, height: height * edge };
  return [layoutPicture({ title, made: cover, ask: { ...ask, trimTo }, called }, here)];
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
