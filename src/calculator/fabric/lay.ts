import type { CutPatch } from '../shapes/shape.ts';
import type { Lie } from './lie.ts';
import { evenly, fitting, reachOf, type Spacing } from './spacing.ts';

/** The ways of laying patches on cloth. Strips are cut straight; the others are traced, or cut with a template. */
export type CuttingMethod = 'strips' | 'nested' | 'turned' | 'squares';

/** One row of a lay: patches that lie alternately in two ways, the first in the first way. */
export interface Row {
  /** Inches from the cloth's edge to the first patch. */
  readonly lead: number;
  readonly patches: Spacing;
  readonly lies: readonly [Lie, Lie];
}

/** How one patch repeats, before the size of the cloth is known. */
export interface Lay {
  readonly method: CuttingMethod;
  /** The patch that is laid: the one asked for, or its blunt-cornered twin where only that one fits. */
  readonly patch: CutPatch;
  /** The first, third … row and the second, fourth …. */
  readonly rows: readonly [Row, Row];
  /** The rows' height (of a strip: how wide it is cut) and how far apart they start. */
  readonly stack: Spacing;
  /** The angles to the row, in degrees, of the straight cuts within it; none where it is not cut straight. */
  readonly cutAngles: readonly number[];
}

/** A row of patches that all lie one way. */
export const oneWayRow = (lie: Lie, step: number, lead = 0): Row => ({
  lead,
  patches: evenly(lie.width, step),
  lies: [lie, lie],
});

/** How many rows fit across a depth of cloth. */
export const rowsIn = (lay: Lay, depth: number): number => fitting(lay.stack, depth);

/** How many patches fit in each of the two kinds of row. */
export const perRow = ({ rows }: Lay, length: number): [number, number] => [
  fitting(rows[0].patches, length - rows[0].lead),
  fitting(rows[1].patches, length - rows[1].lead),
];

/** The length of row that so many patches take, from the cloth's edge. */
export const lengthOf = ({ lead, patches }: Row, n: number): number => lead + reachOf(patches, n);

/** How many patches so many rows hold. */
export const inRows = (rows: number, [first, second]: readonly [number, number]): number =>
  Math.ceil(rows / 2) * first + Math.floor(rows / 2) * second;

/** How many rows it takes to hold so many patches. */
export function rowsFor(patches: number, [first, second]: readonly [number, number]): number {
  const pairs = Math.floor(patches / (first + second));
  const rest = patches - pairs * (first + second);
  if (rest > first) return 2 * pairs + 2;
  if (rest > 0) return 2 * pairs + 1;
  return second > 0 ? 2 * pairs : 2 * pairs - 1;
}
