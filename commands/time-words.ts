import type { MinutesSpan } from '../src/calculator/stitching/before.ts';
import { finishDates } from '../src/calculator/stitching/finish-dates.ts';
import { day, type Figure, minutes } from '../src/chat/reply.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import { decimal, grouped } from '../src/measure/ruler.ts';
import { capital, daysWords, dayWords, many, range } from '../src/measure/speech.ts';

/** Low to high in one unit: minutes up to two hours, then hours. */
export function spanWords({ low, high }: MinutesSpan): string {
  const [unit, size, places] = high < 120 ? ['minutes', 1, 0] : ['hours', 60, high < 600 ? 1 : 0];
  return `${range(decimal(low / size, places), decimal(high / size, places))} ${unit}`;
}

interface Weeks {
  readonly weeksLow: number;
  readonly weeksHigh: number;
}

/** "3 to 5 weeks", "under a week"; a started week counts whole. */
export function weeksWords({ weeksLow, weeksHigh }: Weeks): string {
  if (weeksHigh < 1) return 'under a week';
  const [low, high] = [weeksLow, weeksHigh].map((weeks) => Math.ceil(weeks - 1e-9)) as [number, number];
  return `${low === high ? '' : `${grouped(low)} to `}${many(high, 'week', 'weeks')}`;
}

/** How long some work lasts, least, middle and most. */
export interface Lasting extends Weeks {
  readonly minutesLow: number;
  readonly minutes: number;
  readonly minutesHigh: number;
  readonly weeks: number;
}

/** Work of so many minutes, at so many hours a week. */
export function lastingOf({ low, high }: MinutesSpan, hours: number): Lasting {
  const middle = (low + high) / 2;
  const weeks = (total: number) => total / 60 / hours;
  return {
    ...{ minutesLow: low, minutes: middle, minutesHigh: high },
    ...{ weeksLow: weeks(low), weeks: weeks(middle), weeksHigh: weeks(high) },
  };
}

/** When work that begins on a day is over, in a line and in figures. */
export function overOn(
  lasting: Lasting,
  start: string,
): Result<{ readonly words: string; readonly figures: Readonly<Record<string, Figure>> }> {
  const { weeksLow, weeks, weeksHigh } = lasting;
  const dates = finishDates(start, weeksLow, weeks, weeksHigh);
  if (!dates.ok) return wrong('too-far');
  const { earliest, middle, latest } = dates.value;
  return ok({
    words: `${capital(weeksWords(lasting))}: started ${dayWords(start)}, done ${daysWords(earliest, latest)}.`,
    figures: {
      minutesLow: minutes(lasting.minutesLow),
      minutes: minutes(lasting.minutes),
      minutesHigh: minutes(lasting.minutesHigh),
      weeksLow: { value: weeksLow, unit: 'weeks' },
      weeks: { value: weeks, unit: 'weeks' },
      weeksHigh: { value: weeksHigh, unit: 'weeks' },
      finishEarliest: day(earliest),
      finishDate: day(middle),
      finishLatest: day(latest),
    },
  });
}
