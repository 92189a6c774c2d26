import { describe, expect, test } from 'vitest';
import { answered, expectFigures, numberOf, openAsking } from './asking.ts';

const ask = openAsking();

describe('/ruler', () => {
  /* Exact by the National Bureau of Standards' notice of 1 July 1959: a yard is 0.9144 m, an inch 25.4 mm. */
  test.each([
    ['1in', 1, 25.4],
    ['1yd', 36, 914.4],
    ['1ft', 12, 304.8],
    ['1m', 1000 / 25.4, 1000],
    ['2.3cm', 23 / 25.4, 23],
    ['3/8in', 0.375, 9.525],
    ['6.35mm', 0.25, 6.35],
    ['1/64in', 1 / 64, 0.396875],
  ])('%s', async (typed, inches, millimetres) => {
    const reply = await answered(ask, `/ruler ${typed}`);
    expectFigures(reply, 'in', { length: inches });
    expectFigures(reply, 'mm', { millimetres });
    expectFigures(reply, 'yd', { yards: inches / 36 });
    expectFigures(reply, 'm', { metres: millimetres / 1000 });
  });

  test('the mark is one of the sixteenths, the nearest', async () => {
    for (const typed of ['2.3cm', '1cm', '17mm', '0.3in', '1m']) {
      const reply = await answered(ask, `/ruler ${typed}`);
      const mark = numberOf(reply, 'mark');
      expect(Number.isInteger(mark * 16)).toBe(true);
      expect(Math.abs(mark - numberOf(reply, 'length'))).toBeLessThanOrEqual(1 / 32 + 1e-9);
    }
  });

  test('the other unit comes first, and how far the mark is off is said', async () => {
    const metric = await answered(ask, '/ruler 2.3cm');
    expect(metric.title).toBe('2.3 cm (23 mm)');
    expect(metric.lines).toEqual([
      '7/8 in (0.906) on an inch ruler.',
      'That mark is 0.031 in too short.',
      '2.3 cm (23 mm) on a metric ruler.',
    ]);
    const inch = await answered(ask, '/ruler 3/8in');
    expect(inch.lines).toEqual(['9.525 mm on a metric ruler.', '3/8 in on an inch ruler.']);
  });

  test('a length of cloth is said as cloth, and as it is sold', async () => {
    const { lines } = await answered(ask, '/ruler 3yd');
    expect(lines.slice(0, 2)).toEqual(['3 yd, 2.74 m.', 'To buy as much: 3 yd or 2.8 m.']);
    expect((await answered(ask, '/ruler 10in')).lines.slice(-2)).toEqual([
      '0.28 yd, 0.25 m.',
      'To buy as much: 3/8 yd or 0.3 m.',
    ]);
    expect((await answered(ask, '/ruler 4in')).lines).toHaveLength(2);
  });

  test('too short, too long, no length', async () => {
    expect((await ask('/ruler 0.01in')).error?.code).toBe('too-small');
    expect((await ask('/ruler 101yd')).error?.code).toBe('too-large');
    expect((await ask('/ruler')).error?.code).toBe('option-missing');
    expect((await ask('/ruler fat quarter')).error).not.toBeNull();
  });
});
