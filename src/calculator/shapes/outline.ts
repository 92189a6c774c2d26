/**
 * The outline of a patch: its corners in order, counter-clockwise, in inches.
 *
 * A side runs from its corner to the next one (the last back to the first). It is straight unless the
 * corner it leaves carries a `bulge`: the tangent of a quarter of the arc's angle, positive where the arc
 * swells outward (convex), negative where it is hollow.
 */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Corner extends Point {
  readonly bulge?: number;
}

export type Outline = readonly Corner[];
