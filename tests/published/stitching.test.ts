import { describe, expect, it } from 'vitest';
import { learningExponent, unitMinutes } from '../../src/calculator/stitching/learning.ts';
import { LENGTH_LOST, WORKING_LENGTH } from '../../src/calculator/stitching/needlefuls.ts';
import { pureStitchingMinutes, stitchesPerMinute } from '../../src/calculator/stitching/rates.ts';
import { runningThreadMost } from '../../src/calculator/stitching/thread.ts';

describe('hand sewing timed in 1861 (time study reprinted in a US National Museum bulletin)', () => {
  it('23 stitches a minute in fine linen, 30 in fine silk', () => {
    expect(stitchesPerMinute).toEqual([23, 30]);
  });

  it('588 stitches are 20 to 26 minutes of stitching alone', () => {
    const { low, high } = pureStitchingMinutes(588);
    expect([Math.round(low), Math.round(high)]).toEqual([20, 26]);
  });
});

describe('the learning curve (open encyclopaedia, learning-curve article: T₁·n^log₂L)', () => {
  it.each([
    [0.95, -0.074],
    [0.9, -0.152],
    [0.85, -0.234],
    [0.8, -0.322],
  ])('rate %f has exponent %f', (rate, exponent) => {
    expect(learningExponent(rate)).toBeCloseTo(exponent, 3);
  });

  it('each doubling costs the rate times as much: 100, 80, 64, 51.2', () => {
    expect([1, 2, 4, 8].map((n) => Number(unitMinutes(100, n, 0.8).toFixed(9)))).toEqual([100, 80, 64, 51.2]);
  });

  it.each([
    [0.8, 49],
    [0.9, 69],
    [0.95, 81],
  ])('a first flower of 95 minutes; at %f the eighth takes %i', (rate, minutes) => {
    expect(Math.round(unitMinutes(95, 8, rate))).toBe(minutes);
  });
});

describe('thread', () => {
  it('running stitch has the shape of half the lockstitch formula, 2 + 2TS (open textile-calculation pages)', () => {
    const plies = 0.02;
    const halfLockstitch = (stitches: number) => (2 + 2 * plies * stitches) / 2;
    for (const stitches of [4, 9, 12]) {
      const ratio = (runningThreadMost(stitches, plies) - 1) / (halfLockstitch(stitches) - 1);
      expect(ratio).toBeCloseTo(2, 9);
    }
  });

  it('a length is no longer than 18 to 24 in (extension leaflet on hand stitches)', () => {
    expect(WORKING_LENGTH).toBeGreaterThanOrEqual(18);
    expect(WORKING_LENGTH).toBeLessThanOrEqual(24);
    expect(WORKING_LENGTH - LENGTH_LOST).toBe(13);
  });
});
