import { box, boxHeight, boxWidth, middles, radius } from './readings.ts';
import type { Shape } from './shape.ts';

/** The usual angle of an apple-core's arcs, in degrees: a quarter circle. */
export const QUARTER_ARC = 90;

/** A half circle above two hollow quarter circles that come together below in a cusp, which stands at (0, 0). */
export const clamshell: Shape = {
  name: 'clamshell',
  title: 'clamshell',
  titles: 'clamshells',
  outline: ({ edge }) => {
    const [r, hollow] = [edge / 2, -Math.tan(Math.PI / 8)];
    return [
      { x: 0, y: 0, bulge: hollow },
      { x: r, y: r, bulge: 1 },
      { x: -r, y: r, bulge: hollow },
    ];
  },
  measures: { edge: boxWidth, ...box, convexRadius: radius(1), concaveRadius: radius(0) },
  sizes: ['edge'],
  told: ['width', 'height', 'convexRadius', 'concaveRadius'],
  corners: 'rounded',
  strip: { height: 'height', angles: [90], step: 'width', stepTaken: 'square', trim: [] },
};

/**
 * A square of its edge whose left and right sides swell and whose other two are hollow, all by arcs of one
 * angle. Quarter circles are usual: then both swellings are of the circle through the four corners.
 */
export const appleCore: Shape = {
  name: 'apple-core',
  title: 'apple-core',
  titles: 'apple-cores',
  outline: ({ edge: chord, angle = QUARTER_ARC }) => {
    const bulge = Math.tan((angle * Math.PI) / 720);
    return [
      { x: 0, y: 0, bulge: -bulge },
      { x: chord, y: 0, bulge },
      { x: chord, y: chord, bulge: -bulge },
      { x: 0, y: chord, bulge },
    ];
  },
  measures: {
    edge: boxHeight,
    corners: boxHeight,
    ...box,
    shortSide: middles(0, 2),
    convexRadius: radius(1),
    concaveRadius: radius(0),
  },
  sizes: ['edge', 'width'],
  told: ['edge', 'width', 'shortSide', 'convexRadius', 'concaveRadius'],
  also: { angle: null },
  corners: 'rounded',
  strip: { height: 'height', angles: [90], step: 'width', stepTaken: 'square', trim: [] },
};
