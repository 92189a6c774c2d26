import { expect, test } from 'vitest';
import { BOT } from '../../standin/matrix/standin.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';
import { ADA, BEA, bodyOf, folderForBot, running, said, standIn, until, Voice } from './bot.ts';

/** A room in which the bot is not. */
function roomWithout(place: Awaited<ReturnType<typeof standIn>>, members: readonly string[]): string {
  const room = place.makeRoom({ members });
  place.put(room, { type: 'm.room.member', sender: BOT, state_key: BOT, content: { membership: 'leave' } });
  return room;
}

const STRANGER = '@eve:elsewhere.test';

test.each<[what: string, by: string, inviteFrom: string[], taken: boolean]>([
  ['of a server that is named', ADA, ['bees.test'], true],
  ['of a person who is named', STRANGER, ['bees.test', STRANGER], true],
  ['of nobody who is named', STRANGER, ['bees.test', ADA], false],
  ['where nobody is named', ADA, [], false],
  ['of another on the server of a person', BEA, [ADA], false],
  ['of a server that only ends so', '@eve:notbees.test', ['bees.test'], false],
  ['of a server that only begins so', '@eve:bees.test.elsewhere.test', ['bees.test'], false],
  ['of a server with a port', '@eve:bees.test:8448', ['bees.test:8448'], true],
  ['of a person who names a server as her own', '@bees.test:elsewhere.test', ['bees.test'], false],
])('an invitation %s', async (_what, by, inviteFrom, taken) => {
  const bot = await running({ inviteFrom });
  const { standIn: place } = bot;
  const room = roomWithout(place, [by, BEA]);
  place.invite(room, by);
  const done = taken ? 'join' : 'leave';
  await until(() => place.room(room).membershipOf(BOT) === done, done);
  if (taken) expect(bodyOf(await new Voice(place, room, by).ask('!help'))).toMatch(/What I can work out/);
  expect(place.asked(taken ? 'joinRoom' : 'leaveRoom')).toHaveLength(1);
  expect(said(bot)).toEqual([]);
});

test('what was said before it came in is not for it', async () => {
  const bot = await running();
  const { standIn: place } = bot;
  const room = roomWithout(place, [ADA, BEA]);
  const ada = new Voice(place, room, ADA);
  const before = ada.say('!help cut', {}, Date.now() - 1000);
  place.invite(room, ADA);
  await until(() => place.room(room).membershipOf(BOT) === 'join', 'it joins');
  await ada.settled();
  expect(ada.answersTo(before)).toEqual([]);
});

test('asked in while it was away, it comes in at the next start; once', async () => {
  const kept = { standIn: await standIn(), facts: memoryFacts(), folder: folderForBot() };
  await (await running(kept)).stop();
  const room = roomWithout(kept.standIn, [ADA, BEA]);
  kept.standIn.invite(room, ADA);
  const bot = await running(kept);
  await until(() => kept.standIn.room(room).membershipOf(BOT) === 'join', 'it joins');
  await bot.stop();
  const again = await running(kept);
  await new Voice(kept.standIn, room, ADA).settled();
  expect(kept.standIn.asked('joinRoom')).toHaveLength(1);
  expect(said(again)).toEqual([]);
});

test('an invitation that comes to nothing is said once', async () => {
  const bot = await running();
  const { standIn: place } = bot;
  const room = roomWithout(place, [ADA, BEA]);
  place.next('joinRoom', { status: 404, body: { errcode: 'M_NOT_FOUND', error: 'gone' } }, 10);
  place.invite(room, ADA);
  await until(() => said(bot).length > 0, 'it is said');
  const other = new Voice(place, place.makeRoom({ members: [ADA, BEA] }), ADA);
  await other.settled();
  expect(said(bot)).toEqual(['not allowed there']);
  expect(place.asked('joinRoom')).toHaveLength(1);
});

test('it is asked in again after it was put out, and the guild’s facts are still there', async () => {
  const bot = await running();
  const { standIn: place } = bot;
  const room = place.makeRoom({ members: [ADA, BEA] });
  const ada = new Voice(place, room, ADA);
  await ada.ask('!guild set seam:3/8in');
  place.put(room, { type: 'm.room.member', sender: ADA, state_key: BOT, content: { membership: 'leave' } });
  await until(() => bot.counts.get('rooms_left_total') === 1, 'it is out');
  expect(await bot.facts.notes.find('matrix', `left:${room}`)).toBeDefined();
  place.invite(room, ADA);
  await until(() => place.room(room).membershipOf(BOT) === 'join', 'it joins');
  expect(bodyOf(await ada.ask('!cut hexagon 1in'))).toMatch(/the guild’s 3\/8 in seam/);
  expect(await bot.facts.notes.find('matrix', `left:${room}`)).toBeUndefined();
});

test('a room left a month ago is forgotten at the next start', async () => {
  const kept = { standIn: await standIn(), facts: memoryFacts(), folder: folderForBot() };
  const bot = await running(kept);
  const room = kept.standIn.makeRoom({ members: [ADA, BEA] });
  const ada = new Voice(kept.standIn, room, ADA);
  await ada.ask('!guild set seam:3/8in');
  kept.standIn.put(room, {
    type: 'm.room.member',
    sender: ADA,
    state_key: BOT,
    content: { membership: 'leave' },
  });
  await until(() => bot.counts.get('rooms_left_total') === 1, 'it is out');
  await bot.stop();
  const seam = async () => (await kept.facts.defaults.read(room, '')).seam;
  expect(await seam()).toBeDefined();
  const later = await running({ ...kept, now: () => new Date(Date.now() + 31 * 24 * 60 * 60 * 1000) });
  await until(() => said(later, ['info']).includes('forgot a room that was left'), 'it is forgotten');
  expect(await seam()).toBeUndefined();
});
