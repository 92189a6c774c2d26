import { expect, test, vi } from 'vitest';
import type { SyncAnswer } from '../../standin/matrix/standin.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';
import { ADA, BEA, bodyOf, folderForBot, type Running, running, said, standIn, until, Voice } from './bot.ts';

async function place(
  needs: Parameters<typeof running>[0] = {},
): Promise<Running & { room: string; ada: Voice; bea: Voice }> {
  const bot = await running(needs);
  const room = bot.standIn.makeRoom({ members: [ADA, BEA] });
  const ada = new Voice(bot.standIn, room, ADA);
  await ada.settled();
  return { ...bot, room, ada, bea: new Voice(bot.standIn, room, BEA) };
}

const inRoom = (answer: SyncAnswer, room: string): unknown[] =>
  answer.rooms.join[room]?.timeline.events ?? [];

/** What no sound server would put into a room, and what a hostile member may put into a sound one. */
const BAD: readonly (readonly [what: string, event: unknown])[] = [
  ['nothing', null],
  ['a word', 'event'],
  ['a list', []],
  ['an empty object', {}],
  ['no content', { type: 'm.room.message', event_id: '$b1', sender: ADA, origin_server_ts: 1 }],
  [
    'content that is a word',
    { type: 'm.room.message', event_id: '$b2', sender: ADA, origin_server_ts: 1, content: '!help' },
  ],
  [
    'content that is nothing',
    { type: 'm.room.message', event_id: '$b3', sender: ADA, origin_server_ts: 1, content: null },
  ],
  [
    'a sender that is a number',
    { type: 'm.room.message', event_id: '$b4', sender: 7, origin_server_ts: 1, content: {} },
  ],
  [
    'an id that is an object',
    { type: 'm.room.message', event_id: {}, sender: ADA, origin_server_ts: 1, content: {} },
  ],
  [
    'a time that is a word',
    { type: 'm.room.message', event_id: '$b5', sender: ADA, origin_server_ts: 'now', content: {} },
  ],
  [
    'a state key that is a number',
    { type: 'm.room.name', event_id: '$b6', sender: ADA, origin_server_ts: 1, content: {}, state_key: 3 },
  ],
  [
    'a redaction of a number',
    { type: 'm.room.redaction', event_id: '$b7', sender: ADA, origin_server_ts: 1, content: {}, redacts: 5 },
  ],
];

test.each(BAD)('a bad event loses none of its neighbours: %s', async (_what, event) => {
  const bot = await place();
  let first = '';
  let last = '';
  bot.standIn.spoil.push((answer) => {
    inRoom(answer, bot.room).splice(1, 0, event);
    answer.rooms.join[bot.room]?.state.events.push(event);
  });
  bot.standIn.together(() => {
    first = bot.ada.say('!help cut');
    last = bot.bea.say('!help count');
  });
  await bot.ada.answerTo(first);
  await bot.bea.answerTo(last);
  expect(said(bot)).toEqual(['events that cannot be read were left out']);
  expect(bot.counts.get('events_unsound_total')).toBe(2);
  // The room itself is still known: who may do what, who is who.
  expect(bodyOf(await bot.bea.ask('!guild set seam:3/8in'))).toMatch(/organiser/);
  expect(bodyOf(await bot.ada.ask('!guild set seam:3/8in'))).not.toMatch(/organiser/);
});

/** Sound events with strange contents: they may come from any member. */
const STRANGE: readonly Record<string, unknown>[] = [
  {},
  { msgtype: 'm.text' },
  { msgtype: 'm.text', body: 7 },
  { msgtype: 'm.text', body: null, 'm.mentions': null },
  { msgtype: 7, body: '!help' },
  { msgtype: 'm.text', body: '!', 'm.mentions': [] },
  { msgtype: 'm.text', body: 'bee', 'm.mentions': { user_ids: 'bee' } },
  { msgtype: 'm.text', body: '> quoted', 'm.relates_to': { 'm.in_reply_to': null } },
  { msgtype: 'm.text', body: 'x', 'm.relates_to': 'thread' },
  { msgtype: 'm.text', body: 'x', 'm.relates_to': { rel_type: 'm.replace' } },
  {
    msgtype: 'm.text',
    body: 'x',
    'm.relates_to': { rel_type: 'm.replace', event_id: 5 },
    'm.new_content': 'x',
  },
  { msgtype: 'm.text', body: 'x', 'm.relates_to': { rel_type: 'm.thread', event_id: {} } },
  { msgtype: 'm.text', body: '\u0000\uFFFF\u202E!help', 'm.relates_to': [] },
  { msgtype: 'm.text', body: 'a'.repeat(60_000) },
  JSON.parse('{"__proto__": {"msgtype": "m.text"}, "body": "!help"}'),
];

test('strange contents are no asks and trip nobody', async () => {
  const bot = await place();
  const before = bot.ada.sent();
  for (const content of STRANGE) {
    bot.bea.put('m.room.message', content);
    bot.bea.put('m.reaction', content);
    bot.bea.put('m.room.redaction', content);
    bot.bea.put('org.example.other', content);
  }
  await bot.bea.settled();
  const messages = bot.ada
    .sent()
    .filter((event) => !before.includes(event) && event.type === 'm.room.message');
  expect(messages.map(bodyOf)).toEqual([expect.stringMatching(/^What I can work out/)]);
  expect(said(bot)).toEqual([]);
});

/** State that whoever may change a room can put there, with the key it hangs on. */
const STATE: readonly (readonly [type: string, key: string])[] = [
  ...['name', 'topic', 'avatar', 'canonical_alias', 'join_rules', 'history_visibility', 'guest_access'].map(
    (name) => [`m.room.${name}`, ''] as const,
  ),
  ...['tombstone', 'server_acl', 'pinned_events'].map((name) => [`m.room.${name}`, ''] as const),
  ...([
    ['m.room.member', BEA],
    ['m.room.third_party_invite', 'x'],
    ['m.space.parent', '!nowhere:bees.test'],
    ['m.space.child', 'no room'],
    ['m.policy.rule.user', ''],
    ['org.example.other', '{}'],
  ] as const),
];

test('strange state trips nobody either', async () => {
  const bot = await place();
  const other = new Voice(bot.standIn, bot.standIn.makeRoom({ members: [ADA, BEA] }), ADA);
  for (const content of [...STRANGE, { membership: 7 }, { pinned: 7 }, { via: 'x' }])
    bot.standIn.together(() => {
      for (const [type, state_key] of STATE)
        bot.standIn.put(bot.room, { type, sender: ADA, state_key, content: { ...content } });
    });
  const content = { membership: 'join', displayname: 'Bea' };
  bot.standIn.put(bot.room, { type: 'm.room.member', sender: BEA, state_key: BEA, content });
  await other.settled();
  expect(bodyOf(await bot.bea.ask('!help cut'))).toMatch(/cut/);
  expect(said(bot)).toEqual([]);
});

test('an edit of nothing, of what is not there, of itself', async () => {
  const bot = await place();
  const asks = ['$nowhere', '', 'not an id'].map((event) => bot.ada.edit(event, '!help cut'));
  await bot.ada.settled();
  for (const ask of asks) expect(bot.ada.answersTo(ask)).toEqual([]);
});

test('an event that comes again, soon or late, is answered once', async () => {
  const bot = await place();
  const ask = bot.ada.say('!help cut');
  await bot.ada.answerTo(ask);
  const event = bot.standIn.room(bot.room).find(ask);
  const again = (answer: SyncAnswer) => inRoom(answer, bot.room).unshift(event, event);
  bot.standIn.spoil.push(again, again);
  await bot.bea.settled();
  bot.standIn.spoil.push(again);
  await bot.bea.settled();
  expect(bot.ada.answersTo(ask)).toHaveLength(1);
  const asks = bot.counts.get('asks_total') ?? 0;
  bot.standIn.spoil.push((answer) => {
    const events = inRoom(answer, bot.room);
    events.push(...structuredClone(events));
  });
  await bot.ada.settled();
  expect(bot.counts.get('asks_total')).toBe(asks + 1);
});

test('events out of order: an edit before its ask, a redaction before what it takes away', async () => {
  const bot = await place();
  let edited = '';
  let gone = '';
  bot.standIn.spoil.push((answer) => inRoom(answer, bot.room).reverse());
  bot.standIn.together(() => {
    edited = bot.ada.say('!help cut');
    bot.ada.edit(edited, '!help count');
    gone = bot.bea.say('!help cut');
  });
  await bot.ada.answerTo(edited);
  const raw = structuredClone(bot.standIn.room(bot.room).find(gone));
  bot.bea.redact(gone);
  await bot.ada.settled();
  bot.standIn.spoil.push((answer) => inRoom(answer, bot.room).unshift({ ...raw, event_id: '$late' }));
  bot.standIn.put(bot.room, {
    type: 'm.room.redaction',
    sender: BEA,
    redacts: '$late',
    content: { redacts: '$late' },
  });
  await bot.ada.settled();
  expect(bot.ada.answersTo(edited).filter(({ content }) => content.msgtype === 'm.notice')).toHaveLength(1);
  expect(bodyOf(bot.ada.answersTo(edited)[0] as never)).toMatch(/count/);
  expect(bot.ada.answersTo('$late')).toEqual([]);
});

test('a redaction that overtakes its ask', async () => {
  const bot = await place();
  const event = {
    type: 'm.room.message',
    event_id: '$overtaken',
    sender: ADA,
    origin_server_ts: Date.now(),
    content: { msgtype: 'm.text', body: '!help cut' },
  };
  bot.standIn.put(bot.room, {
    type: 'm.room.redaction',
    sender: ADA,
    redacts: '$overtaken',
    content: { redacts: '$overtaken' },
  });
  await bot.bea.settled();
  bot.standIn.spoil.push((answer) => inRoom(answer, bot.room).unshift(event));
  await bot.bea.settled();
  await bot.ada.settled();
  expect(bot.ada.answersTo('$overtaken')).toEqual([]);
});

test('what was taken away, locked or not, is met with silence', async () => {
  const bot = await place();
  const room = bot.standIn.makeRoom({ members: [ADA, BEA], encrypted: true });
  const bea = new Voice(bot.standIn, room, BEA);
  bot.standIn.together(() => {
    for (const type of ['m.room.encrypted', 'm.room.message', 'm.reaction'])
      bea.redact(bea.put(type, { session_id: 'x' }));
  });
  await bot.bea.settled();
  // It is not even tried to be read.
  expect(bot.logged.filter(({ details }) => /decrypting event/.test(String(details.words)))).toEqual([]);
  await bot.stop();
  expect(bea.sent()).toEqual([]);
  expect(said(bot)).toEqual([]);
});

test('a sync that leaves out most of what was said leaves nobody without an answer', async () => {
  const bot = await place();
  const asks: string[] = [];
  bot.standIn.together(() => {
    for (let i = 0; i < 90; i++) asks.push(bot.ada.say('!help cut'));
  });
  await until(() => asks.every((ask) => bot.ada.answersTo(ask).length === 1), 'all answers');
  expect(bot.standIn.asked('getRoomEvents').length).toBeGreaterThan(0);
  expect(said(bot)).toEqual([]);
});

const left90 = (bot: Awaited<ReturnType<typeof place>>): string[] => {
  const asks: string[] = [];
  bot.standIn.together(() => {
    for (let i = 0; i < 90; i++) asks.push(bot.ada.say('!help cut'));
  });
  return asks;
};

test('a gap that cannot be read at first is read on; the room does not wait, the token does; said once', async () => {
  const facts = memoryFacts();
  const bot = await place({ facts });
  const token = () => facts.notes.find('matrix', 'sync');
  const held = bot.standIn.next('getRoomEvents', { status: 502, body: {} }, 1000);
  const asks = left90(bot);
  const newest = asks.slice(-30);
  await until(() => newest.every((ask) => bot.ada.answersTo(ask).length === 1), 'what came with the sync');
  const before = await token();
  await bot.bea.settled();
  expect(await token()).toEqual(before);
  held.times = 0;
  await until(() => asks.every((ask) => bot.ada.answersTo(ask).length === 1), 'the rest');
  let now: unknown = before;
  await until(() => {
    void token().then((read) => (now = read));
    return JSON.stringify(now) !== JSON.stringify(before);
  }, 'the token moves');
  expect(said(bot)).toEqual(['what a sync left out cannot be read yet; trying on']);
});

test('a gap that was not read when it was stopped is read at the next start', async () => {
  const kept = { facts: memoryFacts(), folder: folderForBot(), standIn: await standIn() };
  const bot = await place(kept);
  const held = bot.standIn.next('getRoomEvents', { status: 502, body: {} }, 1000);
  const asks = left90(bot);
  await until(() => bot.ada.answersTo(asks.at(-1) ?? '').length === 1, 'what came with the sync');
  await bot.stop();
  held.times = 0;
  await running(kept);
  await until(() => asks.every((ask) => bot.ada.answersTo(ask).length === 1), 'all answers');
});

test('a gap that may never be read is given up at once, and counted', async () => {
  const bot = await place();
  bot.standIn.next('getRoomEvents', { status: 403, body: { errcode: 'M_FORBIDDEN', error: 'no' } }, 1000);
  const asks = left90(bot);
  await until(() => bot.ada.answersTo(asks.at(-1) ?? '').length === 1, 'what came with the sync');
  await until(() => bot.counts.get('gaps_lost_total') === 1, 'it is counted');
  await bot.bea.settled();
  expect(bot.standIn.asked('getRoomEvents')).toHaveLength(1);
  expect(said(bot)).toEqual(['what a sync left out cannot be read: asks in it stay unanswered']);
});

test('a page of earlier messages may hold bad events too, or be none at all', async () => {
  const bot = await place();
  bot.standIn.next('getRoomEvents', { status: 200, body: { chunk: 'x' } });
  bot.standIn.next('getRoomEvents', {
    status: 200,
    body: { start: 's1', end: 's2', chunk: BAD.map(([, event]) => event) },
  });
  const asks = left90(bot);
  await until(() => bot.ada.answersTo(asks.at(-1) ?? '').length === 1, 'what came with the sync');
  await bot.bea.settled();
  expect(bot.logged.filter(({ level }) => level === 'fault')).toEqual([]);
});

test('a token of a server that was set up anew is not held against the rooms', async () => {
  const kept = { facts: memoryFacts(), folder: folderForBot(), standIn: await standIn() };
  await kept.facts.notes.keep('matrix', 'sync', { token: 'from-another-life' });
  const room = kept.standIn.makeRoom({ members: [ADA, BEA] });
  const ada = new Voice(kept.standIn, room, ADA);
  const asks = Array.from({ length: 30 }, () => ada.say('!help cut'));
  kept.standIn.next(
    ({ operation, query }) => operation === 'getRoomEvents' && query.get('to') === 'from-another-life',
    { status: 400, body: { errcode: 'M_INVALID_PARAM', error: 'no such token' } },
    1000,
  );
  await running(kept);
  await until(() => asks.every((ask) => ada.answersTo(ask).length === 1), 'all answers');
});

test('what is said is not kept in memory: a room’s list of events does not grow', async () => {
  const { MatrixClient } = await import('matrix-js-sdk');
  const started = vi.spyOn(MatrixClient.prototype, 'startClient');
  const bot = await place();
  for (let i = 0; i < 60; i++) {
    bot.standIn.together(() => {
      for (let j = 0; j < 20; j++) bot.bea.say(`talk ${i} ${j}`);
      bot.standIn.put(bot.room, {
        type: 'm.room.topic',
        sender: ADA,
        state_key: '',
        content: { topic: `${i}` },
      });
      for (let j = 0; j < 5; j++)
        bot.standIn.put(bot.room, {
          type: 'm.room.member',
          sender: BEA,
          state_key: BEA,
          content: { membership: 'join', displayname: `Bea ${i} ${j}` },
        });
    });
    await bot.bea.settled();
  }
  const client = started.mock.contexts[0] as InstanceType<typeof MatrixClient> | undefined;
  const room = client?.getRoom(bot.room);
  const events = room?.getLiveTimeline().getEvents() ?? [];
  expect(events.length).toBeLessThan(260);
  expect(events.filter((event) => !event.isState())).toEqual([]);
  // What the room is, is known as before.
  expect(bodyOf(await bot.bea.ask('!me'))).toMatch(/alone/);
  expect(bodyOf(await bot.bea.ask('!guild set seam:3/8in'))).toMatch(/organiser/);
  expect(bodyOf(await bot.ada.ask('!guild set seam:3/8in'))).not.toMatch(/organiser/);
});
