import type { Outline, Point } from './outline.ts';
import { type Arc, arcBetween } from './sides.ts';

/** The upright box that just holds an outline, in inches. */
export interface Box {
  readonly left: number;
  readonly bottom: number;
  readonly width: number;
  readonly height: number;
}

/** Calls `visit` for each side of the outline: its two ends and its bulge. */
const eachSide = (outline: Outline, visit: (start: Point, end: Point, bulge: number) => void): void => {
  let start = outline[outline.length - 1]!;
  for (const end of outline) {
    visit(start, end, start.bulge ?? 0);
    start = end;
  }
};

/** The area between an arc and its chord: negative where the arc is hollow. */
const segmentArea = ({ radius, sweep }: Arc): number => (radius * radius * (sweep - Math.sin(sweep))) / 2;

/**
 * The area of an outline, in square inches.
 *
 * @example
 * area([{ x: 0, y: 0 }, { x: 3, y: 0 }, { x: 3, y: 2 }, { x: 0, y: 2 }]) // 6
 * area([{ x: 0, y: 0, bulge: 1 }, { x: 2, y: 0, bulge: 1 }]) // 3.1416
 */
export const area = (outline: Outline): number => {
  let total = 0;
  eachSide(outline, (start, end, bulge) => {
    total += (start.x * end.y - end.x * start.y) / 2;
    if (bulge !== 0) total += segmentArea(arcBetween(start, end, bulge));
  });
  return total;
};

/**
 * The length round an outline, in inches.
 *
 * @example
 * perimeter([{ x: 0, y: 0 }, { x: 3, y: 0 }, { x: 3, y: 2 }, { x: 0, y: 2 }]) // 10
 */
export const perimeter = (outline: Outline): number => {
  let total = 0;
  eachSide(outline, (start, end, bulge) => {
    if (bulge === 0) {
      total += Math.hypot(end.x - start.x, end.y - start.y);
      return;
    }
    const { radius, sweep } = arcBetween(start, end, bulge);
    total += radius * Math.abs(sweep);
  });
  return total;
};

const COMPASS: readonly Point[] = [
  { x: 1, y: 0 },
  { x: 0, y: 1 },
  { x: -1, y: 0 },
  { x: 0, y: -1 },
];

/** Whether an arc that starts at `start` passes the point of its circle that lies in this direction. */
export const passes = ({ centre, sweep }: Arc, start: Point, direction: Point): boolean => {
  const begin = Math.atan2(start.y - centre.y, start.x - centre.x);
  const turn = (Math.atan2(direction.y, direction.x) - begin) * Math.sign(sweep);
  const whole = 2 * Math.PI;
  return ((turn % whole) + whole) % whole <= Math.abs(sweep);
};

/** The points of an arc that may stick out of the box of its ends. */
const outermost = (start: Point, end: Point, bulge: number): Point[] => {
  const arc = arcBetween(start, end, bulge);
  return COMPASS.filter((direction) => passes(arc, start, direction)).map(({ x, y }) => ({
    x: arc.centre.x + arc.radius * x,
    y: arc.centre.y + arc.radius * y,
  }));
};

/**
 * The upright box that just holds an outline as it lies.
 *
 * @example
 * box([{ x: 0, y: 0 }, { x: 2, y: 0, bulge: 1 }, { x: 2, y: 2 }, { x: 0, y: 2 }]).width // 3
 */
export const box = (outline: Outline): Box => {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  const hold = ({ x, y }: Point): void => {
    if (x < left) left = x;
    if (x > right) right = x;
    if (y < bottom) bottom = y;
    if (y > top) top = y;
  };
  eachSide(outline, (start, end, bulge) => {
    hold(end);
    if (bulge !== 0) outermost(start, end, bulge).forEach(hold);
  });
  return { left, bottom, width: right - left, height: top - bottom };
};
