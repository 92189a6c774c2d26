import type { MatrixClient, Room } from 'matrix-js-sdk';
import type { Memory } from './answered.ts';
import { type Outbox, Refused } from './outbox.ts';
import { isAlone } from './rights.ts';
import { TOO_OLD } from './settings.ts';
import { Turns } from './turns.ts';

interface DirectNeeds {
  readonly outbox: Outbox;
  readonly memory: Memory;
  client(): Promise<MatrixClient>;
}

/** A room with one member alone. */
export interface DirectRoom {
  readonly id: string;
  /** She is in it; otherwise she has been asked into it. */
  readonly isJoined: boolean;
}

/** The rooms in which members are alone with the bot. */
export class Direct {
  readonly #needs: DirectNeeds;
  readonly #turns = new Turns();

  constructor(needs: DirectNeeds) {
    this.#needs = needs;
  }

  /**
   * The room there is, else a new one; null where she cannot be asked into one. It is remembered unless she is
   * `forgotten`.
   */
  roomWith(user: string, forgotten = false): Promise<DirectRoom | null> {
    return this.#turns.take(user, async () => {
      const client = await this.#needs.client();
      const known = await this.#needs.memory.directRoom(user);
      const room = (known && client.getRoom(known)) || null;
      const found =
        room && isOurs(room, user) ? room : client.getRooms().find((one) => isOpened(one, user, client));
      if (!found) return this.#open(user, forgotten);
      if (found.roomId !== known && !forgotten) await this.#needs.memory.keepDirectRoom(user, found.roomId);
      return { id: found.roomId, isJoined: found.getMember(user)?.membership === 'join' };
    });
  }

  /** She talks to us in a room of her own: what is for her alone can be said there. */
  async met(user: string, room: Room): Promise<void> {
    if (!isOurs(room, user)) return;
    const { memory } = this.#needs;
    if ((await memory.directRoom(user)) === undefined) await memory.keepDirectRoom(user, room.roomId);
  }

  async #open(user: string, forgotten: boolean): Promise<DirectRoom | null> {
    const { outbox, memory } = this.#needs;
    try {
      // Tried again, it may be there already: only the word of it was lost.
      const id = await outbox.call(
        `direct:${user}`,
        async (now) =>
          now.getRooms().find((one) => isOpened(one, user, now))?.roomId ?? (await create(now, user)),
      );
      if (!forgotten) await memory.keepDirectRoom(user, id);
      await this.#arrives(id, user);
      return { id, isJoined: false };
    } catch (error) {
      if (error instanceof Refused) return null;
      throw error;
    }
  }

  /**
   * Waits until the sync has brought the new room and her in it: a room comes piece by piece, and what is said
   * before is locked for nobody but us. The homeserver may fail meanwhile: then as long as for any message.
   */
  async #arrives(id: string, user: string): Promise<void> {
    const until = performance.now() + TOO_OLD;
    while (performance.now() < until) {
      const client = await this.#needs.client();
      const isInvited = client.getRoom(id)?.getMember(user)?.membership !== undefined;
      if (isInvited && (await client.getCrypto()?.isEncryptionEnabledInRoom(id))) return;
      await this.#needs.outbox.pause(100);
    }
    throw new Error('a new room did not arrive');
  }
}

async function create(client: MatrixClient, user: string): Promise<string> {
  const { room_id: id } = await client.createRoom({
    is_direct: true,
    invite: [user],
    preset: 'trusted_private_chat' as never,
    initial_state: [
      { type: 'm.room.encryption', state_key: '', content: { algorithm: 'm.megolm.v1.aes-sha2' } },
    ],
  });
  return id;
}

/** She is there or asked to be, and nobody else: whoever came in later would read along. */
function isOurs(room: Room, user: string): boolean {
  const membership = room.getMember(user)?.membership;
  return (
    room.getMyMembership() === 'join' && isAlone(room) && (membership === 'join' || membership === 'invite')
  );
}

/** A direct room, opened by her or by us, that we may have forgotten about. */
function isOpened(room: Room, user: string, client: MatrixClient): boolean {
  if (!isOurs(room, user)) return false;
  const us = room.getMember(client.getSafeUserId());
  return us?.getDMInviter() === user || room.getMember(user)?.getDMInviter() === client.getSafeUserId();
}
