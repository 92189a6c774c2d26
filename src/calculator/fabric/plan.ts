import type { Placement } from '../shapes/place.ts';
import type { CutPatch } from '../shapes/shape.ts';
import { type CuttingMethod, inRows, type Lay, lengthOf, perRow, rowsIn } from './lay.ts';
import { placed } from './placed.ts';
import { reachOf } from './spacing.ts';

/** A piece of cloth, in inches: the usable width along x, the length along y. */
export interface ClothSize {
  readonly width: number;
  readonly length: number;
}

/** How the rows run on the cloth: across its width, or lengthwise, as the selvage does. */
export type Direction = 'across' | 'lengthwise';

/** Patches on a piece of cloth, however they were laid. Lengths in inches. */
export interface LaidPlan {
  /** The patch that is laid; its cornerStyle is blunt where only the blunt-cornered one fits the plan. */
  readonly patch: CutPatch;
  readonly cloth: ClothSize;
  /** What was left free along each edge of the cloth. */
  readonly margin: number;
  readonly count: number;
  /** Where each patch's cut outline lies on the cloth, worked out when it is asked for. */
  placements(): Placement[];
}

/** How a piece of cloth is cut into patches, all it needs to be said or drawn. Lengths in inches. */
export interface CuttingPlan extends LaidPlan {
  /** How one patch repeats in it. */
  readonly lay: Lay;
  readonly method: CuttingMethod;
  readonly direction: Direction;
  readonly rows: number;
  /** How many in the first, third … row and how many in the second, fourth …. */
  readonly perRow: readonly [number, number];
  /** The width of a row: of the strip to cut. */
  readonly rowHeight: number;
  /** From one row's start to the next one's, by turns: less than the height where rows share lines. */
  readonly rowSteps: readonly [number, number];
  /** The angles of the cuts within a row to its edge, in degrees; none where patches are traced. */
  readonly cutAngles: readonly number[];
  /** The cloth that the rows really take, margins not counted. */
  readonly taken: ClothSize;
}

/** The plan of one lay on one piece of cloth. */
export function planOf(lay: Lay, direction: Direction, cloth: ClothSize, margin = 0): CuttingPlan {
  const free = { width: cloth.width - 2 * margin, length: cloth.length - 2 * margin };
  const [along, deep] = direction === 'across' ? [free.width, free.length] : [free.length, free.width];
  const rows = rowsIn(lay, deep);
  const each = perRow(lay, along);
  const taken = { along: takenAlong(lay, rows, each), deep: rows === 0 ? 0 : reachOf(lay.stack, rows) };
  return {
    lay,
    method: lay.method,
    direction,
    patch: lay.patch,
    cloth,
    margin,
    count: inRows(rows, each),
    rows,
    perRow: each,
    rowHeight: lay.stack.size,
    rowSteps: lay.stack.steps,
    cutAngles: lay.cutAngles,
    taken:
      direction === 'across'
        ? { width: taken.along, length: taken.deep }
        : { width: taken.deep, length: taken.along },
    placements: () => placed(lay, rows, each, direction === 'across' ? undefined : taken.along, margin),
  };
}

function takenAlong(lay: Lay, rows: number, [first, second]: readonly [number, number]): number {
  if (rows === 0 || first === 0) return 0;
  const longest = lengthOf(lay.rows[0], first);
  return rows === 1 || second === 0 ? longest : Math.max(longest, lengthOf(lay.rows[1], second));
}
