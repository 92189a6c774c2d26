import fc from 'fast-check';
import { CATALOGUE } from '../../../src/calculator/shapes/catalogue.ts';
import { cutPatch } from '../../../src/calculator/shapes/cut.ts';
import type { CornerStyle, ShapeName } from '../../../src/calculator/shapes/shape.ts';

/** A pointed patch by shape, finished edge and seam; a rectangle is half as high again as it is wide. */
export const patch = (shape: ShapeName, edge: number, seam = 0.25, corners: CornerStyle = 'pointed') =>
  cutPatch(shape, shape === 'rectangle' ? { edge, side: 1.5 * edge } : { edge }, seam, corners);

export const SHAPES: readonly ShapeName[] = [
  'hexagon',
  'diamond',
  'triangle',
  'half-hexagon',
  'half-hexagon-flats',
  'kite',
  'third',
  'square',
  'rectangle',
  'long-hexagon',
  'diamond45',
  'octagon',
  'pentagon',
  'tumbler',
  'clamshell',
  'apple-core',
];

export const CORNERS: readonly CornerStyle[] = ['pointed', 'blunt'];

/** Inches, as members write them and in between. */
export const inches = (min: number, max: number) =>
  fc.oneof(
    fc.integer({ min: min * 16, max: max * 16 }).map((sixteenths) => sixteenths / 16),
    fc.double({ min, max, noNaN: true }),
  );

const isCurved = (shape: ShapeName): boolean => CATALOGUE[shape].corners === 'rounded';
export const CURVED = SHAPES.filter(isCurved);
const STRAIGHT = SHAPES.filter((shape) => !isCurved(shape));

const corner = fc.constantFrom(...CORNERS);
const seam = fc.constantFrom(0, 0.125, 0.25, 0.375, 0.5);

/** A straight-sided patch; an octagon no wider than the narrowest cloth that is tried, 8 in. */
export const anyPatch = fc
  .record({ shape: fc.constantFrom(...STRAIGHT), edge: inches(0.5, 4), seam, corner })
  .map(({ shape, edge, seam, corner }) =>
    patch(shape, shape === 'octagon' ? Math.min(edge, 2.5) : edge, seam, corner),
  );

/** A patch with arcs; its seam leaves some of its hollows. */
export const anyCurvedPatch = fc
  .record({ shape: fc.constantFrom(...CURVED), edge: inches(1.25, 4), seam, corner })
  .map(({ shape, edge, seam, corner }) => patch(shape, edge, seam, corner));
