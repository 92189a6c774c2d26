import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { purchase } from '../../../src/calculator/fabric/purchase.ts';
import { type Yardage, yardage } from '../../../src/calculator/fabric/yardage.ts';
import { yieldFrom } from '../../../src/calculator/fabric/yield.ts';
import type { CutPatch, ShapeName } from '../../../src/calculator/shapes/shape.ts';
import { faultsOf, NO_FAULTS } from './geometry.ts';
import { anyPatch, inches, patch } from './patches.ts';

function needed(...ask: Parameters<typeof yardage>): Yardage {
  const found = yardage(...ask);
  if (!found.ok) throw new Error(found.problem.code);
  return found.value;
}

describe('worked beforehand', () => {
  const inYards = (inches: number) => purchase(inches, 'yard').amount;
  test.each([
    // pieces, edge, width, strips, in yards, nested, in yards
    [240, 1, 42, 33.48, 1, 26.78, 0.75],
    [240, 1, 40, 35.71, 1, 27.9, 0.875],
    [500, 0.75, 42, 44.98, 1.25, 35.98, 1],
    [100, 1.5, 40, 30.98, 0.875, 24.785, 0.75],
  ])('%d hexagons of %d in at %d', (pieces, edge, width, strips, stripYards, nested, nestedYards) => {
    const found = needed(patch('hexagon', edge), pieces, width);
    expect(found.strips!.length).toBeCloseTo(strips, 2);
    expect(found.nested!.length).toBeCloseTo(nested, 2);
    expect(inYards(found.strips!.length)).toBe(stripYards);
    expect(inYards(found.nested!.length)).toBe(nestedYards);
    expect(found.best).toBe(found.nested);
  });

  test('240 of 1 in at 42 from blunt squares: 37½ in, 1⅛ yd', () => {
    const { squares } = needed(patch('hexagon', 1), 240, 42);
    expect(squares!.length).toBeCloseTo(37.5, 9);
    expect(inYards(squares!.length)).toBe(1.125);
    expect(squares!.list).toEqual({ rows: 15, perRow: [16, 16], lastRow: 16 });
  });

  test.each([
    // shape, edge, pieces, width, per strip, strips, in the last, length, yards
    ['diamond', 2, 300, 40, 15, 20, 15, 44.64, 1.25],
    ['diamond', 1, 96, 42, 26, 4, 18, 5.46, 0.25],
    ['triangle', 3, 100, 42, 20, 5, 20, 16.74, 0.5],
    ['half-hexagon', 1.25, 49, 42, 16, 4, 1, 6.33, 0.25],
  ] as const)('%s of %d in, %d at %d', (shape, edge, pieces, width, each, rows, lastRow, length, yards) => {
    const { strips, best } = needed(patch(shape as ShapeName, edge), pieces, width);
    expect(strips!.list).toEqual({ rows, perRow: [each, each], lastRow });
    expect(strips!.length).toBeCloseTo(length, 2);
    expect(inYards(strips!.length)).toBe(yards);
    expect(best.length).toBeLessThanOrEqual(strips!.length);
  });
});

describe('yardage', () => {
  const ask = [anyPatch, fc.integer({ min: 1, max: 800 }), inches(8, 60)] as const;
  const bestFrom = (piece: CutPatch, width: number, length: number) =>
    yieldFrom(piece, { width, length }).best;

  test('is enough, and a hair less is not', () => {
    fc.assert(
      fc.property(...ask, (piece, pieces, width) => {
        const { best } = needed(piece, pieces, width);
        expect(bestFrom(piece, width, best.length)).toBeGreaterThanOrEqual(pieces);
        expect(bestFrom(piece, width, best.length - 1e-6)).toBeLessThan(pieces);
      }),
    );
  });

  test('holds for each way of its own too', () => {
    fc.assert(
      fc.property(...ask, (piece, pieces, width) => {
        for (const { method, direction, plan, length } of needed(piece, pieces, width).ways) {
          const same = (cloth: number) =>
            yieldFrom(piece, { width, length: cloth }).plans.filter(
              (other) =>
                other.method === method &&
                other.direction === direction &&
                other.rowHeight === plan.rowHeight,
            );
          expect(plan.count).toBeGreaterThanOrEqual(pieces);
          expect(plan.taken.length).toBeCloseTo(length, 6);
          expect(Math.min(...same(length - 1e-6).map(({ count }) => count), pieces - 1)).toBeLessThan(pieces);
        }
      }),
    );
  });

  test('lists the rows that hold the pieces, the last one no fuller than it can be', () => {
    fc.assert(
      fc.property(...ask, (piece, pieces, width) => {
        for (const { list, plan } of needed(piece, pieces, width).ways) {
          const full = Array.from({ length: list.rows - 1 }, (_, row) => list.perRow[row % 2]!);
          expect(full.reduce((sum, row) => sum + row, 0) + list.lastRow).toBe(pieces);
          expect(list.lastRow).toBeGreaterThan(0);
          expect(list.lastRow).toBeLessThanOrEqual(list.perRow[(list.rows - 1) % 2]!);
          expect(list.rows).toBeLessThanOrEqual(plan.rows);
        }
      }),
    );
  });

  test('more pieces never need less, more width never needs more', () => {
    fc.assert(
      fc.property(
        ...ask,
        fc.integer({ min: 0, max: 50 }),
        inches(0, 5),
        (piece, pieces, width, extra, wider) => {
          const { length } = needed(piece, pieces, width).best;
          expect(needed(piece, pieces + extra, width).best.length).toBeGreaterThanOrEqual(length - 1e-9);
          expect(needed(piece, pieces, width + wider).best.length).toBeLessThanOrEqual(length + 1e-9);
        },
      ),
    );
  });

  test('its plans can be cut', () => {
    for (const shape of ['hexagon', 'kite', 'half-hexagon'] as const)
      for (const { plan } of needed(patch(shape, 1), 60, 21).ways) expect(faultsOf(plan)).toEqual(NO_FAULTS);
  });

  test('spare patches are counted in, rounded up; shrinking cloth is bought longer', () => {
    const plain = needed(patch('hexagon', 1), 110, 42);
    const found = needed(patch('hexagon', 1), 100, 42, { spare: 0.1, shrink: 0.04 });
    expect(found.pieces).toBe(110);
    expect(needed(patch('hexagon', 1), 101, 42, { spare: 0.1 }).pieces).toBe(112);
    expect(found.best.length).toBe(plain.best.length);
    expect(found.best.buy).toBeCloseTo(plain.best.length / 0.96, 9);
    expect(plain.best.buy).toBe(plain.best.length);
  });

  test('lengthwise strips may need less than strips across', () => {
    const { strips, lengthwise, best } = needed(patch('half-hexagon', 1.25), 49, 42);
    expect(lengthwise!.direction).toBe('lengthwise');
    expect(best.length).toBe(Math.min(strips!.length, lengthwise!.length));
  });

  test('a patch wider than the cloth is said to be', () => {
    const hexagon = patch('hexagon', 30);
    expect(yardage(hexagon, 10, 42)).toEqual({
      ok: false,
      problem: {
        code: 'patch-wider-than-cloth',
        shape: 'hexagon',
        width: 42,
        needs: expect.closeTo(hexagon.cut.measures.flats!, 9),
      },
    });
    expect(yardage(hexagon, 10, hexagon.cut.measures.flats!).ok).toBe(true);
  });
});
