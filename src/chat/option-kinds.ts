import { type Cloth, PIECES, pieceTitle, takeCloth } from '../measure/cloth.ts';
import { takeLength } from '../measure/length.ts';
import { type Taken, takeNumber } from '../measure/number.ts';
import { ok, type Result, wrong } from '../measure/result.ts';
import { grouped } from '../measure/ruler.ts';
import { BEDS, isUsual, type Size, takeSize } from '../measure/size.ts';
import type { Choice, Option } from './option.ts';
import { writeLength, writeSize } from './write-length.ts';

export { date, zone } from './option-days.ts';
export { writeLength, writeSize };

/** Lengths that Honeycount answers for, in inches: 1/8 in to 40 ft. */
export const SHORTEST = 1 / 8;
export const LONGEST = 480;

/** The most cloth in one piece: 100 yards. */
export const LONGEST_CLOTH = 3600;

type Plain<T> = Option<T, false>;

const WORD_END = /^(?![a-z0-9])/i;

/** The finished or cut size of a patch, a width, a strip: any one length. */
export function length(
  summary: string,
  least = SHORTEST,
  most = LONGEST,
  example = '1 1/2in',
): Plain<number> {
  return {
    kind: 'length',
    summary,
    example,
    bounds: `${writeLength(least)} to ${writeLength(most)}`,
    shape: { as: 'words', longest: 40 },
    take(text, { unit }) {
      const taken = takeLength(text, unit);
      return taken && within(taken, least, most, (inches) => writeLength(inches));
    },
    write: writeLength,
  };
}

/** Width × height, or a bed's name. */
export function size(summary: string, example = '60x72in'): Plain<Size> {
  return {
    kind: 'size',
    summary,
    example,
    bounds: `${writeLength(SHORTEST)} to ${writeLength(LONGEST)} each way`,
    shape: { as: 'words', longest: 40 },
    known: BEDS.map((bed) => bed.name),
    take(text, { unit }) {
      const taken = takeSize(text, unit);
      if (!taken) return null;
      const { width, height } = taken.value;
      return eachWay(taken, [width, height], LONGEST);
    },
    write(value) {
      const { width, height, bed = '' } = value;
      return isUsual(value) ? bed : `${bed} ${writeSize(width, height)}`.trim();
    },
  };
}

/** A piece of cloth or a sheet of paper. */
export function cloth(summary: string, example = 'fat-quarter'): Plain<Cloth> {
  return {
    kind: 'cloth',
    summary,
    example,
    bounds: 'fat-quarter, fat-eighth, 5in-square, 10in-square, strip, letter, a4, 18x21in, 1 1/2yd, 1m',
    shape: { as: 'words', longest: 40 },
    known: PIECES.map((piece) => piece.name),
    take(text, { unit }) {
      const taken = takeCloth(text, unit);
      if (!taken) return null;
      const { width, length: long } = taken.value;
      return eachWay(taken, [width ?? long, long], LONGEST_CLOTH);
    },
    write({ name, width, length: long }) {
      if (pieceTitle(name)) return name;
      return width === null ? writeLength(long) : writeSize(width, long);
    },
  };
}

/** Whether each side of a piece is one that can be answered for; the one that is not is named. */
function eachWay<T>(taken: Taken<T>, sides: readonly number[], most: number): Result<Taken<T>> {
  const shorter = Math.min(...sides);
  const value = shorter < SHORTEST ? shorter : Math.max(...sides);
  const checked = within({ value, rest: '' }, SHORTEST, most, writeLength);
  return checked.ok ? ok(taken) : checked;
}

/** A whole number. */
export function whole(summary: string, least: number, most: number, example = String(least)): Plain<number> {
  return {
    kind: 'whole number',
    summary,
    example,
    bounds: `${grouped(least)} to ${grouped(most)}`,
    shape: { as: 'whole', least, most },
    take(text) {
      const taken = takeNumber(text);
      if (!taken || !WORD_END.test(taken.rest)) return null;
      if (!Number.isInteger(taken.value))
        return wrong('not-whole', { got: text.slice(0, text.length - taken.rest.length) });
      return within(taken, least, most, grouped);
    },
    write: String,
  };
}

/** Any number, fractions allowed. */
export function number(summary: string, least: number, most: number, example: string): Plain<number> {
  return {
    kind: 'number',
    summary,
    example,
    bounds: `${least} to ${grouped(most)}`,
    shape: { as: 'number', least, most },
    take(text) {
      const taken = takeNumber(text);
      return taken && WORD_END.test(taken.rest) ? within(taken, least, most, String) : null;
    },
    write: String,
  };
}

/** A share, written `10%` or `10`; kept as a fraction of one. */
export function percent(summary: string, mostPercent: number, example = '10%'): Plain<number> {
  return {
    kind: 'percent',
    summary,
    example,
    bounds: `0% to ${mostPercent}%`,
    shape: { as: 'number', least: 0, most: mostPercent },
    take(text) {
      const taken = takeNumber(text);
      if (!taken) return null;
      const rest = taken.rest.replace(/^\s*(?:%|percent\b)/i, '');
      const checked = within({ value: taken.value, rest }, 0, mostPercent, (n) => `${n}%`);
      return checked.ok ? ok({ value: taken.value / 100, rest }) : checked;
    },
    write: (share) => `${Number((share * 100).toFixed(6))}%`,
  };
}

/** One of a few words. */
export function choice<const C extends readonly Choice[]>(
  summary: string,
  choices: C,
): Plain<C[number]['name']> {
  const { pattern, names } = spokenChoices(choices);
  return {
    kind: 'choice',
    summary,
    example: choices[0]?.name ?? '',
    bounds: choices.map((one) => one.name).join(', '),
    shape: { as: 'choice', choices },
    take(text) {
      const found = pattern.exec(text);
      if (!found) return null;
      const value = names[found.findIndex((group, i) => i > 0 && group !== undefined) - 1] ?? '';
      return ok({ value, rest: text.slice(found[0].length) });
    },
    write: (value) => value,
  };
}

/** One pattern for all the ways to say all the choices, the longest first; its groups tell which was said. */
function spokenChoices(choices: readonly Choice[]): { pattern: RegExp; names: string[] } {
  const spoken = choices
    .flatMap((one) => [one.name, ...(one.words ?? [])].map((word) => ({ name: one.name, word })))
    .sort((a, b) => b.word.length - a.word.length);
  const pattern = new RegExp(
    `^(?:${spoken.map(({ word }) => `(${spelling(word)})`).join('|')})(?![a-z0-9])`,
    'i',
  );
  return { pattern, names: spoken.map(({ name }) => name) };
}

/** A word as it may be typed: hyphens or blanks or nothing between its parts, one or more of it. */
const spelling = (word: string): string =>
  `${word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/[- ]/g, '[- ]?')}(?:e?s)?`;

/** Yes or no. */
export function yesNo(summary: string): Plain<boolean> {
  return {
    kind: 'yes or no',
    summary,
    example: 'yes',
    bounds: 'yes, no',
    shape: {
      as: 'choice',
      choices: [
        { name: 'yes', title: 'yes' },
        { name: 'no', title: 'no' },
      ],
    },
    take(text) {
      const found = /^(?:(yes|y|true|with)|(no|n|false|without|none))\b/i.exec(text);
      return found && ok({ value: found[1] !== undefined, rest: text.slice(found[0].length) });
    },
    write: (value) => (value ? 'yes' : 'no'),
  };
}

/** Free words, kept as they are typed. */
export function words(summary: string, longest: number, example: string): Plain<string> {
  return {
    kind: 'words',
    summary,
    example,
    bounds: `up to ${grouped(longest)} characters`,
    shape: { as: 'words', longest },
    greedy: true,
    take(text) {
      const value = text.trim();
      if (value === '') return null;
      return value.length > longest
        ? wrong('text-too-long', { got: grouped(value.length), most: grouped(longest) })
        : ok({ value, rest: '' });
    },
    write: (value) => value,
  };
}

function within<T extends Taken<number>>(
  taken: T,
  least: number,
  most: number,
  write: (n: number) => string,
): Result<T> {
  const { value } = taken;
  if (Number.isNaN(value)) return wrong('not-a-number', {});
  if (value < least - 1e-9)
    return wrong('too-small', { got: write(value), least: write(least), most: write(most) });
  if (value > most + 1e-9)
    return wrong('too-large', {
      got: write(value),
      least: write(least),
      most: write(most),
    });
  return ok(taken);
}
