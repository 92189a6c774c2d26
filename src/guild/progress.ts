import type { Challenge, DayCount } from './challenge-facts.ts';
import { dayAfter, daysBetween } from './days.ts';
import { lumpinessOf, type Progress } from './forecast.ts';

const WEEK = 7;

/** A week of a challenge, counted from its first day: the day it begins, and the pieces of its days. */
export interface WeekCount {
  readonly begins: string;
  readonly pieces: number;
  /** All its days are gone by. */
  readonly full: boolean;
}

type Span = Pick<Challenge, 'first' | 'last'>;

/**
 * Days of a challenge that are gone by: today is not, so that a rate is told from the end of the first day
 * on; after the last day, all.
 *
 * @example
 * daysGone({ first: '2026-12-01', last: '2026-12-31' }, '2026-12-08') // 7
 * daysGone({ first: '2026-12-01', last: '2026-12-31' }, '2027-03-01') // 31
 * daysGone({ first: '2026-12-01', last: null }, '2026-11-01') // 0
 */
export function daysGone({ first, last }: Span, today: string): number {
  const gone = daysBetween(first, today);
  return Math.max(0, last === null ? gone : Math.min(gone, daysBetween(first, last) + 1));
}

/**
 * The weeks of a challenge up to today, the last one perhaps still going on.
 *
 * @example
 * weeksOf({ first: '2026-12-01', last: null }, [{ day: '2026-12-02', pieces: 3 }], '2026-12-09') // [{"begins":"2026-12-01","pieces":3,"full":true},{"begins":"2026-12-08","pieces":0,"full":false}]
 */
export function weeksOf(of: Span, days: readonly DayCount[], today: string): WeekCount[] {
  const gone = daysGone(of, today);
  const full = Math.floor(gone / WEEK);
  const ended = of.last !== null && today > of.last;
  const begun = today < of.first ? 0 : ended ? Math.ceil(gone / WEEK) : full + 1;
  const pieces = new Array<number>(begun).fill(0);
  for (const { day, pieces: more } of days) {
    const week = Math.floor(daysBetween(of.first, day) / WEEK);
    if (week >= 0 && week < begun) pieces[week]! += more;
  }
  return pieces.map((sum, week) => ({
    begins: dayAfter(of.first, week * WEEK),
    pieces: sum,
    full: week < full,
  }));
}

/** Of the last day itself half is left: nobody knows the hour. */
const daysLeft = (today: string, last: string): number =>
  today > last ? 0 : Math.max(1 / 2, daysBetween(today, last));

/**
 * The days in which so much was sewn: those gone by, and today where something of today is counted already.
 *
 * @example
 * daysSewn({ first: '2026-12-01', last: null }, [{ day: '2026-12-01', pieces: 4 }, { day: '2026-12-02', pieces: 5 }], '2026-12-02') // 2
 * daysSewn({ first: '2026-12-01', last: null }, [{ day: '2026-12-01', pieces: 4 }], '2026-12-02') // 1
 */
export function daysSewn(of: Span, days: readonly DayCount[], today: string): number {
  const within = today >= of.first && (of.last === null || today <= of.last);
  const counted = within && days.some(({ day, pieces }) => day === today && pieces > 0);
  return daysGone(of, today) + (counted ? 1 : 0);
}

/** What a forecast is made from; null on the first day, before it, and where there is no goal. */
export function progressOf(
  challenge: Span & Pick<Challenge, 'goal' | 'total'>,
  days: readonly DayCount[],
  weeks: readonly WeekCount[],
  today: string,
): Progress | null {
  const { goal, total, last } = challenge;
  if (goal === null || daysGone(challenge, today) === 0) return null;
  return {
    done: total,
    weeks: daysSewn(challenge, days, today) / WEEK,
    toGo: goal - total,
    weeksLeft: last === null ? null : daysLeft(today, last) / WEEK,
    lumpiness: lumpinessOf(weeks.filter(({ full }) => full).map(({ pieces }) => pieces)),
  };
}
