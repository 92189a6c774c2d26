import { passes } from './extent.ts';
import type { Outline, Point } from './outline.ts';
import { type Arc, sidesOf } from './sides.ts';

/** The smallest square that holds an outline, and how far the outline is turned to lie in it upright. */
export interface TurnedSquare {
  /** Inches. */
  readonly side: number;
  /** Counter-clockwise, from 0 up to 90. */
  readonly degrees: number;
}

/** What can touch the edge of a square: a corner (radius 0) or an arc, over the directions it faces. */
interface Bearing {
  readonly at: Point;
  readonly radius: number;
  readonly arc: Arc | null;
  readonly start: Point;
}

const QUARTER = Math.PI / 2;

/** Turns closer than this, in radians, are one. */
const SAME_TURN = 1e-12;

const bearingsOf = (outline: Outline): Bearing[] =>
  sidesOf(outline).flatMap(({ from, arc }) => {
    const corner = { at: from, radius: 0, arc: null, start: from };
    return arc === null ? [corner] : [corner, { at: arc.centre, radius: arc.radius, arc, start: from }];
  });

const reachOf = ({ at, radius }: Bearing, cos: number, sin: number): number =>
  at.x * cos + at.y * sin + radius;

/** The bearing that lies furthest out in a direction. */
const outermost = (bearings: readonly Bearing[], angle: number): Bearing => {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  let best = bearings[0]!;
  for (const bearing of bearings) {
    if (reachOf(bearing, cos, sin) <= reachOf(best, cos, sin)) continue;
    if (bearing.arc === null || passes(bearing.arc, bearing.start, { x: cos, y: sin })) best = bearing;
  }
  return best;
};

/** How wide the outline is along a direction: `constant + x cos + y sin` as long as the same two bear. */
const spanAt = (bearings: readonly Bearing[], angle: number) => {
  const far = outermost(bearings, angle);
  const near = outermost(bearings, angle + Math.PI);
  return { constant: far.radius + near.radius, x: far.at.x - near.at.x, y: far.at.y - near.at.y };
};

const sideAt = (bearings: readonly Bearing[], angle: number): number => {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const across = spanAt(bearings, angle);
  const up = spanAt(bearings, angle + QUARTER);
  return Math.max(across.constant + across.x * cos + across.y * sin, up.constant + up.y * cos - up.x * sin);
};

/** The angles at which `x cos + y sin` equals a value. */
const anglesWhere = (x: number, y: number, value: number): number[] => {
  const size = Math.hypot(x, y);
  if (size < Math.abs(value) || size === 0) return [];
  const middle = Math.atan2(y, x);
  // The two lie opposite each other, and a square that is turned half round is the same.
  if (value === 0) return [middle + QUARTER];
  const half = Math.acos(value / size);
  return [middle - half, middle + half];
};

/** The turn of the outline, from 0 to a quarter, that brings a direction of it to an edge of the square. */
const turnFor = (direction: number): number => ((-direction % QUARTER) + QUARTER) % QUARTER;

const at = (bearings: readonly Bearing[], i: number): Bearing => bearings[i % bearings.length]!;

/** Straight sides that turn left at every corner: then only neighbours ever bear one after the other. */
const isConvex = (bearings: readonly Bearing[]): boolean =>
  bearings.every(({ at: a, arc }, i) => {
    const { at: b } = at(bearings, i + 1);
    const { at: c } = at(bearings, i + 2);
    return arc === null && (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) > 0;
  });

const neighboursOf = (bearings: readonly Bearing[]): [Bearing, Bearing][] =>
  bearings.map((bearing, i) => [bearing, at(bearings, i + 1)]);

const pairsOf = (bearings: readonly Bearing[]): [Bearing, Bearing][] =>
  bearings.flatMap((a, i) => bearings.slice(i + 1).map((b): [Bearing, Bearing] => [a, b]));

/** The turns, in order, between which the same bearings touch the four edges of the square. */
const changesOf = (bearings: readonly Bearing[]): number[] => {
  const changes = [0, QUARTER];
  for (const [a, b] of isConvex(bearings) ? neighboursOf(bearings) : pairsOf(bearings))
    changes.push(...anglesWhere(a.at.x - b.at.x, a.at.y - b.at.y, b.radius - a.radius).map(turnFor));
  changes.sort((a, b) => a - b);
  // Of equal turns one is enough: a regular patch has the same few many times over.
  return changes.filter((turn, i) => i === 0 || turn - changes[i - 1]! > SAME_TURN);
};

/** Where a stretch of turns may have its least square: where width and height agree, or one stops shrinking. */
const turningPoints = (bearings: readonly Bearing[], middle: number): number[] => {
  const across = spanAt(bearings, middle);
  const up = spanAt(bearings, middle + QUARTER);
  return [
    ...anglesWhere(across.x - up.y, across.y + up.x, up.constant - across.constant),
    Math.atan2(-across.y, -across.x),
    Math.atan2(up.x, -up.y),
  ];
};

/**
 * The smallest square that holds an outline at any turn. Exact for straight sides and for arcs: between two
 * turns at which another corner comes to bear, width and height are plain sines, so only a few turns can be
 * the least.
 *
 * @example
 * smallestSquare([{ x: 0, y: 0 }, { x: 1, y: 1 }, { x: 0, y: 2 }, { x: -1, y: 1 }]).side // 1.4142
 * smallestSquare([{ x: 0, y: 0 }, { x: 1, y: 1 }, { x: 0, y: 2 }, { x: -1, y: 1 }]).degrees // 45
 */
export const smallestSquare = (outline: Outline): TurnedSquare => {
  const bearings = bearingsOf(outline);
  const changes = changesOf(bearings);
  let best = { side: Infinity, turn: 0 };
  const consider = (turn: number): void => {
    const side = sideAt(bearings, -turn);
    if (side < best.side - 1e-11) best = { side, turn };
  };
  for (const [i, change] of changes.entries()) {
    const next = changes[i + 1] ?? change;
    consider(change);
    if (next - change < SAME_TURN) continue;
    const inside = turningPoints(bearings, -(change + next) / 2).map(turnFor);
    inside
      .filter((turn) => turn > change && turn < next)
      .sort((a, b) => a - b)
      .forEach(consider);
  }
  // A whole number of degrees is said as one, without the rounding of radians.
  return { side: best.side, degrees: Math.round(((best.turn * 180) / Math.PI) * 1e9) / 1e9 };
};
