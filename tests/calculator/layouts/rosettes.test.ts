import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Arrangement,
  howMany,
  pairsIn,
  standings,
  stands,
  threesIn,
} from '../../../src/calculator/layouts/arrangement.ts';
import { garden, type Path, pathPerRosette, pathPieces } from '../../../src/calculator/layouts/garden.ts';
import { gardenWithDiamonds } from '../../../src/calculator/layouts/garden-with-diamonds.ts';
import { direction, plus } from '../../../src/calculator/layouts/lattice.ts';
import { pointOf } from '../../../src/calculator/layouts/patches.ts';
import {
  inRound,
  rosette,
  rosetteTotal,
  seamsRoundByRound,
} from '../../../src/calculator/layouts/rosette.ts';
import { tally } from '../../../src/calculator/layouts/tally.ts';
import { given, liesFlat } from './by-eye.ts';

const rings = (n: number): Arrangement => ({ kind: 'rings', rings: n });
const rows = (n: number, perRow: number, second?: 1 | -1): Arrangement => ({
  kind: 'rows',
  rows: n,
  perRow,
  ...(second === undefined ? {} : { second }),
});

describe('a rosette', () => {
  /** Put down one by one on axial coordinates, each seam counted as a patch comes to lie beside others. */
  it('begun to any number of patches has the seams of the closed form', () => {
    const sides = [
      [1, 0],
      [0, 1],
      [-1, 1],
      [-1, 0],
      [0, -1],
      [1, -1],
    ] as const;
    const laid = new Set<string>();
    let seams = 0;
    const lay = (q: number, r: number) => {
      seams += sides.filter(([dq, dr]) => laid.has(`${q + dq},${r + dr}`)).length;
      laid.add(`${q},${r}`);
      expect(seamsRoundByRound(laid.size), `${laid.size} patches`).toBe(seams);
    };
    lay(0, 0);
    for (let round = 1; round <= 20; round++) {
      // Beside the corner where the round before ended, so that each patch has as many seams as it can.
      let [q, r] = [round - 1, 1];
      const walk = [
        ...Array(round - 1).fill(2),
        ...[3, 4, 5, 0, 1].flatMap((side) => Array(round).fill(side)),
      ] as number[];
      for (const side of [...walk, 1]) {
        lay(q, r);
        const [dq, dr] = sides[side as 0 | 1 | 2 | 3 | 4 | 5];
        [q, r] = [q + dq, r + dr];
      }
    }
    expect(laid.size).toBe(rosetteTotal(20));
  });

  it.each(Array.from({ length: 31 }, (_, R) => R))('of %i rounds has the counts of its closed forms', (R) => {
    const made = given(rosette(R));
    const counted = tally(made.patches);
    expect(counted.total).toBe(3 * R * (R + 1) + 1);
    expect(made.rounds).toEqual([1, ...Array.from({ length: R }, (_, r) => 6 * (r + 1))]);
    expect(Object.values(counted.byRole)).toEqual(made.rounds);
    expect(counted.seams).toBe(9 * R * R + 3 * R);
    expect(counted.outline).toBe(12 * R + 6);
    expect(counted.setIns).toBe(6 * R * R);
    expect(counted.width).toBeCloseTo((2 * R + 1) * Math.sqrt(3), 10);
    expect(counted.height).toBeCloseTo(3 * R + 2, 10);
  });

  it('of one inch and two rounds is 8.660 by 8 in', () => {
    const counted = tally(given(rosette(2)).patches);
    expect([counted.width.toFixed(3), counted.height.toFixed(3)]).toEqual(['8.660', '8.000']);
  });

  it('keeps each patch’s round as its part, and its centre at the origin', () => {
    const { patches } = given(rosette(3));
    expect([patches.u[0], patches.v[0]]).toEqual([0, 0]);
    for (let i = 0; i < patches.count; i++) {
      const { x, y } = pointOf({ u: patches.u[i]!, v: patches.v[i]! }, 'across', 1);
      const round = patches.part[i]!;
      expect(Math.hypot(x, y)).toBeLessThanOrEqual(round * Math.sqrt(3) + 1e-9);
      expect(Math.hypot(x, y)).toBeGreaterThanOrEqual(round * 1.5 - 1e-9);
    }
  });

  it('past a million patches says how many it would take', () => {
    expect(rosette(576).ok).toBe(true);
    expect(rosette(577)).toEqual({
      ok: false,
      problem: { code: 'too-many-patches', count: 1_000_519, most: 1_000_000 },
    });
    expect(rosette(1e9).ok).toBe(false);
  });

  it('counts a round without placing it', () => {
    expect([0, 1, 2, 3].map(inRound)).toEqual([1, 6, 12, 18]);
  });
});

describe('an arrangement', () => {
  const arrangements = fc.oneof(
    fc.integer({ min: 0, max: 5 }).map(rings),
    fc
      .tuple(
        fc.integer({ min: 1, max: 7 }),
        fc.integer({ min: 2, max: 7 }),
        fc.constantFrom(undefined, 1, -1),
      )
      .map(([n, per, second]) => rows(n, per, second as 1 | -1 | undefined)),
    fc.integer({ min: 1, max: 7 }).map((n) => rows(n, 1)),
  );

  it('says how many stand in it, how many pairs and how many threes', () => {
    fc.assert(
      fc.property(arrangements, (a) => {
        const all = standings(a);
        expect(new Set(all.map(({ u, v }) => `${u},${v}`)).size).toBe(all.length);
        expect(all.every((spot) => stands(a, spot))).toBe(true);
        const faced = (k: number) => all.filter((spot) => stands(a, plus(spot, direction(k))));
        expect(all.length).toBe(howMany(a));
        expect(faced(0).length + faced(1).length + faced(2).length).toBe(pairsIn(a));
        const threes = [0, 1].map(
          (k) => faced(k).filter((spot) => stands(a, plus(spot, direction(k + 1)))).length,
        );
        expect(threes[0]! + threes[1]!).toBe(threesIn(a));
      }),
    );
  });

  it('in rings has 1, 7, 19, 37; 6 rows of 5 have 30, each second row shifted by half a place', () => {
    expect([0, 1, 2, 3].map((n) => howMany(rings(n)))).toEqual([1, 7, 19, 37]);
    const lefts = [0, 5, 10, 15].map((i) => {
      const { u, v } = standings(rows(6, 5))[i]!;
      return v + u / 2;
    });
    expect(lefts).toEqual([0, 0.5, 0, 0.5]);
    expect(howMany(rows(6, 5))).toBe(30);
  });

  it('in rows with one more or one fewer by turns starts half a place further out or in', () => {
    const lefts = (second: 1 | -1) => {
      const all = standings(rows(4, 5, second));
      const row = (u: number) => Math.min(...all.filter((spot) => spot.u === u).map(({ v }) => v + u / 2));
      return [0, 1, 2, 3].map(row);
    };
    expect(lefts(1)).toEqual([0, -0.5, 0, -0.5]);
    expect(lefts(-1)).toEqual([0, 0.5, 0, 0.5]);
    expect([howMany(rows(5, 4, 1)), howMany(rows(5, 4, -1))]).toEqual([22, 18]);
  });
});

const counted = (arrangement: Arrangement, rounds: number, path: Path, outer: boolean) =>
  tally(given(garden({ arrangement, rounds, path, outer })).patches);

describe('a finite garden with one shared path', () => {
  it('of seven 1-round flowers: 24 path pieces inside, 54 with an outer path, 103 pieces, 270 seams', () => {
    expect(counted(rings(1), 1, 'one', false).byRole).toEqual({ centre: 7, petal: 42, path: 24 });
    expect(counted(rings(1), 1, 'one', true)).toMatchObject({
      total: 103,
      seams: 270,
      byRole: { centre: 7, petal: 42, path: 54 },
    });
  });

  it('of seven 2-round rosettes: 84 path pieces with an outer path, 217 in all', () => {
    expect(counted(rings(1), 2, 'one', true)).toMatchObject({ total: 217, byRole: { path: 84 } });
  });

  it('of nineteen 2-round rosettes: 198 path pieces with an outer path, 559 in all, 1,584 seams', () => {
    expect(counted(rings(2), 2, 'one', true)).toMatchObject({
      total: 559,
      seams: 1584,
      byRole: { path: 198 },
    });
  });

  it('of thirty 2-round rosettes, six rows of five: 196 path pieces inside, 304 with an outer path', () => {
    expect(counted(rows(6, 5), 2, 'one', false).byRole.path).toBe(196);
    expect(counted(rows(6, 5), 2, 'one', true).byRole.path).toBe(304);
  });

  it('has the path pieces that are counted before placing', () => {
    const arrangement = fc.oneof(
      fc.integer({ min: 0, max: 3 }).map(rings),
      fc
        .tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 5 }))
        .map(([n, per]) => rows(n, per)),
    );
    const rounds = fc.integer({ min: 0, max: 4 });
    fc.assert(
      fc.property(arrangement, rounds, fc.boolean(), (a, R, outer) => {
        const path = pathPieces({ arrangement: a, rounds: R, path: 'one', outer });
        expect(counted(a, R, 'one', outer)).toMatchObject({
          total: howMany(a) * rosetteTotal(R) + path,
          byRole: { path },
        });
      }),
    );
  });
});

describe('the endless pattern', () => {
  it('has the path pieces a rosette that its closed forms say', () => {
    expect([1, 2, 3, 4].map((R) => pathPerRosette('one', R))).toEqual([5, 8, 11, 14]);
    expect([1, 2, 3, 4].map((R) => pathPerRosette('own', R))).toEqual([12, 18, 24, 30]);
    expect([1, 2, 3, 4].map((R) => pathPerRosette('none', R))).toEqual([0, 0, 0, 0]);
    for (let R = 0; R <= 8; R++) {
      expect(rosetteTotal(R) + pathPerRosette('one', R)).toBe(3 * (R + 1) ** 2);
      expect(rosetteTotal(R) + pathPerRosette('own', R)).toBe(3 * (R + 1) * (R + 2) + 1);
    }
  });

  it('is what a large garden comes to: one more ring adds the rule’s share for each rosette inside', () => {
    for (const R of [0, 1, 2, 3]) {
      const inside = (n: number) => counted(rings(n), R, 'one', false).byRole.path!;
      const second = inside(8) - 2 * inside(7) + inside(6);
      expect(second).toBe(6 * pathPerRosette('one', R));
    }
  });
});

describe('a garden', () => {
  const cases = [rings(0), rings(1), rings(2), rows(1, 1), rows(3, 2), rows(2, 5), rows(5, 1)].flatMap((a) =>
    (['none', 'one', 'own'] as const).flatMap((path) =>
      [0, 1, 2].flatMap((rounds) => [false, true].map((outer) => ({ a, path, rounds, outer }))),
    ),
  );

  it.each(cases)(
    '$a, $rounds rounds, path $path, outer $outer lies flat, in one piece, without holes',
    (c) => {
      const { patches } = given(garden({ arrangement: c.a, rounds: c.rounds, path: c.path, outer: c.outer }));
      const { total, seams, outline, corners, byRole } = tally(patches);
      expect(liesFlat(patches)).toBe(true);
      expect(byRole.centre).toBe(howMany(c.a));
      expect(byRole.petal).toBe(howMany(c.a) * 3 * c.rounds * (c.rounds + 1));
      expect(corners - (seams + outline) + total).toBe(1);
    },
  );

  it('whose rosettes have their own rings has 3(R + 1)(R + 2) + 1 pieces to each', () => {
    for (const R of [0, 1, 2, 3]) {
      const { total } = counted(rings(2), R, 'own', false);
      expect(total).toBe(19 * (3 * (R + 1) * (R + 2) + 1));
    }
  });

  it('of one rosette is that rosette, with an outer path the next one', () => {
    for (const R of [0, 1, 2, 3]) {
      const { byRole: _, ...alone } = tally(given(rosette(R)).patches);
      const { byRole: __, ...ringed } = tally(given(rosette(R + 1)).patches);
      for (const path of ['none', 'one'] as const) {
        expect(counted(rings(0), R, path, false)).toMatchObject(alone);
        expect(counted(rings(0), R, path, true)).toMatchObject(ringed);
      }
      expect(counted(rings(0), R, 'own', false)).toMatchObject(ringed);
    }
  });

  it('keeps each rosette’s number on its pieces, and none on a shared path', () => {
    const { patches } = given(garden({ arrangement: rings(1), rounds: 1, path: 'one', outer: true }));
    const pieces = Array.from({ length: 8 }, (_, n) => patches.part.filter((part) => part === n).length);
    expect(pieces).toEqual([54, 7, 7, 7, 7, 7, 7, 7]);
  });

  it.each([
    [1, 'one'],
    [2, 'one'],
    [0, 'none'],
  ] as const)(
    'in rows has its rosettes (%i rounds, path %s) level along each row, the first row on top',
    (R, path) => {
      const { patches } = given(garden({ arrangement: rows(3, 4), rounds: R, path, outer: false }));
      const centres = Array.from({ length: patches.count }, (_, i) => i)
        .filter((i) => patches.role[i] === 0)
        .map((i) => pointOf({ u: patches.u[i]!, v: patches.v[i]! }, patches.rows, 1));
      const apart = path === 'one' ? 3 * (R + 1) : Math.sqrt(3);
      centres.forEach(({ x, y }, i) => {
        const [row, place] = [Math.floor(i / 4), i % 4];
        expect(Math.abs(x - centres[0]!.x)).toBeCloseTo((place + (row % 2) / 2) * apart, 9);
        expect(Math.abs(y - centres[0]!.y)).toBeCloseTo(row * apart * Math.sqrt(0.75), 9);
      });
    },
  );

  it('past a million patches says how many it would take', () => {
    const ask = { arrangement: rows(1000, 1000), rounds: 2, path: 'one', outer: false } as const;
    const count = 19_000_000 + 4 * pairsIn(ask.arrangement) - 2 * threesIn(ask.arrangement);
    expect(garden(ask)).toMatchObject({ ok: false, problem: { code: 'too-many-patches', count } });
    expect(gardenWithDiamonds(ask)).toMatchObject({ ok: false, problem: { code: 'too-many-patches' } });
    const ringed = { arrangement: rows(1, 33), rounds: 100, path: 'none', outer: true } as const;
    expect(garden({ ...ringed, outer: false }).ok).toBe(true);
    expect(garden(ringed)).toMatchObject({ ok: false, problem: { code: 'too-many-patches' } });
  });

  it('in a long thin row is counted on mostly empty ground', () => {
    const { total, byRole } = counted(rows(1, 3_000), 1, 'own', false);
    expect([total, byRole.path]).toEqual([3_000 * 19, 3_000 * 12]);
    expect(counted(rows(1, 3_000), 1, 'one', true).byRole.path).toBe(3_000 * 12 - 2_999 * 3);
  });
});

describe('rosettes set with diamonds', () => {
  const FIGURES = [
    { n: 1, R: 1, outer: false, hexagons: 49, diamond: 12, triangle: 6, seams: 150 },
    { n: 1, R: 1, outer: true, hexagons: 49, diamond: 30, triangle: 6, seams: 186 },
    { n: 1, R: 2, outer: false, hexagons: 133, diamond: 24, triangle: 6, seams: 408 },
    { n: 1, R: 2, outer: true, hexagons: 133, diamond: 60, triangle: 6, seams: 480 },
    { n: 2, R: 1, outer: false, hexagons: 133, diamond: 42, triangle: 24, seams: 468 },
    { n: 2, R: 1, outer: true, hexagons: 133, diamond: 72, triangle: 24, seams: 528 },
  ];

  it.each(FIGURES)(
    '$n ring(s), $R round(s), outer $outer',
    ({ n, R, outer, hexagons, diamond, triangle, seams }) => {
      const made = given(gardenWithDiamonds({ arrangement: rings(n), rounds: R, outer }));
      const { byRole, seams: sewn } = tally(made.patches);
      expect(byRole.centre! + byRole.petal!).toBe(hexagons);
      expect({ diamond: byRole.diamond, triangle: byRole.triangle, sewn }).toEqual({
        diamond,
        triangle,
        sewn: seams,
      });
      expect(made.diamondsPerRosette).toBe(3 * R);
    },
  );

  it('stand 3R + 2 edges apart, and 3R diamonds and 2 triangles go with each', () => {
    for (const R of [0, 1, 2, 3]) {
      for (const a of [rings(0), rings(1), rings(2), rows(3, 4), rows(4, 1)]) {
        const { patches, diamondsPerRosette } = given(
          gardenWithDiamonds({ arrangement: a, rounds: R, outer: false }),
        );
        expect(liesFlat(patches)).toBe(true);
        const { byRole } = tally(patches);
        expect(byRole.diamond).toBe(R * pairsIn(a));
        expect(byRole.triangle).toBe(threesIn(a));
        const unitTriangles = 6 * rosetteTotal(R) + 2 * diamondsPerRosette + 2;
        expect(unitTriangles).toBe(2 * (3 * R + 2) ** 2);
      }
    }
  });

  it('with the outer valleys filled have 6R diamonds each, less those that two share', () => {
    for (const R of [1, 2, 3]) {
      for (const a of [rings(0), rings(1), rings(2), rows(3, 4)]) {
        const { patches } = given(gardenWithDiamonds({ arrangement: a, rounds: R, outer: true }));
        expect(liesFlat(patches)).toBe(true);
        expect(tally(patches).byRole.diamond).toBe(6 * R * howMany(a) - R * pairsIn(a));
      }
    }
  });
});
