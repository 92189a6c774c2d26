import type { Reading } from '../measure/speech.ts';
import type { AskedOptions, FilledIn } from './command.ts';
import type { Defaults } from './defaults.ts';

const METRIC = /\d\s*-?(?:mm|cm|m|(?:milli|centi)?met(?:re|er)s?)\b/i;
const INCH = /(?:\d|\b(?:an?|one|half|quarter))\s*-?(?:in\b|inch|"|ft\b|feet|foot|yd\b|yards?\b)/i;

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
  return METRIC.test(words) && !INCH.test(words) ? 'metric' : reading.value;
}
