import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { area, box, perimeter } from '../../../src/calculator/shapes/extent.ts';
import { offset, widestAllowance } from '../../../src/calculator/shapes/offset.ts';
import type { Outline, Point } from '../../../src/calculator/shapes/outline.ts';
import { placeOutline } from '../../../src/calculator/shapes/place.ts';
import type { CornerAllowance } from '../../../src/calculator/shapes/shape.ts';
import { sidesOf } from '../../../src/calculator/shapes/sides.ts';
import { appleCore, clamshell, convex, exteriorAngles, halfDisc, regular, seams } from './outlines.ts';

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Area and perimeter of an outline moved outward, by Steiner's formulas for convex bodies. */
const grown = (outline: Outline, s: number) => ({ A: area(outline), P: perimeter(outline), s });

describe('straight convex outlines', () => {
  test('pointed: area grows by P s + s² Σ tan(e / 2)', () => {
    fc.assert(
      fc.property(convex, seams, (outline, seam) => {
        const { A, P, s } = grown(outline, seam);
        const corners = sum(exteriorAngles(outline).map((e) => Math.tan(e / 2)));
        const wanted = A + P * s + s * s * corners;
        expect(area(offset(outline, seam, 'pointed')) / wanted).toBeCloseTo(1, 10);
      }),
    );
  });

  test('rounded: area grows by P s + π s², perimeter by 2 π s (Steiner)', () => {
    fc.assert(
      fc.property(convex, seams, (outline, seam) => {
        const { A, P, s } = grown(outline, seam);
        const cut = offset(outline, seam, 'rounded');
        expect(area(cut) / (A + P * s + Math.PI * s * s)).toBeCloseTo(1, 10);
        expect(perimeter(cut) / (P + 2 * Math.PI * s)).toBeCloseTo(1, 10);
      }),
    );
  });

  test('blunt: two corners for one, every cut touching the circle of the seam about its finished corner', () => {
    fc.assert(
      fc.property(convex, seams, (outline, seam) => {
        const cut = offset(outline, seam, 'blunt');
        expect(cut).toHaveLength(2 * outline.length);
        for (const [i, corner] of outline.entries()) {
          const [a, b] = [cut[2 * i]!, cut[2 * i + 1]!];
          const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
          expect(distance(middle, corner)).toBeCloseTo(seam, 9);
          const alongCut = (b.x - a.x) * (middle.x - corner.x) + (b.y - a.y) * (middle.y - corner.y);
          expect(alongCut).toBeCloseTo(0, 9);
        }
        // Each half corner is a kite of the seam and s tan(e / 4): Σ 2 · s² tan(e / 4).
        const { A, P, s } = grown(outline, seam);
        const corners = sum(exteriorAngles(outline).map((e) => 2 * Math.tan(e / 4)));
        expect(area(cut) / (A + P * s + s * s * corners)).toBeCloseTo(1, 10);
      }),
    );
  });

  test('rounded lies within blunt, blunt within pointed', () => {
    fc.assert(
      fc.property(convex, seams, (outline, seam) => {
        const [round, blunt, pointed] = (['rounded', 'blunt', 'pointed'] as const).map((corners) =>
          area(offset(outline, seam, corners)),
        );
        expect(round).toBeLessThan(blunt!);
        expect(blunt).toBeLessThan(pointed!);
      }),
    );
  });

  test('no allowance leaves the outline as it is', () => {
    expect(offset(regular(6, 1), 0, 'blunt')).toEqual(regular(6, 1));
  });

  test('a side that runs straight on through a corner gets no cut there', () => {
    const outline = [
      { x: 0, y: 0 },
      { x: 1, y: 0 },
      { x: 2, y: 0 },
      { x: 1, y: 2 },
    ];
    expect(offset(outline, 0.25, 'blunt')).toHaveLength(7);
    expect(offset(outline, 0.25, 'pointed')[1]).toEqual({ x: 1, y: -0.25 });
  });
});

describe('a hollow corner', () => {
  const ell = [
    { x: 0, y: 0 },
    { x: 3, y: 0 },
    { x: 3, y: 1 },
    { x: 1, y: 1 },
    { x: 1, y: 3 },
    { x: 0, y: 3 },
  ];
  test.each(['pointed', 'blunt', 'rounded'] as const)(
    'is where the moved sides meet, corners %s',
    (corners) => {
      const cut = offset(ell, 0.25, corners);
      expect(cut).toContainEqual({ x: 1.25, y: 1.25 });
      const missing = { pointed: 0, blunt: 5 * (3 - 2 * Math.SQRT2), rounded: 5 * (1 - Math.PI / 4) }[
        corners
      ];
      expect(area(cut)).toBeCloseTo(3.5 * 1.5 + 2 * 1.5 - missing * 0.25 * 0.25, 10);
    },
  );
});

/** The cut sides that run along the moved arcs, told by their centre. */
const circlesOf = (outline: Outline) => sidesOf(outline).flatMap(({ arc }) => (arc === null ? [] : [arc]));

describe('arcs', () => {
  test('a circle grows by the seam all round', () => {
    const disc = [
      { x: 0, y: 0, bulge: 1 },
      { x: 2, y: 0, bulge: 1 },
    ];
    for (const corners of ['pointed', 'blunt', 'rounded'] as const)
      expect(area(offset(disc, 0.5, corners))).toBeCloseTo(Math.PI * 2.25, 10);
  });

  test('a line and an arc meet in a point (half disc)', () => {
    const cut = offset(halfDisc(1), 0.25, 'pointed');
    expect(cut).toHaveLength(2);
    expect(cut[0]!.x).toBeCloseTo(-Math.sqrt(1.25 ** 2 - 0.25 ** 2), 10);
    expect(cut[0]!.y).toBeCloseTo(-0.25, 10);
  });

  test('two swelling arcs meet in a point (lens)', () => {
    const bulge = Math.tan(Math.PI / 8);
    const lens = [
      { x: -1, y: 0, bulge },
      { x: 1, y: 0, bulge },
    ];
    // Quarter circles of radius √2 about (0, ±1).
    const cut = offset(lens, 0.25, 'pointed');
    expect(cut).toHaveLength(2);
    expect(cut[1]!.x).toBeCloseTo(Math.sqrt((Math.SQRT2 + 0.25) ** 2 - 1), 10);
    expect(cut[1]!.y).toBeCloseTo(0, 10);
  });

  test('a swelling and a hollow arc meet in a point on both circles (apple-core)', () => {
    const R = 3 / (2 * Math.sin(Math.PI / 6));
    const cut = offset(appleCore(3, 60), 0.25, 'pointed');
    expect(cut).toHaveLength(4);
    const circles = circlesOf(cut);
    expect(circles.map(({ radius }) => radius).sort()).toEqual([
      expect.closeTo(R - 0.25, 10),
      expect.closeTo(R - 0.25, 10),
      expect.closeTo(R + 0.25, 10),
      expect.closeTo(R + 0.25, 10),
    ]);
    // The centres stay where the finished arcs have them.
    const centres = circlesOf(appleCore(3, 60)).map(({ centre }) => centre);
    for (const [i, { centre }] of circles.entries()) expect(distance(centre, centres[i]!)).toBeCloseTo(0, 9);
  });

  test('blunt cuts of arcs touch the circle of the seam about the finished corner', () => {
    const finished = appleCore(3, 60);
    const cut = offset(finished, 0.25, 'blunt');
    expect(cut).toHaveLength(8);
    for (const [i, corner] of finished.entries()) {
      const [a, b] = [cut[2 * i]!, cut[2 * i + 1]!];
      const cross = (b.x - a.x) * (corner.y - a.y) - (b.y - a.y) * (corner.x - a.x);
      expect(cross / distance(a, b)).toBeCloseTo(0.25, 10);
    }
    const area3 = (['rounded', 'blunt', 'pointed'] as const).map((corners) =>
      area(offset(finished, 0.25, corners)),
    );
    expect(area3[0]).toBeLessThan(area3[1]!);
    expect(area3[1]).toBeLessThan(area3[2]!);
  });

  test.each(['pointed', 'blunt', 'rounded'] as const)('a cusp is rounded when corners are %s', (corners) => {
    const cut = offset(clamshell(3), 0.25, corners);
    const roundEnd = circlesOf(cut).find(({ centre }) => distance(centre, { x: 0, y: -1.5 }) < 1e-9);
    expect(roundEnd?.radius).toBeCloseTo(0.25, 10);
    expect(roundEnd?.sweep).toBeCloseTo(Math.PI, 10);
    expect(box(cut).height).toBeCloseTo(3.5, 10);
    expect(box(cut).width).toBeCloseTo(3.5, 10);
  });

  test.each(['pointed', 'blunt', 'rounded'] as const)(
    'a horn keeps a round tip however it lies, corners %s',
    (corners) => {
      // A swelling half circle and a hollow one that touch at the tip: once moved their circles do cross, behind it.
      const horn = [
        { x: 2, y: 0 },
        { x: 4, y: 0, bulge: 1 },
        { x: 0, y: 0, bulge: -1 },
      ];
      const upright = area(offset(horn, 0.25, corners));
      for (let turnDegrees = 0; turnDegrees < 360; turnDegrees += 7) {
        const cut = offset(placeOutline(horn, { x: 1, y: 2, turnDegrees }), 0.25, corners);
        const roundEnd = circlesOf(cut).find(({ centre }) => distance(centre, { x: 1, y: 2 }) < 1e-9);
        expect(roundEnd?.sweep).toBeCloseTo(Math.PI, 6);
        expect(area(cut)).toBeCloseTo(upright, 9);
      }
    },
  );

  test('arcs that curl apart are rounded', () => {
    // Two hollow arcs side by side under a bar, near half circles: once moved they no longer reach each other.
    const outline = [
      { x: -2, y: 0, bulge: -0.9 },
      { x: 0, y: 0, bulge: -0.9 },
      { x: 2, y: 0 },
      { x: 2, y: 2 },
      { x: -2, y: 2 },
    ];
    const cut = offset(outline, 0.25, 'pointed');
    const roundEnd = circlesOf(cut).find(({ centre }) => distance(centre, { x: 0, y: 0 }) < 1e-9);
    expect(roundEnd?.radius).toBeCloseTo(0.25, 10);
  });

  test('nothing is cut off where arcs meet before the cut would reach them', () => {
    const pointed = offset(halfDisc(0.02), 0.25, 'pointed');
    expect(offset(halfDisc(0.02), 0.25, 'blunt')).toEqual(pointed);
    expect(pointed).toHaveLength(2);
    expect(offset(halfDisc(1), 0.25, 'blunt')).toHaveLength(4);
  });

  test('the widest allowance is the tightest hollow', () => {
    expect(widestAllowance(clamshell(3))).toBeCloseTo(1.5, 10);
    expect(widestAllowance(halfDisc(1))).toBe(Number.POSITIVE_INFINITY);
    expect(widestAllowance(regular(6, 1))).toBe(Number.POSITIVE_INFINITY);
  });

  test('every point of a moved arc is the seam away from the finished outline', () => {
    const styles: CornerAllowance[] = ['pointed', 'rounded'];
    for (const outline of [clamshell(3), appleCore(4, 90), halfDisc(2)])
      for (const style of styles) {
        const radii = circlesOf(outline).map(({ centre, radius, sweep }) => ({
          centre,
          radius: radius + 0.25 * Math.sign(sweep),
        }));
        for (const { centre, radius } of radii) {
          const moved = circlesOf(offset(outline, 0.25, style)).filter(
            (arc) => distance(arc.centre, centre) < 1e-9,
          );
          expect(moved.some((arc) => Math.abs(arc.radius - radius) < 1e-9)).toBe(true);
        }
      }
  });
});
