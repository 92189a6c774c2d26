import { describe, expect, it } from 'vitest';
import { readClothList, readRoleCounts } from '../../src/measure/cloth-list.ts';
import { takeClothList } from '../../src/measure/cloth-said.ts';

const read = (text: string) => {
  const list = readClothList(text, 'in');
  if (!list.ok) return list.problem;
  return list.value.map(({ count, cloth: { width, length }, role }) => [count, width, length, role]);
};

const QUARTER = [18, 21];

describe('a list of cloth', () => {
  it.each([
    ['3 fat quarters', [[3, ...QUARTER, '']]],
    ['fat quarter', [[1, ...QUARTER, '']]],
    [
      'a fat quarter and two fat eighths',
      [
        [1, ...QUARTER, ''],
        [2, 9, 21, ''],
      ],
    ],
    ['12 5in squares', [[12, 5, 5, '']]],
    [
      '12 5" squares, 3 10″ squares',
      [
        [12, 5, 5, ''],
        [3, 10, 10, ''],
      ],
    ],
    [
      '20 charms + 4 strips',
      [
        [20, 5, 5, ''],
        [4, null, 2.5, ''],
      ],
    ],
    ['1 1/2yd', [[1, null, 54, '']]],
    ['1½ yd', [[1, null, 54, '']]],
    ['2 x 1/2 yd', [[2, null, 18, '']]],
    ['2 pieces of 1/2yd', [[2, null, 18, '']]],
    ['18 x 21 in', [[1, ...QUARTER, '']]],
    ['2 18x21in', [[2, ...QUARTER, '']]],
    ['60 x 72 mm', [[1, 60 / 25.4, 72 / 25.4, '']]],
    [
      'half a yard; a yard',
      [
        [1, null, 18, ''],
        [1, null, 36, ''],
      ],
    ],
    [
      '“3 fat quarters, 12 5in-squares, 1 1/2yd”',
      [
        [3, ...QUARTER, ''],
        [12, 5, 5, ''],
        [1, null, 54, ''],
      ],
    ],
    ['1,200 charms', [[1200, 5, 5, '']]],
    [
      '3 blue fat quarters, a pale yellow charm',
      [
        [3, ...QUARTER, ''],
        [1, 5, 5, ''],
      ],
    ],
  ] as const)('%s', (text, piles) => {
    expect(read(text)).toEqual(piles);
  });

  it.each([
    ['1 1/2 yards of cream for the path', 'path'],
    ['3 fat quarters blue for petals', 'petals'],
    ['3 fat quarters: petals', 'petals'],
    ['3 fat quarters of blue florals', ''],
  ])('says what it is for: %s', (text, role) => {
    const list = readClothList(text, 'in');
    expect(list.ok && list.value[0]!.role).toBe(role);
  });

  it.each(['3 fish', '5', '0 fat quarters', '1.5 fat quarters', '12 5in-squares 3', 'three'])(
    'does not make cloth of: %s',
    (text) => {
      expect(read(text)).toEqual({ code: 'cloth-unread', got: text });
    },
  );

  it('names the one piece that it cannot read', () => {
    expect(read('3 fat quarters, 2 fish, 1yd')).toEqual({ code: 'cloth-unread', got: '2 fish' });
    expect(read('" "')).toEqual({ code: 'cloth-list-empty' });
  });

  it('takes a bare length in the member’s own unit', () => {
    const list = readClothList('2 30x40', 'cm');
    expect(list.ok && list.value[0]!.cloth.width).toBeCloseTo(30 / 2.54, 9);
  });
});

describe('what a layout needs by role', () => {
  it.each([
    [
      '7 centres, 42 petals, 24 path',
      [
        [7, 'centres'],
        [42, 'petals'],
        [24, 'path'],
      ],
    ],
    [
      'path: 24, petals 42',
      [
        [24, 'path'],
        [42, 'petals'],
      ],
    ],
    [
      '7 for the centres and 1,024 petals',
      [
        [7, 'centres'],
        [1024, 'petals'],
      ],
    ],
    ['"seven round 1"', [[7, 'round 1']]],
    [
      'centre 19, 6 round 1, round 2: 12',
      [
        [19, 'centre'],
        [6, 'round 1'],
        [12, 'round 2'],
      ],
    ],
  ] as const)('%s', (text, needs) => {
    const list = readRoleCounts(text);
    expect(list.ok && list.value.map(({ count, role }) => [count, role])).toEqual(needs);
  });

  it.each([
    ['centre 19 yellow', 19, 'centre', 'yellow'],
    ['round 1 6 sky blue', 6, 'round 1', 'sky blue'],
    ['path: 84 of white', 84, 'path', 'white'],
  ])('with the cloth it is to be of: %s', (text, count, role, cloth) => {
    expect(readRoleCounts(text)).toEqual({ ok: true, value: [{ count, role, cloth }] });
  });

  it.each(['some petals', '7', '0 petals', '1.5 petals', '2000000 petals'])('not %s', (text) => {
    expect(readRoleCounts(text)).toEqual({ ok: false, problem: { code: 'role-unread', got: text } });
  });

  it('nothing is no list', () => {
    expect(readRoleCounts(' ,')).toEqual({ ok: false, problem: { code: 'role-list-empty' } });
  });
});

describe('cloth that a sentence begins with', () => {
  it.each([
    ['3 fat quarters and 12 5 inch squares, what can I cut', '3 fat quarters, 12 5 inch squares', 15],
    [
      'half a metre of blue and 2 fat quarters of red, how many 25mm',
      'half a metre of blue, 2 fat quarters of red',
      3,
    ],
    ["2 fqs and I've got 3 blue charms.", '2 fqs, 3 blue charms', 5],
    ['1-1/2 yards, 1in hexies', '1-1/2 yards', 1],
    ['18 x 21 inches, 1.5in hexies', '18 x 21 inches', 1],
    ['2 x 1/2 yd, is that enough', '2 x 1/2 yd', 2],
    ['3 fat quarters is it enough', '3 fat quarters', 3],
    ['2 fat quarters with 1in hexies', '2 fat quarters', 2],
  ])('%s', (text, words, pieces) => {
    const taken = takeClothList(text, 'in');
    expect(taken).toMatchObject({ words, pieces });
    expect(readClothList(words, 'in').ok).toBe(true);
  });

  it.each(['1in hexies', '3 fish', '27 in long', 'a letter sheet', 'lots of time'])('none in: %s', (text) => {
    expect(takeClothList(text, 'in')).toBeNull();
  });
});
