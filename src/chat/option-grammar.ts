import type { Options } from './option.ts';

/** A name and its sign: `size:`, `seam =`. */
export const NAMED = /^([a-z][a-z-]*)\s*[:=]\s*/i;

/** A value that begins with a figure, and the next two words: a unit and a name, or a name. */
export const VALUE_THEN_WORDS =
  /^[\d.][\d.,/\sx+-]{0,40}["'%]?[\s-]{0,3}([a-z][a-z-]*)(?:[\s-]+([a-z][a-z-]*))?/i;

/** The name that stands after a value, no sign following. */
export const NAME_AFTER = /^[\s-]*([a-z][a-z-]*)(?!\s*[:=]|[a-z])/i;

/** A name whose value follows, with or without a joining word: `seam 3/8`, `seam allowance of 3/8`. */
export const NAME_THEN_VALUE = /^([a-z][a-z-]*)(?:\s+(?:allowance|of|is|are|at))*\s+(?=\S)/i;

/** What may stand between a name and its value. */
export const JOINING = /^(?:\s*(?:allowance|of|is|are|at)\b)*\s*/i;

/** Words that carry nothing. */
export const FILLER = /^(?:[,;.:!?&+]|(?:with|and|in|at|of|for|from|a|an|the|seams?|allowance)\b)\s*/i;

export const BELOW_ZERO = /^-\s*[\d.]/;

/** Every name that an option may be typed by, and the option it means. */
export type Keys = ReadonlyMap<string, string>;

const KNOWN = new WeakMap<Options, Keys>();

/** The names of a form's options, worked out once. */
export function keysOf(options: Options): Keys {
  const known = KNOWN.get(options);
  if (known) return known;
  const keys = new Map(
    Object.entries(options).flatMap(([key, { names = [] }]) =>
      [key, ...names].map((name) => [name, key] as const),
    ),
  );
  KNOWN.set(options, keys);
  return keys;
}

/** The option that a name means: in any case, and in the singular or the plural. */
export function keyIn(keys: Keys, name: string): string | undefined {
  const lower = name.toLowerCase();
  return keys.get(lower) ?? keys.get(lower.replace(/s$/, '')) ?? keys.get(`${lower}s`);
}
