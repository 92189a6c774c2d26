import { WEEKDAYS } from '../src/chat/defaults.ts';
import type { Option } from '../src/chat/option.ts';
import { choice } from '../src/chat/option-kinds.ts';
import { ok, wrong } from '../src/measure/result.ts';

const CLOCK = /^(\d{1,2})(?:[:.](\d{2}))?\s*(am|pm)?(?![\d:a-z])/i;

/** A time of day read off the front of a text, HH:MM; null where there is none. */
function takeClock(text: string): { value: string; rest: string } | null {
  const found = CLOCK.exec(text);
  if (!found) return null;
  const [all, hour, minute = '00', half] = found;
  const hours = (Number(hour) % (half ? 12 : 24)) + (half?.toLowerCase() === 'pm' ? 12 : 0);
  if (Number(hour) > (half ? 12 : 24) || Number(minute) > 59) return null;
  return { value: `${String(hours).padStart(2, '0')}:${minute}`, rest: text.slice(all.length) };
}

/** A time of day: `9`, `9:30`, `21:00`, `8 pm`. */
const timeOfDay = (summary: string): Option<string, false> => ({
  kind: 'time of day',
  summary,
  example: '9:00',
  bounds: 'such as 9:00, 18:30',
  shape: { as: 'words', longest: 10 },
  take: (text) => {
    const taken = takeClock(text);
    return taken && ok(taken);
  },
  write: (value) => value,
});

/** Hours from one time of day to another, past midnight or not: `21:00-8:00`; or `off`. */
const hoursBetween = (summary: string): Option<string, false> => ({
  kind: 'stretch of hours',
  summary,
  example: '21:00-8:00',
  bounds: 'such as 21:00-8:00, or off',
  shape: { as: 'words', longest: 20 },
  take(text) {
    const off = /^(?:off|none|never)\b/i.exec(text);
    if (off) return ok({ value: 'off', rest: text.slice(off[0].length) });
    const from = takeClock(text);
    const between = from && /^\s*(?:-|to|until|till)\s*/i.exec(from.rest);
    const to = between && takeClock(from.rest.slice(between[0].length));
    if (!from || !to) return null;
    if (from.value === to.value) return wrong('hours-all-day', { got: from.value });
    return ok({ value: `${from.value}-${to.value}`, rest: to.rest });
  },
  write: (value) => value,
});

const days = WEEKDAYS.map((name) => ({ name, title: `each ${name}`, words: [name.slice(0, 3)] }));
const off = { name: 'off', title: 'not at all', words: ['never', 'stop', 'no'] } as const;

const clockOptions = {
  at: timeOfDay('When reminders come'),
  quiet: hoursBetween('Hours without any reminder'),
};

/** What a guild may choose of what it does together. */
export const guildLifeOptions = {
  standings: choice('How members stand in standings', [
    { name: 'unranked', title: 'by name' },
    { name: 'ranked', title: 'the most first' },
    { name: 'totals', title: 'the total alone', words: ['totals only', 'none'] },
  ]),
  openers: choice('Who opens, edits and closes challenges and months', [
    { name: 'organisers', title: 'organisers', words: ['organizers'] },
    { name: 'everyone', title: 'everyone', words: ['all'] },
  ]),
  reminders: choice('Whether rooms are reminded of what opens and ends', [
    { name: 'on', title: 'yes', words: ['yes'] },
    { name: 'off', title: 'no', words: ['no', 'stop', 'none'] },
  ]),
  digest: choice('The day that a challenge’s week is summed up', [...days, off]),
  ...clockOptions,
};

/** What a member may choose of it for herself. */
export const ownLifeOptions = {
  nudge: choice('A reminder of your own, here', [off, { name: 'daily', title: 'each day' }, ...days]),
  ...clockOptions,
};

/** What a member reads of each, where it has been set. */
export const LIFE_WORDS = ['standings', 'openers', 'reminders', 'digest', 'nudge', 'at', 'quiet'] as const;
