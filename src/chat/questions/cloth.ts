import { isMetric } from '../metric-words.ts';
import {
  BED,
  countIn,
  NUMBER,
  OTHER_SHAPES,
  PATCH_SIZED,
  SIZE,
  SIZE_ASKED,
  TO_COME_OUT,
  UNIT,
} from '../question-patterns.ts';
import type { Turn } from './turn.ts';

const BOUGHT = /^(?:yield|yardage|finish backing|finish binding|finish border|plan make|kit)$/;

/** How a print repeats: one measure, or two. */
const REPEAT = `${NUMBER}${UNIT}?(?: ?(?:x|by) ?${NUMBER}${UNIT}?)?`;

/** Cloth by the metre that is so wide is told in centimetres, whatever the patches are told in. */
const METRES = /\bmet(?:re|er)s?\b|\d ?m\b/i;
const WIDE_IN_CM = 70;

/** The width of cloth: a bare number among metric ones is in centimetres. */
const widthOf = (number = '', unit = '', question = ''): string => {
  const metric = isMetric(question) || (METRES.test(question) && Number(number) > WIDE_IN_CM);
  return `width:${number}${unit || (metric ? 'cm' : '')}`;
};

/** What makes of so many patches a layout of them, and no loose ones. */
const LAID_OUT = new RegExp(
  `\\b(?:rosettes?|flowers?|garden|stars?|blocks?|field|quilt)\\b|${BED}|${SIZE}`,
  'i',
);

/** A repeat by one measure is as long as it is wide. */
const motifOf = (size: string): string =>
  `motif:${/x|by/i.test(size) ? size : `${size.replace(/[a-z" ]+$/i, '')}x${size}`}`;

/** The cloth’s width, how it prints, what is cut to be safe, and how many patches: a number that is no size. */
export const CLOTH_TURNS: readonly Turn[] = [
  // The cloth's width, and what is cut to be safe.
  {
    of: BOUGHT,
    words:
      /\b(\d{2,3}(?:\.\d+)?(?= ?(?:in|inch|inches|cm|"|-| ))|\d(?:\.\d+)?(?= ?m\b))( ?(?:in|inch|inches|cm|m)\b| ?")?[- ]*(?:wide|width|wof)\b(?! (?:border|binding|strips?))/i,
    says: ([, n, unit], question) => widthOf(n, unit, question),
  },
  {
    of: BOUGHT,
    words:
      /\b(?:of|on|with|from|in) (\d{2,3})( ?(?:in|inch|inches|cm)\b| ?")?[- ]*(?:fabric|cloth|material|cotton|wide ?back)\b/i,
    says: ([, n, unit], question) => widthOf(n, unit, question),
  },
  {
    of: BOUGHT,
    words: /\b(\d{2,3})( ?(?:in|inch|inches|cm)\b| ?")[- ]*(?:fabric|cloth|material|cotton)\b/i,
    says: ([, n, unit], question) => widthOf(n, unit, question),
  },
  {
    of: BOUGHT,
    words: /\bof (?:(4\d|10\d)( ?(?:in|inch|inches)\b| ?")|(9\d|1[0-6]\d)( ?cm\b))(?! ?(?:x|by)\b)/i,
    where: /\d ?(?:m|met(?:re|er)s?|yds?|yards?) of (?:4|9|1)/i,
    says: ([, n, unit, metric, cm], question) => widthOf(n ?? metric, unit ?? cm, question),
  },
  {
    of: BOUGHT,
    words: /\bwof(?: fabric)?(?: of| is| at| =)? (\d{2,3})( ?(?:in|inch|inches|cm)\b| ?")?/i,
    says: ([, n, unit], question) => widthOf(n, unit, question),
  },
  {
    of: BOUGHT,
    words: /\b(?:at|on) (?:(4\d|10\d)( ?(?:in|inch|inches)\b| ?")|(9\d|1[0-6]\d)( ?cm\b))/i,
    says: ([, n, unit, metric, cm], question) => widthOf(n ?? metric, unit ?? cm, question),
  },
  {
    of: /^(?:yardage|plan make|kit)$/,
    words:
      /\b(?:and |plus |with )?(\d+(?:\.\d+)?) ?(?:%|percent) (?:extra|spare|more|over|to spare|for (?:mishaps|mistakes|luck))\b/i,
    says: ([, n]) => `spare:${n}%`,
  },
  {
    of: /^(?:yield|yardage)$/,
    words: new RegExp(
      `\\b(?:print |motifs? |pattern )?(?:repeats?|repeating|motifs?)(?: is| are| of| every| each| at)* (${REPEAT})|(?:\\ban? )?\\b(${REPEAT}) (?:pattern |print )?repeats?\\b`,
      'i',
    ),
    where: /\brepeat|\bmotif/i,
    says: ([, one, other]) => motifOf(one ?? other ?? ''),
  },
  {
    of: /^(?:yield|yardage)$/,
    words: /\b(?:easiest|quickest|fastest|simplest|fewest cuts)\b/i,
    says: () => 'method:fewest',
  },

  // How many are to come out, where the size is asked for; one, where that was not said.
  {
    of: /^yield$/,
    words: TO_COME_OUT,
    where: SIZE_ASKED,
    unless: PATCH_SIZED,
    says: ([, n, other]) => `pieces:${n ?? other}`,
  },
  {
    of: /^yield$/,
    words: /^/,
    where: SIZE_ASKED,
    unless: new RegExp(`${countIn.source}|${PATCH_SIZED.source}`, 'i'),
    says: () => 'pieces:1',
  },
  // How many there are is no size.
  {
    of: /^yardage$/,
    words: new RegExp(`\\b(1[3-9]|[2-9]\\d|\\d{3,}) (?=\\d\\/\\d+${UNIT})`, 'i'),
    says: ([, n]) => `pieces:${n}`,
  },
  { of: /^yardage$/, words: countIn, says: ([, n, other]) => `pieces:${n ?? other}` },
  {
    of: /^yield$/,
    words: countIn,
    unless: /\b(?:a4|letter|papers?|sheet|page)\b/i,
    says: ([, n, other]) => `pieces:${n ?? other}`,
  },
  {
    of: /^(?:plan make|kit)$/,
    words: countIn,
    unless: LAID_OUT,
    says: ([, n, other]) => `number:${n ?? other}`,
  },
  {
    of: /^time$/,
    words: countIn,
    unless: new RegExp(`${OTHER_SHAPES}|${LAID_OUT.source}`, 'i'),
    says: ([, n, other]) => `pieces:${n ?? other}`,
  },
  { of: /^(?:yield|time|plan make|kit)$/, words: countIn },
  { of: /^cut$/, words: countIn, where: new RegExp(`${NUMBER}${UNIT}`, 'i') },
  { of: /^yield$/, words: new RegExp(`\\b\\d+ (?=\\d+(?:[ -]\\d+\\/\\d+|\\.\\d+)?${UNIT})`, 'i') },
  // What she has is not what she needs.
  { of: /^yardage$/, words: new RegExp(`\\b${NUMBER} ?(?:yards?|yds?|met(?:re|er)s?)\\b`, 'i') },
];
