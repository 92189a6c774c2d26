import { form, type Here } from '../src/chat/command.ts';
import { bare, type Option, usually } from '../src/chat/option.ts';
import { count, type Picture, reply } from '../src/chat/reply.ts';
import type { Challenge, DayCount } from '../src/guild/challenge-facts.ts';
import { nounFor } from '../src/guild/counted.ts';
import { dayAfter, monthAfter } from '../src/guild/days.ts';
import { ok, wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];
const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];

/** A month of the calendar, YYYY-MM: `2027-02`, `February`, `feb 2027`, next. Without a year, the nearest to come. */
const monthOfYear: Option<string, false> = {
  kind: 'month',
  summary: 'Which month',
  example: '2027-02',
  bounds: 'such as 2027-02, February, next',
  shape: { as: 'words', longest: 20 },
  take(text, { today }) {
    const turned = /^(this|next|last)(?:\s+month)?\b/i.exec(text);
    if (turned) {
      const by = { this: 0, next: 1, last: -1 }[turned[1]!.toLowerCase()] ?? 0;
      const value = monthAfter(`${today.slice(0, 7)}-01`, by).slice(0, 7);
      return ok({ value, rest: text.slice(turned[0].length) });
    }
    const iso = /^(\d{4})-(\d{1,2})(?![\d-])/.exec(text);
    if (iso) return monthOf(iso[1]!, Number(iso[2]), text, iso[0]);
    const named = /^([a-z]{3,9})\.?(?:\s+(\d{4}))?(?![a-z\d])/i.exec(text);
    const index = named
      ? MONTHS.findIndex((month) => month.toLowerCase().startsWith(named[1]!.toLowerCase()))
      : -1;
    if (!named || index < 0) return null;
    const soon = Number(today.slice(0, 4)) + (index + 1 < Number(today.slice(5, 7)) ? 1 : 0);
    return monthOf(named[2] ?? String(soon), index + 1, text, named[0]);
  },
  write: (value) => value,
};

function monthOf(year: string, month: number, text: string, found: string) {
  if (month < 1 || month > 12) return wrong('month-unread', { got: found });
  return ok({ value: `${year}-${String(month).padStart(2, '0')}`, rest: text.slice(found.length) });
}

export const viewForm = form({
  name: 'view',
  summary: 'A whole month: what opens and ends, and how much was logged',
  examples: ['/month view', '/month view 2027-02', '/month view February'],
  options: { when: usually(bare(monthOfYear), 'this month') },
  async run({ when = '' }, here) {
    const month = when || here.today.slice(0, 7);
    const [first, last] = [`${month}-01`, dayAfter(monthAfter(`${month}-01`, 1), -1)];
    const challenges = (await here.facts.challenges.all(here.guild)).filter(
      (one) => one.first <= last && (one.last === null || one.last >= first),
    );
    const logged = await Promise.all(challenges.map((of) => loggedIn(of, first, last, here)));
    const events = [
      ...challenges.flatMap((of) => endsOf(of)),
      ...(await blockDays(here)),
      ...logged.flatMap(({ of, weeks }) => weeks.map((week) => loggedWords(of, week))),
    ].filter(({ day }) => day >= first && day <= last);
    events.sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.order - b.order));
    const total = logged.reduce((sum, { days }) => sum + days.reduce((n, { pieces }) => n + pieces, 0), 0);
    return reply({
      title: monthWords(month),
      lines: [
        events.length === 0
          ? 'Nothing opens or ends.'
          : `${many(events.filter(({ order }) => order < 2).length, 'day', 'days')} to note.`,
        ...logged.filter(({ days }) => days.length > 0).map(({ of, days }) => monthTotal(of, days)),
      ],
      figures: { logged: count(total) },
      table:
        events.length === 0
          ? null
          : { columns: ['day', 'what'], rows: events.map(({ day, what }) => [shown(day), what]) },
      pictures: total > 0 ? [chartOf(month, first, last, logged)] : [],
      choices: [
        { label: 'The month before', ask: `/month view ${monthAfter(first, -1).slice(0, 7)}` },
        { label: 'The next month', ask: `/month view ${monthAfter(first, 1).slice(0, 7)}` },
      ],
    });
  },
});

const monthWords = (month: string): string => `${MONTHS[Number(month.slice(5)) - 1]} ${month.slice(0, 4)}`;

/** Something on a day; of one day the smaller order comes first. */
interface Event {
  readonly day: string;
  readonly what: string;
  readonly order: number;
}

const shown = (day: string): string => `${WEEKDAYS[new Date(day).getUTCDay()]} ${Number(day.slice(8))}`;

const endsOf = ({ name, first, last }: Challenge): Event[] => [
  { day: first, what: `${name} begins`, order: 0 },
  ...(last === null ? [] : [{ day: last, what: `last day of ${name}`, order: 1 }]),
];

async function blockDays({ facts, guild, who }: Here): Promise<Event[]> {
  const months = (await facts.months.all(guild)).filter(({ open }) => open);
  const each = await Promise.all(
    months.map(async (of) => {
      const finished = await facts.months.finished(of);
      const hers = new Set(finished.filter(({ member }) => member === who.id).map(({ block }) => block));
      return (await facts.months.blocks(of)).map(({ block, opens }) => ({
        day: opens,
        what:
          block === null
            ? `${of.name}: catch up`
            : `${of.name}: block ${block} opens${hers.has(block) ? ', finished by you' : ''}`,
        order: 0,
      }));
    }),
  );
  return each.flat();
}

interface Logged {
  readonly of: Challenge;
  readonly days: readonly DayCount[];
  /** By week, under its Sunday or the month's last day. */
  readonly weeks: readonly DayCount[];
}

async function loggedIn(of: Challenge, first: string, last: string, { facts }: Here): Promise<Logged> {
  const days = (await facts.challenges.days(of)).filter(({ day }) => day >= first && day <= last);
  const weeks = new Map<string, number>();
  for (const { day, pieces } of days) {
    const sunday = dayAfter(day, (7 - new Date(day).getUTCDay()) % 7);
    const end = sunday < last ? sunday : last;
    weeks.set(end, (weeks.get(end) ?? 0) + pieces);
  }
  return { of, days, weeks: [...weeks].map(([day, pieces]) => ({ day, pieces })) };
}

const loggedWords = ({ name, counting }: Challenge, { day, pieces }: DayCount): Event => ({
  day,
  what: `${name}: ${grouped(pieces)} ${nounFor(counting, pieces)} in the week`,
  order: 2,
});

function monthTotal({ name, counting }: Challenge, days: readonly DayCount[]): string {
  const pieces = days.reduce((sum, one) => sum + one.pieces, 0);
  return `${name}: ${grouped(pieces)} ${nounFor(counting, pieces)} this month.`;
}

/** Three challenges at most: more bars beside one another cannot be told apart. */
const MOST_SERIES = 3;

function chartOf(month: string, first: string, last: string, logged: readonly Logged[]): Picture {
  const length = Number(last.slice(8));
  const days = Array.from({ length }, (_, i) => dayAfter(first, i));
  const series = logged
    .filter((one) => one.days.length > 0)
    .slice(0, MOST_SERIES)
    .map(({ of, days: counts }) => ({
      name: of.name,
      values: days.map((day) => counts.find((one) => one.day === day)?.pieces ?? 0),
      as: 'bars',
    }));
  const said = series.map(({ name, values }) => `${name} ${grouped(values.reduce((sum, n) => sum + n, 0))}`);
  return {
    name: 'month.png',
    alt: `Logged by day, ${monthWords(month)}: ${said.join(', ')} altogether.`,
    of: {
      draw: 'chart',
      title: `Logged by day, ${monthWords(month)}`,
      labels: days.map((day) => String(Number(day.slice(8)))),
      series,
    },
  };
}
