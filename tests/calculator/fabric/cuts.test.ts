import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestPlan } from '../../../src/calculator/fabric/best-plan.ts';
import { cutsFor } from '../../../src/calculator/fabric/cuts.ts';
import { fewestCuts } from '../../../src/calculator/fabric/fewest.ts';
import type { CuttingPlan } from '../../../src/calculator/fabric/plan.ts';
import { planCuts } from '../../../src/calculator/fabric/plan-cuts.ts';
import { yieldFrom } from '../../../src/calculator/fabric/yield.ts';
import { laidOut } from './geometry.ts';
import { anyPatch, inches, patch } from './patches.ts';

const cloth = { width: 18, length: 21 };
const plans = (...ask: Parameters<typeof patch>) => yieldFrom(patch(...ask), cloth).plans;
const theOne = (all: readonly CuttingPlan[], method: string, direction: string) =>
  all.find((plan) => plan.method === method && plan.direction === direction)!;

describe('cuts counted by hand', () => {
  test('squares in a grid: a cut between each two columns and rows, and one at each end with cloth left', () => {
    // 2.5 in squares from 18 x 21 in: 7 across with ½ in left, 8 along with 1 in left.
    expect(planCuts(theOne(plans('square', 2), 'strips', 'across'))).toEqual({ straight: 7 + 8, traced: 0 });
    // From 20 x 20 in nothing is left.
    const even = yieldFrom(patch('square', 2), { width: 20, length: 20 }).plans[0]!;
    expect(planCuts(even)).toEqual({ straight: 7 + 7, traced: 0 });
    // With a margin both ends are cut as well.
    const within = yieldFrom(patch('square', 2), { width: 21, length: 21 }, { margin: 0.5 }).plans[0]!;
    expect(planCuts(within)).toEqual({ straight: 9 + 9, traced: 0 });
  });

  test('diamonds: the strips’ edges, and one more slanting cut in each strip than it has diamonds', () => {
    const plan = theOne(plans('diamond', 1), 'strips', 'across');
    expect([plan.rows, plan.perRow[0]]).toEqual([15, 10]);
    expect(planCuts(plan)).toEqual({ straight: 15 + 15 * 11, traced: 0 });
  });

  test('hexagons in strips: two slanting cuts through each point where two touch, and at both ends', () => {
    const plan = theOne(plans('hexagon', 1), 'strips', 'lengthwise');
    expect([plan.rows, plan.perRow[0]]).toEqual([8, 8]);
    expect(planCuts(plan)).toEqual({ straight: 8 + 8 * 2 * 9, traced: 0 });
  });

  test('one hexagon: a cut along each side that is not on the edge of the cloth', () => {
    const one = patch('hexagon', 1);
    const { flats = 0, corners = 0 } = one.cut.measures;
    const alone = yieldFrom(one, { width: corners, length: flats }).plans[0]!;
    expect(planCuts(alone)).toEqual({ straight: 4, traced: 0 });
  });

  test('a honeycomb is traced: each side once, though two share it', () => {
    // Three hexagons round a point: 18 sides, 3 of them shared; none reaches the edge of a large piece.
    const k = 1;
    const flats = Math.sqrt(3) * k;
    const centres = [
      [5, 5],
      [5 + flats, 5],
      [5 + flats / 2, 5 + 1.5 * k],
    ];
    const outlines = centres.map(([x = 0, y = 0]) =>
      [30, 90, 150, 210, 270, 330].map((angle) => ({
        x: x + k * Math.cos((angle * Math.PI) / 180),
        y: y + k * Math.sin((angle * Math.PI) / 180),
      })),
    );
    const { straight, traced } = cutsFor(outlines, 12, 12);
    // Lines along the outer upright sides, and those that slope away from the rest, go right across.
    expect(straight + traced).toBe(15);
    expect(traced).toBeGreaterThanOrEqual(9);
  });

  test('blunt squares are only cut apart; a pointed hexagon is then cut out of each', () => {
    const blunt = theOne(plans('hexagon', 1, 0.25, 'blunt'), 'squares', 'across');
    expect([blunt.rows, blunt.perRow[0]]).toEqual([8, 7]);
    expect(planCuts(blunt)).toEqual({ straight: 8 + 7, traced: 0 });
    const pointed = theOne(plans('hexagon', 0.75), 'squares', 'across');
    expect(pointed.patch.cornerStyle).toBe('blunt');
    const fits = theOne(plans('hexagon', 2), 'squares', 'across');
    expect(fits.patch.cornerStyle).toBe('pointed');
    // 4½ in squares: 4 across 18 in with nothing left, 4 along 21 in with some.
    expect(planCuts(fits)).toEqual({ straight: 3 + 4 + 16 * 6, traced: 0 });
  });

  test('arcs are traced', () => {
    const lens = [
      { x: 2, y: 2, bulge: 0.5 },
      { x: 4, y: 2, bulge: 0.5 },
    ];
    expect(cutsFor([lens], 6, 4)).toEqual({ straight: 0, traced: 2 });
    const halfRound = [
      { x: 2, y: 2 },
      { x: 4, y: 2, bulge: 1 },
    ];
    expect(cutsFor([halfRound], 6, 4)).toEqual({ straight: 1, traced: 1 });
  });
});

describe('large plans are carried on from a small part of them', () => {
  test('with the same count as when every patch is looked at', () => {
    const cases = fc.property(
      anyPatch,
      inches(6, 26),
      inches(6, 26),
      fc.constantFrom(0, 0.5),
      (piece, width, length, margin) => {
        for (const plan of yieldFrom(piece, { width, length }, { margin }).plans) {
          if (plan.method === 'squares' || plan.count > 400) continue;
          expect(planCuts(plan)).toEqual(cutsFor(laidOut(plan), width, length));
        }
      },
    );
    fc.assert(cases, { numRuns: 40 });
  });

  test('a million patches at once', () => {
    const plan = yieldFrom(patch('diamond', 1), { width: 42, length: 52_541 }).plans.find(
      (one) => one.method === 'strips' && one.direction === 'across',
    )!;
    expect(plan.rows).toBeGreaterThan(38_000);
    expect(planCuts(plan)).toEqual({ straight: plan.rows + plan.rows * 27, traced: 0 });
  });
});

describe('the best plan’s cuts', () => {
  test('are those of its parts and one between each two', () => {
    const plan = bestPlan(patch('rectangle', 1.5), { width: 18, length: 21 })!;
    expect(plan.blocks.length).toBeGreaterThan(1);
    const parts = plan.blocks.map(({ cut }) => (cut.as === 'lay' ? planCuts(cut.plan).straight : Number.NaN));
    expect(plan.cuts()).toEqual({
      straight: parts.reduce((sum, cuts) => sum + cuts, plan.blocks.length - 1),
      traced: 0,
    });
  });

  test('turn with the cloth', () => {
    const cases = fc.property(inches(4, 20), inches(4, 20), (width, length) => {
      const [one, other] = [
        yieldFrom(patch('half-hexagon', 1), { width, length }).plans,
        yieldFrom(patch('half-hexagon', 1), { width: length, length: width }).plans,
      ];
      for (const plan of one) {
        const turned = other.find(
          ({ method, direction, count, rowHeight }) =>
            method === plan.method &&
            direction !== plan.direction &&
            count === plan.count &&
            rowHeight === plan.rowHeight,
        )!;
        expect(planCuts(turned)).toEqual(planCuts(plan));
      }
    });
    fc.assert(cases, { numRuns: 30 });
  });
});

describe('the fewest cuts', () => {
  const of = (plan: CuttingPlan) => plan;

  test('strips for pointed hexagons, squares for blunt ones', () => {
    const pointed = plans('hexagon', 1).filter((plan) => plan.patch.cornerStyle === 'pointed');
    expect(fewestCuts(pointed, of)!.of.method).toBe('strips');
    expect(fewestCuts(plans('hexagon', 1, 0.25, 'blunt'), of)!.of.method).toBe('squares');
  });

  test('no plan that is cut straight takes clearly fewer for each patch', () => {
    const cases = fc.property(anyPatch, inches(5, 24), inches(5, 24), (piece, width, length) => {
      const { plans: all } = yieldFrom(piece, { width, length });
      const found = fewestCuts(all, of);
      if (!found) return;
      expect(found.cuts).toEqual(planCuts(found.of));
      const each = (plan: CuttingPlan) => planCuts(plan).straight / plan.count;
      for (const plan of all) {
        if (planCuts(plan).traced > 0 || (plan.method !== 'strips' && plan.method !== 'squares')) continue;
        expect((found.cuts.straight + found.cuts.traced) / found.of.count).toBeLessThanOrEqual(
          1.02 * each(plan) + 1e-9,
        );
      }
    });
    fc.assert(cases, { numRuns: 40 });
  });

  test('nothing from nothing', () => {
    expect(fewestCuts([], of)).toBeUndefined();
  });
});
