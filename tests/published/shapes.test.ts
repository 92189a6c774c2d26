import { describe, expect, test } from 'vitest';
import { ball } from '../../src/calculator/layouts/ball.ts';
import { cutPatch, startSquareTurned } from '../../src/calculator/shapes/cut.ts';
import { area, box } from '../../src/calculator/shapes/extent.ts';
import { offset } from '../../src/calculator/shapes/offset.ts';
import { placeOutline } from '../../src/calculator/shapes/place.ts';
import { smallestSquare } from '../../src/calculator/shapes/turned-square.ts';
import { halfDisc, regular } from '../calculator/shapes/outlines.ts';

describe('areas in the On-Line Encyclopedia of Integer Sequences (oeis.org)', () => {
  test.each([
    ['A104956, hexagon of circumradius 1', 6, 1, 2.59807621135331],
    ['A104954, triangle of circumradius 1', 3, Math.sqrt(3), 1.29903810567665],
    ['A090488, octagon of unit edge', 8, 1, 4.82842712474619],
    ['A256853, 9-gon of unit edge', 9, 1, 6.1818241937729],
    ['A256854, 11-gon of unit edge', 11, 1, 9.36563990694543],
  ])('%s', (_, n, edge, published) => {
    expect(area(regular(n, edge))).toBeCloseTo(published, 12);
  });

  test('A104956 and A104954: the hexagon and the triangle of the catalogue', () => {
    expect(cutPatch('hexagon', { edge: 1 }, 0.25, 'pointed').finished.area).toBeCloseTo(2.59807621135331, 12);
    const triangle = cutPatch('triangle', { edge: Math.sqrt(3) }, 0.25, 'pointed');
    expect(triangle.finished.area).toBeCloseTo(1.29903810567665, 12);
  });

  test('A375067 and A090488: the pentagon and the octagon of the catalogue', () => {
    const pentagon = cutPatch('pentagon', { edge: 1 }, 0.25, 'pointed').finished;
    expect(pentagon.area / (5 / 2)).toBeCloseTo(0.68819096023558, 12);
    expect(cutPatch('octagon', { edge: 1 }, 0.25, 'pointed').finished.area).toBeCloseTo(4.82842712474619, 12);
  });

  // A156547: the angle at the middle between neighbouring corners of a regular dodecahedron, and A131595 by way
  // of A375067: its surface is 30 times the apothem of its pentagons.
  test('A156547 and A375067: the ball of pentagons', () => {
    const { pieces, cornerToCorner } = ball(1);
    const [a, b] = pieces[0]!;
    const cosine = (a![0] * b![0] + a![1] * b![1] + a![2] * b![2]) / (cornerToCorner / 2) ** 2;
    expect(Math.acos(cosine)).toBeCloseTo(0.729727656226966, 12);
    const pentagon = cutPatch('pentagon', { edge: 1 }, 0, 'pointed').finished.area;
    expect(12 * pentagon).toBeCloseTo(30 * 0.68819096023558, 12);
  });

  test('A358981: the piece between an arc of 120° of a unit circle and its chord', () => {
    const segment = [
      { x: -Math.sqrt(3) / 2, y: 0 },
      { x: Math.sqrt(3) / 2, y: 0, bulge: Math.tan(Math.PI / 6) },
    ];
    expect(area(segment)).toBeCloseTo(0.61418484930437, 12);
    expect(box(segment).height).toBeCloseTo(0.5, 12);
  });

  test('A375067: the apothem of a unit pentagon is the seam that grows it from nothing', () => {
    const apothem = 0.68819096023558;
    const tiny = regular(5, 1e-6);
    const cut = offset(tiny, apothem, 'pointed');
    expect(Math.hypot(cut[1]!.x - cut[0]!.x, cut[1]!.y - cut[0]!.y)).toBeCloseTo(1 + 1e-6, 10);
  });
});

describe('smallest squares', () => {
  // "Hexagons in Squares", a public table of best-known packings: one unit hexagon, (1 + √3) / √2.
  test('one hexagon', () => {
    const published = (1 + Math.sqrt(3)) / Math.SQRT2;
    expect(published).toBeCloseTo(1.931, 2);
    const { side, degrees } = smallestSquare(
      cutPatch('hexagon', { edge: 1 }, 0.25, 'pointed').finished.outline,
    );
    expect(side).toBeCloseTo(published, 10);
    expect(degrees).toBeCloseTo(15, 8);
    // Cut from cloth, the same square grows with the cut edge.
    const patch = cutPatch('hexagon', { edge: 1 }, 0.25, 'pointed');
    expect(startSquareTurned(patch).side).toBeCloseTo(published * patch.cut.measures.edge!, 10);
  });

  // "Triangles in Squares", a public table of best-known packings: one unit triangle, (√2 + √6) / 4.
  test('one equilateral triangle', () => {
    const { finished } = cutPatch('triangle', { edge: 1 }, 0.25, 'pointed');
    expect(smallestSquare(finished.outline).side).toBeCloseTo((Math.SQRT2 + Math.sqrt(6)) / 4, 10);
  });

  // "Semicircle in a square", a published puzzle: the largest half disc in a unit square has radius 2 − √2.
  test('one half disc, whichever way it lies', () => {
    for (const turnDegrees of [0, 10, 77, 200]) {
      const disc = placeOutline(halfDisc(2 - Math.SQRT2), { x: 3, y: 1, turnDegrees });
      expect(smallestSquare(disc).side).toBeCloseTo(1, 9);
    }
  });
});
