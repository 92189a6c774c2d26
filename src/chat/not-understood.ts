import { type Options, wordsOf } from './option.ts';

/** So much of what was not understood is read back. */
const LONGEST = 40;

/** The words at the front of a text that cannot be read, up to where reading could go on. */
export function stretchOf(text: string, couldReadOn: (rest: string) => boolean): string {
  let end = 0;
  for (const { 0: word, index } of text.matchAll(/\S+/g)) {
    if (end > 0 && index + word.length > LONGEST) break;
    end = index + word.length;
    if (couldReadOn(text.slice(end).trim())) break;
  }
  return text.slice(0, end).replace(/(?<=[^,;.!?])[,;.!?]+$/, '');
}

type Values = Readonly<Record<string, unknown>>;

/** The words that could still have stood there: of the options not read yet, and their names. */
export function wantedWords(options: Options, values: Values): string[] {
  const open = Object.entries(options).filter(([key, { untold }]) => !untold && values[key] === undefined);
  return [
    ...open.flatMap(([, option]) => (option.bare ? wordsOf(option) : [])),
    ...open.map(([key, { signed }]) => (signed ? `${key}:` : key)),
  ];
}

/** What was read, as it could be typed again. */
export const understood = (options: Options, values: Values): string[] =>
  Object.entries(values).map(([key, value]) => options[key]?.write(value) ?? '');
