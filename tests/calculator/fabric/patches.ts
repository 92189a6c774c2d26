import fc from 'fast-check';
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
];

export const CORNERS: readonly CornerStyle[] = ['pointed', 'blunt'];

/** Inches, as members write them and in between. */
export const inches = (min: number, max: number) =>
  fc.oneof(
    fc.integer({ min: min * 16, max: max * 16 }).map((sixteenths) => sixteenths / 16),
    fc.double({ min, max, noNaN: true }),
  );

export const anyPatch = fc
  .record({
    shape: fc.constantFrom(...SHAPES),
    edge: inches(0.5, 4),
    seam: fc.constantFrom(0, 0.125, 0.25, 0.375, 0.5),
    corners: fc.constantFrom(...CORNERS),
  })
  .map(({ shape, edge, seam, corners }) => patch(shape, edge, seam, corners));
