import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { yieldFrom } from '../../../src/calculator/fabric/yield.ts';
import { CATALOGUE } from '../../../src/calculator/shapes/catalogue.ts';
import type { ShapeName } from '../../../src/calculator/shapes/shape.ts';
import { faultsOf, NO_FAULTS, shareAmissByClipper } from './geometry.ts';
import { anyCurvedPatch, anyPatch, CORNERS, inches, patch, SHAPES } from './patches.ts';

const isCurved = (shape: ShapeName): boolean => CATALOGUE[shape].corners === 'rounded';
/** A shape with arcs has its corners rounded, whatever is asked. */
const cases = SHAPES.flatMap((shape) =>
  (isCurved(shape) ? (['pointed'] as const) : CORNERS).map((corners) => [shape, corners] as const),
);

describe('every plan can be cut: nothing overlaps, nothing leaves the cloth, nothing is missing', () => {
  test.each(cases)('%s, %s corners', (shape, corners) => {
    const plans = [
      ...yieldFrom(patch(shape, 1, 0.25, corners), { width: 18, length: 21 }).plans,
      ...yieldFrom(patch(shape, 0.8, 0.3, corners), { width: 13.3, length: 11.7 }, { margin: 0.4 }).plans,
    ];
    expect(plans.length).toBeGreaterThanOrEqual(3);
    for (const plan of plans) {
      expect(faultsOf(plan)).toEqual(NO_FAULTS);
      // Arcs are walked in straight steps, which cut a hair's breadth off where two of them touch.
      expect(Math.abs(shareAmissByClipper(plan))).toBeLessThan(isCurved(shape) ? 1e-3 : 5e-6);
    }
  });

  test('for any patch, cloth and margin', () => {
    fc.assert(
      fc.property(
        anyPatch,
        inches(1, 24),
        inches(1, 24),
        fc.constantFrom(0, 0.5),
        (piece, width, length, margin) => {
          for (const plan of yieldFrom(piece, { width, length }, { margin }).plans)
            expect(faultsOf(plan)).toEqual(NO_FAULTS);
        },
      ),
      { numRuns: 150 },
    );
  });
});

test('for any patch with arcs', () => {
  fc.assert(
    fc.property(anyCurvedPatch, inches(2, 16), inches(2, 16), (piece, width, length) => {
      for (const plan of yieldFrom(piece, { width, length }).plans) expect(faultsOf(plan)).toEqual(NO_FAULTS);
    }),
    { numRuns: 25 },
  );
});

describe('a plan says how it is cut', () => {
  test('diamonds: 26 strips of 26, cut at 60°', () => {
    const { bestPlan } = yieldFrom(patch('diamond', 1), { width: 42, length: 36 });
    expect(bestPlan).toMatchObject({ method: 'strips', direction: 'across', rows: 26, perRow: [26, 26] });
    expect(bestPlan!.rowHeight).toBeCloseTo(1.366, 4);
    expect(bestPlan!.cutAngles).toEqual([60]);
  });

  test('nested hexagons: long and short rows, closer than they are high', () => {
    const plans = yieldFrom(patch('hexagon', 1), { width: 18, length: 21 }).plans;
    const nested = plans.find(({ method }) => method === 'nested')!;
    expect(nested).toMatchObject({ direction: 'across', rows: 10, perRow: [8, 7], count: 75, cutAngles: [] });
    expect(nested.rowHeight).toBeCloseTo(2.5774, 4);
    expect(nested.rowSteps[0]).toBeCloseTo(1.933, 4);
    expect(nested.taken.width).toBeCloseTo(8 * 2.2321, 3);
    expect(nested.taken.length).toBeCloseTo(2.5774 + 9 * 1.933, 3);
  });
});
