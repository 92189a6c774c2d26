import type { Point } from './outline.ts';

/**
 * The convex hull of some points, counter-clockwise (textbook: the lower side from left to right, then the
 * upper one back).
 *
 * @example
 * hullOf([{ x: 0, y: 0 }, { x: 2, y: 0 }, { x: 1, y: 1 }, { x: 2, y: 2 }, { x: 0, y: 2 }]).length // 4
 */
export function hullOf(points: readonly Point[]): Point[] {
  const sorted = points.toSorted((a, b) => a.x - b.x || a.y - b.y);
  return [...halfOf(sorted), ...halfOf(sorted.reverse())];
}

/** One side of the hull, its last point left to the other side. */
function halfOf(sorted: readonly Point[]): Point[] {
  const side: Point[] = [];
  for (const point of sorted) {
    while (side.length > 1 && turn(side.at(-2)!, side.at(-1)!, point) <= 0) side.pop();
    side.push(point);
  }
  return side.slice(0, -1);
}

const turn = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
