import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blocks } from '../../../src/calculator/layouts/blocks.ts';
import { field } from '../../../src/calculator/layouts/field.ts';
import { garden } from '../../../src/calculator/layouts/garden.ts';
import { gardenWithDiamonds } from '../../../src/calculator/layouts/garden-with-diamonds.ts';
import type { Layout } from '../../../src/calculator/layouts/layout.ts';
import { rosette } from '../../../src/calculator/layouts/rosette.ts';
import { star } from '../../../src/calculator/layouts/star.ts';
import { stars } from '../../../src/calculator/layouts/stars.ts';
import { tally } from '../../../src/calculator/layouts/tally.ts';
import { lengthOf, sharedWhole } from '../../../src/calculator/sharing/bundles.ts';
import { rowsOf, sewingOrder } from '../../../src/calculator/sharing/sewing-order.ts';
import { seamsOf, sharesOf } from '../../../src/calculator/sharing/shares.ts';
import type { Result } from '../../../src/measure/result.ts';

const seven = { kind: 'rings', rings: 1 } as const;

const layouts: [string, Result<Layout>][] = [
  ['a covered field', field({ width: 36, height: 45, edge: 1, rows: 'across', sides: 'cover' })],
  ['a straight field, rows down', field({ width: 36, height: 45, edge: 1, rows: 'down', sides: 'straight' })],
  ['a garden with a path', garden({ arrangement: seven, rounds: 2, path: 'one', outer: true })],
  [
    'a garden in rows',
    garden({ arrangement: { kind: 'rows', rows: 3, perRow: 4 }, rounds: 1, path: 'own', outer: false }),
  ],
  ['a garden set with diamonds', gardenWithDiamonds({ arrangement: seven, rounds: 2, outer: true })],
  ['stars and hexagons', stars({ arrangement: seven, set: 'hexagons', edge: 'notches' })],
  ['a rosette of 6 rounds', rosette(6)],
  ['a star, 6 a side', star(6)],
  ['a hexagon of blocks', blocks(6)],
];

/** The most sides that one patch can have: no share is further than that from its part. */
const MOST_SIDES = 6;

describe.each(layouts)('%s in shares', (_, made) => {
  if (!made.ok) throw new Error('no layout');
  const { patches } = made.value;
  const counted = tally(patches);

  test.each([1, 2, 5, 12])('%i shares hold every patch and every seam once', (parts) => {
    const shares = sharesOf(patches, parts);
    expect(shares).toHaveLength(parts);
    const all = shares.flatMap((share) => [...share.patches]).sort((a, b) => a - b);
    expect(all).toEqual(Array.from({ length: counted.total }, (_, i) => i));
    const sum = (of: (share: (typeof shares)[number]) => number) =>
      shares.reduce((total, share) => total + of(share), 0);
    expect(sum(seamsOf)).toBe(counted.seams);
    expect(sum(({ pieces }) => pieces.reduce((n, { count }) => n + count, 0))).toBe(counted.total);
  });

  test('twelve shares have equal seams, to a patch', () => {
    const shares = sharesOf(patches, 12);
    const fair = counted.seams / 12;
    for (const share of shares) expect(Math.abs(seamsOf(share) - fair)).toBeLessThanOrEqual(MOST_SIDES);
  });

  test('each share is counted as the tally counts it', () => {
    for (const share of sharesOf(patches, 4)) {
      const pick = <A extends Uint8Array | Int32Array | Uint16Array | Uint32Array>(from: A): A =>
        from.filter((_, i) => share.patches.includes(i)) as A;
      const alone = tally({
        ...patches,
        count: share.patches.length,
        form: pick(patches.form),
        u: pick(patches.u),
        v: pick(patches.v),
        role: pick(patches.role),
        part: pick(patches.part),
      });
      expect(share.inside).toBe(alone.seams);
    }
  });

  test('when all is sewn it is as large as the layout', () => {
    const last = sharesOf(patches, 12).at(-1)!;
    expect(last.width).toBeCloseTo(counted.width, 9);
    expect(last.height).toBeCloseTo(counted.height, 9);
  });

  test('the order is one, and starts with the first part or the first row', () => {
    const order = sewingOrder(patches);
    expect(new Set(order).size).toBe(counted.total);
    expect(patches.part[order[0]!]).toBeLessThanOrEqual(1);
  });
});

test('rows are numbered from the first, and hold what the field says', () => {
  const made = field({ width: 20, height: 20, edge: 0.75, rows: 'down', sides: 'straight' });
  if (!made.ok) throw new Error('no field');
  const { of: row, count } = rowsOf(made.value.patches);
  expect(count.slice(1).length).toBe(made.value.rowCount);
  expect(count.reduce((sum, one) => sum + one, 0)).toBe(row.length);
  const order = [...sewingOrder(made.value.patches)].map((i) => row[i]!);
  expect(order).toEqual([...order].sort((a, b) => a - b));
});

test('equal patches would not be equal work', () => {
  const made = rosette(6);
  if (!made.ok) throw new Error('no rosette');
  const shares = sharesOf(made.value.patches, 3);
  const patches = shares.map((share) => share.patches.length);
  expect(Math.max(...patches) - Math.min(...patches)).toBeGreaterThan(3);
});

describe('whole blocks in shares', () => {
  test('none is lost, and no single move or exchange would even them out more', () => {
    const lengths = fc.array(fc.integer({ min: 1, max: 300 }), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(lengths, fc.integer({ min: 1, max: 12 }), (seams, parts) => {
        const shares = sharedWhole(
          seams.map((seamLength) => ({ seamLength })),
          parts,
        );
        expect(
          shares
            .flat()
            .map(({ seamLength }) => seamLength)
            .sort(),
        ).toEqual([...seams].sort());
        for (const [a, b] of pairs(shares)) {
          const apart = Math.abs(lengthOf(a) - lengthOf(b));
          for (const one of lengthOf(a) > lengthOf(b) ? a : b)
            expect(Math.abs(apart - 2 * one.seamLength)).toBeGreaterThanOrEqual(apart - 1e-9);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('finds the even shares that the longest-first rule alone misses', () => {
    const seams = [3, 3, 2, 2, 2].map((seamLength) => ({ seamLength }));
    expect(sharedWhole(seams, 2).map(lengthOf)).toEqual([6, 6]);
  });
});

function* pairs<T>(all: readonly T[]): Generator<[T, T]> {
  for (const [i, a] of all.entries()) for (const b of all.slice(i + 1)) yield [a, b];
}
