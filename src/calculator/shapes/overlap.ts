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

/**
 * Whether two outlines cover some of the same cloth. Sharing a line or a corner is no overlap.
 *
 * For convex outlines with straight sides, for which it is exact: two such outlines are apart just when a
 * side of one keeps the other out. An arc or a hollow corner must first be cut into convex pieces.
 *
 * @example
 * overlaps([{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 0, y: 1 }], [{ x: 1, y: 0 }, { x: 1, y: 1 }, { x: 0, y: 1 }]) // false
 * overlaps([{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 0, y: 1 }], [{ x: 0.9, y: 0 }, { x: 1, y: 1 }, { x: 0, y: 1 }]) // true
 */
export const overlaps = (a: Outline, b: Outline): boolean => !keepsOut(a, b) && !keepsOut(b, a);
