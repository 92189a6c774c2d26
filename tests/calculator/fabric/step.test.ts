import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { endsOf } from '../../../src/calculator/fabric/ends.ts';
import { lieOf } from '../../../src/calculator/fabric/lie.ts';
import { stepBetween } from '../../../src/calculator/fabric/step.ts';
import { stripLays } from '../../../src/calculator/fabric/strips.ts';
import { box as boxOf } from '../../../src/calculator/shapes/extent.ts';
import type { Outline } from '../../../src/calculator/shapes/outline.ts';
import { overlaps } from '../../../src/calculator/shapes/overlap.ts';
import { placeOutline, SHARED_LINE } from '../../../src/calculator/shapes/place.ts';
import type { CutPatch } from '../../../src/calculator/shapes/shape.ts';
import { chordAtHalfHeight, overlap } from './geometry.ts';
import { anyCurvedPatch, anyPatch, patch } from './patches.ts';

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

describe('with arcs', () => {
  const raise = fc.double({ min: -3, max: 3, noNaN: true });
  const placed = (piece: CutPatch, turns: readonly [number, number], raised: number) => {
    const [first, second] = turns.map((turn) => lieOf(piece.cut.outline, turn).outline) as [Outline, Outline];
    const step = stepBetween(endsOf(first), endsOf(second), raised);
    return { first, at: (x: number) => placeOutline(second, { x, y: raised, turnDegrees: 0 }), step };
  };

  test('no patch overlaps the next one at the step, however they lie', () => {
    const turn = fc.double({ min: 0, max: 360, noNaN: true });
    fc.assert(
      fc.property(anyCurvedPatch, turn, turn, raise, (piece, one, other, raised) => {
        const { first, at, step } = placed(piece, [one, other], raised);
        if (step > Number.NEGATIVE_INFINITY) expect(overlaps(first, at(step + SHARED_LINE))).toBe(false);
      }),
    );
  });

  test('a hundredth of an inch closer they do, square to the row or along it', () => {
    const turn = fc.constantFrom(0, 90, 180, 270);
    fc.assert(
      fc.property(anyCurvedPatch, turn, turn, raise, (piece, one, other, raised) => {
        // Without a seam the cusp is too thin to overlap anything.
        fc.pre(piece.seam > 0);
        const { first, at, step } = placed(piece, [one, other], raised);
        // Where they pass each other by less than a hair's height there is nothing to overlap.
        const deep = Math.min(boxOf(first).height - raised, boxOf(at(0)).height + raised);
        if (deep > 1e-3) expect(overlaps(first, at(step - 0.01))).toBe(true);
      }),
    );
  });

  test('scales stand as far apart as they are wide; apple-cores reach into each other', () => {
    const [d, L, s] = [3, 4, 0.25];
    const scale = endsOf(lieOf(patch('clamshell', d, s).cut.outline, 0).outline);
    expect(stepBetween(scale, scale)).toBeCloseTo(d + 2 * s, 9);
    const core = patch('apple-core', L, s);
    const [lying, standing] = [0, 90].map((turn) => lieOf(core.cut.outline, turn));
    const raised = (lying!.height - standing!.height) / 2;
    const step = stepBetween(endsOf(lying!.outline), endsOf(standing!.outline), raised);
    // From middle to middle: the swelling rests on the two corners of the hollow, an allowance from each.
    const R = L / Math.SQRT2;
    const sagitta = R - L / 2;
    const pitch = L + sagitta - R + Math.sqrt((R + 2 * s) ** 2 - L ** 2 / 4);
    expect(step + (standing!.width - lying!.width) / 2).toBeCloseTo(pitch, 9);
  });
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
    ['diamond45', 0, a + 2 * Math.SQRT2 * s, a / Math.SQRT2 + 2 * s, [45]],
    ['octagon', 0, (1 + Math.SQRT2) * a + 2 * s, (1 + Math.SQRT2) * a + 2 * s, [90]],
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
