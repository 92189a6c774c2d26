import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readGoods } from '../../../commands/swap-goods.ts';
import {
  type Good,
  goodArea,
  goodKey,
  goodOf,
  goodWords,
  makes,
  SWAP_SHAPES,
} from '../../../src/guild/swap-goods.ts';
import { tidy } from '../../../src/measure/tidy.ts';

const read = (text: string) => {
  const lines = readGoods(tidy(text), 'in');
  return lines.ok
    ? lines.value.map(({ count, good, words }) => [count, goodKey(good), words.join(' ')])
    : lines.problem.code;
};

describe('what is swapped, as members write it', () => {
  test.each([
    ['6 fat quarters florals', [6, 'cloth 18 21', 'floral']],
    ['6 floral fat quarters', [6, 'cloth 18 21', 'floral']],
    ['60 1in hexagons blue', [60, 'patch hexagon 1', 'blue']],
    ['60 blue hexagons 1in', [60, 'patch hexagon 1', 'blue']],
    ['60 ½in hexagons', [60, 'patch hexagon 0.5', '']],
    ['2½in strips x 20', [20, 'strip 2.5', '']],
    ['20 × 2½″ strips', [20, 'strip 2.5', '']],
    ['a 2 1/2in strip', [1, 'strip 2.5', '']],
    ['ten fat quarters', [10, 'cloth 18 21', '']],
    ['two dozen blue 5in squares', [24, 'cloth 5 5', 'blue']],
    ['half a dozen half yards', [6, 'yardage 18', '']],
    ['a hundred 1in hexagons', [100, 'patch hexagon 1', '']],
    ['strips 2in x 5', [5, 'strip 2', '']],
    ['1,000 charm squares', [1000, 'cloth 5 5', '']],
    ['12 6 inch squares', [12, 'cloth 6 6', '']],
    ['a fat quarter of blue', [1, 'cloth 18 21', 'blue']],
    ['10 21x18in pieces', [10, 'cloth 18 21', '']],
    ['18 x 21in x 4', [4, 'cloth 18 21', '']],
    ['3 yards of green', [3, 'yardage 36', 'green']],
    ['1 1/2 yd white', [1, 'yardage 54', 'white']],
    ['2 half yards red', [2, 'yardage 18', 'red']],
    ['60 hexies 25.4mm', [60, 'patch hexagon 1', '']],
    ['80 1in half hexagons', [80, 'patch half-hexagon 1', '']],
    ['40 2in diamonds, the dark ones', [40, 'patch diamond 2', 'dark']],
  ])('%s', (text, line) => {
    expect(read(text)).toEqual([line]);
  });

  test('several lines at once, a comma, a semicolon or a number after "and" between', () => {
    expect(read('6 fat quarters florals, 20 5in squares blue; 3 yards of green and 2 fqs')).toEqual([
      [6, 'cloth 18 21', 'floral'],
      [20, 'cloth 5 5', 'blue'],
      [3, 'yardage 36', 'green'],
      [2, 'cloth 18 21', ''],
    ]);
    expect(read('6 fat quarters blue and green')).toEqual([[6, 'cloth 18 21', 'blue green']]);
  });

  test.each([
    ['60 hexagons', 'goods-size'],
    ['6 fat quaters', 'goods-unread'],
    ['florals', 'goods-unread'],
    ['0 fat quarters', 'goods-count'],
    ['10,001 charms', 'goods-count'],
    ['2 1/2in strips', 'goods-how-many'],
    ['blue fat quarters', 'goods-how-many'],
    ['strips 2in', 'goods-how-many'],
    ['100 1/16in hexagons', 'too-small'],
    ['5 900in squares', 'too-large'],
    [`6 fat quarters ${'x'.repeat(120)}`, 'text-too-long'],
    [Array.from({ length: 21 }, () => '2 charms').join(', '), 'goods-many'],
  ])('%s is %s', (text, code) => {
    expect(read(text)).toBe(code);
  });

  test.each([
    ['6 ½in hexagons blue', [6, 'patch hexagon 0.5'], [1, 'patch hexagon 6.5']],
    ['6 1/2 yd cuts', [6, 'yardage 18'], [1, 'yardage 234']],
  ])('%s is one of two, each then read as it is', (text, ...both) => {
    const lines = readGoods(tidy(text), 'in');
    const [line] = lines.ok ? lines.value : [];
    expect(line?.or).toBeDefined();
    for (const [i, reading] of [line!, line!.or!].entries()) {
      expect([reading.count, goodKey(reading.good)]).toEqual(both[i]);
      const again = readGoods(reading.typed, 'in');
      const { or: _, ...one } = reading;
      expect(again.ok && again.value).toEqual([one]);
    }
  });

  test('any text is read or refused, with a count that can be', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 60 }), (text) => {
        const lines = readGoods(tidy(text), 'in');
        if (!lines.ok) return;
        for (const { count, good } of lines.value) {
          expect(count).toBeGreaterThan(0);
          expect(goodArea(good)).toBeGreaterThan(0);
        }
      }),
    );
  });
});

describe('areas that fairness goes by', () => {
  // 18 × 21, 9 × 21, 10 × 10, 5 × 5, 2½ × 42, 36 × 42; a 1 in hexagon cut with ¼ in: (3√3/2)(1 + ½/√3)².
  test.each<[Good, number]>([
    [{ is: 'cloth', width: 18, length: 21 }, 378],
    [{ is: 'cloth', width: 9, length: 21 }, 189],
    [{ is: 'cloth', width: 10, length: 10 }, 100],
    [{ is: 'cloth', width: 5, length: 5 }, 25],
    [{ is: 'strip', width: 2.5 }, 105],
    [{ is: 'yardage', length: 36 }, 1512],
    [{ is: 'patch', shape: 'hexagon', edge: 1 }, ((3 * Math.sqrt(3)) / 2) * (1 + 0.5 / Math.sqrt(3)) ** 2],
    [{ is: 'patch', shape: 'diamond', edge: 1 }, (Math.sqrt(3) / 2) * (1 + 1 / Math.sqrt(3)) ** 2],
  ])('%j is %d', (good, area) => {
    expect(goodArea(good)).toBeCloseTo(area, 9);
  });

  test('a key names its good again, turned or not', () => {
    const size = fc.integer({ min: 2, max: 800 }).map((eighths) => eighths / 8);
    const anyGood: fc.Arbitrary<Good> = fc.oneof(
      fc.record({ is: fc.constant('cloth' as const), width: size, length: size }),
      fc.record({ is: fc.constant('strip' as const), width: size }),
      fc.record({ is: fc.constant('yardage' as const), length: size }),
      fc.record({ is: fc.constant('patch' as const), shape: fc.constantFrom(...SWAP_SHAPES), edge: size }),
    );
    fc.assert(
      fc.property(anyGood, (good) => {
        const again = goodOf(goodKey(good));
        expect(goodKey(again)).toBe(goodKey(good));
        expect(goodArea(again)).toBeCloseTo(goodArea(good), 6);
        expect(goodWords(again, 2)).toBe(goodWords(good, 2));
        expect(goodWords(good, 2)).not.toMatch(/NaN|undefined/);
        if (good.is === 'cloth')
          expect(goodKey({ ...good, width: good.length, length: good.width })).toBe(goodKey(good));
      }),
    );
  });

  // The table of the trade's yields: 75 nested from a quarter, 4 turned from a 5-inch square, 18 from a strip.
  test('how many patches a piece makes', () => {
    expect(makes({ is: 'cloth', width: 18, length: 21 }, 'hexagon', 1)).toBe(75);
    expect(makes({ is: 'cloth', width: 5, length: 5 }, 'hexagon', 1)).toBe(4);
    expect(makes({ is: 'strip', width: 2.5 }, 'hexagon', 1)).toBe(18);
    expect(makes({ is: 'patch', shape: 'hexagon', edge: 1 }, 'hexagon', 1)).toBe(1);
    expect(makes({ is: 'patch', shape: 'hexagon', edge: 1 }, 'hexagon', 0.5)).toBe(0);
  });
});
