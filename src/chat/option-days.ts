import { ok, wrong } from '../measure/result.ts';
import type { Option } from './option.ts';

/** A time zone by its IANA name. */
export function zone(summary: string): Option<string, false> {
  return {
    kind: 'time zone',
    summary,
    example: 'Europe/London',
    bounds: 'a name such as Europe/London',
    shape: { as: 'words', longest: 60 },
    take(text) {
      const found = /^[A-Za-z][A-Za-z0-9_+/-]*/.exec(text)?.[0];
      if (!found) return null;
      const known = canonicalZone(found);
      return known
        ? ok({ value: known, rest: text.slice(found.length) })
        : wrong('zone-unknown', { got: found });
    },
    write: (value) => value,
  };
}

function canonicalZone(name: string): string | null {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone;
  } catch {
    return zoneOfCity(name);
  }
}

/** "Paris": the zone that is called after the city. */
function zoneOfCity(name: string): string | null {
  const end = `/${name.toLowerCase()}`;
  return Intl.supportedValuesOf('timeZone').find((zone) => zone.toLowerCase().endsWith(end)) ?? null;
}

/** The months, each cut short to three letters. */
export const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
/** A month by its whole name or cut short. */
export const MONTH_NAME =
  '(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)(?![a-z])\\.?';
const MONTH = `(${MONTH_NAME})`;
const A_DAY = '(\\d{1,2})(?:st|nd|rd|th)?(?!\\d)';
const YEAR = '(?:,? (\\d{4})(?!\\d))?';
const DAY_FIRST = new RegExp(`^${A_DAY} (?:of )?${MONTH}${YEAR}`, 'i');
const MONTH_FIRST = new RegExp(`^${MONTH} ${A_DAY}${YEAR}`, 'i');

/** "1 January", "Jan 1st, 2027": without a year the next one from today on. */
function spokenDay(text: string, today: string): { readonly iso: string; readonly length: number } | null {
  const first = DAY_FIRST.exec(text);
  const found = first ?? MONTH_FIRST.exec(text);
  if (!found) return null;
  const [all, one = '', other = '', year] = found;
  const [day, month] = first ? [one, other] : [other, one];
  const place = MONTHS.indexOf(month.slice(0, 3).toLowerCase()) + 1;
  const inYear = (y: string) => `${y}-${String(place).padStart(2, '0')}-${day.padStart(2, '0')}`;
  const thisYear = inYear(today.slice(0, 4));
  const next = thisYear >= today ? thisYear : inYear(String(Number(today.slice(0, 4)) + 1));
  return { iso: year ? inYear(year) : next, length: all.length };
}

const SLASHED = /^(\d{1,2})[/.](\d{1,2})[/.](\d{4})(?!\d)/;

/** "18/12/2026", where only one of the two can be the month. */
function slashedDay(text: string): { readonly iso: string; readonly length: number } | null {
  const [all = '', one = '', other = '', year] = SLASHED.exec(text) ?? [];
  const sure = Number(one) > 12 || Number(other) > 12 || Number(one) === Number(other);
  if (all === '' || !sure) return null;
  const [day, month] = Number(other) > 12 ? [other, one] : [one, other];
  return { iso: `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`, length: all.length };
}

/** A day: `2026-12-01`, `1 Dec`, today, tomorrow, yesterday. */
export function date(summary: string): Option<string, false> {
  return {
    kind: 'day',
    summary,
    example: '2026-12-01',
    bounds: 'such as 2026-12-01, 1 Dec, today, tomorrow',
    shape: { as: 'words', longest: 20 },
    take(text, { today }) {
      const word = /^(today|tomorrow|yesterday)\b/i.exec(text);
      if (word)
        return ok({
          value: shifted(today, DAY_WORDS[word[1]?.toLowerCase() ?? ''] ?? 0),
          rest: text.slice(word[0].length),
        });
      const spoken = spokenDay(text, today) ?? slashedDay(text);
      if (spoken)
        return shifted(spoken.iso, 0) === spoken.iso
          ? ok({ value: spoken.iso, rest: text.slice(spoken.length) })
          : wrong('day-unread', { got: text.slice(0, spoken.length) });
      const found = /^(\d{4})-(\d{1,2})-(\d{1,2})(?!\d)/.exec(text);
      if (!found) return null;
      const iso = `${found[1]}-${found[2]?.padStart(2, '0')}-${found[3]?.padStart(2, '0')}`;
      return shifted(iso, 0) === iso
        ? ok({ value: iso, rest: text.slice(found[0].length) })
        : wrong('day-unread', { got: found[0] });
    },
    write: (value) => value,
  };
}

const DAY_WORDS: Readonly<Record<string, number>> = { today: 0, tomorrow: 1, yesterday: -1 };

function shifted(iso: string, days: number): string {
  const moment = new Date(`${iso}T00:00:00Z`);
  if (Number.isNaN(moment.getTime())) return '';
  moment.setUTCDate(moment.getUTCDate() + days);
  return moment.toISOString().slice(0, 10);
}
