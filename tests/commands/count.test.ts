import { describe, expect, test } from 'vitest';
import { answered, expectFigures, numberOf, openAsking } from './asking.ts';

const R3 = Math.sqrt(3);
const ask = openAsking();

/** Worked beforehand by the row formulas and by brute force over shifted, clipped polygons. */
const FIELDS: readonly (readonly [
  quilt: string,
  size: string,
  rows: string,
  counts: { inside: number; cover: number; straightWhole: number; straightHalf: number },
  straight: { width: number; height: number; rows: number },
  byArea: number,
  coverRows: number,
])[] = [
  [
    '20x20in',
    '3/4',
    'across',
    { inside: 247, cover: 304, straightWhole: 285, straightHalf: 19 },
    { width: 20.14, height: 21, rows: 19 },
    273.7,
    19,
  ],
  [
    '20x20in',
    '3/4',
    'down',
    { inside: 247, cover: 304, straightWhole: 285, straightHalf: 19 },
    { width: 21, height: 20.14, rows: 19 },
    273.7,
    19,
  ],
  [
    '24x36in',
    '1',
    'across',
    { inside: 299, cover: 362, straightWhole: 338, straightHalf: 24 },
    { width: 24.25, height: 37, rows: 25 },
    332.6,
    25,
  ],
  [
    '36x45in',
    '1',
    'across',
    { inside: 580, cover: 666, straightWhole: 636, straightHalf: 30 },
    { width: 36.37, height: 46, rows: 31 },
    623.5,
    31,
  ],
  [
    '36x45in',
    '1',
    'down',
    { inside: 575, cover: 662, straightWhole: 638, straightHalf: 24 },
    { width: 37, height: 45.03, rows: 25 },
    623.5,
    25,
  ],
  [
    '50x60in',
    '1 1/2',
    'across',
    { inside: 481, cover: 540, straightWhole: 513, straightHalf: 27 },
    { width: 50.66, height: 60, rows: 27 },
    513.2,
    27,
  ],
  [
    '50x60in',
    '1',
    'across',
    { inside: 1092, cover: 1209, straightWhole: 1169, straightHalf: 40 },
    { width: 50.23, height: 61, rows: 41 },
    1154.7,
    41,
  ],
  [
    '48x60in',
    '2',
    'down',
    { inside: 248, cover: 306, straightWhole: 289, straightHalf: 17 },
    { width: 50, height: 60.62, rows: 17 },
    277.1,
    17,
  ],
  [
    '70x90in',
    '1 1/4',
    'across',
    { inside: 1481, cover: 1617, straightWhole: 1568, straightHalf: 49 },
    { width: 70.36, height: 91.25, rows: 49 },
    1551.9,
    49,
  ],
  [
    '90x108in',
    '1',
    'across',
    { inside: 3621, cover: 3832, straightWhole: 3760, straightHalf: 72 },
    { width: 90.07, height: 109, rows: 73 },
    3741.2,
    73,
  ],
  [
    '90x108in',
    '1 1/2',
    'across',
    { inside: 1598, cover: 1739, straightWhole: 1691, straightHalf: 48 },
    { width: 90.93, height: 109.5, rows: 49 },
    1662.8,
    49,
  ],
  [
    '14x48in',
    '1/2',
    'across',
    { inside: 977, cover: 1105, straightWhole: 1040, straightHalf: 65 },
    { width: 14.29, height: 48.5, rows: 65 },
    1034.6,
    65,
  ],
];

describe('/count field', () => {
  test.each(FIELDS)(
    '%s of %s in, rows %s',
    async (quilt, size, rows, counts, { width, height, rows: straightRows }, byArea, coverRows) => {
      const head = `/count field quilt:${quilt} size:${size}in rows:${rows}`;

      const covered = await answered(ask, head);
      expectFigures(covered, '', { ...counts, total: counts.cover, rows: coverRows });
      expect(numberOf(covered, 'byArea')).toBeCloseTo(byArea, 1);
      const [w = 0, h = 0] = quilt.split('x').map(Number.parseFloat);
      expectFigures(covered, 'in', { width: w, height: h });

      const whole = await answered(ask, `${head} sides:whole`);
      expectFigures(whole, '', { ...counts, total: counts.inside });
      expect(numberOf(whole, 'width')).toBeLessThanOrEqual(w + 1e-9);
      expect(numberOf(whole, 'height')).toBeLessThanOrEqual(h + 1e-9);

      const straight = await answered(ask, `${head} sides:straight`);
      expectFigures(straight, '', {
        ...counts,
        total: counts.straightWhole + counts.straightHalf,
        rows: straightRows,
      });
      expect(numberOf(straight, 'width')).toBeCloseTo(width, 2);
      expect(numberOf(straight, 'height')).toBeCloseTo(height, 2);
    },
  );

  test('in centimetres: 140 × 200 cm of 2.5 cm', async () => {
    const head = '/count field quilt:140x200cm size:2.5cm rows:across';
    const covered = await answered(ask, head);
    expectFigures(covered, '', {
      inside: 1670,
      cover: 1782,
      total: 1782,
      straightWhole: 1728,
      straightHalf: 54,
      rows: 54,
    });
    expectFigures(covered, 'in', { width: 140 / 2.54, height: 200 / 2.54 });
    const straight = await answered(ask, `${head} sides:straight`);
    expect(numberOf(straight, 'width') * 2.54).toBeCloseTo(140.73, 2);
    expect(numberOf(straight, 'height') * 2.54).toBeCloseTo(201.25, 2);
  });

  test('a quilt of exactly 8 flats by 9 rows holds 68 whole, by the tolerance', async () => {
    const reply = await answered(ask, `/count field quilt:${8 * R3}x14in size:1in`);
    expectFigures(reply, '', { inside: 68, cover: 85, straightWhole: 75, straightHalf: 10 });
  });

  test.each(['whole', 'cover', 'straight'])(
    'sides:%s: the seams are those of six-sided patches less their outline',
    async (sides) => {
      // 6 × pieces ≥ 2 × seams, and no group of n hexagons has more than 3n − √(12n − 3) seams.
      const reply = await answered(ask, `/count field quilt:24x36in size:1in sides:${sides}`);
      const [total, seams] = [numberOf(reply, 'total'), numberOf(reply, 'seams')];
      expect(seams).toBeLessThanOrEqual(3 * total - Math.sqrt(12 * total - 3));
      expect(seams).toBeGreaterThan(2.5 * total);
      if (sides !== 'straight') expect(numberOf(reply, 'seamLength')).toBeCloseTo(seams, 6);
    },
  );

  test('seams of whole rows, counted by hand: 3 rows of 2, 1, 2', async () => {
    // Width 2 flats, height 5 in: rows of 2, 1 and 2. Within rows 1 + 0 + 1; between rows 2 + 2.
    const reply = await answered(ask, `/count field quilt:${2 * R3}x5in size:1in sides:whole`);
    expectFigures(reply, '', { total: 5, seams: 6, rows: 3 });
    expectFigures(reply, 'in', { width: 2 * R3, height: 5, seamLength: 6 });
  });

  test('a bed by its name says the size that was taken', async () => {
    const reply = await answered(ask, '/count field quilt:queen size:1in');
    expectFigures(reply, '', { total: 3832 });
    expect(reply.notes.join()).toContain('90 x 108 in');
  });

  test('an infant’s size carries the caution on sleep, others do not', async () => {
    for (const bed of ['crib', 'cot', 'baby']) {
      const reply = await answered(ask, `/count field quilt:${bed} size:1in`);
      expect(reply.cautions.join(), bed).toMatch(/crib.*twelve months/);
    }
    expect((await answered(ask, '/count field quilt:queen size:1in')).cautions).toEqual([]);
  });
});

describe('/count rosette', () => {
  test('a bare number may be its rounds as well as a size; with a unit it is a size', async () => {
    const asked = await ask('/count rosette 3');
    expect(asked.asks).toBe('Is that 3 rounds, or patches of this size?');
    expect(asked.choices.map(({ ask: words }) => words)).toEqual([
      '/count rosette rounds:3',
      '/count rosette edge:3in',
      '/count rosette flats:3in',
      '/count rosette corners:3in',
    ]);
    for (const words of ['/count rosette 3in', '/count rosette rounds:2 3', '/count rosette 3 1/2'])
      expect((await ask(words)).choices[0]?.label, words).toMatch(/side$/);
    expect((await ask('/count diamonds 3')).choices[0]?.ask).toBe('/count diamonds rounds:3');
    expect((await ask('/count star 4')).lines.at(-1)).toBe('`/count star side:4`');
    expect((await ask('/count rosette rounds:0')).lines[0]).toBe('1 hexagon.');
  });

  test.each([0, 1, 2, 3, 4, 7, 20, 100])('%d rounds', async (rounds) => {
    const edge = 1.5;
    const reply = await answered(ask, `/count rosette rounds:${rounds} size:1 1/2in`);
    const seams = 3 * rounds * (3 * rounds + 1);
    expectFigures(reply, '', {
      total: 3 * rounds * (rounds + 1) + 1,
      rounds: Array.from({ length: rounds + 1 }, (_, r) => (r === 0 ? 1 : 6 * r)),
      seams,
      setIns: 6 * rounds ** 2,
    });
    expectFigures(reply, 'in', { seamLength: seams * edge });
    const sides = [(2 * rounds + 1) * R3 * edge, (3 * rounds + 2) * edge].sort((a, b) => a - b);
    const size = [numberOf(reply, 'width'), numberOf(reply, 'height')].sort((a, b) => a - b);
    expect(size[0]).toBeCloseTo(sides[0]!, 6);
    expect(size[1]).toBeCloseTo(sides[1]!, 6);
  });
});

/** How many stand in rings, and how many pairs of neighbours there are. */
const standing = (rings: number) => ({ n: 3 * rings * (rings + 1) + 1, pairs: 3 * rings * (3 * rings + 1) });

describe('/count garden', () => {
  /** Finite gardens, placed patch by patch beforehand. */
  const gardens = [
    // rosettes, rounds, outer, path, total, seams
    ['7', 1, 'no', 24, 73, null],
    ['7', 1, 'yes', 54, 103, 270],
    ['7', 2, 'yes', 84, 217, null],
    ['19', 2, 'yes', 198, 559, 1584],
    ['6x5', 2, 'no', 196, 766, null],
    ['6x5', 2, 'yes', 304, 874, null],
  ] as const;

  test.each(gardens)(
    'rosettes:%s rounds:%d outer:%s',
    async (rosettes, rounds, outer, path, total, seams) => {
      const reply = await answered(
        ask,
        `/count garden rosettes:${rosettes} rounds:${rounds} path:one outer:${outer} size:1in`,
      );
      const n = rosettes === '6x5' ? 30 : Number(rosettes);
      expectFigures(reply, '', {
        rosettes: n,
        centres: n,
        petals: n * 3 * rounds * (rounds + 1),
        path,
        total,
        pathPerRosette: 3 * rounds + 2,
        ...(seams === null ? {} : { seams }),
      });
      expectFigures(reply, 'in', { seamLength: numberOf(reply, 'seams') });
      expect(numberOf(reply, 'width')).toBeGreaterThan(0);
      expect(numberOf(reply, 'height')).toBeGreaterThan(0);
    },
  );

  test.each([1, 2, 3, 4])('pieces per rosette in the endless pattern, %d rounds', async (rounds) => {
    const per = async (path: string) =>
      numberOf(
        await answered(ask, `/count garden rosettes:7 rounds:${rounds} path:${path} size:1in`),
        'pathPerRosette',
      );
    expect(await per('one')).toBe([0, 5, 8, 11, 14][rounds]);
    expect(await per('own')).toBe([0, 12, 18, 24, 30][rounds]);
    expect(await per('none')).toBe(0);
  });

  test('no path: only the rosettes, whose shared sides are seams too', async () => {
    const reply = await answered(ask, '/count garden rosettes:7 rounds:1 path:none size:1in');
    expectFigures(reply, '', { total: 49, path: 0, centres: 7, petals: 42 });
    // Interlocked flowers of one round touch along 3 sides where two stand side by side (12 pairs): 7·12 + 12·3.
    expectFigures(reply, '', { seams: 7 * 12 + 12 * 3 });
  });

  test('a path of one’s own: a ring round each, none shared', async () => {
    const reply = await answered(ask, '/count garden rosettes:7 rounds:2 path:own size:1in');
    expectFigures(reply, '', { path: 7 * 18, total: 7 * 37 });
  });

  test.each([0, 1, 2])('one rosette in %d rings of them is the sum of its parts', async (rings) => {
    const { n } = standing(rings);
    const reply = await answered(ask, `/count garden rosettes:${n} rounds:1 path:one outer:yes size:1in`);
    expect(numberOf(reply, 'total')).toBe(
      numberOf(reply, 'centres') + numberOf(reply, 'petals') + numberOf(reply, 'path'),
    );
  });

  const withDiamonds = [
    // rosettes, rounds, hexagons, triangles, diamonds and seams (inside), the same with the outer ones
    [7, 1, 49, 6, 12, 150, 30, 186],
    [7, 2, 133, 6, 24, 408, 60, 480],
    [19, 1, 133, 24, 42, 468, 72, 528],
  ] as const;

  test.each(withDiamonds)(
    '%d rosettes of %d rounds set with diamonds',
    async (rosettes, rounds, hexagons, triangles, diamonds, seams, outerDiamonds, outerSeams) => {
      const head = `/count garden rosettes:${rosettes} rounds:${rounds} path:diamonds size:1in`;
      const petals = hexagons - rosettes;
      const inside = await answered(ask, `${head} outer:no`);
      expectFigures(inside, '', {
        rosettes,
        centres: rosettes,
        petals,
        triangles,
        diamonds,
        seams,
        total: hexagons + diamonds + triangles,
      });
      const outside = await answered(ask, `${head} outer:yes`);
      expectFigures(outside, '', { diamonds: outerDiamonds, seams: outerSeams, triangles });
      const rings = rosettes === 7 ? 1 : 2;
      expect(outerDiamonds).toBe(6 * rounds * rosettes - rounds * standing(rings).pairs);
    },
  );

  test('rosettes that make no full ring are refused with the rings that are near', async () => {
    const reply = await ask('/count garden rosettes:8 rounds:1 size:1in');
    expect(reply.error?.code).toBe('arrangement-unknown');
    expect(reply.error?.message).toContain('7 and 19');
  });

  test('as many in rows are offered in their place, or apart', async () => {
    const told = async (words: string) => (await ask(words)).lines;
    for (const words of ['12 rosettes of 2 rounds, how many hexies', '/count garden rosettes:12 rounds:2']) {
      const [sentence = '', instead] = await told(words);
      expect(sentence).toContain('/plan rosette number:12');
      expect(instead).toBe('`/count garden rosettes:3x4 rounds:2`');
    }
    expect((await told('/count garden rosettes:2.5'))[0]).toContain('6x5');
    expect((await told('/count stars stars:15'))[0]).toMatch(/^15 stars .* 3x5\./);
  });
});

describe('/count star', () => {
  test.each([1, 2, 3, 4, 5, 6, 40])('%d a side', async (side) => {
    const reply = await answered(ask, `/count star side:${side} size:3/4in`);
    const seams = 6 * side * (2 * side - 1);
    expectFigures(reply, '', {
      total: 6 * side ** 2,
      perPoint: side ** 2,
      rounds: Array.from({ length: side }, (_, k) => 6 * (2 * k + 1)),
      seams,
    });
    expectFigures(reply, 'in', { seamLength: seams * 0.75 });
  });
});

describe('/count stars', () => {
  const sets = [
    // stars, set, outer, own diamonds, between, seams
    [7, 'diamonds', 'no', 42, 12, 90],
    [7, 'hexagons', 'no', 42, 6, 78],
    [7, 'hexagons', 'yes', 42, 24, 126],
    [19, 'hexagons', 'no', 114, 24, 258],
    [19, 'hexagons', 'yes', 114, 54, 342],
  ] as const;

  test.each(sets)('stars:%d set:%s outer:%s', async (stars, set, outer, diamonds, between, seams) => {
    const reply = await answered(ask, `/count stars stars:${stars} set:${set} outer:${outer} size:1in`);
    expectFigures(reply, '', { stars, diamonds, between, seams, total: diamonds + between });
    expectFigures(reply, 'in', { seamLength: seams });
  });

  test('nineteen set with diamonds: one between each of the 42 touching pairs', async () => {
    const reply = await answered(ask, '/count stars stars:19 set:diamonds outer:no size:1in');
    // Each star has 6 seams, each diamond between is sewn on 4 sides less those left open: two of its sides to each star.
    expectFigures(reply, '', { stars: 19, diamonds: 114, between: 42, total: 156, seams: 19 * 6 + 42 * 4 });
  });
});

describe('/count diamonds', () => {
  test.each([
    [4, 0, [4]],
    [4, 1, [4, 12]],
    [4, 2, [4, 12, 20]],
    [4, 3, [4, 12, 20, 28]],
    [1, 0, [1]],
    [1, 1, [1, 8]],
    [1, 3, [1, 8, 16, 24]],
  ])('from:%d rounds:%d', async (from, rounds, expected) => {
    const reply = await answered(ask, `/count diamonds from:${from} rounds:${rounds} size:2in`);
    const n = (from === 4 ? 2 : 1) + 2 * rounds;
    const seams = 2 * n * (n - 1);
    expectFigures(reply, '', { total: n ** 2, rounds: expected, seams });
    expectFigures(reply, 'in', { seamLength: seams * 2 });
  });
});

describe('/count blocks', () => {
  test.each([1, 2, 3, 4, 5, 30])('a hexagon of diamonds, %d a side', async (side) => {
    const reply = await answered(ask, `/count blocks side:${side} size:1in`);
    const seams = 3 * side * (2 * side - 1);
    expectFigures(reply, '', {
      blocks: side ** 2,
      total: 3 * side ** 2,
      perShade: side ** 2,
      seams,
      blockSeams: 3 * side ** 2,
    });
    expectFigures(reply, 'in', { seamLength: seams });
  });

  test('so many blocks: the pieces and the seams inside, no more than is known', async () => {
    const reply = await answered(ask, '/count blocks blocks:100 size:1in');
    expectFigures(reply, '', { blocks: 100, total: 300, perShade: 100, blockSeams: 300 });
    expect(reply.figures).not.toHaveProperty('seams');
    expect(reply.figures).not.toHaveProperty('seamLength');
  });
});

describe('a size of 3 in or more', () => {
  const forms = [
    'field quilt:60x72in',
    'rosette rounds:2',
    'garden rosettes:7 rounds:1',
    'star side:3',
    'stars stars:7',
    'diamonds from:1 rounds:1',
    'blocks side:3',
  ];

  test.each(forms)('/count %s: bare it is asked back, with size: it is the side', async (form) => {
    const asked = await ask(`/count ${form} 4in`);
    expect(asked.error).toBeNull();
    expect(asked.asks).toMatch(/4 in.*\?$/);
    const lengths = new Set<number>();
    for (const choice of asked.choices) lengths.add(numberOf(await answered(ask, choice.ask), 'seamLength'));
    expect(lengths.size).toBe(asked.choices.length);
    expect(lengths.size).toBeGreaterThanOrEqual(2);

    const sized = await answered(ask, `/count ${form} size:4in`);
    const edge = await answered(ask, `/count ${form} edge:4in`);
    expect(numberOf(sized, 'seamLength')).toBe(numberOf(edge, 'seamLength'));
    const readings = sized.choices.filter(({ ask: words }) => words.startsWith('/count'));
    expect(readings.length).toBe(asked.choices.length - 1);
    for (const choice of sized.choices) await answered(ask, choice.ask);
    expect(edge.choices.filter(({ ask: words }) => words.startsWith('/count'))).toEqual([]);
  });

  test('flat to flat and point to point are in sides what geometry says', async () => {
    const edgeOf = async (size: string) =>
      numberOf(await answered(ask, `/count rosette rounds:1 ${size}`), 'seamLength') / 12;
    expect(await edgeOf('flats:3in')).toBeCloseTo(3 / R3, 9);
    expect(await edgeOf('corners:3in')).toBeCloseTo(1.5, 9);
    const diamond = numberOf(await answered(ask, '/count star side:1 flats:3in'), 'seamLength') / 6;
    expect(diamond).toBeCloseTo((3 * 2) / R3, 9);
  });
});

test('a quilt is filled with hexagons; of another shape its area tells about how many', async () => {
  const { error } = await ask('/count field 60x72in size:2in shape:square');
  expect(error?.code).toBe('field-of-hexagons');
  expect(error?.message).toContain('about 1,080 of 2 in');
  expect((await ask('/count field 60x72in size:2in shape:hexagon')).error).toBeNull();
  expect((await ask('/count field 60x72in size:2in shape:rectangle')).error?.code).toBe('field-of-hexagons');
});
