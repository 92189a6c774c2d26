import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { purchase } from '../../../src/calculator/fabric/purchase.ts';
import { backing, PANEL_SEAM, panelsAcross } from '../../../src/calculator/finishing/backing.ts';

const backed = (width: number, height: number, usable: number, grain: 'any' | 'lengthwise' = 'any') =>
  backing({ width, height, over: 4, usable, grain });
const yd = (inches: number) => purchase(inches, 'yard').amount;

/** The trade's table of worked backings, 4 in over on every side: derived, the allowance common practice. */
describe.each([
  [36, 45, 44, 53, 40, [2, 3], [2, 2.5]],
  [50, 60, 58, 68, 40, [2, 3.875], [2, 3.25]],
  [60, 72, 68, 80, 40, [2, 4.5], [3, 5.75]],
  [60, 72, 68, 80, 42, [2, 4.5], [2, 3.875]],
  [70, 90, 78, 98, 40, [2, 5.5], [3, 6.5]],
  [90, 108, 98, 116, 40, [3, 9.75], [3, 8.25]],
  [90, 108, 98, 116, 106, [1, 3.25], [2, 5.5]],
  [108, 108, 116, 116, 40, [3, 9.75], [3, 9.75]],
] as const)('%d x %d', (width, height, needWidth, needHeight, usable, lengthwise, crosswise) => {
  const made = backed(width, height, usable);
  const way = (direction: string) => [made.best, made.other].find((one) => one.direction === direction)!;

  test(`needs ${needWidth} x ${needHeight}`, () => {
    expect(made).toMatchObject({ needWidth, needHeight });
  });

  test(`at ${usable} in, seams down the quilt and across it`, () => {
    for (const [direction, [panels, bought]] of [
      ['lengthwise', lengthwise],
      ['crosswise', crosswise],
    ] as const) {
      expect(way(direction).panels).toBe(panels);
      expect(yd(way(direction).length)).toBe(bought);
    }
  });

  test('the smaller is chosen, and with a directional print the seams run down', () => {
    expect(made.best.length).toBe(Math.min(way('lengthwise').length, way('crosswise').length));
    expect(backed(width, height, usable, 'lengthwise').best).toEqual(way('lengthwise'));
  });
});

test('108 in wide cloth is one piece for 90 x 108, and too narrow for 108 x 108', () => {
  expect(backed(90, 108, 106).best.panels).toBe(1);
  expect(backed(108, 108, 106).best.panels).toBe(2);
});

test('of equal lengths the way with seams down the quilt is chosen', () => {
  expect(backed(108, 108, 40).best.direction).toBe('lengthwise');
});

test('panels are enough with their seams, and one fewer is not', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 500, noNaN: true }),
      fc.double({ min: 4, max: 200, noNaN: true }),
      (across, usable) => {
        const reach = (n: number) => n * usable - 2 * PANEL_SEAM * (n - 1);
        const panels = panelsAcross(across, usable);
        expect(reach(panels)).toBeGreaterThanOrEqual(across - 1e-6);
        if (panels > 1) expect(reach(panels - 1)).toBeLessThan(across);
      },
    ),
  );
});
