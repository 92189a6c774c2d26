import { afterEach, expect, test, vi } from 'vitest';
import { BOT } from '../../standin/matrix/standin.ts';
import { ADA, BEA, bodyOf, type Running, running, said, standIn, until, Voice } from './bot.ts';

async function place(
  needs: Parameters<typeof running>[0] = {},
): Promise<Running & { room: string; ada: Voice; bea: Voice }> {
  const bot = await running(needs);
  const room = bot.standIn.makeRoom({ members: [ADA, BEA] });
  const ada = new Voice(bot.standIn, room, ADA);
  await ada.settled();
  return { ...bot, room, ada, bea: new Voice(bot.standIn, room, BEA) };
}

afterEach(() => {
  vi.restoreAllMocks();
});

/** The library waits between tries for a time that it draws: the shortest one, here. */
const drawsTheShortest = () => vi.spyOn(Math, 'random').mockReturnValue(0);

const busy = (wait: number) => ({
  status: 429,
  body: { errcode: 'M_LIMIT_EXCEEDED', error: 'slower', retry_after_ms: wait },
});

test('told to wait before it sends, it waits as long as it is told and sends each message once', async () => {
  const bot = await place();
  const from = performance.now();
  const held = bot.standIn.next('sendMessage', busy(700), 3);
  const asks = ['cut', 'count', 'time'].map((what) => bot.ada.say(`!help ${what}`));
  await until(() => asks.every((ask) => bot.ada.answersTo(ask).length > 0), 'all answers');
  expect(performance.now() - from).toBeGreaterThan(700);
  expect(held.times).toBe(0);
  await bot.ada.settled();
  for (const ask of asks) expect(bot.ada.answersTo(ask)).toHaveLength(1);
  expect(bot.counts.get('rate_limited_total')).toBe(3);
  expect(said(bot)).toEqual(['the homeserver makes us wait']);
});

test('the time to wait may stand in the header, in seconds', async () => {
  const bot = await place();
  const from = performance.now();
  bot.standIn.next('sendMessage', { status: 429, body: {}, headers: { 'retry-after': '1' } });
  await bot.ada.ask('!help cut');
  expect(performance.now() - from).toBeGreaterThan(1000);
});

test('told to wait before it syncs, it does not ask again before', async () => {
  const bot = await place();
  drawsTheShortest();
  const wait = 4000;
  bot.standIn.next('sync', busy(wait), 1);
  const ask = bot.ada.say('!help cut');
  await until(() => bot.counts.get('rate_limited_total') === 1, 'it is told to wait');
  const from = performance.now();
  const syncs = bot.standIn.asked('sync').length;
  await until(() => bot.ada.answersTo(ask).length > 0, 'the answer');
  const first = bot.standIn.asked('sync').length - syncs;
  expect(performance.now() - from).toBeGreaterThan(wait - 500);
  expect(first).toBeLessThan(4);
});

test.each([
  [500, {}],
  [502, undefined],
  [503, { errcode: 'M_UNKNOWN', error: 'later' }],
])('a homeserver that fails with %i is tried again, and counted', async (status, body) => {
  const bot = await place();
  bot.standIn.next('sendMessage', { status, body }, 1);
  const ask = bot.ada.say('!help cut');
  await bot.ada.answerTo(ask);
  expect(bot.ada.answersTo(ask)).toHaveLength(1);
  expect(bot.counts.get('server_errors_total')).toBe(1);
  expect(said(bot)).toEqual(['the homeserver cannot be reached, or fails; trying on']);
});

test('a connection that breaks before or after a message arrived makes one message of it', async () => {
  const bot = await place();
  bot.standIn.next('sendMessage', 'no answer', 1);
  bot.standIn.next('sendMessage', 'done, unheard', 1);
  const ask = bot.ada.say('!help cut');
  await bot.ada.answerTo(ask);
  await bot.ada.settled();
  expect(bot.ada.answersTo(ask)).toHaveLength(1);
});

test('a homeserver out of reach is waited for without spinning; what was said meanwhile is answered', async () => {
  const bot = await place();
  drawsTheShortest();
  await bot.standIn.unreachable();
  const before = bot.standIn.requests.length;
  const ask = bot.ada.say('!help cut');
  await until(() => said(bot).length > 0, 'it is said');
  await bot.standIn.listen();
  await until(() => bot.ada.answersTo(ask).length > 0, 'the answer');
  expect(bot.standIn.requests.length - before).toBeLessThan(30);
  expect(said(bot)).toEqual(['the homeserver cannot be reached, or fails; trying on']);
  expect(said(bot, ['info'])).toContain('the homeserver is back');
  expect(bot.counts.get('reconnects_total')).toBe(1);
  expect(bot.counts.get('server_errors_total')).toBeGreaterThan(0);
});

test('logged out softly it logs in again as the same device, and answers what was asked meanwhile', async () => {
  const bot = await place();
  const { standIn } = bot;
  const [device] = standIn.devices.values();
  for (const one of standIn.devices.values()) one.standing = 'soft-logout';
  const ask = bot.ada.say('!help cut');
  await bot.ada.answerTo(ask);
  expect(bot.ada.answersTo(ask)).toHaveLength(1);
  const logins = standIn.asked('login').map(({ body }) => body as { device_id?: string });
  expect(logins).toHaveLength(2);
  expect(logins[1]?.device_id).toBe(device?.id);
  expect(said(bot)).toEqual(['the homeserver wants a new login']);
  await until(() => bot.counts.get('reconnects_total') === 1, 'it is counted');
  expect(bot.ended).toEqual([]);
  // It goes on as before: restarts included, encrypted rooms too.
  const encrypted = standIn.makeRoom({ members: [ADA, BEA], encrypted: true });
  const there = new Voice(standIn, encrypted, ADA);
  there.say('!help cut');
  await until(() => there.sent().length > 0, 'an encrypted answer');
});

test('logged out while it sends, the message is sent once after the new login', async () => {
  const bot = await place();
  const { standIn } = bot;
  standIn.next('sendMessage', {
    status: 401,
    body: { errcode: 'M_UNKNOWN_TOKEN', error: 'gone', soft_logout: true },
  });
  const ask = bot.ada.say('!help cut');
  await bot.ada.answerTo(ask);
  await bot.ada.settled();
  expect(bot.ada.answersTo(ask)).toHaveLength(1);
  expect(standIn.asked('login')).toHaveLength(2);
});

test('logged out softly with a token alone, it ends with a sentence that says what to do', async () => {
  const { MatrixStandIn } = await import('../../standin/matrix/standin.ts');
  const standIn = await MatrixStandIn.open();
  const { token } = standIn.giveToken();
  const bot = await running({ standIn, password: undefined, accessToken: token });
  for (const one of standIn.devices.values()) one.standing = 'soft-logout';
  await until(() => bot.ended.length > 0, 'the end');
  expect(bot.ended).toEqual([
    { sentence: expect.stringContaining('Put a new one in "matrix.accessToken"'), status: 78 },
  ]);
  await bot.stop();
  await standIn.close();
});

test('logged out for good it ends: a start makes a new device where there is a password', async () => {
  const bot = await place();
  bot.standIn.devices.clear();
  await until(() => bot.ended.length > 0, 'the end');
  expect(bot.ended).toEqual([{ sentence: expect.stringContaining('logged the bot out'), status: 75 }]);
  // What was under way at that moment may still arrive.
  await new Promise((done) => setTimeout(done, 300));
  const syncs = bot.standIn.asked('sync').length;
  await new Promise((done) => setTimeout(done, 500));
  expect(bot.standIn.asked('sync').length).toBe(syncs);
});

test('logged out for good with a token alone: a start does not help', async () => {
  const place = await standIn();
  const bot = await running({
    standIn: place,
    password: undefined,
    accessToken: place.giveToken().token,
  });
  place.devices.clear();
  await until(() => bot.ended.length > 0, 'the end');
  expect(bot.ended).toEqual([{ sentence: expect.stringContaining('logged the bot out'), status: 77 }]);
});

test('a room that forbids sending: said once, counted each time, tried once for each ask', async () => {
  const bot = await place();
  const { standIn } = bot;
  const room = standIn.makeRoom({
    members: [ADA, BEA],
    levels: { users: { [ADA]: 100 }, events_default: 50 },
  });
  const mute = new Voice(standIn, room, ADA);
  const sends = standIn.asked('sendMessage').length;
  for (const what of ['cut', 'count', 'time']) mute.say(`!help ${what}`);
  await until(() => bot.counts.get('sends_refused_total') === 3, 'three refusals');
  await bot.ada.settled();
  const tried = standIn.asked('sendMessage').slice(sends);
  expect(tried.filter(({ parts }) => parts[0] === room)).toHaveLength(3);
  expect(said(bot)).toEqual(['not allowed there']);
  expect(bot.counts.get('replies_lost_total')).toBe(3);
  // Let in again, it answers again.
  standIn.put(room, {
    type: 'm.room.power_levels',
    sender: ADA,
    state_key: '',
    content: { users: { [ADA]: 100 } },
  });
  expect(bodyOf(await mute.ask('!help cut'))).toMatch(/cut/);
  expect(said(bot)).toHaveLength(1);
  // Another time is another word.
  standIn.put(room, {
    type: 'm.room.power_levels',
    sender: ADA,
    state_key: '',
    content: { users: { [ADA]: 100 }, events_default: 50 },
  });
  mute.say('!help cut');
  await until(() => bot.counts.get('sends_refused_total') === 4, 'it is refused again');
  expect(said(bot)).toEqual(['not allowed there', 'not allowed there']);
});

test.each([
  ['in a way that is not known', { algorithm: 'org.example.locks' }],
  ['in a way that was taken away again', {}],
  ['in no way', { algorithm: 7 }],
])('a room that is encrypted %s hears nothing in the clear; said once, counted', async (_how, content) => {
  const bot = await place();
  const { standIn } = bot;
  const room = standIn.makeRoom({ members: [ADA, BEA] });
  standIn.put(room, { type: 'm.room.encryption', sender: ADA, state_key: '', content });
  const there = new Voice(standIn, room, ADA);
  const asks = ['!cut hexagon 1in', '!help cut'].map((ask) => there.say(ask));
  await until(() => bot.counts.get('sends_refused_total') === 2, 'two refusals');
  await bot.ada.settled();
  for (const ask of asks) expect(there.answersTo(ask)).toEqual([]);
  expect([...standIn.uploads.values()].filter(({ name }) => name !== null)).toEqual([]);
  expect(said(bot)).toEqual(['no message can be encrypted for this room: nothing is said there']);
  expect(bot.counts.get('replies_lost_total')).toBe(2);
});

test.each([
  ['ban', 'banned from a room; its facts go in 30 days'],
  ['leave', 'put out of a room; its facts go in 30 days'],
])('put out by %s: said once, counted, quiet there, well elsewhere', async (membership, words) => {
  const bot = await place();
  const { standIn } = bot;
  const room = standIn.makeRoom({ members: [ADA, BEA] });
  const voice = new Voice(standIn, room, ADA);
  await voice.settled();
  const sends = standIn.asked('sendMessage').length;
  standIn.put(room, { type: 'm.room.member', sender: ADA, state_key: BOT, content: { membership } });
  voice.say('!help cut');
  await until(() => bot.counts.get('rooms_left_total') === 1, 'it is counted');
  await bot.ada.settled();
  expect(said(bot)).toEqual([words]);
  expect(
    standIn
      .asked('sendMessage')
      .slice(sends)
      .some(({ parts }) => parts[0] === room),
  ).toBe(false);
  expect(bot.logged.find(({ message }) => message === words)?.details).toEqual({ room, by: ADA });
});

test('banned while its answer is under way: the answer is given up, said once', async () => {
  const bot = await place();
  const { standIn } = bot;
  standIn.next('sendMessage', busy(500), 1);
  bot.ada.say('!help cut');
  await until(() => bot.counts.get('rate_limited_total') === 1, 'it waits');
  standIn.put(bot.room, {
    type: 'm.room.member',
    sender: ADA,
    state_key: BOT,
    content: { membership: 'ban' },
  });
  await until(() => bot.counts.get('replies_lost_total') === 1, 'it is given up');
  expect(said(bot).toSorted()).toEqual([
    'banned from a room; its facts go in 30 days',
    'not allowed there',
    'the homeserver makes us wait',
  ]);
});

test('it is stopped while it waits: in good time, and nothing is tried any more', async () => {
  const bot = await place();
  bot.standIn.next('sendMessage', busy(3_600_000), 1000);
  bot.ada.say('!help cut');
  await until(() => bot.counts.get('rate_limited_total') === 1, 'it waits');
  await bot.stop();
  const requests = bot.standIn.requests.length;
  await new Promise((done) => setTimeout(done, 500));
  expect(bot.standIn.requests).toHaveLength(requests);
  expect(said(bot)).toEqual(['the homeserver makes us wait']);
});

test('an answer to a sync that is no answer is asked for again, slowly', async () => {
  const bot = await place();
  drawsTheShortest();
  bot.standIn.next('sync', { status: 200, body: ['no', 'sync'] }, 2);
  const ask = bot.ada.say('!help cut');
  await until(() => bot.ada.answersTo(ask).length > 0, 'the answer');
});
