import { statSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Bot } from './bot.ts';
import { register } from './homeserver.ts';
import { AUTHENTICATED, download, fetched, OPEN } from './media.ts';
import { Member, type Seen, until } from './member.ts';
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

/** The room that the bot has opened with the third member; she comes in where she is asked to. */
async function directRoom(): Promise<string> {
  const opened = () => bea.client.getRooms().find(({ roomId }) => !Object.values(rooms).includes(roomId));
  await until(() => opened() !== undefined, 'an invitation');
  const room = opened();
  if (room?.getMyMembership() === 'invite') await bea.client.joinRoom(room.roomId);
  return room?.roomId ?? '';
}

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
    const pointer = await bea.ask(rooms[kind], '!me set seam:3/8in');
    expect(pointer.content['m.mentions']).toEqual({ user_ids: [bea.user] });
    expect(JSON.stringify(pointer.content)).not.toContain('3/8');
    const direct = await directRoom();
    const answer = await bea.sees(
      direct,
      ({ sender, content }) => sender === bot.account.user && /3\/8/.test(String(content.body)),
      'the answer',
    );
    expect(answer.encrypted).toBe(true);
    expect(bea.client.getRoom(direct)?.getInvitedAndJoinedMemberCount()).toBe(2);
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

  test('a picture is an image with its size and words, fetched by the authenticated way alone', async () => {
    const room = rooms[kind];
    const ask = await ada.say(room, '!count rosette rounds:2');
    const [picture] = await ada.attachments(room, ask, 1);
    const content = picture?.content ?? {};
    const bytes = await fetched(content, ada);
    expect(content.msgtype).toBe('m.image');
    expect(bytes.subarray(0, 8)).toEqual(PNG);
    const [w, h] = [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
    expect(content.info).toEqual({ mimetype: 'image/png', size: bytes.byteLength, w, h });
    expect(content.filename).toMatch(/\.png$/);
    expect(content.body).toMatch(/rosette/i);
    await expectLocked(content, bytes, kind === 'encrypted');
  });

  test('a template is a file to print', async () => {
    const room = rooms[kind];
    const ask = await ada.say(room, '!template hexagon 1in');
    const files = await ada.attachments(room, ask, 1);
    const content = files.find(({ content: { msgtype } }) => msgtype === 'm.file')?.content ?? {};
    const bytes = await fetched(content, ada);
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
    expect(content.info).toEqual({ mimetype: 'application/pdf', size: bytes.byteLength });
    expect(content.filename).toMatch(/\.pdf$/);
    await expectLocked(content, bytes, kind === 'encrypted');
  });

  test('a file for the asker alone arrives in the direct room', async () => {
    await bea.ask(rooms[kind], '!me export');
    const direct = await directRoom();
    const isExport = ({ content }: Seen) => content.msgtype === 'm.file';
    const before = bea.seen(direct).filter(isExport).length;
    await bea.ask(rooms[kind], '!me export');
    await until(() => bea.seen(direct).filter(isExport).length > before, 'the file');
    const file = bea.seen(direct).filter(isExport).at(-1);
    expect(file?.encrypted).toBe(true);
    const book = JSON.parse((await fetched(file?.content ?? {}, bea)).toString());
    expect(book.member).toBe(bea.user);
  });

  test('what an answer brought with it goes with it', async () => {
    const room = rooms[kind];
    const ask = await ada.say(room, '!plan field 60x72in 1in');
    const answer = await ada.answerTo(room, ask);
    const files = await ada.attachments(room, ask, 3);
    const isNumber = ({ type, relation }: Seen) => type === 'm.reaction' && relation?.event_id === answer.id;
    const number = await ada.sees(room, isNumber, 'a number');
    await ada.client.redactEvent(room, ask);
    for (const one of [answer, ...files, number])
      await until(() => one.event.isRedacted(), `${one.type} is taken back`);
  });
});

const PNG = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

/** The homeserver holds the file as it is, or locked in an encrypted room; and gives it to members alone. */
async function expectLocked(content: Seen['content'], bytes: Buffer, locked: boolean): Promise<void> {
  const url = locked ? (content.file as { url: string }).url : String(content.url);
  const held = Buffer.from(await (await download(url, ada)).arrayBuffer());
  expect(held.equals(bytes)).toBe(!locked);
  expect((await download(url, ada, OPEN)).status).toBe(404);
  expect((await download(url, ada, AUTHENTICATED, '')).status).toBe(401);
}

test('standard output is the log and nothing else, and neither token nor password stands in it', async () => {
  expect(bot.errors.join('')).toBe('');
  const all = bot.output.join('\n');
  for (const line of bot.output) expect(() => JSON.parse(line), line).not.toThrow();
  expect(all).not.toContain(bot.session().accessToken);
  expect(all).not.toContain(bot.account.password);
  for (const file of ['session.json', 'keys.sqlite', 'keys.sqlite-wal'])
    expect(statSync(`${bot.data}/matrix/${file}`).mode & 0o777, file).toBe(0o600);
  expect(bot.logged(40).map(({ msg }) => msg)).toEqual([]);
});
