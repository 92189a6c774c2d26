import type { Point } from '../shapes/outline.ts';
import type { Spot } from './lattice.ts';
import type { Rectangle } from './layout.ts';
import { looseSides } from './marks.ts';
import { type PatchList, pointOf } from './patches.ts';

type Straight = readonly [Point, Point];

/** The outside of a layout, in edges, turned so that some direction of it is level. */
export interface Outside {
  /** Each loose side from one end to the other. */
  readonly sides: readonly Straight[];
  /** The box round them. */
  readonly box: Rectangle;
}

/** The outside of a layout in which a step (on the lattice) is level. */
export function outsideOf(list: PatchList, level: Spot): Outside {
  const run = pointOf(level, list.rows, 1);
  const length = Math.hypot(run.x, run.y);
  const [cos, sin] = [run.x / length, run.y / length];
  const turned = (spot: Spot): Point => {
    const { x, y } = pointOf(spot, list.rows, 1);
    return { x: x * cos + y * sin, y: y * cos - x * sin };
  };
  const sides = looseSides(list).map(({ from, to }): Straight => [turned(from), turned(to)]);
  return { sides, box: boxOf(sides) };
}

function boxOf(sides: readonly Straight[]): Rectangle {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [a, b] of sides) {
    left = Math.min(left, a.x, b.x);
    right = Math.max(right, a.x, b.x);
    top = Math.min(top, a.y, b.y);
    bottom = Math.max(bottom, a.y, b.y);
  }
  return { left, top, width: right - left, height: bottom - top };
}

/** Edges. A side that runs along a rectangle's own does not reach into it. */
const HAIR = 1e-9;

/** The part of a side that lies within a rectangle; null where none does. */
function inside([a, b]: Straight, { left, top, width, height }: Rectangle): Straight | null {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  let [from, to] = [0, 1];
  const limits = [
    { rate: -dx, room: a.x - left },
    { rate: dx, room: left + width - a.x },
    { rate: -dy, room: a.y - top },
    { rate: dy, room: top + height - a.y },
  ];
  for (const { rate, room } of limits) {
    if (Math.abs(rate) < HAIR && room < HAIR) return null;
    if (rate >= HAIR) to = Math.min(to, (room - HAIR) / rate);
    else if (rate <= -HAIR) from = Math.max(from, (room - HAIR) / rate);
  }
  const at = (part: number): Point => ({ x: a.x + part * dx, y: a.y + part * dy });
  return from < to ? [at(from), at(to)] : null;
}

/** Whether the outside reaches into a rectangle: then the rectangle is not all patches. */
export const reachesInto = ({ sides }: Outside, rectangle: Rectangle): boolean =>
  sides.some((side) => inside(side, rectangle) !== null);

/** A rectangle as its four sides, while it is cut down. */
interface Walls {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

const rectangleOf = ({ left, right, top, bottom }: Walls): Rectangle => ({
  left,
  top,
  width: right - left,
  height: bottom - top,
});

/** Moves in the wall that then keeps a side out at the least loss. */
function keepOut(walls: Walls, [a, b]: Straight, ways: readonly (keyof Walls)[]): void {
  const cuts: Record<keyof Walls, number> = {
    left: Math.max(a.x, b.x),
    right: Math.min(a.x, b.x),
    top: Math.max(a.y, b.y),
    bottom: Math.min(a.y, b.y),
  };
  const loss = (way: keyof Walls) => Math.abs(cuts[way] - walls[way]);
  const [first, ...others] = ways;
  const way = others.reduce((best, one) => (loss(one) < loss(best) ? one : best), first!);
  walls[way] = cuts[way];
}

/**
 * A rectangle inside the outside that is all patches, cut down from the box: what is left when a layout is
 * trimmed straight. First the valleys of the four sides are looked for across the middle, a stretch of the
 * pattern wide; then whatever reaches in at the corners is kept out at the least loss.
 */
export function solidIn(outside: Outside, stretch: number): Rectangle {
  const { box, sides } = outside;
  const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
  const walls: Walls = {
    left: box.left,
    right: box.left + box.width,
    top: box.top,
    bottom: box.top + box.height,
  };
  const upright = { left: x - stretch / 2, top: box.top - 1, width: stretch, height: box.height + 2 };
  const level = { left: box.left - 1, top: y - stretch / 2, width: box.width + 2, height: stretch };
  for (const side of sides) {
    const above = inside(side, upright);
    if (above) keepOut(walls, above, [above[0].y < y ? 'top' : 'bottom']);
  }
  for (const side of sides) {
    const beside = inside(side, level);
    if (beside) keepOut(walls, beside, [beside[0].x < x ? 'left' : 'right']);
  }
  for (const side of sides) {
    const left = inside(side, rectangleOf(walls));
    if (left) keepOut(walls, left, [left[0].x < x ? 'left' : 'right', left[0].y < y ? 'top' : 'bottom']);
  }
  return rectangleOf(walls);
}
