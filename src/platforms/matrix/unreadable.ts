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

const NO_KEY =
  'I cannot read that message: its key did not reach me. Send it once more; if that does not help, invite me anew.';

/** What else the library may find to be the reason, and what its sender can do about it. */
const SENTENCES: Readonly<Record<string, string>> = {
  MEGOLM_KEY_WITHHELD_FOR_UNVERIFIED_DEVICE:
    'I cannot read that message: your app gives its keys to verified devices alone. Allow others in its settings for this room, and send it once more.',
};

/** Reads encrypted messages, and says so where one cannot be read: once for each key that is missing. */
export class Unreadable {
  readonly #needs: UnreadableNeeds;
  readonly #stopping = new AbortController();

  constructor(needs: UnreadableNeeds) {
    this.#needs = needs;
  }

  /** Whether it can be read now. */
  async isReadable(event: MatrixEvent): Promise<boolean> {
    const client = await this.#needs.client();
    await client.decryptEventIfNeeded(event);
    return !event.isDecryptionFailure();
  }

  /** Nothing is waited for any more: what cannot be read yet is left for the next start. */
  stop(): void {
    this.#stopping.abort();
  }

  /** Whether its key still comes; where not, its sender has been told. */
  async becomesReadable(event: MatrixEvent, room: Room): Promise<boolean> {
    // Answered, or told, by a device that we had before.
    if (await this.#needs.memory.answerTo(event.getId() ?? '')) return false;
    const { signal } = this.#stopping;
    const until = performance.now() + PATIENCE;
    while (performance.now() < until) {
      await after(100, undefined, { signal });
      if (!event.isDecryptionFailure()) return true;
    }
    await this.#tell(event, room);
    return false;
  }

  async #tell(event: MatrixEvent, room: Room): Promise<void> {
    const { start, memory, messages } = this.#needs;
    const id = event.getId() ?? '';
    start.watch.count('undecryptable_total', { platform: PLATFORM });
    const sender = event.getSender() ?? '';
    const key = String(event.getWireContent().session_id ?? '');
    // Another device is without the key anew.
    const device = (await this.#needs.client()).getDeviceId();
    const once = `unreadable:${device}:${room.roomId}:${key}`;
    start.log.warn(
      { room: room.roomId, event: id, why: event.decryptionFailureReason },
      'a message could not be decrypted',
    );
    const whose = { guild: room.roomId, member: sender };
    if (!(await memory.wasTold(once))) {
      const target = { room: room.roomId, to: id, thread: threadOf(event), mentions: [sender] };
      const words = SENTENCES[event.decryptionFailureReason ?? ''] ?? NO_KEY;
      await messages.send(reply({ lines: [words] }), target, once, whose);
      await memory.keepTold(once);
    }
    await memory.keepAnswer(id, { did: false, here: null }, whose);
  }
}

/** What a message hangs on stands outside what is locked. */
function threadOf(event: MatrixEvent): string | undefined {
  const { rel_type, event_id } = event.getWireContent()['m.relates_to'] ?? {};
  return rel_type === 'm.thread' && typeof event_id === 'string' ? event_id : undefined;
}
