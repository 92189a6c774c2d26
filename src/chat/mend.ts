import type { Problem } from '../measure/result.ts';
import type { Form } from './command.ts';
import { nearest, nearestStart, slipOf } from './near.ts';
import { type Options, type ReadingContext, wordsOf } from './option.ts';
import { type Manner, readOptions } from './read-options.ts';
import { writeAsk } from './write-ask.ts';

/** An ask whose options could not be read, or not be answered. */
export interface Mistaken {
  readonly command: string;
  readonly form: Form;
  readonly options: string | Readonly<Record<string, string>>;
  readonly manner: Manner;
}

type Mend = (problem: Problem, text: string, options: Options) => string | null;

/** How the words are changed for each thing that may be wrong with them; null where nothing likely was meant. */
const MENDS: Readonly<Record<string, Mend>> = {
  'words-unread': ({ got, known }, text) => swapped(text, nearestStart(String(got), list(known))),
  'option-unread': ({ got, known }, text) => swapped(text, nearestStart(String(got), list(known))),
  'option-unknown': ({ got, known }, text) => swapped(text, pair(String(got), nearest(String(got), list(known)))),
  'option-missing': ({ option, example, left }, text, options) =>
    swapped(text, slipAmong(list(left), options, [String(option)])) ?? `${text} ${option}:${example}`,
  'size-missing': ({ example }, text) => `${text} ${example}`,
};

/** So many slips in one ask are still a slip; more are another ask. */
const MOST_SLIPS = 4;

/** The ask as it was most likely meant, written out in full; null where that cannot be told. */
export function mended(problem: Problem, { command, form, options, manner }: Mistaken, context: ReadingContext): string | null {
  let text: string | null = typeof options === 'string' ? options : named(options);
  let wrongNow = problem;
  for (let slips = 0; slips < MOST_SLIPS; slips++) {
    text = MENDS[wrongNow.code]?.(wrongNow, text, form.options) ?? null;
    if (text === null) return null;
    const read = readOptions(form.options, text, context, manner);
    if (read.ok) return writeAsk(command, form, read.value.values);
    wrongNow = read.problem;
  }
  return null;
}

const named = (options: Readonly<Record<string, string>>): string =>
  Object.entries(options).map(([name, words]) => `${name}:${words}`).join(' ');

/** A word as typed and the word meant. */
interface Slip {
  readonly got: string;
  readonly word: string;
}

/**
 * The first words of a plain question, passed over by every option, that are a slip of what one of `keys` may
 * be: without that the question would be answered as if they had not been said.
 */
export function slipAmong(left: readonly string[], options: Options, keys: readonly string[]): Slip | null {
  const known = keys.flatMap((key) => wordsOf(options[key]!));
  for (let size = 2; size >= 1; size--)
    for (let at = 0; at + size <= left.length; at++) {
      const got = left.slice(at, at + size).join(' ').replace(/[^\p{L}\d]+$/u, '');
      const slip = pair(got, slipOf(got, known) ?? slipOf(got.replace(/e?s$/, ''), known));
      if (slip) return slip;
    }
  return null;
}

const pair = (got: string, word: string | null): Slip | null => (word === null ? null : { got, word });

function swapped(text: string, slip: Slip | null): string | null {
  if (!slip) return null;
  const at = new RegExp(`(?<![\\p{L}\\d-])${slip.got.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?![\\p{L}\\d])`, 'iu');
  return at.test(text) ? text.replace(at, () => slip.word) : null;
}

const list = (value: Problem[string]): readonly string[] => (Array.isArray(value) ? value : []);
