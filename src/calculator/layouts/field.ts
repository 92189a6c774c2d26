import { ok, type Result, TOLERANCE } from '../../measure/result.ts';
import { COLUMN, type Rows } from './lattice.ts';
import { type Layout, type Rectangle, tooMany } from './layout.ts';
import { GrowingList } from './patches.ts';
import {
  type FieldSize,
  halfFlats,
  halvesIn,
  planCover,
  planInside,
  planStraight,
  ROW,
  type Row,
  type RowPlan,
  wholesIn,
} from './row-plan.ts';

/** Whole hexagons inside; hexagons over everything, to be trimmed; or straight sides of half-hexagons. */
export type Sides = 'whole' | 'cover' | 'straight';

/** A quilt (inches) to be filled with hexagons of a finished edge (inches), its rows across or down. */
export interface FieldAsk {
  readonly width: number;
  readonly height: number;
  readonly edge: number;
  readonly rows: Rows;
}

/** What each way of ending the rows takes. */
export interface FieldCounts {
  /** Whole hexagons that lie inside. */
  readonly inside: number;
  /** Hexagons that cover it, before trimming. This always suffices. */
  readonly cover: number;
  /**
   * Whether a cunning shift may cover it with fewer: only where the last row would show nothing but its
   * points. A curiosity, found by trying.
   */
  readonly coverMayBeLess: boolean;
  /** The area of the quilt in hexagons: an estimate, never the number to cut. */
  readonly byArea: number;
  readonly straightWhole: number;
  readonly straightHalf: number;
}

/**
 * A field of hexagons. Roles: whole, trimmed (a hexagon of a covering that loses some when the sides are
 * trimmed, the trimming being the same left and right, top and bottom), half (a half-hexagon at a straight
 * side). The whole and half pieces of a straight-sided field lose their points at top and bottom.
 */
export interface Field extends Layout, FieldCounts {
  readonly sides: Sides;
  /** Rows of hexagons: counted downward when they run across, across when they run down. */
  readonly rowCount: number;
}

const WHOLE = 0;
const TRIMMED = 1;
const HALF = 2;

const FLAT = 2 * COLUMN;

/** Square edges in one hexagon. */
const HEXAGON_AREA = 3 * COLUMN;

const HALF_SWELLING_RIGHT = 4;
const HALF_SWELLING_LEFT = 1;

/** The field as if its rows ran across: the side along the rows, and the side from row to row. */
function sizeOf({ width, height, edge, rows }: FieldAsk): FieldSize {
  const [along, over] = rows === 'across' ? [width, height] : [height, width];
  return { flats: along / (edge * FLAT), edges: over / edge };
}

const PLANS: Record<Sides, (size: FieldSize) => RowPlan> = {
  whole: planInside,
  cover: planCover,
  straight: planStraight,
};

/** The last covering row is needed only for its points, which reach half an edge past the valleys. */
function showsOnlyPoints({ edges }: FieldSize, rows: number): boolean {
  const coveredBefore = ROW * (rows - 1) - 1 / 2;
  return edges - coveredBefore <= 1 / 2 + TOLERANCE;
}

/**
 * The counts of a field for every way of ending its rows, without placing a patch.
 *
 * @example
 * fieldCounts({ width: 60, height: 72, edge: 1, rows: 'across' }).cover // 1739
 * fieldCounts({ width: 60, height: 72, edge: 1, rows: 'across' }).inside // 1598
 */
export function fieldCounts(ask: FieldAsk): FieldCounts {
  const size = sizeOf(ask);
  const cover = planCover(size);
  const straight = planStraight(size);
  return {
    inside: wholesIn(planInside(size)),
    cover: wholesIn(cover),
    coverMayBeLess: showsOnlyPoints(size, cover.rows),
    byArea: (ask.width * ask.height) / (HEXAGON_AREA * ask.edge * ask.edge),
    straightWhole: wholesIn(straight),
    straightHalf: halvesIn(straight),
  };
}

/** What trimming leaves, in edges, rows across. The origin is the centre of the first hexagon. */
function trimmedBox(size: FieldSize, sides: Sides, plan: RowPlan): Rectangle | null {
  if (sides === 'whole') return null;
  const left = -COLUMN;
  const top = -1 / 2;
  const valleys = ROW * plan.rows - 1 / 2;
  if (sides === 'straight') return { left, top, width: halfFlats(size.flats) * COLUMN, height: valleys };
  const flats = plan.rows === 1 ? plan.first.wholes : Math.min(plan.first.wholes, plan.second.wholes - 1 / 2);
  const covered = flats * FLAT;
  const width = size.flats * FLAT;
  return {
    left: left + (covered - width) / 2,
    top: top + (valleys - size.edges) / 2,
    width,
    height: size.edges,
  };
}

/** The same in inches, in the layout's frame; a covering is trimmed to exactly what was asked for. */
function trimOf(
  box: Rectangle | null,
  sides: Sides,
  { width, height, edge, rows }: FieldAsk,
): Rectangle | null {
  if (box === null) return null;
  const placed = {
    left: box.left * edge,
    top: box.top * edge,
    width: box.width * edge,
    height: box.height * edge,
  };
  const laid =
    rows === 'across'
      ? placed
      : { left: placed.top, top: placed.left, width: placed.height, height: placed.width };
  return sides === 'cover' ? { ...laid, width, height } : laid;
}

/** Whether a hexagon, its centre so many columns and rows from the first, is cut when trimmed to `box`. */
function isTrimmed(u: number, row: number, box: Rectangle): boolean {
  const [x, y] = [u * COLUMN - box.left, row * ROW - box.top];
  return (
    x - COLUMN < -TOLERANCE ||
    x + COLUMN > box.width + TOLERANCE ||
    y - 1 < -TOLERANCE ||
    y + 1 > box.height + TOLERANCE
  );
}

function placeRows(plan: RowPlan, size: FieldSize, rows: Rows, cut: Rectangle | null): GrowingList {
  const placed = new GrowingList(['whole', 'trimmed', 'half'], wholesIn(plan) + halvesIn(plan), rows);
  const down = (u: number, j: number): number => (3 * j - u) / 2;
  const lastHalf = halfFlats(size.flats) - 1;
  const placeRow = (row: Row, j: number): void => {
    if (row.leftHalf) placed.half(-1, down(-1, j), HALF_SWELLING_RIGHT, HALF);
    for (let c = 0; c < row.wholes; c++) {
      const u = row.start + 2 * c;
      placed.hexagon(u, down(u, j), cut !== null && isTrimmed(u, j, cut) ? TRIMMED : WHOLE);
    }
    if (row.rightHalf) placed.half(lastHalf, down(lastHalf, j), HALF_SWELLING_LEFT, HALF);
  };
  for (let j = 0; j < plan.rows; j++) placeRow(j % 2 === 0 ? plan.first : plan.second, j);
  return placed;
}

/**
 * A quilt filled with hexagons. The finished size is the trimmed rectangle (for straight sides: whole half
 * flats along the rows, valley to valley over them) or, of whole hexagons, the box round them. Refused with
 * `too-many-patches` when the sides that are asked for take more than the largest layout.
 */
export function field(ask: FieldAsk & { readonly sides: Sides }): Result<Field> {
  const size = sizeOf(ask);
  const plan = PLANS[ask.sides](size);
  const refused = tooMany(wholesIn(plan) + halvesIn(plan));
  if (refused !== null) return refused;
  const box = trimmedBox(size, ask.sides, plan);
  const cut = ask.sides === 'cover' ? box : null;
  return ok({
    name: 'field',
    patches: placeRows(plan, size, ask.rows, cut).done(),
    trim: trimOf(box, ask.sides, ask),
    sides: ask.sides,
    rowCount: plan.rows,
    ...fieldCounts(ask),
  });
}
