import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestLength } from '../../../src/calculator/fabric/best-length.ts';
import { bestPlan } from '../../../src/calculator/fabric/best-plan.ts';
import { purchase } from '../../../src/calculator/fabric/purchase.ts';
import { yardage } from '../../../src/calculator/fabric/yardage.ts';
import { yieldFrom } from '../../../src/calculator/fabric/yield.ts';
import { cutPatch } from '../../../src/calculator/shapes/cut.ts';
import type { CutPatch } from '../../../src/calculator/shapes/shape.ts';
import { faultsOf, NO_FAULTS, shareAmissByClipper } from './geometry.ts';
import { anyPatch, CORNERS, inches, patch, SHAPES } from './patches.ts';

const some = SHAPES.flatMap((shape) => [patch(shape, 1), patch(shape, 1.7, 0.375)]);
/** Worked out once each, so that many pieces of cloth can be tried. */
const somePatch = fc.constantFrom(...some, patch('hexagon', 0.5, 0), patch('third', 1, 0.25, 'blunt'));
const side = inches(1, 40);
const best = (piece: CutPatch, width: number, length: number, margin = 0) =>
  bestPlan(piece, { width, length }, { margin })?.count ?? 0;

describe('the best plan', () => {
  test('can be cut: nothing overlaps, nothing leaves the cloth, nothing is missing', () => {
    const cases = fc.property(
      somePatch,
      inches(1, 22),
      inches(1, 22),
      fc.constantFrom(0, 0.5),
      (piece, width, length, margin) => {
        const plan = bestPlan(piece, { width, length }, { margin });
        if (plan) expect(faultsOf(plan)).toEqual(NO_FAULTS);
      },
    );
    fc.assert(cases, { numRuns: 90 });
  });

  test('for any patch at all', () => {
    const cases = fc.property(anyPatch, inches(1, 16), inches(1, 16), (piece, width, length) => {
      const plan = bestPlan(piece, { width, length });
      const { best: trade, ceiling } = yieldFrom(piece, { width, length });
      expect(plan?.count ?? 0).toBeGreaterThanOrEqual(trade);
      expect(plan?.count ?? 0).toBeLessThanOrEqual(ceiling);
      if (plan) expect(faultsOf(plan)).toEqual(NO_FAULTS);
    });
    fc.assert(cases, { numRuns: 40 });
  });

  test.each(SHAPES.map((shape) => [shape]))('%s, by an independent polygon library', (shape) => {
    for (const corners of CORNERS) {
      const plan = bestPlan(patch(shape, 1, 0.25, corners), { width: 13.3, length: 11.7 }, { margin: 0.4 })!;
      expect(faultsOf(plan)).toEqual(NO_FAULTS);
      expect(shareAmissByClipper(plan)).toBeCloseTo(0, 5);
    }
  });

  test('is never worse than any way of the trade, and never above the ceiling', () => {
    const cases = fc.property(somePatch, side, side, (piece, width, length) => {
      const { best: trade, ceiling } = yieldFrom(piece, { width, length });
      const found = best(piece, width, length);
      expect(found).toBeGreaterThanOrEqual(trade);
      expect(found).toBeLessThanOrEqual(ceiling);
    });
    fc.assert(cases, { numRuns: 90 });
  });

  test('turning the cloth changes nothing but the direction', () => {
    const cases = fc.property(somePatch, side, side, (piece, width, length) => {
      expect(best(piece, length, width)).toBe(best(piece, width, length));
    });
    fc.assert(cases, { numRuns: 90 });
  });

  test('more cloth never yields less', () => {
    const more = fc.oneof(
      fc.double({ min: 0, max: 4, noNaN: true }),
      fc.double({ min: 0, max: 1e-8, noNaN: true }),
      fc.constant(0),
    );
    const cases = fc.property(somePatch, side, side, more, more, (piece, width, length, wider, longer) => {
      expect(best(piece, width + wider, length + longer)).toBeGreaterThanOrEqual(best(piece, width, length));
    });
    fc.assert(cases, { numRuns: 150 });
  });

  test('not even where the cloth becomes too long to be searched throughout', () => {
    const piece = patch('hexagon', 1);
    const far = 60 * piece.cut.measures.width!;
    for (const width of [5, 10, 23.4])
      for (const more of [1e-6, 0.5, 3, 40])
        expect(best(piece, width, far + more)).toBeGreaterThanOrEqual(best(piece, width, far));
  });

  test('blunt corners never yield less than pointed ones', () => {
    const blunt = new Map(
      some.map((piece) => [piece, cutPatch(piece.shape, piece.dimensions, piece.seam, 'blunt')]),
    );
    const cases = fc.property(fc.constantFrom(...some), side, side, (piece, width, length) => {
      expect(best(blunt.get(piece)!, width, length)).toBeGreaterThanOrEqual(best(piece, width, length));
    });
    fc.assert(cases, { numRuns: 50 });
  });

  test('a margin is the same as a smaller piece', () => {
    const cases = fc.property(somePatch, side, side, inches(0, 2), (piece, width, length, margin) => {
      const within = best(piece, width + 2 * margin, length + 2 * margin, margin);
      // The sum loses a last digit, so the counts may differ only where the piece fits to a hair.
      expect(within).toBeGreaterThanOrEqual(best(piece, width - 1e-7, length - 1e-7));
      expect(within).toBeLessThanOrEqual(best(piece, width, length));
    });
    fc.assert(cases, { numRuns: 50 });
  });

  test('a patch larger than the cloth gives none', () => {
    expect(bestPlan(patch('hexagon', 10), { width: 5, length: 5 })).toBeUndefined();
    expect(bestPlan(patch('hexagon', 1), { width: 5, length: 5 }, { margin: 3 })).toBeUndefined();
  });

  test('where a piece comes out even it reaches the ceiling', () => {
    // 261 rectangles of 2 x 2¾ in: 40 x 36 in by their area, if the last scrap is used as well.
    const rectangle = cutPatch('rectangle', { edge: 1.5, side: 2.25 }, 0.25, 'pointed');
    expect(best(rectangle, 40, 36)).toBe(yieldFrom(rectangle, { width: 40, length: 36 }).ceiling);
  });
});

describe('the least length', () => {
  const needed = (piece: CutPatch, pieces: number, width: number) => {
    const trade = yardage(piece, pieces, width);
    if (!trade.ok) return undefined;
    return { trade: trade.value.best.length, ...bestLength(piece, pieces, width)! };
  };

  test('is enough, and a hair less is not; never longer than the trade’s', () => {
    const cases = fc.property(
      somePatch,
      fc.integer({ min: 1, max: 300 }),
      inches(5, 44),
      (piece, pieces, width) => {
        const found = needed(piece, pieces, width);
        if (!found) return;
        expect(found.length).toBeLessThanOrEqual(found.trade);
        expect(best(piece, width, found.length)).toBeGreaterThanOrEqual(pieces);
        expect(best(piece, width, found.length - 1e-6)).toBeLessThan(pieces);
        expect(found.plan.count).toBeGreaterThanOrEqual(pieces);
        expect(found.plan.cloth.length).toBe(found.length);
      },
    );
    fc.assert(cases, { numRuns: 40 });
  });

  test('that comes to a shop’s mark is on it, and bought as that', () => {
    // 2 x 2¾ in rectangles at 42 in: strips of both kinds stack to 31½ in, seven eighths of a yard.
    const rectangle = cutPatch('rectangle', { edge: 1.5, side: 2.25 }, 0.25, 'pointed');
    const { length } = needed(rectangle, 240, 42)!;
    expect(length).toBe(31.5);
    expect(purchase(length, 'yard').amount).toBe(0.875);
  });

  test.each([
    [4_000, 'hexagon'],
    [1_000_000, 'hexagon'],
    [1_000_000, 'third'],
  ] as const)('of %d %ss too', (pieces, shape) => {
    const piece = patch(shape, 1);
    const { length } = needed(piece, pieces, 42)!;
    expect(best(piece, 42, length)).toBeGreaterThanOrEqual(pieces);
    expect(best(piece, 42, length - 1e-6)).toBeLessThan(pieces);
  });

  test('more pieces never need less, more width never needs more', () => {
    const cases = fc.property(
      somePatch,
      fc.integer({ min: 1, max: 150 }),
      inches(6, 30),
      fc.integer({ min: 0, max: 20 }),
      inches(0, 3),
      (piece, pieces, width, extra, wider) => {
        const found = needed(piece, pieces, width);
        if (!found) return;
        expect(needed(piece, pieces + extra, width)!.length).toBeGreaterThanOrEqual(found.length - 1e-6);
        expect(needed(piece, pieces, width + wider)!.length).toBeLessThanOrEqual(found.length + 1e-6);
      },
    );
    fc.assert(cases, { numRuns: 25 });
  });

  test('its plan can be cut', () => {
    for (const shape of SHAPES) expect(faultsOf(needed(patch(shape, 1), 60, 21)!.plan)).toEqual(NO_FAULTS);
  });
});
