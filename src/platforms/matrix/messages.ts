import { type Picture, type Recipe, type Reply, reply } from '../../chat/reply.ts';
import type { Log } from '../platform.ts';
import type { Memory, Sent } from './answered.ts';
import { attachmentOf, lockFile, typeOf } from './attachment.ts';
import { Few } from './few.ts';
import { type Outbox, Refused, transactionOf } from './outbox.ts';
import { brings } from './trouble.ts';
import { numbered, REACTIONS, type Words, wordsOf } from './words.ts';

/** Where a message goes, and what it answers. */
export interface Target {
  readonly room: string;
  /** The message that is answered; none where something is said unasked. */
  readonly to?: string | undefined;
  readonly thread?: string | undefined;
  /** Those who are meant by it, beyond everybody who reads along. */
  readonly mentions?: readonly string[] | undefined;
}

interface MessagesNeeds {
  readonly outbox: Outbox;
  readonly memory: Memory;
  readonly prefix: string;
  readonly log: Log;
  draw(recipe: Recipe): Promise<Uint8Array>;
}

export interface Whose {
  readonly guild: string;
  readonly member: string;
  /** The room whose guild was asked in, where the answer goes to another. */
  readonly home?: string;
}

/** So many answers are on their way at once: enough to keep a homeserver busy. */
const AT_ONCE = 6;

/** Makes messages of replies and sends them. */
export class Messages {
  readonly #needs: MessagesNeeds;
  readonly #few = new Few(AT_ONCE);

  constructor(needs: MessagesNeeds) {
    this.#needs = needs;
  }

  /** Sends a reply with its pictures and numbers. `event` names every part, so that none is sent twice. */
  send(reply: Reply, target: Target, event: string, whose: Whose): Promise<Sent> {
    return this.#few.take(() => this.#send(reply, target, event, whose));
  }

  async #send(reply: Reply, target: Target, event: string, whose: Whose): Promise<Sent> {
    const words = wordsOf(reply, this.#needs.prefix);
    const content = { ...noticeOf(words), ...relationOf(target) };
    const main = await this.#say(target.room, content, transactionOf(event, 'answer'));
    return this.#rest(reply, words, { room: target.room, main }, target, event, whose);
  }

  /** Puts a reply in an earlier one's place: its words are edited, pictures and numbers made anew. */
  async replace(reply: Reply, was: Sent, target: Target, event: string, whose: Whose): Promise<Sent> {
    const { mentions } = target;
    const words = await this.edit(reply, { ...was, mentions }, transactionOf(event, 'edit'));
    await this.#takeBack(was.room, [...was.others, ...was.reactions], event);
    await this.#needs.memory.dropChoices(was.main);
    return this.#rest(reply, words, was, { ...target, room: was.room }, event, whose);
  }

  /** Puts other words in a message's place. */
  async edit(
    reply: Reply,
    { room, main, mentions }: Pick<Sent, 'room' | 'main'> & Pick<Target, 'mentions'>,
    transaction: string,
  ): Promise<Words> {
    const words = wordsOf(reply, this.#needs.prefix);
    const notice = { ...noticeOf(words), ...relationOf({ room, mentions }) };
    const content = {
      ...notice,
      body: `* ${notice.body}`,
      formatted_body: `* ${notice.formatted_body}`,
      'm.new_content': notice,
      'm.relates_to': { rel_type: 'm.replace', event_id: main },
    };
    await this.#say(room, content, transaction);
    return words;
  }

  /** Takes an answer back, all of it. */
  async takeBack({ room, main, others, reactions }: Sent, event: string): Promise<void> {
    await this.#takeBack(room, [main, ...others, ...reactions], event);
    await this.#needs.memory.dropChoices(main);
  }

  async #takeBack(room: string, events: readonly string[], event: string): Promise<void> {
    for (const one of events) await this.#needs.outbox.redact(room, one, transactionOf(event, 'redact', one));
  }

  #say(room: string, content: object, transaction: string): Promise<string> {
    return this.#needs.outbox.send(room, 'm.room.message', content, transaction);
  }

  /** What follows the words: the whole of them where they were too long, pictures and files, numbers. */
  async #rest(
    reply: Reply,
    words: Words,
    { room, main }: Pick<Sent, 'room' | 'main'>,
    target: Target,
    event: string,
    whose: Whose,
  ): Promise<Sent> {
    const files = reply.pictures.map((picture) => ({
      ...picture,
      bytes: () => this.#needs.draw(picture.of),
    }));
    const whole = words.whole;
    if (whole !== undefined)
      files.unshift({ ...WHOLE, of: { draw: '' }, bytes: async () => Buffer.from(whole, 'utf8') });
    const others: string[] = [];
    for (const [i, file] of files.entries())
      others.push(await this.#file(file, target, transactionOf(event, 'picture', `${i}`)));
    return { room, main, others, reactions: await this.#numbers(reply, main, target, event, whose) };
  }

  /** Sends a picture or file; where it cannot be, a word that it is missing. */
  async #file(file: Drawn, target: Target, transaction: string): Promise<string> {
    const relation = relationOf({ ...target, mentions: [] });
    try {
      const bytes = await file.bytes();
      const at = await this.#upload(target.room, file.name, bytes);
      return await this.#say(target.room, { ...attachmentOf(file, bytes, at), ...relation }, transaction);
    } catch (error) {
      if (!(error instanceof Refused))
        this.#needs.log.error({ ...brings(error), file: file.name }, 'a picture or file could not be made');
      const sorry = noticeOf(wordsOf(missing(file.name), this.#needs.prefix));
      return this.#say(target.room, { ...sorry, ...relation }, transactionOf(transaction, 'missing'));
    }
  }

  async #upload(room: string, name: string, bytes: Uint8Array): Promise<{ url: string } | { file: object }> {
    const { outbox } = this.#needs;
    const upload = (what: Uint8Array, type: string, named?: string) =>
      outbox.call(room, async (client) => {
        const options = {
          type,
          ...(named ? { name: named, includeFilename: true } : { includeFilename: false }),
        };
        return (await client.uploadContent(Buffer.from(what) as never, options)).content_uri;
      });
    if (!(await outbox.encrypts(room))) return { url: await upload(bytes, typeOf(name), name) };
    const locked = lockFile(bytes);
    return { file: { ...locked.file, url: await upload(locked.bytes, 'application/octet-stream') } };
  }

  /** What the numbers stand for is kept before they can be pressed. */
  async #numbers(reply: Reply, main: string, target: Target, event: string, whose: Whose): Promise<string[]> {
    const { outbox, memory } = this.#needs;
    const asks = numbered(reply.choices).map(({ ask, open = false }) => ({ ask, open }));
    if (asks.length === 0) return [];
    const { thread = null, room } = target;
    const { guild, member, home = room } = whose;
    await memory.keepChoices(main, { meantFor: member, thread, home, asks }, { guild, member });
    const sent: string[] = [];
    for (const i of asks.keys()) {
      const content = { 'm.relates_to': { rel_type: 'm.annotation', event_id: main, key: REACTIONS[i] } };
      try {
        sent.push(await outbox.send(room, 'm.reaction', content, transactionOf(event, 'number', `${i}`)));
      } catch (error) {
        // Members can put the number under the message themselves.
        if (error instanceof Refused) break;
        throw error;
      }
    }
    return sent;
  }
}

interface Drawn extends Picture {
  bytes(): Promise<Uint8Array>;
}

const WHOLE = { name: 'answer.txt', alt: 'The whole answer: it is too long for one message' };

const missing = (name: string): Reply =>
  reply({ lines: [`${name} could not be sent here. Ask me for it in a direct room.`] });

/** Nobody is meant by it unless that is stated. */
const noticeOf = ({ plain, html }: Words) => ({
  msgtype: 'm.notice',
  body: plain,
  format: 'org.matrix.custom.html',
  formatted_body: html,
  'm.mentions': {},
});

/** How a message hangs together with what it answers, and whom it means. */
function relationOf({ to, thread, mentions = [] }: Target): object {
  const meant = { 'm.mentions': mentions.length > 0 ? { user_ids: mentions } : {} };
  if (!to) return meant;
  const answers = { 'm.in_reply_to': { event_id: to } };
  if (!thread) return { ...meant, 'm.relates_to': answers };
  return {
    ...meant,
    'm.relates_to': { rel_type: 'm.thread', event_id: thread, is_falling_back: false, ...answers },
  };
}
