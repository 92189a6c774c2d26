import type { Room } from 'matrix-js-sdk';
import type { Said } from './asked.ts';
import type { Target } from './messages.ts';

/** An ask ready to be answered. */
export interface Asked {
  readonly event: Said;
  readonly words: string;
  /** The message that is answered: the edited one where this is an edit, ours where a number was pressed. */
  readonly asked: string;
  readonly edit: boolean;
  readonly thread: string | undefined;
  /** Where it was asked. */
  readonly room: Room;
  /** The room whose guild is meant. */
  readonly home: Room;
}

/** Where its answer goes. */
export const targetOf = ({ room, asked, thread }: Asked): Target => ({
  room: room.roomId,
  to: asked,
  thread,
});
