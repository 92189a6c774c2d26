import { type Command, form, type Here } from '../src/chat/command.ts';
import { bare } from '../src/chat/option.ts';
import { number } from '../src/chat/option-kinds.ts';
import { count, type Figure, type Reply, reply } from '../src/chat/reply.ts';
import { isOn, joinChoice, logChoice, renewed, standingName } from '../src/guild/challenge-choices.ts';
import type { Challenge, DayCount, Part } from '../src/guild/challenge-facts.ts';
import { nounFor, piecesFor, worthOf } from '../src/guild/counted.ts';
import { dayAfter } from '../src/guild/days.ts';
import { type Forecast, forecast, type Progress } from '../src/guild/forecast.ts';
import { progressOf, type WeekCount, weeksOf } from '../src/guild/progress.ts';
import { decimal, grouped } from '../src/measure/ruler.ts';
import { dayWords, many } from '../src/measure/speech.ts';
import { leftOfPlan } from './challenge-plan.ts';
import { challengeFigures, mineWords, totalWords } from './challenge-words.ts';
import { chanceWords, forecastWords } from './forecast-words.ts';
import { standingsChart } from './standings-chart.ts';
import { challengeOption, whichChallenge } from './which-challenge.ts';

/** More members than this are no table to read on a phone. */
const MOST_SHOWN = 20;

/** Beyond this nobody plans, and no day is named. */
const MOST_YEARS = 10;
const DAYS_A_YEAR = 365.25;

/** Instead of the pace so far. */
const paceOption = number('When it would be done at so many a week', 0.1, 100_000, '10');

const standings: Command = {
  name: 'standings',
  summary: 'How far a challenge is, and when it will be done',
  forms: [
    form({
      name: '',
      summary: 'How far a challenge is, how much is sewn, and when it will be done, as a range',
      examples: ['/standings', '/standings Spring'],
      options: { challenge: bare(challengeOption), pace: paceOption },
      async run(values, here) {
        const found = await whichChallenge(values.challenge, here, 'any');
        if ('asks' in found) return found.asks;
        return found.ok ? standingsOf(found.value, values.pace, here) : found;
      },
    }),
  ],
};

export default standings;

async function standingsOf(of: Challenge, pace: number | undefined, here: Here): Promise<Reply> {
  const { facts, who, today } = here;
  const days = await facts.challenges.days(of);
  const weeks = weeksOf(of, days, today);
  const progress = progressOf(of, days, weeks, today);
  const going = of.open && (of.last === null || today <= of.last) && of.total > 0;
  const told = progress && going ? await forecast(progress) : null;
  const part = await facts.challenges.part(of, who.id);
  const heads = await facts.challenges.heads(of, of.each);
  const left = await leftOfPlan(of, here);
  const perWeek = progress ? progress.done / progress.weeks : perWeekOf(of, days, weeks, today);
  const members = `${many(heads.sewing, 'member', 'members')} so far`;
  const reached = of.each === null ? '' : `; ${grouped(heads.reached)} at ${grouped(of.each)} or more`;
  return reply({
    title: `${of.name}${of.open ? '' : ', closed'}`,
    lines: [
      `${totalWords(of)}${leftWords(of)}.`,
      ...(pace === undefined ? [] : paceWords(of, pace, today)),
      ...(told || weeks.some(({ full }) => full) ? rateWords(of, perWeek, told) : []),
      ...(told ? chanceWords(told, of) : endWords(of, today)),
      ...sewnWords(of, here),
      ...left.lines,
      ...(heads.sewing > 0 ? [`By ${members}${reached}.`] : []),
      ...(part && (part.pieces > 0 || part.joined) ? [mineWords(part.pieces, of.each)] : []),
    ],
    figures: {
      ...challengeFigures(of),
      ...left.figures,
      members: count(heads.sewing),
      mine: count(part?.pieces ?? 0),
      ...(perWeek === null ? {} : { perWeek: { value: perWeek, unit: 'a week' } }),
      ...(told ? forecastFigures(told) : {}),
    },
    table: await tableOf(of, heads.sewing, here),
    pictures: weeks.length > 0 && of.total > 0 ? [standingsChart(of, weeks, told, here)] : [],
    notes: told && progress ? notesOn(told, weeks, progress) : [],
    choices: of.open
      ? [...(isOn(of, today) ? [logChoice(of)] : []), ...(part?.joined ? [] : [joinChoice(of)])]
      : [],
    ...(here.place === of.place ? { standing: standingName(of) } : {}),
    renews: renewed(of),
  });
}

/** "At 10 a week: about 15 weeks more, until 14 Mar 2027"; before it begins, counted from its first day. */
function paceWords({ open, goal, total, first, last }: Challenge, pace: number, today: string): string[] {
  if (!open) return [];
  if (goal === null) return ['No goal is set, so there is no day on which it is done.'];
  const at = `At ${decimal(pace, 1)} a week`;
  if (goal <= total) return [`${at}: nothing is left to do, the goal is reached.`];
  const days = Math.ceil(((goal - total) / pace) * 7);
  if (days > MOST_YEARS * DAYS_A_YEAR) return [`${at}: longer than ${MOST_YEARS} years.`];
  const from = today < first ? first : today;
  const done = dayAfter(from, days);
  const late = last !== null && done > last ? `, after the last day, ${dayWords(last)}` : '';
  const weeks = many(Math.ceil(days / 7), 'week', 'weeks');
  const during = from === today ? `${weeks} more` : `${weeks} from ${dayWords(first)}`;
  return [`${at}: ${during}, until ${dayWords(done)}${late}.`];
}

/** Where there is no goal the weekly rate is still worth knowing; it is told once a week has gone by. */
function perWeekOf(
  of: Challenge,
  days: readonly DayCount[],
  weeks: readonly WeekCount[],
  today: string,
): number | null {
  const progress = progressOf({ ...of, goal: of.total }, days, weeks, today);
  return progress ? progress.done / progress.weeks : null;
}

const leftWords = ({ goal, total }: Challenge): string => {
  if (goal === null) return '';
  return goal > total ? `, ${grouped(goal - total)} to go` : ', the goal is reached';
};

function rateWords({ counting }: Challenge, perWeek: number | null, told: Forecast | null): string[] {
  if (perWeek === null) return [];
  const rate = `${decimal(perWeek, perWeek < 20 ? 1 : 0)} ${nounFor(counting, perWeek)} a week`;
  return [told && told.medianWeeks > 0 ? `${rate}: ${forecastWords(told)}.` : `${rate}.`];
}

function endWords({ last, open, first }: Challenge, today: string): string[] {
  if (today < first) return [`Begins on ${dayWords(first)}.`];
  if (last === null) return [];
  if (open && today > last) return [`The last day was ${dayWords(last)}.`];
  return open ? [`The last day is ${dayWords(last)}.`] : [];
}

/** What is sewn so far, counted from the layout of one. */
function sewnWords(of: Challenge, { say }: Here): string[] {
  const { pieces, seams } = worthOf(of);
  if (of.total === 0 || seams === 0) return [];
  const [all, sewn] = [pieces * of.total, seams * of.total];
  return [
    `Sewn: ${grouped(all)} ${piecesFor(of.counting, all)}, ${many(sewn, 'seam', 'seams')}, ${say.run(sewn * of.size)}.`,
  ];
}

const forecastFigures = (told: Forecast): Record<string, Figure> => ({
  ...(told.chance === null ? {} : { chance: { value: told.chance, unit: '' } }),
  medianWeeks: { value: told.medianWeeks, unit: 'weeks' },
  weeksLow: { value: told.weeksLow, unit: 'weeks' },
  weeksHigh: { value: told.weeksHigh, unit: 'weeks' },
  weeksSure: { value: told.weeksSure, unit: 'weeks' },
  ...(told.byLast ? { byLastLow: count(told.byLast.low), byLastHigh: count(told.byLast.high) } : {}),
});

/** So many full weeks make a forecast steady. */
const STEADY_WEEKS = 3;

/** From here on it shows in the range. */
const LUMPY = 2;

function notesOn(
  { medianWeeks }: Forecast,
  weeks: readonly WeekCount[],
  { lumpiness = 1 }: Progress,
): string[] {
  if (medianWeeks === 0) return [];
  const full = weeks.filter((week) => week.full).length;
  const early = full < STEADY_WEEKS ? ' Early days: it will move.' : '';
  const lumpy = lumpiness >= LUMPY ? ' The weeks differ much, so the range is wide.' : '';
  return [`From the pace so far, if the weeks to come are like those gone by.${early}${lumpy}`];
}

async function tableOf(of: Challenge, sewing: number, here: Here): Promise<Reply['table']> {
  const way = here.defaults.standings.value;
  if (way === 'totals' || sewing === 0) return null;
  const parts = await here.facts.challenges.parts(of, way === 'ranked' ? 'pieces' : 'name', MOST_SHOWN);
  const more = sewing - parts.length;
  const rest = more > 0 ? [`and ${many(more, 'other', 'others')}`, ''] : null;
  if (way === 'ranked')
    return {
      columns: ['', 'member', nounFor(of.counting, 2)],
      rows: [...ranked(parts), ...(rest ? [['', ...rest]] : [])],
    };
  return {
    columns: ['member', nounFor(of.counting, 2)],
    rows: [...parts.map(({ name, pieces }) => [name, grouped(pieces)]), ...(rest ? [rest] : [])],
  };
}

/** Members with as many share a place. */
function ranked(parts: readonly Part[]): string[][] {
  return parts.map(({ name, pieces }) => {
    const place = parts.findIndex((other) => other.pieces === pieces) + 1;
    return [String(place), name, grouped(pieces)];
  });
}
