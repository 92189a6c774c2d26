import type { Corner, Outline, Point } from './outline.ts';
import { middleOf } from './sides.ts';

/**
 * What becomes of one corner when the sides are moved: the side before it ends at `arrive`, the side after
 * it starts at `leave`. The same point twice is a pointed corner; between two points runs a straight cut
 * (bulge 0) or an arc.
 */
export interface Joint {
  readonly arrive: Point;
  readonly leave: Point;
  readonly bulge: number;
}

/**
 * An outline that still knows which side and which corner is which, so that "side 2" is the same side of
 * the patch before and after the allowance, whatever was done at the corners.
 */
export interface Frame {
  readonly joints: readonly Joint[];
  /** Of each side, from its joint's `leave` to the next joint's `arrive`. */
  readonly bulges: readonly number[];
}

export const pointedJoint = (point: Point): Joint => ({ arrive: point, leave: point, bulge: 0 });

export const frameOf = (outline: Outline): Frame => ({
  joints: outline.map(pointedJoint),
  bulges: outline.map((corner) => corner.bulge ?? 0),
});

const corner = ({ x, y }: Point, bulge: number): Corner => (bulge === 0 ? { x, y } : { x, y, bulge });

export const outlineOf = ({ joints, bulges }: Frame): Outline => {
  const corners: Corner[] = [];
  for (const [i, joint] of joints.entries()) {
    if (joint.arrive !== joint.leave) corners.push(corner(joint.arrive, joint.bulge));
    corners.push(corner(joint.leave, bulges[i]!));
  }
  return corners;
};

/** The two ends of a side. */
export const endsOf = ({ joints }: Frame, side: number): readonly [Point, Point] => [
  joints[side]!.leave,
  joints[(side + 1) % joints.length]!.arrive,
];

/** The outermost point of a corner: its point, or the middle of its cut or of its arc. */
export const tipOf = ({ joints }: Frame, at: number): Point => {
  const { arrive, leave, bulge } = joints[at]!;
  return arrive === leave ? leave : middleOf(arrive, leave, bulge);
};
