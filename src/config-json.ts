/** A word of JSON after any blanks; the first group is the word. */
const WORD =
  /[ \t\r\n]*([{}[\],:]|"(?:[^"\\\p{Cc}]|\\["\\/bfnrt]|\\u[0-9a-fA-F]{4})*"|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)/uy;

type Expects = 'value' | 'value or end' | 'name' | 'name or end' | 'colon' | 'comma or end' | 'nothing';

/**
 * The line, from 1, of the first word that cannot stand where it does in a text that is not JSON.
 * The engine's own message names a line only now and then, and quotes the text, which may hold a secret.
 *
 * @example
 * lineOfMistake('{\n  "a": 1,\n}') // 3
 * lineOfMistake('{ "a": 1') // 1
 */
export function lineOfMistake(text: string): number {
  const before = text.slice(0, placeOfMistake(text));
  return before.split('\n').length;
}

function placeOfMistake(text: string): number {
  const open: string[] = [];
  let expects: Expects | undefined = 'value';
  let at = 0;
  for (;;) {
    WORD.lastIndex = at;
    const word = WORD.exec(text)?.[1];
    const start = word === undefined ? at + blanksFrom(text, at) : WORD.lastIndex - word.length;
    expects = word === undefined ? undefined : next(expects, word, open);
    if (expects === undefined) return start;
    at = WORD.lastIndex;
  }
}

const blanksFrom = (text: string, at: number): number => text.slice(at).match(/^[ \t\r\n]*/)![0].length;

/** What may follow the word, or undefined when the word may not stand here. Keeps count of what is open. */
function next(expects: Expects, word: string, open: string[]): Expects | undefined {
  const mayEnd = expects.endsWith('or end');
  if (mayEnd && word === open.at(-1)) {
    open.pop();
    return afterValue(open);
  }
  if (expects.startsWith('value')) return nextOfValue(word, open);
  if (expects.startsWith('name')) return word.startsWith('"') ? 'colon' : undefined;
  if (expects === 'colon') return word === ':' ? 'value' : undefined;
  if (expects === 'comma or end' && word === ',') return open.at(-1) === '}' ? 'name' : 'value';
  return undefined;
}

function nextOfValue(word: string, open: string[]): Expects | undefined {
  if (word === '{' || word === '[') {
    open.push(word === '{' ? '}' : ']');
    return word === '{' ? 'name or end' : 'value or end';
  }
  return /^[\]},:]/.test(word) ? undefined : afterValue(open);
}

const afterValue = (open: readonly string[]): Expects => (open.length === 0 ? 'nothing' : 'comma or end');
