import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { commands } from '../../commands/index.ts';
import type { Reply } from '../../src/chat/reply.ts';
import { ask, roomOf } from './fakes.ts';

/** Answers with every command there is; a fault of the program fails the test that it happens in. */
async function answered(words: Parameters<typeof ask>[0]): Promise<Reply> {
  const { room, faults } = roomOf(commands);
  const reply = await room.answer(ask(words));
  expect(faults, `${String(words)} is a fault`).toEqual([]);
  return reply;
}

/** A mistake is met with a sentence: no code, no stack, no leftovers of the language. */
function worded({ error, lines }: Reply): void {
  expect(error).not.toBeNull();
  expect(error?.code).not.toBe('fault');
  expect(lines[0]).toMatch(/^\S.*[.?:…]$/s);
  expect(lines[0]).not.toMatch(/undefined|\bnull\b|NaN is|\[object|That does not work|\n\s+at /);
  expect(lines[0]?.length).toBeLessThan(400);
}

const LENGTHS = [
  '-1in',
  '-1/2',
  '0',
  '0in',
  '0/8',
  '0/0',
  '1/0',
  '1e400',
  '1e308',
  '1e-400',
  '9'.repeat(400),
  '0.'.padEnd(400, '0'),
  'NaN',
  'Infinity',
  '-Infinity',
  '∞',
  '0x10',
  '1_000',
  '1.2.3',
  '1..2',
  '1//2',
  '1/2/3',
  '½½',
  '--1',
  '+-1',
  '٣in',
  '481in',
  '1/9in',
  '1 mile',
  '1inn',
];

const PROTOTYPE = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'valueOf',
  'hasOwnProperty',
  '__defineGetter__',
];

const HOSTILE = [
  '(((((((',
  '[a-z',
  '.*+?^$|{}()[]\\',
  '(?=x)',
  '\\',
  '\\u0000',
  '$&',
  "$'",
  '$1',
  '%s%n%d',
  '{{7*7}}',
  '<script>alert(1)</script>',
  "'; DROP TABLE defaults; --",
  '../../etc/passwd',
  '@everyone',
  '*bold* _it_ `code` ~no~ ||spoiler||',
  '[link](https://example.org)',
  '\u202ecut',
  '\u0000',
  '\u001b[2J',
  '\ud800',
  'a\udfff',
  '🐝'.repeat(50),
  'Z̷̛͖͕a̸̛l̶g̵o̴',
  'ﷺ'.repeat(40),
];

describe('a length that cannot be', () => {
  it.each(LENGTHS)('%s', async (length) => {
    worded(await answered(`/cut hexagon ${length}`));
    worded(await answered(`/cut shape:hexagon size:${length}`));
    worded(await answered({ command: 'cut', form: '', options: { shape: 'hexagon', size: length } }));
    if (length !== '481in') worded(await answered(`/yield hexagon 1in cloth:18x${length}`));
    worded(await answered(`/count field quilt:${length}x${length} size:1in`));
  });

  it.each(LENGTHS.filter((length) => !/^0(?:in|\/8)?$|^0\.0+$|^1\/9/.test(length)))(
    'a seam of %s',
    async (seam) => {
      worded(await answered(`/cut hexagon size:1in seam:${seam}`));
    },
  );
});

describe('a count that cannot be', () => {
  it.each(['-1', '1.5', '1/2', '1e9', '9'.repeat(400), 'NaN', 'three', '0.5', '2in'])('%s', async (count) => {
    worded(await answered(`/count rosette rounds:${count}`));
    worded(await answered(`/yardage hexagon size:1in pieces:${count}`));
    worded(await answered(`/time seams:${count}`));
  });

  it('more than is laid out', async () => {
    worded(await answered('/count field 40ftx40ft 1/8in'));
    worded(await answered('/count rosette rounds:577 size:1in rounds:578'));
  });
});

describe('names of the language’s own', () => {
  it.each(PROTOTYPE)('%s', async (name) => {
    for (const words of [
      `/${name}`,
      `/count ${name}`,
      `/cut ${name}`,
      `/cut hexagon 1in ${name}:1`,
      `/cut shape:${name} 1in`,
      `/help ${name}`,
      `/help count ${name}`,
    ])
      worded(await answered(words));
    worded(await answered({ command: name, form: '', options: {} }));
    worded(await answered({ command: 'count', form: name, options: {} }));
    worded(await answered({ command: 'cut', form: '', options: Object.fromEntries([[name, '1in']]) }));
  });
});

describe('text that means something to a machine', () => {
  it.each(HOSTILE)('%j', async (text) => {
    for (const words of [
      `/cut hexagon 1in ${text}`,
      `/cut shape:${text}`,
      `/${text}`,
      `/count ${text}`,
      `/me set zone:${text}`,
    ])
      worded(await answered(words));
    const plain = await answered(text);
    if (plain.error) worded(plain);
  });

  it('is not read back where a control could do harm', async () => {
    const { error } = await answered('/cut \u001b[2J\u202e');
    expect(error?.code).toBe('control-characters');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: looking for them is the point
    expect(error?.message).not.toMatch(/[\u0000-\u001f\u202e]/);
  });
});

describe('too long', () => {
  it.each(['/cut ', '', '/cut hexagon size:', '/me set zone:'])('%s and 10,000 characters', async (begin) => {
    const reply = await answered(begin + 'hexagon '.repeat(1250));
    worded(reply);
    expect(reply.error?.code).toBe('text-long');
  });

  it('as an option of a platform too', async () => {
    const reply = await answered({ command: 'cut', form: '', options: { size: '1'.repeat(10_000) } });
    expect(reply.error?.code).toBe('text-long');
  });
});

describe('a member may type anything', () => {
  const word = fc.oneof(
    fc.constantFrom(...LENGTHS, ...PROTOTYPE, ...HOSTILE),
    fc.constantFrom(
      'hexagon',
      'size:',
      'seam:',
      '1in',
      '1/4in',
      'fat-quarter',
      'queen',
      'rounds',
      '3',
      '60x72',
      ':',
      '=',
    ),
    fc.string({ unit: 'grapheme', maxLength: 12 }),
    fc.string({ unit: 'binary', maxLength: 12 }),
  );
  const head = fc.constantFrom(
    '/cut',
    '/count field',
    '/count garden',
    '/yield',
    '/yardage',
    '/time',
    '/help',
    '/me set',
    '/',
    '',
  );

  it('and is answered, or told what was wrong', async () => {
    await fc.assert(
      fc.asyncProperty(head, fc.array(word, { maxLength: 8 }), async (begin, words) => {
        const reply = await answered(`${begin} ${words.join(' ')}`);
        if (reply.error) worded(reply);
        else expect(reply.title).not.toBe('');
      }),
      { numRuns: 300 },
    );
  });
});
