/*
 * Inches of thread in one inch of seam, from the geometry of the stitch. Each formula starts from the
 * stitches an inch and the inches of cloth that the needle goes through.
 */

/** Two plies of quilting cotton, inches. From memory, not measured. */
export const TWO_PLIES = 0.018;

/** How deep a whipstitch bites below the folded edge, inches. Common practice, no source. */
export const WHIP_BITE = 0.03;

/**
 * Running stitch, the least thread an inch: the thread slopes through the cloth.
 *
 * @example
 * runningThreadLeast(9) // 1.0512
 */
export function runningThreadLeast(stitchesPerInch: number, plies = TWO_PLIES): number {
  return Math.hypot(1, 2 * stitchesPerInch * plies);
}

/**
 * Running stitch, the most thread an inch: the thread goes square through the cloth.
 * Engineering formulas for machine stitches have the same shape.
 *
 * @example
 * runningThreadMost(9) // 1.324
 */
export function runningThreadMost(stitchesPerInch: number, plies = TWO_PLIES): number {
  return 1 + 2 * stitchesPerInch * plies;
}

/**
 * What a backstitch after every so many running stitches adds an inch: from half a pitch long to a full one.
 *
 * @example
 * backstitchLockThread(4) // {"least":0.25,"most":0.5}
 */
export function backstitchLockThread(everyStitches: number): { least: number; most: number } {
  return { least: 1 / everyStitches, most: 2 / everyStitches };
}

/**
 * Backstitch all the way, an inch.
 *
 * @example
 * backstitchThread(9) // 3.324
 */
export function backstitchThread(stitchesPerInch: number, plies = TWO_PLIES): number {
  return 3 + 2 * stitchesPerInch * plies;
}

/**
 * Whipstitch round two folded edges, an inch.
 *
 * @example
 * whipThread(10) // 1.6560
 * whipThread(14) // 2.1012
 * whipThread(18) // 2.5779
 */
export function whipThread(stitchesPerInch: number, plies = TWO_PLIES, bite = WHIP_BITE): number {
  return Math.hypot(1, 2 * stitchesPerInch * (bite + 2 * plies));
}

/**
 * Thread to baste one patch over its paper, inches, from the inches round its outline.
 * Common practice, no source.
 *
 * @example
 * bastingThread(6) // 10.6
 */
export function bastingThread(outlineInches: number): number {
  return 1.1 * outlineInches + 4;
}
