import { NUMBER, UNIT } from '../question-patterns.ts';
import type { Turn } from './turn.ts';

const NOUN = '(?:hexagons?|hexies?|hexy|hex(?:es)?|diamonds?|patch(?:es)?|pieces?|papers?|ones?)';
const FLATS = '(?:flat|side)[- ]to[- ](?:flat|side)|across (?:the )?flats';
const CORNERS = '(?:point|corner|tip)[- ]to[- ](?:point|corner|tip)|across (?:the )?(?:points|corners)';
/** Forms whose patches have a measure of their own for each way. */
const LAID_OUT = /^(?:count \w+|time)$/;

const after = (measure: string): RegExp =>
  new RegExp(`\\b(${NUMBER}${UNIT})[- ]*(?:${NOUN})[ ,]+(?:${measure})\\b`, 'i');

/** How a size is measured, said behind the patch: "2 inch hexagons across the flats". */
export const MEASURE_TURNS: readonly Turn[] = [
  { of: LAID_OUT, words: after(FLATS), says: ([, size]) => `flats:${size}` },
  { of: LAID_OUT, words: after(CORNERS), says: ([, size]) => `corners:${size}` },
];
