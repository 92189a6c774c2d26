import { type TakenLength, takeLength, type Unit } from '../measure/length.ts';
import { type Taken, takeNumber } from '../measure/number.ts';
import { MONTH_NAME } from './option-days.ts';
import { BED, NUMBER, UNIT } from './question-patterns.ts';

const PEOPLE = 'of us|people|persons|members|ladies|women|girls|quilters|friends|students';
const TIMES =
  '(?:more )?(?:mins?|minutes?|hours?|days?|nights?|evenings?|weeks?|months?|years?)\\b(?: left| to go| old)?';
const WEIGHTS = 'lbs?|pounds?|oz|ounces?|kgs?|kilos?|grams?|dollars?|euros?';
const RATES =
  '(?:(?:[a-z]+ )?(?:hex\\w*|patches|pieces|papers|diamonds|triangles|rosettes|flowers|stars) )?(?:1 hour|(?:an?|per|each|every) (?:day|night|evening|week|month|year|min(?:ute)?|hour|y(?:ar)?d|met(?:re|er)|inch)s?)';
const OTHER = 'times?|rows?(?! of \\d)|rounds?';

/**
 * In a question, so many people, so much time, weight or money, so many in a day, a date: no size, whatever it
 * is that has room for a number.
 */
export const BESIDE = new RegExp(
  `^\\d[\\d.,/]*\\s+(?:${[PEOPLE, TIMES, WEIGHTS, RATES, OTHER].join('|')})\\b|^\\d{1,2}(?:st|nd|rd|th)? (?:of )?${MONTH_NAME}\\b(?:,? \\d{4}\\b)?`,
  'i',
);

/** Larger than this nobody says a patch without its unit. Inches. */
const LARGEST = 12;

/** "40 in all", "12 in each": no inches. */
const NO_INCHES =
  /^\d+ in(?= (?:all(?! (?:round|around|over))|total|(?:each|every) (?!side|edge)[a-z]|(?:an?|the|one|my) (?:row|day|week|month|year)|the (?:middle|centre|center)))/i;

/** What counts, or says how old or how dear, where it stands before a number. */
const COUNTING =
  /(?:\b(?:we are|we're|i'm|i am|aged?|no\.?|row|ring|step|page|basted|sewn|made)|[$£€#])[ :]?$/i;

const PATCH =
  '(?:hex\\w*|dia?m\\w*|triang\\w*|kites?|squares?|rectang\\w*|oct\\w*gons?|pent\\w*|tumblers?|clam\\w*|apple[- ]?cores?|thirds?|(?:half|long|elongated|equilateral|stretched)[- ]\\w+|patch(?:es)?|pieces?|papers?|templates?|ones?)';
const MEASURE =
  '(?:sides?|sided|edges?|flats?|points?|pointed|corners?|across|tall|high|wide|finish\\w*|sewn|cut|sized?)';
const JOINING =
  '(?:for|from|to|in|on|with|and|or|at|of|out|per|using|by|as|than|vs|then|plus|but|so|that|if|please|how|what|which|when|is|are|will|would|does?|can|could|should|i|we|my|the|an?|not|no|whip|running|straight|whole|blunt|letter|a4)';
/** "40 3/4 hexies": so many of a size. */
const SO_MANY_OF = new RegExp(`^(?:1[3-9]|[2-9]\\d|\\d{3,})(?= \\d+\\/\\d+(?:${UNIT}| ${PATCH}))`, 'i');
/** A fraction before a patch is its size, whatever else is said. */
const OF_PATCH = new RegExp(`^[ -]*${PATCH}`, 'i');
/** A seam that has its own number behind it. */
const SEAM = 'seams?(?: allowance)?(?: of| is| at)? [\\d.]';
/** What may follow the size of a patch; anything else is what the number counts. */
const MAY_FOLLOW = new RegExp(
  `^\\s*(?:$|[^\\w\\s]|(?:${JOINING}|${MEASURE}|${PATCH})\\b|(?!(?:fat|table|half|row|round|ring|quilt|bed)s?\\b)[a-z-]+ ${PATCH}\\b|${SEAM}|[a-z-]+ ?[:=]|${BED.slice(2)}(?! \\w+s\\b))`,
  'i',
);

/** A length of something else than patches: behind its name, before its name, or one of two sides. */
const NOT_OF = '(?:seams?|allowance|borders?|binding|strips?|backing|drop|tuck|repeats?|narrow|height|side)';
const SIZE_WITH_UNIT = new RegExp(
  `(?<![\\d./:-])(?<!\\d[ -])(?<!\\b(?:x|by) ?)(?<!\\b${NOT_OF}(?: allowance)?(?: of| is| at| are|:)? ?)(${NUMBER})[ -]?(?:in(?:ch(?:es)?)?\\b(?! \\d)|"|cm\\b|mm\\b)(?![ -]*(?:x|by|wide|${NOT_OF}|squares?|fabric|cloth|thread|over|repeats?|of|short|long|too|out|off|under)\\b)`,
  'i',
);

/** What is said of a length that is no patch's, behind it or before it. */
const ELSE_AFTER = /^[ -]*(?:wide )?(?:repeats?|borders?|binding|thread|drop|seams?|allowances?)\b/i;
/** What is made of patches that have a size of their own. */
const MADE_AFTER = /^[- ](?:blocks?|quilts?|tops?|circles?|rosettes?|flowers?)\b/i;
const ELSE_BEFORE =
  /\b(?:repeats?|borders?|binding|seams?|allowances?)(?: allowances?)?(?: of| is| at| are| every)? ?$/i;

/**
 * The number at the front of what is left of a plain question, where it is of something else than the size of a
 * patch; null where it may be that size.
 *
 * @example
 * numberOfElse('2 twin quilts 1in', '', 'in') // "2"
 * numberOfElse('65 and a quilt', "i'm ", 'in') // "65"
 * numberOfElse('1/4 inch seams', '', 'in') // "1/4 inch"
 * numberOfElse('1 1/2 hexagons', '', 'in') // null
 */
export function numberOfElse(rest: string, before: string, unit: Unit): string | null {
  const many = SO_MANY_OF.exec(rest) ?? NO_INCHES.exec(rest);
  if (many) return many[0].replace(/ .*/, '');
  const taken = takeLength(rest, unit);
  if (!taken) return null;
  const number = rest.slice(0, rest.length - taken.rest.length);
  const none = taken.unit === null ? isNoSize(number, taken, before) : isLengthOfElse(taken, before);
  return none ? number : null;
}

function isLengthOfElse({ unit, rest }: TakenLength, before: string): boolean {
  if (unit === 'yd' || unit === 'm' || ELSE_AFTER.test(rest) || ELSE_BEFORE.test(before)) return true;
  return (unit === 'ft' || MADE_AFTER.test(rest)) && SIZE_WITH_UNIT.test(rest);
}

function isNoSize(number: string, { value, rest }: Taken<number>, before: string): boolean {
  if (value > LARGEST || COUNTING.test(before)) return true;
  const whole = /^[\d,]+$/.test(number);
  if (whole && !MAY_FOLLOW.test(rest)) return true;
  return SIZE_WITH_UNIT.test(rest) && (whole || !OF_PATCH.test(rest));
}

/** The kinds of option that count in whole numbers. */
const WHOLE: ReadonlySet<string> = new Set(['whole number', 'count']);
const A_UNIT = /^[ -]?(?:inch|"|cm|mm|yards?\b|yds?\b)/i;
/** What nobody pieces by the patch. */
const THINGS =
  /^ (?:table )?(?:runners?|place\s?mats?|mats|coasters?|cushions?|pillows?|quilts?|tops|bags|kids|children)\b/i;
const NUMBER_THEN_WORD = /\b\d[\d,]* ([a-z][a-z-]*)/gi;

/**
 * Whether the number at the front is none that an option of this kind counts: one of patches where it counts what
 * is made of them, or one of something else where a later number has the option's name behind it.
 */
export function countsElse(kind: string, rest: string, isName: (word: string) => boolean): boolean {
  const then = WHOLE.has(kind) ? takeNumber(rest)?.rest : undefined;
  if (then === undefined) return false;
  return (
    THINGS.test(then) ||
    A_UNIT.test(then) ||
    [...then.matchAll(NUMBER_THEN_WORD)].some(([, word = '']) => isName(word)) ||
    (kind === 'count' && OF_PATCH.test(then))
  );
}

const SIZED_PATCH = new RegExp(`^\\d+${UNIT}[- ]${PATCH}`, 'i');

/** Whether a number with a fraction, or the size of a patch, stands where an option of this kind counts. */
export const isNoCount = (kind: string, value: string): boolean =>
  WHOLE.has(kind) && (SIZED_PATCH.test(value) || !Number.isInteger(takeNumber(value)?.value ?? 0));
