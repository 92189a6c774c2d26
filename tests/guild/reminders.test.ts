import { beforeAll, describe, expect, test } from 'vitest';
import type { KeptDefaults } from '../../src/chat/defaults.ts';
import type { Challenge } from '../../src/guild/challenge-facts.ts';
import { isWithin, loadTimeZones, localOf, momentOf, type TimeZones } from '../../src/guild/local-time.ts';
import type { Month, MonthBlock } from '../../src/guild/month-facts.ts';
import type { GuildStanding } from '../../src/guild/reminder-facts.ts';
import { remindersDue } from '../../src/guild/reminders.ts';

const HOUR = 3_600_000;
const LONG_AGO = '2020-01-01T00:00:00.000Z';

const challenge = (more: Partial<Challenge> = {}): Challenge => ({
  ...{ guild: 'guild', number: 1, name: 'Spring', counting: 'rosette', rounds: 2, size: 1 },
  ...{
    goal: 200,
    each: null,
    first: '2026-03-02',
    last: '2026-03-31',
    place: 'home',
    who: 'everyone',
    plan: null,
  },
  ...{ open: true, total: 57, lines: 60 },
  ...more,
});

const standing = (settings: KeptDefaults, more: Partial<GuildStanding> = {}): GuildStanding => ({
  guild: 'guild',
  settings,
  challenges: [{ of: challenge(), since: LONG_AGO }],
  months: [],
  nudged: [],
  ...more,
});

/** When each reminder is due, looking every quarter of an hour: its kind and day, and the first moment. */
async function whenDue(of: GuildStanding, from: string, to: string): Promise<[string, string][]> {
  const first = new Map<string, string>();
  for (let at = Date.parse(from); at < Date.parse(to); at += HOUR / 4)
    for (const one of await remindersDue([of], new Date(at)))
      if (!first.has(one.once))
        first.set(one.once, `${one.about.kind} ${one.day} ${new Date(at).toISOString().slice(0, 16)}Z`);
  return [...first].map(([once, words]) => [once, words]);
}

const words = async (...given: Parameters<typeof whenDue>) =>
  (await whenDue(...given)).map(([, said]) => said);

describe('reminders come at the guild’s own time of day', () => {
  test('beginning, three days before the end, the last day, and a digest each Monday', async () => {
    expect(
      await words(standing({ zone: 'Europe/London' }), '2026-03-01T00:00Z', '2026-04-10T00:00Z'),
    ).toEqual([
      'begins 2026-03-02 2026-03-02T09:00Z',
      'digest 2026-03-09 2026-03-09T09:00Z',
      'digest 2026-03-16 2026-03-16T09:00Z',
      'digest 2026-03-23 2026-03-23T09:00Z',
      'last-days 2026-03-28 2026-03-28T09:00Z',
      'digest 2026-03-30 2026-03-30T08:00Z',
      'last-day 2026-03-31 2026-03-31T08:00Z',
      'digest 2026-04-06 2026-04-06T08:00Z',
    ]);
  });

  // The days on which clocks change, from the time zone database: 9:00 stays 9:00 for those who live there.
  test.each([
    ['Europe/Berlin', '2026-03-28', '08:00', '07:00'],
    ['Europe/Berlin', '2026-10-24', '07:00', '08:00'],
    ['America/New_York', '2026-03-07', '14:00', '13:00'],
    ['America/New_York', '2026-10-31', '13:00', '14:00'],
    ['Australia/Lord_Howe', '2026-04-04', '22:00', '22:30'],
    ['Pacific/Chatham', '2026-09-26', '20:15', '19:15'],
    ['Asia/Kolkata', '2026-03-28', '03:30', '03:30'],
  ])('%s over %s', async (zone, before, utcBefore, utcAfter) => {
    const zones = await loadTimeZones();
    const utc = (moment: number) => new Date(moment).toISOString().slice(11, 16);
    const next = new Date(Date.parse(before) + 24 * HOUR).toISOString().slice(0, 10);
    expect(utc(momentOf(zones, before, '09:00', zone))).toBe(utcBefore);
    expect(utc(momentOf(zones, next, '09:00', zone))).toBe(utcAfter);
  });

  test('a time that the clocks jump over comes once, later by the jump; one that comes twice, once', async () => {
    const at = { zone: 'Europe/Berlin', at: '02:30', quiet: 'off' };
    const spring = standing(at, {
      challenges: [{ of: challenge({ first: '2026-03-29' }), since: LONG_AGO }],
    });
    expect(await words(spring, '2026-03-28T12:00Z', '2026-03-29T12:00Z')).toEqual([
      'begins 2026-03-29 2026-03-29T01:30Z',
    ]);
    const autumn = challenge({ first: '2026-10-25', last: null });
    const twice = standing(at, { challenges: [{ of: autumn, since: LONG_AGO }] });
    expect(await words(twice, '2026-10-24T12:00Z', '2026-10-25T12:00Z')).toEqual([
      'begins 2026-10-25 2026-10-25T00:30Z',
    ]);
  });

  test('midnight where the day begins at one: the first moment that there is', async () => {
    const at = { zone: 'Africa/Cairo', at: '00:00', quiet: 'off' };
    const of = challenge({ first: '2026-04-24', last: null });
    const cairo = standing(at, { challenges: [{ of, since: LONG_AGO }] });
    expect(await words(cairo, '2026-04-23T00:00Z', '2026-04-24T12:00Z')).toEqual([
      'begins 2026-04-24 2026-04-23T22:00Z',
    ]);
  });
});

describe('when nothing is said', () => {
  test('a guild that has stopped reminders has none; one without a digest has no digest', async () => {
    expect(await words(standing({ reminders: 'off' }), '2026-03-01T00:00Z', '2026-04-10T00:00Z')).toEqual([]);
    const said = await words(standing({ digest: 'off' }), '2026-03-01T00:00Z', '2026-04-10T00:00Z');
    expect(said.filter((one) => one.startsWith('digest'))).toEqual([]);
    expect(said).toHaveLength(3);
  });

  test('in quiet hours; what falls into them comes when they end', async () => {
    const early = standing({ at: '06:00', quiet: '21:00-08:00', digest: 'off' });
    expect(await words(early, '2026-03-01T00:00Z', '2026-03-03T00:00Z')).toEqual([
      'begins 2026-03-02 2026-03-02T08:00Z',
    ]);
    const late = standing({ at: '22:30', quiet: '21:00-08:00', digest: 'off' });
    expect(await words(late, '2026-03-01T00:00Z', '2026-03-04T00:00Z')).toEqual([
      'begins 2026-03-02 2026-03-03T08:00Z',
    ]);
  });

  test('more than half a day late it is no news; and what was before it was opened never was', async () => {
    const of = standing({ digest: 'off' });
    expect(await remindersDue([of], new Date('2026-03-02T20:45:00Z'))).toHaveLength(1);
    expect(await remindersDue([of], new Date('2026-03-02T21:00:00Z'))).toEqual([]);
    const justOpened = standing({}, { challenges: [{ of: challenge(), since: '2026-03-02T15:00:00Z' }] });
    expect(await remindersDue([justOpened], new Date('2026-03-02T15:01:00Z'))).toEqual([]);
  });
});

describe('blocks and nudges', () => {
  const month: Month = {
    ...{ guild: 'guild', number: 2, name: 'Garden', of: 'a garden', size: 1, first: '2026-03-02' },
    ...{ every: 'month', place: 'blocks', open: true },
  };
  const block = (slot: number, opens: string): MonthBlock => ({
    ...{
      slot,
      opens,
      block: slot,
      words: 'rosette 1',
      pieces: [],
      inside: 40,
      joining: 3,
      width: 9,
      height: 9,
    },
  });

  test('a block is announced in its place on its day', async () => {
    const blocks = [block(1, '2026-03-02'), block(2, '2026-04-02')];
    const of = standing(
      { zone: 'America/Chicago' },
      { challenges: [], months: [{ of: month, since: LONG_AGO, blocks }] },
    );
    const [due] = await remindersDue([of], new Date('2026-04-02T14:00:00Z'));
    expect(due).toMatchObject({ place: 'blocks', member: null, about: { kind: 'block', month: 2, slot: 2 } });
    expect(await words(of, '2026-03-01T00:00Z', '2026-04-10T00:00Z')).toEqual([
      'block 2026-03-02 2026-03-02T15:00Z',
      'block 2026-04-02 2026-04-02T14:00Z',
    ]);
  });

  test('a member is nudged by her own day, hour and zone, in the place where she asked for it', async () => {
    const nudged = [
      {
        member: 'bea',
        settings: { nudge: 'sunday', nudgePlace: 'dm', zone: 'Australia/Sydney', at: '18:00' } as const,
        since: LONG_AGO,
      },
    ];
    const of = standing({ zone: 'Europe/London', reminders: 'off' }, { nudged });
    const due = await whenDue(of, '2026-04-01T00:00Z', '2026-04-14T00:00Z');
    expect(due.map(([, said]) => said)).toEqual([
      'nudge 2026-04-05 2026-04-05T08:00Z',
      'nudge 2026-04-12 2026-04-12T08:00Z',
    ]);
    const [one] = await remindersDue([of], new Date('2026-04-05T08:00:00Z'));
    expect(one).toMatchObject({ member: 'bea', place: 'dm' });
  });

  test('one who has not asked is not nudged', async () => {
    const nudged = [{ member: 'bea', settings: { nudge: 'off' } as const, since: LONG_AGO }];
    expect(
      await remindersDue([standing({ reminders: 'off' }, { nudged })], new Date('2026-03-08T09:00:00Z')),
    ).toEqual([]);
  });
});

describe('hours of a zone', () => {
  let zones: TimeZones;
  beforeAll(async () => {
    zones = await loadTimeZones();
  });

  test('quiet hours go past midnight, and their end is outside', () => {
    expect(
      ['20:59', '21:00', '00:00', '07:59', '08:00'].map((time) => isWithin(time, '21:00-08:00')),
    ).toEqual([...[false, true, true, true, false]]);
    expect(isWithin('13:00', '12:00-14:00')).toBe(true);
    expect(isWithin('13:00', 'off')).toBe(false);
  });

  test('the day and hour somewhere are what the platform’s own calendar says', () => {
    for (const zone of ['Asia/Kathmandu', 'America/St_Johns', 'Pacific/Kiritimati', 'America/Sao_Paulo'])
      for (const at of ['2026-03-08T09:59:00Z', '2026-11-01T05:30:00Z', '2026-12-31T23:30:00Z']) {
        const parts = new Intl.DateTimeFormat('sv-SE', {
          timeZone: zone,
          dateStyle: 'short',
          timeStyle: 'short',
        });
        const { day, time } = localOf(zones, Date.parse(at), zone);
        expect(`${day} ${time}`).toBe(parts.format(new Date(at)));
      }
  });
});
