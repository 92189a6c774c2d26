import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { writeLength } from '../../src/chat/option-kinds.ts';
import { answered, type Expected, expectFigures, numberOf, openAsking } from './asking.ts';

/** The tables as they were worked beforehand by closed form, by line offset and by a geometry library. */
const HEXAGONS = [
  // edge, seam, cut edge, flats finished, flats cut, corners finished, corners cut, area finished, area cut
  ['1/2', '1/4', 0.7887, 0.866, 1.366, 1, 1.5774, 0.6495, 1.616],
  ['1/2', '3/8', 0.933, 0.866, 1.616, 1, 1.866, 0.6495, 2.2617],
  ['3/4', '1/4', 1.0387, 1.299, 1.799, 1.5, 2.0774, 1.4614, 2.8029],
  ['3/4', '3/8', 1.183, 1.299, 2.049, 1.5, 2.366, 1.4614, 3.6361],
  ['1', '1/4', 1.2887, 1.7321, 2.2321, 2, 2.5774, 2.5981, 4.3146],
  ['1', '3/8', 1.433, 1.7321, 2.4821, 2, 2.866, 2.5981, 5.3352],
  ['1 1/4', '1/4', 1.5387, 2.1651, 2.6651, 2.5, 3.0774, 4.0595, 6.151],
  ['1 1/4', '3/8', 1.683, 2.1651, 2.9151, 2.5, 3.366, 4.0595, 7.3591],
  ['1 1/2', '1/4', 1.7887, 2.5981, 3.0981, 3, 3.5774, 5.8457, 8.3122],
  ['1 1/2', '3/8', 1.933, 2.5981, 3.3481, 3, 3.866, 5.8457, 9.7078],
  ['2', '1/4', 2.2887, 3.4641, 3.9641, 4, 4.5774, 10.3923, 13.6088],
  ['2', '3/8', 2.433, 3.4641, 4.2141, 4, 4.866, 10.3923, 15.3794],
] as const;

const DIAMONDS = [
  // edge, seam, cut edge, height finished, height cut, short diagonal cut, long diagonal cut, area finished, area cut
  ['1/2', '1/4', 1.0774, 0.433, 0.933, 1.0774, 1.866, 0.2165, 1.0052],
  ['1/2', '3/8', 1.366, 0.433, 1.183, 1.366, 2.366, 0.2165, 1.616],
  ['3/4', '1/4', 1.3274, 0.6495, 1.1495, 1.3274, 2.299, 0.4871, 1.5258],
  ['3/4', '3/8', 1.616, 0.6495, 1.3995, 1.616, 2.799, 0.4871, 2.2617],
  ['1', '1/4', 1.5774, 0.866, 1.366, 1.5774, 2.7321, 0.866, 2.1547],
  ['1', '3/8', 1.866, 0.866, 1.616, 1.866, 3.2321, 0.866, 3.0155],
  ['1 1/4', '1/4', 1.8274, 1.0825, 1.5825, 1.8274, 3.1651, 1.3532, 2.8918],
  ['1 1/4', '3/8', 2.116, 1.0825, 1.8325, 2.116, 3.6651, 1.3532, 3.8777],
  ['1 1/2', '1/4', 2.0774, 1.299, 1.799, 2.0774, 3.5981, 1.9486, 3.7372],
  ['1 1/2', '3/8', 2.366, 1.299, 2.049, 2.366, 4.0981, 1.9486, 4.8481],
  ['2', '1/4', 2.5774, 1.7321, 2.2321, 2.5774, 4.4641, 3.4641, 5.7528],
  ['2', '3/8', 2.866, 1.7321, 2.4821, 2.866, 4.9641, 3.4641, 7.1136],
] as const;

const R3 = Math.sqrt(3);

interface ByHand {
  readonly lengths: Expected;
  readonly finishedArea: number;
  readonly cutArea: number;
}

/** Area of the cut patch: the finished one, a band of the seam's width round it, and a piece at each corner. */
const grown = (area: number, perimeter: number, seam: number, exterior: readonly number[]) =>
  area +
  perimeter * seam +
  seam ** 2 * exterior.reduce((sum, degrees) => sum + Math.tan((degrees * Math.PI) / 360), 0);

/** The closed forms of each shape's outward offset (a side e between corners θ₁, θ₂ grows by s(cot θ₁/2 + cot θ₂/2)). */
const CLOSED_FORMS: Readonly<Record<string, (a: number, s: number) => ByHand>> = {
  hexagon: (a, s) => ({
    lengths: {
      finishedEdge: a,
      cutEdge: a + (2 * s) / R3,
      finishedFlats: R3 * a,
      cutFlats: R3 * a + 2 * s,
      finishedCorners: 2 * a,
      cutCorners: 2 * a + (4 * s) / R3,
      startSquare: 2 * a + (4 * s) / R3,
    },
    finishedArea: ((3 * R3) / 2) * a ** 2,
    cutArea: ((3 * R3) / 2) * (a + (2 * s) / R3) ** 2,
  }),
  diamond: (a, s) => ({
    lengths: {
      finishedEdge: a,
      cutEdge: a + (4 * s) / R3,
      finishedHeight: (R3 / 2) * a,
      cutHeight: (R3 / 2) * a + 2 * s,
      cutShortDiagonal: a + (4 * s) / R3,
      cutLongDiagonal: R3 * a + 4 * s,
      startSquare: 1.5 * (a + (4 * s) / R3),
    },
    finishedArea: (R3 / 2) * a ** 2,
    cutArea: grown((R3 / 2) * a ** 2, 4 * a, s, [120, 60, 120, 60]),
  }),
  triangle: (a, s) => ({
    lengths: {
      finishedEdge: a,
      cutEdge: a + 2 * R3 * s,
      finishedHeight: (R3 / 2) * a,
      cutHeight: (R3 / 2) * a + 3 * s,
      startSquare: a + 2 * R3 * s,
    },
    finishedArea: (R3 / 4) * a ** 2,
    cutArea: grown((R3 / 4) * a ** 2, 3 * a, s, [120, 120, 120]),
  }),
  'half-hexagon': (a, s) => ({
    lengths: {
      cutLongSide: 2 * a + 2 * R3 * s,
      cutShortSide: a + (2 * s) / R3,
      cutLeg: a + (4 * s) / R3,
      cutHeight: (R3 / 2) * a + 2 * s,
      finishedHeight: (R3 / 2) * a,
      startSquare: 2 * a + 2 * R3 * s,
    },
    finishedArea: ((3 * R3) / 4) * a ** 2,
    cutArea: grown(((3 * R3) / 4) * a ** 2, 5 * a, s, [120, 120, 60, 60]),
  }),
  'half-hexagon-flats': (a, s) => ({
    lengths: {
      cutLongSide: R3 * a + 2 * s,
      cutShortSide: a / 2 + s * (1 + 1 / R3),
      cutLeg: a + (2 * s) / R3,
    },
    finishedArea: ((3 * R3) / 4) * a ** 2,
    cutArea: grown(((3 * R3) / 4) * a ** 2, (3 + R3) * a, s, [90, 90, 60, 60, 60]),
  }),
  kite: (a, s) => ({
    lengths: { cutLongSide: (R3 / 2) * a + s * (R3 + 1), cutShortSide: a / 2 + s * (1 + 1 / R3) },
    finishedArea: (R3 / 4) * a ** 2,
    cutArea: grown((R3 / 4) * a ** 2, (R3 + 1) * a, s, [120, 90, 60, 90]),
  }),
  third: (a, s) => ({
    lengths: {
      cutLongSide: (R3 / 2) * a + s * (1 + 1 / R3),
      cutShortSide: a / 2 + s * (1 + 1 / R3),
      cutLeg: a + (2 * s) / R3,
    },
    finishedArea: (R3 / 2) * a ** 2,
    cutArea: grown((R3 / 2) * a ** 2, (R3 + 2) * a, s, [60, 90, 60, 60, 90]),
  }),
  square: (a, s) => ({
    lengths: { finishedEdge: a, cutEdge: a + 2 * s, startSquare: a + 2 * s },
    finishedArea: a ** 2,
    cutArea: (a + 2 * s) ** 2,
  }),
};

describe('/cut, as it is asked by the contract', () => {
  const ask = openAsking();

  test.each(HEXAGONS)(
    'hexagon %s in, seam %s in',
    async (size, seam, edge, flats, cutFlats, corners, cutCorners, area, cutArea) => {
      const reply = await answered(ask, `/cut shape:hexagon size:${size}in seam:${seam}in`);
      expectFigures(reply, 'in', {
        cutEdge: edge,
        finishedFlats: flats,
        cutFlats,
        finishedCorners: corners,
        cutCorners,
      });
      expectFigures(reply, 'sq in', { finishedArea: area, cutArea });
    },
  );

  test.each(DIAMONDS)(
    'diamond %s in, seam %s in',
    async (size, seam, edge, height, cutHeight, short, long, area, cutArea) => {
      const reply = await answered(ask, `/cut shape:diamond size:${size}in seam:${seam}in`);
      expectFigures(reply, 'in', {
        cutEdge: edge,
        finishedHeight: height,
        cutHeight,
        cutShortDiagonal: short,
        cutLongDiagonal: long,
      });
      expectFigures(reply, 'sq in', { finishedArea: area, cutArea });
    },
  );

  const cases = Object.keys(CLOSED_FORMS).flatMap((shape) =>
    [
      ['1/2', '1/4', 0.5, 0.25],
      ['1', '1/4', 1, 0.25],
      ['1 1/2', '3/8', 1.5, 0.375],
      ['2 1/2', '0', 2.5, 0],
      ['11 3/4', '1/2', 11.75, 0.5],
    ].map(([size, seam, a, s]) => [shape, size, seam, a, s] as [string, string, string, number, number]),
  );

  test.each(cases)(
    '%s %s in, seam %s in, has every figure of its closed form',
    async (shape, size, seam, a, s) => {
      const reply = await answered(ask, `/cut shape:${shape} size:${size}in seam:${seam}in measure:edge`);
      const { lengths, finishedArea, cutArea } = CLOSED_FORMS[shape]!(a, s);
      expectFigures(reply, 'in', lengths);
      expectFigures(reply, 'sq in', { finishedArea, cutArea });
    },
  );

  test('a rectangle has two measures, each grown by two seams', async () => {
    const reply = await answered(ask, '/cut shape:rectangle size:2x3in seam:1/4in');
    expectFigures(reply, 'in', {
      finishedWidth: 2,
      finishedHeight: 3,
      cutWidth: 2.5,
      cutHeight: 3.5,
      startSquare: 3.5,
    });
    expectFigures(reply, 'sq in', { finishedArea: 6, cutArea: 8.75 });
  });

  test('blunt corners: a 1-inch hexagon over paper is cut from a 2½-inch square, 2a + 2s', async () => {
    const blunt = await answered(ask, '/cut shape:hexagon size:1in seam:1/4in corners:blunt');
    expectFigures(blunt, 'in', { cutCorners: 2.5, cutFlats: R3 + 0.5, startSquare: 2.5 });
    const pointed = await answered(ask, '/cut shape:hexagon size:1in seam:1/4in corners:pointed');
    expectFigures(pointed, 'in', { startSquare: 2.5774, startSquareTurned: 2.4896 - 0.00005 });
    expect(numberOf(blunt, 'cutArea')).toBeLessThan(numberOf(pointed, 'cutArea'));
    expect(blunt.notes.join()).not.toContain('pointed');
  });

  test('a cut patch of no seam is the finished patch', async () => {
    const reply = await answered(ask, '/cut shape:kite size:2in seam:0in');
    for (const name of ['LongSide', 'ShortSide', 'Area'])
      expect(numberOf(reply, `cut${name}`)).toBeCloseTo(numberOf(reply, `finished${name}`), 9);
  });
});

describe('/cut, whichever measure is given', () => {
  const ask = openAsking();
  const same: readonly (readonly [string, string, number])[] = [
    ['hexagon', 'size:3.4641016151in measure:flats', 2],
    ['hexagon', 'flats:3.4641016151in', 2],
    ['hexagon', 'size:4in measure:corners', 2],
    ['hexagon', 'corners:4in', 2],
    ['hexagon', 'edge:2in', 2],
    ['diamond', 'size:1.7320508076in measure:height', 2],
    ['diamond', 'height:1.7320508076in', 2],
    ['triangle', 'size:1.7320508076in measure:height', 2],
    ['half-hexagon', 'size:1.7320508076in measure:height', 2],
    ['square', 'size:2in measure:flats', 2],
  ];

  test.each(same)('%s %s is the one of %d in', async (shape, given, edge) => {
    const reply = await answered(ask, `/cut shape:${shape} ${given} seam:1/4in`);
    const straight = await answered(ask, `/cut shape:${shape} size:${edge}in measure:edge seam:1/4in`);
    for (const name of Object.keys(straight.figures)) {
      const value = straight.figures[name]?.value;
      if (typeof value === 'number') expect(numberOf(reply, name), name).toBeCloseTo(value, 6);
    }
  });
});

describe('cut, then uncut, gives the size back', () => {
  const ask = openAsking();
  /** A measure of each shape that can be typed, and the figure that it is. */
  const measures = [
    ['hexagon', 'edge', 'Edge'],
    ['hexagon', 'flats', 'Flats'],
    ['hexagon', 'corners', 'Corners'],
    ['hexagon', 'height', 'Height'],
    ['hexagon', 'width', 'Width'],
    ['diamond', 'edge', 'Edge'],
    ['diamond', 'height', 'Height'],
    ['triangle', 'edge', 'Edge'],
    ['triangle', 'height', 'Height'],
    ['half-hexagon', 'height', 'Height'],
    ['half-hexagon', 'width', 'Width'],
    ['half-hexagon-flats', 'height', 'Height'],
    ['half-hexagon-flats', 'width', 'Width'],
    ['kite', 'width', 'Width'],
    ['kite', 'height', 'Height'],
    ['third', 'width', 'Width'],
    ['third', 'height', 'Height'],
    ['square', 'edge', 'Edge'],
    ['square', 'corners', 'Corners'],
  ] as const;

  test.each(measures)('%s by its %s', async (shape, measure, figure) => {
    const sixteenths = fc.integer({ min: 8, max: 200 }).map((n) => n / 16);
    const seams = fc.integer({ min: 0, max: 8 }).map((n) => n / 16);
    await fc.assert(
      fc.asyncProperty(sixteenths, seams, async (edge, seam) => {
        const there = await answered(
          ask,
          `/cut shape:${shape} size:${writeLength(edge)} measure:edge seam:${seam}in`,
        );
        const cut = numberOf(there, `cut${figure}`);
        const back = await answered(
          ask,
          `/cut shape:${shape} size:${cut}in measure:${measure} given:cut seam:${seam}in`,
        );
        const finished = numberOf(there, `finished${figure}`);
        expect(numberOf(back, `finished${figure}`)).toBeCloseTo(finished, 6);
        expect(numberOf(back, `cut${figure}`)).toBeCloseTo(cut, 6);
        expect(numberOf(back, 'finishedArea')).toBeCloseTo(numberOf(there, 'finishedArea'), 5);
      }),
      { numRuns: 15 },
    );
  });

  test('a rectangle by both its measures', async () => {
    const back = await answered(ask, '/cut shape:rectangle size:2 1/2x3 1/2in given:cut seam:1/4in');
    expectFigures(back, 'in', { finishedWidth: 2, finishedHeight: 3, cutWidth: 2.5, cutHeight: 3.5 });
  });

  test('nothing is left when the seams eat the cut patch, and the sentence says from where something is', async () => {
    const reply = await ask('/cut shape:hexagon size:1/2in measure:flats given:cut seam:1/4in');
    expect(reply.error?.code).toBe('nothing-left');
    expect(reply.error?.message).toContain('1/2 in');
    await answered(ask, '/cut shape:hexagon size:9/16in measure:flats given:cut seam:1/4in');
  });

  test('a part of a hexagon cannot be measured by the whole hexagon’s side once it is cut', async () => {
    for (const shape of ['half-hexagon', 'half-hexagon-flats', 'kite', 'third']) {
      const reply = await ask(`/cut shape:${shape} size:2in given:cut`);
      expect(reply.error?.code, shape).toBe('measure-not-of-shape');
      expect(reply.error?.message, shape).toContain('height');
    }
  });
});

describe('a size that may be read two ways', () => {
  const ask = openAsking();
  const shapes = [
    ['hexagon', 3],
    ['diamond', 2],
    ['triangle', 2],
    ['half-hexagon', 2],
  ] as const;

  test.each(shapes)('a bare 4 in %s is asked back, each choice with an answer', async (shape, readings) => {
    const reply = await ask(`/cut ${shape} 4in`);
    expect(reply.error).toBeNull();
    expect(reply.asks).toMatch(/4 in.*\?$/);
    expect(reply.choices).toHaveLength(readings);
    const cut = new Set<number>();
    for (const choice of reply.choices) cut.add(numberOf(await answered(ask, choice.ask), 'cutArea'));
    expect(cut.size).toBe(readings);
  });

  test.each(shapes)(
    'size:4in of a %s is the side, the other readings among the choices',
    async (shape, readings) => {
      const reply = await answered(ask, `/cut shape:${shape} size:4in`);
      const edge = await answered(ask, `/cut shape:${shape} edge:4in`);
      expect(numberOf(reply, 'cutArea')).toBe(numberOf(edge, 'cutArea'));
      expect(reply.notes.join()).toContain('side');
      expect(reply.choices).toHaveLength(readings - 1);
      for (const choice of reply.choices)
        expect(numberOf(await answered(ask, choice.ask), 'cutArea')).not.toBe(numberOf(edge, 'cutArea'));
    },
  );

  test('under 3 in there is no doubt; from 3 in there is', async () => {
    expect((await ask('/cut hexagon 2 15/16in')).asks).toBeNull();
    expect((await ask('/cut hexagon 3in')).asks).not.toBeNull();
    expect((await ask('/cut hexagon 76mm')).asks).toBeNull();
    expect((await ask('/cut hexagon 77mm')).asks).not.toBeNull();
  });

  test('a shape that is measured one way only is not asked back', async () => {
    for (const shape of ['kite', 'third', 'square'])
      expect((await ask(`/cut ${shape} 4in`)).asks, shape).toBeNull();
  });

  test('a choice keeps whatever else was said', async () => {
    const reply = await ask('/cut hexagon 4in seam:3/8in corners:blunt');
    for (const choice of reply.choices) {
      expect(choice.ask).toContain('seam:3/8in');
      expect(choice.ask).toContain('corners:blunt');
    }
  });

  test('the table of readings shows what each would be cut at', async () => {
    const { table } = await ask('/cut hexagon 4in');
    expect(table?.rows.map(([, cut]) => cut)).toEqual([
      expect.stringContaining('7.428'), // √3·4 + ½
      expect.stringContaining('4 1/2'),
      expect.stringContaining('3.964'), // √3·2 + ½
    ]);
  });
});
