import { diamond } from './hexagons.ts';
import { across, box, side, tips } from './readings.ts';
import type { Dimensions, Shape } from './shape.ts';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

export const square: Shape = {
  name: 'square',
  title: 'square',
  titles: 'squares',
  outline: ({ edge: a }) => [
    { x: 0, y: 0 },
    { x: a, y: 0 },
    { x: a, y: a },
    { x: 0, y: a },
  ],
  measures: { edge: side(0), flats: across(0, 2), corners: tips(0, 2), ...box },
  sizes: ['edge', 'corners'],
  told: ['edge', 'corners'],
  strip: { height: 'height', angles: [90], step: 'width', stepTaken: 'square', trim: [] },
};

/** Its edge is the base and its width; without a second dimension it is a square. */
export const rectangle: Shape = {
  name: 'rectangle',
  title: 'rectangle',
  titles: 'rectangles',
  outline: ({ edge, side: height = edge }) => [
    { x: 0, y: 0 },
    { x: edge, y: 0 },
    { x: edge, y: height },
    { x: 0, y: height },
  ],
  measures: { edge: side(0), ...box },
  sizes: ['width'],
  told: ['width', 'height'],
  second: 'height',
  also: { side: 'height' },
  strip: { height: 'height', angles: [90], step: 'width', stepTaken: 'square', trim: [] },
};

/** The usual angle of a long hexagon's points, in degrees: the corner of a square. */
export const SQUARE_POINT = 90;

/** Lies on a long side, a point at the left and at the right; its edge is the slanted side. */
export const longHexagon: Shape = {
  name: 'long-hexagon',
  title: 'long hexagon',
  titles: 'long hexagons',
  outline: ({ edge: a, side: b = a, angle = SQUARE_POINT }) => {
    const [along, up] = [a * Math.cos(radians(angle / 2)), a * Math.sin(radians(angle / 2))];
    return [
      { x: 0, y: 0 },
      { x: b, y: 0 },
      { x: b + along, y: up },
      { x: b, y: 2 * up },
      { x: 0, y: 2 * up },
      { x: -along, y: up },
    ];
  },
  measures: {
    edge: side(1),
    leg: side(1),
    longSide: side(0),
    flats: across(0, 3),
    width: across(0, 3),
    corners: tips(2, 5),
  },
  sizes: ['edge', 'width', 'corners'],
  told: ['leg', 'longSide', 'width', 'corners'],
  also: { side: 'longSide', angle: null },
  strip: {
    height: 'width',
    angles: ({ angle = SQUARE_POINT }) => [angle / 2],
    step: 'corners',
    stepTaken: 'along',
    trim: ({ angle = SQUARE_POINT }) => [angle / 2],
  },
};

/** Lies on a side, its sharp corner at the left end of the base. */
export const diamond45: Shape = {
  name: 'diamond45',
  title: '45° diamond',
  titles: '45° diamonds',
  outline: ({ edge: a }) => [
    { x: 0, y: 0 },
    { x: a, y: 0 },
    { x: a + a / Math.SQRT2, y: a / Math.SQRT2 },
    { x: a / Math.SQRT2, y: a / Math.SQRT2 },
  ],
  measures: diamond.measures,
  sizes: ['edge', 'height', 'longDiagonal'],
  told: ['edge', 'height', 'shortDiagonal', 'longDiagonal'],
  strip: { height: 'height', angles: [45], step: 'height', stepTaken: 'square', trim: [] },
};

export const octagon: Shape = {
  name: 'octagon',
  title: 'octagon',
  titles: 'octagons',
  outline: ({ edge: a }) => {
    const slant = a / Math.SQRT2;
    return [
      { x: 0, y: 0 },
      { x: a, y: 0 },
      { x: a + slant, y: slant },
      { x: a + slant, y: a + slant },
      { x: a, y: a + 2 * slant },
      { x: 0, y: a + 2 * slant },
      { x: -slant, y: a + slant },
      { x: -slant, y: slant },
    ];
  },
  measures: { edge: side(0), flats: across(0, 4), corners: tips(0, 4), ...box },
  sizes: ['edge', 'flats', 'corners'],
  told: ['edge', 'flats', 'corners'],
  strip: { height: 'flats', angles: [90], step: 'flats', stepTaken: 'square', trim: [45] },
};

/** Lies on a side, a point up. */
export const pentagon: Shape = {
  name: 'pentagon',
  title: 'pentagon',
  titles: 'pentagons',
  outline: ({ edge: a }) => {
    const [lean, low, high] = [
      a * Math.cos(radians(72)),
      a * Math.sin(radians(72)),
      a * Math.sin(radians(36)),
    ];
    return [
      { x: 0, y: 0 },
      { x: a, y: 0 },
      { x: a + lean, y: low },
      { x: a / 2, y: low + high },
      { x: -lean, y: low },
    ];
  },
  measures: { edge: side(0), ...box },
  sizes: ['edge', 'height'],
  told: ['edge', 'height', 'width'],
  strip: { height: 'height', angles: [90], step: 'width', stepTaken: 'square', trim: [72, 36] },
};

/** How far a tumbler's sides lean from its base, in degrees. */
const tumblerLean = ({ edge, narrow = (2 / 3) * edge, height = edge }: Dimensions): number =>
  (Math.atan2(2 * height, edge - narrow) * 180) / Math.PI;

/** Lies on its wide end. Usually the narrow end is two thirds of the wide one, and it is as high as it is wide. */
export const tumbler: Shape = {
  name: 'tumbler',
  title: 'tumbler',
  titles: 'tumblers',
  outline: ({ edge, narrow = (2 / 3) * edge, height = edge }) => [
    { x: 0, y: 0 },
    { x: edge, y: 0 },
    { x: (edge + narrow) / 2, y: height },
    { x: (edge - narrow) / 2, y: height },
  ],
  measures: { edge: side(0), longSide: side(0), shortSide: side(2), leg: side(1), ...box },
  sizes: ['edge', 'height'],
  told: ['longSide', 'shortSide', 'height', 'leg'],
  also: { narrow: 'shortSide', height: 'height' },
  not: ({ edge, narrow = 0 }) => (narrow < edge ? null : 'not-narrower'),
  strip: {
    height: 'height',
    angles: (dimensions) => [tumblerLean(dimensions), 180 - tumblerLean(dimensions)],
    step: 'longSide',
    stepTaken: 'along',
    trim: [],
  },
};
