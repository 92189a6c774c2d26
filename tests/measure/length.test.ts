import { describe, expect, it } from 'vitest';
import { INCHES, MM_PER_INCH, readLength, takeLength, type Unit } from '../../src/measure/length.ts';

const inches = (text: string, unit: Unit = 'in'): number => {
  const read = readLength(text, unit);
  return read.ok ? read.value : Number.NaN;
};

/** National Bureau of Standards notice, in force 1 July 1959: the yard is 0.9144 m, the inch 25.4 mm. */
describe('the inch and the yard of 1959', () => {
  it('an inch is 25.4 mm exactly', () => {
    expect(MM_PER_INCH).toBe(25.4);
    expect(inches('25.4 mm')).toBe(1);
    expect(inches('254 mm')).toBe(10);
    expect(inches('2.54 cm')).toBe(1);
    expect(inches('0.0254 m')).toBe(1);
  });

  it('a yard is 0.9144 m exactly', () => {
    expect(INCHES.yd / INCHES.m).toBeCloseTo(0.9144, 15);
    expect(inches('0.9144 m')).toBe(36);
    expect(inches('1 yd')).toBe(36);
  });

  it('a quarter inch is 6.35 mm, not 6 and not 7', () => {
    expect(inches('6.35mm')).toBeCloseTo(0.25, 12);
    expect(inches('6mm')).not.toBeCloseTo(0.25, 2);
  });
});

describe('lengths as members write them', () => {
  it.each([
    ['1 1/2"', 1.5],
    ['1-1/2″', 1.5],
    ['1½in', 1.5],
    ['1½ in.', 1.5],
    ['1.5 inch', 1.5],
    ['1.5 inches', 1.5],
    ['1-inch', 1],
    ['1 - inch', 1],
    ['1 IN', 1],
    ['2 ins', 2],
    ['1”', 1],
    ["1''", 1],
    ["5'", 60],
    ['5′', 60],
    ['5 ft', 60],
    ['5 feet', 60],
    ['1 foot', 12],
    ['5\' 6"', 66],
    ["5'6", 66],
    ['5′ 6″', 66],
    ['5 ft 6 in', 66],
    ['2 yd', 72],
    ['2 yards', 72],
    ['1 1/2 yds', 54],
    ['1 yd 9 in', 45],
    ['50.8mm', 2],
    ['5.08 cm', 2],
    ['2,54 cm', 1],
    ['1 m', 1000 / 25.4],
    ['1.5 metres', 1500 / 25.4],
    ['1 meter', 1000 / 25.4],
    ['10 millimetres', 10 / 25.4],
    ['10 centimeters', 100 / 25.4],
    ['1,200 in', 1200],
    ['3 1/8 in (3.098)', 3.098],
    ['1,234 1/2 in (1,234.51)', 1234.51],
  ])('%s', (text, value) => {
    expect(inches(text)).toBeCloseTo(value, 12);
  });

  it('a bare number is in the unit of the asker', () => {
    expect(inches('2')).toBe(2);
    expect(inches('2', 'cm')).toBeCloseTo(2 / 2.54, 12);
    expect(inches('2', 'mm')).toBeCloseTo(2 / 25.4, 12);
    expect(inches('2in', 'mm')).toBe(2);
  });

  it('feet take the inches that follow at once, not the next number', () => {
    expect(takeLength("5'6 wide", 'in')).toMatchObject({ value: 66, rest: ' wide' });
    expect(takeLength("5' 6 rounds", 'in')).toMatchObject({ value: 60, rest: ' 6 rounds' });
    expect(takeLength('2 yd 3 rounds', 'in')).toMatchObject({ value: 72, rest: ' 3 rounds' });
  });

  it('tells which unit was said', () => {
    expect(takeLength('2', 'cm')?.unit).toBeNull();
    expect(takeLength('2 cm', 'in')?.unit).toBe('cm');
  });

  it('a decimal in brackets is the exact length only where it is the same to a sixteenth', () => {
    expect(inches('3 1/8 in (3.098)')).toBe(3.098);
    expect(takeLength('3 in (7.5)', 'in')).toMatchObject({ value: 3, rest: ' (7.5)' });
  });
});

describe('what is no length', () => {
  it.each([
    'fish',
    '',
    'in',
    '"',
    '-1in',
    '- 1 in',
    '60x72',
    '60 x 72 in',
    '60 by 72',
    '4x4',
    '1e400',
    '1/0 in',
    '0/0',
    'NaN in',
    'Infinity',
    '50%',
    '2nd',
    '60°',
    '1 in in',
    '1 hexagon',
    '9'.repeat(400),
  ])('%s', (text) => {
    expect(readLength(text)).toEqual({ ok: false, problem: { code: 'not-a-length', got: text } });
  });

  it('a unit is a whole word: "inside" is not inches, "mat" not metres', () => {
    expect(readLength('3 inside').ok).toBe(false);
    expect(readLength('3 mat').ok).toBe(false);
    expect(readLength('3 cmm').ok).toBe(false);
  });
});
