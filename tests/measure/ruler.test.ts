import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLength } from '../../src/measure/length.ts';
import { decimal, fraction, grouped, inchWords, metricWords, rulerReading } from '../../src/measure/ruler.ts';

/** Anything from a hair to a hundred yards, on a mark or off it, or just off one. */
const lengths = fc.oneof(
  fc.double({ min: 0.001, max: 3600, noNaN: true }),
  fc.integer({ min: 1, max: 3600 * 16 }).map((steps) => steps / 16 + 2e-4),
  fc.integer({ min: 1, max: 3600 * 64 }).map((parts) => parts / 64),
);
const inches = (text: string): number => {
  const read = readLength(text);
  return read.ok ? read.value : Number.NaN;
};

describe('the mark on a ruler', () => {
  it('is the nearest sixteenth, and the error is what it differs by', () => {
    fc.assert(
      fc.property(lengths, (length) => {
        const { mark, error } = rulerReading(length);
        expect(Number.isInteger(mark * 16)).toBe(true);
        expect(Math.abs(error)).toBeLessThanOrEqual(1 / 32 + 1e-9);
        expect(mark - length).toBeCloseTo(error, 12);
      }),
    );
  });

  it('upward it is never below the length, nor a whole step above', () => {
    fc.assert(
      fc.property(lengths, (length) => {
        const { mark } = rulerReading(length, 'up');
        expect(mark).toBeGreaterThanOrEqual(length - 1e-7);
        expect(mark - length).toBeLessThan(1 / 16);
      }),
    );
  });

  it('upward, a length on a mark stays there whatever the rounding of the computer', () => {
    expect(rulerReading(3 + 1e-12, 'up').mark).toBe(3);
    expect(rulerReading(0.1 + 0.2 + 0.2, 'up').mark).toBe(0.5);
  });

  /** 1½ in hexagons, ¼ in seam: flat to flat √3 · 1½ + ½. */
  it('reads √3 · 1½ + ½ at 3 1/8, 0.027 in large', () => {
    const { mark, error } = rulerReading(Math.sqrt(3) * 1.5 + 0.5);
    expect(mark).toBe(3.125);
    expect(error).toBeCloseTo(0.0269, 4);
  });
});

describe('what is printed', () => {
  it.each([
    [0, '0'],
    [0.0625, '1/16'],
    [0.5, '1/2'],
    [3.125, '3 1/8'],
    [1200, '1,200'],
    [1234.75, '1,234 3/4'],
  ])('the mark %d as %s', (mark, text) => {
    expect(fraction(mark)).toBe(text);
  });

  it('eighths for a shop', () => {
    expect(fraction(1.375, 8)).toBe('1 3/8');
    expect(fraction(0.125, 8)).toBe('1/8');
  });

  it.each([
    [0, '0'],
    [999, '999'],
    [3832, '3,832'],
    [1_000_000, '1,000,000'],
    [12.6, '13'],
  ])('the count %d as %s', (count, text) => {
    expect(grouped(count)).toBe(text);
  });

  it.each([
    [3.0981, 3, '3.098'],
    [2.5, 3, '2.5'],
    [2, 1, '2'],
    [100, 0, '100'],
    [1234.5, 1, '1,234.5'],
    [-0.004, 2, '0'],
    [-1234.5, 1, '-1,234.5'],
    [0.1, 0, '0'],
  ])('the decimal %d to %d places as %s', (value, places, text) => {
    expect(decimal(value, places)).toBe(text);
  });

  it('the exact length stands beside a mark that is not it', () => {
    expect(inchWords(3.0980762)).toBe('3 1/8 in (3.098)');
    expect(inchWords(3.0980762, 'up')).toBe('3 1/8 in (3.098)');
    expect(inchWords(2.5)).toBe('2 1/2 in');
    expect(inchWords(1234.51)).toBe('1,234 1/2 in (1,234.51)');
  });

  it('millimetres to a half, centimetres from a metre up', () => {
    expect(metricWords(0.25)).toBe('6.5 mm (6.35)');
    expect(metricWords(1)).toBe('25.5 mm (25.4)');
    expect(metricWords(60)).toBe('152.4 cm');
  });
});

describe('reading what is printed gives the same length', () => {
  it('inches, to the digits printed', () => {
    fc.assert(
      fc.property(lengths, fc.constantFrom('nearest' as const, 'up' as const), (length, toward) => {
        const text = inchWords(length, toward);
        const { mark } = rulerReading(length, toward);
        expect(Math.abs(inches(text) - length)).toBeLessThanOrEqual(5e-4 + 1e-9);
        if (!text.includes('(')) expect(inches(text)).toBeCloseTo(mark, 12);
      }),
      { numRuns: 500 },
    );
  });

  it('millimetres to a quarter, centimetres to half a millimetre', () => {
    fc.assert(
      fc.property(lengths, (length) => {
        const off = Math.abs(inches(metricWords(length)) - length) * 25.4;
        expect(off).toBeLessThanOrEqual((length * 25.4 < 1000 ? 0.25 : 0.5) + 1e-6);
      }),
      { numRuns: 500 },
    );
  });

  it('the mark alone', () => {
    fc.assert(
      fc.property(fc.nat({ max: 3600 * 16 }), (steps) => {
        expect(inches(`${fraction(steps / 16)} in`)).toBe(steps / 16);
      }),
    );
  });
});
