import { angleBetween, beyond, type Course, courseOf, meet } from './course.ts';
import { type Joint, pointedJoint } from './frame.ts';
import type { Point } from './outline.ts';
import type { CornerAllowance } from './shape.ts';
import type { Side } from './sides.ts';

/** Radians and inches. Sides that turn less than this run straight on; courses this near to a point reach it. */
const HAIR = 1e-9;

/** Of the points where two courses meet, the nearest that prolongs both (or, at a hollow corner, shortens both). */
const nearestMeeting = (before: Course, after: Course, turn: number): Point | undefined => {
  const way = Math.sign(turn);
  const reach = (point: Point) => [beyond(before, point) * way, -beyond(after, point) * way] as const;
  return meet(before, after)
    .filter((point) => Math.min(...reach(point)) >= -HAIR)
    .sort((p, q) => Math.max(...reach(p)) - Math.max(...reach(q)))[0];
};

/** Where two straight sides meet after both are moved; they always do. */
const straightTip = (corner: Point, before: Course, after: Course, allowance: number): Point => {
  const share = 1 + before.along.x * after.along.x + before.along.y * after.along.y;
  return {
    x: corner.x + (allowance * (before.along.y + after.along.y)) / share,
    y: corner.y - (allowance * (before.along.x + after.along.x)) / share,
  };
};

const meetingTip = (corner: Point, before: Course, after: Course, turn: number, allowance: number) => {
  if (before.circle === null && after.circle === null) return straightTip(corner, before, after, allowance);
  return nearestMeeting(before, after, turn);
};

/** The allowance ends in an arc about the finished corner. */
const rounded = (before: Course, after: Course, turn: number): Joint => ({
  arrive: before.foot,
  leave: after.foot,
  bulge: Math.tan(turn / 4),
});

/** The straight cut across a corner, square to its bisector, the allowance away from the finished corner. */
const cutAcross = (corner: Point, before: Course, after: Course, allowance: number): Course => {
  const x = before.along.x - after.along.x;
  const y = before.along.y - after.along.y;
  const length = Math.hypot(x, y);
  return {
    foot: { x: corner.x + (x / length) * allowance, y: corner.y + (y / length) * allowance },
    along: { x: -y / length, y: x / length },
    circle: null,
  };
};

/** Where a course first reaches the cut; `way` is 1 to look beyond its foot and -1 to look before it. */
const reachCut = (course: Course, cut: Course, way: number): Point | undefined =>
  meet(cut, course)
    .filter((point) => beyond(course, point) * way >= -HAIR)
    .sort((p, q) => (beyond(course, p) - beyond(course, q)) * way)[0];

const blunt = (corner: Point, before: Course, after: Course, tip: Point, allowance: number): Joint => {
  const cut = cutAcross(corner, before, after, allowance);
  // Arcs may meet before the cut reaches them; then there is nothing to cut off.
  const outside = (tip.x - cut.foot.x) * cut.along.y - (tip.y - cut.foot.y) * cut.along.x > 0;
  const arrive = outside ? reachCut(before, cut, 1) : undefined;
  const leave = outside ? reachCut(after, cut, -1) : undefined;
  return arrive === undefined || leave === undefined ? pointedJoint(tip) : { arrive, leave, bulge: 0 };
};

/**
 * Joins two neighbouring sides, both moved outward by the allowance, at the corner between them.
 *
 * At a hollow corner the moved sides shorten to where they meet, whatever the corners are to be.
 */
export const join = (before: Side, after: Side, allowance: number, corners: CornerAllowance): Joint => {
  const corner = after.from;
  const arriving = courseOf(before, corner, before.arriving, allowance);
  const leaving = courseOf(after, corner, after.leaving, allowance);
  const turn = angleBetween(before.arriving, after.leaving);
  if (Math.abs(turn) < HAIR) return pointedJoint(leaving.foot);
  // A cusp may come out as a half turn either way; outward it is the convex one.
  const convexTurn = turn < HAIR - Math.PI ? -turn : turn;
  const tip = meetingTip(corner, arriving, leaving, convexTurn, allowance);
  if (tip === undefined) return rounded(arriving, leaving, convexTurn);
  if (convexTurn < 0 || corners === 'pointed') return pointedJoint(tip);
  if (corners === 'rounded') return rounded(arriving, leaving, convexTurn);
  return blunt(corner, arriving, leaving, tip, allowance);
};
