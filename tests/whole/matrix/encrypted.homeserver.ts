import { EventShieldColour } from 'matrix-js-sdk/lib/crypto-api/index.js';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { masterKeyOf, seesSigned, setUpRecovery } from './accounts.ts';
import { Bot } from './bot.ts';
import { newToken, register } from './homeserver.ts';
import { Member, type Seen } from './member.ts';
import { here } from './one-homeserver.ts';

let bot: Bot;
let ada: Member;
let room: string;

beforeAll(async () => {
  bot = new Bot(here(), await register(here(), 'bee'));
  await bot.start();
  ada = await Member.join(here(), 'ada');
  room = await ada.makeRoom([bot.account.user], true);
});

afterAll(async () => {
  ada?.stop();
  await bot?.end('SIGTERM');
});

/** The mark that a member's client puts beside a message. */
const markOf = async (member: Member, { event }: Seen) =>
  (await member.client.getCrypto()?.getEncryptionInfoForEvent(event))?.shieldColour;

test('members’ clients put no warning beside what the bot says, before and after a restart', async () => {
  expect(await markOf(ada, await ada.ask(room, '!cut hexagon 1in'))).toBe(EventShieldColour.NONE);
  await bot.end('SIGTERM');
  await bot.start();
  expect(await markOf(ada, await ada.ask(room, '!cut hexagon 2in'))).toBe(EventShieldColour.NONE);
  await seesSigned(ada, bot.account.user, bot.session().deviceId);
});

test('without a recovery key they do, and the log says so', async () => {
  const other = new Bot(here(), await register(here(), 'bee'), { recoveryKey: undefined });
  try {
    await other.start();
    const apart = await ada.makeRoom([other.account.user], true);
    expect(await markOf(ada, await ada.ask(apart, '!cut hexagon 1in'))).not.toBe(EventShieldColour.NONE);
    expect(other.logged(40).map(({ msg }) => msg)).toEqual([expect.stringMatching(/no "recoveryKey"/)]);
  } finally {
    await other.end('SIGTERM');
  }
});

test('a token in place of a password serves as well, device, keys and signature', async () => {
  const account = await register(here(), 'bee');
  const token = await newToken(here(), account);
  const other = new Bot(here(), account, { password: undefined, accessToken: { env: 'BOT_TOKEN' } });
  other.env.BOT_TOKEN = token;
  try {
    await other.start();
    const apart = await ada.makeRoom([account.user], true);
    expect(await markOf(ada, await ada.ask(apart, '!cut hexagon 1in'))).toBe(EventShieldColour.NONE);
    const { deviceId } = other.session();
    await other.end('SIGTERM');
    await other.start();
    expect(await markOf(ada, await ada.ask(apart, '!cut hexagon 2in'))).toBe(EventShieldColour.NONE);
    expect(other.session().deviceId).toBe(deviceId);
    expect(other.output.join('\n')).not.toContain(token);
  } finally {
    await other.end('SIGTERM');
  }
});

test('an account that a person has set up before keeps its keys: the bot takes them with the recovery key', async () => {
  const account = await register(here(), 'bee');
  const person = await Member.with(here(), account);
  const other = new Bot(here(), account);
  other.env.BOT_RECOVERY_KEY = await setUpRecovery(person);
  const master = await masterKeyOf(account.user, ada);
  try {
    await other.start();
    const apart = await ada.makeRoom([account.user], true);
    expect(await markOf(ada, await ada.ask(apart, '!cut hexagon 1in'))).toBe(EventShieldColour.NONE);
    expect(await masterKeyOf(account.user, ada)).toBe(master);
  } finally {
    person.stop();
    await other.end('SIGTERM');
  }
});

test('with a recovery key that is not the account’s it says so, changes none of the account’s keys, and answers', async () => {
  const account = await register(here(), 'bee');
  const person = await Member.with(here(), account);
  await setUpRecovery(person);
  const master = await masterKeyOf(account.user, ada);
  const other = new Bot(here(), account);
  try {
    await other.start();
    const apart = await ada.makeRoom([account.user], true);
    expect((await ada.ask(apart, '!cut hexagon 1in')).readable).toBe(true);
    expect(await masterKeyOf(account.user, ada)).toBe(master);
    expect(other.logged(40).map(({ msg }) => msg)).toEqual([
      expect.stringMatching(/could not be signed.*Is matrix\.recoveryKey the one of this account/),
    ]);
  } finally {
    person.stop();
    await other.end('SIGTERM');
  }
});

test('what it cannot read gets one plain sentence, and what is said after is answered', async () => {
  const crypto = ada.client.getCrypto();
  if (!crypto) throw new Error('the member has no keys');
  // The member's client gives its keys to devices alone that she has verified herself.
  crypto.globalBlacklistUnverifiedDevices = true;
  await crypto.forceDiscardSession(room);
  const unread = [await ada.say(room, '!cut hexagon 1in'), await ada.say(room, '!cut hexagon 2in')];
  const [first = '', second = ''] = unread;
  const sentence = await ada.answerTo(room, first, 40);
  expect(sentence.content.body).toMatch(/^I cannot read that message: .* verified devices alone/);
  crypto.globalBlacklistUnverifiedDevices = false;
  await crypto.forceDiscardSession(room);
  expect((await ada.ask(room, '!cut hexagon 3in')).content.body).toMatch(/hexagon/i);
  expect(ada.answers(room, first)).toHaveLength(1);
  expect(ada.answers(room, second)).toEqual([]);
});
