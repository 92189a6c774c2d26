import { WEEKDAYS } from '../defaults.ts';
import { MONTH_NAME } from '../option-days.ts';

/** One way in which members speak of what the guild does, and the ask that it stands for. */
export interface Saying {
  /** The command and its form. */
  readonly ask: string;
  /** The words that its options are read from; null where a text does not say it. */
  read(text: string): string | null;
}

interface Signs {
  /** One of them is in the text. */
  readonly any: readonly RegExp[];
  /** All of them are in it too. */
  readonly all?: readonly RegExp[];
  /** None of them is. */
  readonly none?: readonly RegExp[];
  /** The words that the options are read from; none where they say nothing. */
  words?(text: string): string;
}

/** A way of saying, written in parts; capitals are ignored. */
export const of = (...parts: readonly string[]): RegExp => new RegExp(parts.join(''), 'iu');

/** An ask that is known by its signs. */
export const heard = (ask: string, { any, all = [], none = [], words = () => '' }: Signs): Saying => ({
  ask,
  read: (text) =>
    any.some((sign) => sign.test(text)) &&
    all.every((sign) => sign.test(text)) &&
    !none.some((sign) => sign.test(text))
      ? words(text)
      : null,
});

/** What may be said before anything, and says nothing of it. */
export const LEAD =
  '^\\s*(?:(?:please|ok(?:ay)?|so|and|well|yes|yay|hooray|phew|right|update|also)[,!.:]*\\s+)*';

/** What may be said behind it. */
export const END = '(?:[,\\s]+(?:please|thanks|thank you|now|too|as well))*\\s*[.!?]*\\s*$';

/** A day of the week. */
export const A_WEEKDAY = `(?:${WEEKDAYS.join('|')})`;

/** A day on which something was sewn, as it is told. */
export const DAY = `(?:today|yesterday|last night|this (?:morning|evening|afternoon)|(?:on |last )?${A_WEEKDAY}|on the \\d{1,2}(?:st|nd|rd|th)|on \\d{1,2}(?:st|nd|rd|th)?(?: of)? ${MONTH_NAME}|on ${MONTH_NAME} \\d{1,2}(?:st|nd|rd|th)?|(?:an?|two|three|four|five|six|\\d{1,2}) days? ago)`;

/** A weekday that comes round. */
export const WEEKDAY = new RegExp(`\\b(${A_WEEKDAY})s?\\b`, 'i');

/** The weekday that is named, or nothing. */
export const weekdayIn = (text: string): string => WEEKDAY.exec(text)?.[1]?.toLowerCase() ?? '';

/** She says that it is not so. */
export const NOT_SO = /\bnot\b|n['’]t\b|\bnever\b|\bbut\b|\bcannot\b/i;

/** What a challenge or a swap is like, and no name of it. */
const LIKE =
  /^(?:(?:new|current|next|first|second|last|latest|big|little|whole|open|same|sewing|stitching|piecing|quilt(?:ing)?|patchwork|guild(?:['’]s)?|group(?:['’]s)?|club|month(?:['’]s|ly)?|year(?:['’]s|ly)?|week(?:['’]s|ly)?|season(?:['’]s)?|rosettes?|flowers?|stars?|blocks?|hex\w*|diamonds?|patch(?:es)?|fabrics?|cloth|scraps?|charms?|squares?|strips?|fat|quarters?)\s*)+$/i;

/**
 * The name by which a challenge or a swap is called; nothing where it is only said what it is like.
 *
 * @example
 * calledIn('join the Winter challenge', 'challenge') // "Winter"
 * calledIn('join the new sewing challenge', 'challenge') // ""
 */
export function calledIn(text: string, what: 'challenge' | 'swap'): string {
  const called = new RegExp(
    `\\b(?:the|our|this|your) ((?:[\\p{L}\\d’'-]+ ){0,2}[\\p{L}\\d’'-]+) ${what}\\b`,
    'iu',
  ).exec(text)?.[1];
  return called === undefined || LIKE.test(called) ? '' : called;
}

/** The same under its option. */
export function namedIn(text: string, what: 'challenge' | 'swap'): string {
  const called = calledIn(text, what);
  return called && `${what}:${called}`;
}
