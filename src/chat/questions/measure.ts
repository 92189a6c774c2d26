import { FLAT_TO_FLAT, NUMBER, POINT_TO_POINT, UNIT } from '../question-patterns.ts';
import type { Turn } from './turn.ts';

const NOUN = '(?:hexagons?|hexies?|hexy|hex(?:es)?|diamonds?|patch(?:es)?|pieces?|papers?|ones?)';
/** Forms whose patches have a measure of their own for each way. */
const LAID_OUT = /^(?:count \w+|time)$/;
const OF_A_PATCH = /^(?:cut|yield|yardage|template)$/;

const after = (measure: string): RegExp =>
  new RegExp(
    `\\b(${NUMBER}${UNIT})[- ]*(?:${NOUN})[ ,]+(?:from |measured? |measuring )?(?:${measure})\\b`,
    'i',
  );

/** How a size is measured, said behind the patch: "2 inch hexagons across the flats"; and two measures of one. */
export const MEASURE_TURNS: readonly Turn[] = [
  { of: LAID_OUT, words: after(FLAT_TO_FLAT), says: ([, size]) => `flats:${size}` },
  { of: LAID_OUT, words: after(POINT_TO_POINT), says: ([, size]) => `corners:${size}` },
  // A strip that is wondered about is no size of the patch that it is for.
  {
    of: /^cut$/,
    words: new RegExp(
      `\\bstrips?(?: of)? ${NUMBER}${UNIT}?(?: (?:or|and) ${NUMBER}${UNIT}?)? (?=for an? |for \\d)`,
      'i',
    ),
  },
  {
    of: OF_A_PATCH,
    words: new RegExp(`\\b(${NUMBER})${UNIT}? (?:and|by) (${NUMBER}${UNIT})(?: sides?\\b)?`, 'i'),
    where: /\brectang/i,
    says: ([, one, other]) => `size:${one}x${other}`,
  },
  {
    of: OF_A_PATCH,
    words: new RegExp(`\\b(${NUMBER}${UNIT}) and (${NUMBER}${UNIT})(?: sides?\\b)?`, 'i'),
    where: /\b(?:elongated|stretched|long)[- ]hex/i,
    says: ([, size, side]) => `size:${size} side:${side}`,
  },
  {
    of: OF_A_PATCH,
    words: new RegExp(
      `\\b(?:and |with )?(${NUMBER}${UNIT}?) for (?:the |my |all )?seams?(?: allowances?)?\\b`,
      'i',
    ),
    says: ([, seam]) => `seam:${seam}`,
  },
];
