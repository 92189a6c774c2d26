import { type Reply, reply } from '../../chat/reply.ts';
import type { Memory, Sent } from './answered.ts';
import { type Asked, targetOf } from './ask.ts';
import type { Direct } from './direct.ts';
import type { Messages, Whose } from './messages.ts';
import { Refused, transactionOf } from './outbox.ts';

interface ApartNeeds {
  readonly memory: Memory;
  readonly messages: Messages;
  readonly direct: Direct;
}

/** Answers for the asker alone. */
export class Apart {
  readonly #needs: ApartNeeds;

  constructor(needs: ApartNeeds) {
    this.#needs = needs;
  }

  /**
   * Sends it to her direct room, with a pointer where she asked; or where that cannot be, a word on how she gets
   * it. `was` is what stands there already, where she edited her ask. The pointer is what was sent.
   */
  async send(said: Reply, asked: Asked, whose: Whose, was: Sent | null | undefined): Promise<Sent> {
    const { direct } = this.#needs;
    const point = (words: string) => this.#point(words, asked, whose, was);
    const room = await direct.roomWith(asked.event.sender);
    if (!room)
      return point(
        'That answer is for you alone, and I cannot open a room with you. Invite me to a direct room and ask there.',
      );
    try {
      await this.#say(said, asked, whose, room.id);
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      return point(
        'That answer is for you alone, and I may not write to our direct room. Invite me to a new one.',
      );
    }
    return point(
      room.isJoined
        ? 'That answer is for you alone: I sent it to our direct room.'
        : 'That answer is for you alone: I invited you to a room of our own, and it is there.',
    );
  }

  async #say(said: Reply, { event, asked, edit, home }: Asked, whose: Whose, room: string): Promise<void> {
    const { memory, messages } = this.#needs;
    const before = edit ? await memory.apartFrom(asked) : undefined;
    const kept = { ...whose, home: home.roomId };
    const apart =
      before?.room === room
        ? await messages.replace(said, before, { room }, event.id, kept)
        : await messages.send(said, { room }, event.id, kept);
    await memory.keepApart(asked, apart, whose);
  }

  #point(words: string, asked: Asked, whose: Whose, was: Sent | null | undefined): Promise<Sent> {
    const { messages } = this.#needs;
    const { id, sender } = asked.event;
    const target = { ...targetOf(asked), mentions: [sender] };
    const pointer = reply({ lines: [words] });
    const part = transactionOf(id, 'pointer');
    return was
      ? messages.replace(pointer, was, target, part, whose)
      : messages.send(pointer, target, part, whose);
  }

  /** What was for her alone goes, because of an event: her ask was edited or taken away. */
  async takeBack(ask: string, because: string): Promise<void> {
    const { memory, messages } = this.#needs;
    const apart = await memory.apartFrom(ask);
    if (!apart) return;
    await messages.takeBack(apart, because);
    await memory.dropApart(ask);
  }
}
