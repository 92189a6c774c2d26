import { describe, expect, it } from 'vitest';
import { corners, FORMS } from '../../../src/calculator/layouts/forms.ts';
import { DIRECTIONS, direction, plus, ring, turned } from '../../../src/calculator/layouts/lattice.ts';
import { GrowingList, kindOf, outlineOf, pointOf, roleOf } from '../../../src/calculator/layouts/patches.ts';
import { areaOf } from './by-eye.ts';

const AREAS = {
  hexagon: (3 * Math.sqrt(3)) / 2,
  diamond: Math.sqrt(3) / 2,
  triangle: Math.sqrt(3) / 4,
  'half-hexagon': (3 * Math.sqrt(3)) / 4,
};

/** A patch of every form, in a list that must grow to hold them. */
function oneOfEach(rows: 'across' | 'down') {
  const placed = new GrowingList(['thing'], 1, rows);
  placed.hexagon(0, 0, 0);
  for (let k = 0; k < 6; k++) {
    placed.diamond(5, 2, k, 0, k);
    placed.triangle(-3, 4, k, 0, k);
    placed.half(7, -1, k, 0, k);
  }
  return placed.done();
}

describe('the directions of the lattice', () => {
  it('are each 60° on from the last, and come round in six', () => {
    DIRECTIONS.forEach((step, k) => {
      expect(plus(turned(step), { u: 0, v: 0 })).toEqual(direction(k + 1));
      const { x, y } = pointOf(step, 'across', 1);
      expect(Math.hypot(x, y)).toBeCloseTo(1, 12);
      expect(Math.atan2(y, x)).toBeCloseTo(Math.atan2(Math.sin(angleOf(k)), Math.cos(angleOf(k))), 12);
    });
  });

  const angleOf = (k: number): number => Math.PI / 6 + (k * Math.PI) / 3;
});

describe('a ring', () => {
  it.each([1, 2, 3, 7])(
    'of %i: each spot touches the one before, and the first touches the last ring',
    (r) => {
      const spots = [ring(r - 1).at(-1)!, ...ring(r)];
      expect(new Set(spots.map(({ u, v }) => `${u},${v}`)).size).toBe(6 * r + 1);
      spots.slice(1).forEach((spot, i) => {
        const step = { u: spot.u - spots[i]!.u, v: spot.v - spots[i]!.v };
        expect(DIRECTIONS).toContainEqual(step);
      });
    },
  );
});

describe('every form', () => {
  it.each(FORMS)(
    '$kind, turn $turn: unit edges all round, angles of a polygon',
    ({ kind, turn, corners: round }) => {
      expect(corners(kind, turn)).toBe(round);
      const half = round.reduce((sum, corner) => sum + corner.sixths, 0);
      expect(half).toBe(3 * (round.length - 2));
      round.forEach((corner, i) => {
        const next = round[(i + 1) % round.length]!;
        expect(DIRECTIONS).toContainEqual({ u: next.u - corner.u, v: next.v - corner.v });
      });
    },
  );
});

describe.each(['across', 'down'] as const)('a list of patches, rows %s', (rows) => {
  const list = oneOfEach(rows);

  it('grows past its first room and keeps what it was given', () => {
    expect(list.count).toBe(19);
    expect([...list.part.slice(1, 4)]).toEqual([0, 0, 0]);
    expect([...list.part.slice(16)]).toEqual([5, 5, 5]);
    expect(roleOf(list, 18)).toBe('thing');
  });

  it('gives each outline in inches, round the same way, with the area of its kind', () => {
    for (let i = 0; i < list.count; i++) {
      expect(areaOf(outlineOf(list, i, 2))).toBeCloseTo(4 * AREAS[kindOf(list, i)], 12);
    }
  });

  it('leaves the middle of the long side out of a half-hexagon', () => {
    expect(outlineOf(list, 3, 1)).toHaveLength(4);
  });

  it('turns diamonds, triangles and halves about their spot in all six directions', () => {
    const named = (i: number) =>
      outlineOf(list, i, 1)
        .map(({ x, y }) => `${x.toFixed(6)},${y.toFixed(6)}`.replaceAll('-0.000000', '0.000000'))
        .sort();
    const drawn = (spots: { u: number; v: number }[]) =>
      spots
        .map((spot) => pointOf(spot, rows, 1))
        .map(({ x, y }) => `${x.toFixed(6)},${y.toFixed(6)}`.replaceAll('-0.000000', '0.000000'))
        .sort();
    for (let k = 0; k < 6; k++) {
      const [a, b] = [direction(k), direction(k + 1)];
      const from = { u: 5, v: 2 };
      expect(named(1 + 3 * k)).toEqual(drawn([from, plus(from, a), plus(from, b), plus(from, plus(a, b))]));
      const corner = { u: -3, v: 4 };
      expect(named(2 + 3 * k)).toEqual(drawn([corner, plus(corner, a), plus(corner, b)]));
      const middle = { u: 7, v: -1 };
      const round = [0, 1, 2, 3].map((t) => plus(middle, direction(k + t)));
      expect(named(3 + 3 * k)).toEqual(drawn(round));
    }
  });
});

describe('the frame', () => {
  it('has a point of the hexagon up when rows run across, a flat side up when they run down', () => {
    const tops = (rows: 'across' | 'down') => {
      const placed = new GrowingList(['one'], 1, rows);
      placed.hexagon(0, 0, 0);
      const outline = outlineOf(placed.done(), 0, 1);
      const top = Math.min(...outline.map((p) => p.y));
      return outline.filter((p) => Math.abs(p.y - top) < 1e-9).length;
    };
    expect(tops('across')).toBe(1);
    expect(tops('down')).toBe(2);
  });
});
