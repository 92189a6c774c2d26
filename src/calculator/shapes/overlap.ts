import { curvedOverlap } from './curved-overlap.ts';
import type { Outline, Point } from './outline.ts';
import { SHARED_LINE } from './place.ts';

/** How far an outline reaches along a direction, furthest and least. */
const reach = (outline: Outline, along: Point): readonly [least: number, most: number] => {
  let [least, most] = [Infinity, -Infinity];
  for (const { x, y } of outline) {
    const at = x * along.x + y * along.y;
    if (at < least) least = at;
    if (at > most) most = at;
  }
  return [least, most];
};

/** Whether some side of `a` has the whole of `b` on its outer side. */
const keepsOut = (a: Outline, b: Outline): boolean =>
  a.some((corner, i) => {
    const next = a[i + 1] ?? a[0]!;
    const length = Math.hypot(next.x - corner.x, next.y - corner.y);
    const outward = { x: (next.y - corner.y) / length, y: (corner.x - next.x) / length };
    const edge = corner.x * outward.x + corner.y * outward.y;
    return reach(b, outward)[0] >= edge - SHARED_LINE;
  });

/** Straight sides that turn left at every corner. */
const isPlain = (outline: Outline): boolean =>
  outline.every((b, i) => {
    const a = outline.at(i - 1)!;
    const c = outline[i + 1] ?? outline[0]!;
    const turn = (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
    return (b.bulge ?? 0) === 0 && turn >= 0;
  });

/**
 * Whether two outlines cover some of the same cloth. Sharing a line or a corner is no overlap.
 *
 * Two convex outlines with straight sides are apart just when a side of one keeps the other out. Where there
 * are arcs or hollow corners the sides themselves are followed. Exact either way.
 *
 * @example
 * overlaps([{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 0, y: 1 }], [{ x: 1, y: 0 }, { x: 1, y: 1 }, { x: 0, y: 1 }]) // false
 * overlaps([{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 0, y: 1 }], [{ x: 0.9, y: 0 }, { x: 1, y: 1 }, { x: 0, y: 1 }]) // true
 */
export const overlaps = (a: Outline, b: Outline): boolean =>
  isPlain(a) && isPlain(b) ? !keepsOut(a, b) && !keepsOut(b, a) : curvedOverlap(a, b);
