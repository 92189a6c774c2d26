import { wholeAbove, wholeBelow } from '../../measure/result.ts';

/** A row of hexagons: whole ones from `start` on, with a half at an end where it is to be straight. */
export interface Row {
  readonly wholes: number;
  /** Where the first whole one begins, in half flats from the left side of the first row. */
  readonly start: number;
  readonly leftHalf: boolean;
  readonly rightHalf: boolean;
}

/** A field of hexagons as its rows: `first` and `second` take turns. */
export interface RowPlan {
  readonly rows: number;
  readonly first: Row;
  readonly second: Row;
}

/** A field's size in its own measures: flats (√3 edges) along a row, edges from row to row. */
export interface FieldSize {
  readonly flats: number;
  readonly edges: number;
}

/** From a row to the next, in edges. */
export const ROW = 1.5;

const plain = (wholes: number, start: number): Row => ({
  wholes: Math.max(0, wholes),
  start,
  leftHalf: false,
  rightHalf: false,
});

/** The rows of whole hexagons that lie inside. A last row with room for none is left out. */
export function planInside({ flats, edges }: FieldSize): RowPlan {
  const first = plain(wholeBelow(flats), 0);
  const second = plain(wholeBelow(flats - 1 / 2), 1);
  const fit = Math.max(0, wholeBelow((edges - 2) / ROW) + 1);
  if (first.wholes === 0) return { rows: 0, first, second };
  return { rows: second.wholes === 0 && fit > 0 && fit % 2 === 0 ? fit - 1 : fit, first, second };
}

/** Rows that reach from valley to valley over the whole height. */
const rowsOver = (edges: number): number => wholeAbove((edges + 1 / 2) / ROW);

/** The rows that cover everything, to be trimmed on all sides. The shorter row comes first. */
export const planCover = ({ flats, edges }: FieldSize): RowPlan => ({
  rows: rowsOver(edges),
  first: plain(wholeAbove(flats), 0),
  second: plain(wholeAbove(flats + 1 / 2), -1),
});

/** How many half flats a straight-sided field is wide: the least that is enough. */
export const halfFlats = (flats: number): number => wholeAbove(2 * flats);

/**
 * Rows with straight ends. An odd number of half flats: every row has one half, at alternate ends. An even
 * number: each second row has a half at both.
 */
export function planStraight({ flats, edges }: FieldSize): RowPlan {
  const halves = halfFlats(flats);
  const rows = rowsOver(edges);
  const wholes = Math.floor(halves / 2);
  const odd = halves % 2 === 1;
  return {
    rows,
    first: { wholes, start: 0, leftHalf: false, rightHalf: odd },
    second: { wholes: odd ? wholes : wholes - 1, start: 1, leftHalf: true, rightHalf: !odd },
  };
}

const halvesOf = (row: Row): number => Number(row.leftHalf) + Number(row.rightHalf);

const inBoth = (plan: RowPlan, of: (row: Row) => number): number =>
  Math.ceil(plan.rows / 2) * of(plan.first) + Math.floor(plan.rows / 2) * of(plan.second);

/**
 * Whole hexagons in a plan of rows.
 *
 * @example
 * wholesIn(planInside({ flats: 8, edges: 14 })) // 68
 * wholesIn(planCover({ flats: 8, edges: 14 })) // 85
 */
export const wholesIn = (plan: RowPlan): number => inBoth(plan, (row) => row.wholes);

/**
 * Half-hexagons in a plan of rows.
 *
 * @example
 * halvesIn(planStraight({ flats: 8, edges: 14 })) // 10
 */
export const halvesIn = (plan: RowPlan): number => inBoth(plan, halvesOf);
