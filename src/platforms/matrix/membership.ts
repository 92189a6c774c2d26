import type { Room } from 'matrix-js-sdk';
import { noteJoined, noteLeft } from './left.ts';
import { type MatrixStart, PLATFORM } from './settings.ts';
import { brings } from './trouble.ts';

/**
 * What becomes of the bot in its rooms: come in, gone, or put out by somebody. While a sync is read a room may
 * look as it did long ago: what is so is known when all of the sync is read.
 */
export class Memberships {
  readonly #start: MatrixStart;
  /** Rooms in which something changed, with what was before. */
  readonly #changed = new Map<Room, string | undefined>();

  constructor(start: MatrixStart) {
    this.#start = start;
  }

  /** Something changed in a room; how it stands is looked at later. */
  note(room: Room, before: string | undefined): void {
    if (!this.#changed.has(room)) this.#changed.set(room, before);
  }

  /** All of a sync is read. */
  takeNoted(): void {
    for (const [room, before] of this.#changed) void this.#take(room, before);
    this.#changed.clear();
  }

  async #take(room: Room, before: string | undefined): Promise<void> {
    const { log, watch, user } = this.#start;
    const { roomId } = room;
    const now = room.getMyMembership();
    try {
      if (now === 'join') return await noteJoined(roomId, this.#start);
      if (before !== 'join' || (now !== 'leave' && now !== 'ban')) return;
      const by = room.getMember(user)?.events.member?.getSender();
      watch.count('rooms_left_total', { platform: PLATFORM });
      const words = now === 'ban' ? 'banned from a room' : 'put out of a room';
      if (by === user) log.info({ room: roomId }, 'left a room; its facts go in 30 days');
      else log.warn({ room: roomId, by }, `${words}; its facts go in 30 days`);
      await noteLeft(roomId, this.#start);
    } catch (error) {
      log.error({ ...brings(error), room: roomId }, 'could not keep that a room was joined or left');
    }
  }
}
