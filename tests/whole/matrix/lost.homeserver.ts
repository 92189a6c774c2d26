import { existsSync, readdirSync, rmSync, truncateSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { devicesOf, masterKeyOf, putAway, seesSigned, statusOf } from './accounts.ts';
import { Bot } from './bot.ts';
import { register } from './homeserver.ts';
import { Member } from './member.ts';
import { here } from './one-homeserver.ts';

let bot: Bot;
let ada: Member;
let room: string;
let plain: string;

beforeAll(async () => {
  bot = new Bot(here(), await register(here(), 'bee'));
  await bot.start();
  ada = await Member.join(here(), 'ada');
  const bea = await Member.join(here(), 'bea');
  room = await ada.makeRoom([bot.account.user], true);
  plain = await ada.makeRoom([bot.account.user], false);
  for (const one of [room, plain]) await ada.bring(one, bea);
  bea.stop();
});

afterAll(async () => {
  ada?.stop();
  await bot?.end('SIGTERM');
});

const asides = (): string[] => readdirSync(`${bot.data}/matrix`).filter((name) => name.includes('.lost-'));
const isTold = ({ content }: { content: Record<string, unknown> }): boolean =>
  /keys .* were lost/.test(String(content.body));

test.each([
  ['gone', (keys: string) => rmSync(keys), 0],
  ['damaged', (keys: string) => truncateSync(keys, 5000), 1],
])(
  'where the keys are %s, a new device begins, the old one is logged out, the room is told',
  async (_how, harm, aside) => {
    const before = bot.session();
    const told = ada.seen(room).filter(isTold).length;
    const master = await masterKeyOf(bot.account.user, ada);
    await bot.end('SIGTERM');
    const asked = await ada.say(room, '!cut hexagon 2in');
    const keys = `${bot.data}/matrix/keys.sqlite`;
    for (const tail of ['-wal', '-shm']) rmSync(`${keys}${tail}`, { force: true });
    harm(keys);
    await bot.start();
    const { deviceId } = bot.session();
    expect(deviceId).not.toBe(before.deviceId);
    expect(await devicesOf(bot.account.user, ada)).toEqual([deviceId]);
    expect(await statusOf(before.accessToken, ada)).toBe(401);
    await ada.sees(room, () => ada.seen(room).filter(isTold).length === told + 1, 'the room is told, once');
    // Said to the old device: the new one cannot read it, and says so.
    expect((await ada.answerTo(room, asked, 40)).content.body).toMatch(/^I cannot read that message/);
    expect((await ada.ask(room, '!cut hexagon 1in')).readable).toBe(true);
    expect(ada.seen(plain).filter(isTold)).toEqual([]);
    // The account is the one that members know: its own keys came back with the recovery key.
    expect(await masterKeyOf(bot.account.user, ada)).toBe(master);
    await seesSigned(ada, bot.account.user, deviceId);
    expect(existsSync(keys)).toBe(true);
    expect(asides()).toHaveLength(aside);
  },
);

test('where its owner puts the device away, it ends with a sentence, begins anew and tells the room', async () => {
  const before = bot.session();
  const told = ada.seen(room).filter(isTold).length;
  const owner = await Member.with(here(), bot.account);
  await putAway(before.deviceId, owner);
  owner.stop();
  expect(await bot.ended()).toBe(75);
  expect(bot.errors.join('')).toMatch(/^The homeserver has logged the bot out\. .*\n$/);
  await bot.start();
  expect(bot.session().deviceId).not.toBe(before.deviceId);
  await ada.sees(room, () => ada.seen(room).filter(isTold).length === told + 1, 'the room is told, once');
  expect((await ada.ask(room, '!cut hexagon 1in')).readable).toBe(true);
});

test('with another store key it does not start, and leaves everything as it was', async () => {
  await bot.end('SIGTERM');
  const right = bot.env.BOT_STORE_KEY ?? '';
  const { deviceId } = bot.session();
  bot.env.BOT_STORE_KEY = 'another one';
  await expect(bot.start()).rejects.toThrow(/78.*storeKey/s);
  bot.env.BOT_STORE_KEY = right;
  await bot.start();
  expect(bot.session().deviceId).toBe(deviceId);
  expect((await ada.ask(room, '!cut hexagon 1in')).readable).toBe(true);
});
