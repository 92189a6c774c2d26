import { expect, test } from 'vitest';
import { type CommandList, form } from '../../../src/chat/command.ts';
import { reply } from '../../../src/chat/reply.ts';
import type { WireEvent } from '../../standin/matrix/place.ts';
import { BOT, MatrixStandIn } from '../../standin/matrix/standin.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';
import { ADA, BEA, bodyOf, folderForBot, relationOf, running, standIn, until, userOf, Voice } from './bot.ts';
import { startedBot } from './started.ts';

const bot = startedBot(() => MatrixStandIn.open());
let people = 0;

/** A guild's room with two who have never asked anything before. */
async function guild() {
  const { standIn } = await bot();
  const [cora, dora] = [userOf(`cora${++people}`), userOf(`dora${people}`)];
  const room = standIn.makeRoom({ members: [ADA, cora, dora] });
  return { standIn, room, cora: new Voice(standIn, room, cora), dora: new Voice(standIn, room, dora) };
}

const roomsWith = (standIn: MatrixStandIn, user: string): string[] =>
  [...standIn.rooms.values()]
    .filter((room) => room.membersWith('join').length + room.membersWith('invite').length === 2)
    .filter((room) => room.membershipOf(user) !== undefined)
    .map(({ id }) => id);

/** A room that she has opened with the bot, in the clear so that it can be read here. */
function ownRoom(standIn: MatrixStandIn, user: string): Voice {
  return new Voice(standIn, standIn.makeRoom({ members: [user] }), user);
}

const isRedacted = ({ unsigned }: WireEvent): boolean => unsigned?.redacted_because !== undefined;

test('what is hers alone goes to a new encrypted room with her; where she asked stands a pointer that means her', async () => {
  const { standIn, room, cora, dora } = await guild();
  const ask = cora.say('!me set seam:3/8in');
  const pointer = await cora.answerTo(ask);
  expect(pointer.content['m.mentions']).toEqual({ user_ids: [cora.user] });
  expect(bodyOf(pointer)).toMatch(/for you alone/);
  expect(JSON.stringify(cora.sent())).not.toContain('3/8');
  const [direct = ''] = roomsWith(standIn, cora.user);
  expect(standIn.asked('createRoom').at(-1)?.body).toMatchObject({ is_direct: true, invite: [cora.user] });
  expect(new Voice(standIn, direct, cora.user).sent().map(({ type }) => type)).toEqual(['m.room.encrypted']);
  // The next goes there too; another's goes to another.
  await cora.ask('!me');
  await dora.ask('!me');
  expect(roomsWith(standIn, cora.user)).toEqual([direct]);
  expect(roomsWith(standIn, dora.user)).not.toEqual([direct]);
  expect(standIn.room(room).membersWith('join')).toHaveLength(4);
});

test('two asks at once open one room', async () => {
  const { standIn, cora } = await guild();
  await Promise.all([cora.ask('!me'), cora.ask('!me set seam:3/8in')]);
  expect(roomsWith(standIn, cora.user)).toHaveLength(1);
});

test('a room that she talks in alone with the bot is used, and no pointer is needed there', async () => {
  const { standIn, cora } = await guild();
  const own = ownRoom(standIn, cora.user);
  expect(bodyOf(await own.ask('how many in a rosette of 2 rounds?'))).toContain('19 hexagons');
  expect(bodyOf(await own.ask('!me'))).not.toMatch(/alone/);
  await cora.ask('!me set seam:3/8in');
  await until(() => own.sent().some((event) => /3\/8 in/.test(bodyOf(event))), 'the answer');
  expect(roomsWith(standIn, cora.user)).toEqual([own.room]);
});

test('once somebody else is asked into that room, nothing private is said there any more', async () => {
  const { standIn, cora } = await guild();
  const own = ownRoom(standIn, cora.user);
  await own.settled();
  await cora.ask('!me');
  standIn.put(own.room, {
    type: 'm.room.member',
    sender: cora.user,
    state_key: BEA,
    content: { membership: 'invite' },
  });
  const before = own.sent().length;
  await cora.ask('!me set seam:3/8in');
  expect(own.sent()).toHaveLength(before);
  expect(roomsWith(standIn, cora.user)).toHaveLength(1);
});

test('where she has left their room, another is opened', async () => {
  const { standIn, cora } = await guild();
  const own = ownRoom(standIn, cora.user);
  await own.settled();
  const content = { membership: 'leave' };
  standIn.put(own.room, { type: 'm.room.member', sender: cora.user, state_key: cora.user, content });
  const before = own.sent().length;
  await cora.ask('!me set seam:3/8in');
  expect(own.sent()).toHaveLength(before);
  const [another = ''] = roomsWith(standIn, cora.user);
  expect(another).not.toBe(own.room);
  expect(new Voice(standIn, another, cora.user).sent()).not.toEqual([]);
});

test('a room that it opened and forgot about is found again', async () => {
  const kept = { standIn: await standIn(), folder: folderForBot() };
  const room = kept.standIn.makeRoom({ members: [ADA, BEA, userOf('cora')] });
  const cora = new Voice(kept.standIn, room, userOf('cora'));
  const first = await running({ ...kept, facts: memoryFacts() });
  await cora.ask('!me');
  await first.stop();
  const [direct = ''] = roomsWith(kept.standIn, cora.user);
  const before = new Voice(kept.standIn, direct, cora.user).sent().length;
  // Killed between the two, it has opened the room and kept nothing of it.
  await running({ ...kept, facts: memoryFacts() });
  await cora.ask('!me set seam:3/8in');
  expect(roomsWith(kept.standIn, cora.user)).toEqual([direct]);
  expect(new Voice(kept.standIn, direct, cora.user).sent().length).toBeGreaterThan(before);
});

test('a room that was made without a word of it is not made again', async () => {
  const { standIn, cora } = await guild();
  standIn.next('createRoom', 'done, unheard');
  await cora.ask('!me');
  expect(roomsWith(standIn, cora.user)).toHaveLength(1);
});

test('a room that does not arrive before the end is written to by the next start', async () => {
  const kept = { standIn: await standIn(), folder: folderForBot(), facts: memoryFacts() };
  const room = kept.standIn.makeRoom({ members: [ADA, BEA, userOf('cora')] });
  const cora = new Voice(kept.standIn, room, userOf('cora'));
  const first = await running(kept);
  await cora.settled();
  const ask = cora.say('!me set seam:3/8in');
  // After the sync that brings it none is answered.
  const asked = kept.standIn.room(room).timeline.find(({ event }) => event.event_id === ask)?.at ?? 0;
  const held = kept.standIn.next(
    ({ operation, query }) => operation === 'sync' && Number(query.get('since')?.slice(1)) >= asked,
    { status: 503, body: {} },
    1000,
  );
  await until(() => kept.standIn.asked('createRoom').length === 1, 'the room is made');
  await first.stop();
  held.times = 0;
  expect(cora.answersTo(ask)).toEqual([]);
  expect(first.counts.get('replies_lost_total')).toBeUndefined();
  await running(kept);
  expect(bodyOf(await cora.answerTo(ask))).toMatch(/for you alone/);
  expect(roomsWith(kept.standIn, cora.user)).toHaveLength(1);
  expect(kept.standIn.asked('createRoom')).toHaveLength(1);
});

/** A command that answers the asker alone with a choice, and one that tells where it is answered. */
const whereabouts: CommandList = {
  secret: async () => ({
    name: 'secret',
    summary: 'Answers the asker alone',
    forms: [
      form({
        ...{
          name: '',
          summary: 'Answers the asker alone',
          options: {},
          examples: ['/secret'],
          audience: 'asker',
        },
        run: () =>
          reply({ title: 'Secret', lines: ['for you'], choices: [{ label: 'Where?', ask: '/where' }] }),
      }),
    ],
  }),
  where: async () => ({
    name: 'where',
    summary: 'Tells the guild and the place',
    forms: [
      form({
        ...{ name: '', summary: 'Tells the guild and the place', options: {}, examples: ['/where'] },
        run: (_none, { guild, place }) => reply({ title: 'Where', lines: [`${guild} ${place}`] }),
      }),
    ],
  }),
};

test('a number pressed in the direct room means the guild that was asked in', async () => {
  const { standIn: server } = await running({ commands: whereabouts });
  const room = server.makeRoom({ members: [ADA, BEA, userOf('cora')] });
  const cora = new Voice(server, room, userOf('cora'));
  const own = ownRoom(server, cora.user);
  expect(bodyOf(await own.ask('!where'))).toContain(`alone:${cora.user}`);
  await cora.ask('!secret');
  const question = () => own.sent().find((event) => bodyOf(event).startsWith('Secret'));
  await until(() => own.numbersUnder(question()?.event_id ?? '').length === 1, 'the question');
  own.react(question()?.event_id ?? '', '1️⃣');
  expect(bodyOf(await own.answerTo(question()?.event_id ?? ''))).toContain(`${room} ${room}`);
});

test('an edit of a private ask edits the private answer; taken away, both go', async () => {
  const { standIn, cora } = await guild();
  const own = ownRoom(standIn, cora.user);
  await own.settled();
  const before = own.sent().length;
  const ask = cora.say('!help');
  const open = await cora.answerTo(ask);
  cora.edit(ask, '!me');
  await until(() => own.sent().length > before, 'the private answer');
  const answer = own.sent()[before] as WireEvent;
  const editOf = (voice: Voice, event: WireEvent) =>
    voice
      .sent()
      .filter(
        (one) => relationOf(one)?.rel_type === 'm.replace' && relationOf(one)?.event_id === event.event_id,
      );
  await until(() => editOf(cora, open).length === 1, 'the open answer becomes the pointer');
  const pointer = editOf(cora, open)[0] as WireEvent;
  expect(bodyOf(pointer)).toMatch(/for you alone/);
  // She is meant by the pointer, as she was not by the open answer.
  const her = { 'm.mentions': { user_ids: [cora.user] } };
  expect(pointer.content).toMatchObject({ ...her, 'm.new_content': her });
  cora.edit(ask, '!me export');
  await until(() => editOf(own, answer).length === 1, 'the private answer is edited');
  expect(cora.answersTo(ask).filter(({ content }) => content.msgtype === 'm.notice')).toHaveLength(1);
  cora.redact(ask);
  await until(() => isRedacted(open) && isRedacted(answer), 'both go');
});

test('an edit that makes an open ask of a private one takes the private answer back', async () => {
  const { standIn, cora } = await guild();
  const own = ownRoom(standIn, cora.user);
  await own.settled();
  const before = own.sent().length;
  const ask = cora.say('!me');
  await cora.answerTo(ask);
  const answer = own.sent()[before] as WireEvent;
  cora.edit(ask, '!help cut');
  await until(() => isRedacted(answer), 'the private answer goes');
});

test.each([
  ['no room can be opened', 'createRoom', /cannot open a room with you/],
  ['she may not be written to', 'sendMessage', /may not write to our direct room/],
])('where %s, she is told how she gets it, and nobody reads along', async (_why, operation, words) => {
  const { standIn, room, cora } = await guild();
  standIn.next((request) => request.operation === operation && request.parts[0] !== room, {
    status: 403,
    body: { errcode: 'M_FORBIDDEN', error: 'no' },
  });
  const pointer = await cora.ask('!me set seam:3/8in');
  expect(bodyOf(pointer)).toMatch(words);
  expect(pointer.content['m.mentions']).toEqual({ user_ids: [cora.user] });
  expect(JSON.stringify(cora.sent())).not.toContain('3/8');
});

test('a mistake in a private ask is told where it was made', async () => {
  const { cora } = await guild();
  const answer = await cora.ask('!me set seam:loud');
  expect(bodyOf(answer)).not.toMatch(/alone/);
  expect(answer.content['m.mentions']).toEqual({});
});

test('it is never alone with itself', async () => {
  const { standIn } = await bot();
  const room = standIn.makeRoom({ members: [BOT] });
  const itself = new Voice(standIn, room, BOT);
  const ask = itself.say('!help');
  const { cora } = await guild();
  await cora.settled();
  expect(itself.answersTo(ask)).toEqual([]);
});
