import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Unit } from '../../src/measure/length.ts';
import { BEDS, isInfantBed, isUsual, takeSize } from '../../src/measure/size.ts';
import { tidy } from '../../src/measure/tidy.ts';

const size = (text: string, unit: Unit = 'in') => takeSize(tidy(text), unit)?.value;
const cm = (value: number) => value / 2.54;

describe('width × height', () => {
  it.each([
    ['60x72', 60, 72],
    ['60 x 72 in', 60, 72],
    ['60×72', 60, 72],
    ['60 X 72', 60, 72],
    ['60 by 72', 60, 72],
    ['60" x 72"', 60, 72],
    ['60in x 72in', 60, 72],
    ['5 ft by 6 ft', 60, 72],
    ["5' x 6'", 60, 72],
    ['2 1/2 x 3 1/2 in', 2.5, 3.5],
    ['2½ × 3½″', 2.5, 3.5],
    ['140 x 200 cm', cm(140), cm(200)],
    ['140cm x 200cm', cm(140), cm(200)],
    ['1.4 x 2 m', cm(140), cm(200)],
    ['60in x 150cm', 60, cm(150)],
    ['1,200 x 1,300 mm', cm(120), cm(130)],
  ])('%s', (text, width, height) => {
    expect(size(text)?.width).toBeCloseTo(width, 12);
    expect(size(text)?.height).toBeCloseTo(height, 12);
  });

  it('bare numbers are in the unit of the asker, and a unit said once holds for both', () => {
    expect(size('140x200', 'cm')?.height).toBeCloseTo(cm(200), 12);
    expect(size('60in x 72', 'cm')).toEqual({ width: 60, height: 72 });
  });

  it('reads the two sides in their order, whatever they are', () => {
    const side = fc.integer({ min: 1, max: 64 * 480 }).map((parts) => parts / 64);
    fc.assert(
      fc.property(side, side, (width, height) => {
        expect(size(`${width} x ${height} in`)).toEqual({ width, height });
      }),
    );
  });

  it.each(['60', '60 x', 'x 72', '60x72x3', 'by 72', '60-72', '1/0 x 2', '-60x72', '60x-72', ''])(
    'nothing from %s',
    (text) => {
      expect(size(text)).toBeUndefined();
    },
  );
});

describe('beds', () => {
  it.each(BEDS.map((bed) => [bed.name, bed.width, bed.height] as const))('%s', (name, width, height) => {
    expect(size(name)).toEqual({ width, height, bed: name });
    expect(size(`${name.toUpperCase()}-size quilt`)).toEqual({ width, height, bed: name });
  });

  it.each([
    ['queen size, 1-inch', 'queen', ', 1-inch'],
    ['queensized bed 1in', 'queen', ' 1in'],
    ['single bed', 'twin', ''],
    ['double', 'full', ''],
    ['cot quilt', 'crib', ''],
  ])('%s', (text, bed, rest) => {
    expect(takeSize(text, 'in')).toMatchObject({ value: { bed }, rest });
  });

  it.each(['kingdom', 'laptop', 'baby blocks', 'twinkle', 'queens'])('%s is no bed', (text) => {
    expect(takeSize(text, 'in')).toBeNull();
  });

  it('figures beside a name are the size', () => {
    expect(takeSize('queen 96x108in 1in', 'in')).toEqual({ value: { width: 96, height: 108 }, rest: ' 1in' });
    expect(takeSize('96x108in queen quilt 1in', 'in')).toEqual({
      value: { width: 96, height: 108 },
      rest: ' 1in',
    });
  });

  it('an infant’s bed keeps its name, for the caution that belongs to it', () => {
    expect(size('baby quilt, 30x40')).toEqual({ width: 30, height: 40, bed: 'crib' });
    expect(size('30x40 crib')).toEqual({ width: 30, height: 40, bed: 'crib' });
    expect(BEDS.filter((bed) => isInfantBed(bed.name)).map((bed) => bed.name)).toEqual(['crib']);
    expect(isInfantBed(undefined)).toBe(false);
  });

  it('knows whether a size is the usual one', () => {
    expect(BEDS.every(({ name, width, height }) => isUsual({ width, height, bed: name }))).toBe(true);
    expect(isUsual({ width: 30, height: 40, bed: 'crib' })).toBe(false);
    expect(isUsual({ width: 90, height: 108 })).toBe(false);
  });
});
