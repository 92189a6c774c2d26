import { beyond, courseOf, meet } from './course.ts';
import { box } from './extent.ts';
import { depthAmong } from './inside.ts';
import type { Outline, Point } from './outline.ts';
import { SHARED_LINE } from './place.ts';
import { type Side, sidesOf } from './sides.ts';

const lengthOf = ({ from, to, arc }: Side): number =>
  arc === null ? Math.hypot(to.x - from.x, to.y - from.y) : arc.radius * Math.abs(arc.sweep);

/** The point of a side so far along it from its first corner. */
const pointAt = ({ from, leaving, arc }: Side, along: number): Point => {
  if (arc === null) return { x: from.x + leaving.x * along, y: from.y + leaving.y * along };
  const { centre, radius, sweep } = arc;
  const angle = Math.atan2(from.y - centre.y, from.x - centre.x) + (Math.sign(sweep) * along) / radius;
  return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
};

const wholeCourse = (side: Side) => courseOf(side, side.from, side.leaving, 0);

/** The middles of the pieces into which a side falls where the lines and circles of the others cross it. */
const piecesOf = (side: Side, others: readonly Side[]): Point[] => {
  const length = lengthOf(side);
  const course = wholeCourse(side);
  // On a circle a point just before the first corner may as well be a turn beyond it.
  const turn = side.arc === null ? 0 : 2 * Math.PI * side.arc.radius;
  const cuts = others
    .flatMap((other) => meet(course, wholeCourse(other)))
    .map((point) => beyond(course, point))
    .map((along) => (along < 0 ? along + turn : along))
    .filter((along) => along > 0 && along < length);
  const ends = [0, ...cuts.sort((a, b) => a - b), length];
  return ends.slice(1).map((end, i) => pointAt(side, (ends[i]! + end) / 2));
};

const reachesInto = (sides: readonly Side[], others: readonly Side[]): boolean =>
  sides.some((side) => piecesOf(side, others).some((middle) => depthAmong(others, middle) > SHARED_LINE));

/** A step inward from the middle of a side that is surely further than a shared line, in inches. */
const INWARD = 1e-3;

/** Whether two outlines that do not cross are one and the same: then a spot just inside one is in the other. */
const coincide = (sides: readonly Side[], others: readonly Side[]): boolean =>
  sides.some((side) => {
    const { x, y } = pointAt(side, lengthOf(side) / 2);
    const ahead = pointAt(side, lengthOf(side) / 2 + INWARD);
    const inner = { x: x - (ahead.y - y), y: y + (ahead.x - x) };
    return depthAmong(sides, inner) > SHARED_LINE && depthAmong(others, inner) > SHARED_LINE;
  });

const areApart = (a: Outline, b: Outline): boolean => {
  const [one, other] = [box(a), box(b)];
  return (
    one.left + one.width <= other.left + SHARED_LINE ||
    other.left + other.width <= one.left + SHARED_LINE ||
    one.bottom + one.height <= other.bottom + SHARED_LINE ||
    other.bottom + other.height <= one.bottom + SHARED_LINE
  );
};

/**
 * Whether two outlines of any kind, arcs and hollows too, cover some of the same cloth: some piece of a side of
 * one lies within the other, or the two are the same. Exact: sides are cut where the other's cross them.
 */
export const curvedOverlap = (a: Outline, b: Outline): boolean => {
  if (areApart(a, b)) return false;
  const [sides, others] = [sidesOf(a), sidesOf(b)];
  return reachesInto(sides, others) || reachesInto(others, sides) || coincide(sides, others);
};
