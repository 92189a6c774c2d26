import { describe, expect, it } from 'vitest';
import { PIECES, pieceTitle, takeCloth } from '../../src/measure/cloth.ts';
import { tidy } from '../../src/measure/tidy.ts';

const cloth = (text: string) => takeCloth(tidy(text), 'in');

describe('pieces known by name', () => {
  it.each([
    ['fat-quarter', 'fat-quarter', 18, 21],
    ['fat quarter', 'fat-quarter', 18, 21],
    ['Fat Quarters', 'fat-quarter', 18, 21],
    ['FQ', 'fat-quarter', 18, 21],
    ['fqs', 'fat-quarter', 18, 21],
    ['fat eighth', 'fat-eighth', 9, 21],
    ['f8', 'fat-eighth', 9, 21],
    ['10in-square', '10in-square', 10, 10],
    ['10" square', '10in-square', 10, 10],
    ['10-inch squares', '10in-square', 10, 10],
    ['5in-square', '5in-square', 5, 5],
    ['charm', '5in-square', 5, 5],
    ['charm-size squares', '5in-square', 5, 5],
    ['letter', 'letter', 8.5, 11],
    ['letter sheet', 'letter', 8.5, 11],
    ['letter paper', 'letter', 8.5, 11],
  ])('%s', (text, name, width, length) => {
    expect(cloth(text)).toMatchObject({ value: { name, width, length }, rest: '' });
  });

  it.each(['strip', '2½ in strip', '2 1/2in strips', '2.5" strip', '2-1/2-inch-strip'])(
    '%s is 2½ in by the width of the cloth',
    (text) => {
      expect(cloth(text)).toMatchObject({ value: { name: 'strip', width: null, length: 2.5 }, rest: '' });
    },
  );

  /** ISO 216: sheet n of the A series is 1000 · 2^(−1/4 − n/2) mm wide, rounded down to a whole mm. */
  it('A4 by the formula of ISO 216', () => {
    const side = (n: number) => Math.floor(1000 * 2 ** (-1 / 4 - n / 2)) / 25.4;
    const sheet = cloth('a4')?.value;
    expect(sheet?.kind).toBe('paper');
    expect(sheet?.width).toBeCloseTo(side(4), 12);
    expect(sheet?.length).toBeCloseTo(side(3), 12);
  });

  it('every piece is read by its own name and has a title', () => {
    for (const { name, title } of PIECES) {
      expect(cloth(name)).toMatchObject({ value: { name }, rest: '' });
      expect(cloth(title)?.value.name).toBe(name);
      expect(pieceTitle(name)).toBe(title);
    }
    expect(pieceTitle('18x21in')).toBeNull();
  });
});

describe('cloth by its measures', () => {
  it.each([
    ['1 1/2yd', 54],
    ['1½ yards', 54],
    ['half a yard', 18],
    ['half yard of blue', 18],
    ['a quarter yard', 9],
    ['half yd', 18],
    ['a yd of white', 36],
    ['three quarters of a yard', 27],
    ['a quarter of a metre', 250 / 25.4],
    ['yardage', undefined],
    ['quarter of a yard', 9],
    ['a yard', 36],
    ['one yard', 36],
    ['1m', 1000 / 25.4],
    ['half a metre', 500 / 25.4],
    ['27 in', 27],
  ])('%s off the bolt', (text, length) => {
    const taken = cloth(text)?.value;
    if (length === undefined) return expect(taken).toBeUndefined();
    expect(taken?.width).toBeNull();
    expect(taken?.kind).toBe('yardage');
    expect(taken?.length).toBeCloseTo(length, 12);
  });

  it('width × length, its width first', () => {
    expect(cloth('18x21in')).toMatchObject({ value: { width: 18, length: 21, kind: 'piece' }, rest: '' });
    expect(cloth('50 x 70 cm')?.value.width).toBeCloseTo(50 / 2.54, 12);
  });

  it.each(['queen', 'scraps', 'fat', '3 hexagons', '', 'stripy', 'letterbox', '42', '-1yd', '0/0yd', '1e9m'])(
    'nothing from %s',
    (text) => {
      expect(cloth(text)).toBeNull();
    },
  );
});
