import type { Problem, Result } from '../measure/result.ts';
import { type Form, keepsForAll } from './command.ts';
import { nearestStart, slipOf } from './near.ts';
import { understood } from './not-understood.ts';
import { inFigures } from './number-words.ts';
import { type Options, type ReadingContext, wordsOf } from './option.ts';
import { type Manner, type ReadOptions, readOptions } from './read-options.ts';
import { writeAsk } from './write-ask.ts';

/** An ask whose options could not be read, or not be answered. */
export interface Mistaken {
  readonly command: string;
  readonly form: Form;
  readonly options: string | Readonly<Record<string, string>>;
  readonly manner: Manner;
}

type Mend = (problem: Problem, text: string, options: Options) => string | null;

/** The word that was most likely meant; else numbers said in words, in figures. */
const near: Mend = ({ got, known }, text) =>
  swapped(text, nearestStart(String(got), list(known))) ?? inOtherWords(text, inFigures(text));

const inOtherWords = (text: string, other: string): string | null => (other === text ? null : other);

/** One word, or a number with its fraction. */
const VALUE = '(?:-?\\d+\\s+\\d+/\\d+\\S*|\\S+)';

/** What was said for an option by its name is put right by its example; nothing is kept that way, and not where the size of a patch is missing too. */
const exampled: Mend = ({ option }, text, options) => {
  const name = String(option ?? '');
  const example = options[name]?.example;
  if (!example || (options.size && !options.size.otherwise && !SIZED.test(text))) return null;
  const said = new RegExp(`(?<![\\p{L}\\d-])(${name}\\s*[:=]\\s*)${VALUE}`, 'iu');
  return inOtherWords(
    text,
    text.replace(said, (_, named: string) => `${named}${example}`),
  );
};

/** Some size is said, with its name or bare. */
const SIZED = /(?:^|\s)(?:(?:size|edge|flats|height)\s*[:=]|\d)/i;

const nearOrExample: Mend = (...found) => near(...found) ?? exampled(...found);

/** How the words are changed for each thing that may be wrong with them; null where nothing likely was meant. */
const MENDS: Readonly<Record<string, Mend>> = {
  'words-unread': near,
  'option-unread': nearOrExample,
  'too-small': exampled,
  'too-large': exampled,
  'below-zero': exampled,
  'not-whole': exampled,
  'goods-unread': near,
  'option-unknown': near,
  'plan-unknown': near,
  'swap-unknown': near,
  'swap-nobody': near,
  'option-missing': ({ option, example }, text) => `${text} ${option}:${example}`,
  'arrangement-unknown': ({ got, rows }, text) =>
    text.replace(new RegExp(`(?<![\\d.])${got}(?![\\d.])`), String(rows)),
  'size-missing': ({ example }, text) => `${text} ${example}`,
};

/** An example's value in place of hers would be kept for all as if she had said it. */
function mendOf(code: string, form: Form): Mend | undefined {
  const mend = MENDS[code];
  if (!keepsForAll(form) || mend === undefined) return mend;
  return mend === nearOrExample ? near : mend === exampled ? undefined : mend;
}

/** So many slips in one ask are still a slip; more are another ask. */
const MOST_SLIPS = 4;

/** The ask as it was most likely meant, written out in full; null where that cannot be told. */
export function mended(
  problem: Problem,
  { command, form, options, manner }: Mistaken,
  context: ReadingContext,
): string | null {
  let text: string | null = typeof options === 'string' ? options : named(options);
  let wrongNow: Problem | null = problem;
  for (let slips = 0; slips < MOST_SLIPS; slips++) {
    text = mendOf(wrongNow.code, form)?.(wrongNow, text, form.options) ?? null;
    if (text === null) return null;
    const read = readOptions(form.options, text, context, manner);
    wrongNow = manner === 'question' ? (slipIn(form.options, read) ?? problemOf(read)) : problemOf(read);
    if (!wrongNow) return read.ok ? writeAsk(command, form, read.value.values) : null;
  }
  return null;
}

const problemOf = (read: Result<ReadOptions>): Problem | null => (read.ok ? null : read.problem);

/**
 * A word of a plain question, passed over by every option, that is a slip of what one of them may be: without
 * it the question would be answered as if that word had not been said. As the problem that it is.
 */
export function slipIn(options: Options, read: Result<ReadOptions>): Problem | null {
  if (!read.ok && read.problem.code !== 'option-missing') return null;
  const { left, has, said } = read.ok ? heard(options, read.value) : missed(read.problem);
  const open = Object.entries(options).filter(
    ([key, { bare, required, neededUnless, fallback }]) =>
      bare &&
      !has.includes(key) &&
      (required || fallback !== undefined || (neededUnless && !has.includes(neededUnless))),
  );
  const words = open.flatMap(([, option]) => wordsOf(option));
  const slip = slipAmong(left, words);
  return slip && { code: 'words-unread', got: slip.got, known: [slip.word], read: said };
}

const heard = (options: Options, { values, left }: ReadOptions) => ({
  left,
  has: Object.keys(values),
  said: understood(options, values),
});

const missed = ({ left, has, read }: Problem) => ({ left: list(left), has: list(has), said: list(read) });

const named = (options: Readonly<Record<string, string>>): string =>
  Object.entries(options)
    .map(([name, words]) => `${name}:${words}`)
    .join(' ');

/** A word as typed and the word meant. */
interface Slip {
  readonly got: string;
  readonly word: string;
}

function slipAmong(left: readonly string[], known: readonly string[]): Slip | null {
  for (let size = 2; size >= 1; size--)
    for (let at = 0; at + size <= left.length; at++) {
      const got = left
        .slice(at, at + size)
        .join(' ')
        .replace(/[^\p{L}\d]+$/u, '');
      const word = slipOf(got, known) ?? slipOf(got.replace(/e?s$/, ''), known);
      if (word !== null) return { got, word };
    }
  return null;
}

function swapped(text: string, slip: Slip | null): string | null {
  if (!slip) return null;
  const at = new RegExp(
    `(?<![\\p{L}\\d-])${slip.got.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?![\\p{L}\\d])`,
    'iu',
  );
  return at.test(text) ? text.replace(at, () => slip.word) : null;
}

const list = (value: Problem[string]): readonly string[] => (Array.isArray(value) ? value : []);
