import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Option } from '../../src/chat/option.ts';
import { otherwise, wordsOf } from '../../src/chat/option.ts';
import {
  choice,
  cloth,
  date,
  LONGEST,
  length,
  number,
  percent,
  SHORTEST,
  size,
  whole,
  words,
  writeLength,
  writeSize,
  yesNo,
  zone,
} from '../../src/chat/option-kinds.ts';
import { readLength, type Unit } from '../../src/measure/length.ts';
import { BEDS } from '../../src/measure/size.ts';
import { tidy } from '../../src/measure/tidy.ts';

const context = (unit: Unit = 'in') => ({ unit, today: '2026-12-31' });

/** What an option reads from a whole text: its value, the code of its problem, or null. */
function read<T>(option: Option<T, boolean>, text: string, unit: Unit = 'in'): T | string | null {
  const taken = option.take(tidy(text), context(unit));
  if (!taken) return null;
  if (!taken.ok) return taken.problem.code;
  return taken.value.rest.trim() === '' ? taken.value.value : `left ‘${taken.value.rest}’`;
}

describe('a length written to be typed again', () => {
  const lengths = fc.double({ min: SHORTEST, max: 3600, noNaN: true });
  const back = (text: string) => {
    const made = readLength(text);
    return made.ok ? made.value : Number.NaN;
  };

  it('is read as the same, to a millionth of an inch', () => {
    fc.assert(
      fc.property(lengths, (inches) => {
        expect(Math.abs(back(writeLength(inches)) - inches)).toBeLessThanOrEqual(5.1e-7);
      }),
      { numRuns: 500 },
    );
  });

  it('exactly, where it lies on a sixty-fourth', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3600 * 64 }), (parts) => {
        expect(back(writeLength(parts / 64))).toBe(parts / 64);
      }),
    );
  });

  it('exactly, where it is a whole tenth of a millimetre', () => {
    fc.assert(
      fc.property(fc.integer({ min: 32, max: 914_400 }), (tenths) => {
        expect(back(writeLength(tenths / 10 / 25.4)) * 25.4).toBeCloseTo(tenths / 10, 8);
      }),
    );
  });

  it('and written again the same', () => {
    fc.assert(
      fc.property(lengths, (inches) => {
        expect(writeLength(back(writeLength(inches)))).toBe(writeLength(inches));
      }),
    );
  });

  it.each([
    [0, '0in'],
    [0.25, '1/4in'],
    [1 / 64, '1/64in'],
    // Rounded to what is written, it lies on a mark.
    [302.6718751, '302 43/64in'],
    [1200, '1200in'],
    [25 / 25.4, '25mm'],
    [1 / 3, '0.333333in'],
  ])('%d as %s', (inches, text) => {
    expect(writeLength(inches)).toBe(text);
  });

  it('a size keeps its metric measures to the full', () => {
    expect(writeSize(60, 72)).toBe('60x72in');
    expect(writeSize(140 / 2.54, 200 / 2.54)).toBe('1400x2000mm');
    const side = fc.integer({ min: 32, max: 120_000 }).map((tenths) => tenths / 10 / 25.4);
    const quilt = size('Quilt');
    fc.assert(
      fc.property(side, side, (width, height) => {
        const taken = read(quilt, writeSize(width, height)) as { width: number; height: number };
        expect(taken.width).toBeCloseTo(width, 6);
        expect(taken.height).toBeCloseTo(height, 6);
      }),
    );
  });
});

describe('what an option writes it reads as the same', () => {
  const same = <T>(option: Option<T, boolean>, value: T) =>
    expect(read(option, option.write(value))).toEqual(value);

  it('choices, by their name', () => {
    const shape = choice('Shape', [
      { name: 'hexagon', title: 'hexagon' },
      { name: 'half-hexagon', title: 'half' },
      { name: '1', title: 'one' },
    ]);
    for (const name of ['hexagon', 'half-hexagon', '1'] as const) same(shape, name);
  });

  it('yes and no, days, zones, words', () => {
    for (const value of [true, false]) same(yesNo('Outer'), value);
    same(date('Start'), '2026-12-01');
    same(zone('Zone'), 'Europe/London');
    same(words('Note', 40, 'x'), 'two  of them'.replace('  ', ' '));
  });

  it('counts, numbers, shares', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1_000_000 }),
        fc.integer({ min: 0, max: 10_000 }),
        (count, share) => {
          same(whole('Pieces', 0, 1_000_000), count);
          same(number('Pace', 0, 1_000_000, '2.5'), count / 8);
          expect(read(percent('Spare', 100), percent('Spare', 100).write(share / 1e4))).toBeCloseTo(
            share / 1e4,
            9,
          );
        },
      ),
    );
  });

  it('sizes by their bed, and beds of another size', () => {
    for (const { name, width, height } of BEDS) same(size('Quilt'), { width, height, bed: name });
    same(size('Quilt'), { width: 30, height: 40, bed: 'crib' });
  });

  it('cloth by its name, its measures or its length', () => {
    const piece = cloth('Piece');
    for (const text of [
      'fat-quarter',
      '5in-square',
      'strip',
      'a4',
      'letter',
      '18x21in',
      '54in',
      '1000mm',
      '500x700mm',
    ])
      expect(piece.write(read(piece, text) as never)).toBe(text);
  });
});

describe('bounds', () => {
  it.each(['1/8in', '480in', '40 ft'])('%s is answered for', (text) => {
    expect(read(length('Size'), text)).toBeTypeOf('number');
  });

  it.each([
    ['1/16in', 'too-small'],
    ['0', 'too-small'],
    ['481in', 'too-large'],
    ['41 ft', 'too-large'],
    ['9'.repeat(300), 'too-large'],
  ])('%s is %s', (text, wanted) => {
    expect(read(length('Size'), text)).toBe(wanted);
  });

  it('cloth each way', () => {
    expect(read(cloth('Piece'), '0x10in')).toBe('too-small');
    expect(read(cloth('Piece'), '10x4000in')).toBe('too-large');
    expect(read(cloth('Piece'), '4000x10in')).toBe('too-large');
    expect(read(cloth('Piece'), '101yd')).toBe('too-large');
    expect(read(cloth('Piece'), '100yd')).toMatchObject({ length: 3600 });
  });

  it('whole numbers', () => {
    expect(read(whole('Rounds', 1, 9), '1.5')).toBe('not-whole');
    expect(read(whole('Rounds', 1, 9), '0')).toBe('too-small');
    expect(read(whole('Rounds', 1, 9), '10')).toBe('too-large');
    expect(read(whole('Pieces', 1, 9999), '1,234')).toBe(1234);
    expect(read(whole('Rounds', 1, 9), '3in')).toBeNull();
  });

  it('the bounds are said as they can be typed', () => {
    expect(length('Size').bounds).toBe('1/8in to 480in');
    expect(LONGEST).toBe(40 * 12);
  });
});

describe('days', () => {
  const start = date('Start');
  it.each([
    ['today', '2026-12-31'],
    ['Tomorrow', '2027-01-01'],
    ['yesterday', '2026-12-30'],
    ['2026-12-01', '2026-12-01'],
    ['2027-1-5', '2027-01-05'],
    ['2028-02-29', '2028-02-29'],
    ['2026-02-29', 'day-unread'],
    ['2026-13-01', 'day-unread'],
    ['2026-00-10', 'day-unread'],
    ['1 Dec', '2027-12-01'],
    ['31 December', '2026-12-31'],
    ['Jan 1st', '2027-01-01'],
    ['5th of May 2028', '2028-05-05'],
    ['30 Feb', 'day-unread'],
    ['1 Decade', null],
    ['40 in', null],
    ['2026', null],
  ])('%s', (text, wanted) => {
    expect(read(start, text)).toBe(wanted);
  });
});

describe('zones, yes and no, shares', () => {
  it.each([
    ['Europe/London', 'Europe/London'],
    ['america/chicago', 'America/Chicago'],
    ['UTC', 'UTC'],
    ['Mars/Phobos', 'zone-unknown'],
    ['constructor', 'zone-unknown'],
    ['+25', null],
  ])('the zone %s', (text, wanted) => {
    expect(read(zone('Zone'), text)).toBe(wanted);
  });

  it.each([
    ['yes', true],
    ['Y', true],
    ['with', true],
    ['no', false],
    ['none', false],
    ['maybe', null],
    ['nobody', null],
  ])('%s', (text, wanted) => {
    expect(read(yesNo('Outer'), text)).toBe(wanted);
  });

  it.each([
    ['10%', 0.1],
    ['10 %', 0.1],
    ['10', 0.1],
    ['10 percent', 0.1],
    ['2,5%', 0.025],
    ['0', 0],
    ['150%', 'too-large'],
    ['ten', null],
  ])('%s', (text, wanted) => {
    expect(read(percent('Spare', 100), text)).toBe(wanted);
  });
});

describe('choices', () => {
  const shape = choice('Shape', [
    { name: 'hexagon', title: 'hexagon', words: ['hexie', 'hex'] },
    { name: 'half-hexagon', title: 'half', words: ['half hex'] },
    { name: 'a.b', title: 'dots', words: ['(x'] },
  ]);

  it.each([
    ['hexagons', 'hexagon'],
    ['Hexies', 'hexagon'],
    ['hexes', 'hexagon'],
    ['half hexagon', 'half-hexagon'],
    ['halfhexagon', 'half-hexagon'],
    ['a.b', 'a.b'],
    ['(x', 'a.b'],
    ['axb', null],
    ['hexagonal', null],
    ['hex1', null],
  ])('%s', (text, wanted) => {
    expect(read(shape, text)).toBe(wanted);
  });

  it('every word that one may be is told', () => {
    expect(wordsOf(shape)).toEqual(['hexagon', 'hexie', 'hex', 'half-hexagon', 'half hex', 'a.b', '(x']);
    expect(wordsOf(cloth('Piece'))).toContain('fat-quarter');
    expect(wordsOf(size('Quilt'))).toContain('queen');
    expect(wordsOf(length('Size'))).toEqual([]);
  });

  it('a fallback is written as it would be typed', () => {
    expect(otherwise(shape, 'hexagon')).toMatchObject({ fallback: 'hexagon', otherwise: 'hexagon' });
    expect(otherwise(length('Seam'), 0.25).otherwise).toBe('1/4in');
  });
});
