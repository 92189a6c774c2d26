import type { Room } from 'matrix-js-sdk';
import { noteJoined, noteLeft } from './left.ts';
import { type MatrixStart, PLATFORM } from './settings.ts';
import { brings } from './trouble.ts';

/** What becomes of the bot in a room: come in, gone, or put out by somebody. */
export async function membershipChanged(
  room: Room,
  now: string,
  before: string | undefined,
  start: MatrixStart,
): Promise<void> {
  const { log, watch, user } = start;
  const { roomId } = room;
  try {
    if (now === 'join') return await noteJoined(roomId, start);
    if (before !== 'join' || (now !== 'leave' && now !== 'ban')) return;
    const by = room.getMember(user)?.events.member?.getSender();
    watch.count('rooms_left_total', { platform: PLATFORM });
    const words = now === 'ban' ? 'banned from a room' : 'put out of a room';
    if (by === user) log.info({ room: roomId }, 'left a room; its facts go in 30 days');
    else log.warn({ room: roomId, by }, `${words}; its facts go in 30 days`);
    await noteLeft(roomId, start);
  } catch (error) {
    log.error({ ...brings(error), room: roomId }, 'could not keep that a room was joined or left');
  }
}
