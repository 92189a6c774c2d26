import { CONTROL } from '../measure/tidy.ts';

/** So many signs of a name are shown. */
const LONGEST = 100;

const UNSEEN = new RegExp(CONTROL.source, 'gu');

/** More marks than this on one letter climb over the lines above and below. */
const PILED_MARKS = /(\p{M}{2})\p{M}+/gu;

/**
 * A member's name as it is shown and kept: on one line, without signs that cannot be seen or that turn the
 * line around, and not longer than a line has room for. The platform's own name stays as it is; who she is goes
 * by her id.
 *
 * @example
 * shownName('Ada\n\u001b[31mBea') // "Ada [31mBea"
 * shownName('Ada\u202eaeB') // "AdaaeB"
 * shownName('\u200b') // "somebody"
 */
export function shownName(name: string): string {
  const plain = name
    .replace(/\s+/gu, ' ')
    .replace(UNSEEN, '')
    .replace(PILED_MARKS, '$1')
    .replace(/ {2,}/g, ' ')
    .trim();
  const signs = [...plain];
  if (signs.length === 0) return 'somebody';
  return signs.length > LONGEST
    ? `${signs
        .slice(0, LONGEST - 1)
        .join('')
        .trim()}…`
    : plain;
}
