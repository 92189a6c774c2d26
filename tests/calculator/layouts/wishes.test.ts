import { areaPathsD, differenceD, FillRule, unionD } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import { type Arrangement, howMany } from '../../../src/calculator/layouts/arrangement.ts';
import { type AsLargeAs, asLargeAs, type Growing } from '../../../src/calculator/layouts/as-large-as.ts';
import { asManyAsMake, type Standing } from '../../../src/calculator/layouts/as-many-as-make.ts';
import { blocksOver } from '../../../src/calculator/layouts/blocks.ts';
import { fieldCounts } from '../../../src/calculator/layouts/field.ts';
import { garden, gardenStep, type Path } from '../../../src/calculator/layouts/garden.ts';
import {
  diamondGardenStep,
  gardenWithDiamonds,
} from '../../../src/calculator/layouts/garden-with-diamonds.ts';
import { GROWING_ROSETTE, GROWING_STAR, growingDiamonds } from '../../../src/calculator/layouts/growing.ts';
import { type Spot, turned } from '../../../src/calculator/layouts/lattice.ts';
import type { Layout, Rectangle } from '../../../src/calculator/layouts/layout.ts';
import { type PatchList, pointOf } from '../../../src/calculator/layouts/patches.ts';
import { type StarEdge, type StarSet, stars, starsStep } from '../../../src/calculator/layouts/stars.ts';
import { tally } from '../../../src/calculator/layouts/tally.ts';
import type { Point } from '../../../src/calculator/shapes/outline.ts';
import { given, outlines } from './by-eye.ts';

const gardens = (rounds: number, path: Path, outer = false): Standing<Layout> => ({
  step: gardenStep(rounds, path),
  make: (arrangement) => garden({ arrangement, rounds, path, outer }),
});
const diamondGardens = (rounds: number): Standing<Layout> => ({
  step: diamondGardenStep(rounds),
  make: (arrangement) => gardenWithDiamonds({ arrangement, rounds, outer: false }),
});
const starFields = (set: StarSet, edge: StarEdge = 'open'): Standing<Layout> => ({
  step: starsStep(set),
  make: (arrangement) => stars({ arrangement, set, edge }),
});

const STANDING: [string, Standing<Layout>, number, number][] = [
  ['rosettes of 1 round, a shared path', gardens(1, 'one'), 30, 36],
  ['rosettes of 1 round, a shared path and one outside', gardens(1, 'one', true), 30, 36],
  ['rosettes of 2 rounds, a shared path', gardens(2, 'one'), 60, 72],
  ['rosettes of 1 round, no path', gardens(1, 'none'), 25, 31],
  ['rosettes of 2 rounds, a ring each', gardens(2, 'own'), 50, 45],
  ['rosettes of 1 round, set with diamonds', diamondGardens(1), 27, 33],
  ['stars set with diamonds', starFields('diamonds'), 20, 24],
  ['stars set with hexagons', starFields('hexagons'), 21, 18],
];

/** The outlines in edges, turned until the rows are level: worked out apart from the calculator. */
function levelled(list: PatchList, step: Spot): Point[][] {
  const { x, y } = pointOf(turned(step), list.rows, 1);
  const angle = Math.atan2(y, x);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return outlines(list).map((outline) =>
    outline.map((p) => ({ x: p.x * cos + p.y * sin, y: p.y * cos - p.x * sin })),
  );
}

function boxOf(patches: readonly Point[][]): Rectangle {
  const [xs, ys] = [patches.flat().map((p) => p.x), patches.flat().map((p) => p.y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  return { left, top, width: Math.max(...xs) - left, height: Math.max(...ys) - top };
}

const cornersOf = ({ left, top, width, height }: Rectangle): Point[] => [
  { x: left, y: top },
  { x: left + width, y: top },
  { x: left + width, y: top + height },
  { x: left, y: top + height },
];

const covered = (patches: readonly Point[][]) => unionD(patches as Point[][], [], FillRule.NonZero, 7);

/** What of a rectangle an independent library finds not covered by the patches. */
const bare = (rectangle: Rectangle, union: ReturnType<typeof covered>): number =>
  Math.abs(areaPathsD(differenceD([cornersOf(rectangle)], union, FillRule.NonZero, 7)));

describe.each(STANDING)('%s', (_, of, width, height) => {
  const found = given(asManyAsMake(of, width, height));
  const { cover, trim, inside, straight, byArea } = found;
  const patches = levelled(cover.layout.patches, of.step);

  it('cover the quilt where it is trimmed: nothing of it is bare, by an independent library', () => {
    const box = boxOf(patches);
    expect(trim.width).toBeCloseTo(width, 9);
    expect(trim.height).toBeCloseTo(height, 9);
    expect(bare(trim, covered(patches))).toBeLessThan(1e-4);
    expect([cover.box.width, cover.box.height].map((side) => side.toFixed(6))).toEqual(
      [box.width, box.height].map((side) => side.toFixed(6)),
    );
    expect(cover.count).toBe(howMany(cover.arrangement));
    expect(cover.count).toBeGreaterThan(byArea);
  });

  it('a row fewer, or a place fewer in each, leaves some bare wherever the quilt is laid', () => {
    const { rows, perRow, second } = cover.arrangement;
    const fewer: Arrangement[] = [
      { ...cover.arrangement, rows: rows - 1 },
      { ...cover.arrangement, perRow: perRow - 1 },
      ...(second === 1 ? [{ kind: 'rows', rows, perRow } as const] : []),
    ];
    for (const arrangement of fewer) {
      const less = levelled(given(of.make(arrangement)).patches, of.step);
      const box = boxOf(less);
      if (box.width < width || box.height < height) continue;
      const union = covered(less);
      for (let i = 0; i <= 6; i++) {
        for (let j = 0; j <= 6; j++) {
          const [x, y] = [box.width - width, box.height - height].map((room, k) => (room * [i, j][k]!) / 6);
          expect(bare({ left: box.left + x!, top: box.top + y!, width, height }, union)).toBeGreaterThan(
            1e-3,
          );
        }
      }
    }
  });

  it('the most that lie inside do, and one more in a row or one row more would not', () => {
    const size = (arrangement: Arrangement) => boxOf(levelled(given(of.make(arrangement)).patches, of.step));
    const fits = ({ width: wide, height: high }: Rectangle) => wide <= width + 1e-9 && high <= height + 1e-9;
    const most = inside!.arrangement;
    expect(fits(size(most))).toBe(true);
    expect(fits(size({ ...most, rows: most.rows + 1 }))).toBe(false);
    expect(fits(size({ ...most, perRow: most.perRow + 1 }))).toBe(false);
    if (most.second === -1)
      expect(fits(size({ kind: 'rows', rows: most.rows, perRow: most.perRow }))).toBe(false);
    expect(inside!.count).toBeLessThan(byArea);
  });

  it('with halves at the row ends are as many by area as places in a straight-sided strip', () => {
    const { u, v } = of.step;
    const pitch = Math.sqrt(u * u + u * v + v * v);
    const steps = Math.round((2 * straight.width) / pitch);
    expect(straight.width).toBeCloseTo((steps * pitch) / 2, 9);
    expect(straight.width).toBeGreaterThan(width - 1e-9);
    expect(straight.width).toBeLessThan(width + pitch / 2);
    expect(straight.wholes + straight.halves / 2).toBe((straight.rows * steps) / 2);
    expect(straight.wholes + straight.halves / 2).toBeLessThanOrEqual(cover.count);
  });
});

describe('as many as make a quilt', () => {
  // Rosettes in a 90 × 108 in top by area, a shared path, for edges of ¾, 1, 1¼ and 1½ in: worked beforehand.
  it.each([
    [1, [554, 312, 200, 139]],
    [2, [246, 139, 89, 62]],
    [3, [139, 78, 50, 35]],
  ])('by area, rosettes of %i round(s)', (rounds, known) => {
    const byArea = [0.75, 1, 1.25, 1.5].map((edge) =>
      Math.round(given(asManyAsMake(gardens(rounds, 'one'), 90 / edge, 108 / edge)).byArea),
    );
    expect(byArea).toEqual(known);
  });

  it('smaller than one is covered by a few, and none lies inside', () => {
    const { cover, inside } = given(asManyAsMake(gardens(2, 'one'), 3, 3));
    expect(cover.count).toBe(1);
    expect(inside).toBeNull();
  });

  it('past the largest layout is refused', () => {
    expect(asManyAsMake(gardens(1, 'one'), 5000, 5000)).toMatchObject({
      problem: { code: 'too-many-patches' },
    });
    expect(asManyAsMake(gardens(500, 'one'), 10, 10)).toMatchObject({
      problem: { code: 'too-many-patches' },
    });
  });
});

const GROWING: [string, Growing<Layout>, number, number][] = [
  ['a rosette', GROWING_ROSETTE, 17, 23],
  ['a rosette, wider than high', GROWING_ROSETTE, 31.5, 12],
  ['a star', GROWING_STAR, 17, 23],
  ['a large diamond from one', growingDiamonds(1), 9, 12],
  ['a large diamond from four', growingDiamonds(4), 11, 7],
];

describe.each(GROWING)('%s as large as a quilt', (_, of, width, height) => {
  const found: AsLargeAs<Layout> = given(asLargeAs(of, width, height));
  const sizeAt = (n: number) => {
    const { width: wide, height: high } = tally(given(of.make(n)).patches);
    return [wide, high] as const;
  };

  it('is told by the size of its patches, however many rounds', () => {
    for (const n of [of.least, of.least + 1, 5, 9]) {
      const [wide, high] = of.sizeOf(n);
      expect(sizeAt(n)).toEqual([expect.closeTo(wide, 9), expect.closeTo(high, 9)]);
    }
  });

  it('reaches it at the least number, and lies inside at the largest', () => {
    const { reach, inside } = found;
    const reaches = ([wide, high]: readonly [number, number]) =>
      wide >= width - 1e-9 && high >= height - 1e-9;
    const fits = ([wide, high]: readonly [number, number]) => wide <= width + 1e-9 && high <= height + 1e-9;
    expect([reaches(sizeAt(reach.n)), reaches(sizeAt(reach.n - 1))]).toEqual([true, false]);
    expect([fits(sizeAt(inside!.n)), fits(sizeAt(inside!.n + 1))]).toEqual([true, false]);
  });

  it('covers it, corners too, at the least number: by an independent library', () => {
    // Nobody trims a star.
    expect(found.cover === null).toBe(of === GROWING_STAR);
    if (found.cover === null) return;
    const bareAt = (n: number) => {
      const patches = outlines(given(of.make(n)).patches);
      const box = boxOf(patches);
      const [left, top] = [box.left + (box.width - width) / 2, box.top + (box.height - height) / 2];
      return bare({ left, top, width, height }, covered(patches));
    };
    expect(bareAt(found.cover.n)).toBeLessThan(1e-4);
    expect(bareAt(found.cover.n - 1)).toBeGreaterThan(1e-3);
  });
});

describe('as large as a quilt', () => {
  it('past the largest layout is refused; where only the covering one is, the others are told', () => {
    expect(asLargeAs(GROWING_ROSETTE, 3000, 3000)).toMatchObject({ problem: { code: 'too-many-patches' } });
    expect(given(asLargeAs(GROWING_ROSETTE, 1600, 1600))).toMatchObject({ cover: null, reach: { n: 533 } });
  });

  it('smaller than the least has none inside', () => {
    expect(given(asLargeAs(GROWING_STAR, 1, 1)).inside).toBeNull();
  });
});

describe('blocks over a quilt', () => {
  it.each([
    [60, 72, 1],
    [20, 17, 1],
    [36, 45, 1.5],
  ])('%i × %i at %d: as many as hexagons, three diamonds in each', (width, height, edge) => {
    const made = given(blocksOver(width, height, edge));
    const counts = fieldCounts({ width, height, edge, rows: 'across' });
    expect(made).toMatchObject({ ...counts, blocks: counts.cover });
    const { byRole, total } = tally(made.patches);
    expect(byRole).toEqual({ light: counts.cover, medium: counts.cover, dark: counts.cover });
    expect(total).toBe(3 * counts.cover);
    const trim = made.trim!;
    const inEdges = {
      left: trim.left / edge,
      top: trim.top / edge,
      width: width / edge,
      height: height / edge,
    };
    expect(bare(inEdges, covered(outlines(made.patches)))).toBeLessThan(1e-4);
  });
});
