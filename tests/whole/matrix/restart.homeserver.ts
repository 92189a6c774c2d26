import { existsSync, readdirSync, readFileSync, rmSync, truncateSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { Bot } from './bot.ts';
import { register } from './homeserver.ts';
import { Member, until } from './member.ts';
import { here } from './one-homeserver.ts';

let bot: Bot;
let ada: Member;
let room: string;

beforeAll(async () => {
  bot = new Bot(here(), await register(here(), 'bee'));
  await bot.start();
  ada = await Member.join(here(), 'ada');
  room = await ada.makeRoom([bot.account.user], true);
  // A third in the room, so that it is no direct one.
  const bea = await Member.join(here(), 'bea');
  await ada.bring(room, bea);
  bea.stop();
});

afterAll(async () => {
  ada?.stop();
  await bot?.end('SIGTERM');
});

const deviceOf = (): string => JSON.parse(readFileSync(`${bot.data}/matrix/session.json`, 'utf8')).deviceId;

const notices = (ask: string) =>
  ada.answers(room, ask).filter(({ content, readable }) => !readable || content.msgtype === 'm.notice');

test('after a restart it is the same device, old asks stay answered, those asked meanwhile are answered, numbers work', async () => {
  const device = deviceOf();
  const old = await ada.say(room, '!cut hexagon 4in');
  const answer = await ada.answerTo(room, old);
  await ada.sees(
    room,
    ({ type, relation }) => type === 'm.reaction' && relation?.event_id === answer.id,
    'a number',
  );
  expect(await bot.end('SIGTERM')).toBe(0);
  // More than one sync brings, so that what is left out must be asked for.
  const away: string[] = [];
  for (let i = 0; i < 14; i++) away.push(await ada.say(room, `!count rosette rounds:${1 + (i % 9)}`));
  await bot.start();
  for (const ask of away) await ada.answerTo(room, ask, 60);
  await ada.react(room, answer.id, '1️⃣');
  await ada.answerTo(room, answer.id);
  await ada.edit(room, old, '!cut hexagon 2in');
  await ada.sees(
    room,
    ({ relation }) => relation?.rel_type === 'm.replace' && relation.event_id === answer.id,
    'the edit',
  );
  for (const ask of [old, ...away]) expect(notices(ask)).toHaveLength(1);
  expect(deviceOf()).toBe(device);
});

test('killed twenty times while asks arrive: each is answered exactly once, and all can be read', async () => {
  const asks: string[] = [];
  let asking = true;
  const arriving = (async () => {
    while (asking) {
      asks.push(await ada.say(room, `!count rosette rounds:${1 + (asks.length % 9)}`));
      await new Promise((done) => setTimeout(done, 150));
    }
  })();
  for (let kills = 0; kills < 20; kills++) {
    await new Promise((done) => setTimeout(done, Math.random() * 1200));
    await bot.end('SIGKILL');
    await bot.start();
  }
  asking = false;
  await arriving;
  for (const ask of asks) await ada.answerTo(room, ask, 60);
  // Were one answered twice, the second answer would come now.
  await ada.ask(room, '!cut hexagon 1in');
  for (const ask of asks) {
    expect(notices(ask), ask).toHaveLength(1);
    expect(notices(ask)[0]?.readable, ask).toBe(true);
  }
  console.log(`${asks.length} asks, 20 kills`);
}, 300_000);

test.each(['gone', 'damaged'])(
  'where the keys are %s, a new device begins, the old one is logged out, the room is told',
  async (how) => {
    const before = deviceOf();
    await bot.end('SIGTERM');
    const keys = `${bot.data}/matrix/keys.sqlite`;
    if (how === 'gone') for (const tail of ['', '-wal', '-shm']) rmSync(`${keys}${tail}`, { force: true });
    else truncateSync(keys, 5000);
    await bot.start();
    expect(deviceOf()).not.toBe(before);
    await ada.sees(room, ({ content }) => /keys .* were lost/.test(String(content.body)), 'the room is told');
    const { devices } = await ada.client
      .downloadKeysForUsers([bot.account.user])
      .then((all) => ({ devices: Object.keys(all.device_keys?.[bot.account.user] ?? {}) }));
    expect(devices).toEqual([deviceOf()]);
    const answer = await ada.ask(room, '!cut hexagon 1in');
    expect(answer.readable).toBe(true);
    await until(() => existsSync(keys), 'new keys');
    expect(readdirSync(`${bot.data}/matrix`).some((name) => name.includes('.lost-'))).toBe(how === 'damaged');
  },
);

test('with another store key it does not start, and leaves everything as it was', async () => {
  await bot.end('SIGTERM');
  const right = bot.env.BOT_STORE_KEY ?? '';
  bot.env.BOT_STORE_KEY = 'another one';
  await expect(bot.start()).rejects.toThrow(/78.*storeKey/s);
  bot.env.BOT_STORE_KEY = right;
  await bot.start();
  expect((await ada.ask(room, '!cut hexagon 1in')).readable).toBe(true);
});
