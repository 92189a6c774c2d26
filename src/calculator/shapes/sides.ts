import type { Outline, Point } from './outline.ts';

/** The circle that an arc side runs on, and how far it goes: radians, positive counter-clockwise. */
export interface Arc {
  readonly centre: Point;
  readonly radius: number;
  readonly sweep: number;
}

/** One side of an outline with its bulge worked out: where it runs and which way it faces at both ends. */
export interface Side {
  readonly from: Point;
  readonly to: Point;
  readonly arc: Arc | null;
  /** The direction of travel where the side leaves its first corner, one inch long. */
  readonly leaving: Point;
  /** The direction of travel where it arrives at the next corner. */
  readonly arriving: Point;
}

/** The arc of a bulge between two points. The centre lies on the left where the side swells outward. */
export const arcBetween = (from: Point, to: Point, bulge: number): Arc => {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const toCentre = (1 - bulge * bulge) / (4 * bulge);
  return {
    centre: { x: (from.x + to.x) / 2 - dy * toCentre, y: (from.y + to.y) / 2 + dx * toCentre },
    radius: (Math.hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
    sweep: 4 * Math.atan(bulge),
  };
};

/** The middle of a side: half-way along its arc, or along its straight line where the bulge is 0. */
export const middleOf = (from: Point, to: Point, bulge: number): Point => ({
  x: (from.x + to.x) / 2 + ((to.y - from.y) * bulge) / 2,
  y: (from.y + to.y) / 2 - ((to.x - from.x) * bulge) / 2,
});

/** The direction turned clockwise through the angle whose half has the given tangent. */
const turnedBack = (along: Point, tangentOfHalf: number): Point => {
  const square = tangentOfHalf * tangentOfHalf;
  const cos = (1 - square) / (1 + square);
  const sin = (2 * tangentOfHalf) / (1 + square);
  return { x: along.x * cos + along.y * sin, y: along.y * cos - along.x * sin };
};

const sideBetween = (from: Point, to: Point, bulge: number): Side => {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  if (bulge === 0) return { from, to, arc: null, leaving: along, arriving: along };
  // An arc leaves its chord by half its own angle, whose half has the bulge as its tangent.
  return {
    from,
    to,
    arc: arcBetween(from, to, bulge),
    leaving: turnedBack(along, bulge),
    arriving: turnedBack(along, -bulge),
  };
};

/** The sides of an outline in order; side i leaves corner i. */
export const sidesOf = (outline: Outline): Side[] =>
  outline.map((corner, i) => sideBetween(corner, outline[i + 1] ?? outline[0]!, corner.bulge ?? 0));
