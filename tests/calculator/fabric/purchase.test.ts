import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { purchase } from '../../../src/calculator/fabric/purchase.ts';

describe('purchase', () => {
  test.each([
    [26.78, 0.75, 27, true],
    [44.98, 1.25, 45, true],
    [4.5, 0.125, 4.5, true],
    [4.5 + 1e-12, 0.125, 4.5, true],
    [4.51, 0.25, 9, false],
    [26.5, 0.75, 27, false],
    [26.51, 0.75, 27, true],
  ])('%d in is %d yd', (inches, amount, length, tight) => {
    expect(purchase(inches, 'yard')).toMatchObject({ amount, unit: 'yd', length, tight });
  });

  test('by the metre in steps of ten centimetres', () => {
    expect(purchase(20, 'metric')).toMatchObject({ amount: 0.6, unit: 'm' });
    expect(purchase(20, 'metric').spare).toBeCloseTo((600 - 508) / 25.4, 9);
    expect(purchase(1000 / 25.4, 'metric')).toMatchObject({ amount: 1, spare: 0, tight: true });
  });

  test('is always enough and never a whole step too much', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 5000, noNaN: true }),
        fc.constantFrom('yard', 'metric'),
        (inches, by) => {
          const { length, spare } = purchase(inches, by);
          const step = by === 'yard' ? 4.5 : 100 / 25.4;
          expect(length).toBeGreaterThanOrEqual(inches - 1e-8);
          expect(length).toBeLessThan(inches + step);
          expect(spare).toBeCloseTo(Math.max(0, length - inches), 9);
        },
      ),
    );
  });
});
