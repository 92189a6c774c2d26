import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { takeCloth } from '../../src/measure/cloth.ts';
import { takeLength } from '../../src/measure/length.ts';
import { takeSize } from '../../src/measure/size.ts';
import { dayWords, many, type Reading, range, speech } from '../../src/measure/speech.ts';

const READINGS: readonly Reading[] = ['ruler', 'metric', 'both'];
const lengths = fc.double({ min: 0.125, max: 3600, noNaN: true });

/** The lengths that stand in a text one after another, as a member would type them back. */
function lengthsIn(text: string): number[] {
  const found: number[] = [];
  let rest = text;
  while (rest !== '') {
    const taken = takeLength(rest, 'in');
    if (!taken) return [...found, Number.NaN];
    found.push(taken.value);
    rest = taken.rest.replace(/^ \/ /, '');
  }
  return found;
}

describe.each(READINGS)('reading %s back', (reading) => {
  const say = speech(reading);
  const parts = reading === 'both' ? 2 : 1;
  /** How far a printed length may be from the length said, in inches. */
  const within = (length: number, inch: number) =>
    reading === 'ruler' ? inch : Math.max(inch, (length * 25.4 < 1000 ? 0.25 : 0.5) / 25.4 + 1e-6);

  it('a length is the same to the digits printed', () => {
    fc.assert(
      fc.property(lengths, (length) => {
        const read = lengthsIn(say.length(length));
        expect(read).toHaveLength(parts);
        for (const one of read)
          expect(Math.abs(one - length)).toBeLessThanOrEqual(within(length, 5e-4 + 1e-9));
      }),
    );
  });

  it('a mark is on the ruler', () => {
    fc.assert(
      fc.property(lengths, (length) => {
        for (const one of lengthsIn(say.mark(length)))
          expect(Math.abs(one - length)).toBeLessThanOrEqual(within(length, 1 / 32 + 1e-9));
      }),
    );
  });

  it('a plain length and a size are the same to a hundredth', () => {
    fc.assert(
      fc.property(lengths, lengths, (width, height) => {
        const read = lengthsIn(say.plain(width));
        expect(read).toHaveLength(parts);
        for (const one of read)
          expect(Math.abs(one - width)).toBeLessThanOrEqual(within(width, 0.005 + 1e-9));
        const size = takeSize(say.size(width, height), 'in')?.value;
        expect(Math.abs((size?.width ?? 0) - width)).toBeLessThanOrEqual(0.02);
        expect(Math.abs((size?.height ?? 0) - height)).toBeLessThanOrEqual(0.02);
      }),
    );
  });
});

describe('cloth to buy', () => {
  it('eighths of a yard and tenths of a metre are read back exactly', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 800 }), (steps) => {
        const yards = takeCloth(speech('ruler').purchase(steps / 8, 0), 'in')?.value.length;
        const metres = takeCloth(speech('metric').purchase(0, steps / 10), 'in')?.value.length;
        expect(yards).toBeCloseTo((steps / 8) * 36, 9);
        expect(metres).toBeCloseTo(((steps / 10) * 1000) / 25.4, 9);
      }),
    );
  });
});

describe('what is said', () => {
  it('in the member’s own units, or both', () => {
    expect(READINGS.map((reading) => speech(reading).length(1))).toEqual([
      '1 in',
      '25.5 mm (25.4)',
      '1 in / 25.5 mm (25.4)',
    ]);
    expect(speech('ruler').plain(1 / 3)).toBe('0.33 in');
    expect(speech('ruler').size(90, 108)).toBe('90 x 108 in');
    expect(speech('metric').size(60, 72)).toBe('152.4 x 182.9 cm');
  });

  it('areas: a square inch is 6.4516 square centimetres, by the inch of 1959', () => {
    expect(speech('ruler').area(2.5981)).toBe('2.598 sq in');
    expect(speech('metric').area(100)).toBe('645.2 sq cm');
  });

  it('a run of thread in inches, from two yards on in yards too, from ten in yards alone', () => {
    expect(speech('ruler').run(42)).toBe('42 in');
    expect(speech('ruler').run(90)).toBe('90 in (2.5 yd)');
    expect(speech('ruler').run(1800)).toBe('50 yd');
    expect(speech('metric').run(20)).toBe('51 cm');
    expect(speech('metric').run(1800)).toBe('45.7 m');
  });

  it('ranges, days, counts', () => {
    expect(range('13', '31')).toBe('13 to 31');
    expect(range('2', '2')).toBe('2');
    expect(dayWords('2026-12-01')).toBe('1 Dec 2026');
    expect(dayWords('2027-01-31')).toBe('31 Jan 2027');
    expect(many(1, 'hexagon', 'hexagons')).toBe('1 hexagon');
    expect(many(3832, 'hexagon', 'hexagons')).toBe('3,832 hexagons');
    expect(many(0, 'round', 'rounds')).toBe('0 rounds');
  });
});
