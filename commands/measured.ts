import type { Option } from '../src/chat/option.ts';
import { FLAT_TO_FLAT, POINT_TO_POINT } from '../src/chat/question-patterns.ts';
import { ok } from '../src/measure/result.ts';

/** How a length is said to be measured, after it: `3in flat to flat`, `3 inches across the flats`. */
export const FLATS = new RegExp(`^[\\s-]*(?:${FLAT_TO_FLAT})\\b`, 'i');
export const CORNERS = new RegExp(`^[\\s-]*(?:${POINT_TO_POINT})\\b`, 'i');

/** A length that words may follow which say no more than is known: `1in hexagons` where all are hexagons. */
export const followed = <T>(option: Option<T, false>, words: RegExp): Option<T, false> => ({
  ...option,
  take(text, context) {
    const taken = option.take(text, context);
    return taken?.ok ? ok({ ...taken.value, rest: taken.value.rest.replace(words, '') }) : taken;
  },
});

/** A length that may stand without its name where the words after it say how it was measured. */
export function measured<T>(option: Option<T, false>, words: RegExp): Option<T, false> {
  const after = words.source.replace(/^\^/, '');
  return {
    ...followed(option, words),
    bare: true,
    bareWhen: new RegExp(`^[\\d.][\\d.,/\\s-]*(?:["']|[a-z]+)?${after}`, 'i'),
  };
}
