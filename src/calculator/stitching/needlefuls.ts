import { wholeAbove } from '../../measure/result.ts';

/** A working length, inches: an extension leaflet on hand stitches says no longer than 18 to 24. */
export const WORKING_LENGTH = 18;

/** What the tail, the knot and the needle's eye keep of each length, inches. Common practice, no source. */
export const LENGTH_LOST = 5;

/**
 * How many times the needle is threaded for so many inches of thread.
 *
 * @example
 * needlefuls(88.25) // 7
 * needlefuls(13) // 1
 * needlefuls(0) // 0
 */
export function needlefuls(threadInches: number, workingLength = WORKING_LENGTH, lost = LENGTH_LOST): number {
  // The tolerance turns 0 into -0, which would be printed with its sign.
  return wholeAbove(threadInches / (workingLength - lost)) + 0;
}

/**
 * The thread that so many needlefuls are cut from, inches: more than is in the seams, by what each length loses.
 *
 * @example
 * threadToCut(7) // 126
 */
export const threadToCut = (lengths: number): number => lengths * WORKING_LENGTH;
