import { ok, type Result, wrong } from '../../measure/result.ts';
import { CATALOGUE, measuresOf } from './catalogue.ts';
import { type Allowance, FINISHED, laidOut } from './face.ts';
import { read } from './readings.ts';
import type { CornerStyle, Dimensions, MeasureName, Shape, ShapeName } from './shape.ts';

/** A size as a member states it: which measure it is, of the finished or of the cut patch. Inches. */
export interface StatedSize {
  readonly measure: MeasureName;
  readonly given: 'finished' | 'cut';
  readonly value: number;
  /** The second size of a shape that has two, finished or cut as the first is. The first again when left out. */
  readonly side?: number;
  readonly seam: number;
  readonly cornerStyle: CornerStyle;
}

/** One measure of a shape, and the one dimension that it grows with. */
interface Unknown {
  readonly measure: MeasureName;
  readonly dimension: keyof Dimensions;
  readonly value: number;
}

/** Below this finished size, in inches, nothing is left. */
const NOTHING = 1e-9;

const measureAt = (
  shape: Shape,
  allowance: Allowance,
  { measure, dimension }: Unknown,
  size: number,
): number => {
  const dimensions = { edge: 1, side: 1, [dimension]: size };
  return read(shape.measures[measure]!, laidOut(shape, dimensions, allowance));
};

/**
 * The finished dimension at which a measure has the stated value. At a fixed seam a measure is so much for
 * each inch of size and so much for the seam, whatever the shape: two trials tell both.
 */
const solve = (shape: Shape, allowance: Allowance, unknown: Unknown): Result<number> => {
  // Trials well above the seam, so that rounding in the seam's share stays small beside them.
  const trial = unknown.value + 4 * allowance.seam;
  const atTrial = measureAt(shape, allowance, unknown, trial);
  const perInch = (measureAt(shape, allowance, unknown, 2 * trial) - atTrial) / trial;
  const size = trial + (unknown.value - atTrial) / perInch;
  if (size > NOTHING) return ok(size);
  const { measure, value } = unknown;
  return wrong('nothing-left', { measure, value, least: atTrial - perInch * trial });
};

/** The unknowns of a shape that has two dimensions. The stated measure says which of the two comes first. */
const bothUnknown = (
  second: MeasureName,
  { measure, value, side = value }: StatedSize,
): [Unknown, Unknown] => {
  const [along, up] = measure === second ? [side, value] : [value, side];
  const first = measure === second ? 'width' : measure;
  return [
    { measure: first, dimension: 'edge', value: along },
    { measure: second, dimension: 'side', value: up },
  ];
};

const solveBoth = (shape: Shape, allowance: Allowance, unknowns: [Unknown, Unknown]): Result<Dimensions> => {
  const edge = solve(shape, allowance, unknowns[0]);
  if (!edge.ok) return edge;
  const side = solve(shape, allowance, unknowns[1]);
  return side.ok ? ok({ edge: edge.value, side: side.value }) : side;
};

/**
 * Back from a measure, finished or cut, to the finished dimensions.
 *
 * Says `nothing-left` (with the measure, its value, and the least it could be) when the seams take up all of
 * a cut measure, and `no-such-measure` when the shape has not got it.
 *
 * @example
 * dimensionsFrom('hexagon', { measure: 'flats', given: 'cut', value: 3.0981, seam: 0.25, cornerStyle: 'pointed' }).value.edge // 1.5
 * dimensionsFrom('rectangle', { measure: 'width', given: 'cut', value: 2.5, side: 3.5, seam: 0.25, cornerStyle: 'pointed' }).value.side // 3
 * dimensionsFrom('square', { measure: 'edge', given: 'cut', value: 0.25, seam: 0.25, cornerStyle: 'pointed' }).problem.code // "nothing-left"
 */
export const dimensionsFrom = (name: ShapeName, stated: StatedSize): Result<Dimensions> => {
  const shape = CATALOGUE[name];
  const { measure, given, value, seam, cornerStyle } = stated;
  const accepts = measuresOf(name, given);
  if (!accepts.includes(measure)) return wrong('no-such-measure', { shape: name, measure, given, accepts });
  const allowance = given === 'cut' ? { seam, cornerStyle } : FINISHED;
  if (shape.second !== undefined) return solveBoth(shape, allowance, bothUnknown(shape.second, stated));
  const edge = solve(shape, allowance, { measure, dimension: 'edge', value });
  return edge.ok ? ok({ edge: edge.value }) : edge;
};
