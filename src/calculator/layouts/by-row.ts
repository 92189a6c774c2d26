import { kindOf, type PatchList } from './patches.ts';

/** The pieces of each row of a field, the first row first. */
export interface RowPieces {
  readonly wholes: readonly number[];
  readonly halves: readonly number[];
}

/** Counts a field of hexagons row by row, from where its patches are placed. */
export function byRow(list: PatchList): RowPieces {
  const wholes: number[] = [];
  const halves: number[] = [];
  for (let i = 0; i < list.count; i++) {
    // A row of hexagons is three half edges from the next, on the line u + 2v.
    const row = (list.u[i]! + 2 * list.v[i]!) / 3;
    for (const counts of [wholes, halves]) counts[row] ??= 0;
    const counts = kindOf(list, i) === 'half-hexagon' ? halves : wholes;
    counts[row] = counts[row]! + 1;
  }
  return { wholes, halves };
}
