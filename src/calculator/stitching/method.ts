/** How patches are joined by hand: running stitch on a marked line, or whipstitch over paper. */
export type StitchMethod = 'running' | 'whip';

/**
 * Stitches an inch when a member has not said her own. Common practice, no source.
 *
 * @example
 * stitchesPerInch.running // 9
 * stitchesPerInch.whip // 14
 */
export const stitchesPerInch: Readonly<Record<StitchMethod, number>> = { running: 9, whip: 14 };

/**
 * The stitches an inch that piecers usually sew, fewest and most. Common practice, no source.
 *
 * @example
 * usualStitches.running // [7, 12]
 * usualStitches.whip // [10, 20]
 */
export const usualStitches: Readonly<Record<StitchMethod, readonly [number, number]>> = {
  running: [7, 12],
  whip: [10, 20],
};
