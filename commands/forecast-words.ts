import type { Challenge } from '../src/guild/challenge-facts.ts';
import type { Forecast } from '../src/guild/forecast.ts';
import { decimal, grouped } from '../src/measure/ruler.ts';
import { dayWords, many, range } from '../src/measure/speech.ts';

/** Beyond this nobody plans. */
const MOST_WEEKS = 520;

/**
 * When the rest will be done, in words.
 *
 * @example
 * forecastWords({ perWeek: 1.5, chance: null, medianWeeks: 19.5, weeksLow: 12.8, weeksHigh: 30.6, weeksSure: 25, byLast: null }) // "about 20 weeks more; four times in five 13 to 31"
 * forecastWords({ perWeek: 9, chance: null, medianWeeks: 0.6, weeksLow: 0.2, weeksHigh: 1.1, weeksSure: 0.9, byLast: null }) // "about 4 days more; four times in five 1 to 8"
 */
export function forecastWords({ medianWeeks, weeksLow, weeksHigh }: Forecast): string {
  const inDays = medianWeeks < 2;
  const said = (weeks: number) => Math.max(1, Math.round(inDays ? weeks * 7 : weeks));
  const about = inDays ? many(said(medianWeeks), 'day', 'days') : many(said(medianWeeks), 'week', 'weeks');
  if (medianWeeks > MOST_WEEKS) return 'more than ten years at this pace';
  const high = weeksHigh > MOST_WEEKS ? 'far more' : grouped(said(weeksHigh));
  return `about ${about} more; four times in five ${range(grouped(said(weeksLow)), high)}`;
}

/** The chance of the goal by the last day, and how many by then, in a line; nothing where there is no last day. */
export function chanceWords({ chance, medianWeeks, byLast }: Forecast, { last, goal }: Challenge): string[] {
  if (chance === null || last === null || goal === null || medianWeeks === 0) return [];
  const many = byLast && `; four times in five ${range(grouped(byLast.low), grouped(byLast.high))} by then`;
  return [`Chance of ${grouped(goal)} by ${dayWords(last)}: ${percentWords(chance)}${many ?? ''}.`];
}

/**
 * A chance as it can be used: in whole hundredths, none of them certain.
 *
 * @example
 * percentWords(0.504) // "50%"
 * percentWords(0.999) // "over 99%"
 * percentWords(0.002) // "under 1%"
 */
export function percentWords(chance: number): string {
  if (chance < 0.01) return 'under 1%';
  return chance > 0.99 ? 'over 99%' : `${decimal(chance * 100, 0)}%`;
}
