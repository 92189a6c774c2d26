import type { MatrixClient } from 'matrix-js-sdk';
import type { Memory } from './answered.ts';
import { type Outbox, Refused } from './outbox.ts';

interface DirectNeeds {
  readonly outbox: Outbox;
  readonly memory: Memory;
  client(): Promise<MatrixClient>;
}

/** A room with one member alone: the one there is, else a new one; null where she cannot be asked into one. */
export async function directRoomWith(user: string, needs: DirectNeeds): Promise<string | null> {
  const client = await needs.client();
  const known = await needs.memory.directRoom(user);
  if (known && isStillOurs(client, known, user)) return known;
  try {
    const { room_id: made } = await needs.outbox.call(`direct:${user}`, (now) =>
      now.createRoom({
        is_direct: true,
        invite: [user],
        preset: 'trusted_private_chat' as never,
        initial_state: [
          { type: 'm.room.encryption', state_key: '', content: { algorithm: 'm.megolm.v1.aes-sha2' } },
        ],
      }),
    );
    await needs.memory.keepDirectRoom(user, made);
    await knownToUs(needs.client, made);
    return made;
  } catch (error) {
    if (error instanceof Refused) return null;
    throw error;
  }
}

/** She is there, or has not yet answered the invitation. */
function isStillOurs(client: MatrixClient, id: string, user: string): boolean {
  const room = client.getRoom(id);
  if (room?.getMyMembership() !== 'join') return false;
  const membership = room.getMember(user)?.membership;
  return membership === 'join' || membership === 'invite';
}

/** Waits until the sync has brought the new room: only then is it known to be encrypted. */
async function knownToUs(clientNow: () => Promise<MatrixClient>, id: string): Promise<void> {
  for (let tries = 0; tries < 200; tries++) {
    const client = await clientNow();
    if (client.getRoom(id) && (await client.getCrypto()?.isEncryptionEnabledInRoom(id))) return;
    await new Promise((done) => setTimeout(done, 50));
  }
  throw new Error('a new room did not arrive');
}
