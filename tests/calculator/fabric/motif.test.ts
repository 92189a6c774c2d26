import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { motifLength, motifYield } from '../../../src/calculator/fabric/motif.ts';
import { faultsOf, laidOut, NO_FAULTS } from './geometry.ts';
import { anyPatch, inches, patch } from './patches.ts';

const cloth = { width: 42, length: 36 };

describe('patches round motifs', () => {
  test('a small hexagon round every motif: 10 across and 7 down, by hand', () => {
    // 42 / 4 = 10 whole motifs across, 36 / 5 = 7 down. A hexagon of 2.58 x 2.23 in lies within each.
    const found = motifYield(patch('hexagon', 1), cloth, { width: 4, height: 5 });
    expect(found).toMatchObject({ motifs: 70, count: 70, every: true });
    // Begun anywhere: (42 − 2.58) / 4 = 9 across at least, (36 − 2.23) / 5 = 6 down.
    expect(found.anyhow).toBe(54);
  });

  test('a motif that is not whole serves where its middle is there', () => {
    // The eleventh motif's middle is at 42 in, so no patch; at 43.3 in it is 1.3 in from the edge.
    const wider = motifYield(patch('hexagon', 1), { width: 43.3, length: 36 }, { width: 4, height: 5 });
    expect(wider).toMatchObject({ motifs: 70, count: 77 });
  });

  test('patches larger than the repeat leave motifs out: every second one, as on a draughts board', () => {
    // Cut 2.5 in square on a repeat of 2 x 2 in: neighbours overlap, and so do those across corners. The first
    // and last motifs are too near the edge, so of 8 x 8 every second one each way.
    const square = motifYield(patch('square', 2), { width: 20, length: 20 }, { width: 2, height: 2 });
    expect(square).toMatchObject({ motifs: 100, every: false });
    expect(square.count).toBe(16);
    // A hexagon 2.58 in wide and 2.23 in high on 2 x 2 in: corners do not meet, so half of 8 x 8 serve.
    const hexagon = motifYield(patch('hexagon', 1), { width: 20, length: 20 }, { width: 2, height: 2 });
    expect(hexagon.count).toBe(32);
  });

  test('every patch lies on the cloth with a motif in its middle, and none overlaps another', () => {
    const cases = fc.property(
      anyPatch,
      inches(1, 8),
      inches(1, 8),
      inches(4, 24),
      inches(4, 24),
      fc.constantFrom(0, 0.25),
      (piece, across, high, width, length, margin) => {
        const repeat = { width: across, height: high };
        const found = motifYield(piece, { width, length }, repeat, { margin });
        const plan = { ...found, patch: piece, cloth: { width, length }, margin };
        expect(faultsOf(plan)).toEqual(NO_FAULTS);
        expect(found.anyhow).toBeLessThanOrEqual(found.count);
        for (const corners of laidOut(plan)) {
          const middle = balance(corners);
          expect((middle.x / across) % 1).toBeCloseTo(0.5, 6);
          expect((middle.y / high) % 1).toBeCloseTo(0.5, 6);
        }
      },
    );
    fc.assert(cases, { numRuns: 150 });
  });

  test('the least length is enough, and a hair less is not', () => {
    const cases = fc.property(
      anyPatch,
      inches(1, 6),
      inches(1, 6),
      inches(8, 44),
      fc.integer({ min: 1, max: 120 }),
      (piece, across, high, width, pieces) => {
        const repeat = { width: across, height: high };
        const found = motifLength(piece, pieces, width, repeat);
        const on = (length: number) => motifYield(piece, { width, length }, repeat);
        if (!found) {
          expect(on(1000).count).toBe(0);
          return;
        }
        expect(on(found.length).count).toBeGreaterThanOrEqual(pieces);
        expect(on(found.length - 1e-6).count).toBeLessThan(pieces);
        if (Number.isFinite(found.anyhow)) expect(on(found.anyhow).anyhow).toBeGreaterThanOrEqual(pieces);
      },
    );
    fc.assert(cases, { numRuns: 150 });
  });

  test('patches far larger than the repeat are still told', () => {
    const found = motifYield(patch('hexagon', 12), cloth, { width: 0.5, height: 0.5 });
    expect(found.count).toBeGreaterThan(0);
  });
});

/** The centre of gravity, by triangles from the first corner. */
function balance(corners: readonly { x: number; y: number }[]) {
  const [first] = corners;
  let [x, y, area] = [0, 0, 0];
  for (let i = 1; i + 1 < corners.length; i++) {
    const [b, c] = [corners[i]!, corners[i + 1]!];
    const twice = (b.x - first!.x) * (c.y - first!.y) - (b.y - first!.y) * (c.x - first!.x);
    x += ((first!.x + b.x + c.x) / 3) * twice;
    y += ((first!.y + b.y + c.y) / 3) * twice;
    area += twice;
  }
  return { x: x / area, y: y / area };
}
