import { ring, type Spot, spread } from './lattice.ts';

/**
 * How rosettes or stars stand: in rings round one (1, 7, 19, 37 …), or in rows, each second row shifted by
 * half a place.
 */
export type Arrangement =
  | { readonly kind: 'rings'; readonly rings: number }
  | { readonly kind: 'rows'; readonly rows: number; readonly perRow: number };

/**
 * How many stand in an arrangement.
 *
 * @example
 * howMany({ kind: 'rings', rings: 2 }) // 19
 * howMany({ kind: 'rows', rows: 6, perRow: 5 }) // 30
 */
export const howMany = (a: Arrangement): number =>
  a.kind === 'rings' ? 3 * a.rings * (a.rings + 1) + 1 : a.rows * a.perRow;

/**
 * How many pairs stand side by side.
 *
 * @example
 * pairsIn({ kind: 'rings', rings: 1 }) // 12
 * pairsIn({ kind: 'rows', rows: 6, perRow: 5 }) // 69
 */
export const pairsIn = (a: Arrangement): number =>
  a.kind === 'rings'
    ? 3 * a.rings * (3 * a.rings + 1)
    : a.rows * (a.perRow - 1) + (a.rows - 1) * (2 * a.perRow - 1);

/**
 * How many threes stand each beside the other two.
 *
 * @example
 * threesIn({ kind: 'rings', rings: 1 }) // 6
 * threesIn({ kind: 'rows', rows: 6, perRow: 5 }) // 40
 */
export const threesIn = (a: Arrangement): number =>
  a.kind === 'rings' ? 6 * a.rings * a.rings : 2 * (a.rows - 1) * (a.perRow - 1);

/** Rows run along the second step, so that a row is level when that step is. */
const shift = (row: number): number => Math.floor(row / 2);

const rowSpots = (rows: number, perRow: number): Spot[] =>
  Array.from({ length: rows * perRow }, (_, i) => {
    const row = Math.floor(i / perRow);
    return { u: row, v: (i % perRow) - shift(row) };
  });

/** Where each stands, in the arrangement's own two steps, 60° apart. */
export function standings(a: Arrangement): Spot[] {
  if (a.kind === 'rows') return rowSpots(a.rows, a.perRow);
  return Array.from({ length: a.rings + 1 }, (_, r) => ring(r)).flat();
}

/** Whether one stands there. */
export function stands(a: Arrangement, { u, v }: Spot): boolean {
  if (a.kind === 'rings') return Math.max(Math.abs(u), Math.abs(v), Math.abs(u + v)) <= a.rings;
  const place = v + shift(u);
  return u >= 0 && u < a.rows && place >= 0 && place < a.perRow;
}

/** The centres, on the patches' lattice, when neighbours are `step` apart (and `step` turned 60°). */
export const centresOf = (a: Arrangement, step: Spot): Spot[] =>
  standings(a).map((spot) => spread(spot, step));
