import { describe, expect, test } from 'vitest';
import { paperSquare } from '../../../src/calculator/fabric/squares.ts';
import { yieldFrom } from '../../../src/calculator/fabric/yield.ts';
import { faultsOf, NO_FAULTS } from './geometry.ts';
import { patch } from './patches.ts';

/**
 * Worked beforehand by the closed forms, by a separating-axis test, and by hand; hexagons: across 40 in the
 * strips' flats and points, the honeycomb's rows and columns, then the turned grid, squares and ceiling.
 */
const HEXAGONS = [
  // edge, seam, width, length, flats, points, rows, columns, turned, squares, ceiling
  [1, 0.25, 40, 36, 240, 221, 306, 310, 255, 224, 333],
  [1, 0.25, 42, 36, 256, 234, 324, 326, 270, 224, 350],
  [0.75, 0.25, 42, 9, 100, 92, 113, 117, 88, 84, 134],
  [1.5, 0.25, 40, 36, 121, 120, 156, 154, 132, 110, 173],
  [1, 0.25, 108, 36, 656, 624, 855, 853, 690, 602, 901],
  [1, 0.25, 1100 / 25.4, 1000 / 25.4, 272, 285, 370, 374, 288, 255, 395],
  [1, 0.25, 18, 21, 54, 64, 75, 68, 63, 56, 87],
  [1, 0.25, 10, 10, 12, 12, 14, 14, 16, 16, 23],
  [1, 0.25, 5, 5, 2, 2, 3, 3, 4, 4, 5],
  [1, 0.25, 2.5, 42, 0, 16, 11, 0, 18, 16, 24],
  [1, 0.375, 42, 36, 196, 192, 256, 266, 208, 195, 283],
] as const;

const OTHERS = [
  // shape, edge, width, length, strips across, lengthwise, ceiling
  ['diamond', 1, 42, 36, 676, 660, 701],
  ['diamond', 2, 18, 21, 54, 56, 65],
  ['diamond', 1.5, 42, 2.5, 19, 0, 28],
  ['diamond', 1, 10, 10, 35, 35, 46],
  ['triangle', 2, 42, 36, 392, 384, 425],
  ['triangle', 1.5, 18, 21, 140, 128, 155],
  ['square', 2, 42, 36, 224, 224, 241],
  ['half-hexagon', 1.5, 42, 36, 280, 276, 297],
  ['square', 1.5, 10, 10, 25, 25, 25],
] as const;

describe('hexagons from a piece of cloth', () => {
  test.each(HEXAGONS)(
    '%d in, %d in seam, from %d × %d',
    (edge, seam, width, length, flats, points, rows, columns, turned, squares, ceiling) => {
      const hexagon = patch('hexagon', edge, seam);
      const found = yieldFrom(hexagon, { width, length });
      const counts = (method: string, direction: string) =>
        found.plans
          .filter((plan) => plan.method === method && plan.direction === direction)
          .map((plan) => [plan.count, plan.rowHeight]);
      const flatToFlat = hexagon.cut.measures.flats!;
      const strips = counts('strips', 'across');
      expect(strips.find(([, height]) => Math.abs(height! - flatToFlat) < 1e-9)?.[0] ?? 0).toBe(flats);
      expect(strips.find(([, height]) => Math.abs(height! - flatToFlat) > 1e-9)?.[0] ?? 0).toBe(points);
      expect(counts('nested', 'across')[0]?.[0] ?? 0).toBe(rows);
      expect(counts('nested', 'lengthwise')[0]?.[0] ?? 0).toBe(columns);
      expect(found).toMatchObject({
        strips: Math.max(flats, points),
        nested: Math.max(rows, columns),
        turned,
        squares,
        ceiling,
      });
    },
  );
});

describe('other shapes from a piece of cloth', () => {
  test.each(OTHERS)('%s %d in from %d × %d', (shape, edge, width, length, across, lengthwise, ceiling) => {
    const found = yieldFrom(patch(shape, edge), { width, length });
    const count = (direction: string) => found.plans.find((plan) => plan.direction === direction)?.count ?? 0;
    expect(count('across')).toBe(across);
    expect(count('lengthwise')).toBe(lengthwise);
    expect(found).toMatchObject({ strips: Math.max(across, lengthwise), best: found.strips, ceiling });
    expect(found.nested ?? found.turned ?? found.squares).toBeUndefined();
  });
});

describe('the honeycomb is not always best', () => {
  test.each([
    [5, 4],
    [10, 16],
  ])('a %i-inch square gives %i one-inch hexagons, all turned by 15°', (side, most) => {
    const { best, bestPlan } = yieldFrom(patch('hexagon', 1), { width: side, length: side });
    expect(best).toBe(most);
    expect(faultsOf(bestPlan!)).toEqual(NO_FAULTS);
    expect(bestPlan!.placements().every(({ turnDegrees }) => Math.abs(turnDegrees % 30) > 14)).toBe(true);
  });
});

describe('squares for paper piecing', () => {
  test('are as wide as the blunt hexagon is from point to point', () => {
    expect(paperSquare(1.5, 0.375)).toBeCloseTo(
      patch('hexagon', 1.5, 0.375, 'blunt').cut.measures.corners!,
      9,
    );
  });

  test('hold the pointed 1-inch hexagon turned, but a ¾-inch one only with blunt corners', () => {
    const squares = (edge: number) =>
      yieldFrom(patch('hexagon', edge), { width: 42, length: 9 }).plans.find(
        ({ method }) => method === 'squares',
      )!;
    expect(squares(1).patch.cornerStyle).toBe('pointed');
    expect(squares(0.75).patch.cornerStyle).toBe('blunt');
    expect(faultsOf(squares(1))).toEqual(NO_FAULTS);
    expect(faultsOf(squares(0.75))).toEqual(NO_FAULTS);
  });

  test('never lend their count to a pointed patch that they cannot hold', () => {
    const hexagon = patch('hexagon', 0.25, 0.25);
    const { best, squares, bestPlan } = yieldFrom(hexagon, { width: 1, length: 1 });
    expect(squares).toBe(1);
    expect(best).toBe(0);
    expect(bestPlan).toBeUndefined();
  });
});
