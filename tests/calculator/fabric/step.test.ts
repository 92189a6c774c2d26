import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { endsOf } from '../../../src/calculator/fabric/ends.ts';
import { lieOf } from '../../../src/calculator/fabric/lie.ts';
import { stepBetween } from '../../../src/calculator/fabric/step.ts';
import { stripLays } from '../../../src/calculator/fabric/strips.ts';
import type { Outline } from '../../../src/calculator/shapes/outline.ts';
import { chordAtHalfHeight, overlap } from './geometry.ts';
import { anyPatch, patch } from './patches.ts';

const moved = (outline: Outline, x: number) => outline.map((corner) => ({ x: corner.x + x, y: corner.y }));

test('at the tightest step the patches touch: a hair less and they overlap', () => {
  fc.assert(
    fc.property(anyPatch, fc.double({ min: 0, max: 360, noNaN: true }), (piece, turn) => {
      const first = lieOf(piece.cut.outline, turn).outline;
      const second = lieOf(piece.cut.outline, turn + 180).outline;
      const length = stepBetween(endsOf(first), endsOf(second));
      expect(overlap(first, moved(second, length))).toBe(false);
      expect(overlap(first, moved(second, length - 1e-4))).toBe(true);
    }),
  );
});

test('two steps head to tail are twice the chord at half height, whatever the convex shape', () => {
  fc.assert(
    fc.property(anyPatch, fc.double({ min: 0, max: 360, noNaN: true }), (piece, turn) => {
      const head = endsOf(lieOf(piece.cut.outline, turn).outline);
      const tail = endsOf(lieOf(piece.cut.outline, turn + 180).outline);
      const both = stepBetween(head, tail) + stepBetween(tail, head);
      expect(both).toBeCloseTo(2 * chordAtHalfHeight(piece, turn), 8);
    }),
  );
});

describe('the closed forms come out of it', () => {
  const root3 = Math.sqrt(3);
  const [a, s] = [1.5, 0.25];
  const k = a + (2 * s) / root3;
  const diamond = a + (4 * s) / root3;
  const triangle = a + 2 * root3 * s;
  const [long, short] = [2 * a + 2 * root3 * s, a + (2 * s) / root3];
  test.each([
    ['hexagon', 0, 2 * k, root3 * k, []],
    ['hexagon', 1, root3 * k, 2 * k, [90]],
    ['diamond', 0, diamond, (diamond * root3) / 2, [60]],
    ['triangle', 0, triangle / 2, (triangle * root3) / 2, [60]],
    ['half-hexagon', 0, (long + short) / 2, (a * root3) / 2 + 2 * s, [60]],
    ['square', 0, a + 2 * s, a + 2 * s, [90]],
  ] as const)('%s, way %i', (shape, way, step, height, cutAngles) => {
    const lay = stripLays(patch(shape, a, s))[way]!;
    expect(lay.rows[0].patches.steps[0]).toBeCloseTo(step, 9);
    expect(lay.rows[0].patches.steps[1]).toBeCloseTo(step, 9);
    expect(lay.stack.size).toBeCloseTo(height, 9);
    expect(lay.cutAngles).toEqual(cutAngles);
  });

  test('blunt hexagons stand a blunt point to point apart', () => {
    expect(stripLays(patch('hexagon', 1, 0.25, 'blunt'))[0]!.rows[0].patches.steps[0]).toBeCloseTo(2.5, 9);
  });
});
