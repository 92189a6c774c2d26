import { statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { reply } from '../../../src/chat/reply.ts';
import type { Request } from '../../standin/matrix/requests.ts';
import { BOT, type MatrixStandIn } from '../../standin/matrix/standin.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';
import { ADA, BEA, bodyOf, folderForBot, running, said, standIn, until, Voice } from './bot.ts';

/** What is kept across restarts: the facts, the folder, and the homeserver goes on meanwhile. */
async function place() {
  const kept = { facts: memoryFacts(), folder: folderForBot(), standIn: await standIn() };
  const room = kept.standIn.makeRoom({ members: [ADA, BEA] });
  return { kept, room, ada: new Voice(kept.standIn, room, ADA), bea: new Voice(kept.standIn, room, BEA) };
}

const HOUR = 60 * 60 * 1000;
const readTo = (facts: ReturnType<typeof memoryFacts>) =>
  facts.notes.find('matrix', 'sync') as Promise<{ token: string } | undefined>;

test('it is the same device again, in a file for its owner alone', async () => {
  const { kept } = await place();
  const first = await running(kept);
  await first.stop();
  const file = join(kept.folder, 'matrix', 'session.json');
  expect(statSync(file).mode & 0o777).toBe(0o600);
  const before = [...kept.standIn.devices.keys()];
  await running(kept);
  expect([...kept.standIn.devices.keys()]).toEqual(before);
  expect(kept.standIn.asked('login')).toHaveLength(1);
});

test('what was answered is not answered again, though it comes again as if new', async () => {
  const { kept, ada } = await place();
  const first = await running(kept);
  const old = ada.say('!cut hexagon 1in');
  await ada.answerTo(old);
  await until(() => ada.answersTo(old).length === 2, 'its picture');
  await first.stop();
  const again = await running(kept);
  await ada.settled();
  expect(ada.answersTo(old)).toHaveLength(2);
  expect(again.counts.get('events_seen_again_total')).toBe(1);
});

test('nor after everything of hers was forgotten', async () => {
  const { kept, ada } = await place();
  const first = await running(kept);
  const old = ada.say('!cut hexagon 1in');
  await ada.answerTo(old);
  await ada.ask('!me forget confirm:yes');
  await ada.settled();
  await first.stop();
  const answers = ada.answersTo(old).length;
  await running(kept);
  await ada.settled();
  expect(ada.answersTo(old)).toHaveLength(answers);
});

test('what was asked while it was away is answered, however much it was; what is too old is not', async () => {
  const { kept, ada } = await place();
  await (await running(kept)).stop();
  const now = Date.now();
  const tooOld = ada.say('!cut hexagon 1in', {}, now - HOUR - 60_000);
  const old = ada.say('!cut hexagon 1in', {}, now - HOUR + 60_000);
  // Far more than one sync or one page brings.
  const many = Array.from({ length: 130 }, (_, i) => ada.say(`!help ${['cut', 'count', 'time'][i % 3]}`));
  const again = await running(kept);
  await until(() => [old, ...many].every((ask) => ada.answersTo(ask).length > 0), 'all answers');
  expect(ada.answersTo(tooOld)).toEqual([]);
  for (const ask of many) expect(ada.answersTo(ask)).toHaveLength(1);
  expect(again.counts.get('events_too_old_total')).toBe(1);
  expect(said(again)).toEqual([]);
});

test('a new name for the bot does not make it forget what was asked before', async () => {
  const { kept, ada, room } = await place();
  await (await running(kept)).stop();
  const ask = ada.say('!help cut');
  const content = { membership: 'join', displayname: 'busy bee' };
  const unsigned = { prev_content: { membership: 'join', displayname: 'bee' } };
  kept.standIn.put(room, { type: 'm.room.member', sender: BOT, state_key: BOT, content, unsigned });
  await running(kept);
  await ada.answerTo(ask);
  expect(bodyOf(await ada.ask('busy bee: how many in a rosette of 2 rounds?'))).toContain('19 hexagons');
});

test('rooms in which nothing was said lately cost no request at a start', async () => {
  const { kept, ada } = await place();
  await (await running(kept)).stop();
  const quiet = Array.from({ length: 20 }, () => kept.standIn.makeRoom({ members: [ADA, BEA] }));
  for (const room of quiet)
    for (let i = 0; i < 30; i++)
      new Voice(kept.standIn, room, BEA).say(`talk ${i}`, {}, Date.now() - 2 * HOUR);
  await running(kept);
  await ada.settled();
  expect(kept.standIn.asked('getRoomEvents')).toEqual([]);
});

test('what was left out is done in its order, before what came after it', async () => {
  const { kept, ada } = await place();
  const first = await running(kept);
  await ada.ask('!challenge open name:Spring counting:rosette rounds:1 first:2026-01-01 last:2036-01-01');
  await first.stop();
  ada.say('!log 3');
  ada.say('!undo');
  const asks = Array.from({ length: 12 }, (_, i) => ada.say(`!log ${i + 1}`));
  await running(kept);
  await until(() => asks.every((ask) => ada.answersTo(ask).length > 0), 'all logs');
  // Undone was the first log and no other: 1 + 2 + … + 12.
  expect(bodyOf(await ada.ask('!standings'))).toMatch(/\b78\b/);
});

test('numbers under an older answer still work, and an older ask is still edited and taken away', async () => {
  const { kept, ada } = await place();
  const first = await running(kept);
  const ask = ada.say('!cut hexagon 4in');
  const answer = await ada.answerTo(ask);
  await until(() => ada.numbersUnder(answer.event_id).length === 3, 'numbers');
  await first.stop();
  await running(kept);
  ada.react(answer.event_id, '2️⃣');
  expect(bodyOf(await ada.answerTo(answer.event_id))).toMatch(/flat to flat/);
  ada.edit(ask, '!cut hexagon 2in');
  await until(() => ada.sent().some((event) => bodyOf(event).startsWith('* Hexagon, 2 in')), 'the edit');
  ada.redact(ask);
  await until(() => answer.unsigned?.redacted_because !== undefined, 'the answer is taken back');
});

test('a number pressed too long ago is not answered', async () => {
  const { kept, ada, room } = await place();
  const first = await running(kept);
  const answer = await ada.ask('!cut hexagon 4in');
  await until(() => ada.numbersUnder(answer.event_id).length === 3, 'numbers');
  await first.stop();
  const press = (key: string, at: number) =>
    kept.standIn.put(room, {
      ...{ type: 'm.reaction', sender: ADA, at },
      content: { 'm.relates_to': { rel_type: 'm.annotation', event_id: answer.event_id, key } },
    });
  press('1️⃣', Date.now() - 2 * HOUR);
  press('2️⃣', Date.now() - HOUR / 2);
  await running(kept);
  await ada.answerTo(answer.event_id);
  await ada.settled();
  expect(ada.answersTo(answer.event_id).map(bodyOf)).toEqual([expect.stringMatching(/flat to flat/)]);
});

test('after a month it is forgotten which message was answered with what', async () => {
  const { kept, ada } = await place();
  const first = await running(kept);
  const ask = ada.say('!cut hexagon 4in');
  const answer = await ada.answerTo(ask);
  await until(() => ada.numbersUnder(answer.event_id).length === 3, 'numbers');
  await first.platform.tell(ada.room, reply({ lines: ['x'] }), 'x');
  await ada.settled();
  await first.stop();
  const notes = [`answered:${ask}`, `choices:${answer.event_id}`, 'told:x'];
  const kinds = () => Promise.all(notes.map((note) => kept.facts.notes.find('matrix', note)));
  for (const note of await kinds()) expect(note).toBeDefined();
  await running({ ...kept, now: () => new Date(Date.now() + 31 * 24 * HOUR) });
  await expect.poll(kinds).toEqual([undefined, undefined, undefined]);
});

test('what was taken away while it was away loses its answer, however long ago that was', async () => {
  const { kept, ada, room } = await place();
  const first = await running(kept);
  const ask = ada.say('!help cut');
  const answer = await ada.answerTo(ask);
  await first.stop();
  kept.standIn.put(room, {
    ...{ type: 'm.room.redaction', sender: ADA, redacts: ask, content: { redacts: ask } },
    at: Date.now() - 3 * HOUR,
  });
  await running(kept);
  await until(() => answer.unsigned?.redacted_because !== undefined, 'the answer is taken back');
});

test('one clock that is wrong does not hide what was said before it', async () => {
  const { kept, ada, bea } = await place();
  await (await running(kept)).stop();
  const asks: string[] = [];
  const some = (many: number) => {
    for (let i = 0; i < many; i++) asks.push(ada.say('!help cut'));
  };
  // The sync brings ten, a page fifty: at the beginning of each stands somebody whose clock goes wrong.
  some(20);
  bea.say('good morning', {}, Date.now() - 5 * HOUR);
  some(49);
  bea.say('good evening', {}, Date.now() - 5 * HOUR);
  some(9);
  await running(kept);
  await until(() => asks.every((ask) => ada.answersTo(ask).length === 1), 'all answers');
});

test('how far was read is kept after the work is done, and not before', async () => {
  const { kept, ada, room } = await place();
  const bot = await running(kept);
  await ada.settled();
  /** The kept token as a place in the stand-in's order of events. */
  const at = async () => Number((await readTo(kept.facts))?.token.slice(1));
  const blocked = kept.standIn.next('sendMessage', { status: 503, body: {} }, 1000);
  const ask = ada.say('!help cut');
  const asked = kept.standIn.room(room).timeline.find(({ event }) => event.event_id === ask)?.at ?? 0;
  await until(() => blocked.times < 999, 'it is tried twice');
  expect(await at()).toBeLessThan(asked);
  blocked.times = 0;
  await ada.answerTo(ask);
  let now = 0;
  await until(() => {
    void at().then((read) => (now = read));
    return now >= asked;
  }, 'the token');
  expect(said(bot)).toEqual(['the homeserver cannot be reached, or fails; trying on']);
});

test('an answer whose sending was not heard of is sent again under the same name, and is one message', async () => {
  const { kept, ada } = await place();
  const first = await running(kept);
  // The message arrives, the word that it did is lost; then the process ends.
  kept.standIn.next('sendMessage', 'done, unheard', 1);
  const ask = ada.say('!help cut');
  await until(() => ada.answersTo(ask).length === 1, 'the message');
  await first.stop();
  await running(kept);
  await ada.settled();
  const names = kept.standIn
    .asked('sendMessage')
    .filter(({ body }) => JSON.stringify(body).includes(ask))
    .map(({ parts }) => parts[2]);
  expect(names.length).toBeGreaterThan(1);
  expect(new Set(names).size).toBe(1);
  expect(ada.answersTo(ask)).toHaveLength(1);
});

test('ended in the middle of answers, numbers, pictures and edits, the next start says nothing twice', async () => {
  const { kept, ada, room } = await place();
  const first = await running(kept);
  const older = ada.say('!cut hexagon 1in');
  await until(() => ada.answersTo(older).length === 2, 'an answer and its picture');
  // The last part of each arrives, and is never heard of; so nothing is kept of any.
  const unheard = new Set<string>();
  const isLast = ({ operation, body, parts: [, , name = ''] }: Request): boolean => {
    const text = JSON.stringify(body ?? {});
    if (operation !== 'sendMessage' || unheard.has(name)) return false;
    const last = text.includes('"key":"3️⃣"') || text.includes('m.image');
    if (last) unheard.add(name);
    return last;
  };
  kept.standIn.next(isLast, 'done, unheard', 3);
  const held = kept.standIn.next(({ parts }) => unheard.has(parts[2] ?? ''), { status: 503, body: {} }, 1000);
  const [numbers, picture] = ['!cut hexagon 4in', '!cut hexagon 2in'].map((ask) => ada.say(ask));
  ada.edit(older, '!cut hexagon 3in measure:flats');
  await until(() => unheard.size === 3, 'all have come to their last part');
  await first.stop();
  const before = ada.sent().length;
  held.times = 0;
  const tries = kept.standIn.asked('sendMessage').length;
  await running(kept);
  await until(
    () => [...unheard].every((name) => timesSent(kept.standIn, name, tries) > 0),
    'all is sent again',
  );
  await ada.settled();
  // What came with the last word, "!help": an answer and its number.
  expect(ada.sent().length - before).toBe(2);
  expect(ada.answersTo(numbers ?? '')).toHaveLength(1);
  expect(ada.answersTo(picture ?? '')).toHaveLength(2);
  expect(
    kept.standIn.room(room).timeline.filter(({ event }) => event.type === 'm.room.redaction'),
  ).toHaveLength(1);
});

/** How often something was sent under a name, after the first so many sends. */
const timesSent = (place: MatrixStandIn, name: string, after: number): number =>
  place
    .asked('sendMessage')
    .slice(after)
    .filter(({ parts }) => parts[2] === name).length;
