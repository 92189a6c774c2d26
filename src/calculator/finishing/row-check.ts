import type { ShapeName } from '../shapes/shape.ts';

/** Which way the patches of a row follow one another: flat to flat, point to point, or side along side. */
export type RowAlong = 'flats' | 'corners' | 'edge';

/** Where the tape was laid: from sewn edge to sewn edge, or from raw edge to raw edge. */
export type RowEnds = 'sewn' | 'raw';

export interface RowAsk {
  readonly shape: ShapeName;
  readonly along: RowAlong;
  readonly ends: RowEnds;
  /** Patches in the row. */
  readonly row: number;
  /** What it measures, inches. */
  readonly measured: number;
  /** The finished side, inches. */
  readonly edge: number;
  readonly seam: number;
}

/** A sewn row beside what it should be. Inches; an error above zero is too long. */
export interface RowCheck {
  readonly expected: number;
  readonly error: number;
  /** The error shared among the patches. */
  readonly perPatch: number;
  /** How far each seam lies from its line: above zero too deep, into the patch. */
  readonly seamError: number;
  /** The allowance that was really taken. */
  readonly seamTaken: number;
  /** The finished side that the row has, as sewn. */
  readonly edgeSewn: number;
  /** What ten patches should measure between sewn edges. */
  readonly tenPatches: number;
  /** Patches that were likely miscounted, where the error is close to that many: 1 is one too many, −1 one too few. */
  readonly miscounted: number;
}

const ROOT3 = Math.sqrt(3);

interface Run {
  /** Sides that a row of n patches is long. */
  readonly sides: (n: number) => number;
  /** Allowances that the two raw ends add together. */
  readonly ends: number;
}

interface Measured {
  /** From the middle of the finished patch to a side, in sides. */
  readonly middle: number;
  readonly runs: Readonly<Partial<Record<RowAlong, Run>>>;
}

/** The shapes of which every side is as far from the middle, so that a seam's error shrinks them evenly. */
const SHAPES: Readonly<Partial<Record<ShapeName, Measured>>> = {
  hexagon: {
    middle: ROOT3 / 2,
    runs: {
      flats: { sides: (n) => n * ROOT3, ends: 2 },
      corners: { sides: (n) => (3 * n + 1) / 2, ends: 4 / ROOT3 },
    },
  },
  diamond: {
    middle: ROOT3 / 4,
    runs: {
      edge: { sides: (n) => n, ends: 4 / ROOT3 },
      flats: { sides: (n) => (n * ROOT3) / 2, ends: 2 },
      corners: { sides: (n) => n * ROOT3, ends: 4 },
    },
  },
  triangle: {
    middle: ROOT3 / 6,
    runs: {
      edge: { sides: (n) => (n + 1) / 2, ends: 4 / ROOT3 },
      flats: { sides: (n) => (n * ROOT3) / 2, ends: 2 },
    },
  },
  square: {
    middle: 1 / 2,
    runs: { flats: { sides: (n) => n, ends: 2 }, edge: { sides: (n) => n, ends: 2 } },
  },
};

/**
 * The ways a row of a shape may run, the usual one first; none where a row of it cannot be checked.
 *
 * @example
 * rowsOf('hexagon') // ["flats","corners"]
 * rowsOf('kite') // []
 */
export const rowsOf = (shape: ShapeName): RowAlong[] => Object.keys(SHAPES[shape]?.runs ?? {}) as RowAlong[];

/** Within this part of a patch the error is that of a patch counted wrong. */
const NEARLY_A_PATCH = 0.12;

/**
 * What a row should measure and where its error comes from. An error of δ a patch is n·δ along the row. When
 * every seam lies e too deep, a patch whose sides are all r from its middle shrinks by e/r, so a row of L
 * between sewn edges by eL/r; the raw ends give back what they gained. Undefined for a shape or a way that
 * cannot be checked. Derived.
 *
 * @example
 * checkRow({ shape: 'hexagon', along: 'flats', ends: 'sewn', row: 20, measured: 33.75, edge: 1, seam: 0.25 }).expected // 34.6410
 * checkRow({ shape: 'hexagon', along: 'flats', ends: 'sewn', row: 20, measured: 33.75, edge: 1, seam: 0.25 }).perPatch // -0.0446
 * checkRow({ shape: 'hexagon', along: 'flats', ends: 'sewn', row: 20, measured: 33.75, edge: 1, seam: 0.25 }).seamError // 0.0223
 */
export function checkRow(ask: RowAsk): RowCheck | undefined {
  const shape = SHAPES[ask.shape];
  const run = shape?.runs[ask.along];
  if (!shape || !run) return undefined;
  const { row, measured, edge, seam, ends } = ask;
  const rawEnds = ends === 'raw' ? run.ends : 0;
  const sewn = run.sides(row) * edge;
  const expected = sewn + rawEnds * seam;
  const error = measured - expected;
  const joins = sewn / (shape.middle * edge) - rawEnds;
  const seamError = joins > 0 ? -error / joins : 0;
  const pitch = (run.sides(row + 1) - run.sides(row)) * edge;
  return {
    expected,
    error,
    perPatch: error / row,
    seamError,
    seamTaken: seam + seamError,
    edgeSewn: edge - seamError / shape.middle,
    tenPatches: run.sides(10) * edge,
    miscounted: miscounted(error / pitch),
  };
}

function miscounted(patches: number): number {
  const whole = Math.round(patches);
  return whole !== 0 && Math.abs(patches - whole) <= NEARLY_A_PATCH ? whole : 0;
}
