import type { Reading } from '../measure/speech.ts';
import type { AskedOptions, FilledIn } from './command.ts';
import type { Defaults } from './defaults.ts';
import { isMetric } from './metric-words.ts';

/** Inches without a figure, and what is sold by the yard. */
const BY_THE_YARD = /(?:\d|\b(?:an?|one|half|quarter))\s*-?(?:in\b|inch|"|ft\b|feet|foot|yd\b|yards?\b)/i;

/**
 * How the lengths of an answer read: as the asker or her guild has set it; where nobody has, in millimetres for
 * one who asks in metric measures alone.
 */
export function readingOf(
  asked: string | AskedOptions['options'] | FilledIn['filled'],
  { reading, unit }: Pick<Defaults, 'reading' | 'unit'>,
): Reading {
  if (reading.from !== 'usual' || unit.from !== 'usual') return reading.value;
  const words = typeof asked === 'string' ? asked : Object.values(asked).join(', ');
  return isMetric(words) && !BY_THE_YARD.test(words) ? 'metric' : reading.value;
}
