import { commands } from '../../commands/index.ts';
import { openRoom, type Room } from '../../src/chat/dispatch.ts';
import type { Facts } from '../../src/chat/facts.ts';
import type { Reply } from '../../src/chat/reply.ts';
import { openStore, type Store } from '../../src/store/open.ts';

export interface AskedAs {
  readonly as?: string;
  readonly organiser?: boolean;
  readonly place?: string;
  readonly event?: string;
  readonly now?: string;
  readonly guild?: string;
}

/** A guild's room over a real database, in memory unless a file is named; faults are thrown. */
export interface GuildRoom {
  readonly facts: Facts;
  readonly store: Store;
  readonly room: Room;
  /** Asks as a member; `Ada` the organiser unless told otherwise. */
  ask(words: string, as?: AskedAs): Promise<Reply>;
  /** The value of a figure of the reply to an ask. */
  figure(words: string, name: string, as?: AskedAs): Promise<unknown>;
  /** The time that it is from now on. */
  at(now: string): void;
}

export async function guildRoom(file = ':memory:', start = '2026-12-08T12:00:00Z'): Promise<GuildRoom> {
  let now = start;
  const opened = await openStore(file, { now: () => new Date(now) });
  if (!opened.ok) throw new Error(opened.problem.code);
  const store = opened.value;
  const room = openRoom({
    commands,
    facts: store,
    onFault: (error) => {
      throw error;
    },
  });
  const ask = (words: string, as: AskedAs = {}): Promise<Reply> => {
    const name = as.as ?? 'Ada';
    return room.answer({
      who: { id: name.toLowerCase(), name, organiser: as.organiser ?? name === 'Ada' },
      guild: as.guild ?? 'guild',
      place: as.place ?? 'home',
      event: as.event ?? null,
      words,
      now: new Date(as.now ?? now),
    });
  };
  return {
    facts: store,
    store,
    room,
    ask,
    figure: async (words, name, as) => (await ask(words, as)).figures[name]?.value,
    at: (moment) => {
      now = moment;
    },
  };
}
