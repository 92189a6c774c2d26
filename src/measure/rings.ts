/*
 * How so many things of one kind can stand together: in full rings round one, or in rows.
 */

/**
 * How many stand in full rings round one: 1, 7, 19, 37 … (the centred hexagonal numbers, OEIS A003215).
 *
 * @example
 * inFullRings(0) // 1
 * inFullRings(2) // 19
 */
export const inFullRings = (rings: number): number => 3 * rings * (rings + 1) + 1;

/**
 * The most full rings that so many make, with some left over or none. A count of at least one.
 *
 * @example
 * fullRingsIn(18) // 1
 * fullRingsIn(19) // 2
 */
export const fullRingsIn = (count: number): number =>
  Math.max(0, Math.floor((Math.sqrt(Math.max(0, 12 * count - 3)) - 3) / 6 + 1e-9));

/**
 * Whether so many stand in full rings with none left over.
 *
 * @example
 * isFullRings(37) // true
 * isFullRings(12) // false
 */
export const isFullRings = (count: number): boolean =>
  count >= 1 && inFullRings(fullRingsIn(count)) === count;

/** How many rows, and how many in each. */
export interface Rows {
  readonly rows: number;
  readonly perRow: number;
}

/**
 * So many in rows, as near to a square as may be; null for no whole number above zero, or where a row would be
 * longer than `most`.
 *
 * @example
 * squarestRows(12) // {"rows":3,"perRow":4}
 * squarestRows(11) // {"rows":1,"perRow":11}
 * squarestRows(1009) // null
 */
export function squarestRows(count: number, most = 1000): Rows | null {
  if (!Number.isInteger(count) || count < 1) return null;
  let rows = Math.min(most, Math.floor(Math.sqrt(count)));
  while (count % rows !== 0) rows--;
  return count / rows > most ? null : { rows, perRow: count / rows };
}
