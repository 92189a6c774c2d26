import { describe, expect, it } from 'vitest';
import { type Arrangement, howMany, pairsIn, threesIn } from '../../../src/calculator/layouts/arrangement.ts';
import { blocks, blocksApart } from '../../../src/calculator/layouts/blocks.ts';
import { diamonds } from '../../../src/calculator/layouts/diamonds.ts';
import { outlineOf, type PatchList, roleOf } from '../../../src/calculator/layouts/patches.ts';
import { star } from '../../../src/calculator/layouts/star.ts';
import { piecesBetween, stars } from '../../../src/calculator/layouts/stars.ts';
import { tally } from '../../../src/calculator/layouts/tally.ts';
import { areaOf, given, liesFlat, outlines } from './by-eye.ts';

const upTo = (n: number, from = 1) => Array.from({ length: n - from + 1 }, (_, i) => from + i);

describe('a six-point star', () => {
  it.each(upTo(12))('of %i diamonds a side has the counts of its closed forms', (n) => {
    const made = given(star(n));
    const counted = tally(made.patches);
    expect(counted.total).toBe(6 * n * n);
    expect(made.perPoint).toBe(n * n);
    expect(made.rounds).toEqual(upTo(n).map((k) => 6 * (2 * k - 1)));
    expect(Object.values(counted.byRole)).toEqual(made.rounds);
    expect(counted.seams).toBe(6 * n * (2 * n - 1));
    expect(counted.closedBy[6]).toBe(1);
    expect(counted.width).toBeCloseTo(3 * n, 10);
    expect(counted.height).toBeCloseTo(2 * Math.sqrt(3) * n, 10);
    expect(liesFlat(made.patches)).toBe(true);
    for (const point of upTo(6)) {
      expect(made.patches.part.filter((part) => part === point)).toHaveLength(n * n);
    }
  });
});

describe('a diamond field', () => {
  it.each([
    { from: 1, rounds: [1, 8, 16, 24], total: 49, seams: 84 },
    { from: 4, rounds: [4, 12, 20, 28], total: 64, seams: 112 },
  ] as const)('from a centre of $from', ({ from, rounds, total, seams }) => {
    const made = given(diamonds(from, 3));
    const counted = tally(made.patches);
    expect(made.rounds).toEqual(rounds);
    expect(Object.values(counted.byRole)).toEqual(rounds);
    expect([counted.total, counted.seams]).toEqual([total, seams]);
  });

  it.each(upTo(9, 0))('after %i rounds is n × n with 2n(n − 1) seams, standing on its point', (rounds) => {
    for (const from of [1, 4] as const) {
      const n = (from === 1 ? 1 : 2) + 2 * rounds;
      const { patches, side } = given(diamonds(from, rounds));
      const counted = tally(patches);
      expect([side, counted.total, counted.seams]).toEqual([n, n * n, 2 * n * (n - 1)]);
      expect(counted.width).toBeCloseTo(n, 10);
      expect(counted.height).toBeCloseTo(n * Math.sqrt(3), 10);
    }
  });

  it('has seams 4, 24, 60 at 2, 4, 6 a side', () => {
    expect([0, 1, 2].map((rounds) => tally(given(diamonds(4, rounds)).patches).seams)).toEqual([4, 24, 60]);
  });
});

/** How each shade's diamonds lie: the direction of the long diagonal, in degrees from level. */
function lies(list: PatchList, i: number): number {
  const [a, b, c, d] = outlineOf(list, i, 1);
  const diagonals = [
    [a!, c!],
    [b!, d!],
  ].sort(([p, q], [r, s]) => Math.hypot(s!.x - r!.x, s!.y - r!.y) - Math.hypot(q!.x - p!.x, q!.y - p!.y));
  const [from, to] = diagonals[0]!;
  return (Math.round((Math.atan2(to!.y - from!.y, to!.x - from!.x) * 180) / Math.PI) + 180) % 180;
}

describe('tumbling blocks', () => {
  it.each(upTo(12))('in a hexagon of side %i have the counts of their closed forms', (n) => {
    const made = given(blocks(n));
    const counted = tally(made.patches);
    expect(counted.total).toBe(3 * n * n);
    expect(counted.byRole).toEqual({ light: n * n, medium: n * n, dark: n * n });
    expect(counted.seams).toBe(3 * n * (2 * n - 1));
    expect(made.blocks).toBe(n * n);
    expect(liesFlat(made.patches)).toBe(true);
  });

  it.each(upTo(8))('fill the hexagon of side %i: its area, its outline of 6n edges, its size', (n) => {
    const { patches } = given(blocks(n));
    const { outline, width, height } = tally(patches);
    const area = outlines(patches).reduce((sum, shape) => sum + areaOf(shape), 0);
    expect(area).toBeCloseTo((3 * Math.sqrt(3) * n * n) / 2, 9);
    expect(outline).toBe(6 * n);
    expect(width).toBeCloseTo(Math.sqrt(3) * n, 9);
    expect(height).toBeCloseTo(2 * n, 9);
  });

  it('have one lie to each shade: light lies level, as the top of a cube does', () => {
    for (const { patches } of [given(blocks(7)), given(blocksApart(9))]) {
      const seen = new Map<string, Set<number>>();
      for (let i = 0; i < patches.count; i++) {
        const shade = roleOf(patches, i);
        seen.set(shade, (seen.get(shade) ?? new Set()).add(lies(patches, i)));
      }
      expect(seen.get('light')).toEqual(new Set([0]));
      expect(seen.get('medium')).toEqual(new Set([60]));
      expect(seen.get('dark')).toEqual(new Set([120]));
    }
  });

  it('look like blocks in the middle: three meet at a cube’s near corner, six where cubes meet, never else', () => {
    const { patches } = given(blocks(12));
    const near = Array.from({ length: patches.count }, (_, i) => i).filter((i) =>
      outlineOf(patches, i, 1).every(({ x, y }) => Math.hypot(x, y) < 8.5),
    );
    const middle = {
      ...patches,
      count: near.length,
      form: Uint8Array.from(near, (i) => patches.form[i]!),
      u: Int32Array.from(near, (i) => patches.u[i]!),
      v: Int32Array.from(near, (i) => patches.v[i]!),
    };
    const { closedBy } = tally(middle);
    expect(near.length).toBeGreaterThan(200);
    expect([closedBy[4], closedBy[5]]).toEqual([0, 0]);
    expect(closedBy[3]).toBeGreaterThan(30);
    expect(closedBy[6]).toBeGreaterThan(10);
  });

  it.each([1, 2, 7, 100])('%i apart have three diamonds and three seams each, and touch no other', (n) => {
    const made = given(blocksApart(n));
    const counted = tally(made.patches);
    expect(counted.byRole).toEqual({ light: n, medium: n, dark: n });
    expect([counted.seams, counted.setIns, counted.corners]).toEqual([3 * n, n, 7 * n]);
    expect(new Set(made.patches.part).size).toBe(n);
  });
});

describe('stars set together', () => {
  const rings = (n: number): Arrangement => ({ kind: 'rings', rings: n });
  const made = (
    arrangement: Arrangement,
    set: 'diamonds' | 'hexagons',
    edge: 'open' | 'notches' | 'straight',
  ) => {
    const layout = given(stars({ arrangement, set, edge }));
    expect(liesFlat(layout.patches)).toBe(true);
    return tally(layout.patches);
  };

  it('seven with diamonds: 42 + 12 diamonds, 90 seams', () => {
    expect(made(rings(1), 'diamonds', 'open')).toMatchObject({
      seams: 90,
      byRole: { star: 42, between: 12, triangle: 0 },
    });
  });

  it('seven completed to a hexagon of side 5: 72 diamonds and 6 triangles', () => {
    const counted = made(rings(1), 'diamonds', 'straight');
    expect(counted.byRole).toEqual({ star: 42, between: 30, triangle: 6 });
    expect(counted.outline).toBe(6 * 5);
    expect(72 + 6 / 2).toBe(3 * 5 ** 2);
    expect(counted.height).toBeCloseTo(2 * 5, 9);
  });

  it.each([0, 1, 2, 3])('%i ring(s) of them completed fill a hexagon of side 3k + 2', (k) => {
    const counted = made(rings(k), 'diamonds', 'straight');
    const { star: own, between, triangle } = counted.byRole;
    expect(own! + between! + triangle! / 2).toBe(3 * (3 * k + 2) ** 2);
    expect(counted.outline).toBe(6 * (3 * k + 2));
  });

  it.each([
    { n: 1, edge: 'open', hexagons: 6, seams: 78 },
    { n: 1, edge: 'notches', hexagons: 24, seams: 126 },
    { n: 2, edge: 'open', hexagons: 24, seams: 258 },
    { n: 2, edge: 'notches', hexagons: 54, seams: 342 },
  ] as const)(
    '$n ring(s) tip to tip, $edge: $hexagons hexagons, $seams seams',
    ({ n, edge, hexagons, seams }) => {
      const counted = made(rings(n), 'hexagons', edge);
      expect(counted.byRole.between).toBe(hexagons);
      expect(counted.seams).toBe(seams);
      expect(counted.byRole.star).toBe(6 * howMany(rings(n)));
    },
  );

  it('in rows too hold what is counted before placing', () => {
    for (const arrangement of [
      rings(3),
      ...upTo(4).map((n) => ({ kind: 'rows', rows: n, perRow: 3 }) as const),
    ]) {
      for (const set of ['diamonds', 'hexagons'] as const) {
        for (const edge of ['open', 'notches', 'straight'] as const) {
          const { byRole } = made(arrangement, set, edge);
          expect(byRole.between! + byRole.triangle!).toBe(piecesBetween({ arrangement, set, edge }));
        }
      }
    }
  });

  it('in an endless field have 3 diamonds, or 2 hexagons, to a star', () => {
    const ends = (set: 'diamonds' | 'hexagons') => {
      const [a, b, c] = [6, 7, 8].map((n) => piecesBetween({ arrangement: rings(n), set, edge: 'open' }));
      return (c! - 2 * b! + a!) / 6;
    };
    expect([ends('diamonds'), ends('hexagons')]).toEqual([3, 2]);
    expect(given(stars({ arrangement: rings(1), set: 'diamonds', edge: 'open' })).betweenPerStar).toBe(3);
    expect(given(stars({ arrangement: rings(1), set: 'hexagons', edge: 'open' })).betweenPerStar).toBe(2);
    expect(pairsIn(rings(1)) + threesIn(rings(1))).toBe(18);
  });
});

describe('past a million patches', () => {
  it.each([
    ['star', star(409), 6 * 409 ** 2],
    ['diamonds', diamonds(1, 500), 1001 ** 2],
    ['blocks', blocks(578), 3 * 578 ** 2],
    ['blocks apart', blocksApart(333_334), 1_000_002],
    [
      'stars',
      stars({ arrangement: { kind: 'rows', rows: 400, perRow: 400 }, set: 'diamonds', edge: 'open' }),
      6 * 160_000 + pairsIn({ kind: 'rows', rows: 400, perRow: 400 }),
    ],
  ])('%s says how many it would take', (_, refused, count) => {
    expect(refused).toEqual({ ok: false, problem: { code: 'too-many-patches', count, most: 1_000_000 } });
  });
});
