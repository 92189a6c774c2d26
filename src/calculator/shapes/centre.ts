import type { Outline, Point } from './outline.ts';

/**
 * The centre of gravity of a straight-sided outline.
 *
 * @example
 * centreOf([{ x: 0, y: 0 }, { x: 4, y: 0 }, { x: 4, y: 2 }, { x: 0, y: 2 }]) // {"x":2,"y":1}
 */
export function centreOf(outline: Outline): Point {
  let [x, y, twice] = [0, 0, 0];
  outline.forEach((from, i) => {
    const to = outline[i + 1] ?? outline[0]!;
    const cross = from.x * to.y - to.x * from.y;
    twice += cross;
    x += (from.x + to.x) * cross;
    y += (from.y + to.y) * cross;
  });
  return { x: x / (3 * twice), y: y / (3 * twice) };
}
