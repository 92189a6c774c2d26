import { areaPathsD, FillRule, intersectD, PointInPolygonResult, pointInPolygonD } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutPatch } from '../../../src/calculator/shapes/cut.ts';
import { flatten } from '../../../src/calculator/shapes/flatten.ts';
import { depthIn } from '../../../src/calculator/shapes/inside.ts';
import type { Outline } from '../../../src/calculator/shapes/outline.ts';
import { overlaps } from '../../../src/calculator/shapes/overlap.ts';
import { placeOutline } from '../../../src/calculator/shapes/place.ts';
import { appleCore, clamshell, convex, halfDisc, regular } from './outlines.ts';

const at = (outline: Outline, x: number, y: number, turnDegrees = 0): Outline =>
  placeOutline(outline, { x, y, turnDegrees });

const anywhere = fc.record({
  x: fc.double({ min: -5, max: 5, noNaN: true }),
  y: fc.double({ min: -5, max: 5, noNaN: true }),
  turnDegrees: fc.double({ min: 0, max: 360, noNaN: true }),
});

const CURVED: Outline[] = [
  clamshell(3),
  appleCore(3, 90),
  appleCore(2, 150),
  halfDisc(2),
  cutPatch('clamshell', { edge: 3 }, 0.25, 'pointed').cut.outline,
  cutPatch('apple-core', { edge: 4 }, 0.25, 'pointed').cut.outline,
];
const anyCurved = fc.constantFrom(...CURVED);

const FINE = 2e-5;

describe('outlines with arcs and hollows', () => {
  // Judged by clipper2-ts on outlines walked in straight steps.
  test('overlap whenever an independent library finds common area', () => {
    fc.assert(
      fc.property(anyCurved, fc.oneof(anyCurved, convex), anywhere, (a, b, placement) => {
        const moved = placeOutline(b, placement);
        const paths = [flatten(a, FINE), flatten(moved, FINE)] as const;
        const common = Math.abs(areaPathsD(intersectD([paths[0]], [paths[1]], FillRule.NonZero, 8)));
        if (common > 1e-3) expect(overlaps(a, moved)).toBe(true);
        if (common === 0) expect(overlaps(a, moved)).toBe(false);
        expect(overlaps(moved, a)).toBe(overlaps(a, moved));
      }),
      { numRuns: 300 },
    );
  });

  test('touching is no overlap, a hair further in is one', () => {
    const disc = regular(2, 2).map((corner) => ({ ...corner, bulge: 1 }));
    expect(overlaps(disc, at(disc, 2, 0))).toBe(false);
    expect(overlaps(disc, at(disc, 2 - 1e-5, 0))).toBe(true);
    // A scale in its place between two others, and the same a hair lower.
    const scale = clamshell(4);
    for (const x of [-2, 2]) {
      expect(overlaps(scale, at(scale, x, 2))).toBe(false);
      expect(overlaps(scale, at(scale, x, 2 - 1e-5))).toBe(true);
    }
    expect(overlaps(scale, at(scale, 4, 0))).toBe(false);
  });

  test('an apple-core and its four neighbours, a quarter turned, share all their sides and nothing more', () => {
    const core = at(appleCore(2, 90), -1, -1);
    for (const [x, y] of [
      [2, 0],
      [-2, 0],
      [0, 2],
      [0, -2],
    ] as const) {
      expect(overlaps(core, at(core, x, y, 90))).toBe(false);
      expect(overlaps(core, at(core, x * 0.9999, y * 0.9999, 90))).toBe(true);
      expect(overlaps(core, at(core, x, y))).toBe(x !== 0);
    }
  });

  test('the same outline twice is an overlap, and so is one inside another', () => {
    for (const outline of CURVED) {
      expect(overlaps(outline, outline)).toBe(true);
      expect(overlaps(outline, at(regular(40, 4), 0, 0.5))).toBe(true);
    }
    expect(overlaps(halfDisc(2), at(regular(4, 0.2), 0.3, 0.8))).toBe(true);
    // In the hollow of an apple-core, but not in the apple-core.
    expect(overlaps(appleCore(4, 90), at(regular(4, 0.2), 2, 0.3))).toBe(false);
  });
});

describe('how deep a point lies', () => {
  test('is above zero just where an independent library finds it inside', () => {
    // The library reads coordinates to eight places: a hair beyond them is not for it to tell.
    const spot = fc.double({ min: -3, max: 5, noNaN: true }).map((at) => Math.round(at * 1e8) / 1e8 + 0);
    fc.assert(
      fc.property(anyCurved, spot, spot, (outline, x, y) => {
        const depth = depthIn(outline, { x, y });
        if (Math.abs(depth) < 1e-4) return;
        const found = pointInPolygonD({ x, y }, flatten(outline, FINE), 8);
        expect(found === PointInPolygonResult.IsInside).toBe(depth > 0);
      }),
      { numRuns: 500 },
    );
  });

  test('is the distance to the nearest side', () => {
    expect(depthIn(halfDisc(2), { x: 0, y: 0.5 })).toBeCloseTo(0.5, 12);
    expect(depthIn(halfDisc(2), { x: 0, y: 1.8 })).toBeCloseTo(0.2, 12);
    expect(depthIn(halfDisc(2), { x: 0, y: -1 })).toBeCloseTo(-1, 12);
    expect(depthIn(halfDisc(2), { x: 5, y: -4 })).toBeCloseTo(-5, 12);
  });
});
