import { area, perimeter } from './extent.ts';
import { type Frame, frameOf } from './frame.ts';
import { offsetFrame } from './offset.ts';
import { type Measured, measured, read } from './readings.ts';
import type { CornerStyle, Dimensions, MeasureName, Measures, PatchFace, Shape } from './shape.ts';

/** How much is added round a patch, and what becomes of its corners. No allowance is the finished face. */
export interface Allowance {
  readonly seam: number;
  readonly cornerStyle: CornerStyle;
}

export const FINISHED: Allowance = { seam: 0, cornerStyle: 'pointed' };

const frameWith = (shape: Shape, dimensions: Dimensions, { seam, cornerStyle }: Allowance): Frame => {
  const outline = shape.outline(dimensions);
  return seam === 0 ? frameOf(outline) : offsetFrame(outline, seam, shape.corners ?? cornerStyle);
};

/** A patch laid out with its allowance, ready to be measured. */
export const laidOut = (shape: Shape, dimensions: Dimensions, allowance: Allowance): Measured =>
  measured(dimensions, frameWith(shape, dimensions, allowance));

const measuresOn = (shape: Shape, patch: Measured, names: readonly MeasureName[]): Measures => {
  const measures: Partial<Record<MeasureName, number>> = {};
  for (const name of names) measures[name] = read(shape.measures[name]!, patch);
  return measures;
};

/** Everything about one face of a patch, with the measures that were asked for. */
export const faceOf = (
  shape: Shape,
  dimensions: Dimensions,
  allowance: Allowance,
  names: readonly MeasureName[],
): PatchFace => {
  const patch = laidOut(shape, dimensions, allowance);
  return {
    outline: patch.outline,
    measures: measuresOn(shape, patch, names),
    area: area(patch.outline),
    perimeter: perimeter(patch.outline),
  };
};
