import { areaPathsD, FillRule, intersectD } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CATALOGUE, shapeNames } from '../../../src/calculator/shapes/catalogue.ts';
import { area, box, perimeter } from '../../../src/calculator/shapes/extent.ts';
import type { Outline } from '../../../src/calculator/shapes/outline.ts';
import { overlaps } from '../../../src/calculator/shapes/overlap.ts';
import { placeOutline, within } from '../../../src/calculator/shapes/place.ts';
import { clamshell, convex, regular } from './outlines.ts';

const ROOT3 = Math.sqrt(3);
const at = (outline: Outline, x: number, y: number, turnDegrees = 0): Outline =>
  placeOutline(outline, { x, y, turnDegrees });

const anywhere = fc.record({
  x: fc.double({ min: -6, max: 6, noNaN: true }),
  y: fc.double({ min: -6, max: 6, noNaN: true }),
  turnDegrees: fc.double({ min: 0, max: 360, noNaN: true }),
});

describe('placing', () => {
  test('quarter turns are exact', () => {
    const square = CATALOGUE.square.outline({ edge: 3 });
    for (const turnDegrees of [-90, 0, 90, 180, 270, 450])
      for (const { x, y } of at(square, 1, 2, turnDegrees))
        expect([x % 1, y % 1].map(Math.abs)).toEqual([0, 0]);
  });

  test('keeps area and outline length, arcs too', () => {
    fc.assert(
      fc.property(fc.oneof(convex, fc.constant(clamshell(3))), anywhere, (outline, placement) => {
        const placed = placeOutline(outline, placement);
        expect(area(placed)).toBeCloseTo(area(outline), 9);
        expect(perimeter(placed)).toBeCloseTo(perimeter(outline), 9);
      }),
    );
  });

  test('turning there and back again comes home', () => {
    fc.assert(
      fc.property(convex, anywhere, (outline, { turnDegrees }) => {
        const home = at(at(outline, 0, 0, turnDegrees), 0, 0, -turnDegrees);
        for (const [i, { x, y }] of home.entries()) {
          expect(x).toBeCloseTo(outline[i]!.x, 9);
          expect(y).toBeCloseTo(outline[i]!.y, 9);
        }
      }),
    );
  });
});

describe('on the cloth', () => {
  const hexagon = CATALOGUE.hexagon.outline({ edge: 1 });

  test('fits just so, and not a hair less', () => {
    const inCorner = at(hexagon, 0.5, 0);
    expect(within(inCorner, 2, ROOT3)).toBe(true);
    expect(within(inCorner, 2 - 1e-6, ROOT3)).toBe(false);
    expect(within(inCorner, 2, ROOT3 - 1e-6)).toBe(false);
    expect(within(at(hexagon, 0.5 - 1e-6, 0), 2, 2)).toBe(false);
    expect(within(at(hexagon, 0.5, -1e-6), 2, 2)).toBe(false);
  });

  test('an arc counts by how far it swells, not by its ends', () => {
    const shell = at(clamshell(2), 1, 1);
    expect(within(shell, 2, 2)).toBe(true);
    expect(within(shell, 2, 1.99)).toBe(false);
  });
});

describe('overlaps', () => {
  test('neighbours of a honeycomb share a line, and nothing more', () => {
    const hexagon = CATALOGUE.hexagon.outline({ edge: 1.2886751345948129 });
    const a = 1.2886751345948129;
    const middle = at(hexagon, 30.1, 17.7);
    for (let k = 0; k < 6; k++) {
      const angle = ((30 + 60 * k) * Math.PI) / 180;
      const [dx, dy] = [ROOT3 * a * Math.cos(angle), ROOT3 * a * Math.sin(angle)];
      expect(overlaps(middle, at(hexagon, 30.1 + dx, 17.7 + dy))).toBe(false);
      expect(overlaps(middle, at(hexagon, 30.1 + dx * (1 - 1e-6), 17.7 + dy * (1 - 1e-6)))).toBe(true);
    }
    expect(overlaps(middle, middle)).toBe(true);
  });

  test('corner to corner is no overlap; one inside another is', () => {
    const square = CATALOGUE.square.outline({ edge: 1 });
    expect(overlaps(square, at(square, 1, 1))).toBe(false);
    expect(overlaps(square, at(square, 0.999, 0.999))).toBe(true);
    expect(overlaps(regular(8, 5), at(regular(3, 0.5), 0.1, 0.2))).toBe(true);
  });

  test('four hexagons turned by 15° stand clear at a pitch of √3 / cos 15°, and not any closer', () => {
    const hexagon = at(regular(6, 1), 0, 0, 15);
    const pitch = ROOT3 / Math.cos(Math.PI / 12);
    expect(overlaps(hexagon, at(hexagon, pitch, 0))).toBe(false);
    expect(overlaps(hexagon, at(hexagon, 0, pitch))).toBe(false);
    expect(overlaps(hexagon, at(hexagon, pitch - 1e-5, 0))).toBe(true);
  });

  // Judged by clipper2-ts, a polygon library that shares no code with this one.
  test('whenever an independent library finds common area', () => {
    fc.assert(
      fc.property(convex, convex, anywhere, (a, b, placement) => {
        const moved = placeOutline(b, placement);
        const common = Math.abs(areaPathsD(intersectD([[...a]], [[...moved]], FillRule.NonZero, 8)));
        if (common > 1e-5) expect(overlaps(a, moved)).toBe(true);
        if (common === 0) expect(overlaps(a, moved)).toBe(false);
        expect(overlaps(moved, a)).toBe(overlaps(a, moved));
      }),
      { numRuns: 400 },
    );
  });

  test('boxes that stand apart never overlap', () => {
    for (const name of shapeNames) {
      const outline = CATALOGUE[name].outline({ edge: 2, side: 1 });
      expect(overlaps(outline, at(outline, box(outline).width, 0))).toBe(false);
    }
  });
});
