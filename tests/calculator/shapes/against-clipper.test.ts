import { areaD, EndType, getBoundsPathsD, inflatePathsD, JoinType } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CATALOGUE, shapeNames } from '../../../src/calculator/shapes/catalogue.ts';
import { area, box } from '../../../src/calculator/shapes/extent.ts';
import { flatten } from '../../../src/calculator/shapes/flatten.ts';
import { offset } from '../../../src/calculator/shapes/offset.ts';
import type { Outline } from '../../../src/calculator/shapes/outline.ts';
import type { CornerAllowance, ShapeName } from '../../../src/calculator/shapes/shape.ts';
import { appleCore, clamshell, convex, longHexagon, regular, rhombus, seams, tumbler } from './outlines.ts';

// The same offset by clipper2-ts, a polygon library that shares no code with this one. It works on a grid of
// 10^-8 in, and walks arcs in straight steps.

const JOINS: Record<CornerAllowance, JoinType> = {
  pointed: JoinType.Miter,
  blunt: JoinType.Square,
  rounded: JoinType.Round,
};

const GRID = 8;
const STEP = 4e-6;
/** A mitre may reach this many times the seam: sharper corners than any here. */
const MITRE_LIMIT = 100;

const clipped = (outline: Outline, seam: number, corners: CornerAllowance) => {
  const path = flatten(outline, STEP);
  const cut = inflatePathsD([path], seam, JOINS[corners], EndType.Polygon, MITRE_LIMIT, GRID, STEP);
  const { left, right, top, bottom } = getBoundsPathsD(cut);
  return {
    pieces: cut.length,
    area: cut.reduce((total, piece) => total + areaD(piece), 0),
    bounds: [left, Math.min(top, bottom), right, Math.max(top, bottom)],
  };
};

const ours = (outline: Outline, seam: number, corners: CornerAllowance) => {
  const cut = offset(outline, seam, corners);
  const { left, bottom, width, height } = box(cut);
  return { pieces: 1, area: area(cut), bounds: [left, bottom, left + width, bottom + height] };
};

const agree = (outline: Outline, seam: number, corners: CornerAllowance, within: number): void => {
  const [a, b] = [ours(outline, seam, corners), clipped(outline, seam, corners)];
  expect(b.pieces).toBe(a.pieces);
  expect(Math.abs(a.area - b.area)).toBeLessThan(within);
  for (const [i, bound] of a.bounds.entries()) expect(Math.abs(bound - b.bounds[i]!)).toBeLessThan(within);
};

const drawn = (name: ShapeName): [string, Outline] => [name, CATALOGUE[name].outline({ edge: 1.5, side: 2 })];
const isCurved = (name: ShapeName): boolean => CATALOGUE[name].corners === 'rounded';

const STRAIGHT: [string, Outline][] = [
  ...shapeNames.filter((name) => !isCurved(name)).map(drawn),
  ['octagon', regular(8, 1.5)],
  ['pentagon', regular(5, 1.5)],
  ['45° diamond', rhombus(1.5, 45)],
  ...[20, 60, 140].map((point): [string, Outline] => [
    `long hexagon of ${point}°`,
    longHexagon(1.5, 2, point),
  ]),
  ['low tumbler', tumbler(3, 1, 0.8)],
];

describe.each(STRAIGHT)('%s', (_, outline) => {
  test.each([0.125, 0.25, 0.375])('seam %d', (seam) => {
    agree(outline, seam, 'pointed', 1e-6);
    agree(outline, seam, 'blunt', 1e-6);
    agree(outline, seam, 'rounded', 1e-4);
  });
});

describe('outlines with arcs', () => {
  test.each<[string, Outline]>([
    ...shapeNames.filter(isCurved).map(drawn),
    ['clamshell', clamshell(3)],
    ['apple-core of quarter arcs', appleCore(4, 90)],
    ['apple-core of flat arcs', appleCore(3, 45)],
  ])('%s, rounded', (_, outline) => {
    for (const seam of [0.125, 0.25, 0.375]) agree(outline, seam, 'rounded', 1e-4);
  });
});

test('any convex outline', () => {
  fc.assert(
    fc.property(convex, seams, (outline, seam) => {
      agree(outline, seam, 'pointed', 1e-5);
      agree(outline, seam, 'rounded', 1e-3);
    }),
  );
});
