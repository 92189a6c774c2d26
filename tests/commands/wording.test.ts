import { describe, expect, test } from 'vitest';
import type { Reply } from '../../src/chat/reply.ts';
import { alone, openAsking, wordsOf } from './asking.ts';
import { expectReadsWell } from './reads-well.ts';

const MORE = [
  '/cut hexagon 4in',
  '/cut shape:hexagon size:4in',
  '/cut kite 2in',
  '/cut third 1in',
  '/cut half-hexagon-flats 1in',
  '/cut triangle 2in seam:3/8in',
  '/cut rectangle 2x3in',
  '/cut square 2in given:cut',
  '/count field 60x72 4in',
  '/count field crib 1in',
  '/count field 60x72 1in sides:whole',
  '/count garden',
  '/count garden 7 path:own',
  '/count garden 7 path:none',
  '/count rosette 40 rounds',
  '/count stars 19',
  '/yield hexagon 1in 5in-square',
  '/yield kite 2in 1yd',
  '/yield square 1 1/2in 10in-square',
  '/yield hexagon 1in a4',
  '/yardage 500 hexagon 3/4in method:strips',
  '/yardage star:4 size:2in',
  '/yardage 1 hexagon 1in',
  '/time seams:1',
  '/time field:queen size:1in method:running',
  '/time rosette:2 pace:2',
  'how many 1 inch hexagons from a fat quarter?',
  'how much fabric for 240 1 inch hexagons',
];

/** The parts of an inch that a ruler has; a seam is put right by finer ones. */
const RULER = ['2', '4', '8', '16'];
const FINER = [...RULER, '32', '64'];

const ask = openAsking();
const readers = ['inches', 'metric', 'both'] as const;

async function readBy(reader: (typeof readers)[number], words: string): Promise<Reply> {
  if (reader === 'metric') await ask('/me set unit:cm', { as: reader });
  if (reader === 'both') await ask('/me set reading:both', { as: reader });
  return ask(words, { as: reader, organiser: true });
}

/** What changes something kept, or shows what must be kept first, is read elsewhere. */
const KEPT = /^\/(?:me|guild) (?:set|reset)|^\/plan (?:keep|show|change|remove)|^\/kit plan:/;

const asks = [...alone.filter((one) => !KEPT.test(one)), ...MORE];
const cases = readers.flatMap((reader) => asks.map((words) => [reader, words] as const));

describe('how replies read', () => {
  test.each(cases)('%s: %s', async (reader, words) => {
    const reply = await readBy(reader, words);
    expectReadsWell(reply);
  });

  const answers = cases.filter(([, words]) => !/^\/(?:me|guild|help)\b/.test(words));

  test.each(answers)('%s: %s has the number in its first line', async (reader, words) => {
    const reply = await readBy(reader, words);
    if (reply.asks === null) expect(reply.lines[0]).toMatch(/\d/);
    else expect(reply.asks).toMatch(/^[^?]*\d[^?]*\?$/);
  });

  // A ruler is asked for to go from one to the other.
  test.each(answers.filter(([reader, words]) => reader !== 'both' && !words.startsWith('/ruler')))(
    '%s: %s is in one system',
    async (reader, words) => {
      const text = wordsOf(await readBy(reader, words)).replaceAll(/\d+(?:\.\d+)? stitches an inch/g, '');
      // Where nobody has set a reading, one who asks in metric is answered so.
      if (reader === 'metric' || /\d ?[cm]m\b/.test(words)) expect(text).not.toMatch(/\d (?:in|sq in|yd)\b/);
      else expect(text).not.toMatch(/\d (?:mm|cm|m|sq cm)\b/);
    },
  );

  test('thousands are set apart, fractions are a ruler’s, no number is longer than can be used', async () => {
    for (const words of asks) {
      const text = wordsOf(await readBy('inches', words)).replaceAll(
        /\b\d{4}-\d{2}-\d{2}\b|\b[A-Z][a-z]{2} \d{4}\b/g,
        '',
      );
      expect(text, words).not.toMatch(/(?<![\d,.])\d{4,}/);
      expect(text, words).not.toMatch(/\d\.\d{4,}/);
      for (const [, below] of text.matchAll(/\d\/(\d+)/g))
        expect(words.startsWith('/check') ? FINER : RULER, words).toContain(below);
    }
  });

  test('an assumption is said once, after the answer', async () => {
    for (const words of asks) {
      const reply = await readBy('inches', words);
      expect(reply.notes.filter((note) => note.startsWith('Assumed')).length, words).toBeLessThanOrEqual(1);
      expect(reply.lines.join(' '), words).not.toContain('Assumed');
    }
  });
});

test('wherever an infant’s size is asked by its name, the caution on cribs stands once', async () => {
  for (const words of [
    '/count field crib 1in',
    '/yardage field:crib hexagon 1in',
    '/yardage field:crib hexagon 1in have:3 fat quarters',
    '/time field:crib size:1in',
    '/plan quilt:crib 1in',
    '/kit field quilt:crib size:1in members:3',
    '/finish backing crib',
    '/finish bed crib',
    'I want a baby quilt for a crib, 1 inch hexagons, how much fabric',
  ]) {
    const { cautions } = await readBy('inches', words);
    expect(cautions.filter((one) => /no quilt in a crib/.test(one)).length, words).toBe(1);
  }
  expect((await readBy('inches', '/time field:60x72 size:1in')).cautions.join()).not.toMatch(/crib/);
});

test('a quilt the size of a crib leads on under its name, so that the caution goes along', async () => {
  const bed = await readBy('inches', '/finish bed crib');
  expect(bed.lines).toContain('A full-size crib is 28 x 52 3/8 in inside; measure your own, makers differ.');
  for (const { ask } of bed.choices)
    expect((await readBy('inches', ask)).cautions.join(), ask).toMatch(/no quilt in a crib/);
});

test('what a cutter is told to buy is never less than she needs', async () => {
  for (const reader of ['inches', 'metric'] as const)
    for (const pieces of [1, 7, 96, 240, 300, 500, 777, 1234]) {
      const reply = await readBy(reader, `/yardage ${pieces} hexagon 1in seam:1/4in width:42in`);
      const told = /needed, .* to spare/.exec(reply.lines[0] ?? '');
      expect(told, reply.lines[0]).not.toBeNull();
      const [buy = 0, needed = 0, spare = 0] = [
        ...(reply.lines[0] ?? '').matchAll(/((?:\d+ )?\d+\/\d+|\d[\d.,]*) (in|mm|cm|yd|m)\b/g),
      ].map(
        ([, number = '', unit = '']) =>
          inFull(number) * { in: 1, mm: 1 / 25.4, cm: 1 / 2.54, yd: 36, m: 1000 / 25.4 }[unit as 'in'],
      );
      expect(needed + spare, reply.lines[0]).toBeLessThanOrEqual(buy + 0.006);
      expect(needed).toBeGreaterThanOrEqual(Number(reply.figures.bestLength?.value) - 0.003);
    }
});

const inFull = (number: string): number =>
  number
    .replaceAll(',', '')
    .split(' ')
    .map((part) => part.split('/').map(Number))
    .reduce((sum, [top = 0, bottom = 1]) => sum + top / bottom, 0);
