import { expect, it } from 'vitest';
import { opened } from './places.ts';

it('forgets all of one guild and nothing of another', async () => {
  const store = await opened(':memory:');
  for (const guild of ['g1', 'g2']) {
    await store.defaults.set(guild, 'ada', { unit: 'cm' });
    await store.defaults.set(guild, '', { width: 40 });
    await store.answered.keep(guild, 'e1', { member: 'ada', command: 'cut', reply: { title: guild } });
    await store.notes.keep('discord', `choice:${guild}`, { ask: '/help' }, { guild, member: 'ada' });
  }
  for (const guild of ['g1', 'g2']) {
    const terms = {
      counting: 'rosette',
      rounds: 2,
      size: 1,
      goal: 3,
      each: null,
      first: '2026-12-01',
    } as const;
    await store.challenges.add(guild, {
      ...{ name: 'Spring', last: null, place: 'here', who: 'everyone', plan: null, ...terms },
    });
  }
  await store.notes.keep('discord', 'left:g1', { guild: 'g1' });
  await store.forgetGuild('g1');
  expect(await store.defaults.read('g1', 'ada')).toEqual({});
  expect(await store.defaults.read('g1', '')).toEqual({});
  expect(await store.challenges.all('g1')).toEqual([]);
  expect(await store.challenges.all('g2')).toHaveLength(1);
  expect(await store.answered.find('g1', 'e1')).toBeUndefined();
  expect(await store.notes.find('discord', 'choice:g1')).toBeUndefined();
  expect(await store.defaults.read('g2', 'ada')).toEqual({ unit: 'cm' });
  expect(await store.answered.find('g2', 'e1')).toBeDefined();
  expect(await store.notes.find('discord', 'choice:g2')).toBeDefined();
  expect(await store.notes.find('discord', 'left:g1')).toBeDefined();
});
