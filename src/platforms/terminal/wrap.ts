import { stripVTControlCharacters } from 'node:util';

/** Where a blank holds a number together, or an arrow: `3 1/8 in`, `18 x 21 in`. Broken there it would be misread. */
const IN_NUMBER =
  / (?=→)|(?<=→) |(?<=\d) (?=\d+\/\d|x \d)|(?<=\d x) (?=\d)|(?<=\d) (?=(?:in|yd|mm|cm|m|min|sq)\b)|(?<=\d sq) (?=[ic])/g;
const HELD = '\u00a0';

/**
 * The words of a text between which it may be broken. A number keeps its fraction and its unit; an ask in `…`
 * is one word where it fits on a line.
 */
export const wordsOf = (text: string, width: number): string[] =>
  text
    .replace(/`[^`]+`/g, (ask) => (signs(ask) <= width ? ask.replaceAll(' ', HELD) : ask))
    .replace(IN_NUMBER, HELD)
    .split(' ');

/** Breaks a text at blanks so that no line is longer than `width`, words that are longer aside. */
export function wrap(text: string, width: number, indent = 0): string {
  const lines: string[] = [];
  let line = '';
  for (const word of wordsOf(text, width)) {
    if (line !== '' && signs(line) + 1 + signs(word) > width) {
      lines.push(line);
      line = ' '.repeat(indent) + word;
    } else line = line === '' && lines.length === 0 ? word : `${line} ${word}`;
  }
  return [...lines, line].join('\n').replaceAll(HELD, ' ');
}

/** How many signs a text shows. */
export const signs = (text: string): number => [...stripVTControlCharacters(text)].length;
