import { ok, type Result, wholeAbove, wrong } from '../../measure/result.ts';

/** Days of the calendar, written 2026-12-01. */
export interface FinishDates {
  readonly earliest: string;
  readonly middle: string;
  readonly latest: string;
}

const DAY = 86_400_000;
const LAST_DAY = Date.UTC(9999, 11, 31);

/**
 * The days on which the work would be done, from the day it starts and the weeks it takes: a started day
 * counts whole. Days are counted in universal time, where each has 24 hours. Past the year 9999 it is too far.
 *
 * @example
 * finishDates('2026-12-01', 0.21, 0.315, 0.42) // {"ok":true,"value":{"earliest":"2026-12-03","middle":"2026-12-04","latest":"2026-12-04"}}
 * finishDates('2027-12-31', 1, 2, 10).value.latest // "2028-03-10"
 * finishDates('2026-12-01', 1, 1, 1e6).problem.code // "too-far"
 */
export function finishDates(
  startISO: string,
  weeksLow: number,
  weeks: number,
  weeksHigh: number,
): Result<FinishDates> {
  const start = Date.parse(startISO);
  const [earliest, middle, latest] = [weeksLow, weeks, weeksHigh].map((each) => dayAfter(start, each));
  if (earliest === undefined || middle === undefined || latest === undefined) {
    return wrong('too-far', { start: startISO, weeks: weeksHigh });
  }
  return ok({ earliest, middle, latest });
}

function dayAfter(start: number, weeks: number): string | undefined {
  const day = start + wholeAbove(weeks * 7) * DAY;
  return day <= LAST_DAY ? new Date(day).toISOString().slice(0, 10) : undefined;
}
