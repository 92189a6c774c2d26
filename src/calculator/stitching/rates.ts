import type { StitchMethod } from './method.ts';

/** A range in minutes, the middle being halfway. */
export interface Minutes {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/**
 * Minutes for one seam of one inch, pinning, handling and fastening included, where a member has logged
 * no pace of her own. Common practice, no source; half as much again either way is usual.
 *
 * @example
 * minutesPerSeam.whip // {"low":1.5,"high":3}
 */
export const minutesPerSeam: Readonly<Record<StitchMethod, { low: number; high: number }>> = {
  running: { low: 1, high: 2.5 },
  whip: { low: 1.5, high: 3 },
};

/**
 * Minutes for the work that is not a seam, lowest and highest. Common practice, no source.
 *
 * @example
 * taskMinutes.baste // [2, 4]
 */
export const taskMinutes = {
  traceAndCut: [0.5, 1.5],
  stackCut: [0.1, 0.3],
  baste: [2, 4],
  glueBaste: [0.5, 1.5],
} as const satisfies Readonly<Record<string, readonly [number, number]>>;

/**
 * Stitches a minute without any handling, slowest and fastest of two sewers on fine cloth in the time study
 * of 1861 that a US National Museum bulletin reprints: 23 in fine linen, 30 in fine silk.
 *
 * @example
 * stitchesPerMinute // [23, 30]
 */
export const stitchesPerMinute = [23, 30] as const;

/** How much of a one-inch seam's time is handling, whatever the seam's length. */
const HANDLING = 2 / 3;

/** How far a member's own pace is taken to wander, each way. A judgement, no source. */
const OWN_PACE_SPREAD = 0.2;

/**
 * Minutes for so many seams of one length, at the usual rate of the method.
 *
 * The rate is for a one-inch seam. For other lengths two thirds of it stays, being handling, and one third
 * goes with the length. That split is a judgement, made from this: pure stitching runs at 23 to 30 stitches
 * a minute (the 1861 time study), and handling, pinning and threading double or triple it.
 *
 * @example
 * usualMinutes(42, 1, 'whip') // {"low":63,"middle":94.5,"high":126}
 * usualMinutes(42, 2.5, 'whip').low // 94.5
 */
export function usualMinutes(seams: number, seamLengthInches: number, method: StitchMethod): Minutes {
  const { low, high } = minutesPerSeam[method];
  const as = oneInchSeams(seams, seamLengthInches);
  return { low: low * as, middle: ((low + high) / 2) * as, high: high * as };
}

/**
 * How many one-inch seams take the time of so many of another length.
 *
 * @example
 * oneInchSeams(42, 1) // 42
 * oneInchSeams(42, 2.5) // 63
 */
export const oneInchSeams = (seams: number, seamLengthInches: number): number =>
  seams * (HANDLING + (1 - HANDLING) * seamLengthInches);

/**
 * Minutes for so many seams at a member's own pace (minutes a seam, as she sews them), with a fifth either
 * way for good and bad days; the fifth is a judgement.
 *
 * @example
 * ownMinutes(42, 2) // {"low":67.2,"middle":84,"high":100.8}
 */
export function ownMinutes(seams: number, pace: number): Minutes {
  const middle = seams * pace;
  return { low: middle * (1 - OWN_PACE_SPREAD), middle, high: middle * (1 + OWN_PACE_SPREAD) };
}

/**
 * Minutes of stitching alone, at the fastest and the slowest rate of the 1861 time study. It takes two or
 * three times as long with the handling.
 *
 * @example
 * pureStitchingMinutes(588).low // 19.6
 * pureStitchingMinutes(588).high // 25.5652
 */
export function pureStitchingMinutes(stitches: number): { low: number; high: number } {
  const [slow, fast] = stitchesPerMinute;
  return { low: stitches / fast, high: stitches / slow };
}
