import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BATTING_PACKAGES, batting } from '../../../src/calculator/finishing/batting.ts';
import { isCribSize, MATTRESSES, quiltForBed } from '../../../src/calculator/finishing/bed.ts';
import { border } from '../../../src/calculator/finishing/border.ts';

/** Common practice, the list that several open pages have; none is authoritative. */
describe('batting', () => {
  test('the packages', () => {
    expect(BATTING_PACKAGES.map(({ name, width, height }) => `${name} ${width} x ${height}`)).toEqual([
      'crib 45 x 60',
      'throw 60 x 60',
      'twin 72 x 90',
      'full 81 x 96',
      'queen 90 x 108',
      'king 120 x 120',
    ]);
  });

  test('a 90 x 108 top needs 98 x 116, so a queen package is too small', () => {
    expect(batting(90, 108, 4)).toMatchObject({ needWidth: 98, needHeight: 116, package: { name: 'king' } });
  });

  test.each([
    [62, 76, 'twin'],
    [76, 62, 'twin'],
    [37, 52, 'crib'],
    [37.01, 52, 'throw'],
    [73, 88, 'full'],
    [112, 112, 'king'],
  ])('%d x %d: %s', (width, height, name) => {
    expect(batting(width, height, 4).package?.name).toBe(name);
  });

  test('past the largest, two that lie side by side', () => {
    expect(batting(130, 100, 4)).toMatchObject({ package: undefined, twice: { name: 'queen' } });
    expect(batting(120, 120, 4)).toMatchObject({ package: undefined, twice: undefined });
  });

  test('no smaller package would do', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 112 }), fc.integer({ min: 1, max: 112 }), (width, height) => {
        const { package: chosen } = batting(width, height, 4);
        const [short, long] = [Math.min(width, height) + 8, Math.max(width, height) + 8];
        const holds = (p: { width: number; height: number }) => p.width >= short && p.height >= long;
        expect(chosen && holds(chosen)).toBe(true);
        const area = chosen!.width * chosen!.height;
        for (const each of BATTING_PACKAGES)
          if (each.width * each.height < area) expect(holds(each)).toBe(false);
      }),
    );
  });
});

describe('borders', () => {
  const asked = { width: 50, height: 60, border: 3, seam: 0.25, usable: 40 };

  test('50 x 60 with 3 in, butted: 3½ in strips, 60½ and 56½, 234 in in all, 6 strips at 40', () => {
    expect(border({ ...asked, join: 'butted' })).toEqual({
      cutStrip: 3.5,
      sides: 60.5,
      topBottom: 56.5,
      total: 234,
      strips: 6,
      length: 21,
      newWidth: 56,
      newHeight: 66,
    });
  });

  test('mitred: the new edge and 4 in (common practice)', () => {
    expect(border({ ...asked, join: 'mitred' })).toMatchObject({
      sides: 70,
      topBottom: 60,
      total: 260,
      strips: 7,
    });
  });

  test('the strips, joined straight, are enough for all four, and one fewer is not', () => {
    fc.assert(
      fc.property(
        fc.record({
          width: fc.integer({ min: 4, max: 200 }),
          height: fc.integer({ min: 4, max: 200 }),
          border: fc.integer({ min: 1, max: 16 }),
          usable: fc.integer({ min: 20, max: 110 }),
          join: fc.constantFrom('butted', 'mitred'),
        }),
        (ask) => {
          const { total, strips, cutStrip } = border({ ...ask, seam: 0.25 });
          const reach = (n: number) => n * ask.usable - (n - 1) * 0.5;
          expect(cutStrip).toBe(ask.border + 0.5);
          expect(reach(strips)).toBeGreaterThanOrEqual(total - 1e-9);
          if (strips > 1) expect(reach(strips - 1)).toBeLessThan(total);
        },
      ),
    );
  });
});

/** Mattresses: an encyclopaedia and trade tables; the crib: 16 CFR 1219. */
describe('beds', () => {
  test.each([
    ['twin', 39, 75],
    ['twin-long', 39, 80],
    ['full', 54, 75],
    ['queen', 60, 80],
    ['king', 76, 80],
    ['western-king', 72, 84],
    ['crib', 28, 52.375],
  ])('%s is %d x %d', (name, width, length) => {
    expect(MATTRESSES.find((one) => one.name === name)).toMatchObject({ width, length });
  });

  test('width and two drops, length and one drop and the tuck', () => {
    expect(quiltForBed({ width: 60, length: 80, drop: 12, tuck: 0 })).toEqual({ width: 84, length: 92 });
    expect(quiltForBed({ width: 60, length: 80, drop: 15, tuck: 12 })).toEqual({ width: 90, length: 107 });
  });

  test('the size of a full-size crib within its tolerance, 28 ± ⅝ x 52⅜ ± ⅝', () => {
    expect(isCribSize(28.625, 53)).toBe(true);
    expect(isCribSize(53, 28)).toBe(true);
    expect(isCribSize(28.7, 52)).toBe(false);
    expect(isCribSize(39, 75)).toBe(false);
  });
});
