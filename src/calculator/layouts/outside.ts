import { TOLERANCE } from '../../measure/result.ts';
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

/**
 * The rectangle that the valleys of the four sides leave across the middle of a layout, looked for along a
 * stretch of its pattern: what is left when it is trimmed straight, but for what may reach in at the corners.
 */
export function valleysOf({ box, sides }: Outside, stretch: number): Rectangle {
  const middle: Point = { x: box.left + box.width / 2, y: box.top + box.height / 2 };
  const upright = { left: middle.x - stretch / 2, top: box.top - 1, width: stretch, height: box.height + 2 };
  const level = { left: box.left - 1, top: middle.y - stretch / 2, width: box.width + 2, height: stretch };
  let [left, right, top, bottom] = [box.left, box.left + box.width, box.top, box.top + box.height];
  for (const side of sides) {
    const [a, b] = inside(side, upright) ?? [middle, middle];
    if (a.y < middle.y) top = Math.max(top, a.y, b.y);
    if (a.y > middle.y) bottom = Math.min(bottom, a.y, b.y);
    const [c, d] = inside(side, level) ?? [middle, middle];
    if (c.x < middle.x) left = Math.max(left, c.x, d.x);
    if (c.x > middle.x) right = Math.min(right, c.x, d.x);
  }
  return { left, top, width: right - left, height: bottom - top };
}

/** A rectangle of a size within another, so far (0 to 1) along and down the room that is left over. */
const lyingIn = (
  around: Rectangle,
  width: number,
  height: number,
  along: number,
  down: number,
): Rectangle => ({
  left: around.left + (around.width - width) * along,
  top: around.top + (around.height - height) * down,
  width,
  height,
});

/** A rectangle of a size about the middle of another. */
export const centredIn = (around: Rectangle, width: number, height: number): Rectangle =>
  lyingIn(around, width, height, 1 / 2, 1 / 2);

/** In the middle if it may be, else against a side or into a corner. */
const LYING = [1 / 2, 0, 1].flatMap((along) => [1 / 2, 0, 1].map((down) => ({ along, down })));

/** Where a rectangle of a size lies within another so that it is all patches; null where it was not found to. */
export function patchedIn(
  outside: Outside,
  around: Rectangle,
  width: number,
  height: number,
): Rectangle | null {
  if (around.width < width - TOLERANCE || around.height < height - TOLERANCE) return null;
  const lying = LYING.map(({ along, down }) => lyingIn(around, width, height, along, down));
  return lying.find((rectangle) => !reachesInto(outside, rectangle)) ?? null;
}
