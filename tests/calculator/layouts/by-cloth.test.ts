import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { byCloth } from '../../../src/calculator/layouts/by-cloth.ts';
import { byRow } from '../../../src/calculator/layouts/by-row.ts';
import { type FieldAsk, field, type Sides } from '../../../src/calculator/layouts/field.ts';
import { garden } from '../../../src/calculator/layouts/garden.ts';
import { kindOf, pointOf } from '../../../src/calculator/layouts/patches.ts';
import { inRound } from '../../../src/calculator/layouts/rosette.ts';
import { given } from './by-eye.ts';

describe('rounds by cloth', () => {
  it('go round and round: red, blue, white of a rosette of five rounds', () => {
    expect(byCloth([1, 6, 12, 18, 24, 30], ['red', 'blue', 'white'])).toEqual([
      { name: 'red', pieces: 1 + 18, places: [0, 3] },
      { name: 'blue', pieces: 6 + 24, places: [1, 4] },
      { name: 'white', pieces: 12 + 30, places: [2, 5] },
    ]);
  });

  it('count a cloth that comes twice together, and one whose turn never comes as none', () => {
    expect(byCloth([1, 6, 12, 18], ['red', 'white', 'red'])).toEqual([
      { name: 'red', pieces: 1 + 12 + 18, places: [0, 2, 3] },
      { name: 'white', pieces: 6, places: [1] },
    ]);
    expect(byCloth([1], ['red', 'white']).at(-1)).toEqual({ name: 'white', pieces: 0, places: [] });
  });

  it('whatever the list, every piece is of one cloth', () => {
    const cloths = fc.array(fc.constantFrom('red', 'blue', 'white', 'green'), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(fc.array(fc.nat(500)), cloths, (counts, names) => {
        const found = byCloth(counts, names);
        expect(found.reduce((sum, { pieces }) => sum + pieces, 0)).toBe(
          counts.reduce((sum, n) => sum + n, 0),
        );
        expect(found.flatMap(({ places }) => places).sort((a, b) => a - b)).toEqual([...counts.keys()]);
        expect(new Set(found.map(({ name }) => name))).toEqual(new Set(names));
      }),
    );
  });

  it('of a garden are those of its rosettes, seen by how far each hexagon is from its centre', () => {
    const rounds = 3;
    const { patches, rosettes } = given(
      garden({ arrangement: { kind: 'rings', rings: 1 }, rounds, path: 'one', outer: true }),
    );
    const at = (i: number) => pointOf({ u: patches.u[i]!, v: patches.v[i]! }, patches.rows, 1);
    const counted = new Array<number>(rounds + 1).fill(0);
    for (let centre = 0; centre < patches.count; centre++) {
      if (patches.role[centre] !== 0) continue;
      for (let i = 0; i < patches.count; i++) {
        if (patches.part[i] !== patches.part[centre] || patches.role[i] === 2) continue;
        const [x, y] = [at(i).x - at(centre).x, at(i).y - at(centre).y];
        // A hexagonal distance: the furthest of the three directions, each of 1½ edges a round.
        const far = [90, 30, -30].map(
          (angle) => x * Math.cos((angle * Math.PI) / 180) + y * Math.sin((angle * Math.PI) / 180),
        );
        counted[Math.round(Math.max(...far.map(Math.abs)) / 1.5)]!++;
      }
    }
    expect(counted).toEqual(Array.from({ length: rounds + 1 }, (_, r) => inRound(r) * rosettes));
  });
});

describe('rows by cloth', () => {
  const asks: (FieldAsk & { sides: Sides })[] = (['whole', 'cover', 'straight'] as const).flatMap((sides) =>
    (['across', 'down'] as const).map((rows) => ({ width: 21, height: 17, edge: 1, rows, sides })),
  );

  it.each(asks)('are counted where the patches lie: rows $rows, $sides', (ask) => {
    const made = given(field(ask));
    const { wholes, halves } = byRow(made.patches);
    expect(wholes).toHaveLength(made.rowCount);
    expect(halves).toHaveLength(made.rowCount);
    const seen = new Map<string, number>();
    for (let i = 0; i < made.patches.count; i++) {
      const { x, y } = pointOf({ u: made.patches.u[i]!, v: made.patches.v[i]! }, ask.rows, 1);
      const row = Math.round((ask.rows === 'across' ? y : x) / 1.5);
      const name = `${row} ${kindOf(made.patches, i)}`;
      seen.set(name, (seen.get(name) ?? 0) + 1);
    }
    wholes.forEach((n, row) => {
      expect(seen.get(`${row} hexagon`) ?? 0).toBe(n);
    });
    halves.forEach((n, row) => {
      expect(seen.get(`${row} half-hexagon`) ?? 0).toBe(n);
    });
  });
});
