import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FieldAsk, field, fieldCounts, type Sides } from '../../../src/calculator/layouts/field.ts';
import { kindOf } from '../../../src/calculator/layouts/patches.ts';
import { planInside, planStraight } from '../../../src/calculator/layouts/row-plan.ts';
import { tally } from '../../../src/calculator/layouts/tally.ts';
import { areaOf, clipped, given, outlines, sizeOf } from './by-eye.ts';

const FLAT = Math.sqrt(3);

const placed = (ask: FieldAsk, sides: Sides) => given(field({ ...ask, sides }));

interface Case {
  readonly quilt: string;
  readonly ask: FieldAsk;
  readonly inside: [total: number, rows: number, long: number, short: number];
  readonly cover: [total: number, rows: number, first: number, second: number];
  readonly straight: [whole: number, half: number, rows: number, along: number, over: number];
  readonly byArea: number;
}

const ask = (width: number, height: number, edge: number, rows: 'across' | 'down' = 'across'): FieldAsk => ({
  width,
  height,
  edge,
  rows,
});

/** Worked beforehand by clipping polygons on a grid of shifts; `along` is the size along the rows. */
const CASES: Case[] = [
  {
    quilt: 'cushion 20 × 20, ¾',
    ask: ask(20, 20, 0.75),
    inside: [247, 17, 15, 14],
    cover: [304, 19, 16, 16],
    straight: [285, 19, 19, 20.14, 21],
    byArea: 273.7,
  },
  {
    quilt: 'cushion 20 × 20, ¾, rows down',
    ask: ask(20, 20, 0.75, 'down'),
    inside: [247, 17, 15, 14],
    cover: [304, 19, 16, 16],
    straight: [285, 19, 19, 20.14, 21],
    byArea: 273.7,
  },
  {
    quilt: 'wall 24 × 36, 1',
    ask: ask(24, 36, 1),
    inside: [299, 23, 13, 13],
    cover: [362, 25, 14, 15],
    straight: [338, 24, 25, 24.25, 37],
    byArea: 332.6,
  },
  {
    quilt: 'floor 36 × 45, 1',
    ask: ask(36, 45, 1),
    inside: [580, 29, 20, 20],
    cover: [666, 31, 21, 22],
    straight: [636, 30, 31, 36.37, 46],
    byArea: 623.5,
  },
  {
    quilt: 'floor 36 × 45, 1, rows down',
    ask: ask(36, 45, 1, 'down'),
    inside: [575, 23, 25, 25],
    cover: [662, 25, 26, 27],
    straight: [638, 24, 25, 45.03, 37],
    byArea: 623.5,
  },
  {
    quilt: 'throw 50 × 60, 1½',
    ask: ask(50, 60, 1.5),
    inside: [481, 26, 19, 18],
    cover: [540, 27, 20, 20],
    straight: [513, 27, 27, 50.66, 60],
    byArea: 513.2,
  },
  {
    quilt: 'throw 50 × 60, 1',
    ask: ask(50, 60, 1),
    inside: [1092, 39, 28, 28],
    cover: [1209, 41, 29, 30],
    straight: [1169, 40, 41, 50.23, 61],
    byArea: 1154.7,
  },
  {
    quilt: 'lap 48 × 60, 2, rows down',
    ask: ask(48, 60, 2, 'down'),
    inside: [248, 15, 17, 16],
    cover: [306, 17, 18, 18],
    straight: [289, 17, 17, 60.62, 50],
    byArea: 277.1,
  },
  {
    quilt: 'twin 70 × 90, 1¼',
    ask: ask(70, 90, 1.25),
    inside: [1481, 47, 32, 31],
    cover: [1617, 49, 33, 33],
    straight: [1568, 49, 49, 70.36, 91.25],
    byArea: 1551.9,
  },
  {
    quilt: 'queen 90 × 108, 1',
    ask: ask(90, 108, 1),
    inside: [3621, 71, 51, 51],
    cover: [3832, 73, 52, 53],
    straight: [3760, 72, 73, 90.07, 109],
    byArea: 3741.2,
  },
  {
    quilt: 'queen 90 × 108, 1½',
    ask: ask(90, 108, 1.5),
    inside: [1598, 47, 34, 34],
    cover: [1739, 49, 35, 36],
    straight: [1691, 48, 49, 90.93, 109.5],
    byArea: 1662.8,
  },
  {
    quilt: 'metric 140 × 200, 2.5',
    ask: ask(140, 200, 2.5),
    inside: [1670, 53, 32, 31],
    cover: [1782, 54, 33, 33],
    straight: [1728, 54, 54, 140.73, 201.25],
    byArea: 1724.4,
  },
  {
    quilt: 'runner 14 × 48, ½',
    ask: ask(14, 48, 0.5),
    inside: [977, 63, 16, 15],
    cover: [1105, 65, 17, 17],
    straight: [1040, 65, 65, 14.29, 48.5],
    byArea: 1034.6,
  },
  {
    quilt: 'exactly 8 flats by 9 rows',
    ask: ask(8 * FLAT, 14, 1),
    inside: [68, 9, 8, 7],
    cover: [85, 10, 8, 9],
    straight: [75, 10, 10, 13.86, 14.5],
    byArea: 74.7,
  },
];

/** Hexagons along each of the first two rows, read from the placed list. */
function firstRows(made: ReturnType<typeof placed>): number[] {
  const { patches } = made;
  const depths = Array.from(patches.u, (u, i) => u + 2 * patches.v[i]!);
  return [0, 3].map((depth) => depths.filter((d) => d === depth).length);
}

describe.each(CASES)('$quilt', ({ ask: asked, inside, cover, straight, byArea }) => {
  it('counts whole hexagons inside', () => {
    const made = placed(asked, 'whole');
    const [total, rows, long, short] = inside;
    expect([tally(made.patches).total, made.rowCount, ...firstRows(made)]).toEqual([
      total,
      rows,
      long,
      short,
    ]);
    expect(made.inside).toBe(total);
  });

  it('counts a covering', () => {
    const made = placed(asked, 'cover');
    const [total, rows, first, second] = cover;
    expect([tally(made.patches).total, made.rowCount, ...firstRows(made)]).toEqual([
      total,
      rows,
      first,
      second,
    ]);
    expect(made.cover).toBe(total);
    expect(sizeOf(made, undefined, asked.edge)).toMatchObject({ width: asked.width, height: asked.height });
  });

  it('counts straight sides', () => {
    const made = placed(asked, 'straight');
    const [whole, half, rows, along, over] = straight;
    expect(tally(made.patches).byRole).toEqual({ whole, trimmed: 0, half });
    expect([made.straightWhole, made.straightHalf, made.rowCount]).toEqual([whole, half, rows]);
    const { width, height } = sizeOf(made, undefined, asked.edge);
    const [x, y] = asked.rows === 'across' ? [width, height] : [height, width];
    expect(x).toBeCloseTo(along, 1);
    expect(Math.abs(x - along)).toBeLessThan(0.0051);
    expect(y).toBeCloseTo(over, 9);
  });

  it('estimates by area', () => {
    expect(Math.abs(fieldCounts(asked).byArea - byArea)).toBeLessThan(0.051);
  });
});

const anyField = fc.record({
  width: fc.double({ min: 1, max: 24, noNaN: true }),
  height: fc.double({ min: 1, max: 24, noNaN: true }),
  edge: fc.double({ min: 0.5, max: 4, noNaN: true }),
  rows: fc.constantFrom('across' as const, 'down' as const),
});

describe('any field', () => {
  it('counts without placing what is placed', () => {
    fc.assert(
      fc.property(anyField, (asked) => {
        const counts = fieldCounts(asked);
        const roles = (sides: Sides) => tally(placed(asked, sides).patches).byRole;
        const covered = roles('cover');
        expect(roles('whole')).toEqual({ whole: counts.inside, trimmed: 0, half: 0 });
        expect(covered.whole! + covered.trimmed!).toBe(counts.cover);
        expect(roles('straight')).toEqual({
          whole: counts.straightWhole,
          trimmed: 0,
          half: counts.straightHalf,
        });
      }),
    );
  });

  it('of whole hexagons lies inside the quilt', () => {
    fc.assert(
      fc.property(anyField, (asked) => {
        const made = placed(asked, 'whole');
        const { width, height } = sizeOf(made, undefined, asked.edge);
        expect(width).toBeLessThanOrEqual(asked.width + 1e-7);
        expect(height).toBeLessThanOrEqual(asked.height + 1e-7);
      }),
    );
  });

  it('covers the quilt: what is left of its patches after trimming has the quilt’s whole area', () => {
    fc.assert(
      fc.property(anyField, (asked) => {
        const made = placed(asked, 'cover');
        const left = outlines(made.patches, asked.edge).map((outline) =>
          areaOf(clipped(outline, made.trim!)),
        );
        const sum = left.reduce((a, b) => a + b, 0);
        expect(made.trim).toMatchObject({ width: asked.width, height: asked.height });
        expect(sum / (asked.width * asked.height)).toBeCloseTo(1, 7);
        const hexagon = (3 * FLAT * asked.edge ** 2) / 2;
        left.forEach((area, i) => {
          const whole = made.patches.roles[made.patches.role[i]!] === 'whole';
          if (whole) expect(area / hexagon).toBeCloseTo(1, 7);
          else expect(area / hexagon).toBeLessThan(1);
        });
      }),
    );
  });

  it('is trimmed alike left and right, top and bottom', () => {
    fc.assert(
      fc.property(anyField, (asked) => {
        const made = placed(asked, 'cover');
        const { left, top, width, height } = tally(made.patches);
        const trim = made.trim!;
        expect(trim.left + trim.width / 2).toBeCloseTo((left + width / 2) * asked.edge, 9);
        expect(trim.top + trim.height / 2).toBeCloseTo((top + height / 2) * asked.edge, 9);
      }),
    );
  });

  it('with straight sides fills its rectangle, which holds the quilt, and whole + half / 2 = rows × half flats / 2', () => {
    fc.assert(
      fc.property(anyField, (asked) => {
        const made = placed(asked, 'straight');
        const trim = made.trim!;
        const shapes = outlines(made.patches, asked.edge);
        const sum = shapes.reduce((total, outline) => total + areaOf(clipped(outline, trim)), 0);
        expect(sum / (trim.width * trim.height)).toBeCloseTo(1, 7);
        expect(trim.width).toBeGreaterThanOrEqual(asked.width - 1e-7);
        expect(trim.height).toBeGreaterThanOrEqual(asked.height - 1e-7);
        const along = asked.rows === 'across' ? trim.width : trim.height;
        const halfFlats = Math.round(along / ((FLAT / 2) * asked.edge));
        expect(made.straightWhole + made.straightHalf / 2).toBe((made.rowCount * halfFlats) / 2);
        expect(along - (asked.rows === 'across' ? asked.width : asked.height)).toBeLessThan(
          (FLAT / 2) * asked.edge,
        );
      }),
    );
  });

  it('with straight sides has its halves, and nothing past them, at the sides', () => {
    fc.assert(
      fc.property(anyField, (asked) => {
        const made = placed(asked, 'straight');
        const { patches, trim } = made;
        const read =
          asked.rows === 'across' ? (p: { x: number; y: number }) => p.x : (p: { y: number }) => p.y;
        const [from, length] =
          asked.rows === 'across' ? [trim!.left, trim!.width] : [trim!.top, trim!.height];
        outlines(patches, asked.edge).forEach((outline, i) => {
          const reach = outline.map(read);
          expect(Math.min(...reach)).toBeGreaterThan(from - 1e-9);
          expect(Math.max(...reach)).toBeLessThan(from + length + 1e-9);
          const half = kindOf(patches, i) === 'half-hexagon';
          const onSide = reach.filter((x) => x < from + 1e-9 || x > from + length - 1e-9).length;
          if (half) expect(onSide).toBeGreaterThanOrEqual(2);
        });
      }),
    );
  });

  it('turned with its quilt is the same field', () => {
    fc.assert(
      fc.property(anyField, fc.constantFrom<Sides>('whole', 'cover', 'straight'), (asked, sides) => {
        const other = asked.rows === 'across' ? 'down' : 'across';
        const here = placed(asked, sides);
        const turned = placed({ ...asked, width: asked.height, height: asked.width, rows: other }, sides);
        const [a, b] = [here, turned].map((made) => sizeOf(made, undefined, asked.edge));
        expect(tally(turned.patches)).toMatchObject({
          seams: tally(here.patches).seams,
          byRole: tally(here.patches).byRole,
        });
        expect([b!.width, b!.height]).toEqual([a!.height, a!.width]);
      }),
    );
  });
});

/** Centres of an endless honeycomb (edge 1, rows across) near a rectangle at the origin. */
function* honeycomb(
  width: number,
  height: number,
  shiftX: number,
  shiftY: number,
): Generator<[number, number]> {
  for (let row = -3; row * 1.5 < height + 4; row++) {
    for (let k = -3; k * FLAT < width + 4; k++) {
      yield [(k + (row % 2 === 0 ? 0 : 1 / 2)) * FLAT + shiftX, row * 1.5 + shiftY];
    }
  }
}

const hexagonAt = ([x, y]: [number, number]) =>
  [30, 90, 150, 210, 270, 330].map((degrees) => ({
    x: x + Math.cos((degrees * Math.PI) / 180),
    y: y + Math.sin((degrees * Math.PI) / 180),
  }));

describe('no shift of the honeycomb', () => {
  const sized = fc.record({
    width: fc.double({ min: 2, max: 14, noNaN: true }),
    height: fc.double({ min: 2, max: 14, noNaN: true }),
    shiftX: fc.double({ min: 0, max: FLAT, noNaN: true }),
    shiftY: fc.double({ min: 0, max: 3, noNaN: true }),
  });

  it('holds more whole hexagons inside than the count', () => {
    fc.assert(
      fc.property(sized, ({ width, height, shiftX, shiftY }) => {
        const { inside } = fieldCounts(ask(width, height, 1));
        const whole = [...honeycomb(width, height, shiftX, shiftY)].filter(
          ([x, y]) => x >= FLAT / 2 && x <= width - FLAT / 2 && y >= 1 && y <= height - 1,
        );
        expect(whole.length).toBeLessThanOrEqual(inside);
      }),
      { numRuns: 500 },
    );
  });

  const touching = (width: number, height: number, shiftX: number, shiftY: number): number =>
    [...honeycomb(width, height, shiftX, shiftY)].filter(
      (centre) => areaOf(clipped(hexagonAt(centre), { left: 0, top: 0, width, height })) > 1e-9,
    ).length;

  it('covers with fewer than the count, unless the count says that it may', () => {
    fc.assert(
      fc.property(sized, ({ width, height, shiftX, shiftY }) => {
        const { cover, coverMayBeLess } = fieldCounts(ask(width, height, 1));
        fc.pre(!coverMayBeLess);
        expect(touching(width, height, shiftX, shiftY)).toBeGreaterThanOrEqual(cover);
      }),
      { numRuns: 300 },
    );
  });

  it.each([
    [3.1, 0.1],
    [3.05, 0.45],
  ])(
    'but a cunning one, where the count says so: %f flats wide, %f edges past the valleys',
    (flats, past) => {
      const [width, height] = [flats * FLAT, 1.5 * 4 - 1 / 2 + past];
      const { cover, coverMayBeLess } = fieldCounts(ask(width, height, 1));
      const tries = Array.from({ length: 200 }, (_, k) => touching(width, height, (k / 200) * FLAT, 1 / 2));
      expect(coverMayBeLess).toBe(true);
      expect(Math.min(...tries)).toBeLessThan(cover);
    },
  );
});

describe('a field at its limits', () => {
  it('holds nothing when it is smaller than a hexagon', () => {
    for (const small of [ask(1.7, 40, 1), ask(40, 1.9, 1), ask(0.2, 0.2, 1)]) {
      expect(fieldCounts(small).inside).toBe(0);
      const made = placed(small, 'whole');
      expect([tally(made.patches).total, made.rowCount]).toEqual([0, 0]);
      expect(sizeOf(made)).toMatchObject({ width: 0, height: 0 });
    }
  });

  it('is still covered when it is smaller than a hexagon', () => {
    expect(fieldCounts(ask(0.2, 0.2, 1))).toMatchObject({ cover: 1, straightWhole: 0, straightHalf: 1 });
  });

  it('forgives rounding: ten flats are ten', () => {
    expect(fieldCounts(ask(10 * FLAT * 0.3, 2 * 0.3, 0.3)).inside).toBe(10);
    expect(fieldCounts(ask(10 * FLAT * 0.3, 0.3, 0.3)).cover).toBe(10);
  });

  it('ends with a row that has something in it', () => {
    const oneWide = { flats: 1.2, edges: 2 + 1.5 * 3 };
    expect(planInside(oneWide)).toMatchObject({ rows: 3, first: { wholes: 1 }, second: { wholes: 0 } });
  });

  it('one half flat wide is a column of halves', () => {
    expect(planStraight({ flats: 0.4, edges: 10 })).toMatchObject({
      first: { wholes: 0, rightHalf: true },
      second: { wholes: 0, leftHalf: true },
    });
  });

  it('past a million patches says how many it would take', () => {
    const huge = ask(480, 480, 1 / 8);
    expect(field({ ...huge, sides: 'cover' })).toEqual({
      ok: false,
      problem: { code: 'too-many-patches', count: fieldCounts(huge).cover, most: 1_000_000 },
    });
    expect(fieldCounts(huge).cover).toBeGreaterThan(5_000_000);
  });
});
