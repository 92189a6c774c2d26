import type { PlatformNeeds } from '../platform.ts';
import { PLATFORM } from './settings.ts';

type LeftNeeds = Pick<PlatformNeeds, 'facts' | 'log'>;

const keyOf = (room: string): string => `left:${room}`;

/** A room that the bot is no longer in keeps its facts for a while, in case it is asked in again. */
export const noteLeft = (room: string, { facts }: LeftNeeds): Promise<void> =>
  facts.notes.keep(PLATFORM, keyOf(room), { room });

export const noteJoined = (room: string, { facts }: LeftNeeds): Promise<void> =>
  facts.notes.remove(PLATFORM, keyOf(room));

/** Forgets the facts of rooms that were left before a moment. */
export async function forgetLeft(before: Date, { facts, log }: LeftNeeds): Promise<void> {
  for (const key of await facts.notes.before(PLATFORM, 'left:', before)) {
    const room = key.slice('left:'.length);
    await facts.forgetGuild(room);
    await facts.notes.remove(PLATFORM, key);
    log.info({ room }, 'forgot a room that was left');
  }
}
