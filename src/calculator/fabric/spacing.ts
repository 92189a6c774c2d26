import { wholeBelow } from '../../measure/result.ts';

/** Things of one size that stand in line, the steps from each to the next alternating between two. Inches. */
export interface Spacing {
  readonly size: number;
  readonly steps: readonly [number, number];
}

/** Things that all stand the same step apart. */
export const evenly = (size: number, step: number): Spacing => ({ size, steps: [step, step] });

/**
 * How many fit in a length. One that is short by no more than a hair's part of its size fits.
 *
 * @example
 * fitting({ size: 2, steps: [1, 3] }, 6) // 3
 * fitting({ size: 2.5, steps: [2.5, 2.5] }, 5) // 2
 * fitting({ size: 2, steps: [1, 3] }, 1) // 0
 */
export function fitting({ size, steps: [first, second] }: Spacing, length: number): number {
  const isShort = (spare: number) => wholeBelow(spare / size) < 0;
  const spare = length - size;
  if (isShort(spare)) return 0;
  const pairs = wholeBelow(spare / (first + second));
  const rest = spare - pairs * (first + second);
  return 1 + 2 * pairs + (isShort(rest - first) ? 0 : 1);
}

/**
 * Where the n-th starts, the first one at 0.
 *
 * @example
 * startOf({ size: 2, steps: [1, 3] }, 4) // 5
 */
export const startOf = ({ steps }: Spacing, n: number): number =>
  Math.ceil((n - 1) / 2) * steps[0] + Math.floor((n - 1) / 2) * steps[1];

/**
 * The length that n of them take.
 *
 * @example
 * reachOf({ size: 2, steps: [1, 3] }, 4) // 7
 */
export const reachOf = (spacing: Spacing, n: number): number => startOf(spacing, n) + spacing.size;
