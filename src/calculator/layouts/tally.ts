import { spanOf } from './ground.ts';
import { COLUMN } from './lattice.ts';
import { marksOf, ONE_PATCH, SIDES } from './marks.ts';
import type { PatchList } from './patches.ts';

/** What a list of patches says of itself. Lengths are in edges: multiply by the finished edge. */
export interface Tally {
  readonly total: number;
  readonly byRole: Readonly<Record<string, number>>;
  /** Unit edges that two patches share. */
  readonly seams: number;
  /** Unit edges on the outside (or round a hole). */
  readonly outline: number;
  /** All corners, outside ones too. Where there are no holes, corners − (seams + outline) + total is 1. */
  readonly corners: number;
  /** Corners with patches all round, by how many patches meet there: `closedBy[3]` are the three-way ones. */
  readonly closedBy: readonly number[];
  /** Corners that must be set in: exactly three patches meet, with no gap left. */
  readonly setIns: number;
  readonly seamLength: number;
  /** The box round all the patches, and where its corner is from the layout's origin (y down). */
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly top: number;
}

const ALL_ROUND = 6;

function countCorners(marked: Uint8Array): { corners: number; closedBy: number[] } {
  const closedBy = new Array<number>(ALL_ROUND + 1).fill(0);
  let corners = 0;
  for (let i = 0; i < marked.length; i++) {
    const spot = marked[i]!;
    if (spot === 0) continue;
    corners++;
    if (spot % ONE_PATCH === ALL_ROUND) closedBy[Math.floor(spot / ONE_PATCH)]!++;
  }
  return { corners, closedBy };
}

function countRoles(list: PatchList): Record<string, number> {
  const counts = new Uint32Array(list.roles.length);
  for (let i = 0; i < list.count; i++) counts[list.role[i]!]!++;
  return Object.fromEntries(list.roles.map((role, k) => [role, counts[k]!]));
}

function countSides(list: PatchList): number {
  let sides = 0;
  for (let i = 0; i < list.count; i++) {
    sides += SIDES[list.form[i]!]!;
  }
  return sides;
}

function sizeOf(list: PatchList): Pick<Tally, 'width' | 'height' | 'left' | 'top'> {
  const span = spanOf(list);
  const along = { at: span.left * COLUMN, length: (span.right - span.left) * COLUMN };
  const down = { at: span.top / 2, length: (span.bottom - span.top) / 2 };
  const [x, y] = list.rows === 'across' ? [along, down] : [down, along];
  return { left: x.at, top: y.at, width: x.length, height: y.length };
}

/**
 * Counts everything that a layout is asked for, in one reading of its list: time grows with the patches.
 * The patches must not overlap (no layout of this room does; its tests look).
 */
export function tally(list: PatchList): Tally {
  const sides = countSides(list);
  const marks = marksOf(list);
  const { corners, closedBy } = countCorners(marks.corners.values());
  return {
    total: list.count,
    byRole: countRoles(list),
    seams: marks.shared,
    outline: sides - 2 * marks.shared,
    corners,
    closedBy,
    setIns: closedBy[3]!,
    seamLength: marks.shared,
    ...sizeOf(list),
  };
}
