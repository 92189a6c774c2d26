import type { Taken } from '../measure/number.ts';
import { ok, type Problem, type Result, wrong } from '../measure/result.ts';
import { BESIDE, countsElse, isNoCount, numberOfElse } from './bare-numbers.ts';
import { stretchOf, understood, wantedWords } from './not-understood.ts';
import { type AnyOption, type Options, type ReadingContext, wordsOf } from './option.ts';
import {
  BELOW_ZERO,
  FILLER,
  JOINING,
  keyIn,
  keysOf,
  NAME_AFTER,
  NAME_THEN_VALUE,
  NAMED,
  VALUE_THEN_WORDS,
} from './option-grammar.ts';

/** The values read, and which of them stood without their name. */
export interface ReadOptions {
  readonly values: Readonly<Record<string, unknown>>;
  readonly bare: ReadonlySet<string>;
  /** Words of a plain question that no option wanted. */
  readonly left: readonly string[];
}

export type Manner = 'command' | 'question';

/**
 * Reads a form's options from a tidied text: named (`size:1in`), by a name without a sign (`seam 3/8`),
 * the name after its value (`3 rounds`), or bare where there is no doubt. In a question, words that are no
 * option are passed over; in a command they are a mistake.
 */
export function readOptions(
  options: Options,
  text: string,
  context: ReadingContext,
  manner: Manner,
): Result<ReadOptions> {
  const reading = new OptionReading(options, context, manner);
  const problem = reading.readAll(text);
  if (problem) return { ok: false, problem };
  return reading.finish();
}

/** Reads options that a platform hands over by name, each in words. */
export function readNamedOptions(
  options: Options,
  given: Readonly<Record<string, string>>,
  context: ReadingContext,
): Result<ReadOptions> {
  const reading = new OptionReading(options, { ...context, alone: true }, 'command');
  for (const [name, words] of Object.entries(given)) {
    const key = reading.keyOf(name);
    if (!key) return reading.unknown(name);
    const problem = reading.set(key, words);
    if (problem) return { ok: false, problem };
  }
  return reading.finish();
}

/** What stands before its name even where a value follows: `2 rounds 3/4in`. */
const COUNTS: ReadonlySet<string> = new Set(['whole number', 'number', 'percent', 'count']);

/** The option that a number without a unit is taken for, where nothing says that it counts something else. */
const PATCH_SIZE = 'size';

/** One reading, from the front of the text to its end; what was read so far settles how the rest is taken. */
class OptionReading {
  readonly #options: Options;
  readonly #context: ReadingContext;
  readonly #manner: Manner;
  readonly #values: Record<string, unknown> = {};
  readonly #bare = new Set<string>();
  readonly #left: string[] = [];
  /** A stretch was not understood; what comes after it is read only to say that it was. */
  #lost = false;
  #text = '';
  readonly #keys: ReadonlyMap<string, string>;

  constructor(options: Options, context: ReadingContext, manner: Manner) {
    this.#options = options;
    this.#context = context;
    this.#manner = manner;
    this.#keys = keysOf(options);
  }

  keyOf(name: string): string | undefined {
    return keyIn(this.#keys, name);
  }

  readAll(text: string): Problem | null {
    let rest = text.trim();
    this.#text = rest;
    while (rest !== '') {
      const step = this.#step(rest);
      if (!step.ok) return step.problem;
      rest = step.value.trim();
    }
    return null;
  }

  /** Sets an option from words that are all its own. */
  set(key: string, words: string): Problem | null {
    const step = this.#take(key, words.trim());
    if (!step.ok) return step.problem;
    return step.value.trim() === '' ? null : this.#notThis(key, words).problem;
  }

  finish(): Result<ReadOptions> {
    for (const [key, option] of Object.entries(this.#options)) {
      if (this.#values[key] !== undefined) continue;
      const { example, summary, required, neededUnless } = option;
      if (required || (neededUnless && this.#values[neededUnless] === undefined))
        return wrong('option-missing', {
          option: key,
          example,
          summary,
          read: understood(this.#options, this.#values),
          has: Object.keys(this.#values),
          left: this.#left,
        });
    }
    return ok({ values: this.#values, bare: this.#bare, left: this.#left });
  }

  unknown(name: string) {
    return wrong('option-unknown', { got: name, known: Object.keys(this.#options) });
  }

  #step(rest: string): Result<string> {
    const named = NAMED.exec(rest);
    if (named && (this.#manner === 'command' || this.keyOf(named[1] ?? ''))) return this.#named(named, rest);
    return (
      this.#byNameAlone(rest) ??
      this.#nameAfter(rest) ??
      this.#beside(rest) ??
      this.#bareValue(rest) ??
      this.#numberOfElse(rest) ??
      this.#passOver(rest)
    );
  }

  #named(found: RegExpExecArray, rest: string): Result<string> {
    const key = this.keyOf(found[1] ?? '');
    if (!key) return this.unknown(found[1] ?? '');
    const after = rest.slice(found[0].length);
    const end = this.#nextName(after);
    const step = this.#take(key, after.slice(0, end).trim());
    return step.ok ? ok(`${step.value} ${after.slice(end)}`) : step;
  }

  /** Where the next `name:` of a known option begins. */
  #nextName(text: string): number {
    for (const found of text.matchAll(/(?:^|\s)([a-z][a-z-]*)\s*[:=]/gi))
      if (this.keyOf(found[1] ?? '')) return found.index;
    return text.length;
  }

  #take(key: string, segment: string): Result<string> {
    const option = this.#options[key] as AnyOption;
    if (this.#values[key] !== undefined) return wrong('option-twice', { option: key });
    const taken: Result<Taken<unknown>> | null = segment === '' ? null : option.take(segment, this.#context);
    if (!taken) return this.#notThis(key, segment);
    if (!taken.ok) return { ok: false, problem: { ...taken.problem, option: key } };
    this.#values[key] = taken.value.value;
    return ok(taken.value.rest);
  }

  #notThis(key: string, got: string) {
    const option = this.#options[key] as AnyOption;
    const { kind, example, bounds } = option;
    if (got === '') return wrong('option-empty', { option: key, example });
    if (BELOW_ZERO.test(got)) return wrong('below-zero', { option: key, got, example });
    return wrong('option-unread', {
      option: key,
      got: stretchOf(got, (rest) => this.#couldReadOn(rest)),
      kind,
      example,
      bounds,
      known: wordsOf(option),
    });
  }

  /** `seam 3/8`: a name that its value follows. */
  #byNameAlone(rest: string): Result<string> | null {
    const word = NAME_THEN_VALUE.exec(rest);
    const key = word && this.keyOf(word[1] ?? '');
    if (!word || !key || this.#values[key] !== undefined || this.#options[key]?.signed) return null;
    // In a question, words such as "need" are no name of what follows unless a sign says so.
    if (this.#manner === 'question' && this.#options[key]?.greedy) return null;
    const { kind } = this.#options[key] as AnyOption;
    const value = rest.slice(word[0].length);
    // "Papers 1 1/4": the word only happens to stand before a size.
    if (this.#manner === 'question' && isNoCount(kind, value)) return null;
    const taken = (this.#options[key] as AnyOption).take(value, this.#context);
    return taken && this.#keep(key, taken, false);
  }

  /** `3 rounds`, `1/4 in seam`: a value that its name follows. */
  #nameAfter(rest: string): Result<string> | null {
    const found = this.#valueThenName(rest);
    if (!found) return null;
    this.#values[found.key] = found.value;
    return ok(found.rest);
  }

  #valueThenName(rest: string): (Taken<unknown> & { readonly key: string }) | null {
    const words = VALUE_THEN_WORDS.exec(rest);
    if (!words?.slice(1).some((word) => word && this.keyOf(word))) return null;
    for (const [name, key] of this.#keys) {
      const option = this.#options[key] as AnyOption;
      if (this.#values[key] !== undefined || option.greedy || option.signed) continue;
      const taken = option.take(rest, this.#context);
      if (!taken?.ok) continue;
      const after = NAME_AFTER.exec(taken.value.rest);
      if (!after || (after[1]?.toLowerCase() !== name && this.keyOf(after[1] ?? '') !== key)) continue;
      const then = taken.value.rest.slice(after[0].length);
      if (this.#belongsToNext(option, taken.value.value, then, rest)) return null;
      return { key, value: taken.value.value, rest: then };
    }
    return null;
  }

  /**
   * `1 1/2in seam 3/8`: a value stands on either side of the name, and the first may be bare. The name goes
   * with the length that is nearer to what is usual for it, unless the second has a name of its own. A count
   * stands before its name: `2 rounds 3/4in`.
   */
  #belongsToNext(option: AnyOption, value: unknown, then: string, rest: string): boolean {
    if (COUNTS.has(option.kind) || !this.#bestBare(rest)?.taken.ok) return false;
    const next = option.take(then.replace(JOINING, ''), this.#context);
    if (!next?.ok || this.#valueThenName(then.trim())) return false;
    if (typeof next.value.value !== 'number') return true;
    const usual = option.take(option.example, this.#context);
    const off = (length: unknown) =>
      usual?.ok ? Math.abs(Math.log(Number(length) / Number(usual.value.value))) : 0;
    return off(next.value.value) <= off(value);
  }

  /** `12 of us`, `5 weeks`, `20 a day`: passed over whole, whatever it is that has room for a number. */
  #beside(rest: string): Result<string> | null {
    const found = this.#manner === 'question' ? BESIDE.exec(rest) : null;
    if (!found) return null;
    this.#left.push(found[0]);
    return ok(rest.slice(found[0].length));
  }

  /** A number that counts what no option is about. */
  #numberOfElse(rest: string): Result<string> | null {
    const number = this.#elseAt(rest);
    if (number === null) return null;
    this.#left.push(number);
    return ok(rest.slice(number.length));
  }

  #elseAt(rest: string): string | null {
    if (this.#manner === 'command' || !/^[\d.]/.test(rest)) return null;
    return numberOfElse(rest, this.#text.slice(0, this.#text.length - rest.length), this.#context.unit);
  }

  #countsElse(key: string, rest: string): boolean {
    if (this.#manner === 'command') return false;
    const { kind, namedInQuestions = false } = this.#options[key] as AnyOption;
    return namedInQuestions || countsElse(kind, rest, (word) => this.keyOf(word) === key);
  }

  /** The bare option that reads the most of what stands here. */
  #bareValue(rest: string): Result<string> | null {
    const best = this.#bestBare(rest);
    return best && this.#keep(best.key, best.taken, true);
  }

  #bestBare(rest: string) {
    let best: { key: string; taken: Result<Taken<unknown>>; length: number } | null = null;
    const noSize = this.#elseAt(rest) !== null;
    // A value ends where the next `name:` begins, whether it has a name itself or not.
    const end = this.#nextName(rest);
    const after = rest.slice(end);
    for (const [key, option] of Object.entries(this.#options)) {
      if (!option.bare || this.#values[key] !== undefined || (noSize && key === PATCH_SIZE)) continue;
      if (this.#countsElse(key, rest)) continue;
      if (option.bareWhen && !option.bareWhen.test(rest)) continue;
      const taken = option.take(rest.slice(0, end), this.#context);
      if (!taken) continue;
      const length = taken.ok ? end - taken.value.rest.length : 0;
      if (best && length <= best.length) continue;
      const left = taken.ok && after !== '' ? ok({ ...taken.value, rest: taken.value.rest + after }) : taken;
      best = { key, taken: left, length };
    }
    return best;
  }

  #keep(key: string, taken: Result<Taken<unknown>>, bare: boolean): Result<string> {
    if (!taken.ok) return { ok: false, problem: { ...taken.problem, option: key } };
    this.#values[key] = taken.value.value;
    if (bare) this.#bare.add(key);
    return ok(taken.value.rest);
  }

  #passOver(rest: string): Result<string> {
    const filler = FILLER.exec(rest);
    if (filler) return ok(rest.slice(filler[0].length));
    const word = rest.split(/\s/, 1)[0] ?? rest;
    if (this.#manner === 'question') {
      this.#left.push(word);
      return ok(rest.slice(word.length));
    }
    return this.#notUnderstood(rest, word);
  }

  #notUnderstood(rest: string, word: string): Result<never> {
    if (BELOW_ZERO.test(word)) return wrong('below-zero', { got: word });
    const got = stretchOf(rest, (then) => this.#couldReadOn(then));
    const known = wantedWords(this.#options, this.#values);
    if (!this.#lost) {
      this.#lost = true;
      this.readAll(rest.slice(got.length));
    }
    return wrong('words-unread', {
      got,
      known,
      read: understood(this.#options, this.#values),
      options: Object.keys(this.#options).filter((key) => !this.#options[key]?.untold),
    });
  }

  #couldReadOn(rest: string): boolean {
    if (rest === '' || FILLER.test(rest) || /^[\d.]/.test(rest)) return true;
    const name = /^[a-z][a-z-]*/i.exec(rest)?.[0];
    return (name !== undefined && this.keyOf(name) !== undefined) || this.#bestBare(rest) !== null;
  }
}
