import { angleBetween, from } from './course.ts';
import { type Frame, frameOf, outlineOf } from './frame.ts';
import { join } from './joint.ts';
import type { Outline, Point } from './outline.ts';
import type { CornerAllowance } from './shape.ts';
import { type Side, sidesOf } from './sides.ts';

/** The bulge of an arc side once its circle has grown or shrunk and its ends have been joined. */
const movedBulge = (side: Side, start: Point, end: Point): number => {
  if (side.arc === null) return 0;
  const sense = Math.sign(side.arc.sweep);
  const angle = angleBetween(from(side.arc.centre, start), from(side.arc.centre, end)) * sense;
  return Math.tan((angle < 0 ? angle + 2 * Math.PI : angle) / 4) * sense;
};

/** As `offset`, but still knowing which side and which corner is which. */
export const offsetFrame = (outline: Outline, allowance: number, corners: CornerAllowance): Frame => {
  if (allowance === 0) return frameOf(outline);
  const sides = sidesOf(outline);
  const joints = sides.map((side, i) => join(sides[i - 1] ?? sides.at(-1)!, side, allowance, corners));
  const bulges = sides.map((side, i) =>
    movedBulge(side, joints[i]!.leave, (joints[i + 1] ?? joints[0]!).arrive),
  );
  return { joints, bulges };
};

/**
 * An outline with every side moved outward by the allowance, in inches.
 *
 * Corners: `pointed` where the moved sides meet; `blunt` cut off square to the corner's bisector, the
 * allowance away from the finished corner; `rounded` by an arc about the finished corner. Where moved sides
 * can never meet (a cusp, arcs that curl apart) the corner is rounded whichever was asked. At a hollow
 * corner the sides shorten to where they meet. The allowance must stay below `widestAllowance`.
 *
 * Checked against coordinates worked by hand and against an independent polygon library.
 *
 * @example
 * offset([{ x: 0, y: 0 }, { x: 2, y: 0 }, { x: 0, y: 2 }], 0.25, 'pointed')[1].x // 2.6036
 * offset([{ x: 0, y: 0 }, { x: 2, y: 0 }, { x: 0, y: 2 }], 0.25, 'blunt').length // 6
 */
export const offset = (outline: Outline, allowance: number, corners: CornerAllowance): Outline =>
  outlineOf(offsetFrame(outline, allowance, corners));

/**
 * The allowance, in inches, at which the tightest hollow side of an outline would close up. An outline
 * without hollow sides has no such bound.
 *
 * @example
 * widestAllowance([{ x: 0, y: 0 }, { x: 2, y: 0, bulge: -1 }, { x: 2, y: 1 }, { x: 0, y: 1 }]) // 0.5
 */
export const widestAllowance = (outline: Outline): number =>
  Math.min(
    ...sidesOf(outline).map(({ arc }) => (arc && arc.sweep < 0 ? arc.radius : Number.POSITIVE_INFINITY)),
  );
