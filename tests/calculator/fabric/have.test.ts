import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestLength } from '../../../src/calculator/fabric/best-length.ts';
import { bestPlan } from '../../../src/calculator/fabric/best-plan.ts';
import { allot, type Need, type Pile } from '../../../src/calculator/fabric/have.ts';
import { type Handful, leastCloth } from '../../../src/calculator/fabric/least-cloth.ts';
import { patch } from './patches.ts';

const hexagon = patch('hexagon', 1);
const from = (width: number, length: number) => bestPlan(hexagon, { width, length })!.count;
const piece = (count: number, width: number, length: number, role = ''): Pile => ({
  ...{ count, width, length, role },
  isLength: false,
});
const lengthOf = (length: number, role = ''): Pile => ({
  ...{ count: 1, width: 42, length, role },
  isLength: true,
});
const need = (pieces: number, role = 'all'): Need => ({ role, pieces, patch: hexagon });

describe('what can be cut from what', () => {
  test('the smallest pieces that are enough: ten squares for forty, a fat quarter for seventy', () => {
    const piles = [piece(3, 18, 21), piece(12, 5, 5)];
    expect(from(5, 5)).toBe(4);
    expect(allot(piles, [need(40)]).shares).toEqual([{ pile: 1, need: 0, pieces: 10, gives: 40 }]);
    expect(allot(piles, [need(70)]).shares).toEqual([{ pile: 0, need: 0, pieces: 1, gives: from(18, 21) }]);
  });

  test('what is wanting when all is cut', () => {
    const { shares, missing } = allot([piece(12, 5, 5)], [need(100)]);
    expect(shares).toEqual([{ pile: 0, need: 0, pieces: 12, gives: 48 }]);
    expect(missing).toEqual([52]);
  });

  test('a length comes last, is cut only as far as it must be, and serves several parts', () => {
    const piles = [lengthOf(54), piece(2, 5, 5)];
    const { shares, missing } = allot(piles, [need(7, 'centres'), need(42, 'petals'), need(24, 'path')]);
    expect(missing).toEqual([0, 0, 0]);
    expect(shares.filter(({ pile }) => pile === 1)).toEqual([{ pile: 1, need: 0, pieces: 2, gives: 8 }]);
    const lengths = shares.filter(({ pile }) => pile === 0);
    expect(lengths.map(({ need: of, gives }) => [of, gives])).toEqual([
      [1, 42],
      [2, 24],
    ]);
    expect(lengths[0]!.length).toBeCloseTo(bestLength(hexagon, 42, 42)!.length, 9);
  });

  test('two parts are served in the order that cuts least', () => {
    // 42 petals take eleven squares, and the fat quarter the path; the other way round it were more.
    const piles = [piece(1, 18, 21), piece(12, 5, 5)];
    const { shares, missing } = allot(piles, [need(24, 'path'), need(42, 'petals')]);
    expect(missing).toEqual([0, 0]);
    const cloth = shares.reduce((sum, { pile, pieces }) => sum + pieces * (pile === 0 ? 378 : 25), 0);
    expect(cloth).toBe(378 + 6 * 25);
  });

  test('what is kept for a part serves it and nothing else', () => {
    const piles = [piece(1, 18, 21, 'path'), piece(1, 18, 21)];
    const { shares, missing } = allot(piles, [need(100, 'petals'), need(20, 'path')]);
    expect(missing).toEqual([100 - from(18, 21), 0]);
    expect(shares.find(({ need: of }) => of === 1)).toMatchObject({ pile: 0 });
    expect(shares.find(({ need: of }) => of === 0)).toMatchObject({ pile: 1 });
  });

  test('never more pieces than there are, and every need served or said to be wanting', () => {
    const sizes = [
      [18, 21],
      [9, 21],
      [5, 5],
      [10, 10],
    ] as const;
    const pile = fc
      .tuple(fc.integer({ min: 1, max: 9 }), fc.constantFrom(...sizes), fc.constantFrom('', 'a', 'b'))
      .map(([count, [width, length], role]) => piece(count, width, length, role));
    const length = fc
      .tuple(fc.integer({ min: 3, max: 40 }), fc.constantFrom('', 'a'))
      .map(([of, role]) => lengthOf(of, role));
    const needs = fc.array(fc.tuple(fc.integer({ min: 1, max: 300 }), fc.constantFrom('a', 'b', 'c')), {
      minLength: 1,
      maxLength: 3,
    });
    const cases = fc.property(fc.array(fc.oneof(pile, length), { maxLength: 5 }), needs, (piles, wanted) => {
      const all = wanted.map(([pieces, role]) => need(pieces, role));
      const { shares, missing } = allot(piles, all);
      piles.forEach((one, at) => {
        const used = shares.filter((share) => share.pile === at);
        const pieces = used.reduce((sum, share) => sum + share.pieces, 0);
        if (!one.isLength) expect(pieces).toBeLessThanOrEqual(one.count);
        const inches = used.reduce((sum, share) => sum + (share.length ?? 0), 0);
        expect(inches).toBeLessThanOrEqual(one.length + 1e-9);
        for (const share of used) expect(['', all[share.need]!.role]).toContain(one.role);
      });
      all.forEach(({ pieces }, at) => {
        const given = shares.reduce((sum, share) => sum + (share.need === at ? share.gives : 0), 0);
        expect(missing[at]).toBe(Math.max(0, pieces - given));
      });
    });
    fc.assert(cases, { numRuns: 60 });
  });
});

describe('the least cloth', () => {
  const handfuls = fc.array(
    fc.record({
      count: fc.integer({ min: 1, max: 4 }),
      gives: fc.integer({ min: 1, max: 20 }),
      cloth: fc.integer({ min: 1, max: 60 }),
    }),
    { minLength: 1, maxLength: 4 },
  );

  test('is the least of all that are enough, by trying every one', () => {
    const cases = fc.property(handfuls, fc.integer({ min: 1, max: 120 }), (some, wanted) => {
      const all: Handful[] = some.map((one, at) => ({ at, ...one }));
      const taken = leastCloth(all, wanted);
      const sum = (of: 'gives' | 'cloth') =>
        taken.reduce((total, { at, count }) => total + count * all[at]![of], 0);
      const least = leastByTrying(all, wanted);
      if (least === undefined) expect(taken.map(({ count }) => count)).toEqual(all.map(({ count }) => count));
      else expect([sum('gives') >= wanted, sum('cloth')]).toEqual([true, least]);
    });
    fc.assert(cases, { numRuns: 200 });
  });

  test('for very many patches it takes what wastes least, and enough of it', () => {
    const all = [
      { at: 0, count: 900, gives: 77, cloth: 378 },
      { at: 1, count: 9000, gives: 4, cloth: 25 },
    ];
    expect(leastCloth(all, 70_000)).toEqual([
      { at: 0, count: 900 },
      { at: 1, count: 175 },
    ]);
  });
});

function leastByTrying(all: readonly Handful[], wanted: number): number | undefined {
  const [first, ...rest] = all;
  if (!first) return wanted <= 0 ? 0 : undefined;
  let least: number | undefined;
  for (let count = 0; count <= first.count; count++) {
    const others = leastByTrying(rest, wanted - count * first.gives);
    if (others === undefined) continue;
    const cloth = others + count * first.cloth;
    if (least === undefined || cloth < least) least = cloth;
  }
  return least;
}
