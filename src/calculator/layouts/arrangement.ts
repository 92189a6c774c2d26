import { inFullRings } from '../../measure/rings.ts';
import { ring, type Spot, spread } from './lattice.ts';

/**
 * How rosettes or stars stand: in rings round one (1, 7, 19, 37 …), or in rows, each second row shifted by
 * half a place. Each second row may hold one more, half a place out at both ends, or one fewer, half a place in.
 */
export type Arrangement =
  | { readonly kind: 'rings'; readonly rings: number }
  | { readonly kind: 'rows'; readonly rows: number; readonly perRow: number; readonly second?: 1 | -1 };

type InRows = Extract<Arrangement, { kind: 'rows' }>;

/** How many stand in the first, third … row and in the second, fourth …. */
export const inEachRow = ({ perRow, second }: InRows): [number, number] => [perRow, perRow + (second ?? 0)];

const firsts = ({ rows }: InRows): number => Math.ceil(rows / 2);
const seconds = ({ rows }: InRows): number => Math.floor(rows / 2);

/** How many steps there are to and fro between two neighbouring rows. */
function zigzag(a: InRows): number {
  const [first, second] = inEachRow(a);
  return first === second ? 2 * first - 1 : 2 * Math.min(first, second);
}

/**
 * How many stand in an arrangement.
 *
 * @example
 * howMany({ kind: 'rings', rings: 2 }) // 19
 * howMany({ kind: 'rows', rows: 6, perRow: 5 }) // 30
 * howMany({ kind: 'rows', rows: 3, perRow: 5, second: 1 }) // 16
 */
export function howMany(a: Arrangement): number {
  if (a.kind === 'rings') return inFullRings(a.rings);
  const [first, second] = inEachRow(a);
  return firsts(a) * first + seconds(a) * second;
}

/**
 * How many pairs stand side by side.
 *
 * @example
 * pairsIn({ kind: 'rings', rings: 1 }) // 12
 * pairsIn({ kind: 'rows', rows: 6, perRow: 5 }) // 69
 */
export const pairsIn = (a: Arrangement): number =>
  a.kind === 'rings' ? 3 * a.rings * (3 * a.rings + 1) : howMany(a) - a.rows + (a.rows - 1) * zigzag(a);

/**
 * How many threes stand each beside the other two.
 *
 * @example
 * threesIn({ kind: 'rings', rings: 1 }) // 6
 * threesIn({ kind: 'rows', rows: 6, perRow: 5 }) // 40
 */
export const threesIn = (a: Arrangement): number =>
  a.kind === 'rings' ? 6 * a.rings * a.rings : (a.rows - 1) * (zigzag(a) - 1);

/** The second step's number of the first in a row. Rows run along that step, so that a row is level when it is. */
const startOf = (row: number, { second }: InRows): number =>
  -Math.floor(row / 2) - (second === 1 && row % 2 === 1 ? 1 : 0);

const rowSpots = (a: InRows): Spot[] =>
  Array.from({ length: a.rows }, (_, row) => {
    const start = startOf(row, a);
    return Array.from({ length: inEachRow(a)[row % 2]! }, (_, i) => ({ u: row, v: start + i }));
  }).flat();

/** Where each stands, in the arrangement's own two steps, 60° apart. */
export function standings(a: Arrangement): Spot[] {
  if (a.kind === 'rows') return rowSpots(a);
  return Array.from({ length: a.rings + 1 }, (_, r) => ring(r)).flat();
}

/** Whether one stands there. */
export function stands(a: Arrangement, { u, v }: Spot): boolean {
  if (a.kind === 'rings') return Math.max(Math.abs(u), Math.abs(v), Math.abs(u + v)) <= a.rings;
  const place = v - startOf(u, a);
  return u >= 0 && u < a.rows && place >= 0 && place < inEachRow(a)[u % 2]!;
}

/** The centres, on the patches' lattice, when neighbours are `step` apart (and `step` turned 60°). */
export const centresOf = (a: Arrangement, step: Spot): Spot[] =>
  standings(a).map((spot) => spread(spot, step));
