import { FLAT_TO_FLAT, NUMBER, PATCH_SIZED, POINT_TO_POINT, UNIT } from '../question-patterns.ts';
import type { Turn } from './turn.ts';

const MEASURE = `(?:${FLAT_TO_FLAT}|${POINT_TO_POINT})\\b`;

/** A strip that is cut already. */
const STRIP = new RegExp(
  `(?:\\b(?:from|out of|in|with) )?\\b(${NUMBER}${UNIT}?)[- ](?:wide )?strips?\\b|\\bstrips? (?:is|are) (${NUMBER}${UNIT}?)(?: (?:high|wide|tall))?\\b`,
  'i',
);

/** "60 degree diamonds" is a shape, not sixty of something; read before all numbers. */
export const SHAPE_TURNS: readonly Turn[] = [
  {
    of: /^(?:cut|yield|yardage|time|template|plan make|kit|count \w+)$/,
    words: new RegExp(
      `\\bsize (${NUMBER}${UNIT}?)(?=[- ](?:hex|dia|tri|kite|patch|pentag|oct|clam|papers?))`,
      'i',
    ),
    says: ([, size]) => `size:${size}`,
  },
  // A quilt is filled with hexagons; what else it shall be filled with is said to be no hexagon.
  {
    of: /^count field$/,
    words: /\b(diamond|triangle|kite|square|octagon|pentagon|tumbler|clam[- ]?shell|apple[- ]?core)s\b/i,
    unless: /\bhex|\bbetween\b|\bhal(?:f|ves)\b/i,
    says: ([, shape = '']) =>
      `shape:${shape
        .toLowerCase()
        .replace(/^clam.*/, 'clamshell')
        .replace(/^apple.*/, 'apple-core')}`,
  },
  { of: /./, words: /\b60[- ]?(?:degrees?\b|deg\b|°)[- ]?(?=diamond|triangle)/i },
];

/** Which patch, by which measure, finished or cut. */
export const PATCH_TURNS: readonly Turn[] = [
  {
    of: /^cut$/,
    words:
      /(?<!\b(?:do|should|must|would|will|to|can|could) )\b(?:i|we|she)(?:'ve| have| had)? (?:already )?cut\b/i,
    where: /\b(?:finish|end up|come out|sewn)/i,
    says: () => 'given:cut',
  },
  // A strip is as high as the patch that it is cut in.
  { of: /^cut$/, words: /(?=\bstrips?\b)/i, where: STRIP, unless: PATCH_SIZED, says: () => 'given:cut' },
  {
    of: /^cut$/,
    words: STRIP,
    unless: PATCH_SIZED,
    says: ([, size, other], question) =>
      `size:${size ?? other} measure:${/\b(?:triang|half|tumbler|kite)/i.test(question) ? 'height' : 'flats'}`,
  },
  {
    of: /^cut$/,
    words: /\bcut\b(?! size)/i,
    where: /\bwhat\b.*\b(?:finish|end up)/i,
    unless: /\b(?:do|should|must|to|can) (?:i |we |you |one )?cut\b|\bhow (?:big|large|wide)\b/i,
    says: () => 'given:cut',
  },
  {
    of: /^cut$/,
    words: /\b(?:with|including|incl\.?) (?:the |its )?seams?(?: allowances?)?\b(?! (?:of|at)? ?\d)/i,
    unless: /\bcut\b/i,
    says: () => 'given:cut',
  },
  { of: /^cut$/, words: /\bcut (?:them|it|those|these)\b|\bcut at\b(?=[ ?.!]*$)/i },
  { of: /^cut$/, words: /\b[3-8][- ]sided\b/i },
  {
    of: /^(?:cut|yield|yardage|template)$/,
    words: /\b(pointed|mit(?:re|er)ed|blunt|rounded) corners?\b/i,
    says: ([, how = '']) => `corners:${/^blunt/i.test(how) ? 'blunt' : 'pointed'}`,
  },
  {
    of: /^(?:cut|yield|yardage|template)$/,
    words: new RegExp(`\\b(${NUMBER}${UNIT}?) ?(?:x|by) ?(${NUMBER}${UNIT}?)`, 'i'),
    where: /\b(?:elongated|stretched|long)[- ]hex/i,
    says: ([, size = '', side = '']) =>
      `size:${/[a-z"]/i.test(size) ? size : `${size}${side.replace(/^[\d ./-]+/, '')}`} side:${side}`,
  },
  {
    of: /^cut$/,
    words: /\b(?:what|which) (?:strip )?(?:width|height|size)\b(?! square)|\bstrip (?:width|height)\b/i,
  },
  { of: /^cut$/, words: /\bwhat\w*(?:['’]s| is)? (?:the )?cut size\b|\bcut size\b(?! (?:is|of|was) ?\d)/i },
  {
    of: /^cut$/,
    words:
      /\b(?:what|which|how big a|how large a) (?:size )?square\b|\bsize of (?:the |a )?(?:cut |starting )?square\b|\b(?:cut|starting) square\b/i,
  },
  { of: /^(?:cut|yield|yardage|template)$/, words: /\bblunt\b(?! squares?)/i, says: () => 'corners:blunt' },
  {
    of: /^(?:cut|yield|yardage|template)$/,
    words: new RegExp(`\\b(${NUMBER}${UNIT}?) (?:tall|high)\\b`, 'i'),
    where: /\btumbler/i,
    says: ([, size]) => `height:${size}`,
  },
  {
    of: /^(?:cut|yield|yardage|template)$/,
    words: new RegExp(`\\b(narrow|height)(?: end)?(?: of| is)? (${NUMBER}${UNIT}?)`, 'i'),
    where: /\btumbler/i,
    says: ([, which = '', size]) => `${which.toLowerCase()}:${size}`,
  },
  {
    of: /^(?:cut|yield|yardage|template)$/,
    words: new RegExp(`\\b(?:narrow|height)(?: end)?(?: of| is)? (${NUMBER}${UNIT}?)`, 'i'),
    where: /\btumbler/i,
    says: ([, size]) => `height:${size}`,
  },
  // Which measure is asked for, not which was given: the answer has them all.
  {
    of: /^cut$/,
    words: new RegExp(
      `\\b(?:what\\w*(?:['’]s| is| are)?|how (?:big|wide|large|tall|far)(?: is it| are they)?)(?: the| its)?(?: cut| finished)? ${MEASURE}`,
      'i',
    ),
  },
  {
    of: /^cut$/,
    words: new RegExp(`(?<=[a-z] )(?<!\\d ?(?:in|inch|inches|cm|mm) )${MEASURE}(?=[ ?.]*$)`, 'i'),
    where: /\bhow (?:big|wide|large|tall|far) (?:is|are)\b/i,
  },
];
