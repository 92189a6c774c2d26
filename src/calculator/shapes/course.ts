import type { Point } from './outline.ts';
import type { Side } from './sides.ts';

/** The endless line or whole circle that a moved side runs on, followed in the side's own direction. */
export interface Course {
  /** The point of the course that lies square to the finished corner. */
  readonly foot: Point;
  readonly along: Point;
  readonly circle: { readonly centre: Point; readonly radius: number; readonly sense: number } | null;
}

/** The foot of a corner: the allowance away, to the right of the direction of travel, which is outward. */
const footOf = (corner: Point, along: Point, allowance: number): Point => ({
  x: corner.x + along.y * allowance,
  y: corner.y - along.x * allowance,
});

/** The course of a side moved outward, seen from the corner where it faces `along`. */
export const courseOf = (side: Side, corner: Point, along: Point, allowance: number): Course => {
  const foot = footOf(corner, along, allowance);
  if (side.arc === null) return { foot, along, circle: null };
  const sense = Math.sign(side.arc.sweep);
  return {
    foot,
    along,
    circle: { centre: side.arc.centre, radius: side.arc.radius + sense * allowance, sense },
  };
};

/** Radians from one direction to another, counter-clockwise, between minus and plus a half turn. */
export const angleBetween = (a: Point, b: Point): number =>
  Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y);

export const from = (origin: Point, point: Point): Point => ({
  x: point.x - origin.x,
  y: point.y - origin.y,
});

/** How far a point of the course lies beyond its foot, measured along the course; negative is before it. */
export const beyond = ({ foot, along, circle }: Course, point: Point): number => {
  if (circle === null) return (point.x - foot.x) * along.x + (point.y - foot.y) * along.y;
  const angle = angleBetween(from(circle.centre, foot), from(circle.centre, point));
  return angle * circle.sense * circle.radius;
};

/** Where a straight course meets another course: no, one or two points. */
const meetStraight = (line: Course, other: Course): Point[] => {
  const { foot, along } = line;
  if (other.circle === null) {
    const cross = along.x * other.along.y - along.y * other.along.x;
    if (cross === 0) return [];
    const gap = from(foot, other.foot);
    const t = (gap.x * other.along.y - gap.y * other.along.x) / cross;
    return [{ x: foot.x + along.x * t, y: foot.y + along.y * t }];
  }
  const toCentre = from(foot, other.circle.centre);
  const nearest = toCentre.x * along.x + toCentre.y * along.y;
  const aside = toCentre.x * along.y - toCentre.y * along.x;
  const half = other.circle.radius ** 2 - aside ** 2;
  if (half < 0) return [];
  return [nearest - Math.sqrt(half), nearest + Math.sqrt(half)].map((t) => ({
    x: foot.x + along.x * t,
    y: foot.y + along.y * t,
  }));
};

/** Where two courses meet: no, one or two points. */
export const meet = (a: Course, b: Course): Point[] => {
  if (a.circle === null) return meetStraight(a, b);
  if (b.circle === null) return meetStraight(b, a);
  const gap = from(a.circle.centre, b.circle.centre);
  const apart = Math.hypot(gap.x, gap.y);
  if (apart === 0) return [];
  // Two circles meet on the line square to their centres' line, this far from the first centre.
  const t = (apart + (a.circle.radius ** 2 - b.circle.radius ** 2) / apart) / 2;
  const along = { x: gap.x / apart, y: gap.y / apart };
  const foot = { x: a.circle.centre.x + along.x * t, y: a.circle.centre.y + along.y * t };
  return meetStraight({ foot, along: { x: -along.y, y: along.x }, circle: null }, a);
};
