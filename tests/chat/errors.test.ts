import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { commands } from '../../commands/index.ts';
import { answeredBefore, fault, mistake, trouble, WORDED } from '../../src/chat/errors.ts';
import { ask, roomOf } from './fakes.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** The store, the settings and the flags have sentences of their own, for the person who runs the program. */
const OTHERS = ['src/store', 'src/config', 'src/verbs', 'src/run', 'src/platforms'];

const sources = (folder: string): [file: string, source: string][] =>
  readdirSync(`${ROOT}/${folder}`, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => `${folder}/${file}`)
    .filter((file) => !OTHERS.some((other) => file.startsWith(other)))
    .map((file) => [file, readFileSync(`${ROOT}/${file}`, 'utf8')]);

const RAISED = /\bwrong\(\s*'([^']+)'/g;
const RAISED_BY_CASE = /\bwrong\([^'()]*\? '([^']+)' : '([^']+)'/g;
const AS_DATA = /\bcode: '([^']+)'/g;

/** Every code that is raised, with the files that raise it. */
const raised = new Map<string, string[]>();
for (const [file, source] of [...sources('src'), ...sources('commands')])
  for (const pattern of [RAISED, RAISED_BY_CASE, AS_DATA])
    for (const found of source.matchAll(pattern))
      for (const code of found.slice(1)) raised.set(code, [...(raised.get(code) ?? []), file]);

/** What no member is told by this code: a reader's own, a fault, a reminder. */
const NOT_TOLD = new Set(['not-a-length', 'fault', 'rest-hands']);

/** What the calculator finds and a command tells in the member's words, by another code; and an ask that shows it. */
const TRANSLATED: Readonly<Record<string, readonly [code: string, ask: string]>> = {
  'no-such-measure': ['measure-not-of-shape', '/cut kite flats:2in'],
};

describe('every problem has a sentence', () => {
  const codes = [...raised.keys()].filter((code) => !NOT_TOLD.has(code) && !(code in TRANSLATED)).sort();

  it.each(codes)('%s', (code) => {
    expect([...WORDED], `raised in ${raised.get(code)?.join(', ')}`).toContain(code);
  });

  it.each(Object.entries(TRANSLATED))('%s is told otherwise', async (code, [as, words]) => {
    expect(raised.has(code)).toBe(true);
    expect((await told(words)).code).toBe(as);
    expect(WORDED.has(as)).toBe(true);
  });

  it('and there are many', () => {
    expect(codes.length).toBeGreaterThan(35);
    expect(codes).toEqual(
      expect.arrayContaining(['too-small', 'words-unread', 'organisers-only', 'too-many-patches']),
    );
  });
});

describe('what every sentence is', () => {
  const detail = {
    got: '2',
    known: ['hexagon'],
    option: 'size',
    example: '1in',
    count: '2',
    most: '9',
    least: '1',
  };

  it.each([...WORDED])('%s', (code) => {
    const { lines, error, audience } = mistake(
      { code, ...detail },
      { command: 'cut', instead: ['/cut 1in'] },
    );
    expect(lines[0]).toMatch(/^\S.*[.?:…]$/);
    expect(lines[0]).not.toMatch(/undefined|null|NaN|\[object| {2}|!|[Ii]nvalid|[Ss]orry|[Ee]rror/);
    expect(lines[1]).toBe('`/cut 1in`');
    expect(error).toEqual({ code, message: lines.join(' ') });
    expect(audience).toBe('asker');
  });

  it('a code without a sentence is still said', () => {
    expect(mistake({ code: 'new-kind' }, { command: '', instead: [] }).lines).toEqual([
      'That does not work (new-kind).',
    ]);
  });

  it('what she typed is read back cut short', () => {
    const { lines } = mistake(
      { code: 'words-unread', got: 'x'.repeat(500) },
      { command: 'cut', instead: [] },
    );
    expect(lines[0]?.length).toBeLessThan(120);
  });

  it('a fault, facts out of reach, an answer that is lost', () => {
    expect(fault('cut', 'abc-1').error?.message).toContain('abc-1');
    expect(trouble({ code: 'store-busy', path: '/x.db' }, 'me', 'abc-2').error?.message).toMatch(
      /moment.*abc-2/,
    );
    expect(trouble({ code: 'store-busy', path: '/x.db' }, 'me', 'abc-2').error?.message).not.toContain(
      '/x.db',
    );
    expect(answeredBefore('me')).toMatchObject({ command: 'me', error: null });
  });
});

/** What a member is told, and what she is shown to type instead. */
async function told(
  words: string,
): Promise<{ sentence: string; instead: string[]; code: string | undefined }> {
  const { room } = roomOf(commands);
  const { lines, error } = await room.answer(ask(words));
  return {
    sentence: lines[0] ?? '',
    instead: lines.slice(1).map((line) => line.replaceAll('`', '')),
    code: error?.code,
  };
}

describe('a slip is met with the word that was meant and the ask put right', () => {
  it.each([
    [
      '/yield hexagon 1 1/2in cloth:fat quater',
      'fat-quarter',
      '/yield shape:hexagon size:1 1/2in cloth:fat-quarter',
    ],
    [
      '/yield hexagon 1 1/2in fat quater',
      'fat-quarter',
      '/yield shape:hexagon size:1 1/2in cloth:fat-quarter',
    ],
    ['/yield hexgon 1 1/2in fat quater', 'hexagon', '/yield shape:hexagon size:1 1/2in cloth:fat-quarter'],
    ['/cut shape:hexgon size:1in', 'hexagon', '/cut shape:hexagon size:1in'],
    ['/cut dimond 2in seam 3/8', 'diamond', '/cut shape:diamond size:2in seam:3/8in'],
    ['/count field quen 1in', 'queen', '/count field quilt:queen size:1in'],
    ['/count rosette raunds:3', 'rounds', '/count rosette rounds:3'],
    ['/count rosette 3 raunds', 'rounds', '/count rosette rounds:3'],
    ['/count rosete rounds:3', 'rosette', '/count rosette rounds:3'],
    ['/coutn rosette rounds:3', '/count', '/count rosette rounds:3'],
    [
      'how many hexgons 1in from a fat quater',
      'fat-quarter',
      '/yield shape:hexagon size:1in cloth:fat-quarter',
    ],
    ['how many 2in dimonds from a fat quarter', 'diamond', '/yield shape:diamond size:2in cloth:fat-quarter'],
    ['what size do I cut 1in trangles', 'triangle', '/cut shape:triangle size:1in'],
  ])('%s', async (words, meant, instead) => {
    const answered = await told(words);
    expect(answered.sentence).toContain(`Did you mean ${meant}?`);
    expect(answered.instead).toEqual([instead]);
    const again = await told(instead);
    expect(again.code, `${instead} is answered`).toBeUndefined();
  });

  it('what was understood is said, and what was not', async () => {
    const { sentence } = await told('/yield hexagon 1 1/2in fat quater');
    expect(sentence).toBe('I read hexagon, 1 1/2in, but not ‘fat quater’. Did you mean fat-quarter?');
  });

  it('what is missing is added to what was said already', async () => {
    expect((await told('/yield hexagon 3/4in width:40in')).instead).toEqual([
      '/yield shape:hexagon size:3/4in cloth:fat-quarter width:40in',
    ]);
    expect((await told('/cut kite')).instead).toEqual(['/cut shape:kite size:1 1/2in']);
  });

  it('where nothing near is known, an example that works', async () => {
    for (const words of [
      '/cut wombats',
      '/cut hexagon -1in',
      '/wombats',
      '/count wombats',
      '/count',
      '/',
      'hm',
    ]) {
      const { sentence, instead, code } = await told(words);
      expect(code).toBeDefined();
      expect(sentence).not.toContain('Did you mean');
      expect(instead.length).toBeGreaterThan(0);
      for (const one of instead) expect((await told(one)).code, one).toBeUndefined();
    }
  });

  it('a form that needs nothing says so', async () => {
    expect(await told('/me reset please')).toEqual({
      sentence: 'I cannot read ‘please’. Nothing more is needed.',
      instead: ['/me reset'],
      code: 'words-unread',
    });
  });

  it('a member is not shown how to do what is not hers', async () => {
    expect(await told('/guild set seam:1/4in')).toMatchObject({ code: 'organisers-only', instead: [] });
  });
});
