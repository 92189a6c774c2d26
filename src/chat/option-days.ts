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
    return null;
  }
}

/** A day: `2026-12-01`, today, tomorrow, yesterday. */
export function date(summary: string): Option<string, false> {
  return {
    kind: 'day',
    summary,
    example: '2026-12-01',
    bounds: 'such as 2026-12-01, today, tomorrow',
    shape: { as: 'words', longest: 20 },
    take(text, { today }) {
      const word = /^(today|tomorrow|yesterday)\b/i.exec(text);
      if (word)
        return ok({
          value: shifted(today, DAY_WORDS[word[1]?.toLowerCase() ?? ''] ?? 0),
          rest: text.slice(word[0].length),
        });
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
