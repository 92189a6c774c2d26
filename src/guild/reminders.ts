import { createHash } from 'node:crypto';
import { type Defaults, settle, WEEKDAYS } from '../chat/defaults.ts';
import type { Challenge } from './challenge-facts.ts';
import { dayAfter, daysBetween, weekdayOf } from './days.ts';
import { isWithin, loadTimeZones, localOf, momentOf, type TimeZones } from './local-time.ts';
import type { GuildStanding, Nudged, OpenSince } from './reminder-facts.ts';

/** What a reminder is about. */
export type About =
  | { readonly kind: 'begins' | 'last-days' | 'last-day' | 'digest'; readonly challenge: number }
  | { readonly kind: 'block'; readonly month: number; readonly slot: number }
  | { readonly kind: 'nudge' };

/** Something to say in a place, or there to one member, once. */
export interface Reminder {
  readonly guild: string;
  readonly place: string;
  /** Whom it is for; null for everyone in the place. */
  readonly member: string | null;
  readonly about: About;
  /** The day it belongs to, in the zone of those it is for. */
  readonly day: string;
  /** The same for the same reminder, whoever reckons it and when. */
  readonly once: string;
}

/** Later than this after its time a reminder is no news any more. */
const FRESH = 12 * 3_600_000;
/** Signs of a reminder's mark: enough that no two of them are alike. */
const MARK = 32;
/** A challenge that is shorter is not warned of its end. */
const WARNED_FROM = 7;
const WARNED_BEFORE = 3;

/**
 * The reminders whose time has come and that are still news, by each guild's own zone and hours, or for a
 * member's own by hers. Within quiet hours there is none: what falls into them comes when they end. It is the
 * caller's part to tell each once, by its `once`.
 */
export async function remindersDue(standing: readonly GuildStanding[], now: Date): Promise<Reminder[]> {
  if (standing.length === 0) return [];
  const zones = await loadTimeZones();
  return standing.flatMap((guild) => [
    ...roomReminders(zones, guild, now),
    ...ownReminders(zones, guild, now),
  ]);
}

/** A reminder with the moment before which nothing is news: when the thing was opened. */
type Dated = Omit<Reminder, 'once'> & { readonly since: string };

function roomReminders(zones: TimeZones, standing: GuildStanding, now: Date): Reminder[] {
  const settings = settle({}, standing.settings);
  if (settings.reminders.value === 'off') return [];
  // A reminder of yesterday may still be news this morning.
  const { day: today } = localOf(zones, now.getTime(), settings.zone.value);
  const days = [dayAfter(today, -1), today];
  const { guild } = standing;
  const dated = [
    ...standing.challenges.flatMap((open) => days.flatMap((day) => ofChallenge(guild, open, day, settings))),
    ...standing.months.flatMap(({ of, since, blocks }) =>
      blocks
        .filter(({ opens }) => days.includes(opens))
        .map(({ slot, opens }): Dated => {
          const about = { kind: 'block', month: of.number, slot } as const;
          return { guild, place: of.place, member: null, about, day: opens, since };
        }),
    ),
  ];
  return dated.filter((one) => isDue(zones, one, settings, now)).map(withOnce);
}

function ofChallenge(
  guild: string,
  { of, since }: OpenSince<Challenge>,
  day: string,
  { digest }: Defaults,
): Dated[] {
  const { number: challenge, first, last, place } = of;
  const left = last === null ? null : daysBetween(day, last);
  const long = last !== null && daysBetween(first, last) >= WARNED_FROM;
  const gone = daysBetween(first, day);
  const goesOn = gone > 0 && (left === null || left > -WARNED_FROM);
  const kinds = [
    gone === 0 ? 'begins' : null,
    left === 0 && gone > 0 ? 'last-day' : null,
    left === WARNED_BEFORE && long ? 'last-days' : null,
    digest.value === WEEKDAYS[weekdayOf(day)] && goesOn ? 'digest' : null,
  ] as const;
  return kinds.flatMap((kind) =>
    kind === null ? [] : [{ guild, place, member: null, about: { kind, challenge }, day, since }],
  );
}

function ownReminders(zones: TimeZones, standing: GuildStanding, now: Date): Reminder[] {
  return standing.nudged.flatMap((nudged) => {
    const settings = settle(nudged.settings, standing.settings);
    const { day: today } = localOf(zones, now.getTime(), settings.zone.value);
    return [dayAfter(today, -1), today]
      .filter((day) => wantsOn(settings, day))
      .map((day) => nudgeOn(standing.guild, nudged, settings, day))
      .filter((one) => isDue(zones, one, settings, now))
      .map(withOnce);
  });
}

const wantsOn = ({ nudge }: Defaults, day: string): boolean =>
  nudge.value === 'daily' || nudge.value === WEEKDAYS[weekdayOf(day)];

const nudgeOn = (guild: string, { member, since }: Nudged, { nudgePlace }: Defaults, day: string): Dated => ({
  ...{ guild, member, day, since },
  place: nudgePlace.value ?? '',
  about: { kind: 'nudge' },
});

/** Its time has come, it is still news, and nobody sleeps. */
function isDue(zones: TimeZones, { day, since }: Dated, settings: Defaults, now: Date): boolean {
  const zone = settings.zone.value;
  const moment = now.getTime();
  const from = awake(zones, momentOf(zones, day, settings.at.value, zone), settings);
  if (moment < from || moment >= from + FRESH || from < Date.parse(since)) return false;
  return !isWithin(localOf(zones, moment, zone).time, settings.quiet.value);
}

/** The moment itself, or the end of the quiet hours that it falls into. */
function awake(zones: TimeZones, moment: number, { quiet, zone }: Defaults): number {
  const { day, time } = localOf(zones, moment, zone.value);
  if (!isWithin(time, quiet.value)) return moment;
  const end = quiet.value.split('-')[1] ?? '00:00';
  return momentOf(zones, time < end ? day : dayAfter(day, 1), end, zone.value);
}

/** A mark that names nobody: platforms keep it longer than they keep a member. */
const marked = (of: readonly string[]): string =>
  createHash('sha256').update(JSON.stringify(of)).digest('base64url').slice(0, MARK);

function withOnce({ since: _, ...reminder }: Dated): Reminder {
  const { guild, about, member, day } = reminder;
  const of =
    'challenge' in about ? `challenge ${about.challenge}` : 'month' in about ? `month ${about.month}` : 'own';
  const slot = 'slot' in about ? ` ${about.slot}` : '';
  return { ...reminder, once: marked([guild, of + slot, about.kind, day, member ?? '']) };
}
