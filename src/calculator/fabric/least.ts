import { inRows, type Lay, lengthOf, perRow, type Row, rowsFor, rowsIn } from './lay.ts';
import { reachOf } from './spacing.ts';

/** The least depth across the rows that yields so many patches; undefined where no patch fits the length. */
export function leastDepth(lay: Lay, patches: number, length: number): number | undefined {
  const each = perRow(lay, length);
  return each[0] === 0 ? undefined : reachOf(lay.stack, rowsFor(patches, each));
}

/**
 * The least length along the rows that yields so many patches from a depth of cloth; undefined where not
 * even one row fits. The yield grows only where one more patch fits a row, so only those lengths are tried.
 */
export function leastLength(lay: Lay, patches: number, depth: number): number | undefined {
  const rows = rowsIn(lay, depth);
  if (rows === 0) return undefined;
  const isEnough = (length: number) => inRows(rows, perRow(lay, length)) >= patches;
  const first = leastRow(lay.rows[0], Math.ceil(patches / Math.ceil(rows / 2)), isEnough);
  if (rows === 1 || lay.rows[0] === lay.rows[1]) return first;
  return Math.min(first, leastRow(lay.rows[1], Math.ceil(patches / Math.floor(rows / 2)), isEnough));
}

/** Halves the range until the shortest row is left that is enough; one of `most` patches always is. */
function leastRow(row: Row, most: number, isEnough: (length: number) => boolean): number {
  let least = 1;
  let known = most;
  while (least < known) {
    const middle = Math.floor((least + known) / 2);
    if (isEnough(lengthOf(row, middle))) known = middle;
    else least = middle + 1;
  }
  return lengthOf(row, known);
}
