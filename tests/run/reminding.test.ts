import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import type { Reply } from '../../src/chat/reply.ts';
import type { Reminder } from '../../src/guild/reminders.ts';
import { tellDue } from '../../src/run/reminding.ts';
import { whereaboutsIn } from '../../src/run/whereabouts.ts';
import { type GuildRoom, guildRoom } from '../standin/guild-room.ts';

const folder = mkdtempSync(join(tmpdir(), 'honeycount-reminding-'));
const open: GuildRoom[] = [];
afterEach(async () => {
  for (const guild of open.splice(0)) await guild.store.close();
  rmSync(folder, { recursive: true, force: true });
});

async function room(): Promise<GuildRoom> {
  const guild = await guildRoom(join(folder, 'guild.sqlite'), '2026-11-20T12:00:00Z');
  open.push(guild);
  return guild;
}

/** What is told at a moment, and to whom. */
async function toldAt(guild: GuildRoom, now: string, may: (reminder: Reminder) => boolean = () => true) {
  const told: { reminder: Reminder; reply: Reply }[] = [];
  const faults: unknown[] = [];
  await tellDue({
    facts: guild.facts,
    now: () => new Date(now),
    tell: async (reminder, reply) => {
      if (may(reminder)) told.push({ reminder, reply });
      return may(reminder);
    },
    onFault: (error) => faults.push(error),
  });
  expect(faults).toEqual([]);
  return told;
}

const titles = (told: { reply: Reply }[]) => told.map(({ reply }) => reply.title);

describe('reminders are told', () => {
  test('once, also after the program was started anew', async () => {
    const guild = await room();
    await guild.ask('/guild set zone:Europe/Berlin');
    await guild.ask('/challenge open name:Spring goal:200 first:2026-12-01 last:2026-12-31');
    expect(titles(await toldAt(guild, '2026-12-01T07:59:00Z'))).toEqual([]);
    expect(titles(await toldAt(guild, '2026-12-01T08:00:00Z'))).toEqual(['Spring has begun']);
    expect(titles(await toldAt(guild, '2026-12-01T08:01:00Z'))).toEqual([]);
    await guild.store.close();
    open.pop();
    const again = await room();
    expect(titles(await toldAt(again, '2026-12-01T08:02:00Z'))).toEqual([]);
    expect(titles(await toldAt(again, '2026-12-31T08:00:00Z'))).toEqual(['Last day of Spring']);
  });

  test('after a crash while it was told, again soon with the same mark, and not once the platform may have forgotten it', async () => {
    const guild = await room();
    await guild.ask('/challenge open name:Spring goal:200 first:2026-12-01 last:2026-12-31');
    const crashed = new Promise<Reminder>((begun) => {
      void tellDue({
        facts: guild.facts,
        now: () => new Date('2026-12-01T09:00:00Z'),
        tell: (reminder) => {
          begun(reminder);
          return new Promise(() => {});
        },
        onFault: () => {},
      });
    });
    const { once } = await crashed;
    await guild.store.close();
    open.pop();
    const again = await room();
    expect(await toldAt(again, '2026-12-01T09:05:00Z')).toEqual([]);
    const told = await toldAt(again, '2026-12-01T09:02:00Z');
    expect(told.map(({ reminder }) => reminder.once)).toEqual([once]);
    expect(await toldAt(again, '2026-12-01T09:02:30Z')).toEqual([]);
  });

  test('with choices that anybody in the place may press', async () => {
    const guild = await room();
    await guild.ask('/challenge open name:Spring goal:200 first:2026-12-01 last:2026-12-31');
    await guild.ask('/month open name:Garden rosettes:7 rounds:2 parts:12 first:2026-12-01');
    await guild.ask('/challenge join', { as: 'Bea' });
    await guild.ask('/me set nudge:daily', { as: 'Bea' });
    const told = await toldAt(guild, '2026-12-01T09:00:00Z');
    expect(told).toHaveLength(3);
    for (const { reply } of told)
      for (const { ask, open } of reply.choices) {
        expect(open, ask).toBe(true);
        const pressed = await guild.ask(ask, { as: 'Cea', now: '2026-12-01T09:01:00Z' });
        expect(pressed.error, ask).toBeNull();
      }
    expect(told.flatMap(({ reply }) => reply.choices.map(({ label }) => label))).toContain('Log');
  });

  test('later, when the program was not running at the time', async () => {
    const guild = await room();
    await guild.ask('/challenge open name:Spring goal:200 first:2026-12-01 last:2026-12-31');
    expect(titles(await toldAt(guild, '2026-12-01T15:00:00Z'))).toEqual(['Spring has begun']);
  });

  test('again when the place could not be reached, or telling failed', async () => {
    const guild = await room();
    await guild.ask('/challenge open name:Spring goal:200 first:2026-12-01 last:2026-12-31');
    expect(await toldAt(guild, '2026-12-01T09:00:00Z', () => false)).toEqual([]);
    const faults: unknown[] = [];
    await tellDue({
      facts: guild.facts,
      now: () => new Date('2026-12-01T09:01:00Z'),
      tell: async () => {
        throw new Error('no connection');
      },
      onFault: (error) => faults.push(error),
    });
    expect(faults).toHaveLength(1);
    expect(titles(await toldAt(guild, '2026-12-01T09:02:00Z'))).toEqual(['Spring has begun']);
    expect(titles(await toldAt(guild, '2026-12-01T09:03:00Z'))).toEqual([]);
  });

  test('with the week’s sum and without a name in a digest', async () => {
    const guild = await room();
    await guild.ask('/challenge open name:Spring goal:200 first:2026-12-01 last:2026-12-31');
    for (const as of ['Bea', 'Cea'])
      await guild.ask('/log 4 day:2026-12-03', { as, now: '2026-12-04T10:00:00Z' });
    await guild.ask('/log 1 day:2026-12-07', { as: 'Bea', now: '2026-12-07T08:00:00Z' });
    const [digest] = await toldAt(guild, '2026-12-07T09:00:00Z');
    expect(digest?.reply.title).toBe('Spring, the week to 6 Dec 2026');
    expect(digest?.reply.lines).toEqual(['8 rosettes this week.', '9 of 200 rosettes.', '24 days to go.']);
    expect(JSON.stringify(digest?.reply)).not.toMatch(/Bea|Cea/);
  });

  test('to a member in the place where she asked, until she stops it', async () => {
    const guild = await room();
    await guild.ask('/challenge open name:Spring goal:200 each:4 first:2026-12-01 last:2026-12-31');
    await guild.ask('/me set nudge:daily at:18:00 zone:America/New_York', { as: 'Bea', place: 'dm' });
    await guild.ask('/log 1', { as: 'Bea', now: '2026-12-03T10:00:00Z' });
    const [nudge] = await toldAt(guild, '2026-12-03T23:00:00Z');
    expect(nudge?.reminder).toMatchObject({ place: 'dm', member: 'bea' });
    expect(nudge?.reply.title).toBe('Bea, your own reminder');
    expect(nudge?.reply.lines[0]).toBe('Spring: 1 of 4 rosettes of yours, until 31 Dec 2026.');
    expect(nudge?.reply.notes[0]).toContain('/me set nudge:off');
    await guild.ask('/me set nudge:off', { as: 'Bea', place: 'dm' });
    expect(await toldAt(guild, '2026-12-04T23:00:00Z')).toEqual([]);
  });

  test('of a block that opens, with what can be asked next', async () => {
    const guild = await room();
    await guild.ask('/month open name:Garden rosettes:7 rounds:2 parts:12 first:2026-12-01');
    const [block] = await toldAt(guild, '2026-12-01T09:00:00Z');
    expect(block?.reply.title).toBe('Garden: block 1 is open');
    const next = await guild.ask(block!.reply.choices[0]!.ask, { now: '2026-12-01T09:01:00Z' });
    expect(next.title).toBe('Garden, block 1');
  });

  test('not of what was closed meanwhile', async () => {
    const guild = await room();
    await guild.ask('/challenge open name:Spring goal:200 first:2026-12-01 last:2026-12-31');
    await guild.ask('/challenge close');
    expect(await toldAt(guild, '2026-12-01T09:00:00Z')).toEqual([]);
  });
});

test('which platform a guild is on is learned from its asks and kept', async () => {
  const guild = await room();
  const whereabouts = whereaboutsIn(guild.facts);
  expect(await whereabouts.platformOf('guild')).toBeUndefined();
  await whereabouts.heard('matrix', 'guild');
  await whereabouts.heard('matrix', 'guild');
  expect(await whereaboutsIn(guild.facts).platformOf('guild')).toBe('matrix');
});
