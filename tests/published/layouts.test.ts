/**
 * The layouts against what others have published: entries of the On-Line Encyclopedia of Integer Sequences
 * (oeis.org, terms as printed there), and the enumeration of the honeycomb-grid library.
 */
import { Direction, defineHex, Grid, type Hex, Orientation, rectangle, spiral } from 'honeycomb-grid';
import { describe, expect, it } from 'vitest';
import { blocks } from '../../src/calculator/layouts/blocks.ts';
import { field } from '../../src/calculator/layouts/field.ts';
import { outlineOf, type PatchList } from '../../src/calculator/layouts/patches.ts';
import { rosette, rosetteTotal } from '../../src/calculator/layouts/rosette.ts';
import { star, starTotal } from '../../src/calculator/layouts/star.ts';
import { type Tally, tally } from '../../src/calculator/layouts/tally.ts';
import type { Point } from '../../src/calculator/shapes/outline.ts';
import { areaOf, clipped, given } from '../calculator/layouts/by-eye.ts';

const rosetteOf = (R: number): Tally => tally(given(rosette(R)).patches);

interface Entry {
  readonly entry: string;
  readonly says: string;
  readonly from: number;
  readonly terms: readonly number[];
  readonly formula: (n: number) => number;
  readonly counted: (n: number) => number;
}

/** The first n hexagons of a rosette, in the order in which it is sewn: a spiral. */
const SPIRAL = given(rosette(5)).patches;
const spiralOf = (n: number): Tally => tally({ ...SPIRAL, count: n });

const least = (n: number): number => Math.ceil(Math.sqrt(12 * n - 3));

const ENTRIES: Entry[] = [
  {
    entry: 'A003215',
    says: 'hex numbers: pieces of a rosette',
    from: 0,
    terms: [1, 7, 19, 37, 61, 91, 127, 169, 217, 271, 331, 397],
    formula: (n) => 3 * n * (n + 1) + 1,
    counted: (n) => rosetteOf(n).total,
  },
  {
    entry: 'A045945',
    says: 'hexagonal matchstick numbers: seams of a rosette',
    from: 0,
    terms: [0, 12, 42, 90, 156, 240, 342, 462, 600, 756],
    formula: (n) => 3 * n * (3 * n + 1),
    counted: (n) => rosetteOf(n).seams,
  },
  {
    entry: 'A033581',
    says: '6n²: set-in corners of a rosette',
    from: 0,
    terms: [0, 6, 24, 54, 96, 150, 216, 294, 384, 486],
    formula: (n) => 6 * n * n,
    counted: (n) => rosetteOf(n).setIns,
  },
  {
    entry: 'A033581',
    says: '6n²: diamonds of a star',
    from: 1,
    terms: [6, 24, 54, 96, 150, 216, 294, 384, 486],
    formula: starTotal,
    counted: (n) => tally(given(star(n)).patches).total,
  },
  {
    entry: 'A152743',
    says: '6 times pentagonal numbers: all edges of a rosette of n − 1 rounds (terms from memory)',
    from: 1,
    terms: [6, 30, 72, 132, 210],
    formula: (n) => 3 * n * (3 * n - 1),
    counted: (n) => rosetteOf(n - 1).seams + rosetteOf(n - 1).outline,
  },
  {
    entry: 'A152746',
    says: '6 times hexagonal numbers: seams of a star',
    from: 1,
    terms: [6, 36, 90, 168, 270, 396, 546, 720, 918, 1140],
    formula: (n) => 6 * n * (2 * n - 1),
    counted: (n) => tally(given(star(n)).patches).seams,
  },
  {
    entry: 'A094159',
    says: '3 times hexagonal numbers: seams of tumbling blocks in a hexagon',
    from: 1,
    terms: [3, 18, 45, 84, 135, 198, 273, 360, 459, 570],
    formula: (n) => 3 * n * (2 * n - 1),
    counted: (n) => tally(given(blocks(n)).patches).seams,
  },
  {
    entry: 'A135711',
    says: 'least outline of n hexagons, which a spiral has',
    from: 1,
    terms: [
      6, 10, 12, 14, 16, 18, 18, 20, 22, 22, 24, 24, 26, 26, 28, 28, 30, 30, 30, 32, 32, 34, 34, 34, 36,
    ],
    formula: (n) => 2 * least(n),
    counted: (n) => spiralOf(n).outline,
  },
  {
    entry: 'A135708',
    says: 'least number of edges of n hexagons, which a spiral has',
    from: 1,
    terms: [
      6, 11, 15, 19, 23, 27, 30, 34, 38, 41, 45, 48, 52, 55, 59, 62, 66, 69, 72, 76, 79, 83, 86, 89, 93,
    ],
    formula: (n) => 3 * n + least(n),
    counted: (n) => spiralOf(n).seams + spiralOf(n).outline,
  },
  {
    entry: 'A047932',
    says: 'most contacts of n pennies, laid in a spiral: most seams of n hexagons',
    from: 1,
    terms: [0, 1, 3, 5, 7, 9, 12, 14, 16, 19, 21, 24, 26, 29, 31, 34, 36, 39, 42, 44, 47, 49, 52, 55, 57, 60],
    formula: (n) => 3 * n - least(n),
    counted: (n) => spiralOf(n).seams,
  },
  {
    entry: 'A121149',
    says: 'least number of corners of n hexagons, which a spiral has',
    from: 1,
    terms: [
      6, 10, 13, 16, 19, 22, 24, 27, 30, 32, 35, 37, 40, 42, 45, 47, 50, 52, 54, 57, 59, 62, 64, 66, 69,
    ],
    formula: (n) => 2 * n + 1 + least(n),
    counted: (n) => spiralOf(n).corners,
  },
];

describe.each(ENTRIES)('OEIS $entry, $says', ({ from, terms, formula, counted }) => {
  it('is what is counted from placed patches', () => {
    expect(terms.map((_, i) => counted(from + i))).toEqual(terms);
  });

  it('is what its formula gives', () => {
    expect(terms.map((_, i) => formula(from + i))).toEqual(terms);
    for (let n = from; n < from + 40; n++) {
      if (n <= rosetteTotal(5)) expect(counted(n)).toBe(formula(n));
    }
  });
});

describe('OEIS A047932 as a bound', () => {
  it('no field has more seams than its patches can have', () => {
    for (const [width, height] of [
      [9, 9],
      [20, 3],
      [3, 20],
      [12, 31],
    ] as const) {
      const { total, seams } = tally(
        given(field({ width, height, edge: 1, rows: 'across', sides: 'whole' })).patches,
      );
      expect(seams).toBeLessThanOrEqual(3 * total - least(total));
    }
  });
});

const Pointed = defineHex({ dimensions: 1, orientation: Orientation.POINTY });
const Flat = defineHex({ dimensions: 1, orientation: Orientation.FLAT });
const KINDS = { across: Pointed, down: Flat };

const named = (outline: readonly Point[]): string =>
  outline
    .map(({ x, y }) => `${Math.round(x * 1e4) + 0},${Math.round(y * 1e4) + 0}`)
    .sort()
    .join(' ');

const ours = (list: PatchList): string[] =>
  Array.from({ length: list.count }, (_, i) => named(outlineOf(list, i, 1))).sort();

const theirs = (hexes: Iterable<Hex>): string[] => [...hexes].map((hex) => named(hex.corners)).sort();

/** Pairs of neighbours in a grid: half of all its hexagons' neighbours that are in it. */
function seamsOf(grid: Grid<Hex>, orientation: Orientation): number {
  const { N, NE, E, SE, S, SW, W, NW } = Direction;
  const around = orientation === Orientation.POINTY ? [NE, E, SE, SW, W, NW] : [N, NE, SE, S, SW, NW];
  const met = [...grid].flatMap((hex) =>
    around.filter((way) => grid.neighborOf([hex.q, hex.r], way, { allowOutside: false }) !== undefined),
  );
  return met.length / 2;
}

describe('honeycomb-grid', () => {
  it.each([0, 1, 2, 3, 6, 9])('its spiral of radius %i is our rosette of so many rounds', (R) => {
    const grid = new Grid(Pointed, spiral({ radius: R }));
    const { patches } = given(rosette(R));
    expect(ours(patches)).toEqual(theirs(grid));
    expect(tally(patches).seams).toBe(seamsOf(grid, Orientation.POINTY));
    expect(tally(patches).total).toBe(grid.size);
  });

  const QUILTS = [
    { width: 20, height: 17, edge: 1 },
    { width: 19, height: 16, edge: 1 },
    { width: 21.3, height: 9.9, edge: 1 },
    { width: 5.1, height: 30, edge: 1 },
  ].flatMap((quilt) => (['across', 'down'] as const).map((rows) => ({ ...quilt, rows })));

  /** More of the endless honeycomb than any of the quilts shows. */
  const endless = (rows: 'across' | 'down') =>
    new Grid(KINDS[rows], rectangle({ start: { col: -4, row: -4 }, width: 36, height: 36 }));

  it.each(QUILTS)('has the same whole hexagons in $width × $height, rows $rows', (quilt) => {
    const made = given(field({ ...quilt, sides: 'whole' }));
    const corner =
      quilt.rows === 'across' ? { x: -Math.sqrt(3) / 2, y: -1 } : { x: -1, y: -Math.sqrt(3) / 2 };
    const fits = ({ x, y }: Point): boolean =>
      x > corner.x - 1e-9 &&
      y > corner.y - 1e-9 &&
      x < corner.x + quilt.width + 1e-9 &&
      y < corner.y + quilt.height + 1e-9;
    const grid = endless(quilt.rows).filter((hex) => hex.corners.every(fits));
    expect(grid.size).toBe(made.inside);
    expect(ours(made.patches)).toEqual(theirs(grid));
    const orientation = quilt.rows === 'across' ? Orientation.POINTY : Orientation.FLAT;
    expect(tally(made.patches).seams).toBe(seamsOf(grid, orientation));
  });

  it.each(QUILTS)('has the same hexagons over $width × $height, rows $rows', (quilt) => {
    const made = given(field({ ...quilt, sides: 'cover' }));
    const shows = (hex: Hex): boolean => areaOf(clipped(hex.corners, made.trim!)) > 1e-9;
    const grid = endless(quilt.rows).filter(shows);
    expect(ours(made.patches)).toEqual(theirs(grid));
    expect(grid.size).toBe(made.cover);
  });
});
