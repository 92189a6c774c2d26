import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { purchase } from '../../../src/calculator/fabric/purchase.ts';
import {
  BINDING_EXTRA,
  biasBinding,
  sideFor,
  straightBinding,
} from '../../../src/calculator/finishing/binding.ts';
import { outlineLength } from '../../../src/calculator/finishing/outline.ts';
import { field } from '../../../src/calculator/layouts/field.ts';
import { rosette } from '../../../src/calculator/layouts/rosette.ts';
import { tally } from '../../../src/calculator/layouts/tally.ts';

const around = (width: number, height: number) =>
  outlineLength({ edge: 'straight', width, height }) + BINDING_EXTRA;

/** The trade's worked bindings, 2½ in strips at 40 in: derived, the 10 in more common practice. */
describe('straight strips, the slanted joins counted', () => {
  test.each([
    [36, 45, 172, 5, 0.375],
    [60, 72, 274, 8, 0.625],
    [70, 90, 330, 9, 0.625],
    [90, 108, 406, 11, 0.875],
  ])('%d x %d', (width, height, needed, strips, bought) => {
    expect(around(width, height)).toBe(needed);
    const made = straightBinding(needed, 2.5, 40);
    expect(made.strips).toBe(strips);
    expect(purchase(made.length, 'yard').amount).toBe(bought);
  });

  test('seven strips of 40 in are short of 274 in, though 274 / 40 is under seven', () => {
    expect(7 * 40 - 6 * 2.5).toBe(265);
    expect(Math.ceil(274 / 40)).toBe(7);
    expect(straightBinding(274, 2.5, 40)).toEqual({ strips: 8, length: 20, joined: 302.5 });
  });

  test('the strips are enough, and one fewer is not', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 2000, noNaN: true }),
        fc.double({ min: 0.75, max: 3.5, noNaN: true }),
        fc.double({ min: 4, max: 120, noNaN: true }),
        (needed, strip, usable) => {
          const { strips, joined } = straightBinding(needed, strip, usable);
          expect(joined).toBeGreaterThanOrEqual(needed - 1e-6);
          if (strips > 1) expect(joined - usable + strip).toBeLessThan(needed);
        },
      ),
    );
  });
});

describe('bias from a square', () => {
  test('274 in of 2¼ in strip: 24.83 by area alone, 25.33 with its seams, cut 26', () => {
    const made = biasBinding(274, 2.25, 42)!;
    expect(made.plain).toBeCloseTo(24.83, 2);
    expect(made.square).toBeCloseTo(25.33, 2);
    expect(made).toMatchObject({ squares: 1, cut: 26, length: 26 });
  });

  test('a 20 in square gives 200 in of 2 in strip, as open worked examples have it', () => {
    expect(sideFor(200, 2, 0)).toBe(20);
  });

  test('the square less what its seams take is the strip: Q² − 4eQ = length × width', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 3000, noNaN: true }),
        fc.double({ min: 0.75, max: 3.5, noNaN: true }),
        fc.double({ min: 10, max: 110, noNaN: true }),
        (needed, strip, usable) => {
          const made = biasBinding(needed, strip, usable)!;
          expect(made.cut).toBeLessThanOrEqual(usable + 1e-9);
          expect(made.cut).toBeGreaterThanOrEqual(made.square - 1e-6);
          const each = (made.square ** 2 - made.square) / strip;
          expect(made.squares * each - (made.squares - 1) * strip).toBeCloseTo(needed, 5);
        },
      ),
    );
  });

  test('squares wider than the cloth become more and smaller ones', () => {
    const made = biasBinding(900, 2.5, 40)!;
    expect(made.squares).toBe(2);
    expect(made.cut).toBe(35);
    expect(made.length).toBe(70);
  });

  test('a strip as wide as the cloth has no square', () => {
    expect(biasBinding(274, 4, 4)).toBeUndefined();
  });
});

/** Against the layouts' own count of outside edges. */
describe('edges that are not straight', () => {
  test('points along one side are 1.1547 times as long, row ends along the other 1.3333 times', () => {
    expect(outlineLength({ edge: 'hexagons', width: 1, height: 0, rows: 'across' }) / 2).toBeCloseTo(
      1.1547,
      4,
    );
    expect(outlineLength({ edge: 'hexagons', width: 0, height: 1, rows: 'across' }) / 2).toBeCloseTo(
      1.3333,
      4,
    );
  });

  test.each(['across', 'down'] as const)('a field in rows %s, but for its corners', (rows) => {
    const made = field({ width: 60, height: 72, edge: 1, rows, sides: 'whole' });
    if (!made.ok) throw new Error('no field');
    const { outline, width, height } = tally(made.value.patches);
    const said = outlineLength({ edge: 'hexagons', width, height, rows });
    expect(Math.abs(said - outline)).toBeLessThan(6);
  });

  test.each([0, 1, 2, 3, 8])('a rosette of %d rounds has 12R + 6 sides', (rounds) => {
    const made = rosette(rounds);
    if (!made.ok) throw new Error('no rosette');
    expect(outlineLength({ edge: 'rosette', rounds, side: 0.75 })).toBe(
      0.75 * tally(made.value.patches).outline,
    );
  });
});
