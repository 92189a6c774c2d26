import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CATALOGUE, measuresOf, shapeNames } from '../../../src/calculator/shapes/catalogue.ts';
import {
  cutPatch,
  dimensionsFrom,
  type StatedSize,
  startSquare,
  startSquareTurned,
} from '../../../src/calculator/shapes/cut.ts';
import { offsetFrame, widestAllowance } from '../../../src/calculator/shapes/offset.ts';
import { placeOutline } from '../../../src/calculator/shapes/place.ts';
import { measured, read } from '../../../src/calculator/shapes/readings.ts';
import type {
  CornerStyle,
  Dimensions,
  FurtherDimension,
  MeasureName,
  ShapeName,
} from '../../../src/calculator/shapes/shape.ts';

const names = fc.constantFrom(...shapeNames);
const styles = fc.constantFrom<CornerStyle>('pointed', 'blunt');
const sizes = fc.double({ min: 0.125, max: 480, noNaN: true });
const seams = fc.double({ min: 0, max: 2, noNaN: true });
const faces = fc.constantFrom('finished' as const, 'cut' as const);

/** Dimensions for any shape; a tumbler's narrow end is a part of its wide one. */
const dimensions = fc
  .record({
    edge: sizes,
    side: sizes,
    angle: fc.double({ min: 20, max: 160, noNaN: true }),
    part: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
    height: sizes,
  })
  .map(
    ({ edge, side, angle, part, height }): Dimensions => ({
      ...{ edge, side, angle, narrow: part * edge },
      // A strip of a tumbler, hundreds of times as wide as it is high, leans too little to be told to a billionth.
      height: Math.max(height, edge / 20),
    }),
  );

/** Those that the shape has, so that the patch is of them and of nothing else. */
const own = (shape: ShapeName, { edge, ...further }: Dimensions): Dimensions => {
  const also = CATALOGUE[shape].also ?? {};
  return { edge, ...Object.fromEntries(Object.entries(further).filter(([name]) => name in also)) };
};

/** A seam that leaves something of each hollow arc. */
const seamFor = (shape: ShapeName, of: Dimensions, seam: number): number =>
  Math.min(seam, 0.9 * widestAllowance(CATALOGUE[shape].outline(of)));

describe('cut, then back', () => {
  test('gives the finished size, for every shape, measure, seam and corner', () => {
    fc.assert(
      fc.property(dimensions, seams, styles, faces, (any, most, cornerStyle, given) => {
        for (const shape of shapeNames) {
          const also = Object.entries(CATALOGUE[shape].also ?? {}) as [
            FurtherDimension,
            MeasureName | null,
          ][];
          for (const measure of measuresOf(shape, given)) {
            // A measure that is a further dimension itself is asked for in the usual proportions.
            const isFurther = also.some(([, is]) => is === measure) && shape !== 'rectangle';
            const leans = shape === 'tumbler' && measure === 'leg';
            const of = isFurther || leans ? { edge: any.edge } : own(shape, any);
            const seam = seamFor(shape, of, most);
            const { measures } = cutPatch(shape, of, seam, cornerStyle)[given];
            const other = measure === CATALOGUE[shape].second ? measures.width : measures.height;
            const further = also.flatMap(([name, is]) =>
              of[name] === undefined ? [] : [[name, is === null ? of[name] : measures[is]!] as const],
            );
            const back = dimensionsFrom(shape, {
              ...{ measure, given, value: measures[measure]!, seam, cornerStyle },
              ...(CATALOGUE[shape].second ? { side: other! } : { also: Object.fromEntries(further) }),
            });
            if (!back.ok) throw new Error(`${shape} by ${measure}: ${JSON.stringify(back.problem)}`);
            for (const [name, value] of Object.entries(of))
              expect(
                Math.abs(back.value[name as keyof Dimensions]! - value),
                `${shape} ${measure} ${name}`,
              ).toBeLessThan(1e-9);
          }
        }
      }),
    );
  });

  test('a finished size does not depend on the seam', () => {
    const stated = { measure: 'flats', given: 'finished', value: 4, seam: 5, cornerStyle: 'blunt' } as const;
    expect(dimensionsFrom('hexagon', stated)).toEqual({
      ok: true,
      value: { edge: expect.closeTo(4 / Math.sqrt(3), 10) },
    });
  });
});

describe('what cannot be', () => {
  const quarter = { seam: 0.25, cornerStyle: 'pointed' } as const;

  test.each<[ShapeName, StatedSize['measure'], number]>([
    ['hexagon', 'flats', 0.5],
    ['hexagon', 'edge', 0.5 / Math.sqrt(3)],
    ['diamond', 'edge', 1 / Math.sqrt(3)],
    ['triangle', 'height', 0.75],
    ['square', 'edge', 0.5],
    ['half-hexagon', 'longSide', Math.sqrt(3) / 2],
  ])('nothing is left of a %s whose cut %s is all seam', (shape, measure, least) => {
    for (const value of [least, least - 0.1]) {
      expect(dimensionsFrom(shape, { ...quarter, measure, given: 'cut', value })).toEqual({
        ok: false,
        problem: { code: 'nothing-left', measure, value, least: expect.closeTo(least, 9) },
      });
    }
    expect(dimensionsFrom(shape, { ...quarter, measure, given: 'cut', value: least + 1e-6 }).ok).toBe(true);
  });

  test('nothing is left of a rectangle whose height is all seam', () => {
    const stated = { ...quarter, measure: 'width', given: 'cut', value: 3, side: 0.4 } as const;
    expect(dimensionsFrom('rectangle', stated)).toMatchObject({
      problem: { code: 'nothing-left', measure: 'height', value: 0.4, least: expect.closeTo(0.5, 9) },
    });
  });

  test('a measure that the shape has not got names those that it has', () => {
    const stated = { ...quarter, measure: 'flats', given: 'cut', value: 3 } as const;
    expect(dimensionsFrom('triangle', stated)).toEqual({
      ok: false,
      problem: {
        code: 'no-such-measure',
        shape: 'triangle',
        measure: 'flats',
        given: 'cut',
        accepts: ['edge', 'width', 'height'],
      },
    });
    expect(dimensionsFrom('kite', { ...stated, measure: 'edge' })).toMatchObject({
      problem: { code: 'no-such-measure', given: 'cut' },
    });
    expect(dimensionsFrom('kite', { ...stated, measure: 'edge', given: 'finished' })).toMatchObject({
      value: { edge: 3 },
    });
  });
});

describe('what is not that shape', () => {
  const tumbler = (narrow: number, wide = 3) =>
    dimensionsFrom('tumbler', {
      ...{ measure: 'edge', given: 'finished', value: wide, seam: 0.25, cornerStyle: 'pointed' },
      also: { narrow },
    });

  test('a tumbler whose narrow end is no narrower', () => {
    for (const narrow of [3, 4])
      expect(tumbler(narrow)).toEqual({ ok: false, problem: { code: 'not-narrower', shape: 'tumbler' } });
    expect(tumbler(2.99).ok).toBe(true);
  });

  test.each([
    ['clamshell', 3, 1.5],
    ['apple-core', 4, 4 / Math.SQRT2],
  ] as const)('a seam that closes the hollow of a %s of %d', (shape, value, most) => {
    const by = (seam: number) =>
      dimensionsFrom(shape, { measure: 'edge', given: 'finished', value, seam, cornerStyle: 'pointed' });
    expect(by(most * 0.99).ok).toBe(true);
    for (const seam of [most * 1.01, most + 2])
      expect(by(seam)).toEqual({
        ok: false,
        problem: { code: 'seam-closes-curve', shape, seam, most: expect.closeTo(most, 9) },
      });
  });

  test('a cut tumbler whose narrow end is all seam has nothing left of it', () => {
    const stated = { measure: 'edge', given: 'cut', value: 4, seam: 0.25, cornerStyle: 'pointed' } as const;
    const narrowest = dimensionsFrom('tumbler', { ...stated, also: { narrow: 0.2, height: 3 } });
    expect(narrowest).toMatchObject({ problem: { code: 'nothing-left', measure: 'shortSide', value: 0.2 } });
    expect(dimensionsFrom('tumbler', { ...stated, also: { height: 0.4 } })).toMatchObject({
      problem: { code: 'nothing-left', measure: 'height', value: 0.4, least: expect.closeTo(0.5, 6) },
    });
  });
});

describe('rectangles', () => {
  const cut = { given: 'cut', seam: 0.25, cornerStyle: 'pointed' } as const;

  test('the seam comes off both sizes', () => {
    const value = { edge: expect.closeTo(2, 10), side: expect.closeTo(3, 10) };
    for (const measure of ['edge', 'width'] as const)
      expect(dimensionsFrom('rectangle', { ...cut, measure, value: 2.5, side: 3.5 })).toEqual({
        ok: true,
        value,
      });
    expect(dimensionsFrom('rectangle', { ...cut, measure: 'height', value: 3.5, side: 2.5 })).toEqual({
      ok: true,
      value,
    });
  });

  test('one size alone is a square', () => {
    expect(dimensionsFrom('rectangle', { ...cut, measure: 'width', value: 2.5 })).toEqual({
      ok: true,
      value: { edge: expect.closeTo(2, 10), side: expect.closeTo(2, 10) },
    });
  });
});

describe('patches', () => {
  test('a wider seam never shrinks a measure, the area or the square', () => {
    fc.assert(
      fc.property(names, sizes, seams, seams, styles, (shape, edge, one, other, style) => {
        const [least, most] = [Math.min(one, other), Math.max(one, other)];
        const [less, more] = [seamFor(shape, { edge }, least), seamFor(shape, { edge }, most)];
        const small = cutPatch(shape, { edge }, less, style);
        const large = cutPatch(shape, { edge }, more, style);
        // A hollow is the one thing that the seam takes from: its radius shrinks by all of it.
        if (large.cut.measures.concaveRadius !== undefined)
          expect(small.cut.measures.concaveRadius! - large.cut.measures.concaveRadius).toBeCloseTo(
            more - less,
            9,
          );
        for (const measure of measuresOf(shape, 'cut').filter((name) => name !== 'concaveRadius'))
          expect(large.cut.measures[measure]! - small.cut.measures[measure]!, measure).toBeGreaterThan(-1e-9);
        expect(large.cut.area).toBeGreaterThan(small.cut.area * (1 - 1e-12));
        expect(startSquare(large)).toBeGreaterThan(startSquare(small) - 1e-9);
      }),
    );
  });

  test('turned and moved, a patch measures the same', () => {
    const place = fc.record({
      x: fc.double({ min: -50, max: 50, noNaN: true }),
      y: fc.double({ min: -50, max: 50, noNaN: true }),
      turnDegrees: fc.double({ min: -720, max: 720, noNaN: true }),
    });
    const edges = fc.double({ min: 0.125, max: 20, noNaN: true });
    fc.assert(
      fc.property(names, edges, seams, styles, place, (name, edge, seam, style, placement) => {
        const shape = CATALOGUE[name];
        const lying = measured({ edge }, offsetFrame(shape.outline({ edge }), seam, style));
        const moved = placeOutline(shape.outline({ edge }), placement);
        const turned = measured({ edge }, offsetFrame(moved, seam, style));
        for (const reading of Object.values(shape.measures)) {
          if (reading.of !== 'box') expect(read(reading, turned)).toBeCloseTo(read(reading, lying), 9);
        }
      }),
    );
  });

  test('the square to begin with holds the patch as it lies, the turned one is never larger', () => {
    fc.assert(
      fc.property(names, sizes, seams, styles, (shape, edge, seam, style) => {
        const patch = cutPatch(shape, { edge }, seamFor(shape, { edge }, seam), style);
        const upright = startSquare(patch);
        const { width, height, corners = 0 } = patch.cut.measures;
        // A long hexagon's width is across its long sides; it lies as long as it is point to point.
        const [wide, high] = shape === 'long-hexagon' ? [corners, width!] : [width!, height!];
        if (shape !== 'long-hexagon' || style === 'pointed')
          expect(upright).toBeCloseTo(Math.max(wide, high), 9);
        const { side } = startSquareTurned(patch);
        expect(side).toBeLessThanOrEqual(upright + 1e-9);
        expect(side * side).toBeGreaterThan(patch.cut.area * (1 - 1e-12));
      }),
    );
  });

  test('a 1-inch hexagon with ¼ in: 2.5774 upright, 2.4895 turned by 15°, 2½ blunt', () => {
    const pointed = cutPatch('hexagon', { edge: 1 }, 0.25, 'pointed');
    expect(startSquare(pointed)).toBeCloseTo(2.5774, 4);
    // Worked from figures already rounded, 1.9319 · 1.2887, it comes out as 2.4896.
    expect(startSquareTurned(pointed).side).toBeCloseTo(
      2 * (1 + 0.5 / Math.sqrt(3)) * Math.cos(Math.PI / 12),
      10,
    );
    expect(startSquareTurned(pointed).degrees).toBeCloseTo(15, 8);
    expect(startSquare(cutPatch('hexagon', { edge: 1 }, 0.25, 'blunt'))).toBeCloseTo(2.5, 10);
  });
});
