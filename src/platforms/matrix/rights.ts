import type { Room } from 'matrix-js-sdk';

type Json = Readonly<Record<string, unknown>>;

const stateOf = (room: Room, type: string, key = ''): Json | undefined =>
  room.currentState.getStateEvents(type, key)?.getContent() as Json | undefined;

/** A level; older rooms may hold it as text. */
function levelIn(value: unknown, otherwise: number): number {
  const level = typeof value === 'string' && /^\s*[+-]?\d+\s*$/.test(value) ? Number(value) : value;
  return typeof level === 'number' && Number.isFinite(level) ? level : otherwise;
}

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

/** Where a room says nothing else, moderators have this level. */
const MODERATOR = 50;

/** Whether a member may do what organisers do: what changes a room's settings (moderators, as a rule). */
export function isOrganiser(room: Room, user: string): boolean {
  const levels = stateOf(room, 'm.room.power_levels');
  const needed = levelIn(levels?.state_default, MODERATOR);
  const everybody = levelIn(levels?.users_default, 0);
  // Where everybody may change everything, that tells nobody from anybody: then those above the others are.
  return powerOf(room, user) >= (needed > everybody ? needed : Math.max(MODERATOR, everybody + 1));
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

/** The bot has been in the room since then, milliseconds; 0 where its last change there was not its coming in. */
export function joinedAt(room: Room, me: string): number {
  const member = room.getMember(me)?.events.member;
  const wasIn = member?.getPrevContent().membership === 'join';
  return wasIn ? 0 : (member?.getTs() ?? 0);
}

/** Whether an invitation is taken: the settings name the person, or the server. */
export function isWelcome(inviter: string, inviteFrom: readonly string[]): boolean {
  const server = inviter.slice(inviter.indexOf(':') + 1);
  return inviteFrom.some((one) => one === inviter || one === server);
}
