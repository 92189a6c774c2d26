import type { MatrixClient } from 'matrix-js-sdk';
import type { Reply } from '../../chat/reply.ts';
import type { Memory } from './answered.ts';
import type { Messages } from './messages.ts';
import { type Outbox, Refused, transactionOf } from './outbox.ts';

interface StandingNeeds {
  readonly outbox: Outbox;
  readonly memory: Memory;
  readonly messages: Messages;
  client(): Promise<MatrixClient>;
}

/** One message of a name stands pinned in a room and is changed, not repeated; unpinned where pinning is refused. */
export async function keepStanding(
  said: Reply,
  room: string,
  event: string,
  needs: StandingNeeds,
): Promise<void> {
  const { memory, messages } = needs;
  const name = said.standing ?? '';
  const words = { ...said, choices: [], pictures: [] };
  const known = await memory.standing(room, name);
  if (known) return void (await messages.edit(words, room, known, transactionOf(event, 'standing')));
  const { main } = await messages.send(words, { room }, `${event} standing`, { guild: room, member: '' });
  await memory.keepStanding(room, name, main);
  await pin(room, main, needs);
}

async function pin(room: string, message: string, { outbox, client }: StandingNeeds): Promise<void> {
  const state = (await client()).getRoom(room)?.currentState.getStateEvents('m.room.pinned_events', '');
  const pinned = state?.getContent().pinned;
  const before = Array.isArray(pinned) ? pinned : [];
  try {
    await outbox.call(room, (now) =>
      now.sendStateEvent(room, 'm.room.pinned_events' as never, { pinned: [...before, message] } as never),
    );
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
  }
}
