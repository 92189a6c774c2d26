import { type Taken, takeNumber } from './number.ts';
import { ok, type Result, wrong } from './result.ts';
import { tidy } from './tidy.ts';

/** The unit that a bare number is taken in. */
export type Unit = 'in' | 'cm' | 'mm';

/** One inch is 25.4 mm exactly, one yard 0.9144 m exactly (National Bureau of Standards, 1 July 1959). */
export const MM_PER_INCH = 25.4;

export type LengthUnit = 'in' | 'ft' | 'yd' | 'mm' | 'cm' | 'm';

export const INCHES: Readonly<Record<LengthUnit, number>> = {
  in: 1,
  ft: 12,
  yd: 36,
  mm: 1 / MM_PER_INCH,
  cm: 10 / MM_PER_INCH,
  m: 1000 / MM_PER_INCH,
};

const MILLIMETRES: Readonly<Partial<Record<LengthUnit, number>>> = { mm: 1, cm: 10, m: 1000 };

/**
 * A measure in inches. Metric ones are divided, so that what is a whole number of inches comes out as one.
 *
 * @example
 * toInches(25.4, 'mm') // 1
 * toInches(0.9144, 'm') // 36
 * toInches(2, 'yd') // 72
 */
export function toInches(value: number, unit: LengthUnit): number {
  const millimetres = MILLIMETRES[unit];
  return millimetres === undefined ? value * INCHES[unit] : (value * millimetres) / MM_PER_INCH;
}

/** Ends a unit's word; an `x` may follow it at once where a second side follows that: `5ftx6ft`. */
const END = '(?:(?![a-z])|(?=x\\s*[\\d.]))\\.?';

const unitWord = (words: string, sign?: string): RegExp =>
  new RegExp(`^(?:${words})${END}${sign ? `|^${sign}` : ''}`, 'i');

const UNIT_WORDS: readonly (readonly [RegExp, LengthUnit])[] = [
  [unitWord('inches|inch|ins|in', '"'), 'in'],
  [unitWord('feet|foot|ft', "'"), 'ft'],
  [unitWord('yards|yard|yds|yd'), 'yd'],
  [unitWord('millimet(?:re|er)s?|mm'), 'mm'],
  [unitWord('centimet(?:re|er)s?|cms?'), 'cm'],
  [unitWord('met(?:re|er)s?|m'), 'm'],
];

/** A length read off the front of a text, in inches, and whether its unit was said. */
export interface TakenLength extends Taken<number> {
  readonly unit: LengthUnit | null;
}

/** How far apart the marks are that a length may be read at, in inches: sixteenths, and half millimetres. */
const MARKS: Readonly<Partial<Record<LengthUnit, number>>> = { in: 1 / 16, mm: 0.5 / MM_PER_INCH };

const EXACT = /^\s*\(([\d,]+(?:\.\d+)?)\)/;

/**
 * Reads a length off the front of a tidied text. A bare number is in `unit`. Feet or yards may be followed by
 * inches (`5' 6"`, `5'6`, `1 yd 9 in`). The exact decimal that Honeycount prints beside a mark is taken for the
 * length: `3 1/8 in (3.098)` is 3.098, `78.5 mm (78.69)` is 78.69 mm.
 *
 * @example
 * takeLength('1 1/2in seam', 'in').value // 1.5
 * takeLength("5' 6\"", 'in').value // 66
 * takeLength('25.4 mm', 'in').value // 1
 * takeLength('60x72', 'in') // null
 */
export function takeLength(text: string, unit: Unit): TakenLength | null {
  const first = takeOne(text);
  if (!first) return null;
  const inches = toInches(first.value, first.unit ?? unit);
  if (!Number.isFinite(inches)) return null;
  if (first.unit === 'ft' || first.unit === 'yd') {
    const then = takeOne(first.rest.trimStart());
    const shorthand = first.unit === 'ft' && then?.unit === null && /^\d/.test(first.rest);
    if (then && (then.unit === 'in' || shorthand))
      return { value: inches + then.value, unit: first.unit, rest: then.rest };
  }
  const mark = first.unit === null ? undefined : MARKS[first.unit];
  const beside = mark === undefined ? null : EXACT.exec(first.rest);
  const exact = toInches(Number(beside?.[1]?.replaceAll(',', '')), first.unit ?? unit);
  if (beside && mark !== undefined && Math.abs(exact - inches) <= mark)
    return { value: exact, unit: first.unit, rest: first.rest.slice(beside[0].length) };
  return { value: inches, unit: first.unit, rest: first.rest };
}

function takeOne(text: string): TakenLength | null {
  const number = takeNumber(text);
  if (!number || /^\s*(?:x|by)\s*[\d.]/i.test(number.rest)) return null;
  const gap = /^\s*-?\s*/.exec(number.rest)?.[0].length ?? 0;
  const after = number.rest.slice(gap);
  for (const [word, unit] of UNIT_WORDS) {
    const found = word.exec(after);
    if (found) return { value: number.value, unit, rest: after.slice(found[0].length) };
  }
  // A number that runs into letters ("4x4", "1e400", "2nd") is no length.
  return /^[a-z%°]/i.test(number.rest) ? null : { value: number.value, unit: null, rest: number.rest };
}

/**
 * Reads a whole text as one length in inches.
 *
 * @example
 * readLength('2½ in').value // 2.5
 * readLength('fish').problem.code // "not-a-length"
 */
export function readLength(text: string, unit: Unit = 'in'): Result<number> {
  const taken = takeLength(tidy(text), unit);
  if (taken?.rest.trim() !== '') return wrong('not-a-length', { got: text });
  return ok(taken.value);
}
