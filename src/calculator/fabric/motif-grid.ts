import type { Outline } from '../shapes/outline.ts';
import { overlaps } from '../shapes/overlap.ts';

/**
 * An even choice of the motifs of a print: every so many columns along a row, rows so many down, each next one
 * of them shifted by so many columns.
 */
export interface Picking {
  readonly along: number;
  readonly down: number;
  readonly shift: number;
  readonly every: boolean;
}

/** Whether a convex outline keeps clear of itself moved by so much. */
export const isApart = (outline: Outline, x: number, y: number): boolean =>
  !overlaps(
    outline,
    outline.map((corner) => ({ ...corner, x: corner.x + x, y: corner.y + y })),
  );

interface Reach {
  readonly columns: number;
  readonly rows: number;
}

/** Where patches are larger than so many motifs, only the plainest choice is made. */
const MOST = 64;

/**
 * The even choices in which no two patches overlap, the fullest first. Patches so many columns or rows apart
 * as the reach says never do.
 */
export function pickings(reach: Reach, apart: (columns: number, rows: number) => boolean): Picking[] {
  if (reach.columns * reach.rows > MOST)
    return [{ along: reach.columns, down: reach.rows, shift: 0, every: false }];
  const found: Picking[] = [];
  for (let down = 1; down <= reach.rows; down++) {
    for (let along = 1; along <= reach.columns; along++) {
      for (let shift = 0; shift < along; shift++) {
        const picking = { along, down, shift, every: along === 1 && down === 1 };
        if (isClear(picking, reach, apart)) found.push(picking);
      }
    }
  }
  const fewest = Math.min(...found.map(({ along, down }) => along * down));
  return found.filter(({ along, down }) => along * down < 2 * fewest);
}

function isClear({ along, down, shift }: Picking, reach: Reach, apart: (c: number, r: number) => boolean) {
  for (let row = 0; row * down < reach.rows; row++) {
    for (let column = -reach.columns + 1; column < reach.columns; column++) {
      if (row === 0 && column <= 0) continue;
      const isPicked = (((column - row * shift) % along) + along) % along === 0;
      if (isPicked && !apart(column, row * down)) return false;
    }
  }
  return true;
}

/** The choice that picks most of a grid, wherever it starts. */
export function picked(all: readonly Picking[], columns: number, rows: number) {
  let best = { count: 0, spots: (): Spot[] => [] };
  for (const picking of all) {
    const many = Math.ceil(rows / picking.down);
    for (let start = 0; start < picking.along; start++) {
      const count = countOf(picking, start, columns, many);
      if (count > best.count) best = { count, spots: () => spotsOf(picking, start, columns, many) };
    }
  }
  return best;
}

export interface Spot {
  readonly column: number;
  readonly row: number;
}

const firstIn = ({ along, shift }: Picking, start: number, row: number): number =>
  (start + row * shift) % along;

function countOf(picking: Picking, start: number, columns: number, rows: number): number {
  // Shifts come round after as many rows as are skipped along.
  const { along } = picking;
  const inRow = (row: number) => Math.max(0, Math.ceil((columns - firstIn(picking, start, row)) / along));
  let round = 0;
  for (let row = 0; row < along; row++) round += inRow(row);
  let count = Math.floor(rows / along) * round;
  for (let row = 0; row < rows % along; row++) count += inRow(row);
  return count;
}

function spotsOf(picking: Picking, start: number, columns: number, rows: number): Spot[] {
  const spots: Spot[] = [];
  for (let row = 0; row < rows; row++)
    for (let column = firstIn(picking, start, row); column < columns; column += picking.along)
      spots.push({ column, row: row * picking.down });
  return spots;
}
