/** One line of an `@example`: an expression over the exports of its file, and what it gives. */
export interface Example {
  readonly line: number;
  readonly expression: string;
  /** Null where the line says no result, which is a mistake. */
  readonly result: string | null;
}

const BLOCK = /\/\*\*[\s\S]*?\*\//g;
const BETWEEN = ' // ';

/** The examples in the docstrings of a source, in order. */
export function examplesIn(source: string): Example[] {
  return [...source.matchAll(BLOCK)].flatMap(({ 0: block, index }) => {
    const first = source.slice(0, index).split('\n').length;
    return inBlock(block).map((example) => ({ ...example, line: first + example.line }));
  });
}

function inBlock(block: string): Example[] {
  const found: Example[] = [];
  let inside = false;
  for (const [line, written] of block.split('\n').entries()) {
    const text = written.replace(/^\s*(?:\/\*\*|\*\/|\*)?\s?/, '').replace(/\s*\*\/$/, '');
    if (text.startsWith('@')) inside = text.startsWith('@example');
    const example = text.replace(/^@example\s*/, '').trim();
    if (inside && example !== '') found.push({ line, ...parted(example) });
  }
  return found;
}

/** The last ` // ` that a result follows parts the two: an expression may hold one in a string. */
function parted(example: string): { expression: string; result: string | null } {
  const marks = [...example.matchAll(/ \/\/ /g)].map(({ index }) => index).reverse();
  const at = marks.find((mark) => isResult(example.slice(mark + BETWEEN.length))) ?? marks[0];
  if (at === undefined) return { expression: example, result: null };
  return { expression: example.slice(0, at).trim(), result: example.slice(at + BETWEEN.length).trim() };
}

function isResult(text: string): boolean {
  try {
    written(text);
    return true;
  } catch {
    return false;
  }
}

/** What an expression gives with a module's exports in scope. */
export function evaluated(expression: string, exports: Readonly<Record<string, unknown>>): unknown {
  const names = Object.keys(exports).filter((name) => name !== 'default');
  return new Function(...names, `'use strict'; return (${expression});`)(
    ...names.map((name) => exports[name]),
  );
}

/** A result as written: JSON, or undefined. */
export const written = (result: string): unknown => (result === 'undefined' ? undefined : JSON.parse(result));

const PLACES = 4;

/** Whether two values are the same, numbers to four decimals, at any depth. */
export function alike(value: unknown, wanted: unknown): boolean {
  if (typeof value === 'number' && typeof wanted === 'number')
    return value === wanted || Math.abs(value - wanted) < 0.5 * 10 ** -PLACES;
  if (!isStructure(value) || !isStructure(wanted)) return Object.is(value, wanted);
  if (Array.isArray(value) !== Array.isArray(wanted)) return false;
  const [has, wants] = [keysOf(value), keysOf(wanted)];
  return has.length === wants.length && wants.every((key) => alike(value[key], wanted[key]));
}

const isStructure = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;

/** What JSON would leave out of an object is not there. */
const keysOf = (value: Record<string, unknown>): string[] =>
  Object.keys(value).filter((key) => value[key] !== undefined);
