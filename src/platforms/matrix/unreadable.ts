import { setTimeout as after } from 'node:timers/promises';
import type { MatrixClient, MatrixEvent, Room } from 'matrix-js-sdk';
import { reply } from '../../chat/reply.ts';
import type { Memory } from './answered.ts';
import type { Messages } from './messages.ts';
import { type MatrixStart, PLATFORM } from './settings.ts';

interface UnreadableNeeds {
  readonly start: MatrixStart;
  readonly memory: Memory;
  readonly messages: Messages;
  client(): Promise<MatrixClient>;
}

/** A key may come a little after its message: so long is it waited for, milliseconds. */
const PATIENCE = 10_000;

const SENTENCE =
  'I cannot read that message: its key did not reach me. Send it once more; if that does not help, invite me anew.';

/** Reads encrypted messages, and says so where one cannot be read: once for each key that is missing. */
export class Unreadable {
  readonly #needs: UnreadableNeeds;

  constructor(needs: UnreadableNeeds) {
    this.#needs = needs;
  }

  /** Whether it can be read now. */
  async isReadable(event: MatrixEvent): Promise<boolean> {
    const client = await this.#needs.client();
    await client.decryptEventIfNeeded(event);
    return !event.isDecryptionFailure();
  }

  /** Whether its key still comes; where not, its sender has been told. */
  async becomesReadable(event: MatrixEvent, room: Room): Promise<boolean> {
    const until = performance.now() + PATIENCE;
    while (performance.now() < until) {
      await after(100);
      if (!event.isDecryptionFailure()) return true;
    }
    await this.#tell(event, room);
    return false;
  }

  async #tell(event: MatrixEvent, room: Room): Promise<void> {
    const { start, memory, messages } = this.#needs;
    start.watch.count('undecryptable_total', { platform: PLATFORM });
    const id = event.getId() ?? '';
    const sender = event.getSender() ?? '';
    const key = String(event.getWireContent().session_id ?? '');
    const once = `unreadable:${room.roomId}:${key}`;
    start.log.warn(
      { room: room.roomId, event: id, why: event.decryptionFailureReason },
      'a message could not be decrypted',
    );
    if (await memory.wasTold(once)) return;
    const words = reply({ lines: [SENTENCE] });
    const target = { room: room.roomId, to: id, mentions: [sender] };
    await messages.send(words, target, once, { guild: room.roomId, member: sender });
    await memory.keepTold(once);
  }
}
