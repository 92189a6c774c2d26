/** A piece read off the front of a text: what it was, and what is left to read. */
export interface Taken<T> {
  readonly value: T;
  readonly rest: string;
}

/** A number ends where no more of one follows: a full stop may end the sentence, `1.2.3` is no number. */
const END = '(?![\\d/]|[.,]\\d)';
const WHOLE = '(\\d{1,3}(?:,\\d{3})+|\\d{1,9})';
const OVER = '(\\d{1,6})\\s*\\/\\s*(\\d{1,6})';

const MIXED = new RegExp(`^${WHOLE}(?:\\s+|\\s*-\\s*)${OVER}${END}`);
const FRACTION = new RegExp(`^${OVER}${END}`);
const GROUPED = new RegExp(`^(\\d{1,3}(?:,\\d{3})+(?:\\.\\d+)?)${END}`);
const DECIMAL = new RegExp(`^(\\d+(?:[.,]\\d+)?|\\.\\d+)${END}(?!e[-+]?\\d)`, 'i');

/**
 * Reads a number as members write it off the front of a tidied text: `1 1/2`, `1-1/2`, `3/8`, `1.5`, `2,5`,
 * `1,000`. Nothing is read where the text does not begin with one.
 *
 * @example
 * takeNumber('1 1/2in').value // 1.5
 * takeNumber('1,000 pieces').value // 1000
 * takeNumber('hexagon') // null
 */
export function takeNumber(text: string): Taken<number> | null {
  const mixed = MIXED.exec(text);
  if (mixed) return taken(text, mixed, Number(mixed[1]?.replaceAll(',', '')) + over(mixed[2], mixed[3]));
  const fraction = FRACTION.exec(text);
  if (fraction) return taken(text, fraction, over(fraction[1], fraction[2]));
  const grouped = GROUPED.exec(text);
  if (grouped) return taken(text, grouped, Number(grouped[1]?.replaceAll(',', '')));
  const decimal = DECIMAL.exec(text);
  if (decimal) return taken(text, decimal, Number(decimal[1]?.replace(',', '.')));
  return null;
}

function taken(text: string, found: RegExpExecArray, value: number): Taken<number> | null {
  if (!Number.isFinite(value)) return null;
  return { value, rest: text.slice(found[0].length) };
}

const over = (top: string | undefined, bottom: string | undefined): number => Number(top) / Number(bottom);

/** Small counts in words, each at its own place. */
export const COUNT_WORDS = [
  ...[
    'no',
    'one',
    'two',
    'three',
    'four',
    'five',
    'six',
    'seven',
    'eight',
    'nine',
    'ten',
    'eleven',
    'twelve',
  ],
];
