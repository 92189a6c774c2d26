import { describe, expect, test } from 'vitest';
import { bestPlan } from '../../src/calculator/fabric/best-plan.ts';
import { yieldFrom } from '../../src/calculator/fabric/yield.ts';
import { cutPatch } from '../../src/calculator/shapes/cut.ts';

/**
 * The least known side of a square that holds n regular hexagons of edge 1, n = 1 … 16: the public table
 * "Hexagons in Squares" (best-known packings, read 2026). Few are proved.
 */
const LEAST_KNOWN_SIDE = [
  1.931, 3.156, 3.491, 3.725, 4.437, 4.813, 5.196, 5.196, 5.518, 6.105, 6.332, 6.387, 6.756, 6.928, 6.964,
  7.311,
];
const hexagon = cutPatch('hexagon', { edge: 1 }, 0, 'pointed');
const inSquare = (side: number) => yieldFrom(hexagon, { width: side, length: side }).best;

describe('hexagons in squares, against the public table of best-known packings', () => {
  test.each(LEAST_KNOWN_SIDE.map((side, index) => [index + 1, side]))('%i do not fit under %f', (n, side) => {
    expect(inSquare(side - 0.001)).toBeLessThan(n);
  });

  test.each([1, 4, 8, 14, 16])('%i reach the table', (n) => {
    expect(inSquare(LEAST_KNOWN_SIDE[n - 1]! + 0.001)).toBe(n);
  });

  test.each(LEAST_KNOWN_SIDE.map((side, index) => [index + 1, side]))(
    'the search reaches the table: %i in %f, to its three decimals',
    (n, side) => {
      const found = bestPlan(hexagon, { width: side + 0.001, length: side + 0.001 });
      expect(found?.count).toBeGreaterThanOrEqual(n);
      // What the table has is not far from the best: none of its squares holds one more.
      if (n !== 7) expect(found?.count).toBe(n);
    },
  );

  test('four need (7 − √3)/√2, all turned by 15°', () => {
    const side = (7 - Math.sqrt(3)) / Math.SQRT2;
    expect(inSquare(side)).toBe(4);
    expect(inSquare(side - 1e-6)).toBe(3);
    expect(yieldFrom(hexagon, { width: side, length: side }).nested).toBe(3);
  });
});

test('hexagons tile: the honeycomb comes as near to the whole cloth as one likes (classical theorem, from memory)', () => {
  const share = (side: number) => {
    const { best, ceiling } = yieldFrom(hexagon, { width: side, length: side });
    return best / ceiling;
  };
  expect(share(10_000)).toBeGreaterThan(0.9995);
  expect(share(10_000)).toBeGreaterThan(share(1000));
  expect(share(10_000)).toBeLessThanOrEqual(1);
});

test('no pentagons lie closer than is proved to be possible, (5 − √5)/3 of the cloth (arXiv 1602.07220), and ours come near', () => {
  const pentagon = cutPatch('pentagon', { edge: 1 }, 0, 'pointed');
  const proved = (5 - Math.sqrt(5)) / 3;
  const share = (side: number) =>
    (yieldFrom(pentagon, { width: side, length: side }).best * pentagon.cut.area) / side ** 2;
  expect(share(2000)).toBeLessThan(proved);
  expect(share(2000)).toBeGreaterThan(proved - 0.002);
});
