import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { alike, evaluated, examplesIn, written } from './examples/examples.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));

/** Fewer than this were found: the search is broken, not the examples gone. */
const LEAST = { files: 45, examples: 150 };

const sources = ['src', 'commands']
  .flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' }).map((file) =>
      join(ROOT, folder, file),
    ),
  )
  .filter((file) => file.endsWith('.ts'))
  .sort();

const files = sources
  .map((file) => ({ file, name: relative(ROOT, file), source: readFileSync(file, 'utf8') }))
  .map((one) => ({ ...one, examples: examplesIn(one.source) }))
  .filter(({ source }) => source.includes('@example'));

describe('each example in a docstring is true', () => {
  it.each(files)('$name', async ({ file, examples }) => {
    expect(examples, 'an @example that could not be found in its docstring').not.toHaveLength(0);
    const exports = (await import(pathToFileURL(file).href)) as Record<string, unknown>;
    for (const { line, expression, result } of examples) {
      const at = `line ${line}: ${expression}`;
      expect(result, `${at} says no result`).not.toBeNull();
      const value = await evaluated(expression, exports);
      const wanted = written(result ?? '');
      expect(alike(value, wanted), `${at} is ${JSON.stringify(value)}, not ${result}`).toBe(true);
    }
  });

  it('and there are many', () => {
    expect(files.length).toBeGreaterThanOrEqual(LEAST.files);
    expect(files.flatMap(({ examples }) => examples).length).toBeGreaterThanOrEqual(LEAST.examples);
  });
});

describe('the check of examples can fail', () => {
  const source = [
    'const x = 1;',
    '/**',
    ' * Twice.',
    ' *',
    ' * @example',
    ' * twice(2) // 4',
    ' * twice(\'a // b\') // "a // b"',
    ' * twice(3)',
    ' *',
    ' * @see nothing // 5',
    ' */',
    '// twice(9) // 1',
    '/** @example twice(1) // 2 */',
  ].join('\n');

  it('finds the lines of an example, their results and those without one', () => {
    expect(examplesIn(source)).toEqual([
      { line: 6, expression: 'twice(2)', result: '4' },
      { line: 7, expression: "twice('a // b')", result: '"a // b"' },
      { line: 8, expression: 'twice(3)', result: null },
      { line: 13, expression: 'twice(1)', result: '2' },
    ]);
  });

  it('evaluates with the exports in scope, and throws where it cannot', () => {
    const exports = { twice: (x: number) => 2 * x, default: 0 };
    expect(evaluated('twice(2) + 1', exports)).toBe(5);
    expect(() => evaluated('thrice(2)', exports)).toThrow('thrice');
    expect(() => evaluated('twice(', exports)).toThrow(SyntaxError);
    expect(() => written('four')).toThrow(SyntaxError);
  });

  it.each([
    [3.098_08, 3.0981, true],
    [3.098, 3.0981, false],
    [[1, { a: 0.333_33 }], [1, { a: 1 / 3 }], true],
    [[1, { a: 0.34 }], [1, { a: 1 / 3 }], false],
    [[1, 2], [1], false],
    [{ a: 1 }, { a: 1, b: 2 }, false],
    [{ a: 1, b: undefined }, { a: 1 }, true],
    [[], {}, false],
    ['1', 1, false],
    [null, undefined, false],
    [Number.NaN, 0, false],
    [undefined, undefined, true],
    [null, null, true],
  ])('%j against %j', (value, wanted, same) => {
    expect(alike(value, wanted)).toBe(same);
  });
});
