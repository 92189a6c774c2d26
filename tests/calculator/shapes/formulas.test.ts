import { describe, expect, test } from 'vitest';
import { cutPatch } from '../../../src/calculator/shapes/cut.ts';
import { area, box, perimeter } from '../../../src/calculator/shapes/extent.ts';
import { offset } from '../../../src/calculator/shapes/offset.ts';
import type { Dimensions, ShapeName } from '../../../src/calculator/shapes/shape.ts';
import { middleOf, sidesOf } from '../../../src/calculator/shapes/sides.ts';
import {
  appleCore,
  clamshell,
  cornerToCorner,
  longHexagon,
  regular,
  rhombus,
  sideLength,
  tumbler,
} from './outlines.ts';

// The closed forms follow from one rule: at a corner of interior angle t the moved sides meet s / tan(t / 2)
// past the old corner along each side. They are written out here apart from the code under test.

const ROOT2 = Math.SQRT2;
const ROOT3 = Math.sqrt(3);
const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const tan = (degrees: number): number => Math.tan(radians(degrees));
const sin = (degrees: number): number => Math.sin(radians(degrees));
const cos = (degrees: number): number => Math.cos(radians(degrees));

const SIZES = [0.5, 0.75, 1, 1.25, 1.5, 2, 7.3];
const SEAMS = [0.125, 0.25, 0.375, 1];
const each = SIZES.flatMap((a) => SEAMS.map((s) => ({ a, s })));

/** Every named figure agrees to a part in 10^10. */
const agree = (got: Record<string, number | undefined>, wanted: Record<string, number>): void => {
  for (const [name, value] of Object.entries(wanted)) expect(got[name], name).toBeCloseTo(value, 10);
};

const cutMeasures = (shape: ShapeName, dimensions: Dimensions, s: number) => {
  const { finished, cut } = cutPatch(shape, dimensions, s, 'pointed');
  return { ...cut.measures, finishedArea: finished.area };
};

describe('shapes of the catalogue, pointed', () => {
  test.each(each)('edge $a, seam $s', ({ a, s }) => {
    const hexagonEdge = a + (2 * s) / ROOT3;
    agree(cutMeasures('hexagon', { edge: a }, s), {
      edge: hexagonEdge,
      flats: ROOT3 * a + 2 * s,
      corners: 2 * a + (4 * s) / ROOT3,
      finishedArea: ((3 * ROOT3) / 2) * a * a,
    });
    const diamondEdge = a + (4 * s) / ROOT3;
    agree(cutMeasures('diamond', { edge: a }, s), {
      edge: diamondEdge,
      height: (ROOT3 / 2) * a + 2 * s,
      shortDiagonal: diamondEdge,
      longDiagonal: ROOT3 * diamondEdge,
      finishedArea: (ROOT3 / 2) * a * a,
    });
    agree(cutMeasures('triangle', { edge: a }, s), {
      edge: a + 2 * ROOT3 * s,
      height: (ROOT3 / 2) * a + 3 * s,
      finishedArea: (ROOT3 / 4) * a * a,
    });
    agree(cutMeasures('half-hexagon', { edge: a }, s), {
      longSide: 2 * a + 2 * ROOT3 * s,
      width: 2 * a + 2 * ROOT3 * s,
      shortSide: hexagonEdge,
      leg: diamondEdge,
      height: (ROOT3 / 2) * a + 2 * s,
      finishedArea: ((3 * ROOT3) / 4) * a * a,
    });
    const halfSide = a / 2 + s * (1 + 1 / ROOT3);
    agree(cutMeasures('half-hexagon-flats', { edge: a }, s), {
      longSide: ROOT3 * a + 2 * s,
      shortSide: halfSide,
      leg: hexagonEdge,
      finishedArea: ((3 * ROOT3) / 4) * a * a,
    });
    agree(cutMeasures('kite', { edge: a }, s), {
      longSide: (ROOT3 / 2) * a + s * (ROOT3 + 1),
      shortSide: halfSide,
      finishedArea: (ROOT3 / 4) * a * a,
    });
    agree(cutMeasures('third', { edge: a }, s), {
      longSide: (ROOT3 / 2) * a + s * (1 + 1 / ROOT3),
      shortSide: halfSide,
      leg: hexagonEdge,
      finishedArea: (ROOT3 / 2) * a * a,
    });
    agree(cutMeasures('square', { edge: a }, s), { edge: a + 2 * s, width: a + 2 * s, height: a + 2 * s });
    agree(cutMeasures('rectangle', { edge: a, side: 2.5 * a }, s), {
      edge: a + 2 * s,
      width: a + 2 * s,
      height: 2.5 * a + 2 * s,
      finishedArea: 2.5 * a * a,
    });
  });
});

describe('further shapes of the catalogue', () => {
  test.each(each)('octagon, pentagon, 45° diamond: edge $a, seam $s', ({ a, s }) => {
    agree(cutMeasures('octagon', { edge: a }, s), {
      edge: a + 2 * s * (ROOT2 - 1),
      flats: (1 + ROOT2) * a + 2 * s,
      finishedArea: 2 * (1 + ROOT2) * a * a,
    });
    const pentagonEdge = a + 2 * s * tan(36);
    agree(cutMeasures('pentagon', { edge: a }, s), {
      edge: pentagonEdge,
      height: (pentagonEdge / 2) * Math.sqrt(5 + 2 * Math.sqrt(5)),
      finishedArea: (5 * a * a) / (4 * tan(36)),
    });
    const diamondEdge = a + 2 * ROOT2 * s;
    agree(cutMeasures('diamond45', { edge: a }, s), {
      edge: diamondEdge,
      height: a / ROOT2 + 2 * s,
      shortDiagonal: 2 * diamondEdge * sin(22.5),
      longDiagonal: 2 * diamondEdge * cos(22.5),
      finishedArea: (a * a) / ROOT2,
    });
  });

  test.each([20, 60, 75, 90, 100, 120, 150])('long hexagon with points of %i°', (angle) => {
    for (const [a, b, s] of [
      [1.5, 2.25, 0.25],
      [1, 0.5, 0.375],
      [2, 6, 0.125],
    ] as const) {
      const leg = a + s * (1 / tan(angle / 2) + tan(angle / 4));
      const longSide = b + 2 * s * tan(angle / 4);
      agree(cutMeasures('long-hexagon', { edge: a, side: b, angle }, s), {
        edge: leg,
        leg,
        longSide,
        width: 2 * a * sin(angle / 2) + 2 * s,
        corners: longSide + 2 * leg * cos(angle / 2),
        finishedArea: 2 * a * b * sin(angle / 2) + a * a * sin(angle),
      });
    }
  });

  test.each([
    [3, 2, 2.5],
    [2.5, 1.75, 3],
    [2, 1.9, 1],
    [4, 0.5, 1],
  ])('tumbler %d wide, %d narrow, %d high', (wide, narrow, height) => {
    for (const s of SEAMS) {
      const base = Math.atan((2 * height) / (wide - narrow));
      agree(cutMeasures('tumbler', { edge: wide, narrow, height }, s), {
        longSide: wide + (2 * s) / Math.tan(base / 2),
        shortSide: narrow + 2 * s * Math.tan(base / 2),
        height: height + 2 * s,
        finishedArea: ((wide + narrow) * height) / 2,
      });
    }
  });

  test.each([
    [2, 0.25],
    [3, 0.375],
    [6, 0.5],
  ])('clamshell %d wide, seam %d', (d, s) => {
    const { finished, cut } = cutPatch('clamshell', { edge: d }, s, 'pointed');
    agree(cut.measures, {
      width: d + 2 * s,
      height: d + 2 * s,
      convexRadius: d / 2 + s,
      concaveRadius: d / 2 - s,
    });
    expect(finished.area).toBeCloseTo((d * d) / 2, 10);
    expect(finished.perimeter).toBeCloseTo(Math.PI * d, 10);
    expect(cut.area).toBeCloseTo((d * d) / 2 + Math.PI * d * s + Math.PI * s * s, 10);
  });

  test.each([
    [4, undefined, 0.25],
    [4, 90, 0.25],
    [3, 60, 0.25],
    [5, 45, 0.375],
    [4, 120, 0.25],
  ])('apple-core %d corner to corner, arcs of %s°, seam %d', (chord, angle, s) => {
    const theta = radians(angle ?? 90);
    const R = chord / (2 * Math.sin(theta / 2));
    const sagitta = R * (1 - Math.cos(theta / 2));
    const { finished, cut } = cutPatch(
      'apple-core',
      { edge: chord, ...(angle === undefined ? {} : { angle }) },
      s,
      'pointed',
    );
    agree(cut.measures, {
      width: chord + 2 * sagitta + 2 * s,
      shortSide: chord - 2 * sagitta + 2 * s,
      convexRadius: R + s,
      concaveRadius: R - s,
    });
    expect(finished.area).toBeCloseTo(chord * chord, 10);
    expect(cut.area).toBeCloseTo(chord * chord + 4 * R * theta * s + Math.PI * s * s, 10);
  });

  test('an apple-core of quarter arcs swells along the circle through its four corners', () => {
    const { finished } = cutPatch('apple-core', { edge: 4 }, 0.25, 'pointed');
    expect(finished.measures.convexRadius).toBeCloseTo(4 / ROOT2, 10);
    expect(finished.measures.width).toBeCloseTo(4 * ROOT2, 10);
  });
});

describe('straight outlines drawn corner by corner, pointed', () => {
  test.each(each)('edge $a, seam $s', ({ a, s }) => {
    for (const n of [3, 4, 5, 6, 8, 12]) {
      const cut = offset(regular(n, a), s, 'pointed');
      expect(sideLength(cut, 0)).toBeCloseTo(a + 2 * s * Math.tan(Math.PI / n), 10);
      expect(area(regular(n, a))).toBeCloseTo((n * a * a) / (4 * Math.tan(Math.PI / n)), 10);
    }
    const octagon = offset(regular(8, a), s, 'pointed');
    const octagonEdge = a + 2 * s * (ROOT2 - 1);
    expect(sideLength(octagon, 0)).toBeCloseTo(octagonEdge, 10);
    expect((1 + ROOT2) * sideLength(octagon, 0)).toBeCloseTo((1 + ROOT2) * a + 2 * s, 10);
    expect(area(regular(8, a))).toBeCloseTo(2 * (1 + ROOT2) * a * a, 10);

    const pentagon = offset(regular(5, a), s, 'pointed');
    const pentagonEdge = a + 2 * s * tan(36);
    expect(sideLength(pentagon, 0)).toBeCloseTo(pentagonEdge, 10);
    // Corner 0 points along x, so the height of the pentagon lies along its box's width.
    expect(box(pentagon).width).toBeCloseTo((pentagonEdge / 2) * Math.sqrt(5 + 2 * Math.sqrt(5)), 10);

    const diamond45 = offset(rhombus(a, 45), s, 'pointed');
    const diamondEdge = a + 2 * ROOT2 * s;
    expect(sideLength(diamond45, 0)).toBeCloseTo(diamondEdge, 10);
    expect(box(diamond45).height).toBeCloseTo(a / ROOT2 + 2 * s, 10);
    expect(cornerToCorner(diamond45, 1, 3)).toBeCloseTo(2 * diamondEdge * sin(22.5), 10);
    expect(cornerToCorner(diamond45, 0, 2)).toBeCloseTo(2 * diamondEdge * cos(22.5), 10);
    expect(area(rhombus(a, 45))).toBeCloseTo((a * a) / ROOT2, 10);
  });

  test.each([60, 75, 90, 100, 120, 150])('elongated hexagon with points of %i°', (point) => {
    const [a, b, s] = [1.5, 2.25, 0.25];
    const cut = offset(longHexagon(a, b, point), s, 'pointed');
    const slant = a + s * (1 / tan(point / 2) + tan(point / 4));
    const long = b + 2 * s * tan(point / 4);
    expect(sideLength(cut, 0)).toBeCloseTo(long, 10);
    expect(sideLength(cut, 1)).toBeCloseTo(slant, 10);
    expect(box(cut).height).toBeCloseTo(2 * a * sin(point / 2) + 2 * s, 10);
    expect(box(cut).width).toBeCloseTo(long + 2 * slant * cos(point / 2), 10);
    expect(area(longHexagon(a, b, point))).toBeCloseTo(2 * a * b * sin(point / 2) + a * a * sin(point), 10);
  });

  test.each([
    [3, 2, 2.5],
    [2.5, 1.75, 3],
    [2, 1.9, 1],
  ])('tumbler %d wide, %d narrow, %d high', (wide, narrow, height) => {
    const s = 0.25;
    const base = Math.atan((2 * height) / (wide - narrow));
    const cut = offset(tumbler(wide, narrow, height), s, 'pointed');
    expect(sideLength(cut, 0)).toBeCloseTo(wide + (2 * s) / Math.tan(base / 2), 10);
    expect(sideLength(cut, 2)).toBeCloseTo(narrow + 2 * s * Math.tan(base / 2), 10);
    expect(box(cut).height).toBeCloseTo(height + 2 * s, 10);
    expect(area(tumbler(wide, narrow, height))).toBeCloseTo(((wide + narrow) * height) / 2, 10);
  });
});

describe('outlines with arcs, rounded', () => {
  test.each([
    [2, 0.25],
    [3, 0.25],
    [3, 0.375],
    [6, 0.5],
  ])('clamshell %d wide, seam %d', (d, s) => {
    const r = d / 2;
    const finished = clamshell(d);
    const cut = offset(finished, s, 'rounded');
    expect(area(finished)).toBeCloseTo((d * d) / 2, 10);
    expect(perimeter(finished)).toBeCloseTo(2 * Math.PI * r, 10);
    expect(area(cut)).toBeCloseTo((d * d) / 2 + Math.PI * d * s + Math.PI * s * s, 10);
    expect(box(cut).width).toBeCloseTo(d + 2 * s, 10);
    expect(box(cut).height).toBeCloseTo(d + 2 * s, 10);
    const radii = sidesOf(cut).map(({ arc }) => arc!.radius);
    expect(Math.max(...radii)).toBeCloseTo(r + s, 10);
    expect(radii.filter((radius) => Math.abs(radius - (r - s)) < 1e-10)).toHaveLength(2);
  });

  test.each([
    [4, 90, 0.25],
    [3, 60, 0.25],
    [5, 45, 0.375],
  ])('apple-core %d corner to corner, arcs of %d°, seam %d', (chord, arc, s) => {
    const theta = radians(arc);
    const R = chord / (2 * Math.sin(theta / 2));
    const sagitta = R * (1 - Math.cos(theta / 2));
    const finished = appleCore(chord, arc);
    const cut = offset(finished, s, 'rounded');
    expect(area(finished)).toBeCloseTo(chord * chord, 10);
    expect(area(cut)).toBeCloseTo(chord * chord + 4 * R * theta * s + Math.PI * s * s, 10);
    expect(box(cut).width).toBeCloseTo(chord + 2 * sagitta + 2 * s, 10);
    const hollows = sidesOf(cut)
      .filter(({ arc: bend }) => bend!.sweep < 0)
      .map(({ from, to, arc: bend }) => middleOf(from, to, Math.tan(bend!.sweep / 4)));
    expect(hollows).toHaveLength(2);
    expect(Math.abs(hollows[0]!.y - hollows[1]!.y)).toBeCloseTo(chord - 2 * sagitta + 2 * s, 10);
  });
});

describe('how the figures hang together', () => {
  test.each(each)(
    'the cut hexagon is the finished one, its outline times the seam, and six corners: $a, $s',
    ({ a, s }) => {
      const { finished, cut } = cutPatch('hexagon', { edge: a }, s, 'pointed');
      expect(cut.area).toBeCloseTo(((3 * ROOT3) / 2) * (a + (2 * s) / ROOT3) ** 2, 10);
      expect(cut.area).toBeCloseTo(finished.area + 6 * a * s + 2 * ROOT3 * s * s, 10);
      expect(6 * tan(30)).toBeCloseTo(2 * ROOT3, 12);
    },
  );

  test('the parts of a hexagon make the whole', () => {
    const finished = (shape: ShapeName): number =>
      cutPatch(shape, { edge: 1.5 }, 0.25, 'pointed').finished.area;
    const parts: [ShapeName, number][] = [
      ['half-hexagon', 2],
      ['half-hexagon-flats', 2],
      ['third', 3],
      ['diamond', 3],
      ['kite', 6],
      ['triangle', 6],
    ];
    for (const [shape, count] of parts) expect(count * finished(shape)).toBeCloseTo(finished('hexagon'), 10);
  });

  test('three kites make an equilateral triangle of root three times the edge', () => {
    const triangle = cutPatch('triangle', { edge: ROOT3 * 2 }, 0.25, 'pointed').finished.area;
    expect(3 * cutPatch('kite', { edge: 2 }, 0.25, 'pointed').finished.area).toBeCloseTo(triangle, 10);
  });

  test.each(each)(
    'a blunt hexagon is 2a + 2s point to point and as wide as ever flat to flat: $a, $s',
    ({ a, s }) => {
      const { measures } = cutPatch('hexagon', { edge: a }, s, 'blunt').cut;
      agree(measures, { corners: 2 * a + 2 * s, width: 2 * a + 2 * s, flats: ROOT3 * a + 2 * s });
      // What is left of a side: each end runs s tan(e / 4) past the corner, e = 60° being the corner's turn.
      agree(measures, { edge: a + 2 * s * tan(15) });
    },
  );
});
