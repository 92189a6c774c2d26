import type { Here } from '../src/chat/command.ts';
import type { Picture } from '../src/chat/reply.ts';
import type { Challenge } from '../src/guild/challenge-facts.ts';
import { nounFor } from '../src/guild/counted.ts';
import type { Forecast } from '../src/guild/forecast.ts';
import type { WeekCount } from '../src/guild/progress.ts';
import { grouped } from '../src/measure/ruler.ts';
import { capital, dayWords } from '../src/measure/speech.ts';
import { totalWords } from './challenge-words.ts';
import { forecastWords } from './forecast-words.ts';

/** More places than this on the axis cannot be told apart on a phone: the weeks are taken together. */
const MOST_PLACES = 26;
/** So far ahead the range is drawn, in places, when the goal lies further. */
const MOST_AHEAD = 26;

/** How a challenge came along week by week, the goal, and between which days it may be reached. */
export function standingsChart(
  of: Challenge,
  weeks: readonly WeekCount[],
  told: Forecast | null,
  { today }: Here,
): Picture {
  const step = Math.ceil(weeks.length / MOST_PLACES);
  const places = weeks.filter((_, week) => (week + 1) % step === 0 || week === weeks.length - 1);
  let sum = 0;
  const sums = weeks.map(({ pieces }) => {
    sum += pieces;
    return sum;
  });
  const soFar = places.map((week) => sums[weeks.indexOf(week)] ?? 0);
  const ahead = told && told.medianWeeks > 0 && of.goal !== null ? aheadOf(of, told, step) : [];
  const blank = (length: number): null[] => new Array<null>(length).fill(null);
  const labels = [...places.map(({ begins }) => shortDay(begins)), ...ahead.map(({ label }) => label)];
  const join = soFar.at(-1) ?? 0;
  return {
    name: 'standings.png',
    alt: altWords(of, weeks, told, today),
    of: {
      draw: 'chart',
      title: `${of.name}: ${totalWords(of)}`,
      labels,
      series: [
        { name: `${nounFor(of.counting, 2)} so far`, values: [...soFar, ...blank(ahead.length)], as: 'line' },
      ],
      ...(of.goal === null ? {} : { goal: { value: of.goal, words: `goal ${grouped(of.goal)}` } }),
      ...(ahead.length === 0
        ? {}
        : {
            range: {
              words: 'four times in five',
              low: [...blank(places.length - 1), join, ...ahead.map(({ low }) => low)],
              high: [...blank(places.length - 1), join, ...ahead.map(({ high }) => high)],
            },
          }),
      words:
        ahead.length > 0 && told
          ? [`${capital(forecastWords(told))}.`, `A number with + is so many weeks from ${dayWords(today)}.`]
          : [dayWords(today)],
    },
  };
}

interface Ahead {
  readonly label: string;
  readonly low: number;
  readonly high: number;
}

/** From what is there in a straight line to the goal, early and late. */
function aheadOf({ goal, total }: Challenge, { weeksLow, weeksHigh }: Forecast, step: number): Ahead[] {
  const toGo = (goal ?? 0) - total;
  const length = Math.min(MOST_AHEAD, Math.max(1, Math.ceil(weeksHigh / step)));
  return Array.from({ length }, (_, i) => {
    const weeks = (i + 1) * step;
    const reached = (within: number) => total + toGo * Math.min(1, weeks / within);
    return { label: `+${weeks}`, low: reached(weeksHigh), high: reached(weeksLow) };
  });
}

const shortDay = (day: string): string => dayWords(day).split(' ').slice(0, 2).join(' ');

function altWords(of: Challenge, weeks: readonly WeekCount[], told: Forecast | null, today: string): string {
  const each = weeks
    .slice(-8)
    .map(({ pieces }) => grouped(pieces))
    .join(', ');
  const end = told && told.medianWeeks > 0 ? ` ${capital(forecastWords(told))}.` : '';
  return `${of.name} on ${dayWords(today)}: ${totalWords(of)}. By week, the latest last: ${each}.${end}`;
}
