import { expect, test } from 'vitest';
import { forgetLeft, noteChanges, noteJoined, noteLeft } from '../../../src/platforms/discord/left.ts';
import { GUILD } from '../../standin/discord/standin.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';
import { opened } from '../../store/places.ts';
import { standIn as openStandIn, running } from './bot.ts';

test('a guild that was left is forgotten after a month, not before, and not when it came back', async () => {
  let now = new Date('2026-11-01T00:00:00Z');
  const facts = await opened(':memory:', { now: () => now });
  const log = { debug() {}, info() {}, warn() {}, error() {} };
  const needs = { facts, log, now: () => now };
  for (const guild of ['100', '200']) await facts.defaults.set(guild, 'ada', { unit: 'cm' });
  await noteLeft('100', needs);
  await noteLeft('200', needs);
  await noteJoined('200', needs);
  now = new Date('2026-11-20T00:00:00Z');
  await forgetLeft(new Date('2026-10-21T00:00:00Z'), needs);
  expect(await facts.defaults.read('100', 'ada')).toEqual({ unit: 'cm' });
  now = new Date('2026-12-05T00:00:00Z');
  await forgetLeft(new Date('2026-11-05T00:00:00Z'), needs);
  expect(await facts.defaults.read('100', 'ada')).toEqual({});
  expect(await facts.defaults.read('200', 'ada')).toEqual({ unit: 'cm' });
  expect(await facts.notes.find('discord', 'left:100')).toBeUndefined();
});

test('a guild that was left while the bot was away is noticed when it is back', async () => {
  let now = new Date('2026-11-01T00:00:00Z');
  const facts = await opened(':memory:', { now: () => now });
  const log = { debug() {}, info() {}, warn() {}, error() {} };
  const needs = { facts, log, now: () => now };
  await noteChanges(new Set(['100', '200']), needs);
  for (const guild of ['100', '200']) await facts.defaults.set(guild, 'ada', { unit: 'cm' });
  now = new Date('2026-11-10T00:00:00Z');
  await noteChanges(new Set(['200', '300']), needs);
  now = new Date('2026-11-20T00:00:00Z');
  await noteChanges(new Set(['200', '300']), needs);
  await forgetLeft(new Date('2026-11-11T00:00:00Z'), needs);
  expect(await facts.defaults.read('100', 'ada')).toEqual({});
  expect(await facts.defaults.read('200', 'ada')).toEqual({ unit: 'cm' });
});

/** Waits until something holds of what is kept. */
async function comes(holds: () => Promise<boolean>): Promise<void> {
  for (let i = 0; i < 400 && !(await holds()); i++) await new Promise((done) => setTimeout(done, 10));
  expect(await holds()).toBe(true);
}

test('told by the platform: leaving keeps what there is for a month, an outage is no leaving', async () => {
  const standIn = await openStandIn();
  const facts = memoryFacts();
  let now = new Date();
  const begin = () => running({ standIn, facts, now: () => now });
  const isLeft = async () => (await facts.notes.find('discord', `left:${GUILD.id}`)) !== undefined;
  await facts.defaults.set(GUILD.id, 'ada', { unit: 'cm' });
  const first = await begin();
  standIn.gateway.dispatch('GUILD_DELETE', { id: GUILD.id, unavailable: true });
  standIn.gateway.dispatch('GUILD_DELETE', { id: '100000000000000777' });
  await new Promise((done) => setTimeout(done, 50));
  expect(await isLeft()).toBe(false);
  standIn.gateway.dispatch('GUILD_DELETE', { id: GUILD.id });
  await comes(isLeft);
  expect(await facts.defaults.read(GUILD.id, 'ada')).toEqual({ unit: 'cm' });
  await first.platform.stop();
  standIn.gateway.guilds = [];
  now = new Date(now.getTime() + 31 * 24 * 60 * 60 * 1000);
  await begin();
  await comes(async () => (await facts.defaults.read(GUILD.id, 'ada')).unit === undefined);
  expect(standIn.faults).toEqual([]);
});
