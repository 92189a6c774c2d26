import type { Doubt } from './question-doubts.ts';
import { amount, NUMBER, PATCHES } from './question-patterns.ts';
import { MUCH, TIME } from './question-signs.ts';
import { optionWords } from './question-words.ts';

const INCH = '(?: ?(?:inch(?:es)?|in|cm|mm)\\b| ?")';
const NOUN = `(?:${PATCHES}|hexagon|hexie|diamond|triangle|kite|patch|ones?|sides?|edges?|hex)`;
const ONE = `(?<![\\d./:])\\b(${NUMBER})(${INCH})?(?:[- ](?:sides?[- ])?${NOUN})?`;
const BETWEEN =
  '(?:,? (?:and|or|vs\\.?|versus|against|than|instead of|compared (?:to|with)),?(?: (?:how many|how much|what|in|with|for|of|to|from|about|a|an|the|at|use|using))*)';
/** What a size of patches is followed by; not what a border, a seam or a square to cut from is. */
const THEN = `(?=[?.!,;]|$|[- ](?:sides?[- ])?${NOUN}\\b(?! (?:seams?|strips?))|[- ](?:for|from|out of|in|to|on|make|come|take|need|is|are|would|do|side)\\b)`;
const SIZES = new RegExp(
  `${ONE}(?:,(?: and| or)? ${ONE.replace('(?<![\\d./:])', '')})?${BETWEEN} \\b(${NUMBER})(${INCH})?${THEN}`,
  'i',
);
const COMPARED = /\b(?:difference|compare[ds]?|comparing|comparison|versus|vs|better|bigger|smaller)\b/i;
const OTHER_NUMBERS = /\b(?:rounds?|rosettes|flowers|stars|blocks|borders?|binding|squares?|strips?)\b/i;

/** Larger than this nobody compares patches: it is cloth, or a quilt. Inches. */
const LARGEST = 8;
const TO_INCHES: Readonly<Record<string, number>> = { cm: 1 / 2.54, mm: 1 / 25.4 };

const SIZED_FORMS = /^(?:cut|count \w+|yield|yardage|time|plan make|template)$/;

/** "1 inch or 1 1/2 inch": the same is worked out with each size, and which it shall be is asked. */
export function severalSizes(sign: string, question: string): Doubt | null {
  const ask = sign || 'cut';
  const found = SIZED_FORMS.test(ask) ? SIZES.exec(question) : null;
  if (!found) return null;
  const [all, first = '', firstUnit, second, secondUnit, last = '', lastUnit] = found;
  const compared = COMPARED.test(question);
  if (!lastUnit && (!compared || OTHER_NUMBERS.test(question))) return null;
  // "1 and 1/2 inch" is one size.
  if (!firstUnit && /\band\b/i.test(all) && /^\d+$/.test(first) && /^\d+\/\d+$/.test(last)) return null;
  const unit = unitOf(lastUnit ?? firstUnit) ?? 'in';
  const sizes = [
    [first, firstUnit],
    [second, secondUnit],
    [last, lastUnit],
  ].flatMap(([number, own]) => (number === undefined ? [] : [`${number}${unitOf(own) ?? unit}`]));
  if (new Set(sizes).size < sizes.length || sizes.some((size) => inchesOf(size) > LARGEST)) return null;
  const rest = optionWords(ask, question.replace(all, withoutSizes));
  return {
    ask,
    title: sizes.map(labelOf).join(' or '),
    asks: 'Which size shall it be?',
    ways: sizes.map((size) => ({ label: labelOf(size), words: `size:${size}, ${rest}` })),
    ...(ask === 'plan make' ? { tells: told(question) } : {}),
  };
}

const unitOf = (unit: string | undefined) =>
  unit
    ?.trim()
    .replace(/^(?:inch(?:es)?|")$/i, 'in')
    .toLowerCase();

const inchesOf = (size: string): number =>
  amount(size.replace(/[a-z]+$/, '')) * (TO_INCHES[/[a-z]+$/.exec(size)?.[0] ?? ''] ?? 1);

const labelOf = (size: string): string => size.replace(/([a-z]+)$/, ' $1');

/** What stands about the sizes, such as the shape, is read with the rest. */
const withoutSizes = (words: string): string =>
  words.replace(new RegExp(`\\b${NUMBER}${INCH}?`, 'gi'), ' ').replace(/[-,] /g, ' ');

const told = (question: string): RegExp =>
  MUCH.test(question) ? /^(?:scraps|cloth in all)\b/ : TIME.test(question) ? /\bof sewing\b/ : /\d/;
