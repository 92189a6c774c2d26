import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { finishDates } from '../../../src/calculator/stitching/finish-dates.ts';

const dates = (start: string, low: number, middle: number, high: number) => {
  const result = finishDates(start, low, middle, high);
  return result.ok ? [result.value.earliest, result.value.middle, result.value.latest] : result.problem;
};

describe('finishing dates', () => {
  it.each([
    [
      'a started day counts whole',
      '2026-12-01',
      [0.01, 1 / 7, 1.01 / 7],
      ['2026-12-02', '2026-12-02', '2026-12-03'],
    ],
    ['no time, the same day', '2026-12-01', [0, 0, 0], ['2026-12-01', '2026-12-01', '2026-12-01']],
    ['over a leap day', '2028-02-28', [1 / 7, 2 / 7, 3 / 7], ['2028-02-29', '2028-03-01', '2028-03-02']],
    ['no leap day in 2100', '2100-02-28', [1 / 7, 1, 2], ['2100-03-01', '2100-03-07', '2100-03-14']],
    [
      'over a change of the clocks',
      '2026-03-28',
      [1 / 7, 2 / 7, 1],
      ['2026-03-29', '2026-03-30', '2026-04-04'],
    ],
    ['a year below 100', '0099-12-31', [1 / 7, 1 / 7, 1 / 7], ['0100-01-01', '0100-01-01', '0100-01-01']],
    ['the last day there is', '9999-12-24', [0, 0, 1], ['9999-12-24', '9999-12-24', '9999-12-31']],
  ])('%s', (_name, start, [low, middle, high], expected) => {
    expect(dates(start, low!, middle!, high!)).toEqual(expected);
  });

  it.each([
    ['a day past 9999', '9999-12-25', 1],
    ['weeks without end', '2026-12-01', Number.POSITIVE_INFINITY],
    ['weeks beyond the clock', '2026-12-01', 1e300],
  ])('%s is too far', (_name, start, weeksHigh) => {
    expect(dates(start, 0, 0, weeksHigh)).toEqual({ code: 'too-far', start, weeks: weeksHigh });
  });

  it('agrees with the Temporal calendar (temporal-polyfill) on any day', () => {
    const first = Temporal.PlainDate.from('0001-01-01');
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 3_600_000 }),
        fc.integer({ min: 0, max: 50_000 }),
        (day, later) => {
          const start = first.add({ days: day });
          expect(dates(start.toString(), 0, 0, later / 7)).toEqual([
            start.toString(),
            start.toString(),
            start.add({ days: later }).toString(),
          ]);
        },
      ),
    );
  });
});
