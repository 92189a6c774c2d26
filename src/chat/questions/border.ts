import { NOT_A_PART, NUMBER, SIZE, UNIT } from '../question-patterns.ts';
import type { Turn } from './turn.ts';

const WIDE = `${NOT_A_PART}\\b(${NUMBER}${UNIT}?)`;
const ITS_SIZE = '(?: borders?)?(?: of| is| at|:)?';
/** "Inner border 2 in", "2 in inner border": the number stands on either side, and belongs to one border. */
const bordering = (which: string): RegExp =>
  new RegExp(
    `\\b${which}${ITS_SIZE} (${NUMBER}${UNIT}?)|(?<!\\b(?:inner|outer)${ITS_SIZE} )${WIDE} (?:wide )?${which}\\b`,
    'i',
  );
const BEFORE_BORDER = new RegExp(`${NOT_A_PART}\\b(${NUMBER}${UNIT}) (?=(?:[a-z]+ )?borders?\\b)`, 'i');
/** Borders of two quilts are not one round the other. */
const TWO_QUILTS = new RegExp(`${SIZE}.*${SIZE}`, 'i');

/** One border, or one round the other. */
export const BORDER_TURNS: readonly Turn[] = [
  {
    of: /^finish border$/,
    words: new RegExp(
      `\\bstrips? (?:of |at )?(${NUMBER}${UNIT}?) cut\\b|\\bcut (?:at )?(${NUMBER}${UNIT}?)(?: wide)? strips?\\b|\\bstrips? cut (?:at )?(${NUMBER}${UNIT}?)(?! ?(?:x|by)\\b)`,
      'i',
    ),
    says: ([, ...sizes]) => `strip:${sizes.find((size) => size !== undefined)}`,
  },
  { of: /^finish border$/, words: bordering('inner'), says: ([, one, other]) => `border:${one ?? other}` },
  {
    of: /^finish border$/,
    words: bordering('outer'),
    where: /\binner\b/i,
    says: ([, one, other]) => `outer:${one ?? other}`,
  },
  // Two of one width; how many there are is no width.
  {
    of: /^finish border$/,
    words: new RegExp(
      `\\b2 borders (?:of |at )(${NUMBER}${UNIT})(?: each)?\\b(?! (?:and|then|plus)\\b)`,
      'i',
    ),
    says: ([, size]) => `border:${size}, outer:${size}`,
  },
  {
    of: /^finish border$/,
    words: new RegExp(
      `\\b(?:(?:2|two) )?borders?[,:]? (?:of |at )?(${NUMBER}${UNIT}?) (?:and|then|plus) (${NUMBER}${UNIT})(?! ?(?:x|by)\\b)`,
      'i',
    ),
    says: ([, one, other]) => `border:${one}, outer:${other}`,
  },
  {
    of: /^finish border$/,
    words: new RegExp(
      `${WIDE}(?= (?:and|then|plus)(?: an?)? ${NUMBER}${UNIT}? (?:[a-z]+ )?borders?\\b)`,
      'i',
    ),
    says: ([, size]) => `border:${size}`,
  },
  { of: /^finish border$/, words: /(?<![\d./])\b\d (?=borders\b)/i },
  { of: /^finish border$/, words: BEFORE_BORDER, says: ([, size]) => `border:${size}` },
  {
    of: /^finish border$/,
    words: BEFORE_BORDER,
    unless: TWO_QUILTS,
    says: ([, size]) => `outer:${size}`,
  },
];
