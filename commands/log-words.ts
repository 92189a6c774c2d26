import { WEEKDAYS } from '../src/chat/defaults.ts';
import type { Option, ReadingContext } from '../src/chat/option.ts';
import { MONTHS } from '../src/chat/option-days.ts';
import { date } from '../src/chat/option-kinds.ts';
import { NOUN as COUNTED_NOUN, countedAs } from '../src/chat/sayings/counts.ts';
import type { Counting } from '../src/guild/counted.ts';
import { dayAfter, monthAfter, weekdayOf } from '../src/guild/days.ts';
import { type Taken, takeNumber } from '../src/measure/number.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { countInFigures, loneCountInFigures, SMALL_NUMBER } from './small-numbers.ts';

/** The most that one log may say: more is a slip. */
const MOST_PIECES = 100_000;
export const MOST_MINUTES = 6000;
const LONGEST_NOTE = 300;

/** What pieces are called in passing: "2 more rosettes". */
const NOUN = new RegExp(
  `^\\s*(?:(?:more|further|other|new|finished|done|whole)\\s+)*(${COUNTED_NOUN}|more|done|finished)\\b`,
  'i',
);

/** How many were sewn, and of what where that was said: a piece may be one of anything. */
export interface Sewn {
  readonly count: number;
  readonly of?: Counting;
  readonly called?: string;
}

/** Behind them that they are done, and no more of it: "2 rosettes done tonight". */
const DONE =
  /^\s+(?:done|finished|made|sewn)(?=\s*(?:$|[,;.]|(?:yesterday|today|tonight|this|last|on|\w+day)\b))/i;

function sewn(count: number, rest: string): Sewn {
  const called = NOUN.exec(rest)?.[1]?.toLowerCase() ?? '';
  const of = countedAs(called);
  return of ? { count, of, called } : { count };
}
/** A number that is no count of pieces: a length of time, a day, a size. */
const NO_COUNT =
  /^\s*(?:(?:h|hrs?|hours?|m|mins?|minutes?)\b(?!\s*[:=])|in\b(?!\s+(?:about\s+)?\d[\d.,/ ]*\s*(?:h|hrs?|hours?|m|mins?|minutes?)\b)|inch|cm\b|mm\b|["x%:/.-])/i;

/** "A rosette". */
const ONE = new RegExp(`^an?\\s+(?=${NOUN.source.replace('^', '')})`, 'i');

/** How many were sewn: `3`, `2 rosettes`, `2 more blocks`. */
export const piecesOption: Option<Sewn, false> = {
  kind: 'count',
  summary: 'How many are done',
  example: '3',
  bounds: `1 to ${grouped(MOST_PIECES)}`,
  shape: { as: 'whole', least: 1, most: MOST_PIECES },
  names: ['piece', 'rosette', 'flower', 'block', 'star', 'patch', 'patches'],
  take(text) {
    const taken = takeNumber(loneCountInFigures(countInFigures(text)).replace(ONE, '1 '));
    if (!taken || NO_COUNT.test(taken.rest) || /^[a-z]/i.test(taken.rest)) return null;
    if (!Number.isInteger(taken.value)) return wrong('not-whole', { got: String(taken.value) });
    const bounds = { got: grouped(taken.value), least: '1', most: grouped(MOST_PIECES) };
    if (taken.value < 1) return wrong('too-small', bounds);
    if (taken.value > MOST_PIECES) return wrong('too-large', bounds);
    return ok({ value: sewn(taken.value, taken.rest), rest: taken.rest.replace(NOUN, '').replace(DONE, '') });
  },
  write: ({ count, called }) => `${count}${called ? ` ${called}` : ''}`,
};

const HOURS = /^\s*(?:h|hrs?|hours?)(?![a-z]|\s*[:=])/i;
const MINUTES = /^\s*(?:m|mins?|minutes?)(?![a-z]|\s*[:=])/i;

/** A length of time in minutes: `95`, `95 min`, `1 h 35`, `1 1/2 hours`. */
export const minutesOption: Option<number, false> = {
  kind: 'length of time',
  summary: 'How long it took',
  example: '95 min',
  bounds: `1 min to ${MOST_MINUTES / 60} h`,
  shape: { as: 'words', longest: 20 },
  bare: true,
  bareWhen: /^\d[\d.,/ ]*\s*(?:h|hrs?|hours?|m|mins?|minutes?)(?![a-z]|\s*[:=])/i,
  take(text) {
    const taken = takeMinutes(text);
    if (!taken) return null;
    const got = `${grouped(taken.value)} min`;
    const bounds = { got, least: '1 min', most: `${MOST_MINUTES / 60} h` };
    if (taken.value < 1) return wrong('too-small', bounds);
    return taken.value > MOST_MINUTES ? wrong('too-large', bounds) : ok(taken);
  },
  write: (value) => `${value} min`,
};

function takeMinutes(text: string): Taken<number> | null {
  const first = takeNumber(text);
  if (!first) return null;
  const hours = HOURS.exec(first.rest);
  if (!hours) return { value: first.value, rest: first.rest.replace(MINUTES, '') };
  const after = first.rest.slice(hours[0].length);
  const more = takeNumber(after.trimStart());
  const bare = more && /^\s*(?:$|m(?:in|inutes?)?s?(?![a-z])|[,;.]|(?:each|apiece)\b)/i.test(more.rest);
  return more && bare
    ? { value: first.value * 60 + more.value, rest: more.rest.replace(MINUTES, '') }
    : { value: first.value * 60, rest: after };
}

const SHORT_DAYS = WEEKDAYS.map((day) => `${day}|${day.slice(0, 3)}`).join('|');
const WEEKDAY = new RegExp(`^(?:on\\s+|last\\s+)*(${SHORT_DAYS})\\b`, 'i');
const MONTH = `(${MONTHS.join('|')})[a-z]*\\.?`;
const DAY_MONTH = new RegExp(
  `^(?:on\\s+)?(?:(\\d{1,2})(?:st|nd|rd|th)?\\.?\\s*${MONTH}|${MONTH}\\s*(\\d{1,2})(?:st|nd|rd|th)?)(?![\\da-z])`,
  'i',
);

const plainDate = date('The day it was sewn');

const PAST_DAYS: readonly (readonly [RegExp, (found: RegExpExecArray) => number])[] = [
  [/^last night\b/i, () => 1],
  [/^(?:this (?:morning|afternoon|evening)|tonight)\b/i, () => 0],
  [
    new RegExp(`^(an?|${SMALL_NUMBER}|\\d{1,3}) days? ago\\b`, 'i'),
    ([, days = '']) => (/^an?$/i.test(days) ? 1 : Number(loneCountInFigures(days))),
  ],
];
/** A day of this month or the last, whichever was later: "on the 3rd". */
const THE_DAY = /^(?:on )?the (\d{1,2})(?:st|nd|rd|th)\b(?!\s+(?:of\b|row|round|block|rosette))/i;

/** A day that is past: `yesterday`, `monday`, `3 Dec`, `2026-12-03`. A weekday is the last one that was. */
export const dayOption: Option<string, false> = {
  ...plainDate,
  bounds: 'such as yesterday, monday, 3 Dec, 2026-12-03',
  example: 'yesterday',
  bare: true,
  take: (text, context) =>
    takeWeekday(text, context) ??
    takePastDay(text, context) ??
    takeDayBehind(text, context) ??
    takeDayOfMonth(text, context) ??
    plainDate.take(text.replace(/^on\s+/i, ''), context),
};

function takeWeekday(text: string, { today }: ReadingContext): Result<Taken<string>> | null {
  const found = WEEKDAY.exec(text);
  if (!found) return null;
  const asked = WEEKDAYS.findIndex((day) => day.startsWith(found[1]?.toLowerCase() ?? ''));
  const back = (weekdayOf(today) - asked + 7) % 7;
  return ok({ value: dayAfter(today, -back), rest: text.slice(found[0].length) });
}

function takePastDay(text: string, { today }: ReadingContext): Result<Taken<string>> | null {
  for (const [words, back] of PAST_DAYS) {
    const found = words.exec(text);
    if (found) return ok({ value: dayAfter(today, -back(found)), rest: text.slice(found[0].length) });
  }
  return null;
}

function takeDayBehind(text: string, { today }: ReadingContext): Result<Taken<string>> | null {
  const found = THE_DAY.exec(text);
  if (!found) return null;
  const date = (found[1] ?? '').padStart(2, '0');
  for (let back = 0; back < 3; back++) {
    const day = `${monthAfter(`${today.slice(0, 7)}-01`, -back).slice(0, 7)}-${date}`;
    if (day <= today && dayAfterExists(day)) return ok({ value: day, rest: text.slice(found[0].length) });
  }
  return wrong('day-unread', { got: found[0] });
}

/** Without a year: the last time that it was that day. */
function takeDayOfMonth(text: string, { today }: ReadingContext): Result<Taken<string>> | null {
  const found = DAY_MONTH.exec(text);
  if (!found) return null;
  const [all, dayFirst, monthAfter = '', monthFirst = '', dayAfterMonth] = found;
  const month = MONTHS.indexOf((monthAfter || monthFirst).toLowerCase()) + 1;
  const two = (n: number | string) => String(n).padStart(2, '0');
  const date = `${two(month)}-${two(dayFirst ?? dayAfterMonth ?? '')}`;
  for (let year = Number(today.slice(0, 4)), back = 0; back < 8; back++) {
    const day = `${year - back}-${date}`;
    if (day <= today && dayAfterExists(day)) return ok({ value: day, rest: text.slice(all.length) });
  }
  return wrong('day-unread', { got: all });
}

function dayAfterExists(day: string): boolean {
  const moment = new Date(`${day}T00:00:00Z`);
  return !Number.isNaN(moment.getTime()) && moment.toISOString().slice(0, 10) === day;
}

/** Where the next named option begins. */
const NEXT_NAME = /\s(?:pieces?|day|minutes|note|picture|challenge|line)\s*[:=]/i;

/**
 * What begins a note, and neither a count nor a day. A weekday cut short is a day only after "on" or "last": a
 * sun print is a cloth.
 */
const NOTE = new RegExp(
  `^(?![\\d-]|(?:${SMALL_NUMBER})\\s*(?:$|[,;.])|(?:an?|half a|${SMALL_NUMBER})(?:\\s+(?:dozen|hundred))?${NOUN.source.replace('^\\s*', '\\s+')})(?!(?:yesterday|today|tonight|tomorrow|last night|this (?:morning|afternoon|evening)|on the \\d|(?:an?|${SMALL_NUMBER}) days? ago|(?:on|last)\\s+(?:${SHORT_DAYS}|\\d+|${MONTH}\\s*\\d+)|${WEEKDAYS.join('|')})\\b)`,
  'i',
);

/** Any words: what cannot be read as something else begins the note, which runs to the end. */
export const noteOption: Option<string, false> = {
  kind: 'words',
  summary: 'A note, kept as it is typed',
  example: 'blue one',
  bounds: `up to ${LONGEST_NOTE} characters`,
  shape: { as: 'words', longest: LONGEST_NOTE },
  greedy: true,
  bare: true,
  bareWhen: NOTE,
  take(text, { alone }) {
    const end = alone ? -1 : text.search(NEXT_NAME);
    const value = (end < 0 ? text : text.slice(0, end)).replace(/^[\s,;:.]+|\s+$/g, '');
    if (value === '') return null;
    if (value.length > LONGEST_NOTE)
      return wrong('text-too-long', { got: grouped(value.length), most: grouped(LONGEST_NOTE) });
    return ok({ value, rest: end < 0 ? '' : text.slice(end) });
  },
  write: (value) => value,
};

/** What a note without its name says of time and day as well: "blue one, 95 min yesterday". */
export interface FromNote {
  readonly note: string;
  readonly minutes?: number;
  /** The minutes are for each of what was sewn. */
  readonly each?: true;
  readonly day?: string;
}

/** Behind a time, it is for each of what was sewn; its end is all that a note begins with where that was read. */
const EACH =
  /^(?:each|apiece|a ?piece|(?:for )?(?:each|every) one|per (?:piece|rosette|flower|block|star|patch))\b[\s,;.]*/i;

/** What follows "each" in a note behind a time; null where it is not for each. */
export const afterEach = (note: string): string | null => (EACH.test(note) ? note.replace(EACH, '') : null);

const TIME_IN_NOTE =
  /(?:^|[\s,;(])(\d[\d.,/ ]*\s*(?:h|hrs?|hours?|m|mins?|minutes?)(?:\s*\d{1,2}(?:\s*m(?:ins?)?)?)?)(?=$|[\s,;.)])/i;
const DAY_IN_NOTE =
  /(?:^|[\s,;])(yesterday|today|tonight|last night|this (?:morning|afternoon|evening))(?=$|[\s,;.])/i;

/**
 * Picks a time and a day out of a note, where they were not said before.
 *
 * @example
 * fromNote('blue one, 95 min yesterday', { unit: 'in', today: '2026-12-03' }) // {"note":"blue one","minutes":95,"day":"2026-12-02"}
 * fromNote('blue ones, 95 min each', { unit: 'in', today: '2026-12-03' }) // {"note":"blue ones","minutes":95,"each":true}
 * fromNote('it took 95 min, the blue one', { unit: 'in', today: '2026-12-03' }) // {"note":"the blue one","minutes":95}
 * fromNote('and 20 min', { unit: 'in', today: '2026-12-03' }) // {"note":"","minutes":20}
 * fromNote('for the border', { unit: 'in', today: '2026-12-03' }) // {"note":"for the border"}
 */
export function fromNote(note: string, context: ReadingContext): FromNote {
  const time = TIME_IN_NOTE.exec(note);
  const minutes = time && minutesOption.take(time[1]!.trim(), context);
  const behind = time && minutes?.ok ? afterEach(note.slice(time.index + time[0].length).trimStart()) : null;
  const told = time && behind !== null ? `${note.slice(0, time.index + time[0].length)} ${behind}` : note;
  const left = time && minutes?.ok ? without(told, time) : note;
  const when = DAY_IN_NOTE.exec(left);
  const day = when && dayOption.take(when[1]!, context);
  return {
    note: when && day?.ok ? without(left, when) : left,
    ...(minutes?.ok ? { minutes: minutes.value.value } : {}),
    ...(behind === null ? {} : { each: true }),
    ...(day?.ok ? { day: day.value.value } : {}),
  };
}

/** What led up to the time or the day goes with it: "it took 95 min, the blue one". */
const LED_UP =
  /(?:^|[\s,;])(?:(?:and |and it |it |that |this |they )?(?:took(?: me)?|taking)(?: about| around| nearly)?|in|for|at|about|after|sewn|finished|from|and|plus|with)\s*$/i;

const without = (text: string, found: RegExpExecArray): string =>
  `${text.slice(0, found.index).replace(LED_UP, '')} ${text.slice(found.index + found[0].length)}`
    .replace(/\s+(?=[,;.]|$)|\s+(?=\s)/g, '')
    .replace(/[,;](?=[,;.])/g, '')
    .replace(/^[\s,;.]+|[\s,;]+$/g, '')
    .replace(/^(?:and|plus|&)\s+/i, '');
