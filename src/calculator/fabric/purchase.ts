import { MM_PER_INCH } from '../../measure/length.ts';
import { wholeAbove } from '../../measure/result.ts';

/** The two ways in which shops sell cloth by length. */
export type SoldBy = 'yard' | 'metric';

/** What to ask for at the counter. */
export interface Purchase {
  /** Yards or metres, as `unit` says. */
  readonly amount: number;
  readonly unit: 'yd' | 'm';
  /** Inches bought. */
  readonly length: number;
  /** Inches more than needed. */
  readonly spare: number;
  /** Under half an inch to spare: a crooked cut or shrinkage eats it. */
  readonly tight: boolean;
}

/** Shops cut to an eighth of a yard or to ten centimetres: common practice, no source. */
const SOLD_BY = {
  yard: { unit: 'yd', step: 36 / 8, perUnit: 8 },
  metric: { unit: 'm', step: 100 / MM_PER_INCH, perUnit: 10 },
} as const;

const LEAST_SPARE = 0.5;

/**
 * A length of cloth in inches, rounded up to what a shop sells: eighths of a yard or tenths of a metre.
 *
 * @example
 * purchase(26.78, 'yard').amount // 0.75
 * purchase(44.98, 'yard').tight // true
 * purchase(26.78, 'metric').amount // 0.7
 */
export function purchase(inches: number, soldBy: SoldBy): Purchase {
  const { unit, step, perUnit } = SOLD_BY[soldBy];
  const steps = wholeAbove(inches / step);
  const spare = Math.max(0, steps * step - inches);
  return { amount: steps / perUnit, unit, length: steps * step, spare, tight: spare < LEAST_SPARE };
}
