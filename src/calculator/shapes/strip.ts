import { CATALOGUE } from './catalogue.ts';
import { faceOf } from './face.ts';
import type { Angles, Dimensions, ShapeName, StripRule } from './shape.ts';

/** How one patch is cut from a strip, in inches and degrees. */
export interface PatchStrip {
  readonly height: number;
  readonly angles: readonly number[];
  readonly step: number;
  readonly stepTaken: StripRule['stepTaken'];
  readonly trim: readonly number[];
}

/**
 * The strip to cut for a patch, the angle of the cross cuts and how far apart they are: for a 60° diamond a
 * strip as high as the diamond, cut across at 60° that same height apart. Read off the patch with pointed
 * corners; blunt ones are trimmed afterwards. Common practice with ruler and rotary cutter, no source.
 *
 * @example
 * stripFor('diamond', { edge: 2 }, 0.25).height // 2.2321
 * stripFor('triangle', { edge: 2 }, 0.25).step // 2.866
 */
export const stripFor = (name: ShapeName, dimensions: Dimensions, seam: number): PatchStrip => {
  const shape = CATALOGUE[name];
  const { height, step, angles, stepTaken, trim } = shape.strip;
  const { measures } = faceOf(shape, dimensions, { seam, cornerStyle: 'pointed' }, [height, step]);
  const degrees = (of: Angles) => (typeof of === 'function' ? of(dimensions) : of);
  return {
    height: measures[height]!,
    step: measures[step]!,
    angles: degrees(angles),
    stepTaken,
    trim: degrees(trim),
  };
};
