import { ok, type Result, TOLERANCE, wrong } from '../../measure/result.ts';
import { CATALOGUE, measuresOf } from './catalogue.ts';
import { type Allowance, FINISHED } from './face.ts';
import { widestAllowance } from './offset.ts';
import type { CornerStyle, Dimensions, FurtherDimension, MeasureName, Shape, ShapeName } from './shape.ts';
import { solve, solveTogether, type Unknown } from './solve.ts';

/** A size as a member states it: which measure it is, of the finished or of the cut patch. Inches. */
export interface StatedSize {
  readonly measure: MeasureName;
  readonly given: 'finished' | 'cut';
  readonly value: number;
  /** The second size of a shape that has two, finished or cut as the first is. The first again when left out. */
  readonly side?: number;
  /** Further dimensions, finished or cut as the size is; angles in degrees. The usual ones where left out. */
  readonly also?: Readonly<Partial<Record<FurtherDimension, number>>>;
  readonly seam: number;
  readonly cornerStyle: CornerStyle;
}

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
  const other = { edge: 1, side: 1 };
  const edge = solve(shape, allowance, unknowns[0], other);
  if (!edge.ok) return edge;
  const side = solve(shape, allowance, unknowns[1], other);
  return side.ok ? ok({ edge: edge.value, side: side.value }) : side;
};

/** The edge by the stated measure, with the further dimensions that were stated. */
const solveAll = (shape: Shape, allowance: Allowance, stated: StatedSize): Result<Dimensions> => {
  const further = Object.entries(stated.also ?? {}) as [FurtherDimension, number][];
  const angles = further.filter(([dimension]) => shape.also?.[dimension] === null);
  const lengths = further.flatMap(([dimension, value]) => {
    const measure = shape.also?.[dimension];
    return measure ? [{ measure, dimension, value }] : [];
  });
  const fixed = Object.fromEntries(angles);
  const edge: Unknown = { measure: stated.measure, dimension: 'edge', value: stated.value };
  if (lengths.length > 0) return solveTogether(shape, allowance, [edge, ...lengths], fixed);
  const alone = solve(shape, allowance, edge, fixed);
  return alone.ok ? ok({ ...fixed, edge: alone.value }) : alone;
};

/** The dimensions, if a patch can be made of them with this seam. */
const made = (shape: Shape, dimensions: Dimensions, seam: number): Result<Dimensions> => {
  const not = shape.not?.(dimensions) ?? null;
  if (not !== null) return wrong(not, { shape: shape.name });
  const most = widestAllowance(shape.outline(dimensions));
  return seam < most - TOLERANCE
    ? ok(dimensions)
    : wrong('seam-closes-curve', { shape: shape.name, seam, most });
};

/**
 * Back from a measure, finished or cut, to the finished dimensions.
 *
 * Says `nothing-left` (with the measure, its value, and the least it could be) when the seams take up all of
 * a cut measure, `no-such-measure` when the shape has not got it, `not-narrower` of a tumbler that is none, and
 * `seam-closes-curve` (with the seam and what it must stay under) when the seam would close up a hollow side.
 *
 * @example
 * dimensionsFrom('hexagon', { measure: 'flats', given: 'cut', value: 3.0981, seam: 0.25, cornerStyle: 'pointed' }).value.edge // 1.5
 * dimensionsFrom('rectangle', { measure: 'width', given: 'cut', value: 2.5, side: 3.5, seam: 0.25, cornerStyle: 'pointed' }).value.side // 3
 * dimensionsFrom('long-hexagon', { measure: 'edge', given: 'finished', value: 2, also: { side: 3, angle: 60 }, seam: 0.25, cornerStyle: 'pointed' }).value.side // 3
 * dimensionsFrom('square', { measure: 'edge', given: 'cut', value: 0.25, seam: 0.25, cornerStyle: 'pointed' }).problem.code // "nothing-left"
 */
export const dimensionsFrom = (name: ShapeName, stated: StatedSize): Result<Dimensions> => {
  const shape = CATALOGUE[name];
  const { measure, given, seam, cornerStyle } = stated;
  const accepts = measuresOf(name, given);
  if (!accepts.includes(measure)) return wrong('no-such-measure', { shape: name, measure, given, accepts });
  const allowance = given === 'cut' ? { seam, cornerStyle } : FINISHED;
  const found =
    shape.second === undefined
      ? solveAll(shape, allowance, stated)
      : solveBoth(shape, allowance, bothUnknown(shape.second, stated));
  return found.ok ? made(shape, found.value, seam) : found;
};
