import { describe, expect, it } from 'vitest';
import { ok, wholeAbove, wholeBelow, wrong } from '../../src/measure/result.ts';

describe('whole numbers that forgive the computer’s rounding', () => {
  it.each([
    [5 / 2.5, 2, 2],
    [(0.1 + 0.2) / 0.1, 3, 3],
    [10 * Math.sqrt(3) * (1 / Math.sqrt(3)), 10, 10],
    [4.999_999_999_9, 5, 5],
    [5.000_000_000_1, 5, 5],
    [4.9, 4, 5],
    [0, 0, 0],
    [4.999_999, 4, 5],
  ])('%d: %d below, %d above', (x, below, above) => {
    expect(wholeBelow(x)).toBe(below);
    expect(Math.abs(wholeAbove(x))).toBe(above);
  });
});

it('a result is a value, or a problem as data', () => {
  expect(ok(3)).toEqual({ ok: true, value: 3 });
  expect(wrong('too-small', { got: '0in' })).toEqual({
    ok: false,
    problem: { code: 'too-small', got: '0in' },
  });
});
