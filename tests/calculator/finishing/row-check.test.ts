import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkRow, type RowAsk, rowsOf } from '../../../src/calculator/finishing/row-check.ts';
import { cutPatch } from '../../../src/calculator/shapes/cut.ts';

const row = (change: Partial<RowAsk> = {}) =>
  checkRow({
    shape: 'hexagon',
    along: 'flats',
    ends: 'sewn',
    row: 20,
    measured: 33.75,
    edge: 1,
    seam: 0.25,
    ...change,
  })!;

test('twenty 1 in hexagons, flat to flat, that came out 33 3/4', () => {
  expect(row().expected).toBeCloseTo(20 * Math.sqrt(3), 9);
  expect(row().error).toBeCloseTo(-0.891, 3);
  expect(row().perPatch).toBeCloseTo(-0.0446, 4);
  expect(row().seamError).toBeCloseTo(0.0223, 4);
  expect(row().seamTaken).toBeCloseTo(0.2723, 4);
  expect(row().miscounted).toBe(0);
});

test('1/32 in a patch over 20 patches is 5/8 in', () => {
  const expected = row().expected;
  const checked = row({ measured: expected - 5 / 8 });
  expect(checked.perPatch).toBeCloseTo(-1 / 32, 9);
  // Two sides of each patch are sewn: half of it a seam.
  expect(checked.seamError).toBeCloseTo(1 / 64, 9);
});

test('the other way: 1½ sides a row and half a side', () => {
  expect(row({ along: 'corners' }).expected).toBe(30.5);
});

test('a row that is one patch short says so', () => {
  const { expected } = row();
  expect(row({ measured: expected - Math.sqrt(3) }).miscounted).toBe(-1);
  expect(row({ measured: expected + 2 * Math.sqrt(3) - 0.1 }).miscounted).toBe(2);
});

/**
 * The same row made anew with patches cut as planned and sewn e too deep, by the offset that /cut uses: what
 * is measured then must give e back.
 */
describe('a seam sewn too deep is found again', () => {
  const shapes = ['hexagon', 'diamond', 'triangle', 'square'] as const;
  test.each(shapes.flatMap((shape) => rowsOf(shape).map((along) => [shape, along] as const)))(
    '%s, %s',
    (shape, along) => {
      fc.assert(
        fc.property(
          fc.integer({ min: 2, max: 40 }),
          fc.double({ min: 0.5, max: 4, noNaN: true }),
          fc.double({ min: -0.03, max: 0.03, noNaN: true }),
          fc.constantFrom('sewn', 'raw'),
          (n, edge, e, ends) => {
            const seam = 0.25;
            const cut = cutPatch(shape, { edge }, seam, 'pointed').cut.measures.edge!;
            const perSeam = cutPatch(shape, { edge: 1 }, 1, 'pointed').cut.measures.edge! - 1;
            const sewnEdge = cut - perSeam * (seam + e);
            const as = (side: number, s: number) =>
              row({ shape, along, ends, row: n, edge: side, seam: s, measured: 1 }).expected;
            const checked = row({ shape, along, ends, row: n, edge, seam, measured: as(sewnEdge, seam + e) });
            expect(checked.seamError).toBeCloseTo(e, 8);
            expect(checked.edgeSewn).toBeCloseTo(sewnEdge, 8);
          },
        ),
        { numRuns: 40 },
      );
    },
  );
});

test('a shape that makes no plain row cannot be checked', () => {
  expect(
    checkRow({ shape: 'kite', along: 'flats', ends: 'sewn', row: 5, measured: 9, edge: 1, seam: 0.25 }),
  ).toBeUndefined();
  expect(rowsOf('kite')).toEqual([]);
});
