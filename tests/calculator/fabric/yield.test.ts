import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { doubleRows } from '../../../src/calculator/fabric/double-rows.ts';
import type { Lay } from '../../../src/calculator/fabric/lay.ts';
import { laysOf } from '../../../src/calculator/fabric/lays.ts';
import { nestedLays } from '../../../src/calculator/fabric/nested.ts';
import { planOf } from '../../../src/calculator/fabric/plan.ts';
import { yieldFrom } from '../../../src/calculator/fabric/yield.ts';
import { box } from '../../../src/calculator/shapes/extent.ts';
import { anyPatch, CURVED, inches, patch } from './patches.ts';

const side = inches(1, 60);
const METHODS = ['strips', 'nested', 'turned', 'squares', 'best', 'ceiling'] as const;

describe('yield', () => {
  test('never passes the ceiling', () => {
    fc.assert(
      fc.property(anyPatch, side, side, (piece, width, length) => {
        const { ceiling, best, plans } = yieldFrom(piece, { width, length });
        for (const plan of plans) expect(plan.count).toBeLessThanOrEqual(ceiling);
        expect(best).toBeLessThanOrEqual(ceiling);
      }),
    );
  });

  test('not even where every strip is a hair short and counts as full', () => {
    const square = patch('square', 2);
    const hair = 2.5 * 0.99e-9;
    const { best, ceiling } = yieldFrom(square, { width: 2.5 - hair, length: 2.5e6 - hair });
    expect(best).toBe(1_000_000);
    expect(ceiling).toBeGreaterThanOrEqual(best);
  });

  test('turning the cloth changes nothing but the direction', () => {
    fc.assert(
      fc.property(anyPatch, side, side, (piece, width, length) => {
        const upright = yieldFrom(piece, { width, length });
        const turned = yieldFrom(piece, { width: length, length: width });
        for (const method of METHODS) expect(turned[method]).toBe(upright[method]);
        for (const lay of laysOf(piece)) {
          const across = planOf(lay, 'across', { width, length });
          const lengthwise = planOf(lay, 'lengthwise', { width: length, length: width });
          expect(lengthwise.count).toBe(across.count);
          expect(lengthwise.perRow).toEqual(across.perRow);
        }
      }),
    );
  });

  test('more cloth never yields less', () => {
    const more = fc.oneof(
      fc.double({ min: 0, max: 5, noNaN: true }),
      fc.double({ min: 0, max: 1e-8, noNaN: true }),
    );
    fc.assert(
      fc.property(anyPatch, side, side, more, more, (piece, width, length, wider, longer) => {
        const some = yieldFrom(piece, { width, length });
        const larger = yieldFrom(piece, { width: width + wider, length: length + longer });
        for (const method of METHODS) expect(larger[method] ?? 0).toBeGreaterThanOrEqual(some[method] ?? 0);
      }),
    );
  });

  test('blunt corners never yield less than pointed ones', () => {
    fc.assert(
      fc.property(anyPatch, side, side, ({ shape, dimensions, seam }, width, length) => {
        const of = (corners: 'pointed' | 'blunt') =>
          yieldFrom(patch(shape, dimensions.edge, seam, corners), { width, length });
        for (const method of METHODS)
          expect(of('blunt')[method] ?? 0).toBeGreaterThanOrEqual(of('pointed')[method] ?? 0);
      }),
    );
  });

  test('a margin is the same as a smaller piece', () => {
    fc.assert(
      fc.property(anyPatch, side, side, inches(0, 2), (piece, width, length, margin) => {
        const within = yieldFrom(
          piece,
          { width: width + 2 * margin, length: length + 2 * margin },
          { margin },
        );
        const cut = yieldFrom(piece, { width, length });
        // The sum loses a last digit, so the counts may differ only where the piece fits to a hair.
        const less = yieldFrom(piece, { width: width - 1e-7, length: length - 1e-7 });
        for (const method of METHODS) {
          expect(within[method] ?? 0).toBeGreaterThanOrEqual(less[method] ?? 0);
          expect(within[method] ?? 0).toBeLessThanOrEqual(cut[method] ?? 0);
        }
      }),
    );
  });

  test('a patch larger than the cloth, or a margin that eats it, gives none', () => {
    const none = { strips: 0, nested: 0, turned: 0, squares: 0, best: 0, plans: [] };
    expect(yieldFrom(patch('hexagon', 10), { width: 5, length: 5 })).toMatchObject(none);
    const eaten = yieldFrom(patch('hexagon', 1), { width: 5, length: 5 }, { margin: 3 });
    expect(eaten).toMatchObject({ ...none, ceiling: 0 });
    expect(eaten.bestPlan).toBeUndefined();
  });

  test('whole numbers survive rounding: 5 in holds two squares of 2½', () => {
    expect(yieldFrom(patch('square', 2.2, 0.15), { width: 5, length: 5 }).strips).toBe(4);
    const hexagon = patch('hexagon', 1);
    const tenFlats = 10 * hexagon.cut.measures.flats!;
    expect(yieldFrom(hexagon, { width: tenFlats, length: hexagon.cut.measures.corners! }).nested).toBe(10);
  });
});

describe('kites, thirds and flat-to-flat halves', () => {
  const cloth = { width: 42, length: 36 };
  test.each([
    ['kite', 0.9],
    ['third', 0.8],
    ['half-hexagon-flats', 0.93],
  ] as const)('%s reach into each other: far more than their boxes, %d of the ceiling', (shape, share) => {
    const piece = patch(shape, 2);
    const { width, height } = box(piece.cut.outline);
    const { best, ceiling } = yieldFrom(piece, cloth);
    expect(best).toBeGreaterThan(1.15 * Math.floor(cloth.width / width) * Math.floor(cloth.length / height));
    expect(best / ceiling).toBeGreaterThan(share);
  });

  test.each([
    ['kite', 1],
    ['half-hexagon-flats', 1],
    ['third', 0.85],
  ] as const)('the double row of %s covers %d of an endless cloth', (shape, share) => {
    const piece = patch(shape, 1);
    const covers = nestedLays(piece).map(({ rows, stack }) => {
      const cell = rows[0].patches.steps[0] * (stack.steps[0] + stack.steps[1]);
      return (2 * piece.cut.area) / cell;
    });
    expect(Math.max(...covers)).toBeGreaterThan(share - 1e-9);
    expect(Math.max(...covers)).toBeLessThan(1 + 1e-9);
  });

  // The densest packing of equal pentagons, (5 − √5)/3, is proved (arXiv 1602.07220, abstract). The densest known
  // one of octagons, a lattice, has each slide into the notch between two below (0.9062, from memory).
  test.each([
    ['octagon', (4 + 4 * Math.SQRT2) / (5 + 4 * Math.SQRT2)],
    ['pentagon', (5 - Math.sqrt(5)) / 3],
    ['long-hexagon', 1],
  ] as const)('the double row of %s covers as much as is known to be possible, %d', (shape, share) => {
    const [lay] = nestedLays(patch(shape, 1));
    const cell = lay!.rows[0].patches.steps[0] * (lay!.stack.steps[0] + lay!.stack.steps[1]);
    expect((2 * lay!.patch.cut.area) / cell).toBeCloseTo(share, 9);
  });

  test('the double row finds the honeycomb too', () => {
    const hexagon = patch('hexagon', 1);
    const [honeycomb] = nestedLays(hexagon);
    const found = doubleRows(hexagon, hexagon.cut.outline, 90);
    expect(found.rows[0].patches.steps[0]).toBeCloseTo(honeycomb!.rows[0].patches.steps[0], 9);
    expect(found.rows[1].lead).toBeCloseTo(honeycomb!.rows[1].lead, 9);
    expect(found.stack.size).toBeCloseTo(honeycomb!.stack.size, 9);
    for (const step of found.stack.steps) expect(step).toBeCloseTo(honeycomb!.stack.steps[0], 9);
  });
});

describe('clamshells and apple-cores', () => {
  const cover = ({ rows, stack, patch: piece }: Lay) =>
    (2 * piece.cut.area) / (rows[0].patches.steps[0] * (stack.steps[0] + stack.steps[1]));

  test('fill the cloth where there is no seam, as they do when sewn', () => {
    for (const shape of CURVED)
      for (const lay of nestedLays(patch(shape, 3, 0))) {
        // Without a seam a shell's rims are upright where they meet, and a hair along is much more than one up.
        expect(cover(lay)).toBeGreaterThan(0.9997);
        expect(cover(lay)).toBeLessThan(1 + 1e-9);
      }
  });

  test.each([
    [1, 0.25],
    [1.5, 0.25],
    [3, 0.375],
  ])('scales of radius %d, seam %d: cusp and rims rest on the shells below at once', (r, s) => {
    const lays = nestedLays(patch('clamshell', 2 * r, s));
    const { rows, stack } = lays.at(-1)!;
    const step = rows[0].patches.steps[0];
    expect(step).toBeCloseTo(r + Math.sqrt(2 * (r + 2 * s) ** 2 - r ** 2), 12);
    expect(stack.steps[0]).toBeCloseTo(step / 2, 9);
    // From the middle of a shell to the cusp above and to the rim above, an allowance beyond its edge and theirs.
    for (const [x, y] of [
      [step / 2, stack.steps[0] - r],
      [step / 2 - r, stack.steps[0]],
    ] as const)
      expect(Math.hypot(x, y)).toBeCloseTo(r + 2 * s, 9);
    // No other step along the row takes less cloth.
    for (const lay of lays) expect(cover(lay)).toBeLessThanOrEqual(cover(lays.at(-1)!) + 1e-12);
    expect(cover(lays.at(-1)!)).toBeGreaterThan(0.9);
  });

  test('give more than their boxes do', () => {
    for (const shape of CURVED) {
      const { strips, nested, best, ceiling } = yieldFrom(patch(shape, 3), { width: 42, length: 36 });
      expect(nested).toBeGreaterThan(1.15 * strips);
      expect(best).toBe(nested);
      expect(best / ceiling).toBeGreaterThan(0.78);
    }
  });
});
