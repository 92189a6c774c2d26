import { afterAll, beforeAll, expect, test } from 'vitest';
import { commands } from '../../../commands/index.ts';
import type { Picture, Recipe, Reply } from '../../../src/chat/reply.ts';
import { draw } from '../../../src/pictures/draw.ts';
import { openAsking } from '../../commands/asking.ts';
import { Bot } from './bot.ts';
import { register } from './homeserver.ts';
import { fetched } from './media.ts';
import { Member, type Seen } from './member.ts';
import { here } from './one-homeserver.ts';

/** Asks that come together are answered one after another: the last may wait a little, seconds. */
const PATIENCE = 60;

let bot: Bot;
const members: Member[] = [];

beforeAll(async () => {
  bot = new Bot(here(), await register(here(), 'bee'));
  await bot.start();
});

afterAll(async () => {
  for (const member of members) member.stop();
  await bot.end('SIGTERM');
});

/** A room with the bot in which the first member is the organiser, and a third so that it is no direct one. */
async function roomOf(encrypted: boolean): Promise<{ ada: Member; room: string }> {
  const ada = await Member.join(here(), 'ada');
  const bea = await Member.join(here(), 'bea');
  members.push(ada);
  const room = await ada.makeRoom([bot.account.user], encrypted);
  await ada.bring(room, bea);
  bea.stop();
  return { ada, room };
}

/** The words of a body, marked up or not. */
const wordsOf = (text: unknown): string[] =>
  String(text)
    .replace(/<\/?(?:strong|em|code)>/g, '')
    .replace(/<[^>]+>/g, ' ')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&amp;/g, '&')
    .split(/[\s|]+/)
    .filter(Boolean);

const isNotice = ({ content }: Seen): boolean => content.msgtype === 'm.notice';

const known = new Map<string, Promise<Uint8Array>>();

/** A picture drawn in this process, once for both rooms. */
function picture(of: Recipe): Promise<Uint8Array> {
  const key = JSON.stringify(of);
  const drawn = known.get(key) ?? draw(of);
  known.set(key, drawn);
  return drawn;
}

/** One command's examples are asked together, in their order, as one may lean on the one before. */
test.concurrent.each([
  ['plain', false],
  ['encrypted', true],
] as const)(
  'in a room that is %s every example of every command is answered, its pictures arrive as they were drawn',
  async (_kind, encrypted) => {
    const { ada, room } = await roomOf(encrypted);
    // The same asks, asked of the same commands in this process, say which pictures should come.
    const asking = openAsking();
    const who = { as: ada.account.name, organiser: true };
    let pictures = 0;
    for (const load of Object.values(commands)) {
      const asked: { example: string; ask: string; expected: Reply }[] = [];
      for (const example of (await load()).forms.flatMap(({ examples }) => examples)) {
        const expected = await asking(example, { ...who, now: new Date().toISOString() });
        asked.push({ example, ask: await ada.say(room, `!${example.slice(1)}`), expected });
      }
      for (const { example, ask, expected } of asked) {
        const seen = await ada.answerTo(room, ask, PATIENCE);
        expectNotice(seen, example, encrypted);
        // Nobody is meant but who is shown the way to an answer that is hers alone.
        const apart = expected.audience === 'asker' && !expected.error;
        expect(seen.content['m.mentions'], example).toEqual(apart ? { user_ids: [ada.user] } : {});
        if (expected.audience !== 'asker')
          pictures += await expectPictures(ada, room, ask, example, expected.pictures);
        expect(ada.answers(room, ask).filter(isNotice), example).toHaveLength(1);
      }
    }
    expect(pictures).toBeGreaterThan(40);
  },
  400_000,
);

function expectNotice({ sender, encrypted, content }: Seen, example: string, inEncrypted: boolean): void {
  expect(sender, example).toBe(bot.account.user);
  expect(encrypted, example).toBe(inEncrypted);
  expect(content.format, example).toBe('org.matrix.custom.html');
  expect(wordsOf(content.formatted_body), example).toEqual(wordsOf(content.body));
}

const beginningOf = (file: Buffer): string => /^\D+/.exec(file.toString())?.[0] ?? '';

/** Fetches what came with an answer and holds it byte for byte against what was drawn here; how many. */
async function expectPictures(
  ada: Member,
  room: string,
  ask: string,
  example: string,
  expected: readonly Picture[],
): Promise<number> {
  const seen = await ada.attachments(room, ask, expected.length);
  const named = seen.map(({ content }) => content.filename);
  expect(named, example).toEqual(expected.map(({ name }) => name));
  for (const [i, { name, alt, of }] of expected.entries()) {
    const content = seen[i]?.content ?? {};
    const bytes = await fetched(content, ada);
    const drawn = Buffer.from(await picture(of));
    // An exported book has moments and ids in it; it begins in the same way.
    if (of.draw === 'text') expect(beginningOf(bytes), example).toBe(beginningOf(drawn));
    else expect(bytes.equals(drawn), `${example}: ${name}`).toBe(true);
    expect(content.body, example).toBe(alt || name);
    expect(content['m.mentions'], example).toEqual({});
    expect(content.info, example).toMatchObject({ size: bytes.byteLength });
  }
  return expected.length;
}
