import type { Doubt } from './doubt.ts';
import { hadIn } from './question-cloth.ts';
import { NUMBER, UNIT } from './question-patterns.ts';
import { optionWords } from './question-words.ts';

const SHAPE =
  '((?:half|long|elongated)[- ])?(hex|diamond|triang|kite|square|octagon|pentag|tumbler|clam|apple)[a-z]*(?:[- ](?:shells?|cores?|hex[a-z]*))?';
const PATCHES_OF = `(?:\\d{1,6} )?\\b${NUMBER}${UNIT}[- ]${SHAPE}`;
const TWO = new RegExp(`(${PATCHES_OF}),? (?:and|or|vs\\.?|versus|than) (?:an? )?(${PATCHES_OF})`, 'i');

const OF_ONE_SHAPE = /^(?:cut|yield|yardage|template)$/;

/** Two shapes, each of its own size: an answer is of one of them, so each is worked out and which is asked. */
export function severalShapes(sign: string, question: string): Doubt | null {
  const found = OF_ONE_SHAPE.test(sign) && hadIn(question) === null ? TWO.exec(question) : null;
  if (!found) return null;
  const [all, one = '', half = '', shape = '', other = '', otherHalf = '', otherShape = ''] = found;
  // Squares that are named first are what is cut from.
  if (/^square/i.test(shape) && sign !== 'cut') return null;
  if (`${half}${shape}`.toLowerCase() === `${otherHalf}${otherShape}`.toLowerCase()) return null;
  return {
    ask: sign,
    title: `${one}, ${other}`,
    asks: 'One shape at a time: which shall it be?',
    ways: [one, other].map((label) => ({ label, words: optionWords(sign, question.replace(all, label)) })),
  };
}
