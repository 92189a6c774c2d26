import { ok } from '../measure/result.ts';
import type { Option } from './option.ts';
import { whole } from './option-kinds.ts';

/** A number in a list, as it is suggested with what stands there: `3: 6 fat quarters`. */
const AND_ITS_WORDS = /^\s*:\s[\s\S]*$/;

/** So many signs of a suggestion are read back. */
const LONGEST = 100;

/**
 * The number of something that stands in a list. It may be followed by a colon and what stands there, as it is
 * suggested; only the number counts.
 *
 * @example
 * listed('Which line', 100, '3').take('3: 6 fat quarters', { unit: 'in', today: '' }) // {"ok":true,"value":{"value":3,"rest":""}}
 */
export function listed(summary: string, most: number, example: string): Option<number, false> {
  const number = whole(summary, 1, most, example);
  return {
    ...number,
    shape: { as: 'words', longest: LONGEST },
    take(text, context) {
      const taken = number.take(text, context);
      return taken?.ok ? ok({ ...taken.value, rest: taken.value.rest.replace(AND_ITS_WORDS, '') }) : taken;
    },
  };
}

/**
 * What is suggested for a number in a list.
 *
 * @example
 * listedAs(3, '6 fat quarters florals') // "3: 6 fat quarters florals"
 */
export const listedAs = (number: number, words: string): string => {
  const whole = `${number}: ${words}`;
  return whole.length > LONGEST ? `${whole.slice(0, LONGEST - 1)}…` : whole;
};
