import { readFileSync, statSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Bot } from './bot.ts';
import { register } from './homeserver.ts';
import { Member, until } from './member.ts';
import { here } from './one-homeserver.ts';

let bot: Bot;
let ada: Member;
let bea: Member;
const rooms: Record<'plain' | 'encrypted', string> = { plain: '', encrypted: '' };

beforeAll(async () => {
  bot = new Bot(here(), await register(here(), 'bee'));
  await bot.start();
  ada = await Member.join(here(), 'ada');
  bea = await Member.join(here(), 'bea');
  for (const kind of ['plain', 'encrypted'] as const) {
    rooms[kind] = await ada.makeRoom([bot.account.user], kind === 'encrypted');
    await ada.bring(rooms[kind], bea);
  }
});

afterAll(async () => {
  ada?.stop();
  bea?.stop();
  await bot?.end('SIGTERM');
});

describe.each(['plain', 'encrypted'] as const)('in a room that is %s', (kind) => {
  test('a thread is answered in the thread', async () => {
    const room = rooms[kind];
    const root = await ada.say(room, 'let us talk of borders');
    const answer = await ada.ask(room, '!cut hexagon 1in', {
      'm.relates_to': {
        rel_type: 'm.thread',
        event_id: root,
        is_falling_back: true,
        'm.in_reply_to': { event_id: root },
      },
    });
    expect(answer.relation).toMatchObject({ rel_type: 'm.thread', event_id: root });
  });

  test('a mention with words is a plain question; talk to others is not', async () => {
    const room = rooms[kind];
    const quiet = await ada.say(room, 'how many 1 inch hexagons from a fat quarter, do you think?');
    const answer = await ada.ask(room, `${bot.account.name}: how many 1 inch hexagons from a fat quarter?`, {
      'm.mentions': { user_ids: [bot.account.user] },
    });
    expect(answer.content.body).toMatch(/fat quarter/i);
    expect(ada.answers(room, quiet)).toEqual([]);
  });

  test('an edited ask edits its own answer, and a redacted ask loses it', async () => {
    const room = rooms[kind];
    const ask = await ada.say(room, '!cut hexagon 1in');
    const answer = await ada.answerTo(room, ask);
    await ada.edit(room, ask, '!cut hexagon 2in');
    const edit = await ada.sees(
      room,
      ({ relation }) => relation?.rel_type === 'm.replace' && relation.event_id === answer.id,
      'the edit',
    );
    expect(JSON.stringify(edit.content['m.new_content'])).toContain('2 in');
    expect(ada.answers(room, ask).filter(({ content: { msgtype } }) => msgtype === 'm.notice').length).toBe(
      1,
    );
    await ada.client.redactEvent(room, ask);
    await until(() => answer.event.isRedacted(), 'the answer is taken back');
  });

  test('a number pressed is the ask it stands for, for the asker alone', async () => {
    const room = rooms[kind];
    const answer = await ada.ask(room, '!cut hexagon 4in');
    const reaction = await ada.sees(
      room,
      ({ type, relation }) => type === 'm.reaction' && relation?.event_id === answer.id,
      'a number',
    );
    expect(reaction.relation?.key).toBe('1️⃣');
    await bea.react(room, answer.id, '1️⃣');
    await new Promise((done) => setTimeout(done, 500));
    expect(ada.answers(room, answer.id)).toEqual([]);
    await ada.react(room, answer.id, '1');
    await ada.react(room, answer.id, '2️⃣');
    const pressed = await ada.answerTo(room, answer.id);
    expect(pressed.content.body).toMatch(/hexagon/i);
  });

  test('what is for the asker alone goes to a direct room, with a pointer that names her', async () => {
    const room = rooms[kind];
    const pointer = await bea.ask(room, '!me set seam:3/8in');
    expect(pointer.content['m.mentions']).toEqual({ user_ids: [bea.user] });
    const invited = () =>
      bea.client
        .getRooms()
        .find(
          (one) =>
            one.getMyMembership() === 'invite' ||
            (one.getJoinedMemberCount() <= 2 && !Object.values(rooms).includes(one.roomId)),
        );
    await until(() => invited() !== undefined, 'an invitation');
    const direct = invited()?.roomId ?? '';
    if (invited()?.getMyMembership() === 'invite') await bea.client.joinRoom(direct);
    expect(JSON.stringify(pointer.content)).not.toContain('3/8');
  });

  test('a member is no organiser, a moderator is', async () => {
    const room = rooms[kind];
    const refused = await bea.ask(room, '!guild set seam:1/4in');
    expect(refused.content.body).toMatch(/organiser/i);
    const done = await ada.ask(room, '!guild set seam:1/4in');
    expect(done.content.body).not.toMatch(/organiser/i);
  });

  test('notices are not answered', async () => {
    const room = rooms[kind];
    const notice = await ada.send(room, 'm.room.message', { msgtype: 'm.notice', body: '!cut hexagon 1in' });
    await ada.ask(room, '!cut hexagon 1in');
    expect(ada.answers(room, notice)).toEqual([]);
  });

  test('pictures and files', async () => {
    const room = rooms[kind];
    const ask = await bea.say(room, '!me export');
    const pointer = await bea.answerTo(room, ask);
    expect(pointer.content.msgtype).toBe('m.notice');
  });
});

test('standard output is the log and nothing else, and neither token nor password stands in it', async () => {
  expect(bot.errors.join('')).toBe('');
  const session = JSON.parse(readFileSync(`${bot.data}/matrix/session.json`, 'utf8'));
  const all = bot.output.join('\n');
  for (const line of bot.output) expect(() => JSON.parse(line), line).not.toThrow();
  expect(all).not.toContain(session.accessToken);
  expect(all).not.toContain(bot.account.password);
  for (const file of ['session.json', 'keys.sqlite', 'keys.sqlite-wal'])
    expect(statSync(`${bot.data}/matrix/${file}`).mode & 0o777, file).toBe(0o600);
  expect(bot.logged(40).map(({ msg }) => msg)).toEqual([]);
});

test('members’ clients have nothing to warn of: the device is signed by its account', async () => {
  const status = await ada.client.getCrypto()?.getDeviceVerificationStatus(bot.account.user, sessionDevice());
  expect(status?.signedByOwner).toBe(true);
});

const sessionDevice = (): string =>
  JSON.parse(readFileSync(`${bot.data}/matrix/session.json`, 'utf8')).deviceId;
