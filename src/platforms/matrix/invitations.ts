import type { MatrixClient, Room } from 'matrix-js-sdk';
import { type Outbox, Refused } from './outbox.ts';
import { isWelcome } from './rights.ts';
import type { MatrixStart } from './settings.ts';
import { brings } from './trouble.ts';

/** Takes the invitations that the settings allow and declines the others, each once. */
export class Invitations {
  readonly #start: MatrixStart;
  readonly #outbox: Outbox;
  readonly #going = new Set<string>();
  readonly #seen = new Set<Room>();

  constructor(start: MatrixStart, outbox: Outbox) {
    this.#start = start;
    this.#outbox = outbox;
  }

  /**
   * An invitation was seen. While a sync is read, a room may look as it did long ago: whether the invitation still
   * stands is known when all of the sync is read.
   */
  note(room: Room): void {
    this.#seen.add(room);
  }

  /** Answers what was noted and still stands. */
  takeNoted(): void {
    for (const room of this.#seen) void this.#take(room);
    this.#seen.clear();
  }

  async #take(room: Room): Promise<void> {
    const { log, user, inviteFrom } = this.#start;
    if (room.getMyMembership() !== 'invite' || this.#going.has(room.roomId)) return;
    this.#going.add(room.roomId);
    const inviter = room.getMember(user)?.events.member?.getSender() ?? '';
    const welcome = isWelcome(inviter, inviteFrom);
    const act = (client: MatrixClient): Promise<unknown> =>
      welcome ? client.joinRoom(room.roomId) : client.leave(room.roomId);
    try {
      await this.#outbox.call(room.roomId, act);
      log.info(
        { room: room.roomId, inviter },
        welcome ? 'joined' : 'declined: "inviteFrom" names neither her nor her server',
      );
    } catch (error) {
      if (!(error instanceof Refused))
        log.warn({ ...brings(error), room: room.roomId }, 'an invitation came to nothing');
    } finally {
      this.#going.delete(room.roomId);
    }
  }
}
