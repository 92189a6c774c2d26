import { afterAll, beforeAll, expect, test } from 'vitest';
import { Bot } from './bot.ts';
import { register } from './homeserver.ts';
import { Member } from './member.ts';
import { here } from './one-homeserver.ts';

let bot: Bot;
let ada: Member;
let bea: Member;
let room: string;

beforeAll(async () => {
  bot = new Bot(here(), await register(here(), 'bee'));
  await bot.start();
  ada = await Member.join(here(), 'ada');
  bea = await Member.join(here(), 'bea');
  room = await ada.makeRoom([bot.account.user], true);
  // A third in the room, so that it is no direct one.
  await ada.bring(room, bea);
});

afterAll(async () => {
  ada?.stop();
  bea?.stop();
  await bot?.end('SIGTERM');
});

/** What was said in answer to an ask by word; what cannot be read counts, as it might be one. */
const notices = (member: Member, ask: string) =>
  member.answers(room, ask).filter(({ content, readable }) => !readable || content.msgtype === 'm.notice');

test('after a restart it is the same device, old asks stay answered, those asked meanwhile are answered, numbers work', async () => {
  const { deviceId } = bot.session();
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
  for (const ask of [old, ...away]) expect(notices(ada, ask), ask).toHaveLength(1);
  expect(bot.session().deviceId).toBe(deviceId);
  // Synapse gives the answers of a sync again for two minutes: were they taken, it would join its room anew.
  expect(bot.logged().filter(({ msg }) => msg === 'joined')).toHaveLength(1);
});

test('a device that a member began while it was away reads what it says', async () => {
  await ada.ask(room, '!cut hexagon 2in');
  await bot.end('SIGTERM');
  const another = await Member.with(here(), ada.account);
  await bot.start();
  const ask = await ada.say(room, '!cut hexagon 1in');
  expect((await another.answerTo(room, ask)).readable).toBe(true);
  another.stop();
});

const KILLS = 20;

/** Every second kill comes while the bot starts, the others when it is up and at work. */
async function startedAndKilled(kill: number): Promise<void> {
  const starting = bot.start();
  starting.catch(() => {});
  if (kill % 2 === 0) await starting;
  await new Promise((done) => setTimeout(done, Math.random() * 1500));
  await bot.end('SIGKILL');
}

test('killed twenty times while asks arrive: each is answered exactly once, and all can read all of it', async () => {
  const asks: string[] = [];
  let asking = true;
  const arriving = (async () => {
    while (asking) {
      asks.push(await ada.say(room, `!count rosette rounds:${1 + (asks.length % 9)}`));
      await new Promise((done) => setTimeout(done, 1000));
    }
  })();
  await bot.end('SIGKILL');
  for (let kill = 1; kill < KILLS; kill++) await startedAndKilled(kill);
  asking = false;
  await arriving;
  await bot.start();
  for (const member of [ada, bea])
    for (const ask of asks) {
      await member.answerTo(room, ask, 60);
      await member.attachments(room, ask, 1);
    }
  // Were one answered twice, the second answer would come now.
  await ada.ask(room, '!cut hexagon 1in');
  for (const member of [ada, bea])
    for (const ask of asks) {
      const answers = member.answers(room, ask);
      expect(answers.map(({ content, readable }) => readable && content.msgtype).sort(), ask).toEqual([
        'm.image',
        'm.notice',
      ]);
    }
  expect(asks.length).toBeGreaterThan(KILLS);
}, 300_000);
