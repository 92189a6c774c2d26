import { describe, expect, test } from 'vitest';
import type { Reply } from '../../src/chat/reply.ts';
import { answered, expectFigures, numberOf, openAsking, valuesOf, wordsOf } from './asking.ts';

const ask = openAsking();
const countOf = (words: string): Promise<Reply> => answered(ask, `/count ${words}`);

describe('/count ball', () => {
  test('12 pieces, 30 seams, 20 corners, and both sizes', async () => {
    const reply = await countOf('ball size:1in');
    expectFigures(reply, '', { total: 12, seams: 30, corners: 20, setIns: 20 });
    expectFigures(reply, 'in', { seamLength: 30, flatToFlat: 2.227, cornerToCorner: 2.8025 });
  });

  test('by its own size', async () => {
    const reply = await countOf('ball across:4in');
    expectFigures(reply, 'in', { flatToFlat: 4, edge: 4 / 2.2270327288232137 });
  });

  test('a bare size that may be the ball’s is asked back, each answer an ask', async () => {
    const reply = await ask('/count ball 4in');
    expect(reply.asks).toMatch(/side.*across/);
    const both = await Promise.all(reply.choices.map((choice) => answered(ask, choice.ask)));
    expect(both.map((one) => numberOf(one, 'edge'))).toEqual([4, expect.closeTo(1.7961, 4)]);
    expect((await countOf('ball size:4in')).choices).toHaveLength(1);
    expect((await ask('/count ball size:2in across:4in')).error?.code).toBe('size-twice');
  });
});

describe('/count stars outer:straight', () => {
  test('seven fill a hexagon of side 5: 72 diamonds and 6 triangles', async () => {
    const reply = await countOf('stars 7 set:diamonds outer:straight size:1in');
    expectFigures(reply, '', { stars: 7, diamonds: 42, between: 30, triangles: 6, total: 78 });
    expect(reply.lines.join(' ')).toMatch(/fill a hexagon of 5 in a side/);
    expect(numberOf(reply, 'diamonds') + numberOf(reply, 'between') + 6 / 2).toBe(3 * 5 ** 2);
  });

  test('outer:yes and outer:no are as they were', async () => {
    expectFigures(await countOf('stars 7 set:hexagons outer:yes size:1in'), '', { between: 24, seams: 126 });
    expectFigures(await countOf('stars 7 set:diamonds outer:no size:1in'), '', { between: 12, seams: 90 });
  });

  test('with hexagons there is no straight edge', async () => {
    expect((await ask('/count stars 7 set:hexagons outer:straight')).error?.code).toBe(
      'straight-with-diamonds',
    );
  });
});

describe('as many as make a quilt', () => {
  const STANDING = [
    'garden quilt:60x72in rounds:2 path:one size:1in',
    'garden quilt:60x72in rounds:1 path:none size:1in',
    'garden quilt:60x72in rounds:1 path:own outer:yes size:1in',
    'garden quilt:60x72in rounds:2 path:diamonds size:1in',
    'garden quilt:140x200cm rounds:2 size:25mm',
    'stars quilt:60x72in set:diamonds size:1in',
    'stars quilt:60x72in set:hexagons size:1 1/2in',
    'stars quilt:60x72in set:diamonds outer:straight size:1in',
  ];

  test.each(STANDING)('%s: over it all round, and inside it all round', async (words) => {
    const reply = await countOf(words);
    const value = (name: string) => numberOf(reply, name);
    const [width, height] = words.includes('cm') ? [140 / 2.54, 200 / 2.54] : [60, 72];
    for (const side of ['overLeft', 'overRight', 'overTop', 'overBottom'])
      expect(value(side)).toBeGreaterThan(-1e-9);
    expect(value('width')).toBeCloseTo(width + value('overLeft') + value('overRight'), 9);
    expect(value('height')).toBeCloseTo(height + value('overTop') + value('overBottom'), 9);
    expect(value('insideWidth') + 2 * value('shortLeft')).toBeCloseTo(width, 9);
    expect(value('insideHeight') + 2 * value('shortTop')).toBeCloseTo(height, 9);
    for (const side of ['shortLeft', 'shortTop']) expect(value(side)).toBeGreaterThan(-1e-9);
    const many = value(words.startsWith('garden') ? 'rosettes' : 'stars');
    expect(value('inside')).toBeLessThan(value('byArea'));
    expect(many).toBeGreaterThan(value('byArea'));
    const rows = value('rows');
    const [first = 0, second = 0] = valuesOf(reply).perRow as readonly number[];
    expect(Math.ceil(rows / 2) * first + Math.floor(rows / 2) * second).toBe(many);
    expect(value('straightWidth')).toBeGreaterThan(width - 1e-9);
    expect(reply.lines.join(' ')).toMatch(/Trim .* half (?:rosettes|stars).*(?:border|fits)/s);
    expect(reply.lines.length).toBeLessThanOrEqual(7);
  });

  test('the counts by role add up, as in a garden of so many', async () => {
    const reply = await countOf('garden quilt:60x72in rounds:2 path:one size:1in');
    const value = (name: string) => numberOf(reply, name);
    expect(value('petals')).toBe(18 * value('centres'));
    expect(value('total')).toBe(value('centres') + value('petals') + value('path'));
    expect(value('centres')).toBe(value('rosettes'));
  });

  test('even rows count as the same garden named by its rows', async () => {
    const wish = await countOf('garden quilt:90x108in rounds:1 path:one size:1in');
    const [rows, perRow] = [numberOf(wish, 'rows'), (valuesOf(wish).perRow as number[])[0]];
    const named = await countOf(`garden rosettes:${rows}x${perRow} rounds:1 path:one size:1in`);
    for (const name of ['rosettes', 'total', 'path', 'seams', 'width', 'height'])
      expect(numberOf(named, name), name).toBeCloseTo(numberOf(wish, name), 9);
  });

  test.each([
    ['rosette quilt:60x72in size:1in', 'Rounds', (R: number) => [(2 * R + 1) * Math.sqrt(3), 3 * R + 2]],
    ['star quilt:60x72in size:1in', 'Side', (n: number) => [3 * n, 2 * Math.sqrt(3) * n]],
    [
      'diamonds from:4 quilt:60x72in size:1in',
      'Rounds',
      (r: number) => [2 + 2 * r, Math.sqrt(3) * (2 + 2 * r)],
    ],
  ] as const)('%s: the least that reaches so far, the largest inside', async (words, called, sizeOf) => {
    const reply = await countOf(words);
    const value = (name: string) => numberOf(reply, name);
    const reaches = (n: number) => sizeOf(n)[0]! >= 60 - 1e-9 && sizeOf(n)[1]! >= 72 - 1e-9;
    const fits = (n: number) => sizeOf(n)[0]! <= 60 + 1e-9 && sizeOf(n)[1]! <= 72 + 1e-9;
    const [reach, inside] = [value(`reach${called}`), value(`inside${called}`)];
    expect([reaches(reach), reaches(reach - 1), fits(inside), fits(inside + 1)]).toEqual([
      true,
      false,
      true,
      false,
    ]);
    expect([value('width'), value('height')]).toEqual(sizeOf(reach).map((side) => expect.closeTo(side, 9)));
    if (called === 'Rounds') expect(value('coverTotal')).toBeGreaterThan(value('total'));
  });

  test('blocks cover as hexagons do', async () => {
    const [blocks, field] = [
      await countOf('blocks quilt:60x72in size:1in'),
      await countOf('field 60x72in size:1in'),
    ];
    for (const [ours, theirs] of [
      ['blocks', 'cover'],
      ['inside', 'inside'],
      ['straightWhole', 'straightWhole'],
      ['straightHalf', 'straightHalf'],
    ] as const)
      expect(numberOf(blocks, ours)).toBe(numberOf(field, theirs));
    expect(numberOf(blocks, 'total')).toBe(3 * 1739);
  });

  test('a bed is a quilt, and a crib keeps its caution', async () => {
    const reply = await countOf('garden quilt:crib rounds:1');
    expect(reply.cautions.join(' ')).toMatch(/crib/);
    expect(reply.notes.join(' ')).toMatch(/crib as 36 x 52 in/);
  });

  test.each([
    ['garden quilt:60x72in rosettes:7', /rosettes, quilt/],
    ['stars quilt:60x72in stars:7', /stars, quilt/],
    ['rosette quilt:60x72in rounds:3', /rounds, quilt/],
    ['diamonds quilt:60x72in rounds:3', /rounds, quilt/],
    ['star quilt:60x72in side:3', /side, quilt/],
    ['blocks quilt:60x72in blocks:3', /blocks, quilt/],
  ])('a number and a wish at once, %s: one of them', async (words, told) => {
    const { error } = await ask(`/count ${words}`);
    expect(error?.code).toBe('one-of-these');
    expect(error?.message).toMatch(told);
  });

  test('seven rows of six are rows, 60 x 72 in is a quilt', async () => {
    expectFigures(await countOf('garden 6x5 rounds:2'), '', { rosettes: 30 });
    expect((await countOf('garden 60x72in rounds:2')).figures.inside).toBeDefined();
  });
});

describe('by cloth', () => {
  test('round and round a rosette: each third round, the centre with the first', async () => {
    const reply = await countOf('rosette rounds:5 colours:red,blue,white size:1in');
    expectFigures(reply, '', {
      colours: [19, 30, 42],
      cloth1: 19,
      cloth2: 30,
      cloth3: 42,
      clothNames: 'red, blue, white',
    });
    expect(reply.table).toEqual({
      columns: ['cloth', 'hexagons', 'rounds'],
      rows: [
        ['red', '19', 'centre, 3'],
        ['blue', '30', '1, 4'],
        ['white', '42', '2, 5'],
      ],
    });
  });

  test('a star, a large diamond, a garden', async () => {
    expectFigures(await countOf('star side:4 colours:red,white'), '', { cloth1: 6 + 30, cloth2: 18 + 42 });
    expectFigures(await countOf('diamonds from:4 rounds:3 colours:red,white'), '', {
      cloth1: 4 + 20,
      cloth2: 12 + 28,
    });
    const garden = await countOf('garden rosettes:7 rounds:2 path:one outer:yes colours:yellow,red,pink');
    expectFigures(garden, '', { cloth1: 7, cloth2: 42, cloth3: 84, path: 84, total: 217 });
    expect(garden.table?.rows.at(-1)).toEqual(['path', '84', '']);
    const diamonds = await countOf('garden rosettes:7 rounds:2 path:diamonds colours:yellow,red');
    expectFigures(diamonds, '', { cloth1: 7 + 84, cloth2: 42, diamonds: 24, triangles: 6 });
  });

  test('several stars: each all of one cloth, in turn; what is between is of none', async () => {
    const seven = await countOf('stars stars:7 set:hexagons colours:yellow,red,blue');
    expectFigures(seven, '', { colours: [18, 12, 12], diamonds: 42, between: 6 });
    expect(seven.table).toEqual({
      columns: ['cloth', 'pieces', 'stars'],
      rows: [
        ['yellow', '18', '3'],
        ['red', '12', '2'],
        ['blue', '12', '2'],
        ['hexagons between', '6', ''],
      ],
    });
    expect(seven.notes).toContain('The stars take the cloths in turn, from the middle outward.');
    const straight = await countOf('stars stars:7 outer:straight colours:yellow,red');
    expect(straight.table?.rows.at(-1)).toEqual(['triangles at the edge', '6', '']);
    const quilt = await countOf('stars quilt:60x72in set:diamonds colours:red,blue');
    const { colours, diamonds } = valuesOf(quilt);
    expect((colours as number[]).reduce((sum, n) => sum + n, 0)).toBe(diamonds);
  });

  test('blocks: three cloths are light, medium and dark, and no other number will do', async () => {
    const hexagon = await countOf('blocks side:5 colours:white,grey,navy');
    expectFigures(hexagon, '', { colours: [25, 25, 25], perShade: 25 });
    expect(hexagon.table?.rows).toEqual([
      ['white', '25', 'light'],
      ['grey', '25', 'medium'],
      ['navy', '25', 'dark'],
    ]);
    expectFigures(await countOf('blocks 100 colours:white,grey,white'), '', { colours: [200, 100] });
    const quilt = await countOf('blocks quilt:60x72in size:2in colours:white,grey,navy');
    expectFigures(quilt, '', { colours: [450, 450, 450] });
    expect((await ask('/count blocks side:5 colours:white,navy')).error?.code).toBe('three-shades');
  });

  test('a garden as large as a quilt: every hexagon but the path is of some cloth', async () => {
    const reply = await countOf('garden quilt:60x72in rounds:2 colours:yellow,red,pink');
    const { colours, petals, centres } = valuesOf(reply);
    expect((colours as number[]).reduce((sum, n) => sum + n, 0)).toBe(
      (petals as number) + (centres as number),
    );
  });

  test('rows of a field, halves at straight sides by themselves', async () => {
    const cover = await countOf('field 60x72in colours:red,white,blue');
    const { colours, cover: all } = valuesOf(cover);
    // 49 rows of 35 and 36 by turns: red has 17 of them, 9 of the first kind.
    expect(colours).toEqual([9 * 35 + 8 * 36, 8 * 35 + 8 * 36, 8 * 35 + 8 * 36]);
    expect((colours as number[]).reduce((sum, n) => sum + n, 0)).toBe(all);
    const straight = await countOf('field 60x72in colours:red,white,blue sides:straight');
    const value = (name: string) => numberOf(straight, name);
    expect(value('cloth1') + value('cloth2') + value('cloth3')).toBe(1691);
    expect(value('cloth1Halves') + value('cloth2Halves') + value('cloth3Halves')).toBe(48);
  });

  test.each([
    'rosette rounds:5 colors:red, blue, white',
    'rosette colours:red/blue/white rounds:5',
    'rosette cloths:red, blue and white rounds:5',
    'rosette 5 rounds colours: Red,Blue,White',
    'rosette colours:red,blue,white 5 rounds',
  ])('%s is the same ask', async (words) => {
    const reply = await countOf(words);
    expectFigures(reply, '', { colours: [19, 30, 42], clothNames: 'red, blue, white' });
  });

  test('a cloth of two words, and one that comes twice', async () => {
    const reply = await countOf('rosette rounds:3 colours:dark blue,red,dark blue');
    expectFigures(reply, '', { clothNames: 'dark blue, red', colours: [1 + 12 + 18, 6] });
  });

  test('too many cloths are told', async () => {
    const reply = await ask(`/count rosette rounds:3 colours:${new Array(25).fill('red').join(',')}`);
    expect(reply.error?.code).toBe('too-large');
    expect(wordsOf(reply)).toMatch(/25 cloths.*24/);
  });

  test('help says how the figures are named', async () => {
    expect(wordsOf(await answered(ask, '/help count rosette'))).toMatch(/cloth1, cloth2/);
  });
});

describe('bought and sewn by layout', () => {
  test.each([
    ['garden:7 of 2 rounds', 'garden rosettes:7 rounds:2 path:one', '1in'],
    ['garden:6x5 of 1 round, own path', 'garden rosettes:6x5 rounds:1 path:own', '1in'],
    ['garden:7 of 1 round, no path', 'garden rosettes:7 rounds:1 path:none', '1in'],
    ['stars:7', 'stars stars:7 set:diamonds', '2in'],
    ['diamonds:8', 'diamonds from:4 rounds:3', '2in'],
    ['diamonds:7', 'diamonds from:1 rounds:3', '2in'],
  ])('%s is as many patches and seams as /count %s', async (of, same, size) => {
    const counted = await countOf(`${same} size:${size}`);
    expectFigures(await answered(ask, `/yardage ${of} size:${size}`), '', {
      pieces: numberOf(counted, 'total'),
    });
    const sewn = await answered(ask, `/time ${of} size:${size}`);
    expectFigures(sewn, '', { seams: numberOf(counted, 'seams') });
    expectFigures(sewn, 'in', { seamLength: numberOf(counted, 'seamLength') });
  });

  test('stars and large diamonds are of diamonds, with no word of hexagons', async () => {
    const { title, notes } = await answered(ask, '/yardage stars:7 size:2in');
    expect(title).toMatch(/60° diamonds/);
    expect(notes.join(' ')).not.toMatch(/hexagons/);
  });

  test('300 diamonds are 300 patches, not a large diamond', async () => {
    for (const words of [
      '/yardage 300 diamonds 2in',
      '/yardage 300 diamonds 2 in',
      'how much fabric for 300 2 inch diamonds',
    ])
      expectFigures(await answered(ask, words), '', { pieces: 300 });
    expect((await ask('/time 8 diamonds')).error?.message).toMatch(/diamonds:/);
  });
});
