import { COUNT_WORDS } from '../../measure/number.ts';

const NUMBERS = COUNT_WORDS.slice(1);

const FIGURES = '\\d[\\d,]*(?:\\.\\d+)?(?:[ -]?\\d+\\/\\d+|\\/\\d+)?(?![\\d/.]*\\d)';

/** A number as it may be told of what was sewn: with its sign and its part, so that neither is lost. */
const NUMBER = `(?:(?:minus |negative |[-−])?(?:${FIGURES}|${NUMBERS.join('|')})(?: and a half)?|half an?|another(?: ${NUMBERS.join('| ')})?)`;

/** So many of something; and so many where nothing of it is named. */
export const COUNT = `(?:${NUMBER}|an?)`;
export const BARE_COUNT = NUMBER;

/** What is counted in a challenge. */
export const NOUN =
  '(?:rosettes?|flowers?|blocks?|stars?|patch(?:es)?|pieces?|hexies?|hexes|hexagons?|diamonds?)';

const COUNTED = [
  [/^(?:rosette|flower)/i, 'rosette'],
  [/^block/i, 'block'],
  [/^star/i, 'star'],
  [/^(?:patch|hex|diamond)/i, 'patch'],
] as const;

/**
 * What is counted, by what it is called; nothing where a piece of anything may be meant.
 *
 * @example
 * countedAs('flowers') // "rosette"
 * countedAs('hexies') // "patch"
 * countedAs('pieces') // undefined
 */
export const countedAs = (called: string): (typeof COUNTED)[number][1] | undefined =>
  COUNTED.find(([words]) => words.test(called))?.[1];

/**
 * A count in figures, as `/log` reads it.
 *
 * @example
 * inPlainFigures('two') // "2"
 * inPlainFigures('another three') // "3"
 * inPlainFigures('minus 2') // "-2"
 * inPlainFigures('two and a half') // "2 1/2"
 * inPlainFigures('half a') // "1/2"
 */
export function inPlainFigures(said: string): string {
  const words = said.toLowerCase();
  if (words.startsWith('half')) return '1/2';
  const less = /^(?:minus |negative |[-−])/.test(words) ? '-' : '';
  const more = words.endsWith(' and a half') ? ' 1/2' : '';
  const number = words.replace(/^(?:minus |negative |another (?=.)|[-−])/, '').replace(/ and a half$/, '');
  const named = /^(?:an?|another)$/.test(number) ? 1 : NUMBERS.indexOf(number) + 1;
  return `${less}${named > 0 ? named : number}${more}`;
}
