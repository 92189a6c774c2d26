import type { Outline } from '../shapes/outline.ts';
import type { CutPatch } from '../shapes/shape.ts';
import { type Ends, endsOf, onceEach } from './ends.ts';
import { type Lay, oneWayRow } from './lay.ts';
import { type Lie, lieOf } from './lie.ts';
import { stepBetween } from './step.ts';

/**
 * Rows of patches that all lie one way, each second row turned half round, so that the points of one row
 * reach between the points of the next. The second row's lead is the one that brings the rows closest.
 * Computed, no source.
 */
export function doubleRows(patch: CutPatch, outline: Outline, turn: number): Lay {
  const head = lieOf(outline, turn);
  const tail = lieOf(outline, turn + 180);
  const ends = endsOf(head.outline);
  const step = stepBetween(ends, ends);
  const { lead, up, down } = closest(head, tail, step);
  const heads = (ahead: number) => oneWayRow(head, step, ahead);
  const tails = (ahead: number) => oneWayRow(tail, step, ahead);
  // The closer pair of rows comes first.
  return {
    method: 'nested',
    patch,
    rows: down < up ? [tails(0), heads(modulo(-lead, step))] : [heads(0), tails(lead)],
    stack: { size: head.height, steps: down < up ? [down, up] : [up, down] },
    cutAngles: [],
  };
}

interface Meeting {
  readonly lead: number;
  /** From a row of heads to the row of tails above it. */
  readonly up: number;
  /** From a row of tails to the row of heads above it. */
  readonly down: number;
}

/** Of the leads at which a corner of one row stands over a corner of the other, the one with the closest rows. */
function closest(head: Lie, tail: Lie, step: number): Meeting {
  const [heads, tails] = [endsOf(sideways(head.outline)), endsOf(sideways(tail.outline))];
  const apart = rowStep(heads, heads, 0, step);
  let best: Meeting = { lead: 0, up: Number.POSITIVE_INFINITY, down: Number.POSITIVE_INFINITY };
  for (const lead of leadsOf(heads, tails, step)) {
    const up = Math.max(0, rowStep(heads, tails, lead, step));
    if (up >= best.up + best.down) continue;
    // Rows of one kind must clear each other too, whatever lies between them.
    const down = Math.max(0, rowStep(tails, heads, -lead, step), apart - up);
    if (up + down < best.up + best.down - 1e-9) best = { lead, up, down };
  }
  return best;
}

/** How far above a row of patches the next row must start, when it starts further along by the lead. */
function rowStep(low: Ends, high: Ends, lead: number, step: number): number {
  const width = low.levels.at(-1)!;
  let least = Number.NEGATIVE_INFINITY;
  for (let along = modulo(lead, step) - Math.ceil(width / step) * step; along < width; along += step)
    least = Math.max(least, stepBetween(low, high, along));
  return least;
}

/** An outline with x and y exchanged, so that its ends are its top and bottom along the row. */
const sideways = (outline: Outline): Outline => outline.map(({ x, y }) => ({ x: y, y: x }));

const leadsOf = (heads: Ends, tails: Ends, step: number): number[] =>
  onceEach(heads.levels.flatMap((one) => tails.levels.map((other) => modulo(one - other, step))));

const modulo = (length: number, step: number): number => ((length % step) + step) % step;
