import { MONTH_NAME } from '../option-days.ts';
import { amount, NUMBER, UNIT } from '../question-patterns.ts';
import type { Turn } from './turn.ts';

const FROM_DAY = '\\b(?:start|starting|begin|beginning)(?: it)?(?: on| from| in)? (?:the )?';
const STARTING = new RegExp(
  `${FROM_DAY}(\\d{4}-\\d{1,2}-\\d{1,2}|\\d{1,2}(?:st|nd|rd|th)? (?:of )?${MONTH_NAME}\\b(?: \\d{4})?|${MONTH_NAME} \\d{1,2}(?:st|nd|rd|th)?\\b(?:,? \\d{4})?|today|tomorrow)`,
  'i',
);
const STARTING_IN = new RegExp(`${FROM_DAY}(${MONTH_NAME}\\b(?: \\d{4})?)`, 'i');

const OFTEN = '(?:an?|per|each|every)';
const A_DAY = `${OFTEN} (?:day|night|evening)`;
const A_WEEK = `${OFTEN} week`;
const HOURS = `\\b(${NUMBER}) (?:hours?|(min)(?:ute)?s?) (?:of sewing )?`;
const DAYS_A_WEEK = 7;
const MINUTES_AN_HOUR = 60;

/** Hours a week, of so much time on so many days of it. */
const hoursOf = (number: string, minutes: string | undefined, days: number): string => {
  const hours = (amount(number) * days) / (minutes ? MINUTES_AN_HOUR : 1);
  return `hours:${Math.round(hours * 100) / 100}`;
};

const SEWING = /\b(?:sew\w*|stitch\w*|piec(?:e|ing)|join\w*|finish\w*|incl\w*)\b/i;
/** The sewing is asked for with it, or it is done already, or left out. */
const sewnOrDone = (doing: string, done: string): RegExp =>
  new RegExp(
    `${SEWING.source}|\\b(?:already|pre|all|are|is|were|been|be|have|i've|ready)[- ]${done}\\b|\\b(?:not|without|excluding|except|besides|after) (?:\\w+ ){0,3}${doing}\\b|\\b${doing} (?:is |are )?(?:already |all )?done\\b`,
    'i',
  );

const BASTING =
  /\b(?:(?:cut(?:ting)?|trac(?:e|ing)) (?:and|&|n) )?(?:(?:thread|glue)[- ])?(?:bast(?:e|ing)|tack(?:ing)?)\b|\bprep(?:ar(?:e|ing|ation))?\b/i;
/** The cutting with it. */
const BOTH =
  /\b(?:cut(?:ting)?|trac(?:e|ing))(?: out)? (?:and|&|n) (?:thread[- ])?(?:bast(?:e|ing)|tack(?:ing)?)\b|\bprep(?:ar(?:e|ing|ation))?\b/i;
const BASTED = sewnOrDone('(?:basting|tacking|gluing|prep\\w*)', '(?:basted|tacked|glued)');

/** Hours, the pace and the day it is begun; the work before the sewing. */
export const TIME_TURNS: readonly Turn[] = [
  {
    of: /^(?:time|plan make)$/,
    words: new RegExp(`${HOURS}${A_DAY}\\b`, 'i'),
    says: ([, n = '', minutes]) => hoursOf(n, minutes, DAYS_A_WEEK),
  },
  {
    of: /^(?:time|plan make)$/,
    words: new RegExp(`${HOURS}${A_WEEK}\\b`, 'i'),
    says: ([, n = '', minutes]) => hoursOf(n, minutes, 1),
  },

  {
    of: /^time$/,
    words: new RegExp(
      `\\b(?:(?:my|own) pace (?:is|of) )?(${NUMBER}) ?min(?:ute)?s? ${OFTEN}\\b(?! (?:day|night|evening|week))(?: seam)?`,
      'i',
    ),
    says: ([, n = '']) => `pace:${amount(n)}`,
  },
  {
    of: /^time$/,
    words: new RegExp(
      `\\b(?:(\\d+)|an?|each|every) seams? (?:in|takes?(?: me)?)(?: about)? (${NUMBER}) ?min(?:ute)?s?\\b`,
      'i',
    ),
    says: ([, seams = '1', n = '']) => `pace:${Number((amount(n) / Number(seams)).toFixed(2))}`,
  },
  // Seams of a length: "42 1in seams", "42 seams of 1 in".
  {
    of: /^time$/,
    words: new RegExp(`(?<![\\d./])\\b(\\d[\\d,]*) (${NUMBER}${UNIT})[- ]seams?\\b`, 'i'),
    says: ([, n, size]) => `seams:${n} size:${size}`,
  },
  {
    of: /^time$/,
    words: new RegExp(
      `(?<![\\d./])\\b(\\d[\\d,]*) seams?,? (?:of |at )?(${NUMBER}${UNIT})(?![- ]\\w*(?:hex|dia|patch))`,
      'i',
    ),
    says: ([, n, size]) => `seams:${n} size:${size}`,
  },
  {
    of: /^time$/,
    words: /\b(\d+)(?: stitches)? (?:per|to the|to an|an|1) inch\b(?![- ](?:seams?|sides?|hex|dia|patch))/i,
    says: ([, n]) => `stitches:${n}`,
  },
  { of: /^time$/, words: STARTING, says: ([, start]) => `start:${start}` },
  { of: /^time$/, words: STARTING_IN, says: ([, month]) => `start:1 ${month}` },
  { of: /^time$/, words: new RegExp(`\\b${NUMBER}${UNIT} (?:of )?(?:sewing |cotton )?thread\\b`, 'i') },
  // What comes before the sewing, where the sewing is not asked for with it.
  { of: /^time$/, words: BOTH, unless: BASTED, says: () => 'work:before' },
  {
    of: /^time$/,
    words: BASTING,
    where: /\bglu(?:e|ing)\b/i,
    unless: BASTED,
    says: () => 'work:gluing',
  },
  { of: /^time$/, words: BASTING, unless: BASTED, says: () => 'work:basting' },
  {
    of: /^time$/,
    words: /\b(?:trac(?:e|ing) (?:and|&|n) )?cut(?:ting)?(?: out)?\b/i,
    unless: sewnOrDone('(?:cutting|tracing)', '(?:traced|cut)'),
    says: () => 'work:cutting',
  },
];
