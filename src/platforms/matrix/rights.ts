import type { Room } from 'matrix-js-sdk';

type Json = Readonly<Record<string, unknown>>;

const stateOf = (room: Room, type: string, key = ''): Json | undefined =>
  room.currentState.getStateEvents(type, key)?.getContent() as Json | undefined;

const levelIn = (value: unknown, otherwise: number): number =>
  typeof value === 'number' && Number.isFinite(value) ? value : otherwise;

/** Versions of rooms whose makers have every right, whatever the levels say (room version 12 and on). */
const makersRule = (version: string): boolean => Number(version) >= 12;

/** A member's power in a room, by the specification's rules for what is left out. */
function powerOf(room: Room, user: string): number {
  const create = room.currentState.getStateEvents('m.room.create', '');
  const maker = create?.getSender();
  const more = (create?.getContent() as Json | undefined)?.additional_creators;
  const made = maker === user || (Array.isArray(more) && more.includes(user));
  if (made && makersRule(room.getVersion())) return Number.POSITIVE_INFINITY;
  const levels = stateOf(room, 'm.room.power_levels');
  if (!levels) return made ? 100 : 0;
  return levelIn((levels.users as Json | undefined)?.[user], levelIn(levels.users_default, 0));
}

/** Whether a member may do what organisers do: what changes a room's settings (moderators, as a rule). */
export function isOrganiser(room: Room, user: string): boolean {
  const needed = levelIn(stateOf(room, 'm.room.power_levels')?.state_default, 50);
  // A room where everybody may change everything has no organisers by that; then moderators are.
  return powerOf(room, user) >= Math.max(needed, 1);
}

/**
 * The room whose members are the guild: the space that a room is in where the bot is there too and the space
 * itself names the room (a room alone can claim any space), else the room itself.
 */
export function guildOf(room: Room, roomById: (id: string) => Room | null): Room {
  for (const parent of room.currentState.getStateEvents('m.space.parent')) {
    const id = parent.getStateKey() ?? '';
    const space = roomById(id);
    if (space?.getMyMembership() !== 'join') continue;
    const child = stateOf(space, 'm.space.child', room.roomId);
    if (child && Array.isArray(child.via) && child.via.length > 0) return space;
  }
  return room;
}

/** Only one other person is there, or is asked to be. */
export const isAlone = (room: Room): boolean => room.getInvitedAndJoinedMemberCount() <= 2;

/** The bot has been in the room since then, milliseconds. */
export const joinedAt = (room: Room, me: string): number => room.getMember(me)?.events.member?.getTs() ?? 0;

/** Whether an invitation is taken: the settings name the person, or the server. */
export function isWelcome(inviter: string, inviteFrom: readonly string[]): boolean {
  const server = inviter.slice(inviter.indexOf(':') + 1);
  return inviteFrom.some((one) => one === inviter || one === server);
}
