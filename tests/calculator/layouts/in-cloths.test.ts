import { describe, expect, it } from 'vitest';
import { blocks } from '../../../src/calculator/layouts/blocks.ts';
import { byCloth } from '../../../src/calculator/layouts/by-cloth.ts';
import { byRow } from '../../../src/calculator/layouts/by-row.ts';
import { diamonds } from '../../../src/calculator/layouts/diamonds.ts';
import { field } from '../../../src/calculator/layouts/field.ts';
import { garden } from '../../../src/calculator/layouts/garden.ts';
import { gardenWithDiamonds } from '../../../src/calculator/layouts/garden-with-diamonds.ts';
import { inCloths } from '../../../src/calculator/layouts/in-cloths.ts';
import type { Layout } from '../../../src/calculator/layouts/layout.ts';
import { inRound, rosette } from '../../../src/calculator/layouts/rosette.ts';
import { star } from '../../../src/calculator/layouts/star.ts';
import { stars } from '../../../src/calculator/layouts/stars.ts';
import { tally } from '../../../src/calculator/layouts/tally.ts';
import { given } from './by-eye.ts';

const LISTS = [
  ['red'],
  ['red', 'white'],
  ['red', 'blue', 'white'],
  ['red', 'white', 'red', 'green', 'white'],
];

const counted = (layout: Layout, cloths: readonly string[]) => tally(inCloths(layout, cloths).patches).byRole;
const told = (counts: readonly number[], cloths: readonly string[]) =>
  Object.fromEntries(byCloth(counts, cloths).map(({ name, pieces }) => [name, pieces]));

describe.each(LISTS)('the cloths %s %s', (...list) => {
  const cloths = list as string[];

  it('are counted from the patches of a rosette, a star, a large diamond', () => {
    for (const made of [given(rosette(6)), given(star(5)), given(diamonds(4, 4)), given(diamonds(1, 4))])
      expect(counted(made, cloths)).toMatchObject(told(made.rounds, cloths));
  });

  it('are counted from the rosettes of a garden; its path stays a path', () => {
    const rounds = 3;
    const all = (rosettes: number) => Array.from({ length: rounds + 1 }, (_, r) => rosettes * inRound(r));
    for (const path of ['none', 'one', 'own'] as const) {
      const arrangement = { kind: 'rows', rows: 3, perRow: 2, second: 1 } as const;
      const made = given(garden({ arrangement, rounds, path, outer: false }));
      const found = counted(made, cloths);
      expect(found).toMatchObject(told(all(made.rosettes), cloths));
      expect([found.path, found.petal, found.centre]).toEqual([tally(made.patches).byRole.path, 0, 0]);
    }
    const set = given(gardenWithDiamonds({ arrangement: { kind: 'rings', rings: 1 }, rounds, outer: true }));
    expect(counted(set, cloths)).toMatchObject({ ...told(all(7), cloths), diamond: 90, triangle: 6 });
  });

  it('are counted row by row of a field, halves too', () => {
    for (const rows of ['across', 'down'] as const) {
      const made = given(field({ width: 17, height: 21, edge: 1, rows, sides: 'straight' }));
      const { wholes, halves } = byRow(made.patches);
      const both = wholes.map((n, row) => n + halves[row]!);
      expect(counted(made, cloths)).toMatchObject(told(both, cloths));
    }
  });
});

it('change nothing but what patches are for', () => {
  const made = given(rosette(4));
  const { byRole: _, ...before } = tally(made.patches);
  const { byRole: __, ...after } = tally(inCloths(made, ['red', 'white']).patches);
  expect(after).toEqual(before);
});

it('several stars take the cloths in turn, one star all of one; what lies between keeps its role', () => {
  const made = given(stars({ arrangement: { kind: 'rings', rings: 1 }, set: 'diamonds', edge: 'open' }));
  expect(counted(made, ['red', 'white', 'blue'])).toMatchObject({
    red: 18,
    white: 12,
    blue: 12,
    between: 12,
  });
  const { patches } = inCloths(made, ['red', 'white', 'blue']);
  const cloths = new Map<number, Set<number>>();
  for (let i = 0; i < patches.count; i++)
    if (patches.role[i]! < 3)
      cloths.set(patches.part[i]!, (cloths.get(patches.part[i]!) ?? new Set()).add(patches.role[i]!));
  expect([...cloths.keys()].sort()).toEqual([1, 2, 3, 4, 5, 6, 7]);
  for (const ofOne of cloths.values()) expect(ofOne.size).toBe(1);
});

it('three cloths are the shades of blocks, from light to dark', () => {
  const made = given(blocks(4));
  const after = inCloths(made, ['white', 'grey', 'navy']).patches;
  const { patches: before } = made;
  const SHADES: Readonly<Record<string, string>> = { light: 'white', medium: 'grey', dark: 'navy' };
  for (let i = 0; i < after.count; i++)
    expect(after.roles[after.role[i]!]).toBe(SHADES[before.roles[before.role[i]!]!]);
});

it('a rosette of one hexagon, and a garden of single hexagons, are all of the first cloth', () => {
  expect(counted(given(rosette(0)), ['red', 'white'])).toMatchObject({ red: 1, white: 0 });
  const single = given(
    garden({ arrangement: { kind: 'rows', rows: 2, perRow: 2 }, rounds: 0, path: 'one', outer: false }),
  );
  expect(counted(single, ['red', 'white'])).toMatchObject({ red: 4, white: 0 });
});
