import { ok, type Result } from '../../measure/result.ts';
import { type FieldCounts, field, fieldCounts } from './field.ts';
import { direction, plus, type Spot, times } from './lattice.ts';
import { type Layout, tooMany } from './layout.ts';
import { GrowingList } from './patches.ts';

/** Tumbling blocks: diamonds in three shades that look like cubes. Roles: light, medium, dark. */
export interface Blocks extends Layout {
  /** Blocks of three diamonds, one of each shade, for which there are pieces. */
  readonly blocks: number;
}

/** Seams inside one block of three diamonds. */
export const BLOCK_SEAMS = 3;

/**
 * The diamonds of a hexagon with n diamonds a side: 3n², n² of each shade.
 *
 * @example
 * blocksTotal(5) // 75
 */
export const blocksTotal = (side: number): number => 3 * side * side;

const SHADES = ['light', 'dark', 'medium'];

/** The edges of a cube as they are seen: to the right, to the left, and up. */
const CUBE = [0, 2, 4];

/**
 * Places the face of a cube that looks along the cube's edge `to`, at `at`. Light comes from above, so tops are
 * light; the right-hand faces are dark, the left-hand ones medium.
 */
function placeFace(placed: GrowingList, at: Spot, to: number, part: number): void {
  const k = CUBE[(to + 1) % 3]!;
  const sharp = plus(at, direction(k));
  placed.diamond(sharp.u, sharp.v, k + 2, (to + 1) % 3, part);
}

/** Where the corner x, y, z of a heap of cubes is seen; the heap is built from one corner outward. */
const seen = (x: number, y: number, z: number): Spot =>
  plus(plus(times(direction(CUBE[0]!), x), times(direction(CUBE[1]!), y)), times(direction(CUBE[2]!), z));

/**
 * Tumbling blocks that fill a hexagon of side n: the picture of a heap of cubes in a corner, n each way, in
 * which a cube is present when its distance along the three edges adds up to less than half the most. Its
 * middle is cube on cube, and where the heap meets the walls and the floor the diamonds lie one way only, so
 * the hexagon's sides are straight. Refused with `too-many-patches` past the largest layout.
 */
export function blocks(side: number): Result<Blocks> {
  const total = blocksTotal(side);
  const refused = tooMany(total);
  if (refused !== null) return refused;
  const placed = new GrowingList(SHADES, total);
  const full = Math.ceil((3 * side - 2) / 2);
  const reach = (sum: number): number => Math.max(0, Math.min(side, full - sum));
  for (let i = 0; i < side; i++) {
    for (let j = 0; j < side; j++) {
      const h = reach(i + j);
      placeFace(placed, seen(h, i, j), 0, 0);
      placeFace(placed, seen(i, h, j), 1, 0);
      placeFace(placed, seen(i, j, h), 2, 0);
    }
  }
  return ok({ name: 'blocks', patches: placed.done(), trim: null, blocks: side * side });
}

/** Places a block of three about its middle. */
function placeBlock(placed: GrowingList, centre: Spot, part: number): void {
  for (const to of [0, 1, 2]) placeFace(placed, plus(centre, direction(CUBE[to]!)), to, part);
}

/** Blocks in rows over a whole quilt, with the counts of every way of ending the rows: a block is a hexagon. */
export interface BlocksOver extends Blocks, FieldCounts {
  readonly rowCount: number;
}

/**
 * Tumbling blocks that cover a quilt, to be trimmed: the field of hexagons of the same edge, each of three
 * diamonds, one way up in all of them. Refused with `too-many-patches` past the largest layout.
 */
export function blocksOver(width: number, height: number, edge: number): Result<BlocksOver> {
  const ask = { width, height, edge, rows: 'across' } as const;
  const counts = fieldCounts(ask);
  const refused = tooMany(3 * counts.cover);
  if (refused !== null) return refused;
  const made = field({ ...ask, sides: 'cover' });
  if (!made.ok) return made;
  const { patches, rowCount } = made.value;
  const placed = new GrowingList(SHADES, 3 * patches.count);
  for (let i = 0; i < patches.count; i++) placeBlock(placed, { u: patches.u[i]!, v: patches.v[i]! }, i + 1);
  return ok({
    ...{ name: 'blocks over', patches: placed.done(), trim: made.value.trim, blocks: patches.count },
    ...counts,
    rowCount,
  });
}

/**
 * So many blocks of three diamonds each, not yet joined: placed apart in rows, to be counted and pictured.
 * A patch's part is its block. Refused with `too-many-patches` past the largest layout.
 */
export function blocksApart(count: number): Result<Blocks> {
  const refused = tooMany(3 * count);
  if (refused !== null) return refused;
  const placed = new GrowingList(SHADES, 3 * count);
  const perRow = Math.ceil(Math.sqrt(count));
  for (let i = 0; i < count; i++) {
    const [column, row] = [i % perRow, Math.floor(i / perRow)];
    const centre = { u: 4 * column, v: 3 * row - 2 * column };
    placeBlock(placed, centre, i + 1);
  }
  return ok({ name: 'blocks apart', patches: placed.done(), trim: null, blocks: count });
}
