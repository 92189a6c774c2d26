import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stitchesPerInch, usualStitches } from '../../../src/calculator/stitching/method.ts';
import {
  minutesPerSeam,
  pureStitchingMinutes,
  taskMinutes,
  usualMinutes,
} from '../../../src/calculator/stitching/rates.ts';
import { restForHands } from '../../../src/calculator/stitching/rest.ts';
import { type Stitching, stitchingTime } from '../../../src/calculator/stitching/time.ts';

const rosetteOfTwoRounds: Stitching = {
  seams: 42,
  seamLengthInches: 1,
  method: 'whip',
  stitchesPerInch: 14,
  hoursPerWeek: 5,
};

describe('stitching time', () => {
  it('a 19-patch rosette of 1-inch hexagons, whipped', () => {
    expect(stitchingTime(rosetteOfTwoRounds)).toMatchObject({
      seams: 42,
      seamLength: 42,
      stitches: 588,
      threadLengths: 7,
      minutesLow: 63,
      minutes: 94.5,
      minutesHigh: 126,
      rateSource: 'practice',
    });
  });

  it.each([
    [1, 12],
    [2, 42],
    [3, 90],
  ])('seams of %i rounds at 1 in: %i in', (_rounds, seams) => {
    expect(stitchingTime({ ...rosetteOfTwoRounds, seams }).seamLength).toBe(seams);
  });

  it('weeks are minutes over the hours a week', () => {
    const time = stitchingTime({ ...rosetteOfTwoRounds, hoursPerWeek: 0.5 });
    expect([time.weeksLow, time.weeks, time.weeksHigh]).toEqual([2.1, 3.15, 4.2]);
  });

  it('running stitch takes from the least thread to the most; whip has one figure', () => {
    const running = stitchingTime({ ...rosetteOfTwoRounds, method: 'running', stitchesPerInch: 9 });
    expect(running.threadLengthLow / 42).toBeCloseTo(1.05, 2);
    expect(running.threadLength / 42).toBeCloseTo(1.32, 2);
    expect(running.threadLengths).toBe(5);
    const whip = stitchingTime(rosetteOfTwoRounds);
    expect(whip.threadLengthLow).toBe(whip.threadLength);
  });

  it('her own pace replaces the usual range, a fifth either way', () => {
    const own = stitchingTime({ ...rosetteOfTwoRounds, seamLengthInches: 3, minutesPerSeam: 5 });
    expect(own).toMatchObject({ rateSource: 'own', minutes: 210 });
    expect(own.minutesLow).toBeCloseTo(168, 9);
    expect(own.minutesHigh).toBeCloseTo(252, 9);
  });

  it('no seams take no time', () => {
    expect(stitchingTime({ ...rosetteOfTwoRounds, seams: 0 })).toMatchObject({
      minutesHigh: 0,
      threadLengths: 0,
    });
  });

  it('the usual rate is exact at one inch; each inch more adds a third of it', () => {
    expect(usualMinutes(1, 1, 'running')).toEqual({ low: 1, middle: 1.75, high: 2.5 });
    expect(usualMinutes(1, 4, 'whip').high).toBeCloseTo(6, 9);
    expect(usualMinutes(3, 0.25, 'whip').low).toBeCloseTo(3.375, 9);
  });

  it('low, middle and high keep their order, and twice the seams take twice the time', () => {
    const stitching = fc.record({
      seams: fc.integer({ min: 1, max: 1_000_000 }),
      seamLengthInches: fc.double({ min: 0.125, max: 480, noNaN: true }),
      method: fc.constantFrom('running' as const, 'whip' as const),
      stitchesPerInch: fc.double({ min: 1, max: 40, noNaN: true }),
      hoursPerWeek: fc.double({ min: 0.1, max: 168, noNaN: true }),
    });
    fc.assert(
      fc.property(stitching, (each) => {
        const time = stitchingTime(each);
        expect(time.minutesLow).toBeLessThan(time.minutes);
        expect(time.minutes).toBeLessThan(time.minutesHigh);
        expect(time.threadLengthLow).toBeLessThanOrEqual(time.threadLength);
        const twice = stitchingTime({ ...each, seams: each.seams * 2 });
        expect(twice.minutes / time.minutes).toBeCloseTo(2, 9);
        expect(twice.weeksHigh / time.weeksHigh).toBeCloseTo(2, 9);
      }),
    );
  });
});

describe('the usual figures of the trade (common practice, no source)', () => {
  it('stitches an inch lie within what piecers usually sew', () => {
    for (const method of ['running', 'whip'] as const) {
      const [fewest, most] = usualStitches[method];
      expect(stitchesPerInch[method]).toBeGreaterThanOrEqual(fewest);
      expect(stitchesPerInch[method]).toBeLessThanOrEqual(most);
    }
    expect(usualStitches).toEqual({ running: [7, 12], whip: [10, 20] });
    expect(stitchesPerInch).toEqual({ running: 9, whip: 14 });
  });

  it('minutes for a seam and for the other work', () => {
    expect(minutesPerSeam).toEqual({ running: { low: 1, high: 2.5 }, whip: { low: 1.5, high: 3 } });
    expect(taskMinutes).toEqual({
      traceAndCut: [0.5, 1.5],
      stackCut: [0.1, 0.3],
      baste: [2, 4],
      glueBaste: [0.5, 1.5],
    });
  });

  it.each([
    ['a 7-piece flower', 12, 20, 40],
    ['a 19-piece rosette', 42, 60, 130],
  ])('%s: seam by seam agrees with the usual minutes for the whole, to 15 %%', (_name, seams, low, high) => {
    const minutes = usualMinutes(seams, 1, 'whip');
    expect(Math.abs(minutes.low / low - 1)).toBeLessThan(0.15);
    expect(Math.abs(minutes.high / high - 1)).toBeLessThan(0.15);
  });

  it('handling doubles or triples pure stitching, so the usual range of a rosette starts no lower', () => {
    const pure = pureStitchingMinutes(588);
    const usual = usualMinutes(42, 1, 'whip');
    expect(usual.low).toBeGreaterThan(2 * pure.high);
    expect(usual.low / pure.low).toBeLessThan(3.5);
  });

  it('the hands rest five minutes in each hour', () => {
    expect(restForHands).toMatchObject({ breakMinutes: 5, everyMinutes: 60 });
    expect(restForHands.source).toContain('NIOSH');
  });
});
