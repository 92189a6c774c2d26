/**
 * Minutes for the n-th of a kind when the first took so many: the power curve, n to the log₂ of the rate,
 * so that each doubling costs `rate` times as much. About 0.8 is the classical factory figure (an open
 * encyclopaedia's article on learning curves); for a hobby with breaks 0.9 to 0.95 is a judgement.
 * Single people follow an exponential more closely (Psychonomic Bulletin & Review 7 (2000) 185–207), so
 * with fewer than about eight logs the last four to six tell more than any curve.
 *
 * @example
 * unitMinutes(95, 8, 0.8) // 48.64
 * unitMinutes(95, 1, 0.9) // 95
 */
export function unitMinutes(first: number, nth: number, rate: number): number {
  return first * nth ** learningExponent(rate);
}

/**
 * The power curve's exponent.
 *
 * @example
 * learningExponent(0.8) // -0.3219
 */
export function learningExponent(rate: number): number {
  return Math.log2(rate);
}
