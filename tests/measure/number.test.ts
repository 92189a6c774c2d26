import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import { takeNumber } from '../../src/measure/number.ts';
import { tidy } from '../../src/measure/tidy.ts';

const VULGAR: readonly (readonly [sign: string, top: number, bottom: number])[] = [
  ['¼', 1, 4],
  ['½', 1, 2],
  ['¾', 3, 4],
  ['⅓', 1, 3],
  ['⅔', 2, 3],
  ['⅕', 1, 5],
  ['⅖', 2, 5],
  ['⅗', 3, 5],
  ['⅘', 4, 5],
  ['⅙', 1, 6],
  ['⅚', 5, 6],
  ['⅛', 1, 8],
  ['⅜', 3, 8],
  ['⅝', 5, 8],
  ['⅞', 7, 8],
];

const read = (text: string) => takeNumber(tidy(text));

describe('numbers as members write them', () => {
  it.each([
    ['1 1/2', 1.5],
    ['1-1/2', 1.5],
    ['1 - 1/2', 1.5],
    ['1½', 1.5],
    ['1 ½', 1.5],
    ['1⁄2', 0.5],
    ['½', 0.5],
    ['1.5', 1.5],
    ['1,5', 1.5],
    ['.5', 0.5],
    ['3/8', 0.375],
    ['10/4', 2.5],
    ['0', 0],
    ['007', 7],
    ['1,000', 1000],
    ['12,345.5', 12_345.5],
    ['1,200 1/8', 1200.125],
  ])('%s', (text, value) => {
    expect(read(text)).toEqual({ value, rest: '' });
  });

  it.each([
    ['1/2. Then', 0.5, '. Then'],
    ['3.', 3, '.'],
    ['3, please', 3, ', please'],
    ['1 1/2in', 1.5, 'in'],
    ['60x72', 60, 'x72'],
    ['2 2/3 yd', 8 / 3, ' yd'],
  ])('leaves what follows: %s', (text, value, rest) => {
    expect(read(text)).toEqual({ value, rest });
  });

  it.each([
    'hexagon',
    '',
    '-1',
    '+1',
    '.',
    '/2',
    '1/0',
    '0/0',
    '1 1/0',
    '1/2/3',
    '1.2.3',
    '1,000,00',
    '1e400',
    '1e3',
    '1.5e3',
    '1e-3',
    '1E+9',
    'NaN',
    'Infinity',
    '∞',
    '٣',
    '9'.repeat(400),
  ])('reads nothing from %s', (text) => {
    expect(read(text)).toBeNull();
  });
});

describe('against fraction.js, an independent library for exact fractions', () => {
  const part = fc.record({
    whole: fc.nat({ max: 99_999 }),
    top: fc.integer({ min: 1, max: 999 }),
    bottom: fc.integer({ min: 1, max: 999 }),
  });
  const same = (text: string, exact: Fraction) => {
    const taken = read(text);
    expect(taken?.rest).toBe('');
    expect(taken?.value).toBeCloseTo(exact.valueOf(), 9);
  };

  it('mixed numbers, with a blank, a hyphen or thousands set apart', () => {
    fc.assert(
      fc.property(part, ({ whole, top, bottom }) => {
        const exact = new Fraction(whole).add(new Fraction(top, bottom));
        same(`${whole} ${top}/${bottom}`, exact);
        same(`${whole}-${top}/${bottom}`, exact);
        same(`${whole.toLocaleString('en-US')} ${top}/${bottom}`, exact);
      }),
    );
  });

  it('plain fractions and decimals', () => {
    fc.assert(
      fc.property(part, ({ whole, top, bottom }) => {
        same(`${top}/${bottom}`, new Fraction(top, bottom));
        same(`${whole}.${top}`, new Fraction(`${whole}.${top}`));
      }),
    );
  });

  it.each(VULGAR)('the sign %s', (sign, top, bottom) => {
    same(sign, new Fraction(top, bottom));
    same(`12${sign}`, new Fraction(12).add(new Fraction(top, bottom)));
  });
});
