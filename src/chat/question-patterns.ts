/*
 * The parts that the patterns of plain questions are built from: what a number, a size, a bed, a count of patches
 * look like in a sentence.
 */
import { takeNumber } from '../measure/number.ts';
import { inFullRings } from '../measure/rings.ts';
import { BEDS } from '../measure/size.ts';
import { MONTH_NAME } from './option-days.ts';

export const NUMBER = '\\d+(?:[ -]\\d+\\/\\d+|\\/\\d+|\\.\\d+)?';
export const UNIT = '(?:[ -]?(?:inch(?:es)?|in|ft|feet|yards?|yd|cm|mm|met(?:re|er)s?|m)\\b| ?["\'])';
const A_DAY = `(?:st|nd|rd|th| (?:of )?${MONTH_NAME})`;
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

/** Patches of which the seams are not those of hexagons. */
export const OTHER_SHAPES =
  '\\b(?:diamonds?|triangles?|kites?|squares?|rectangles?|octagons?|pentagons?|tumblers?|clam[- ]?shells?|apple[- ]?cores?|half)\\b';

const UNITS =
  '(?:in|inch|inches|cm|mm|ft|feet|yds?|yards?|m|met(?:re|er)s?|x|by|rounds?|wide|a|an|degrees?|deg|points?|pointed|stars?|rosettes?|flowers?|blocks?|rows?|with|and|to|for|from)';
const BETWEEN = `(?:(?!${UNITS}\\b)[a-z-]+ ){0,2}`;
/** Not the end of a larger number, or of a fraction. */
export const NOT_A_PART = '(?<![\\d./,])(?<!\\d[ -])';

/** "20 a day": how fast, and not how many. */
export const A_RATE = ' (?:(?:an?|per|each|every) (?:hour|day|night|evening|week|month|year)s?|1 hour)\\b';

/**
 * So many patches: "240 hexagons", "12 blue hexies", "50 1 inch diamonds"; also "50 1/2 inch hexies", where so many
 * cannot be a size with a fraction. A size before one kind of patch is none: "1 1/2 hexagons".
 */
export const A_COUNT = `${NOT_A_PART}\\b(?:(\\d{1,6}) (?=(?:of (?:my|the|these|those) )?(?:(?!\\d+\\/)${NUMBER}${UNIT}[- ]*|\\d+(?:\\.\\d+| \\d+\\/\\d+) )?${BETWEEN}${PATCHES}\\b(?!${A_RATE}))|(1[3-9]|[2-9]\\d|\\d{3,6}) (?=\\d+\\/\\d+(?:${UNIT}| ${PATCHES}\\b)))`;

export const countIn = new RegExp(A_COUNT, 'i');

/** One diamond made of small ones. */
export const LARGE_DIAMOND =
  /\b(?:large|big|giant|huge) diamond\b|\bdiamond (?:of|with|made of) (?:\w+ )?diamonds\b|\bdiamonds in (?:an?|one|the) diamond\b/i;

/** So many patches along a side: "4 a side", "10 diamonds on each edge". */
export const A_SIDE = new RegExp(
  `${NOT_A_PART}\\b(\\d+) (?:small )?(?:diamonds? )?(?:(?:to|on|along|for) )?(?:per|an?|each|every|the) (?:side|edge)\\b`,
  'i',
);

/** The same of a large diamond, also as "7 by 7". */
export const DIAMONDS_ALONG = new RegExp(`${A_SIDE.source}|\\b(\\d+) ?(?:by|x) ?\\2\\b`, 'i');

const SHAPE_NAMED =
  '(?:60 degree |(?!numbers?\\b|many\\b|amount\\b|count\\b)[a-z]+[ -]){0,2}(?:hex\\w*|diamonds?|triangles?|kites?|squares?|octagons?|pentagons?|tumblers?|clam\\w*|patch(?:es)?|pieces?)\\b';
const NO_PATCH =
  '(?:strips?|squares?|templates?|papers?|pieces?|bits?|needles?|batting|wadding|backing|quilts?|fabric|cloth|seams?)\\b';
/** The size is what is asked for: "the largest hexagon", "how big can I make". */
export const SIZE_ASKED = new RegExp(
  `\\b(?:biggest|largest|max(?:imum)?)(?: (?:possible|sizes?|of|the|an?))* (?:${SHAPE_NAMED}|(?:i|we|they|it) can\\b)|\\b(?:what|which) size\\b(?! ${NO_PATCH})|\\bhow (?:big|large)\\b(?! an? ${NO_PATCH})|\\bwhat (?:hex\\w*|diamonds?|triangles?) (?:from|out of|can|will|fits?)\\b`,
  'i',
);
/** How many are to come out at that size. */
export const TO_COME_OUT =
  /\b(?:get|cut|fit|make|squeeze|need|want|so that|so|for)(?: out)? (\d+)(?: of (?:them|those|these|it))?\b(?! ?(?:in\b|inch|"|cm|mm|x\b|by\b|\/|\.|y(?:ar)?ds?\b|m\b|met|fat|charm))|\b(\d+)(?: of (?:them|those|these))? (?:come|fit|can be cut)\b/i;
/** A size that the patches have already. */
export const PATCH_SIZED = new RegExp(
  `\\b${NUMBER}${UNIT}[- ]*(?:finished )?(?:60 degree )?(?:[a-z]+ )?(?!squares\\b)(?:${PATCHES}|hexagon|hexie|hex|diamond|triangle)\\b(?! strips?)|,? ${NUMBER}(?: ?(?:in|inch|inches|cm|mm)\\b| ?")[ ?.!]*$`,
  'i',
);

/** The units of a length that is to be read on another ruler. */
export const RULED =
  '(?:inch(?:es)?|in|cms?|centimet(?:re|er)s?|mm|millimet(?:re|er)s?|y(?:ar)?ds?|feet|foot|ft|met(?:re|er)s?|m)';
/** The other units that it is asked in. */
export const ASKED_IN = `\\b(?:in|to|into) ${RULED}\\b(?=[ ?.!]*$)|= ?\\??(?: ?how many)? ?${RULED}\\b(?=[ ?.!]*$)|\\bhow many ${RULED} (?=(?:is|are|in|make|to)\\b)`;

/** A number that was found by {@link NUMBER}. */
export const amount = (number: string): number => takeNumber(number.replace('-', ' '))?.value ?? 0;

/** Rosettes that are not sewn together. */
export const APART = /\b(?:apart|separate(?:ly)?|not joined|loose)\b/i;

/** More rings than this nobody sews. */
const MOST_RINGS = 20;
const FULL_RINGS = Array.from({ length: MOST_RINGS + 1 }, (_, rings) => inFullRings(rings)).join('|');

/** A number of as many as make no full ring round one. */
export const NO_FULL_RING = `\\b(?!(?:${FULL_RINGS}) )(\\d+)`;

/** More than twelve in a row is a measure of the quilt, and no number of rosettes. */
const IN_A_ROW = '(?:1[0-2]|[1-9])';
const A_THING = '(?:cushion|pillow|quilt|mat|runner|panel|block|wall|bag|top)';
const PAIR = `(${IN_A_ROW}) ?(?:x|by) ?(${IN_A_ROW})(?!\\d|[./]\\d|${UNIT}| ${A_THING}\\b)`;
const SET_WORD = '(?:rosettes|flowers|stars|stagger\\w*|garden|rows)';
const AFTER_SET = `(?<=\\b(?:garden|rosettes|flowers|stars)\\b(?: (?!${A_THING}\\b)[a-z]+){0,3} )`;
const LAID_IN = '(?<=\\b(?:rosettes|flowers|stars)\\b.* in (?:an? |rows )?)';

/** "6x5" beside rosettes or stars: so many rows of so many, and no size of a quilt. */
export const BY_ROWS = `\\b(\\d{1,3}) ?(?:x|by) ?(\\d{1,3})(?= (?!garden)${SET_WORD}\\b)|\\b(1\\d|20|\\d) ?(?:x|by) ?(1\\d|20|\\d)(?= garden\\b)|(?:${AFTER_SET}|${LAID_IN})${PAIR}`;

/** Rosettes or stars in so many rows of so many. */
export const IN_ROWS = `\\b\\d+ rows of \\d+\\b|${BY_ROWS}`;

/** So many stars as make no full ring, and do not stand in rows: each by itself. */
export const LOOSE_STARS = new RegExp(
  `${NO_FULL_RING} (?:six-point(?:ed)? )?stars\\b(?!.*\\b(?:between|set|rows?)\\b)`,
  'i',
);

/** How a size may be measured, in the words of the trade. */
export const FLAT_TO_FLAT = '(?:flat|side)[- ]to[- ](?:flat|side)|across (?:the )?flats';
export const POINT_TO_POINT =
  '(?:point|corner|tip)[- ]to[- ](?:point|corner|tip)|across (?:the )?(?:points|corners)';
