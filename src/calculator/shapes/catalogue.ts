import { appleCore, clamshell } from './curves.ts';
import { diamond, halfHexagon, halfHexagonFlats, hexagon, kite, third, triangle } from './hexagons.ts';
import type { MeasureName, Shape, ShapeName } from './shape.ts';
import { diamond45, longHexagon, octagon, pentagon, rectangle, square, tumbler } from './straights.ts';

/** Every shape by the name that is typed. */
export const CATALOGUE: Readonly<Record<ShapeName, Shape>> = {
  hexagon,
  diamond,
  triangle,
  'half-hexagon': halfHexagon,
  'half-hexagon-flats': halfHexagonFlats,
  kite,
  third,
  square,
  rectangle,
  'long-hexagon': longHexagon,
  diamond45,
  octagon,
  pentagon,
  tumbler,
  clamshell,
  'apple-core': appleCore,
};

/** The names of the shapes, in the order in which they are offered. */
export const shapeNames = Object.keys(CATALOGUE) as readonly ShapeName[];

/**
 * The measures by which a shape's size may be given. The edge of a hexagon's part is the whole hexagon's
 * finished edge, so it can be given finished only.
 *
 * @example
 * measuresOf('triangle', 'cut') // ["edge", "width", "height"]
 * measuresOf('third', 'cut').includes('edge') // false
 */
export const measuresOf = (name: ShapeName, given: 'finished' | 'cut'): MeasureName[] => {
  const { measures } = CATALOGUE[name];
  const names = Object.keys(measures) as MeasureName[];
  return names.filter((measure) => given === 'finished' || measures[measure]?.of !== 'whole');
};
