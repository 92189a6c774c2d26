import type { Outline, Point } from '../shapes/outline.ts';
import { curvedEndsOf } from './curved-ends.ts';
import { type Ends, onceEach, SAME } from './levels.ts';

export { between, type EndArc, type Ends, onceEach, SAME } from './levels.ts';

/** The ends of an outline with arcs, or of a straight-sided one that a level line cuts once, as every convex one. */
export function endsOf(outline: Outline): Ends {
  if (outline.some(({ bulge = 0 }) => bulge !== 0)) return curvedEndsOf(outline);
  const levels = onceEach(outline.map((corner) => corner.y));
  return {
    levels,
    lefts: levels.map((level) => endAt(outline, level, Math.min)),
    rights: levels.map((level) => endAt(outline, level, Math.max)),
  };
}

type Outermost = (a: number, b: number) => number;

function endAt(outline: Outline, level: number, outermost: Outermost): number {
  let end: number | undefined;
  let from = outline.at(-1)!;
  for (const to of outline) {
    const here = crossing(from, to, level, outermost);
    if (here !== undefined) end = end === undefined ? here : outermost(end, here);
    from = to;
  }
  return end!;
}

/** Where the side from one corner to another crosses a height, if it does. */
function crossing(from: Point, to: Point, level: number, outermost: Outermost): number | undefined {
  if (level < Math.min(from.y, to.y) - SAME || level > Math.max(from.y, to.y) + SAME) return undefined;
  const rise = to.y - from.y;
  if (Math.abs(rise) <= SAME) return outermost(from.x, to.x);
  return from.x + Math.min(1, Math.max(0, (level - from.y) / rise)) * (to.x - from.x);
}
