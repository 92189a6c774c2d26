import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blocks, blocksApart, blocksOver } from '../../../src/calculator/layouts/blocks.ts';
import { diamonds } from '../../../src/calculator/layouts/diamonds.ts';
import { field } from '../../../src/calculator/layouts/field.ts';
import { garden } from '../../../src/calculator/layouts/garden.ts';
import { gardenWithDiamonds } from '../../../src/calculator/layouts/garden-with-diamonds.ts';
import type { Layout } from '../../../src/calculator/layouts/layout.ts';
import { kindOf, type PatchList } from '../../../src/calculator/layouts/patches.ts';
import { rosette } from '../../../src/calculator/layouts/rosette.ts';
import { star } from '../../../src/calculator/layouts/star.ts';
import { stars } from '../../../src/calculator/layouts/stars.ts';
import { tally } from '../../../src/calculator/layouts/tally.ts';
import { given, liesFlat, lookAt, SIDES } from './by-eye.ts';

const rings = (n: number) => ({ kind: 'rings', rings: n }) as const;
const rows = (n: number, perRow: number) => ({ kind: 'rows', rows: n, perRow }) as const;
const quilt = { width: 15, height: 11, edge: 1 };

/** One of everything, with holes or without. */
const LAYOUTS: Record<string, { layout: Layout; pieces?: number }> = {
  'whole field across': { layout: given(field({ ...quilt, rows: 'across', sides: 'whole' })) },
  'whole field down': { layout: given(field({ ...quilt, rows: 'down', sides: 'whole' })) },
  'covered field across': { layout: given(field({ ...quilt, rows: 'across', sides: 'cover' })) },
  'covered field down': { layout: given(field({ ...quilt, rows: 'down', sides: 'cover' })) },
  'straight field across': { layout: given(field({ ...quilt, rows: 'across', sides: 'straight' })) },
  'straight field down': { layout: given(field({ ...quilt, rows: 'down', sides: 'straight' })) },
  rosette: { layout: given(rosette(4)) },
  'garden without path': {
    layout: given(garden({ arrangement: rings(2), rounds: 1, path: 'none', outer: false })),
  },
  'garden without path, ringed': {
    layout: given(garden({ arrangement: rows(3, 3), rounds: 1, path: 'none', outer: true })),
  },
  'garden with a path': {
    layout: given(garden({ arrangement: rows(3, 4), rounds: 2, path: 'one', outer: false })),
  },
  'garden with a path, ringed': {
    layout: given(garden({ arrangement: rings(1), rounds: 2, path: 'one', outer: true })),
  },
  'garden with own rings': {
    layout: given(garden({ arrangement: rows(4, 2), rounds: 1, path: 'own', outer: false })),
  },
  'single hexagons with a path': {
    layout: given(garden({ arrangement: rows(3, 3), rounds: 0, path: 'one', outer: true })),
  },
  'garden with diamonds': {
    layout: given(gardenWithDiamonds({ arrangement: rows(3, 4), rounds: 2, outer: true })),
  },
  'garden in rows of three and four': {
    layout: given(
      garden({ arrangement: { ...rows(4, 3), second: 1 }, rounds: 1, path: 'one', outer: false }),
    ),
  },
  'garden with diamonds in rows of three and two': {
    layout: given(
      gardenWithDiamonds({ arrangement: { ...rows(3, 3), second: -1 }, rounds: 1, outer: false }),
    ),
  },
  'blocks over a quilt': { layout: given(blocksOver(9, 7, 1)) },
  star: { layout: given(star(4)) },
  'stars with diamonds': {
    layout: given(stars({ arrangement: rows(3, 3), set: 'diamonds', edge: 'straight' })),
  },
  'stars with hexagons': {
    layout: given(stars({ arrangement: rings(2), set: 'hexagons', edge: 'notches' })),
  },
  'diamonds from one': { layout: given(diamonds(1, 3)) },
  'diamonds from four': { layout: given(diamonds(4, 3)) },
  blocks: { layout: given(blocks(6)) },
  'blocks apart': { layout: given(blocksApart(11)), pieces: 11 },
};

const without = (list: PatchList, dropped: (i: number) => boolean): PatchList => {
  const kept = Array.from({ length: list.count }, (_, i) => i).filter((i) => !dropped(i));
  return {
    ...list,
    count: kept.length,
    form: Uint8Array.from(kept, (i) => list.form[i]!),
    u: Int32Array.from(kept, (i) => list.u[i]!),
    v: Int32Array.from(kept, (i) => list.v[i]!),
    role: Uint16Array.from(kept, (i) => list.role[i]!),
    part: Uint32Array.from(kept, (i) => list.part[i]!),
  };
};

const moved = (list: PatchList, u: number, v: number): PatchList => ({
  ...list,
  u: list.u.map((x) => x + u),
  v: list.v.map((x) => x + v),
});

const joined = (a: PatchList, b: PatchList): PatchList => ({
  ...a,
  count: a.count + b.count,
  form: Uint8Array.from([...a.form, ...b.form]),
  u: Int32Array.from([...a.u, ...b.u]),
  v: Int32Array.from([...a.v, ...b.v]),
  role: Uint16Array.from([...a.role, ...b.role]),
  part: Uint32Array.from([...a.part, ...b.part]),
});

const agreesWithEye = (list: PatchList): void => {
  const { seams, outline, corners, closedBy, width, height } = tally(list);
  const seen = lookAt(list);
  expect({ seams, outline, corners, closedBy }).toEqual({
    seams: seen.seams,
    outline: seen.outline,
    corners: seen.corners,
    closedBy: seen.closedBy,
  });
  expect(width).toBeCloseTo(seen.width, 9);
  expect(height).toBeCloseTo(seen.height, 9);
};

describe.each(Object.entries(LAYOUTS))('%s', (_, { layout, pieces = 1 }) => {
  const list = layout.patches;
  const counted = tally(list);

  it('lies flat', () => expect(liesFlat(list)).toBe(true));

  it('is counted as the eye counts it', () => agreesWithEye(list));

  it('shares its sides: seams = (sides of all patches − outline) / 2', () => {
    const sides = Array.from(list.form, (_, i) => SIDES[kindOf(list, i)]).reduce((a, b) => a + b, 0);
    expect(counted.seams).toBe((sides - counted.outline) / 2);
    expect(counted.seamLength).toBe(counted.seams);
  });

  it('has corners − edges + pieces = 1 for each group without a hole', () => {
    expect(counted.corners - (counted.seams + counted.outline) + counted.total).toBe(pieces);
  });

  it('has a role for every patch', () => {
    const sum = Object.values(counted.byRole).reduce((a, b) => a + b, 0);
    expect(sum).toBe(counted.total);
    expect(Object.keys(counted.byRole)).toEqual(list.roles);
  });

  it('with patches left out is still counted as the eye counts it', () => {
    fc.assert(
      fc.property(fc.infiniteStream(fc.boolean()), (drop) => {
        const dropped = Array.from({ length: list.count }, () => drop.next().value);
        agreesWithEye(without(list, (i) => dropped[i]!));
      }),
      { numRuns: 4 },
    );
  });

  it('is the same wherever it is put', () => {
    const far = fc.integer({ min: -1_000_000, max: 1_000_000 });
    fc.assert(
      fc.property(far, far, (u, v) => {
        const { left: _left, top: _top, width, height, ...rest } = tally(moved(list, u, v));
        expect({ ...counted, ...rest }).toEqual(counted);
        expect(width).toBeCloseTo(counted.width, 6);
        expect(height).toBeCloseTo(counted.height, 6);
      }),
      { numRuns: 20 },
    );
  });
});

describe('a list that is mostly empty ground', () => {
  it('counts two groups far apart as twice one', () => {
    const one = given(gardenWithDiamonds({ arrangement: rings(1), rounds: 1, outer: true })).patches;
    const alone = tally(one);
    const both = tally(joined(one, moved(one, 40_000, -35_000)));
    expect(both.seams).toBe(2 * alone.seams);
    expect(both.outline).toBe(2 * alone.outline);
    expect(both.corners).toBe(2 * alone.corners);
    expect(both.closedBy).toEqual(alone.closedBy.map((n) => 2 * n));
  });

  it('counts nothing as nothing', () => {
    const none = tally(without(given(rosette(1)).patches, () => true));
    expect(none).toMatchObject({ total: 0, seams: 0, outline: 0, corners: 0, width: 0, height: 0 });
  });
});

describe('the eye itself', () => {
  it('sees an overlap', () => {
    const flower = given(rosette(1)).patches;
    expect(liesFlat(flower)).toBe(true);
    expect(liesFlat(joined(flower, moved(flower, 4, -2)))).toBe(false);
    expect(liesFlat(joined(flower, moved(flower, 1, 0)))).toBe(false);
    expect(liesFlat(joined(flower, moved(flower, 40, 0)))).toBe(true);
  });
});
