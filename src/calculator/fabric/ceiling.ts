import { wholeBelow } from '../../measure/result.ts';

/**
 * How many patches a piece of cloth could give at the very most: its area by the patch's, in square inches.
 * Where each row and each strip may be short by a hair, so may the area: by the same hair both ways.
 *
 * @example
 * ceilingOf(4, 10, 10) // 25
 */
export function ceilingOf(area: number, width: number, length: number): number {
  if (width <= 0 || length <= 0) return 0;
  return wholeBelow(((width * length) / area) * (1 + 2.5e-9));
}
