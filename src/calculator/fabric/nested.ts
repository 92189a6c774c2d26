import type { CutPatch, ShapeName } from '../shapes/shape.ts';
import { coreGrid } from './core-grid.ts';
import { doubleRows } from './double-rows.ts';
import { type Lay, oneWayRow } from './lay.ts';
import { lieOf } from './lie.ts';
import { laysAt } from './roomier.ts';
import { scaleRows } from './scale-rows.ts';
import { evenly } from './spacing.ts';

/**
 * The shapes that a double row wastes less of than a strip, and how each is turned for it, in degrees from
 * its base. Kites (a diagonal along the row), flat-to-flat halves and long hexagons leave nothing between
 * them, thirds and octagons about a tenth. Pentagons cover (5 − √5)/3 of the cloth, the most that they can
 * (arXiv 1602.07220, abstract).
 */
const TURNS: Readonly<Partial<Record<ShapeName, readonly number[]>>> = {
  kite: [60, 150],
  third: [0, 30],
  'half-hexagon-flats': [0, 30],
  'long-hexagon': [90],
  octagon: [0],
  pentagon: [18],
};

/** The shapes that are nested in a way of their own. */
const OWN: Readonly<Partial<Record<ShapeName, (patch: CutPatch) => Lay[]>>> = {
  hexagon: (patch) => [honeycomb(patch)],
  clamshell: scaleRows,
  'apple-core': coreGrid,
};

/** Rows that reach into each other and share lines, traced and cut by hand. */
export const nestedLays = (patch: CutPatch): Lay[] =>
  OWN[patch.shape]?.(patch) ?? laysAt(TURNS[patch.shape] ?? [], patch, doubleRows);

/**
 * The honeycomb: every second row half a hexagon along, rows three quarters of a point-to-point apart. With
 * blunt corners the sides still meet, only the outermost tips take less cloth. Practice of the trade,
 * derived from the tiling of the plane.
 */
function honeycomb(patch: CutPatch): Lay {
  const lie = lieOf(patch.cut.outline, 90);
  const flats = lie.width;
  return {
    method: 'nested',
    patch,
    rows: [oneWayRow(lie, flats), oneWayRow(lie, flats, flats / 2)],
    stack: evenly(lie.height, (flats * Math.sqrt(3)) / 2),
    cutAngles: [],
  };
}
