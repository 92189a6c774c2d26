import { ok, type Result, type Wrong, wrong } from '../../measure/result.ts';
import { type Allowance, laidOut } from './face.ts';
import { read } from './readings.ts';
import type { Dimensions, MeasureName, Shape } from './shape.ts';

/** One measure of a shape, the value that it is to have, and the dimension to find for it. Inches. */
export interface Unknown {
  readonly measure: MeasureName;
  readonly dimension: keyof Dimensions;
  readonly value: number;
}

/** Dimensions that are known already. */
type Known = Partial<Dimensions>;

/** Below this finished size, in inches, nothing is left. */
const NOTHING = 1e-9;

const measureAt = (shape: Shape, allowance: Allowance, measure: MeasureName, dimensions: Known): number =>
  read(shape.measures[measure]!, laidOut(shape, dimensions as Dimensions, allowance));

/** A first guess well above the seam, so that rounding in the seam's share stays small beside it. */
const firstGuess = ({ value }: Unknown, { seam }: Allowance): number => value + 4 * seam;

const nothingLeft = ({ measure, value }: Unknown, least: number): Wrong =>
  wrong('nothing-left', { measure, value, least });

/**
 * The finished dimension at which a measure has the stated value. At a fixed seam a measure is so much for
 * each inch of size and so much for the seam, whatever the shape: two trials tell both.
 */
export const solve = (shape: Shape, allowance: Allowance, unknown: Unknown, known: Known): Result<number> => {
  const { measure, dimension, value } = unknown;
  const at = (size: number) => measureAt(shape, allowance, measure, { ...known, [dimension]: size });
  const trial = firstGuess(unknown, allowance);
  const atTrial = at(trial);
  const perInch = (at(2 * trial) - atTrial) / trial;
  const size = trial + (value - atTrial) / perInch;
  return size > NOTHING ? ok(size) : nothingLeft(unknown, atTrial - perInch * trial);
};

/** The steps that, by these slopes, make good what each measure misses: Gauss's elimination. */
const steps = (slopes: readonly (readonly number[])[], misses: readonly number[]): number[] => {
  const rows = slopes.map((row, i) => [...row, misses[i]!]);
  const n = rows.length;
  for (let i = 0; i < n; i++) {
    const pivot = rows[i]!;
    for (let below = i + 1; below < n; below++) {
      const part = rows[below]![i]! / pivot[i]!;
      rows[below] = rows[below]!.map((entry, k) => entry - part * pivot[k]!);
    }
  }
  const found = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    const row = rows[i]!;
    const known = found.reduce((sum, step, k) => sum + (k > i ? row[k]! * step : 0), 0);
    found[i] = (row[n]! - known) / row[i]!;
  }
  return found;
};

/** A slope is taken over this part of a size. */
const NUDGE = 1e-4;
const ROUNDS = 60;
const HALVINGS = 40;
/** One step never takes away more than this part of a size. */
const BOLDEST = 0.9;

/**
 * The finished dimensions at which several measures have their stated values all at once, for shapes whose
 * dimensions lean on each other (a tumbler's ends by its height): Newton's way, from well above the seam.
 */
export const solveTogether = (
  shape: Shape,
  allowance: Allowance,
  unknowns: readonly Unknown[],
  known: Known,
): Result<Dimensions> => {
  const named = (sizes: readonly number[]): Dimensions =>
    Object.assign({ ...known }, ...unknowns.map(({ dimension }, i) => ({ [dimension]: sizes[i] })));
  const measured = (sizes: readonly number[]): number[] => {
    const patch = laidOut(shape, named(sizes), allowance);
    return unknowns.map(({ measure }) => read(shape.measures[measure]!, patch));
  };
  const nudged = (sizes: readonly number[], which: number, by: number): number[] =>
    measured(sizes.map((size, i) => (i === which ? size + by : size)));

  const isShape = (sizes: readonly number[]): boolean => (shape.not?.(named(sizes)) ?? null) === null;
  /** As much of a step as does not lead out of the shape, where measures may mean something else. */
  const within = (from: readonly number[], to: readonly number[]): number[] => {
    let reached = [...to];
    for (let halved = 0; halved < HALVINGS && isShape(from) && !isShape(reached); halved++)
      reached = reached.map((size, i) => (size + from[i]!) / 2);
    return reached;
  };

  let sizes = unknowns.map((unknown) => firstGuess(unknown, allowance));
  for (let round = 0; round < ROUNDS; round++) {
    const now = measured(sizes);
    const columns = sizes.map((size, which) => {
      const [more, less] = [nudged(sizes, which, NUDGE * size), nudged(sizes, which, -NUDGE * size)];
      return more.map((measure, i) => (measure - less[i]!) / (2 * NUDGE * size));
    });
    const slopes = now.map((_, i) => columns.map((column) => column[i]!));
    const found = steps(
      slopes,
      unknowns.map(({ value }, i) => value - now[i]!),
    );
    const wanted = sizes.map((size, i) => Math.max(size + found[i]!, size * (1 - BOLDEST)));
    const next = within(sizes, wanted);
    const settled = next.every((size, i) => Math.abs(size - sizes[i]!) <= 1e-13 * size);
    sizes = next;
    const gone = sizes.findIndex((size) => size <= NOTHING);
    if (gone >= 0) return nothingLeft(unknowns[gone]!, measured(sizes)[gone]!);
    if (settled) break;
  }
  return ok(named(sizes));
};
