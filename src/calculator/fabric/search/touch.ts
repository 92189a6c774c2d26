import type { Outline, Point } from '../../shapes/outline.ts';

/** Directions closer than this, in radians, are one; inches closer than this are one place. */
const SAME = 1e-9;

interface Leg extends Point {
  readonly angle: number;
}

/**
 * The places at which one outline touches another that stays where it is, both convex and straight-sided:
 * told for the touching one's origin they lie round a convex outline of their own, and inside of it the two
 * would overlap. It is the sum of the first and the next turned half round, found by walking the sides of
 * both in the order of their directions (textbook).
 *
 * @example
 * touchOf([{ x: 0, y: 0 }, { x: 2, y: 0 }, { x: 2, y: 2 }, { x: 0, y: 2 }], [{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 1, y: 1 }, { x: 0, y: 1 }])[2] // {"x":2,"y":2}
 */
export function touchOf(first: Outline, next: Outline): Outline {
  const behind = halfRound(next);
  const legs = [...legsOf(first), ...legsOf(behind)].sort((a, b) => a.angle - b.angle);
  const [one, other] = [lowest(first), lowest(behind)];
  let at: Point = { x: one.x + other.x, y: one.y + other.y };
  const corners: Point[] = [];
  legs.forEach((leg, i) => {
    if (i === 0 || leg.angle - legs[i - 1]!.angle > SAME) corners.push(at);
    at = { x: at.x + leg.x, y: at.y + leg.y };
  });
  return corners;
}

/** An outline turned half round about its origin. */
export const halfRound = (outline: Outline): Outline => outline.map(({ x, y }) => ({ x: -x, y: -y }));

function legsOf(outline: Outline): Leg[] {
  return outline.map((from, i) => {
    const to = outline[i + 1] ?? outline[0]!;
    const [x, y] = [to.x - from.x, to.y - from.y];
    const angle = Math.atan2(y, x);
    // From the lowest corner on, directions run from 0 to a whole turn.
    return { x, y, angle: angle < -SAME ? angle + 2 * Math.PI : Math.max(0, angle) };
  });
}

const lowest = (outline: Outline): Point =>
  outline.reduce((low, corner) =>
    corner.y < low.y - SAME || (corner.y < low.y + SAME && corner.x < low.x) ? corner : low,
  );

/**
 * How far along x the next one must start, at the same height, to clear the first.
 *
 * @example
 * stepOf([{ x: -2, y: -2 }, { x: 2, y: -2 }, { x: 2, y: 2 }, { x: -2, y: 2 }]) // 2
 */
export function stepOf(touch: Outline): number {
  let step = 0;
  let from = touch.at(-1)!;
  for (const to of touch) {
    if (from.y <= 0 !== to.y <= 0)
      step = Math.max(step, from.x + (from.y / (from.y - to.y)) * (to.x - from.x));
    from = to;
  }
  return step;
}

/** The upper side of a touch, from left to right: how high the next one must stand, so far along. */
export interface Roof {
  readonly along: readonly number[];
  readonly high: readonly number[];
}

export function roofOf(touch: Outline): Roof {
  const left = Math.min(...touch.map(({ x }) => x)) + SAME;
  const right = Math.max(...touch.map(({ x }) => x)) - SAME;
  const ends = [
    highest(touch.filter(({ x }) => x <= left)),
    highest(touch.filter(({ x }) => x >= right)),
  ] as const;
  // The upper side of a counter-clockwise outline runs from right to left.
  const [from, to] = [touch.indexOf(ends[1]), touch.indexOf(ends[0])];
  const corners: Point[] = [];
  for (let i = from; ; i = (i + 1) % touch.length) {
    corners.push(touch[i]!);
    if (i === to) break;
  }
  corners.reverse();
  return { along: corners.map(({ x }) => x), high: corners.map(({ y }) => y) };
}

const highest = (corners: readonly Point[]): Point => corners.reduce((a, b) => (b.y > a.y ? b : a));

/** How high the next one must start, so far along, to stand clear above the first; 0 where it passes beside it. */
export function riseAt({ along, high }: Roof, at: number): number {
  const last = along.length - 1;
  if (at <= along[0]! + SAME || at >= along[last]! - SAME) return 0;
  let i = 1;
  while (along[i]! < at) i++;
  const before = along[i - 1]!;
  const part = (at - before) / (along[i]! - before);
  const rise = high[i - 1]! + part * (high[i]! - high[i - 1]!);
  return Math.max(rise, 0);
}
