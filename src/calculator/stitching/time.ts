import type { StitchMethod } from './method.ts';
import { needlefuls } from './needlefuls.ts';
import { ownMinutes, usualMinutes } from './rates.ts';
import { runningThreadLeast, runningThreadMost, whipThread } from './thread.ts';

export interface Stitching {
  readonly seams: number;
  /** One seam, inches. */
  readonly seamLengthInches: number;
  readonly method: StitchMethod;
  readonly stitchesPerInch: number;
  /** Her own pace, minutes a seam as she sews them. */
  readonly minutesPerSeam?: number;
  readonly hoursPerWeek: number;
}

export interface StitchingTime {
  readonly seams: number;
  /** All seams together, inches. */
  readonly seamLength: number;
  readonly stitches: number;
  /** Inches; for running stitch the most it can take, the thread going square through the cloth. */
  readonly threadLength: number;
  /** Inches; for running stitch the least, the thread sloping; for whipstitch the same as threadLength. */
  readonly threadLengthLow: number;
  /** Needlefuls. */
  readonly threadLengths: number;
  readonly minutesLow: number;
  readonly minutes: number;
  readonly minutesHigh: number;
  /** Where the minutes come from: common practice, or the member's own pace. */
  readonly rateSource: 'practice' | 'own';
  readonly weeksLow: number;
  readonly weeks: number;
  readonly weeksHigh: number;
}

const threadPerInch: Readonly<
  Record<StitchMethod, { low: (n: number) => number; high: (n: number) => number }>
> = {
  running: { low: runningThreadLeast, high: runningThreadMost },
  whip: { low: whipThread, high: whipThread },
};

/**
 * Stitches, thread, minutes and weeks for so many seams of one length. Thread and needlefuls leave out the
 * lock at each end of a seam; the minutes hold it. Without a pace of her own the minutes are common
 * practice, no source (see `usualMinutes` for how they follow the seam's length).
 *
 * @example
 * stitchingTime({ seams: 42, seamLengthInches: 1, method: 'whip', stitchesPerInch: 14, hoursPerWeek: 5 }).stitches // 588
 * stitchingTime({ seams: 42, seamLengthInches: 1, method: 'whip', stitchesPerInch: 14, hoursPerWeek: 5 }).threadLength // 88.2510
 * stitchingTime({ seams: 42, seamLengthInches: 1, method: 'whip', stitchesPerInch: 14, hoursPerWeek: 5 }).threadLengths // 7
 * stitchingTime({ seams: 42, seamLengthInches: 1, method: 'whip', stitchesPerInch: 14, hoursPerWeek: 5 }).minutes // 94.5
 */
export function stitchingTime(stitching: Stitching): StitchingTime {
  const { seams, method, stitchesPerInch } = stitching;
  const seamLength = seams * stitching.seamLengthInches;
  const thread = threadPerInch[method];
  const threadLength = seamLength * thread.high(stitchesPerInch);
  const minutes = minutesOf(stitching);
  const minutesPerWeek = stitching.hoursPerWeek * 60;
  return {
    seams,
    seamLength,
    stitches: seamLength * stitchesPerInch,
    threadLength,
    threadLengthLow: seamLength * thread.low(stitchesPerInch),
    threadLengths: needlefuls(threadLength),
    minutesLow: minutes.low,
    minutes: minutes.middle,
    minutesHigh: minutes.high,
    rateSource: stitching.minutesPerSeam === undefined ? 'practice' : 'own',
    weeksLow: minutes.low / minutesPerWeek,
    weeks: minutes.middle / minutesPerWeek,
    weeksHigh: minutes.high / minutesPerWeek,
  };
}

function minutesOf({ seams, seamLengthInches, method, minutesPerSeam }: Stitching) {
  return minutesPerSeam === undefined
    ? usualMinutes(seams, seamLengthInches, method)
    : ownMinutes(seams, minutesPerSeam);
}
