import type { Placement } from '../shapes/place.ts';
import type { Lay, Row } from './lay.ts';
import { startOf } from './spacing.ts';

/**
 * Every patch of so many rows, as a place for its cut outline. Rows run along x from the margin's corner;
 * lengthwise ones are turned a quarter, to run along y, and `lengthwise` is then how far they reach.
 */
export function placed(
  lay: Lay,
  rows: number,
  perRow: readonly [number, number],
  lengthwise: number | undefined,
  margin: number,
): Placement[] {
  const places: Placement[] = [];
  for (let row = 1; row <= rows; row++) {
    const kind = row % 2 === 1 ? 0 : 1;
    for (let n = 1; n <= perRow[kind]; n++) {
      const place = inRow(lay.rows[kind], n, startOf(lay.stack, row));
      const there = lengthwise === undefined ? place : aQuarterTurned(place, lengthwise);
      places.push({ ...there, x: there.x + margin, y: there.y + margin });
    }
  }
  return places;
}

function inRow(row: Row, n: number, rowStart: number): Placement {
  const lie = row.lies[n % 2 === 1 ? 0 : 1];
  return {
    x: row.lead + startOf(row.patches, n) + lie.origin.x,
    y: rowStart + lie.origin.y,
    turnDegrees: lie.turnDegrees,
  };
}

/** A quarter turn clockwise: along the row becomes down the cloth, across the row becomes along its width. */
const aQuarterTurned = ({ x, y, turnDegrees }: Placement, reach: number): Placement => ({
  x: y,
  y: reach - x,
  turnDegrees: turnDegrees - 90,
});
