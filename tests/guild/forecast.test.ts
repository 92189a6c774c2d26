import cdf from '@stdlib/stats-base-dists-negative-binomial-cdf';
import quantile from '@stdlib/stats-base-dists-negative-binomial-quantile';
import { describe, expect, test } from 'vitest';
import { forecast, lumpinessOf, type Progress } from '../../src/guild/forecast.ts';

/*
 * The first cases are worked examples of the gamma–Poisson forecast that were checked elsewhere against
 * 40,000 simulations; the last test simulates anew, by another road: rates and waiting times drawn, no
 * incomplete beta in sight.
 */

const after8: Progress = { done: 12, weeks: 8, toGo: 30, weeksLeft: null };
const after6: Progress = { done: 57, weeks: 6, toGo: 143, weeksLeft: 15 };

describe('the forecast of a challenge', () => {
  test('12 in 8 weeks, 30 to go: 19.5 weeks, four times in five between 12.8 and 30.6', async () => {
    const told = await forecast(after8);
    expect(told.medianWeeks).toBeCloseTo(19.5, 1);
    expect(told.weeksLow).toBeCloseTo(12.8, 1);
    expect(told.weeksHigh).toBeCloseTo(30.6, 1);
    expect(told.perWeek).toBe(1.5);
    expect(told.chance).toBeNull();
  });

  test('57 in 6 weeks, 143 to go, 15 weeks left: an even chance, four in five by 17.1 weeks', async () => {
    const told = await forecast(after6);
    expect(told.chance).toBeCloseTo(0.5, 2);
    expect(told.weeksSure).toBeCloseTo(17.1, 1);
  });

  test('a careless prior is not harmless: with one piece in one week the same case gives 0.18', async () => {
    const told = await forecast({ ...after6, prior: { pieces: 1, weeks: 1 } });
    expect(told.chance).toBeCloseTo(0.18, 2);
  });

  test('lumps widen the range about the same rate', async () => {
    const [even, lumpy] = await Promise.all([forecast(after6), forecast({ ...after6, lumpiness: 6 })]);
    expect(lumpy.weeksLow).toBeLessThan(even.weeksLow);
    expect(lumpy.weeksHigh).toBeGreaterThan(even.weeksHigh);
    expect(Math.abs(lumpy.medianWeeks - even.medianWeeks)).toBeLessThan(0.6);
    expect(lumpy.perWeek).toBe(even.perWeek);
  });

  // The library's own negative binomial: so many failures before the a-th success of chance b / (b + x).
  test.each([
    ['57 in 6 weeks, 15 left', after6],
    ['12 in 8 weeks, 20 left', { ...after8, weeksLeft: 20 }],
    ['3 in 1 week, 4 left', { done: 3, weeks: 1, toGo: 20, weeksLeft: 4 }],
    ['4,000 in 30 weeks, 10 left', { done: 4000, weeks: 30, toGo: 1500, weeksLeft: 10 }],
  ])('how many there will be, and the chance: %s', async (_, progress: Progress) => {
    const { done, weeks, toGo, weeksLeft } = progress;
    const success = weeks / (weeks + (weeksLeft ?? 0));
    const told = await forecast(progress);
    expect(told.chance).toBeCloseTo(1 - cdf(toGo - 1, done + 0.5, success), 8);
    expect(told.byLast?.low).toBe(done + quantile(0.1, done + 0.5, success));
    expect(told.byLast?.high).toBe(done + quantile(0.9, done + 0.5, success));
  });

  test('how many in lumps: a wider range about the same', async () => {
    const [even, lumpy] = await Promise.all([forecast(after6), forecast({ ...after6, lumpiness: 6 })]);
    expect(lumpy.byLast!.low).toBeLessThan(even.byLast!.low);
    expect(lumpy.byLast!.high).toBeGreaterThan(even.byLast!.high);
  });

  test('a goal reached is certain and takes no more time', async () => {
    expect(await forecast({ done: 200, weeks: 6, toGo: 0, weeksLeft: 2 })).toMatchObject({
      chance: 1,
      medianWeeks: 0,
      weeksHigh: 0,
    });
  });

  test('past the last day there is no chance left, the weeks are still told', async () => {
    const told = await forecast({ ...after6, weeksLeft: 0 });
    expect(told.chance).toBe(0);
    expect(told.medianWeeks).toBeGreaterThan(10);
  });

  test('nothing logged yet still gives finite weeks, in order', async () => {
    const told = await forecast({ done: 0, weeks: 2, toGo: 10, weeksLeft: 4 });
    expect(told.weeksLow).toBeLessThan(told.medianWeeks);
    expect(told.medianWeeks).toBeLessThan(told.weeksSure);
    expect(told.weeksSure).toBeLessThan(told.weeksHigh);
    expect(Number.isFinite(told.weeksHigh)).toBe(true);
    expect(told.chance).toBeLessThan(0.15);
  });

  test.each([
    ['few pieces', { done: 12, weeks: 8, toGo: 30, weeksLeft: 20 }],
    ['many pieces', { done: 57, weeks: 6, toGo: 143, weeksLeft: 15 }],
    ['lumps of four', { done: 80, weeks: 10, toGo: 60, weeksLeft: 8, lumpiness: 4 }],
  ])('agrees with 40,000 simulated ends: %s', async (_, progress: Progress) => {
    const told = await forecast(progress);
    const ends = simulatedEnds(progress, 40_000);
    const at = (share: number) => ends[Math.floor(share * ends.length)]!;
    const within = ends.filter((end) => end <= progress.weeksLeft!).length / ends.length;
    expect(Math.abs(within - told.chance!)).toBeLessThan(0.012);
    for (const [share, weeks] of [
      [0.1, told.weeksLow],
      [0.5, told.medianWeeks],
      [0.8, told.weeksSure],
      [0.9, told.weeksHigh],
    ] as const)
      expect(Math.abs(at(share) / weeks - 1)).toBeLessThan(0.02);
  });
});

describe('lumpiness', () => {
  test('is variance over mean', () => expect(lumpinessOf([0, 20, 0, 20])).toBeCloseTo(400 / 3 / 10, 10));
  test('is 1 where weeks are more alike than chance has them', () =>
    expect(lumpinessOf([9, 10, 9, 10])).toBe(1));
  test('is not told from two weeks, nor from none logged', () => {
    expect(lumpinessOf([40, 0])).toBe(1);
    expect(lumpinessOf([0, 0, 0, 0])).toBe(1);
  });
});

/** When the rest is done, in order: a rate drawn for each trial, then the wait for so many lumps. */
function simulatedEnds({ done, weeks, toGo, lumpiness = 1 }: Progress, trials: number): number[] {
  const random = seeded(20261201);
  const ends = Array.from({ length: trials }, () => {
    const rate = gamma(done / lumpiness + 0.5, random) / weeks;
    return gamma(toGo / lumpiness, random) / rate;
  });
  return ends.sort((a, b) => a - b);
}

/** A gamma variable of so large a shape, by squeezing a normal one (a textbook method, from memory). */
function gamma(shape: number, random: () => number): number {
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const normal = Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const v = (1 + c * normal) ** 3;
    if (v > 0 && Math.log(1 - random()) < normal ** 2 / 2 + d - d * v + d * Math.log(v)) return d * v;
  }
}

/** The same numbers in each run (mulberry32). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}
