import { ok, type Result, wholeAbove, wrong } from '../../measure/result.ts';
import type { CutPatch } from '../shapes/shape.ts';
import { type CuttingMethod, inRows, type Lay, rowsFor } from './lay.ts';
import { laysOf } from './lays.ts';
import { leastDepth, leastLength } from './least.ts';
import { type CuttingPlan, type Direction, planOf } from './plan.ts';

/** What to cut: so many rows (strips), so many patches in each, and what is left for the last. */
export interface CuttingList {
  readonly rows: number;
  /** In the first, third … row and in the second, fourth …. */
  readonly perRow: readonly [number, number];
  readonly lastRow: number;
}

/** The cloth that one way of cutting needs. */
export interface YardageWay {
  readonly method: CuttingMethod;
  readonly direction: Direction;
  /** Inches of cloth, as cut. */
  readonly length: number;
  /** Inches to buy, before the cloth shrinks. */
  readonly buy: number;
  readonly list: CuttingList;
  /** The plan on exactly that length; it may yield a few more than asked. */
  readonly plan: CuttingPlan;
}

export interface Yardage {
  /** Patches to cut, the spare ones included. */
  readonly pieces: number;
  /** Every way, the shortest first; of equal ones the fewest cuts first. */
  readonly ways: readonly YardageWay[];
  /** The shortest of strips cut across the width. */
  readonly strips?: YardageWay;
  /** The shortest of strips cut lengthwise. */
  readonly lengthwise?: YardageWay;
  readonly nested?: YardageWay;
  readonly turned?: YardageWay;
  readonly squares?: YardageWay;
  /** The shortest that serves the patch as it was asked for, pointed or blunt. */
  readonly best: YardageWay;
}

export interface YardageOptions {
  /** Patches to spare, as a part of the pieces: 0.05 is five in a hundred more. */
  readonly spare?: number;
  /** How much of its length the cloth loses in the wash: 0.03 is three in a hundred. */
  readonly shrink?: number;
}

/** How much cloth of a usable width so many patches need, by each way of cutting. All lengths in inches. */
export function yardage(
  patch: CutPatch,
  pieces: number,
  usableWidth: number,
  { spare = 0, shrink = 0 }: YardageOptions = {},
): Result<Yardage> {
  const wanted = wholeAbove(pieces * (1 + spare));
  const lays = laysOf(patch);
  const ways = lays
    .flatMap((lay) => waysOf(lay, wanted, usableWidth, shrink))
    .sort((a, b) => roundedOff(a.length) - roundedOff(b.length));
  const best = ways.find((way) => way.plan.patch.cornerStyle === patch.cornerStyle);
  if (!best)
    return wrong('patch-wider-than-cloth', {
      shape: patch.shape,
      width: usableWidth,
      needs: leastWidth(lays),
    });
  return ok({ pieces: wanted, ways, ...shortestByName(ways), best });
}

/** So that lengths which differ in their last digit alone count as equal. */
const roundedOff = (length: number): number => Math.round(length * 1e9);

/** The narrowest cloth that one patch can be cut from. */
const leastWidth = (lays: readonly Lay[]): number =>
  Math.min(...lays.flatMap(({ rows, stack }) => [rows[0].patches.size, stack.size]));

function waysOf(lay: Lay, pieces: number, width: number, shrink: number): YardageWay[] {
  const lengths = [
    ['across', leastDepth(lay, pieces, width)],
    ['lengthwise', leastLength(lay, pieces, width)],
  ] as const;
  return lengths.flatMap(([direction, length]) => {
    if (length === undefined) return [];
    const plan = planOf(lay, direction, { width, length });
    const buy = length / (1 - shrink);
    return [{ method: lay.method, direction, length, buy, list: listFor(plan, pieces), plan }];
  });
}

/** The plan's rows filled one after the other until there are enough. */
function listFor({ perRow }: CuttingPlan, pieces: number): CuttingList {
  const rows = rowsFor(pieces, perRow);
  return { rows, perRow, lastRow: pieces - inRows(rows - 1, perRow) };
}

type Named = Partial<Record<CuttingMethod | 'lengthwise', YardageWay>>;

function shortestByName(ways: readonly YardageWay[]): Named {
  const named: Named = {};
  for (const way of ways) {
    const name = way.method === 'strips' && way.direction === 'lengthwise' ? 'lengthwise' : way.method;
    named[name] ??= way;
  }
  return named;
}
