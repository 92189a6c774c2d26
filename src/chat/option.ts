import type { Unit } from '../measure/length.ts';
import type { Taken } from '../measure/number.ts';
import type { Result } from '../measure/result.ts';
import type { Facts } from './facts.ts';

/** What a reader needs to know of the asker: the unit of a bare number, and which day it is for her. */
export interface ReadingContext {
  readonly unit: Unit;
  /** The asker's date, YYYY-MM-DD. */
  readonly today: string;
  /** The text is this option's alone: nothing in it names another. */
  readonly alone?: boolean;
}

/** How a platform that has typed options should offer this one. */
export type OptionShape =
  | { readonly as: 'words'; readonly longest?: number }
  | { readonly as: 'whole'; readonly least: number; readonly most: number }
  | { readonly as: 'number'; readonly least: number; readonly most: number }
  | { readonly as: 'choice'; readonly choices: readonly Choice[] };

/** Who is typing, where, and what is kept there. */
export interface SuggestWhere {
  readonly guild: string;
  readonly place: string;
  readonly member: string;
  readonly facts: Facts;
}

export interface Choice {
  readonly name: string;
  /** What a member reads. */
  readonly title: string;
  /** Other ways to say it, lower case; plurals and hyphens are understood without being listed. */
  readonly words?: readonly string[];
}

/**
 * One option of a command: how it is read from words, written back, offered and explained. `take` reads the
 * value off the front of a tidied text; null where the text is not one, a problem where it is one that
 * cannot be (too small, out of range).
 */
export interface Option<T, Sure extends boolean = boolean> {
  readonly kind: string;
  readonly summary: string;
  readonly shape: OptionShape;
  /** What to type, for help and mistakes. */
  readonly example: string;
  /** Bounds as a member reads them. */
  readonly bounds?: string;
  /** Words that it may be, where it may be more than those: offered on completion and for a mistyped one. */
  readonly known?: readonly string[];
  /** Other names that it may be typed by, such as `rounds` for `round`. */
  readonly names?: readonly string[];
  /** May stand without its name where there is no doubt. */
  readonly bare?: boolean;
  /** Where it may stand without its name only in some of its words: those. */
  readonly bareWhen?: RegExp;
  /** In a plain question only by its name: a number there may count anything. */
  readonly namedInQuestions?: boolean;
  readonly required?: boolean;
  /** Must be given, unless the option of this name is. */
  readonly neededUnless?: string;
  /** Only by its name and a sign, its name being an everyday word of the ask: `diamonds:8` beside "8 diamonds". */
  readonly signed?: boolean;
  /** Takes everything up to the next `name:`, blanks included. */
  readonly greedy?: boolean;
  /** Not told among what is listened for: the form is whole without it. */
  readonly untold?: boolean;
  /** The default, as it would be typed, or words that say where it comes from. */
  readonly otherwise?: string;
  readonly fallback?: T;
  /** Values that are kept and may be meant (names of plans, of challenges), for completion while typing. */
  readonly suggest?: (where: SuggestWhere) => Promise<readonly string[]>;
  take(text: string, context: ReadingContext): Result<Taken<T>> | null;
  write(value: T): string;
  /** Never set: carries whether a value is always there. */
  readonly sure?: Sure;
}

// The values of a table of options differ in type; only their declarations know which.
// biome-ignore lint/suspicious/noExplicitAny: an option of some type, read back through Values
export type AnyOption = Option<any, any>;
export type Options = Readonly<Record<string, AnyOption>>;

/** The values that a command's run gets: those that are required or have a fallback are always there. */
export type Values<O extends Options> = {
  readonly [K in keyof O as O[K] extends Option<infer _, true> ? K : never]: O[K] extends Option<
    infer T,
    boolean
  >
    ? T
    : never;
} & {
  readonly [K in keyof O as O[K] extends Option<infer _, true> ? never : K]?: O[K] extends Option<
    infer T,
    boolean
  >
    ? T
    : never;
};

/** Every word that an option may be, as far as they can be told: a choice by its name and in other words. */
export function wordsOf({ shape, known = [] }: AnyOption): readonly string[] {
  return shape.as === 'choice' ? shape.choices.flatMap((one) => [one.name, ...(one.words ?? [])]) : known;
}

/** Marks an option that may stand without its name. */
export const bare = <T, S extends boolean>(option: Option<T, S>): Option<T, S> => ({ ...option, bare: true });

/** Marks an option that may stand without its name in a command, and not in a plain question. */
export const bareInCommands = <T, S extends boolean>(option: Option<T, S>): Option<T, S> => ({
  ...option,
  bare: true,
  namedInQuestions: true,
});

/** Marks an option that is meant only where its name and a sign stand before its value. */
export const signed = <T, S extends boolean>(option: Option<T, S>): Option<T, S> => ({
  ...option,
  signed: true,
});

/** Marks an option that must be given. */
export const required = <T>(option: Option<T, boolean>): Option<T, true> =>
  ({ ...option, required: true }) as Option<T, true>;

/** Marks an option that must be given where another is not. */
export const neededUnless = <T, S extends boolean>(option: Option<T, S>, other: string): Option<T, S> => ({
  ...option,
  neededUnless: other,
});

/** Gives an option the value that it has when it is not given. */
export const otherwise = <T>(option: Option<T, boolean>, fallback: T): Option<T, true> =>
  ({ ...option, fallback, otherwise: option.write(fallback) }) as Option<T, true>;

/** Gives an option other names that it may be typed by. */
export const alsoNamed = <T, S extends boolean>(option: Option<T, S>, ...names: string[]): Option<T, S> => ({
  ...option,
  names,
});

/** Gives an option what may be meant from what is kept: see `suggest`. */
export const suggesting = <T, S extends boolean>(
  option: Option<T, S>,
  suggest: NonNullable<Option<T, S>['suggest']>,
): Option<T, S> => ({ ...option, suggest });

/** Says where the default of an option comes from when it is not a fixed value. */
export const usually = <T, S extends boolean>(option: Option<T, S>, words: string): Option<T, S> => ({
  ...option,
  otherwise: words,
});
