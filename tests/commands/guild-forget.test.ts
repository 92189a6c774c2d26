import { expect, test } from 'vitest';
import { guildRoom } from '../standin/guild-room.ts';

const OPEN = '/challenge open name:Spring counting:rosette rounds:2 goal:200 first:2026-12-01';

test('a guild is forgotten whole by an organiser who says so twice, and no other with it', async () => {
  const { ask } = await guildRoom();
  for (const guild of ['guild', 'other'])
    for (const words of [OPEN, '/log 3', '/guild set width:40in', '/me set unit:cm'])
      expect((await ask(words, { guild })).error, words).toBeNull();
  expect((await ask('/guild forget confirm:yes', { as: 'Bea' })).error?.code).toBe('organisers-only');
  const [yes, no] = (await ask('/guild forget')).choices;
  expect((await ask(no?.ask ?? '')).title).toBe('Kept');
  expect((await ask('/standings')).figures.total?.value).toBe(3);
  expect((await ask(yes?.ask ?? '', { event: 'e1' })).title).toBe('Forgotten');
  expect((await ask('/standings')).error).not.toBeNull();
  expect((await ask('/guild')).table?.rows).toContainEqual(['width', '42 in', 'usual']);
  expect((await ask('/me')).table?.rows).toContainEqual(['unit', 'in', 'usual']);
  expect((await ask('/standings', { guild: 'other' })).figures.total?.value).toBe(3);
});
