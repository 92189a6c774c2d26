import { TOLERANCE } from '../../../measure/result.ts';
import type { Placement } from '../../shapes/place.ts';

/** One patch of a row that repeats: how far along its box starts, and whether it is turned half round. */
export interface Stand {
  readonly at: number;
  readonly tail: boolean;
}

/**
 * Rows that repeat without end: patches of one turn, some turned half round, in a first and a second kind of
 * row by turns. All boxes are of one size. Inches and degrees; the row runs along x.
 */
export interface Pattern {
  readonly turnDegrees: number;
  readonly width: number;
  readonly height: number;
  /** Each kind of row repeats after this length. */
  readonly period: number;
  readonly rows: readonly [readonly Stand[], readonly Stand[]];
  /** From a first row up to a second one, and on to the next first one. */
  readonly rises: readonly [number, number];
  /** How much further along each next first row starts. */
  readonly slide: number;
  /** Rows are stacked no higher than this, where each further row takes longer to look at. */
  readonly deepest: number;
  /** From the corner of a patch's box to the patch's own origin, upright and turned half round. */
  readonly origins: readonly [Spot, Spot];
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** How a pattern is best laid on a piece of cloth: where it is cut into, and what it gives. */
export interface Fit {
  readonly count: number;
  readonly rows: number;
  /** The kind of the lowest row. */
  readonly start: 0 | 1;
  /** Where in its period the cloth's edge lies. */
  readonly from: number;
}

const NONE: Fit = { count: 0, rows: 0, start: 0, from: 0 };

/** How many rows fit in a depth, from either kind of row. */
export function rowsOf({ height, rises, deepest }: Pattern, deep: number, start: 0 | 1): number {
  const spare = Math.min(deep, deepest) - height;
  if (spare < -TOLERANCE * height) return 0;
  const [up, on] = start === 0 ? rises : [rises[1], rises[0]];
  const both = up + on;
  const pairs = Math.floor(spare / both + TOLERANCE);
  const rest = spare - pairs * both;
  return 1 + 2 * pairs + (rest >= up - TOLERANCE * both ? 1 : 0);
}

/** More than this it cannot give: rows full to the last, whatever their start. */
export function mostOf(pattern: Pattern, along: number, deep: number): number {
  const room = along - pattern.width;
  if (room < -TOLERANCE * pattern.width) return 0;
  const rows = Math.max(rowsOf(pattern, deep, 0), rowsOf(pattern, deep, 1));
  const [first, second] = pattern.rows;
  const periods = Math.floor(room / pattern.period + TOLERANCE) + 1;
  const most = Math.max(first.length, second.length);
  return (
    periods * (Math.ceil(rows / 2) * most + Math.floor(rows / 2) * Math.min(first.length, second.length))
  );
}

/** The most patches of a pattern on a piece of cloth, from whichever row and wherever in its period it starts. */
export function fitOf(pattern: Pattern, along: number, deep: number): Fit {
  const room = along - pattern.width;
  if (room < -TOLERANCE * pattern.width) return NONE;
  const one = fitFrom(pattern, room, rowsOf(pattern, deep, 0), 0);
  if (isOneKind(pattern)) return one;
  const other = fitFrom(pattern, room, rowsOf(pattern, deep, 1), 1);
  return other.count > one.count ? other : one;
}

const isOneKind = ({ rows, rises, slide }: Pattern): boolean =>
  rows[0] === rows[1] && rises[0] === rises[1] && slide === 0;

/**
 * Each stand of each row comes once in a whole period, and once more where it lies within what is left over:
 * so the cloth's edge is laid where most stands follow within that rest.
 */
function fitFrom(pattern: Pattern, room: number, rows: number, start: 0 | 1): Fit {
  if (rows === 0) return NONE;
  const { period, slide } = pattern;
  const periods = Math.floor(room / period + TOLERANCE);
  const rest = room - periods * period;
  const points = slide === 0 ? pointsByKind(pattern, rows, start) : pointsByRow(pattern, rows, start);
  let whole = 0;
  for (const weight of points.weights) whole += weight;
  const { most, from } = fullestStretch(points, rest, period);
  return { count: periods * whole + most, rows, start, from };
}

interface Points {
  readonly at: number[];
  readonly weights: number[];
}

/** Where stands lie in the period, and in how many rows. */
function pointsByKind({ rows, period }: Pattern, many: number, start: 0 | 1): Points {
  const points: Points = { at: [], weights: [] };
  const [odd, even] = [Math.ceil(many / 2), Math.floor(many / 2)];
  for (const kind of [0, 1] as const) {
    const weight = kind === start ? odd : even;
    if (weight === 0) continue;
    for (const { at } of rows[kind]) {
      points.at.push(inPeriod(at, period));
      points.weights.push(weight);
    }
  }
  return points;
}

function pointsByRow({ rows, period, slide }: Pattern, many: number, start: 0 | 1): Points {
  const at: number[] = [];
  for (let row = 0; row < many; row++) {
    const kind = (row + start) % 2 === 0 ? 0 : 1;
    const slid = Math.floor((row + start) / 2) * slide;
    for (const stand of rows[kind]) at.push(inPeriod(stand.at + slid, period));
  }
  at.sort((a, b) => a - b);
  return { at, weights: new Array<number>(at.length).fill(1) };
}

const inPeriod = (at: number, period: number): number => {
  const within = ((at % period) + period) % period;
  return within > period * (1 - TOLERANCE) ? 0 : within;
};

/** The stretch of the period, so long, in which most stands lie; it may run over the period's end. */
function fullestStretch(
  { at, weights }: Points,
  rest: number,
  period: number,
): { most: number; from: number } {
  return at.length > 8 ? fullestSorted(at, rest, period) : fullestOfFew(at, weights, rest, period);
}

function fullestOfFew(at: readonly number[], weights: readonly number[], rest: number, period: number) {
  let best = { most: 0, from: 0 };
  const reach = rest + TOLERANCE * period;
  for (const from of at) {
    let most = 0;
    for (let i = 0; i < at.length; i++) {
      const ahead = at[i]! - from;
      if ((ahead < -TOLERANCE * period ? ahead + period : ahead) <= reach) most += weights[i]!;
    }
    if (most > best.most) best = { most, from };
  }
  return best;
}

function fullestSorted(at: readonly number[], rest: number, period: number) {
  let best = { most: 0, from: 0 };
  const reach = rest + TOLERANCE * period;
  let end = 0;
  for (let start = 0; start < at.length; start++) {
    end = Math.max(end, start);
    while (end < start + at.length) {
      const ahead = end < at.length ? at[end]! : at[end - at.length]! + period;
      if (ahead - at[start]! > reach) break;
      end++;
    }
    if (end - start > best.most) best = { most: end - start, from: at[start]! };
  }
  return best;
}

/** Where the patches of a fit lie on a piece of cloth with its corner at (0, 0), the rows along x. */
export function standsOf(pattern: Pattern, { rows, start, from }: Fit, along: number): Placement[] {
  const { period, slide, rises, width, turnDegrees, origins } = pattern;
  const places: Placement[] = [];
  const room = along - width;
  let y = 0;
  for (let row = 0; row < rows; row++) {
    const kind = (row + start) % 2 === 0 ? 0 : 1;
    const slid = Math.floor((row + start) / 2) * slide;
    for (const { at, tail } of pattern.rows[kind]) {
      const origin = origins[tail ? 1 : 0];
      const ahead = inPeriod(at + slid, period) - from;
      const first = ahead < -TOLERANCE * period ? ahead + period : ahead;
      for (let x = first, n = 0; x <= room + TOLERANCE * period; n++, x = first + n * period)
        places.push({ x: x + origin.x, y: y + origin.y, turnDegrees: turnDegrees + (tail ? 180 : 0) });
    }
    y += rises[kind];
  }
  return places;
}
