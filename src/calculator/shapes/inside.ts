import { passes } from './extent.ts';
import type { Outline, Point } from './outline.ts';
import { type Arc, type Side, sidesOf } from './sides.ts';

const from = (origin: Point, { x, y }: Point): Point => ({ x: x - origin.x, y: y - origin.y });

/**
 * Whether a point lies to the right of a side's chord. One on the chord itself counts as a hair higher up, and
 * then as a hair further along, so that chord and arc always agree about it.
 */
const isRightOf = ({ from: a, to: b }: Side, { x, y }: Point): boolean => {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const cross = dx * (y - a.y) - dy * (x - a.x);
  return cross < 0 || (cross === 0 && (dx < 0 || (dx === 0 && dy > 0)));
};

/** Whether a level line from the point along x crosses the chord of a side. */
const crossesChord = (side: Side, point: Point): boolean => {
  const { from: a, to: b } = side;
  return a.y > point.y !== b.y > point.y && isRightOf(side, point) === b.y < a.y;
};

/** Whether the point lies between an arc and its chord. */
const isInSegment = (side: Side, point: Point): boolean => {
  const { arc } = side;
  if (arc === null || isRightOf(side, point) !== arc.sweep > 0) return false;
  return Math.hypot(point.x - arc.centre.x, point.y - arc.centre.y) < arc.radius;
};

/** What lies between an arc and its chord is added to the polygon of chords, or taken from it. */
const isInside = (sides: readonly Side[], point: Point): boolean =>
  sides.filter((side) => crossesChord(side, point) !== isInSegment(side, point)).length % 2 === 1;

const toChord = ({ from: a, to: b }: Side, point: Point): number => {
  const [run, way] = [from(a, b), from(a, point)];
  const part = (run.x * way.x + run.y * way.y) / (run.x ** 2 + run.y ** 2);
  const held = Math.min(1, Math.max(0, part));
  return Math.hypot(way.x - held * run.x, way.y - held * run.y);
};

const toArc = ({ from: a, to: b }: Side, arc: Arc, point: Point): number => {
  const way = from(arc.centre, point);
  if (passes(arc, a, way)) return Math.abs(Math.hypot(way.x, way.y) - arc.radius);
  return Math.min(...[a, b].map((end) => Math.hypot(point.x - end.x, point.y - end.y)));
};

/** As `depthIn`, of an outline whose sides have been worked out. */
export const depthAmong = (sides: readonly Side[], point: Point): number => {
  const nearest = Math.min(
    ...sides.map((side) => (side.arc === null ? toChord(side, point) : toArc(side, side.arc, point))),
  );
  return isInside(sides, point) ? nearest : -nearest;
};

/**
 * How deep a point lies within an outline, in inches: its distance from the nearest side, below zero outside.
 *
 * @example
 * depthIn([{ x: 0, y: 0 }, { x: 4, y: 0 }, { x: 4, y: 4 }, { x: 0, y: 4 }], { x: 1, y: 2 }) // 1
 * depthIn([{ x: -1, y: 0, bulge: 1 }, { x: 1, y: 0, bulge: 1 }], { x: 0, y: 3 }) // -2
 */
export const depthIn = (outline: Outline, point: Point): number => depthAmong(sidesOf(outline), point);
