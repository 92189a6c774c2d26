import { describe, expect, test } from 'vitest';
import { CATALOGUE, measuresOf, shapeNames } from '../../../src/calculator/shapes/catalogue.ts';
import { cutPatch } from '../../../src/calculator/shapes/cut.ts';
import { area } from '../../../src/calculator/shapes/extent.ts';
import type { Outline } from '../../../src/calculator/shapes/outline.ts';
import type { ShapeName } from '../../../src/calculator/shapes/shape.ts';
import { stripFor } from '../../../src/calculator/shapes/strip.ts';
import { exteriorAngles, sideLength } from './outlines.ts';

const UNIT = { edge: 1, side: 1 };
const finished = (name: ShapeName): Outline => CATALOGUE[name].outline(UNIT);
const inDegrees = (radians: number): number => Math.round((radians * 180) / Math.PI);

/** Interior angles, degrees, as anyone may look them up for the shape. */
const CORNERS: Record<ShapeName, number[]> = {
  hexagon: [120, 120, 120, 120, 120, 120],
  diamond: [60, 120, 60, 120],
  triangle: [60, 60, 60],
  'half-hexagon': [60, 60, 120, 120],
  'half-hexagon-flats': [90, 90, 120, 120, 120],
  kite: [60, 90, 120, 90],
  third: [120, 120, 90, 120, 90],
  square: [90, 90, 90, 90],
  rectangle: [90, 90, 90, 90],
  'long-hexagon': [135, 135, 90, 135, 135, 90],
  diamond45: [45, 135, 45, 135],
  octagon: [135, 135, 135, 135, 135, 135, 135, 135],
  pentagon: [108, 108, 108, 108, 108],
  tumbler: [81, 81, 99, 99],
  clamshell: [0, 90, 90],
  'apple-core': [90, 90, 90, 90],
};

/** Shapes with arcs, which no strip is cut to at an angle. */
const CURVED = shapeNames.filter((name) => finished(name).some(({ bulge }) => bulge !== undefined));

test('two shapes have arcs, and only they have rounded corners', () => {
  expect(CURVED).toEqual(['clamshell', 'apple-core']);
  expect(shapeNames.filter((name) => CATALOGUE[name].corners === 'rounded')).toEqual(CURVED);
});

describe.each([...shapeNames])('%s', (name) => {
  const shape = CATALOGUE[name];

  test('goes by its own name', () => {
    expect(shape.name).toBe(name);
    expect(shape.titles).not.toBe(shape.title);
  });

  test('lies on a base that starts at (0, 0), counter-clockwise, everything above it', () => {
    const outline = finished(name);
    expect(outline[0]).toMatchObject({ x: 0, y: 0 });
    // A clamshell has no base: its cusp stands there.
    if (name !== 'clamshell') expect(outline[1]!.y).toBe(0);
    expect(outline[1]!.x).toBeGreaterThan(0);
    expect(area(outline)).toBeGreaterThan(0);
    for (const { y } of outline) expect(y).toBeGreaterThanOrEqual(0);
  });

  test('has the corners of its kind', () => {
    expect(exteriorAngles(finished(name)).map((turn) => 180 - inDegrees(turn))).toEqual(CORNERS[name]);
  });

  test('grows in every way with its edge', () => {
    const small = cutPatch(name, { edge: 1 }, 0.25, 'pointed').finished;
    const large = cutPatch(name, { edge: 3 }, 0.25, 'pointed').finished;
    for (const measure of measuresOf(name, 'finished'))
      expect(large.measures[measure]).toBeCloseTo(3 * small.measures[measure]!, 10);
    expect(large.area).toBeCloseTo(9 * small.area, 10);
  });

  test('offers and tells only measures that it has, no two alike', () => {
    const { measures } = cutPatch(name, UNIT, 0.25, 'pointed').finished;
    for (const list of [shape.sizes, shape.told]) {
      for (const measure of list) expect(measures[measure]).toBeGreaterThan(0);
      expect(new Set(list).size).toBe(list.length);
    }
    const readings = shape.sizes.map((measure) => JSON.stringify(shape.measures[measure]));
    expect(new Set(readings).size).toBe(readings.length);
    expect(shape.sizes[0]).toBe(name === 'rectangle' ? 'width' : 'edge');
  });

  test('every measure is one that the shape can be asked by, finished; a part of a hexagon has no cut edge', () => {
    expect(measuresOf(name, 'finished')).toEqual(Object.keys(shape.measures));
    const part = shape.measures.edge?.of === 'whole';
    expect(measuresOf(name, 'cut').includes('edge')).toBe(!part);
    expect(cutPatch(name, UNIT, 0.25, 'pointed').cut.measures.edge === undefined).toBe(part);
    expect(cutPatch(name, UNIT, 0.25, 'pointed').finished.measures.edge).toBeCloseTo(1, 12);
  });
});

const straight = shapeNames.filter((name) => !CURVED.includes(name));
/** A clamshell stands on its cusp, a tumbler may be higher than it is wide. */
const lying = shapeNames.filter((name) => name !== 'clamshell' && name !== 'tumbler');

describe('sides and base', () => {
  test.each(lying)('no side of a %s is longer than its base', (name) => {
    const outline = finished(name);
    for (const side of outline.keys())
      expect(sideLength(outline, side)).toBeLessThanOrEqual(sideLength(outline, 0) + 1e-12);
  });

  test.each(straight)(
    'the strip for a %s is cut at the angles that its sides have to its base, or squared off and trimmed',
    (name) => {
      const sharp = (lean: number): number => Math.min(lean % 180, 180 - (lean % 180));
      const leans = new Set<number>();
      let direction = 0;
      for (const turn of exteriorAngles(finished(name)).slice(1).map(inDegrees)) {
        direction += turn;
        leans.add(sharp(direction));
      }
      leans.delete(0);
      const { angles, trim } = stripFor(name, UNIT, 0);
      const cut = new Set([...angles, ...trim].map((angle) => Math.round(sharp(angle))));
      expect([...leans].filter((lean) => !cut.has(lean))).toEqual([]);
      expect([...cut].filter((lean) => !leans.has(lean))).toEqual(
        name === 'third' || name === 'pentagon' ? [90] : [],
      );
    },
  );
});

/** The area that one patch takes of a strip when the strip is cut by the rule: step by height, less the trimming. */
const taken = (name: ShapeName): number => {
  const { height, step, stepTaken, angles } = stripFor(name, { edge: 2 }, 0.25);
  if (stepTaken === 'square') return (height * step) / Math.sin((angles[0]! * Math.PI) / 180);
  if (angles.length === 1) return height * step;
  // Cut by turns at an angle and its other side: a trapezium whose long base is the step.
  return height * (step - height / Math.tan((angles[0]! * Math.PI) / 180));
};

describe('strips', () => {
  const WHOLE = [
    'diamond',
    'triangle',
    'half-hexagon',
    'square',
    'rectangle',
    'diamond45',
    'tumbler',
  ] as const;
  test.each(WHOLE)('a %s comes off the strip whole, nothing to trim', (name) => {
    expect(CATALOGUE[name].strip.trim).toEqual([]);
    expect(taken(name)).toBeCloseTo(cutPatch(name, { edge: 2 }, 0.25, 'pointed').cut.area, 10);
  });

  test('a hexagon is the 60° diamond of its height with a quarter trimmed away', () => {
    expect(0.75 * taken('hexagon')).toBeCloseTo(
      cutPatch('hexagon', { edge: 2 }, 0.25, 'pointed').cut.area,
      10,
    );
  });

  const TRIMMED = [
    'half-hexagon-flats',
    'kite',
    'third',
    'octagon',
    'pentagon',
    'clamshell',
    'apple-core',
  ] as const;
  test.each(TRIMMED)('a %s is trimmed out of its box', (name) => {
    const { cut } = cutPatch(name, { edge: 2 }, 0.25, 'pointed');
    expect(taken(name)).toBeCloseTo(cut.measures.width! * cut.measures.height!, 10);
  });

  test.each([30, 60, 90, 120, 150])(
    'a long hexagon of %i° is trimmed at both ends out of a slanted piece',
    (angle) => {
      const dimensions = { edge: 2, side: 3, angle };
      const { angles, trim, height, step } = stripFor('long-hexagon', dimensions, 0.25);
      expect([angles, trim]).toEqual([[angle / 2], [angle / 2]]);
      // The two corners trimmed away are triangles, their height half the strip's and their base that leans in.
      const { cut } = cutPatch('long-hexagon', dimensions, 0.25, 'pointed');
      const lean = cut.measures.leg! * Math.cos((angle * Math.PI) / 360);
      expect(height * step - 2 * ((height / 2) * lean)).toBeCloseTo(cut.area, 10);
    },
  );
});
