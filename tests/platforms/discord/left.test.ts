import { expect, test } from 'vitest';
import { forgetLeft, noteJoined, noteLeft } from '../../../src/platforms/discord/left.ts';
import { opened } from '../../store/places.ts';

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
