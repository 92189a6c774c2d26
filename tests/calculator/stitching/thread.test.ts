import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { needlefuls } from '../../../src/calculator/stitching/needlefuls.ts';
import {
  backstitchLockThread,
  backstitchThread,
  bastingThread,
  runningThreadLeast,
  runningThreadMost,
  TWO_PLIES,
  WHIP_BITE,
  whipThread,
} from '../../../src/calculator/stitching/thread.ts';

/** The length of a thread followed point by point: another way to the same figure. */
function followed(points: readonly (readonly [number, number])[]): number {
  return points
    .slice(1)
    .reduce((sum, [x, y], i) => sum + Math.hypot(x - points[i]![0], y - points[i]![1]), 0);
}

/** A zigzag one inch long: two passes a stitch, each going half a pitch along and `across` over. */
const zigzag = (stitches: number, across: number) =>
  Array.from({ length: 2 * stitches + 1 }, (_, i) => [i / (2 * stitches), i % 2 ? across : 0] as const);

const wholeStitches = fc.integer({ min: 1, max: 40 });

describe('thread in an inch of seam', () => {
  it.each([
    ['running, sloping', runningThreadLeast(9), 1.05],
    ['running, square', runningThreadMost(9), 1.32],
    ['backstitch', backstitchThread(9), 3.32],
    ['whip at 10', whipThread(10), 1.66],
    ['whip at 14', whipThread(14), 2.1],
    ['whip at 18', whipThread(18), 2.58],
  ])('%s, the worked example', (_name, thread, expected) => {
    expect(thread).toBeCloseTo(expected, 2);
  });

  it('a backstitch every four running stitches adds a quarter to a half', () => {
    expect(backstitchLockThread(4)).toEqual({ least: 0.25, most: 0.5 });
  });

  it('is the thread followed along a zigzag', () => {
    fc.assert(
      fc.property(wholeStitches, (n) => {
        expect(runningThreadLeast(n)).toBeCloseTo(followed(zigzag(n, TWO_PLIES)), 9);
        expect(whipThread(n)).toBeCloseTo(followed(zigzag(n, WHIP_BITE + 2 * TWO_PLIES)), 9);
      }),
    );
  });

  it('sloping thread is never longer than square thread, and both are longer than the seam', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 60, noNaN: true }), (n) => {
        expect(runningThreadLeast(n)).toBeLessThanOrEqual(runningThreadMost(n));
        expect(runningThreadLeast(n)).toBeGreaterThan(1);
      }),
    );
  });
});

describe('needlefuls', () => {
  it('42 in of whipping at 14 an inch: 88 in, 7 lengths', () => {
    const thread = 42 * whipThread(14);
    expect(Math.round(thread)).toBe(88);
    expect(needlefuls(thread)).toBe(7);
  });

  it('an 18 in length gives 13 in of sewing, to the inch', () => {
    expect([12.9, 13, 13.1, 26, 0.1 + 0.2 + 12.7].map((thread) => needlefuls(thread))).toEqual([
      1, 1, 2, 2, 1,
    ]);
  });

  it('the threaded lengths hold the thread, and one fewer would not', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1e6, noNaN: true }), (thread) => {
        const times = needlefuls(thread);
        expect(times * 13).toBeGreaterThanOrEqual(thread - 1e-6);
        expect((times - 1) * 13).toBeLessThan(thread);
      }),
    );
  });

  it('basting takes about 1.1 times the outline and 4 in a patch', () => {
    expect(bastingThread(6)).toBeCloseTo(10.6, 10);
    expect(bastingThread(0)).toBe(4);
  });
});
