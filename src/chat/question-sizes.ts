import { takeLength } from '../measure/length.ts';
import type { Doubt } from './doubt.ts';
import { NUMBER, PATCHES } from './question-patterns.ts';
import { MUCH, TIME } from './question-signs.ts';
import { optionWords } from './question-words.ts';
import { writeLength } from './write-length.ts';

const INCH = '(?: ?(?:inch(?:es)?|in|cm|mm)\\b| ?")';
const NOUN = `(?:${PATCHES}|hexagon|hexie|diamond|triangle|kite|patch|ones?|sides?|edges?|hex)`;
const ONE = `\\b(${NUMBER})(${INCH})?(?:[- ](?:sides?[- ])?${NOUN})?`;
const BETWEEN =
  '(?:,? (?:and|or|vs\\.?|versus|against|than|instead of|compared (?:to|with)),?(?: (?:how many|how much|what|in|with|for|of|to|from|about|a|an|the|at|use|using))*)';
/** What a size of patches is followed by; not what a border, a seam or a square to cut from is. */
const THEN = `(?=[?.!,;]|$|[- ](?:sides?[- ])?${NOUN}\\b(?! (?:seams?|strips?))|[- ](?:for|from|out of|in|to|on|make|come|take|need|is|are|would|do|side)\\b)`;
const SIZES = new RegExp(
  `(?<![\\d./:])${ONE}(?:,(?: and| or)? ${ONE})?${BETWEEN} \\b(${NUMBER})(${INCH})?${THEN}`,
  'i',
);
const COMPARED = /\b(?:difference|compare[ds]?|comparing|comparison|versus|vs|better|bigger|smaller)\b/i;
const OTHER_NUMBERS = /\b(?:rounds?|rosettes|flowers|stars|blocks|borders?|binding|squares?|strips?)\b/i;

/** Larger than this nobody compares patches: it is cloth, or a quilt. Inches. */
const LARGEST = 8;

const SIZED_FORMS = /^(?:cut|count \w+|yield|yardage|time|plan make|template)$/;

/** "1 inch or 1 1/2 inch": the same is worked out with each size, and which it shall be is asked. */
export function severalSizes(sign: string, question: string): Doubt | null {
  const ask = sign || 'cut';
  const found = SIZED_FORMS.test(ask) ? SIZES.exec(question) : null;
  if (!found) return null;
  const [all, first = '', firstUnit, second, secondUnit, last = '', lastUnit] = found;
  if (!lastUnit && (!COMPARED.test(question) || OTHER_NUMBERS.test(question))) return null;
  // "1 and 1/2 inch" is one size.
  if (!firstUnit && /\band\b/i.test(all) && /^\d+$/.test(first) && /^\d+\/\d+$/.test(last)) return null;
  const lengths = [[first, firstUnit], ...(second ? [[second, secondUnit]] : []), [last, lastUnit]].map(
    ([number, unit]) => takeLength(`${number}${unit ?? lastUnit ?? firstUnit ?? 'in'}`, 'in')?.value ?? 0,
  );
  if (new Set(lengths).size < lengths.length || lengths.some((size) => size > LARGEST)) return null;
  const rest = optionWords(ask, question.replace(all, withoutSizes));
  const sizes = lengths.map(writeLength);
  return {
    ask,
    title: sizes.map(labelOf).join(' or '),
    asks: 'Which size shall it be?',
    ways: sizes.map((size) => ({ label: labelOf(size), words: `size:${size}, ${rest}` })),
    ...(ask === 'plan make' ? { tells: toldOfPlan(question) } : {}),
  };
}

const labelOf = (size: string): string => size.replace(/([a-z]+)$/, ' $1');

/** What stands about the sizes, such as the shape, is read with the rest. */
const withoutSizes = (words: string): string =>
  words.replace(new RegExp(`\\b${NUMBER}${INCH}?`, 'gi'), ' ').replace(/[-,] /g, ' ');

/** What was asked of a whole plan: its cloth, its hours, or how many patches. */
const toldOfPlan = (question: string): RegExp =>
  MUCH.test(question) ? /^(?:scraps|cloth in all)\b/ : TIME.test(question) ? /\bof sewing\b/ : /\d/;
