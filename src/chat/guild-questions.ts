import { ARRANGING } from './sayings/arranging.ts';
import { KEPT } from './sayings/kept.ts';
import { CORRECTING, LOGGING, TELLING } from './sayings/log.ts';
import { LOOKING } from './sayings/looking.ts';
import { BLOCKS, BLOCKS_DONE } from './sayings/month.ts';
import type { Saying } from './sayings/saying.ts';
import { SWAPPING } from './sayings/swap.ts';
import { TAKING_PART } from './sayings/taking-part.ts';

/** What members say of what the guild does together, from the top. */
const SAYINGS: readonly Saying[] = [
  ...CORRECTING,
  ...ARRANGING,
  ...TAKING_PART,
  ...LOOKING,
  ...BLOCKS,
  ...LOGGING,
  ...BLOCKS_DONE,
  ...SWAPPING,
  ...TELLING,
  ...KEPT,
];

/**
 * A question or a saying in plain words about what the guild sews together, or null where it is about something
 * else.
 *
 * @example
 * readGuildQuestion('how far are we?').command // "standings"
 * readGuildQuestion('I made two rosettes yesterday').words // "2 rosettes yesterday"
 * readGuildQuestion('how many rosettes from a fat quarter?') // null
 */
export function readGuildQuestion(text: string): { command: string; form: string; words: string } | null {
  for (const { ask, read } of SAYINGS) {
    const words = read(text);
    if (words === null) continue;
    const [command = '', form = ''] = ask.split(' ');
    return { command, form, words };
  }
  return null;
}
