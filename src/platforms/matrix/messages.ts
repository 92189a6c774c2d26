import type { Picture, Recipe, Reply } from '../../chat/reply.ts';
import type { Answered, Memory } from './answered.ts';
import { attachmentOf, lockFile, typeOf } from './attachment.ts';
import { type Outbox, Refused, transactionOf } from './outbox.ts';
import { numbered, REACTIONS, wordsOf } from './words.ts';

/** Where a message goes, and what it answers. */
export interface Target {
  readonly room: string;
  /** The message that is answered; none where something is said unasked. */
  readonly to?: string | undefined;
  readonly thread?: string | undefined;
  /** Those who are meant by it, beyond everybody who reads along. */
  readonly mentions?: readonly string[];
}

interface MessagesNeeds {
  readonly outbox: Outbox;
  readonly memory: Memory;
  readonly prefix: string;
  draw(recipe: Recipe): Promise<Uint8Array>;
}

export interface Whose {
  readonly guild: string;
  readonly member: string;
}

/** Makes messages of replies and sends them. */
export class Messages {
  readonly #needs: MessagesNeeds;

  constructor(needs: MessagesNeeds) {
    this.#needs = needs;
  }

  /** Sends a reply with its pictures and numbers. `event` names every part, so that none is sent twice. */
  async send(reply: Reply, target: Target, event: string, whose: Whose): Promise<Answered> {
    const { outbox } = this.#needs;
    const main = await outbox.send(
      target.room,
      'm.room.message',
      { ...this.#words(reply), ...relationOf(target) },
      transactionOf(event, 'answer'),
    );
    const others = await this.#pictures(reply.pictures, target, event);
    const reactions = await this.#numbers(reply, main, target, event, whose);
    return { room: target.room, main, others, reactions };
  }

  /** Puts a reply in an earlier one's place: its words are edited, pictures and numbers made anew. */
  async replace(
    reply: Reply,
    was: Answered & { room: string; main: string },
    target: Target,
    event: string,
    whose: Whose,
  ): Promise<Answered> {
    await this.edit(reply, was.room, was.main, transactionOf(event, 'edit'));
    await this.#takeBack(was.room, [...was.others, ...was.reactions], event);
    await this.#needs.memory.dropChoices(was.main);
    const others = await this.#pictures(reply.pictures, target, event);
    const reactions = await this.#numbers(reply, was.main, target, event, whose);
    return { room: was.room, main: was.main, others, reactions };
  }

  /** Puts other words in a message's place. */
  async edit(reply: Reply, room: string, message: string, transaction: string): Promise<void> {
    const words = this.#words(reply);
    const content = {
      ...words,
      body: `* ${words.body}`,
      formatted_body: `* ${words.formatted_body}`,
      'm.new_content': words,
      'm.relates_to': { rel_type: 'm.replace', event_id: message },
    };
    await this.#needs.outbox.send(room, 'm.room.message', content, transaction);
  }

  /** Takes an answer back, all of it. */
  async takeBack({ room, main, others, reactions }: Answered, event: string): Promise<void> {
    if (room === null || main === null) return;
    await this.#takeBack(room, [main, ...others, ...reactions], event);
    await this.#needs.memory.dropChoices(main);
  }

  async #takeBack(room: string, events: readonly string[], event: string): Promise<void> {
    for (const one of events) await this.#needs.outbox.redact(room, one, transactionOf(event, 'redact', one));
  }

  #words(reply: Reply) {
    const { plain, html } = wordsOf(reply, this.#needs.prefix);
    return {
      msgtype: 'm.notice',
      body: plain,
      format: 'org.matrix.custom.html',
      formatted_body: html,
      'm.mentions': {},
    };
  }

  async #pictures(pictures: readonly Picture[], target: Target, event: string): Promise<string[]> {
    const sent: string[] = [];
    for (const [i, picture] of pictures.entries()) {
      const bytes = await this.#needs.draw(picture.of);
      const at = await this.#upload(target.room, picture.name, bytes);
      const content = { ...attachmentOf(picture, bytes, at), ...relationOf({ ...target, mentions: [] }) };
      sent.push(
        await this.#needs.outbox.send(
          target.room,
          'm.room.message',
          content,
          transactionOf(event, 'picture', `${i}`),
        ),
      );
    }
    return sent;
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
    await memory.keepChoices(main, { meantFor: whose.member, thread: target.thread ?? null, asks }, whose);
    const sent: string[] = [];
    for (const i of asks.keys()) {
      const relation = { rel_type: 'm.annotation', event_id: main, key: REACTIONS[i] };
      try {
        sent.push(
          await outbox.send(
            target.room,
            'm.reaction',
            { 'm.relates_to': relation },
            transactionOf(event, 'number', `${i}`),
          ),
        );
      } catch (error) {
        // Members can put the number under the message themselves.
        if (error instanceof Refused) break;
        throw error;
      }
    }
    return sent;
  }
}

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
