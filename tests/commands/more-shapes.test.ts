import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { writeLength } from '../../src/chat/option-kinds.ts';
import { answered, expectFigures, numberOf, openAsking, wordsOf } from './asking.ts';

const ask = openAsking();

const rad = (degrees: number) => (degrees * Math.PI) / 180;
const sin = (degrees: number) => Math.sin(rad(degrees));
const cos = (degrees: number) => Math.cos(rad(degrees));
const tan = (degrees: number) => Math.tan(rad(degrees));

/** The closed forms of the cut measures, written out apart from the calculator. */
const longHexagon = (a: number, b: number, angle: number, s: number) => {
  const cutLeg = a + s * (1 / tan(angle / 2) + tan(angle / 4));
  const cutLongSide = b + 2 * s * tan(angle / 4);
  const cutWidth = 2 * a * sin(angle / 2) + 2 * s;
  return { cutLeg, cutLongSide, cutWidth, cutCorners: cutLongSide + 2 * cutLeg * cos(angle / 2) };
};

const tumbler = (w: number, t: number, h: number, s: number) => {
  const base = Math.atan((2 * h) / (w - t));
  return {
    cutLongSide: w + (2 * s) / Math.tan(base / 2),
    cutShortSide: t + 2 * s * Math.tan(base / 2),
    cutHeight: h + 2 * s,
  };
};

const clamshell = (d: number, s: number) => ({
  cutWidth: d + 2 * s,
  cutHeight: d + 2 * s,
  cutConvexRadius: d / 2 + s,
  cutConcaveRadius: d / 2 - s,
});

const appleCore = (L: number, angle: number, s: number) => {
  const R = L / (2 * sin(angle / 2));
  const g = R * (1 - cos(angle / 2));
  return {
    cutWidth: L + 2 * g + 2 * s,
    cutShortSide: L - 2 * g + 2 * s,
    cutConvexRadius: R + s,
    cutConcaveRadius: R - s,
  };
};

describe('/cut of the further shapes, by the closed forms', () => {
  test.each([
    ['long-hexagon size:1in side:2in angle:60', longHexagon(1, 2, 60, 0.25)],
    ['long-hexagon size:2in side:1in angle:120 seam:3/8in', longHexagon(2, 1, 120, 0.375)],
    ['long-hexagon size:1 1/2in', longHexagon(1.5, 1.5, 90, 0.25)],
    ['tumbler size:3in narrow:2in height:2 1/2in', tumbler(3, 2, 2.5, 0.25)],
    ['tumbler size:3in', tumbler(3, 2, 3, 0.25)],
    ['tumbler size:4in narrow:1in', tumbler(4, 1, 4, 0.25)],
    ['clamshell size:3in', clamshell(3, 0.25)],
    ['clamshell size:2in seam:1/8in', clamshell(2, 0.125)],
    ['apple-core size:4in', appleCore(4, 90, 0.25)],
    ['apple-core size:3in angle:60 seam:3/8in', appleCore(3, 60, 0.375)],
  ])('%s', async (words, lengths) => {
    expectFigures(await answered(ask, `/cut shape:${words}`), 'in', lengths);
  });

  test.each([1, 1.5, 2.75])('octagon, pentagon and 45° diamond of %d in', async (a) => {
    const s = 0.25;
    const of = (shape: string) => answered(ask, `/cut shape:${shape} size:${a}in measure:edge`);
    expectFigures(await of('octagon'), 'in', {
      cutEdge: a + 2 * s * (Math.SQRT2 - 1),
      cutFlats: (1 + Math.SQRT2) * a + 2 * s,
    });
    const pentagon = a + 2 * s * tan(36);
    expectFigures(await of('pentagon'), 'in', {
      cutEdge: pentagon,
      cutHeight: (pentagon / 2) * Math.sqrt(5 + 2 * Math.sqrt(5)),
    });
    const diamond = a + 2 * Math.SQRT2 * s;
    expectFigures(await of('diamond45'), 'in', {
      cutEdge: diamond,
      cutHeight: a / Math.SQRT2 + 2 * s,
      cutShortDiagonal: 2 * diamond * sin(22.5),
      cutLongDiagonal: 2 * diamond * cos(22.5),
    });
  });

  test.each([
    ['octagon size:2in', 2 * (1 + Math.SQRT2) * 4],
    ['pentagon size:2in', (5 * 4) / (4 * tan(36))],
    ['diamond45 size:2in', 4 / Math.SQRT2],
    ['long-hexagon size:2in side:3in angle:60', 2 * 2 * 3 * sin(30) + 4 * sin(60)],
    ['tumbler size:3in narrow:2in height:2in', 5],
    ['clamshell size:4in', 8],
    ['apple-core size:4in', 16],
  ])('finished area: %s', async (words, area) => {
    expectFigures(await answered(ask, `/cut shape:${words}`), 'sq in', { finishedArea: area });
  });

  test('cut with a rounded allowance: the area, a band of the seam’s width, and a disc of it', async () => {
    const [d, L, s] = [3, 4, 0.25];
    expectFigures(await answered(ask, '/cut clamshell size:3in'), 'sq in', {
      cutArea: (d * d) / 2 + Math.PI * d * s + Math.PI * s * s,
    });
    const R = L / Math.SQRT2;
    expectFigures(await answered(ask, '/cut apple-core size:4in'), 'sq in', {
      cutArea: L * L + 4 * R * rad(90) * s + Math.PI * s * s,
    });
    expectFigures(await answered(ask, '/cut clamshell size:3in'), 'in', { startSquare: d + 2 * s });
  });
});

describe('/cut both ways', () => {
  const sixteenths = (least: number, most: number) =>
    fc.integer({ min: least * 16, max: Math.floor(most * 16) }).map((n) => n / 16);
  const angles = fc.integer({ min: 30, max: 150 });

  /** Asked finished, then asked back from what it is cut at. */
  const there = async (
    finished: string,
    back: (cut: (name: string) => string) => string,
    names: readonly string[],
  ) => {
    const first = await answered(ask, `/cut ${finished}`);
    const second = await answered(ask, `/cut ${back((name) => writeLength(numberOf(first, name)))}`);
    for (const name of names)
      expect(numberOf(second, name), `${finished}: ${name}`).toBeCloseTo(numberOf(first, name), 4);
  };

  test('long hexagons', async () => {
    await fc.assert(
      fc.asyncProperty(sixteenths(1, 5), sixteenths(1, 5), angles, async (a, b, angle) => {
        await there(
          `shape:long-hexagon size:${a}in side:${b}in angle:${angle}`,
          (cut) =>
            `shape:long-hexagon size:${cut('cutLeg')} side:${cut('cutLongSide')} angle:${angle} given:cut`,
          ['finishedLeg', 'finishedLongSide', 'finishedWidth', 'finishedArea'],
        );
      }),
      { numRuns: 30 },
    );
  });

  test('tumblers', async () => {
    await fc.assert(
      fc.asyncProperty(sixteenths(2, 5), sixteenths(1, 5), sixteenths(1, 1.9), async (w, h, t) => {
        await there(
          `shape:tumbler size:${w}in narrow:${t}in height:${h}in`,
          (cut) =>
            `shape:tumbler size:${cut('cutLongSide')} narrow:${cut('cutShortSide')} height:${cut('cutHeight')} given:cut`,
          ['finishedLongSide', 'finishedShortSide', 'finishedHeight', 'finishedArea'],
        );
      }),
      { numRuns: 30 },
    );
  });

  test('the shapes of one size', async () => {
    const shapes = [
      ['octagon', 'cutFlats', 'flats'],
      ['pentagon', 'cutHeight', 'height'],
      ['diamond45', 'cutEdge', 'edge'],
      ['clamshell', 'cutWidth', 'width'],
      ['apple-core', 'cutEdge', 'edge'],
    ] as const;
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...shapes), sixteenths(1, 6), async ([shape, figure, measure], a) => {
        await there(
          `shape:${shape} size:${a}in measure:edge`,
          (cut) => `shape:${shape} size:${cut(figure)} measure:${measure} given:cut`,
          ['finishedEdge', 'finishedArea', 'cutArea'],
        );
      }),
      { numRuns: 40 },
    );
  });
});

describe('what is taken where nothing is said is told', () => {
  test.each([
    ['/cut long-hexagon size:1in', /long sides as long as the slants, 90° points/],
    ['/cut tumbler size:3in', /the narrow end two thirds of the wide, as high as the wide end/],
    ['/cut clamshell size:3in', /the size is the width.*rounded allowance/],
    ['/cut apple-core size:4in', /corner to corner, arcs of a quarter circle \(90°\).*rounded allowance/],
  ])('%s', async (words, told) => {
    expect((await answered(ask, words)).notes.join(' ')).toMatch(told);
  });

  test('and where it is said, it is in the title', async () => {
    const title = async (words: string) => (await answered(ask, words)).title;
    expect(await title('/cut long-hexagon size:1in side:2in angle:60')).toBe(
      'Long hexagon, 1 in slanted side, 2 in long side, 60° points',
    );
    expect(await title('/cut tumbler size:3in narrow:2in height:4in')).toBe(
      'Tumbler, 3 in wide end, 2 in narrow end, 4 in high',
    );
    expect(await title('/cut clamshell 3in wide')).toBe('Clamshell, 3 in wide');
    const { notes } = await answered(ask, '/cut long-hexagon size:1in side:2in angle:60 seam:1/4in');
    expect(notes.join(' ')).not.toMatch(/slants|points/);
  });
});

describe('said in other words', () => {
  test.each([
    ['/cut elongated hexagon 1in', '/cut long-hexagon 1in'],
    ['/cut church windows 1in', '/cut long-hexagon 1in'],
    ['/cut 45° diamond 2in', '/cut diamond45 2in'],
    ['/cut 45 degree diamonds 2in', '/cut diamond45 2in'],
    ['/cut clam shells 2in', '/cut clamshell 2in'],
    ['/cut apple core 2 1/2in', '/cut apple-core 2 1/2in'],
    ['/cut apple-core 4in corner to corner', '/cut apple-core size:4in measure:corners'],
    ['/cut long-hexagon 1in, side 2in, angle 60 degrees', '/cut long-hexagon size:1in side:2in angle:60'],
    ['/cut tumbler 3in, narrow 2in, height 4in', '/cut tumbler size:3in narrow:2in height:4in'],
    ['/cut rectangle 2in side:3in', '/cut rectangle 2x3in'],
    ['/cut hexagon side:2in', '/cut hexagon edge:2in'],
    ['what size do I cut 2 inch pentagons?', '/cut pentagon 2in'],
    ['how many 2 inch clamshells from a fat quarter', '/yield clamshell 2in fat-quarter'],
  ])('%s is %s', async (words, same) => {
    const [one, other] = [await answered(ask, words), await answered(ask, same)];
    expect(one.figures).toEqual(other.figures);
  });
});

describe('a mistake', () => {
  test.each([
    ['/cut tumbler size:3in narrow:3in', 'not-narrower', /narrow/],
    ['/cut clamshell size:1in seam:1/2in', 'seam-closes-curve', /under 1\/2 in/],
    ['/cut apple-core size:1in seam:3/4in', 'seam-closes-curve', /inner curve of that apple-core/],
    ['/cut hexagon size:2in angle:60', 'dimension-not-of-shape', /long hexagons, apple-cores/],
    ['/cut octagon size:2in narrow:1in', 'dimension-not-of-shape', /tumblers/],
    ['/cut long-hexagon size:2in angle:180', 'too-large', /175°/],
    ['/cut long-hexagon size:2in angle:2', 'too-small', /5°/],
    ['/cut tumbler size:4in height:1/4in given:cut', 'nothing-left', /1\/2 in/],
    ['/cut octagon size:2x3in', 'one-measure-only'],
    ['/cut pentagon flats:2in', 'measure-not-of-shape', /height/],
    ['/cut hexagon size:2in side:2in', 'size-twice', /size, side/],
  ])('%s: %s', async (words, code, told = /./) => {
    const reply = await ask(words);
    expect(reply.error?.code).toBe(code);
    expect(reply.error?.message).toMatch(told);
    expect(wordsOf(reply)).not.toMatch(/undefined|NaN/);
  });
});

describe('cloth for the further shapes', () => {
  const SHAPES = ['long-hexagon', 'diamond45', 'octagon', 'pentagon', 'tumbler', 'clamshell', 'apple-core'];

  test.each(SHAPES)('/yield and /yardage %s agree with each other', async (shape) => {
    const patch = `shape:${shape} size:2in measure:edge`;
    const { figures } = await answered(ask, `/yield ${patch} cloth:1yd width:42in`);
    const [best, ceiling, strips] = [figures.best, figures.ceiling, figures.strips].map(
      (f) => f?.value as number,
    );
    expect(best).toBeGreaterThan(0.7 * ceiling!);
    expect(best).toBeLessThanOrEqual(ceiling!);
    expect(strips).toBeLessThanOrEqual(best!);
    const bought = await answered(ask, `/yardage pieces:${best} ${patch} width:42in`);
    expect(numberOf(bought, 'bestLength')).toBeLessThanOrEqual(36 + 1e-6);
    const more = await answered(ask, `/yardage pieces:${best! + 1} ${patch} width:42in`);
    expect(numberOf(more, 'bestLength')).toBeGreaterThan(36);
  });

  test('scales and apple-cores are told to lie curve into curve, long hexagons to share lines', async () => {
    const how = async (words: string) => wordsOf(await answered(ask, words));
    expect(await how('/yield clamshell 2in 1yd')).toMatch(/curve into curve/);
    expect(await how('/yield apple-core size:2in 1yd')).toMatch(/curve into curve/);
    expect(await how('/yield long-hexagon 1in 1yd')).toMatch(/lines shared/);
  });

  test('a patch too large for the cloth is told at its real size', async () => {
    const { error } = await ask('/yield long-hexagon size:20in cloth:fat-quarter');
    expect(error?.code).toBe('patch-wider-than-cloth');
    expect(error?.message).toMatch(/48\.\d+ x 28\.\d+ in/);
  });
});
