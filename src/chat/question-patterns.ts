/*
 * The parts that the patterns of plain questions are built from: what a number, a size, a bed, a count of patches
 * look like in a sentence.
 */
import { takeNumber } from '../measure/number.ts';
import { inFullRings } from '../measure/rings.ts';
import { BEDS } from '../measure/size.ts';

export const NUMBER = '\\d+(?:[ -]\\d+\\/\\d+|\\/\\d+|\\.\\d+)?';
export const UNIT = '(?: ?(?:inch(?:es)?|in|ft|feet|yards?|yd|cm|mm|met(?:re|er)s?|m)\\b| ?["\'])';
/** A month's name, long or short. */
export const MONTH =
  '(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)\\b';
const A_DAY = `(?:st|nd|rd|th| (?:of )?${MONTH})`;
/** "1 in by 1 June" is no size. */
export const SIZE = `\\b${NUMBER}${UNIT}? ?(?:x|by) ?${NUMBER}(?!\\d|${A_DAY})(?:${UNIT})?`;

const wordsOf = (beds: typeof BEDS): string =>
  beds.map((bed) => bed.words.source.replace(/^\^/, '')).join('|');

export const BED = `\\b(?:${wordsOf(BEDS)})`;
const INFANT = new RegExp(`\\b(?:${wordsOf(BEDS.filter((bed) => bed.infant))})`, 'i');

/** The name of an infant's bed stays beside its size, for the caution that goes with it. */
export const infant = (question: string): string => (INFANT.test(question) ? 'crib ' : '');

/** More patches than one. */
export const PATCHES =
  '(?:hexagons|hexies|hexes|diamonds|triangles|kites|squares|rectangles|octagons|pentagons|tumblers|clam[- ]?shells|apple[- ]?cores|patches|pieces|papers)';

const UNITS =
  '(?:in|inch|inches|cm|mm|ft|feet|yds?|yards?|m|met(?:re|er)s?|x|by|rounds?|wide|a|an|degrees?|deg|points?|pointed|stars?|rosettes?|flowers?|blocks?|rows?|with|and|to|for|from)';
const BETWEEN = `(?:(?!${UNITS}\\b)[a-z-]+ ){0,2}`;
const NOT_A_PART = '(?<![\\d./,])(?<!\\d[ -])';

/**
 * So many patches: "240 hexagons", "12 blue hexies", "50 1 inch diamonds"; also "50 1/2 inch hexies", where so many
 * cannot be a size with a fraction. A size before one kind of patch is none: "1 1/2 hexagons".
 */
export const A_COUNT = `${NOT_A_PART}\\b(?:(\\d{1,6}) (?=(?:of (?:my|the|these|those) )?(?:(?!\\d+\\/)${NUMBER}${UNIT}[- ]*|\\d+(?:\\.\\d+| \\d+\\/\\d+) )?${BETWEEN}${PATCHES}\\b)|(1[3-9]|[2-9]\\d|\\d{3,6}) (?=\\d+\\/\\d+(?:${UNIT}| ${PATCHES}\\b)))`;

export const countIn = new RegExp(A_COUNT, 'i');

/** A number that was found by {@link NUMBER}. */
export const amount = (number: string): number => takeNumber(number.replace('-', ' '))?.value ?? 0;

/** Rosettes that are not sewn together. */
export const APART = /\b(?:apart|separate(?:ly)?|not joined|loose)\b/i;

/** More rings than this nobody sews. */
const MOST_RINGS = 20;
const FULL_RINGS = Array.from({ length: MOST_RINGS + 1 }, (_, rings) => inFullRings(rings)).join('|');

/** A number of as many as make no full ring round one. */
export const NO_FULL_RING = `\\b(?!(?:${FULL_RINGS}) )(\\d+)`;

/** Rosettes or stars in so many rows of so many. */
export const IN_ROWS =
  '\\b\\d+ rows of \\d+\\b|\\b\\d+ ?(?:x|by) ?\\d+ (?:rosettes|flowers|stagger|garden|rows)\\b';

/** So many stars as make no full ring, and do not stand in rows: each by itself. */
export const LOOSE_STARS = new RegExp(
  `${NO_FULL_RING} (?:six-point(?:ed)? )?stars\\b(?!.*\\b(?:between|set|rows?)\\b)`,
  'i',
);
