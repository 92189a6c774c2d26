import { across, box, side, tips, whole } from './readings.ts';
import type { Shape } from './shape.ts';

const ROOT3 = Math.sqrt(3);

/** Lies on a flat, so its width is point to point and its height flat to flat. */
export const hexagon: Shape = {
  name: 'hexagon',
  title: 'hexagon',
  titles: 'hexagons',
  outline: ({ edge: a }) => [
    { x: 0, y: 0 },
    { x: a, y: 0 },
    { x: 1.5 * a, y: (ROOT3 / 2) * a },
    { x: a, y: ROOT3 * a },
    { x: 0, y: ROOT3 * a },
    { x: -0.5 * a, y: (ROOT3 / 2) * a },
  ],
  measures: { edge: side(0), flats: across(0, 3), corners: tips(2, 5), ...box },
  sizes: ['edge', 'flats', 'corners'],
  told: ['edge', 'flats', 'corners'],
  strip: { height: 'flats', angles: [60], step: 'flats', stepTaken: 'square', trim: [60] },
};

/** Lies on a side, its sharp corner at the left end of the base. */
export const diamond: Shape = {
  name: 'diamond',
  title: '60° diamond',
  titles: '60° diamonds',
  outline: ({ edge: a }) => [
    { x: 0, y: 0 },
    { x: a, y: 0 },
    { x: 1.5 * a, y: (ROOT3 / 2) * a },
    { x: 0.5 * a, y: (ROOT3 / 2) * a },
  ],
  measures: {
    edge: side(0),
    flats: across(0, 2),
    corners: tips(0, 2),
    longDiagonal: tips(0, 2),
    shortDiagonal: tips(1, 3),
    ...box,
  },
  sizes: ['edge', 'height', 'longDiagonal'],
  told: ['edge', 'height', 'shortDiagonal', 'longDiagonal'],
  strip: { height: 'height', angles: [60], step: 'height', stepTaken: 'square', trim: [] },
};

export const triangle: Shape = {
  name: 'triangle',
  title: 'equilateral triangle',
  titles: 'equilateral triangles',
  outline: ({ edge: a }) => [
    { x: 0, y: 0 },
    { x: a, y: 0 },
    { x: 0.5 * a, y: (ROOT3 / 2) * a },
  ],
  measures: { edge: side(0), ...box },
  sizes: ['edge', 'height'],
  told: ['edge', 'height'],
  strip: { height: 'height', angles: [60, 120], step: 'edge', stepTaken: 'along', trim: [] },
};

/** Cut from corner to corner; lies on the cut. */
export const halfHexagon: Shape = {
  name: 'half-hexagon',
  title: 'half-hexagon (point to point)',
  titles: 'half-hexagons (point to point)',
  outline: ({ edge: a }) => [
    { x: 0, y: 0 },
    { x: 2 * a, y: 0 },
    { x: 1.5 * a, y: (ROOT3 / 2) * a },
    { x: 0.5 * a, y: (ROOT3 / 2) * a },
  ],
  measures: { edge: whole, longSide: side(0), shortSide: side(2), leg: side(1), ...box },
  sizes: ['edge', 'height', 'longSide'],
  told: ['longSide', 'shortSide', 'leg', 'height'],
  strip: { height: 'height', angles: [60, 120], step: 'longSide', stepTaken: 'along', trim: [] },
};

/** Cut from flat to flat; lies on the cut, a corner up. */
export const halfHexagonFlats: Shape = {
  name: 'half-hexagon-flats',
  title: 'half-hexagon (flat to flat)',
  titles: 'half-hexagons (flat to flat)',
  outline: ({ edge: a }) => [
    { x: 0, y: 0 },
    { x: ROOT3 * a, y: 0 },
    { x: ROOT3 * a, y: 0.5 * a },
    { x: (ROOT3 / 2) * a, y: a },
    { x: 0, y: 0.5 * a },
  ],
  measures: { edge: whole, longSide: side(0), shortSide: side(1), leg: side(2), ...box },
  sizes: ['edge', 'longSide'],
  told: ['longSide', 'shortSide', 'leg', 'height'],
  strip: { height: 'height', angles: [90], step: 'longSide', stepTaken: 'square', trim: [30] },
};

/** A sixth, from the centre to two neighbouring mid-sides; lies on a long side, the centre at its left end. */
export const kite: Shape = {
  name: 'kite',
  title: 'kite (a sixth of a hexagon)',
  titles: 'kites (sixths of a hexagon)',
  outline: ({ edge: a }) => [
    { x: 0, y: 0 },
    { x: (ROOT3 / 2) * a, y: 0 },
    { x: (ROOT3 / 2) * a, y: 0.5 * a },
    { x: (ROOT3 / 4) * a, y: 0.75 * a },
  ],
  measures: {
    edge: whole,
    longSide: side(0),
    shortSide: side(1),
    longDiagonal: tips(0, 2),
    shortDiagonal: tips(1, 3),
    ...box,
  },
  sizes: ['edge', 'longSide', 'shortSide'],
  told: ['longSide', 'shortSide', 'longDiagonal'],
  strip: { height: 'height', angles: [90], step: 'width', stepTaken: 'square', trim: [60, 30] },
};

/** From the centre to three alternate mid-sides; lies on its whole side, the centre up. */
export const third: Shape = {
  name: 'third',
  title: 'third of a hexagon (5 sides)',
  titles: 'thirds of a hexagon (5 sides)',
  outline: ({ edge: a }) => [
    { x: 0, y: 0 },
    { x: a, y: 0 },
    { x: 1.25 * a, y: (ROOT3 / 4) * a },
    { x: 0.5 * a, y: (ROOT3 / 2) * a },
    { x: -0.25 * a, y: (ROOT3 / 4) * a },
  ],
  measures: { edge: whole, longSide: side(2), shortSide: side(1), leg: side(0), ...box },
  sizes: ['edge', 'longSide', 'shortSide'],
  told: ['longSide', 'shortSide', 'leg', 'height', 'width'],
  strip: { height: 'height', angles: [90], step: 'width', stepTaken: 'square', trim: [60, 30] },
};
