import type { Outline } from '../shapes/outline.ts';
import type { CutPatch } from '../shapes/shape.ts';
import { sideways } from './curved-ends.ts';
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

/**
 * The lead with the closest rows: where a corner of one row stands over a corner of the other, or between two
 * such leads, where two pairs of patches touch at once.
 */
function closest(head: Lie, tail: Lie, step: number): Meeting {
  const [heads, tails] = [endsOf(sideways(head.outline)), endsOf(sideways(tail.outline))];
  const apart = rowStep(heads, heads, 0, step);
  let best: Meeting = { lead: 0, up: Number.POSITIVE_INFINITY, down: Number.POSITIVE_INFINITY };
  for (const lead of withCrossings(leadsOf(heads, tails, step), heads, tails, step)) {
    const up = Math.max(0, rowStep(heads, tails, lead, step));
    if (up >= best.up + best.down) continue;
    // Rows of one kind must clear each other too, whatever lies between them.
    const down = Math.max(0, rowStep(tails, heads, -lead, step), apart - up);
    if (up + down < best.up + best.down - 1e-9) best = { lead, up, down };
  }
  return best;
}

/** How far above a row of patches the next row must start, when it starts further along by the lead. */
export function rowStep(low: Ends, high: Ends, lead: number, step: number): number {
  const width = Math.max(low.levels.at(-1)!, high.levels.at(-1)!);
  let least = Number.NEGATIVE_INFINITY;
  for (let along = modulo(lead, step) - Math.ceil(width / step) * step; along < width; along += step)
    least = Math.max(least, stepBetween(low, high, along));
  return least;
}

const leadsOf = (heads: Ends, tails: Ends, step: number): number[] =>
  onceEach(heads.levels.flatMap((one) => tails.levels.map((other) => modulo(one - other, step))));

const modulo = (length: number, step: number): number => ((length % step) + step) % step;

/**
 * The leads, and between each and the next those at which two pairs of patches touch at once: there, as long as
 * no corner passes another, each pair keeps its rows apart in straight proportion to the lead.
 */
function withCrossings(leads: readonly number[], heads: Ends, tails: Ends, step: number): number[] {
  const reach = Math.ceil(Math.max(heads.levels.at(-1)!, tails.levels.at(-1)!) / step);
  const alongs = Array.from({ length: 2 * reach + 1 }, (_, k) => (k - reach) * step);
  const ups = alongs.map((along) => (lead: number) => stepBetween(heads, tails, lead + along));
  const downs = alongs.map((along) => (lead: number) => stepBetween(tails, heads, along - lead));
  return leads.flatMap((lead, i) => {
    const next = leads[i + 1] ?? leads[0]! + step;
    const between = [ups, downs].flatMap((pairs) => crossingsIn(pairs, lead, next));
    return [lead, ...between.map((crossing) => modulo(crossing, step))];
  });
}

/** Where between two leads the straight lines of two pairs cross. */
function crossingsIn(pairs: readonly ((lead: number) => number)[], from: number, to: number): number[] {
  const [near, far] = [from + (to - from) / 3, to - (to - from) / 3];
  const lines = pairs
    .map((pair) => ({ near: pair(near), far: pair(far) }))
    .filter((line) => Number.isFinite(line.near) && Number.isFinite(line.far));
  return lines.flatMap((one, i) =>
    lines.slice(i + 1).flatMap((other) => {
      const [before, after] = [one.near - other.near, one.far - other.far];
      const crossing = near + ((far - near) * before) / (before - after);
      return crossing > from && crossing < to ? [crossing] : [];
    }),
  );
}
