import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { reply } from '../../../src/chat/reply.ts';
import { openStore } from '../../../src/store/open.ts';
import type { WireEvent } from '../../standin/matrix/place.ts';
import { BOT } from '../../standin/matrix/standin.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';
import { fakeCommands } from '../discord/fake-commands.ts';
import { ADA, BEA, bodyOf, folderForBot, relationOf, running, said, standIn, until, Voice } from './bot.ts';

const place = async (needs: Parameters<typeof running>[0] = {}) => {
  const bot = await running(needs);
  const room = bot.standIn.makeRoom({ members: [ADA, BEA] });
  return { ...bot, room, ada: new Voice(bot.standIn, room, ADA), bea: new Voice(bot.standIn, room, BEA) };
};

const reminder = reply({
  title: 'Spring ends on 31 Dec 2026',
  lines: ['12 of 200 so far.', 'What is sewn and not logged yet: `/log`'],
  choices: [{ label: 'How far we are', ask: '/help cut', open: true }],
});

test('a reminder is a notice that answers nobody and means nobody; the same is said once, also after a restart', async () => {
  const kept = { standIn: await standIn(), facts: memoryFacts(), folder: folderForBot() };
  const bot = await place(kept);
  await bot.ada.settled();
  const before = bot.ada.sent().length;
  await bot.platform.tell(bot.room, reminder, 'spring last-days');
  await bot.platform.tell(bot.room, reminder, 'spring last-days');
  await bot.stop();
  const again = await running(kept);
  await again.platform.tell(bot.room, reminder, 'spring last-days');
  await bot.ada.settled();
  const told = bot.ada
    .sent()
    .slice(before)
    .filter((event) => bodyOf(event).startsWith('Spring ends'));
  expect(told).toHaveLength(1);
  expect(told[0]?.content).toMatchObject({ msgtype: 'm.notice', 'm.mentions': {} });
  expect(relationOf(told[0] as WireEvent)).toBeUndefined();
  expect(bodyOf(told[0] as WireEvent)).toContain('!log');
});

test('what is open to all may be pressed by anybody', async () => {
  const bot = await place();
  await bot.bea.settled();
  await bot.platform.tell(bot.room, reminder, 'spring last-days');
  const told = bot.ada.sent().find((event) => bodyOf(event).startsWith('Spring ends')) as WireEvent;
  bot.bea.react(told.event_id, '1️⃣');
  expect(bodyOf(await bot.bea.answerTo(told.event_id))).toMatch(/cut/);
});

test('a reminder where it may not speak is said, and is no fault', async () => {
  const bot = await place();
  await bot.ada.settled();
  const mute = bot.standIn.makeRoom({
    members: [ADA, BEA],
    levels: { users: { [ADA]: 100 }, events_default: 50 },
  });
  await expect(bot.platform.tell(mute, reminder, 'x')).resolves.toBeUndefined();
  expect(said(bot)).toEqual(['not allowed there']);
  expect(bot.counts.get('sends_refused_total')).toBe(1);
});

test('a board stands pinned and is changed in its place; taken away, a new one is put up', async () => {
  const { commands } = fakeCommands();
  const bot = await place({ commands });
  const { standIn: server, room, ada } = bot;
  server.put(room, {
    type: 'm.room.power_levels',
    sender: ADA,
    state_key: '',
    content: { users: { [ADA]: 100, [BOT]: 50 } },
  });
  const pinned = () => (server.room(room).stateOf('m.room.pinned_events')?.pinned ?? []) as string[];
  await ada.ask('!board');
  await until(() => pinned().length === 1, 'it is pinned');
  const [board = ''] = pinned();
  await ada.ask('!enter 3');
  await ada.ask('!board');
  const edits = () =>
    ada
      .sent()
      .filter(
        (event) => relationOf(event)?.event_id === board && relationOf(event)?.rel_type === 'm.replace',
      );
  await until(() => edits().length === 1, 'it is changed');
  expect(bodyOf(edits()[0] as WireEvent)).toMatch(/1 logged/);
  expect(pinned()).toEqual([board]);
  ada.redact(board);
  await ada.ask('!board');
  await until(() => pinned().length === 2, 'another is put up');
});

test('standings that stand in a challenge’s place follow every log, also one from elsewhere, and name nobody’s own', async () => {
  const bot = await place();
  const { standIn: server, room, ada, bea } = bot;
  server.put(room, {
    type: 'm.room.power_levels',
    sender: ADA,
    state_key: '',
    content: { users: { [ADA]: 100, [BOT]: 50 } },
  });
  const pinned = () => (server.room(room).stateOf('m.room.pinned_events')?.pinned ?? []) as string[];
  await ada.ask(
    '!challenge open name:Spring counting:rosette rounds:1 goal:40 first:2026-01-01 last:2036-01-01',
  );
  await bea.ask('!standings');
  await until(() => pinned().length === 1, 'the standings are pinned');
  const [board = ''] = pinned();
  const edits = () =>
    ada
      .sent()
      .filter(
        (event) => relationOf(event)?.event_id === board && relationOf(event)?.rel_type === 'm.replace',
      );
  await bea.ask('!log 3');
  await until(() => edits().length === 1, 'they follow a log');
  await ada.ask('!log 4');
  await until(() => edits().length === 2, 'they follow another');
  expect(bodyOf(edits()[1] as WireEvent)).toMatch(/7 of 40/);
  expect(bodyOf(edits()[1] as WireEvent)).not.toMatch(/Yours/);
  expect(pinned()).toEqual([board]);
});

test('where it may not pin, the board stands all the same', async () => {
  const { commands } = fakeCommands();
  const { ada, standIn: server, room } = await place({ commands });
  await ada.ask('!board');
  await until(
    () => ada.sent().filter((event) => bodyOf(event).startsWith('Board')).length === 2,
    'the board',
  );
  expect(server.room(room).stateOf('m.room.pinned_events')).toBeUndefined();
});

test('another sign before commands, and that sign alone', async () => {
  const bot = await place({ prefix: 'bee?' });
  const other = bot.ada.say('!help cut');
  expect(bodyOf(await bot.ada.ask('bee?help cut'))).toContain('bee?cut');
  expect(bot.ada.answersTo(other)).toEqual([]);
});

test('somebody who answers whatever it says is let go after a while, others are not', async () => {
  const bot = await place();
  for (let i = 0; i < 20; i++) {
    const ask = bot.bea.sayTo(`how many in a rosette of ${1 + (i % 5)} rounds?`);
    if (i < 12) await bot.bea.answerTo(ask);
  }
  await bot.ada.settled();
  expect(bodyOf(await bot.ada.answerTo(bot.ada.sayTo('how many in a rosette of 2 rounds?')))).toContain('19');
  const answered = bot.standIn
    .room(bot.room)
    .timeline.filter(({ event }) => event.sender === BEA && bot.bea.answersTo(event.event_id).length > 0);
  expect(answered).toHaveLength(12);
  expect(said(bot)).toEqual(['so many questions by name, or numbers, within a minute: not answered']);
});

test('whoever presses a number under whatever it says is let go too', async () => {
  const bot = await place();
  await bot.bea.settled();
  for (let i = 0; i < 20; i++) {
    await bot.platform.tell(bot.room, reminder, `spring ${i}`);
    const told = bot.ada.sent().findLast((event) => bodyOf(event).startsWith('Spring ends')) as WireEvent;
    bot.bea.react(told.event_id, '1️⃣');
    if (i < 12) await bot.bea.answerTo(told.event_id);
  }
  await bot.ada.settled();
  const pressed = bot.ada
    .sent()
    .filter((event) => bodyOf(event).startsWith('Spring ends'))
    .filter(({ event_id: told }) => bot.bea.answersTo(told).length > 0);
  expect(pressed).toHaveLength(12);
  expect(said(bot)).toEqual(['so many questions by name, or numbers, within a minute: not answered']);
});

test('a message whose key never comes gets one plain sentence for that key, which means its sender', async () => {
  const bot = await place();
  const room = bot.standIn.makeRoom({ members: [ADA, BEA], encrypted: true });
  const bea = new Voice(bot.standIn, room, BEA);
  const locked = (session: string, more: object = {}) =>
    bea.put('m.room.encrypted', {
      algorithm: 'm.megolm.v1.aes-sha2',
      ciphertext: 'AwgAEpABm6B4',
      session_id: session,
      ...more,
    });
  const [first, second] = ['first', 'second'].map(() => locked('a session that nobody shared'));
  // What it hangs on is not locked: said in a thread, it is answered there.
  const inThread = { rel_type: 'm.thread', event_id: first };
  const third = locked('another session', { 'm.relates_to': inThread });
  await until(() => bot.counts.get('undecryptable_total') === 3, 'all are given up', 40);
  await until(() => bea.sent().length > 1, 'the sentences');
  await bot.ada.settled();
  expect([...bea.answersTo(first ?? ''), ...bea.answersTo(second ?? '')]).toHaveLength(1);
  expect(bea.answersTo(third).map(relationOf)).toMatchObject([inThread]);
  expect(bea.sent()[0]?.type).toBe('m.room.encrypted');
  // Somebody waiting for her key does not keep others waiting.
  expect(said(bot).filter((words) => words !== 'a message could not be decrypted')).toEqual([]);
});

test('a reply too long for one message: the lines that fit, and the whole in a file', async () => {
  const { commands } = fakeCommands();
  const bot = await place({ commands });
  const ask = bot.ada.say('!long rows:1000');
  const isFile = ({ content }: WireEvent) => content.msgtype === 'm.file';
  await until(() => bot.ada.answersTo(ask).some(isFile), 'the file');
  const [words, file] = bot.ada.answersTo(ask);
  expect(bodyOf(words as WireEvent)).toMatch(/^Long Long[\s\S]*\n…\nThe rest is in the file below\.$/);
  expect(file?.content).toMatchObject({ filename: 'answer.txt', info: { mimetype: 'text/plain' } });
  const whole = bot.standIn.uploads.get(String(file?.content.url))?.bytes.toString('utf8') ?? '';
  for (let i = 0; i < 1000; i++) expect(whole).toContain(`row ${i} | value ${i}`);
  // An edit holds the words twice, and must fit too.
  bot.ada.edit(ask, '!long rows:999');
  await until(() => bot.ada.sent().some((event) => relationOf(event)?.rel_type === 'm.replace'), 'the edit');
});

/** A bot that keeps its facts in a file, and what is to be read in it. */
async function placeOnDisk() {
  const folder = folderForBot();
  const store = await openStore(join(folder, 'guild.sqlite'));
  if (!store.ok) throw new Error(store.problem.code);
  const bot = await place({ facts: store.value, folder });
  const kept = () =>
    readdirSync(folder)
      .filter((name) => name.startsWith('guild.sqlite'))
      .map((name) => readFileSync(join(folder, name), 'latin1'))
      .join('');
  const end = async () => {
    await bot.ada.settled();
    await bot.stop();
    await store.value.close();
  };
  return { bot, kept, end };
}

test('who is forgotten is in nothing that the bot keeps, though it answers her afterwards where she alone reads it', async () => {
  const { bot, kept, end } = await placeOnDisk();
  await bot.bea.ask('!me set seam:3/8in');
  await bot.bea.ask('!cut hexagon 4in');
  expect(kept()).toContain(BEA);
  await bot.bea.ask('!me forget confirm:yes');
  await end();
  expect(kept()).not.toContain(BEA);
});

test('nor is the room that is opened to tell her so', async () => {
  const { bot, kept, end } = await placeOnDisk();
  await bot.bea.ask('!cut hexagon 4in');
  await bot.bea.ask('!me forget confirm:yes');
  expect(bot.standIn.asked('createRoom')).toHaveLength(1);
  await end();
  expect(kept()).not.toContain(BEA);
});

test('an answer that is still on its way when she is forgotten keeps nothing of her afterwards', async () => {
  const { bot, kept, end } = await placeOnDisk();
  await bot.bea.ask('!me set seam:3/8in');
  const held = { status: 429, body: { errcode: 'M_LIMIT_EXCEEDED', error: 'x', retry_after_ms: 500 } };
  bot.standIn.next(
    ({ operation, parts: [room] }) => operation === 'sendMessage' && room === bot.room,
    held,
    2,
  );
  const question = bot.bea.say('!cut hexagon 4in');
  const forget = bot.bea.say('!me forget confirm:yes');
  await bot.bea.answerTo(question);
  await bot.bea.answerTo(forget);
  await end();
  expect(kept()).not.toContain(BEA);
});
