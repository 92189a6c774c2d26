import { inRows, type Lay, lengthOf, perRow, rowsIn } from '../lay.ts';
import { reachOf } from '../spacing.ts';
import { laidIn } from './choice.ts';

/**
 * How the yield of some lays grows with one side of the cloth while the other stays: `least[n]` is the least
 * side that gives n patches or more, by any one of the lays in either direction.
 */
export function growthOf(lays: readonly Lay[], fixed: number, most: number, ceiling: number): Float64Array {
  const least = new Float64Array(ceiling + 2).fill(Number.POSITIVE_INFINITY);
  least[0] = 0;
  const note = (side: number, count: number): void => {
    const n = Math.min(count, ceiling);
    if (side < least[n]!) least[n] = side;
  };
  for (const lay of lays) {
    alongRows(lay, rowsIn(lay, fixed), most, note);
    acrossRows(lay, perRow(lay, fixed), most, note);
  }
  for (let n = ceiling - 1; n > 0; n--) if (least[n + 1]! < least[n]!) least[n] = least[n + 1]!;
  return least;
}

/** Sums of lengths may come out so much longer than they are, in inches; far less than a row may be short. */
const ROUNDING = 1e-10;

type Note = (side: number, count: number) => void;

function alongRows(lay: Lay, rows: number, most: number, note: Note): void {
  if (rows === 0) return;
  const kinds = lay.rows[0] === lay.rows[1] ? [lay.rows[0]] : lay.rows;
  for (const row of kinds) {
    for (let n = 1, side = lengthOf(row, 1); side <= most + ROUNDING; n++, side = lengthOf(row, n))
      note(side, inRows(rows, perRow(lay, side)));
  }
}

function acrossRows({ stack }: Lay, each: readonly [number, number], most: number, note: Note): void {
  if (each[0] === 0) return;
  for (let rows = 1, side = stack.size; side <= most + ROUNDING; rows++, side = reachOf(stack, rows))
    note(side, inRows(rows, each));
}

/** The most that two parts give together when a side is cut through once, and where it is cut. */
export function halved(least: Float64Array, most: number): { count: number; at: number } {
  let best = { count: 0, at: 0 };
  let other = least.length - 1;
  for (let n = 0; n < least.length && least[n]! <= most + ROUNDING; n++) {
    while (other > 0 && least[other]! > most - least[n]! + ROUNDING) other--;
    if (n + other > best.count) best = { count: n + other, at: least[n]! };
    if (other < n) break;
  }
  return best;
}

/** The lengths, from `from` up to `to`, at which some lay gains a row or a patch in a row. */
export function gainsOf(lays: readonly Lay[], from: number, to: number): number[] {
  const gains: number[] = [];
  for (const lay of lays) {
    for (const row of new Set(lay.rows)) addGains(gains, (n) => lengthOf(row, n), from, to);
    addGains(gains, (n) => reachOf(lay.stack, n), from, to);
  }
  gains.sort((a, b) => a - b);
  return gains.filter((gain, i) => i === 0 || gain - gains[i - 1]! > 1e-9);
}

function addGains(gains: number[], reach: (n: number) => number, from: number, to: number): void {
  const [one, two, three] = [reach(1), reach(2), reach(3)];
  const pair = three - one;
  // Steps may alternate, so two at a time are skipped.
  let n = from > one ? 1 + 2 * Math.max(0, Math.floor((from - one) / pair) - 1) : 1;
  if (two < one) return;
  for (let gain = reach(n); gain <= to; n++, gain = reach(n)) if (gain >= from) gains.push(gain);
}

/** The lay and direction that give the most on a piece of cloth. */
export function bestLay(lays: readonly Lay[], width: number, length: number) {
  let best: { lay: Lay; direction: 'across' | 'lengthwise'; count: number } | undefined;
  for (const lay of lays) {
    const [across, lengthwise] = [laidIn(lay, width, length), laidIn(lay, length, width)];
    if (across > (best?.count ?? 0)) best = { lay, direction: 'across', count: across };
    if (lengthwise > (best?.count ?? 0)) best = { lay, direction: 'lengthwise', count: lengthwise };
  }
  return best;
}
