import { expect, test } from 'vitest';
import type { WireEvent } from '../../standin/matrix/place.ts';
import { BOT, MatrixStandIn } from '../../standin/matrix/standin.ts';
import { ADA, BEA, bodyOf, relationOf, until, Voice } from './bot.ts';
import { startedBot } from './started.ts';

const bot = startedBot(() => MatrixStandIn.open());

/** A room of Ada, who is an organiser in it, and Bea. */
async function roomOfTwo(): Promise<{ ada: Voice; bea: Voice; room: string }> {
  const { standIn } = await bot();
  const room = standIn.makeRoom({ members: [ADA, BEA] });
  return { room, ada: new Voice(standIn, room, ADA), bea: new Voice(standIn, room, BEA) };
}

const notices = (voice: Voice, ask: string): WireEvent[] =>
  voice.answersTo(ask).filter(({ content }) => content.msgtype === 'm.notice');
const newestEdit = (voice: Voice, message: string): WireEvent | undefined =>
  voice.sent().findLast((event) => {
    const relation = relationOf(event);
    return relation?.rel_type === 'm.replace' && relation.event_id === message;
  });
const isRedacted = ({ unsigned }: WireEvent): boolean => unsigned?.redacted_because !== undefined;

test('an answer is a notice to the ask, the number first, in two equal bodies, and means nobody', async () => {
  const { ada } = await roomOfTwo();
  const ask = ada.say('!cut hexagon 1 1/2in');
  const answer = await ada.answerTo(ask);
  expect(answer.content).toMatchObject({ msgtype: 'm.notice', 'm.mentions': {} });
  expect(relationOf(answer)).toEqual({ 'm.in_reply_to': { event_id: ask } });
  expect(bodyOf(answer)).toMatch(/^Hexagon, 1 1\/2 in side\nCut 3 1\/8 in/);
  const words = (text: string) =>
    text
      .replaceAll(/<[^>]+>/g, ' ')
      .replaceAll('&quot;', '"')
      .split(/[\s|]+/);
  const { body, formatted_body: html } = answer.content;
  expect(words(String(html)).filter(Boolean)).toEqual(words(String(body)).filter(Boolean));
});

test.each([
  ['the prefix', '!count rosette rounds:2', {}],
  ['the prefix and a capital', '!COUNT rosette rounds:2', {}],
  [
    'its name before a question',
    'bee: how many in a rosette of 2 rounds?',
    { 'm.mentions': { user_ids: [BOT] } },
  ],
  ['its name before a command', 'bee, !count rosette rounds:2', { 'm.mentions': { user_ids: [BOT] } }],
  ['its name, by an older client', 'bee: how many in a rosette of 2 rounds?', {}],
  ['its whole name in the middle', `now ${BOT} how many in a rosette of 2 rounds?`, {}],
  [
    'the prefix after a quote of what is answered',
    '> <@x:y> hello\n\n!count rosette rounds:2',
    { 'm.relates_to': { 'm.in_reply_to': { event_id: '$older' } } },
  ],
])('asked with %s', async (_how, body, more) => {
  const { ada } = await roomOfTwo();
  expect(bodyOf(await ada.ask(body, more))).toContain('19 hexagons');
});

test.each([
  ['talk among members', 'how many in a rosette of 2 rounds?', {}],
  ['the prefix alone', '!', {}],
  ['the prefix before no word', '!!! look at this', {}],
  ['a name that only begins like its own', 'beetles: how many in a rosette of 2 rounds?', {}],
  ['its name, where somebody else is meant', 'bee: how many?', { 'm.mentions': { user_ids: [BEA] } }],
  ['a notice', '!count rosette rounds:2', { msgtype: 'm.notice' }],
  ['an emote', '!count rosette rounds:2', { msgtype: 'm.emote' }],
  ['a notice that means it', 'bee: how many?', { msgtype: 'm.notice', 'm.mentions': { user_ids: [BOT] } }],
])('not asked: %s', async (_how, body, more) => {
  const { ada, bea } = await roomOfTwo();
  const quiet = ada.say(body, more);
  await bea.settled();
  await ada.settled();
  expect(ada.answersTo(quiet)).toEqual([]);
});

test('asked in a thread it is answered there, pictures and an edit too', async () => {
  const { ada } = await roomOfTwo();
  const root = ada.say('let us talk of borders');
  const inThread = {
    rel_type: 'm.thread',
    event_id: root,
    is_falling_back: true,
    'm.in_reply_to': { event_id: root },
  };
  const ask = ada.say('!cut hexagon 1in', { 'm.relates_to': inThread });
  const answer = await ada.answerTo(ask);
  const there = {
    rel_type: 'm.thread',
    event_id: root,
    is_falling_back: false,
    'm.in_reply_to': { event_id: ask },
  };
  expect(relationOf(answer)).toEqual(there);
  await until(() => ada.answersTo(ask).length === 2, 'the picture');
  expect(relationOf(ada.answersTo(ask)[1] as WireEvent)).toEqual(there);
  ada.edit(ask, '!cut hexagon 2in');
  await until(
    () =>
      ada.answersTo(ask).filter((one) => !isRedacted(one)).length === 2 &&
      newestEdit(ada, answer.event_id) !== undefined,
    'the new picture',
  );
  await until(() => ada.answersTo(ask).length === 2, 'the new picture');
  expect(relationOf(ada.answersTo(ask)[1] as WireEvent)).toEqual(there);
});

test('a number pressed in a thread is answered there', async () => {
  const { ada } = await roomOfTwo();
  const thread = { rel_type: 'm.thread', event_id: ada.say('let us talk of borders') };
  const answer = await ada.ask('!cut hexagon 4in', { 'm.relates_to': thread });
  await until(() => ada.numbersUnder(answer.event_id).length === 3, 'numbers');
  ada.react(answer.event_id, '2️⃣');
  expect(relationOf(await ada.answerTo(answer.event_id))).toMatchObject(thread);
});

test('an edit that first makes an ask of a message in a thread is answered in the thread', async () => {
  const { ada } = await roomOfTwo();
  const root = ada.say('let us talk of borders');
  const message = ada.say('cut hexagon 1in', { 'm.relates_to': { rel_type: 'm.thread', event_id: root } });
  ada.edit(message, '!cut hexagon 1in');
  expect(relationOf(await ada.answerTo(message))).toMatchObject({ rel_type: 'm.thread', event_id: root });
});

test('an edited ask edits its own answer: the words in place, picture and numbers anew', async () => {
  const { ada } = await roomOfTwo();
  const ask = ada.say('!cut hexagon 4in');
  const answer = await ada.answerTo(ask);
  await until(() => ada.numbersUnder(answer.event_id).length === 3, 'numbers');
  ada.edit(ask, '!cut hexagon 2in');
  await until(() => newestEdit(ada, answer.event_id) !== undefined, 'the edit');
  const edit = newestEdit(ada, answer.event_id) as WireEvent;
  expect(edit.content['m.new_content']).toMatchObject({ msgtype: 'm.notice', 'm.mentions': {} });
  expect(bodyOf(edit)).toMatch(/^\* Hexagon, 2 in side/);
  await until(() => ada.numbersUnder(answer.event_id).length === 0, 'the numbers go');
  expect(notices(ada, ask)).toHaveLength(1);
  // What they stood for is no longer asked.
  ada.react(answer.event_id, '1️⃣');
  await ada.settled();
  expect(ada.answersTo(answer.event_id)).toEqual([]);
  ada.edit(ask, '!cut hexagon 3in measure:flats');
  await until(() => newestEdit(ada, answer.event_id) !== edit, 'the second edit');
  expect(notices(ada, ask)).toHaveLength(1);
});

test('nobody edits another’s ask', async () => {
  const { ada, bea } = await roomOfTwo();
  const ask = ada.say('!cut hexagon 1in');
  const answer = await ada.answerTo(ask);
  bea.edit(ask, '!cut hexagon 2in');
  await bea.settled();
  expect(newestEdit(ada, answer.event_id)).toBeUndefined();
});

test('an edit of what is kept does not keep it again', async () => {
  const { ada } = await roomOfTwo();
  const opened = '!challenge open name:Spring counting:rosette rounds:1 first:2026-01-01 last:2036-01-01';
  expect(bodyOf(await ada.ask(opened))).toContain('Spring');
  const log = ada.say('!log 3');
  const answer = await ada.answerTo(log);
  expect(bodyOf(answer)).toMatch(/3/);
  ada.edit(log, '!log 4');
  await until(() => notices(ada, log).length === 2, 'a word about it');
  expect(bodyOf(notices(ada, log)[1] as WireEvent)).toMatch(/kept when you first sent it/);
  expect(newestEdit(ada, answer.event_id)).toBeUndefined();
  expect(bodyOf(await ada.ask('!standings'))).toMatch(/\b3\b/);
  const slip = ada.say('!log thre');
  await ada.answerTo(slip);
  ada.edit(slip, '!log 2');
  await until(() => newestEdit(ada, notices(ada, slip)[0]?.event_id ?? '') !== undefined, 'the mended log');
  expect(bodyOf(await ada.ask('!standings'))).toMatch(/\b5\b/);
});

test('a redacted ask loses its answer, its picture and its numbers', async () => {
  const { ada } = await roomOfTwo();
  const ask = ada.say('!cut hexagon 4in');
  const answer = await ada.answerTo(ask);
  await until(() => ada.numbersUnder(answer.event_id).length === 3, 'numbers');
  const before = ada.sent().filter(({ type }) => type !== 'm.room.redaction');
  ada.redact(ask);
  await until(() => before.every(isRedacted), 'all of it is taken back');
  ada.react(answer.event_id, '1️⃣');
  await ada.settled();
  expect(ada.answersTo(answer.event_id)).toEqual([]);
});

test('asked and taken away at once, nothing is left', async () => {
  const { ada } = await roomOfTwo();
  const { standIn } = await bot();
  let ask = '';
  standIn.together(() => {
    ask = ada.say('!cut hexagon 1in');
    ada.redact(ask);
  });
  await ada.settled();
  expect(ada.answersTo(ask)).toEqual([]);
});

test.each([
  ['1️⃣', 'with the sign that asks for colour'],
  ['1\u20E3', 'without it'],
])('a number is the ask that it stands for (%s, %s)', async (sign) => {
  const { ada } = await roomOfTwo();
  const answer = await ada.ask('!cut hexagon 4in');
  await until(() => ada.numbersUnder(answer.event_id).length === 3, 'numbers');
  expect(ada.numbersUnder(answer.event_id)).toEqual(['1️⃣', '2️⃣', '3️⃣']);
  ada.react(answer.event_id, sign);
  expect(bodyOf(await ada.answerTo(answer.event_id))).toMatch(/^Hexagon, 4 in side/);
});

test('a number of another’s answer is not hers to press, and other signs mean nothing', async () => {
  const { ada, bea } = await roomOfTwo();
  const answer = await ada.ask('!cut hexagon 4in');
  await until(() => ada.numbersUnder(answer.event_id).length === 3, 'numbers');
  bea.react(answer.event_id, '1️⃣');
  ada.react(answer.event_id, '🐝');
  ada.react(answer.event_id, '9️⃣');
  await bea.settled();
  await ada.settled();
  expect(ada.answersTo(answer.event_id)).toEqual([]);
});

test('a picture has its size, its name, and words in its place', async () => {
  const { ada } = await roomOfTwo();
  const { standIn } = await bot();
  const ask = ada.say('!cut hexagon 1in');
  await until(() => ada.answersTo(ask).length === 2, 'the picture');
  const { content } = ada.answersTo(ask)[1] as WireEvent;
  const sent = standIn.uploads.get(String(content.url));
  expect(content).toMatchObject({
    msgtype: 'm.image',
    'm.mentions': {},
    filename: expect.stringMatching(/\.png$/),
  });
  expect(content.body).toMatch(/hexagon/i);
  expect(sent).toMatchObject({ type: 'image/png', name: content.filename });
  // PNG specification, the header chunk: width and height follow the signature, a length and a type.
  const [w, h] = [sent?.bytes.readUInt32BE(16), sent?.bytes.readUInt32BE(20)];
  expect(content.info).toEqual({ mimetype: 'image/png', size: sent?.bytes.length, w, h });
});

test('a printable template is a file', async () => {
  const { ada } = await roomOfTwo();
  const { standIn } = await bot();
  const ask = ada.say('!template hexagon 1in');
  const isFile = ({ content }: WireEvent) => content.msgtype === 'm.file';
  await until(() => ada.answersTo(ask).some(isFile), 'the file');
  const { content } = ada.answersTo(ask).find(isFile) as WireEvent;
  const sent = standIn.uploads.get(String(content.url));
  expect(content.filename).toMatch(/\.pdf$/);
  expect(content.info).toEqual({ mimetype: 'application/pdf', size: sent?.bytes.length });
  expect(sent?.bytes.subarray(0, 5).toString()).toBe('%PDF-');
});

test('in an encrypted room nothing is in the clear, not even a picture’s bytes or name', async () => {
  const { standIn } = await bot();
  const room = standIn.makeRoom({ members: [ADA, BEA], encrypted: true });
  const ada = new Voice(standIn, room, ADA);
  const ask = ada.say('!cut hexagon 1in');
  await until(
    () => ada.sent().filter(({ type }) => type === 'm.room.encrypted').length === 2,
    'two messages',
  );
  const uploads = [...standIn.uploads.values()].slice(-1);
  expect(uploads[0]).toMatchObject({ type: 'application/octet-stream', name: null });
  expect(uploads[0]?.bytes.subarray(1, 4).toString('latin1')).not.toBe('PNG');
  expect(relationOf(ada.sent()[0] as WireEvent)).toEqual({ 'm.in_reply_to': { event_id: ask } });
});

test('where a picture cannot be sent, that is said in its place, and the answer stands', async () => {
  const { ada } = await roomOfTwo();
  const { standIn, logged } = await bot();
  standIn.next('uploadContent', { status: 413, body: { errcode: 'M_TOO_LARGE', error: 'too large' } });
  const ask = ada.say('!cut hexagon 1in');
  await until(() => notices(ada, ask).length === 2, 'both');
  expect(bodyOf(notices(ada, ask)[0] as WireEvent)).toMatch(/^Hexagon/);
  expect(bodyOf(notices(ada, ask)[1] as WireEvent)).toMatch(/\.png could not be sent here/);
  expect(logged.filter(({ details }) => details.code === 'M_TOO_LARGE')).toHaveLength(1);
  ada.redact(ask);
  await until(() => notices(ada, ask).length === 0, 'all of it goes');
});
