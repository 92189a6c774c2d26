import type { Place, WireEvent } from './place.ts';

/** How many timeline events a sync brings at most, as the filter asks. */
export interface SyncWish {
  readonly since: number | null;
  readonly limit: number;
}

export const tokenOf = (at: number): string => `s${at}`;
export const placeIn = (token: string | null): number | null => {
  const found = /^s(\d+)$/.exec(token ?? '');
  return found ? Number(found[1]) : null;
};

/** What one room has to say to a member who has read up to a point; null where there is nothing new. */
export function joinedPart(room: Place, user: string, { since, limit }: SyncWish) {
  const joined = room.memberSince(user);
  // Somebody who has just come in is given the room from its beginning, as on a first sync.
  const from = since === null || joined > since ? null : since;
  const fresh = room.timeline.filter(({ at }) => at > (from ?? 0));
  if (from !== null && fresh.length === 0) return null;
  const shown = fresh.slice(-limit);
  const first = shown[0]?.at ?? Number.POSITIVE_INFINITY;
  const limited = fresh.length > shown.length;
  return {
    summary: {
      'm.heroes': [...room.membersWith('join'), ...room.membersWith('invite')]
        .filter((other) => other !== user)
        .slice(0, 5),
      'm.joined_member_count': room.membersWith('join').length,
      'm.invited_member_count': room.membersWith('invite').length,
    },
    state: { events: room.stateBetween(from ?? 0, first) },
    timeline: {
      events: shown.map(({ event }) => event),
      limited,
      prev_batch: tokenOf((shown[0]?.at ?? 1) - 1),
    },
    ephemeral: { events: [] },
    account_data: { events: [] },
    unread_notifications: { highlight_count: 0, notification_count: 0 },
  };
}

/** What somebody who is asked in may know of the room. */
export function invitedPart(room: Place, user: string) {
  const stripped = ({ type, state_key, sender, content }: WireEvent) => ({
    type,
    state_key,
    sender,
    content,
  });
  const told = room
    .stateBetween(0, Number.POSITIVE_INFINITY)
    .filter(({ type, state_key }) => type !== 'm.room.member' || state_key === user);
  return { invite_state: { events: told.map(stripped) } };
}

export interface PageWish {
  readonly from: number;
  readonly to: number | null;
  readonly limit: number;
}

/** A page of earlier messages, the newest first. */
export function earlier(room: Place, { from, to, limit }: PageWish) {
  const before = room.timeline.filter(({ at }) => at <= from && at > (to ?? 0)).reverse();
  const shown = before.slice(0, limit);
  const last = shown.at(-1);
  return {
    start: tokenOf(from),
    ...(last && before.length > shown.length ? { end: tokenOf(last.at - 1) } : {}),
    chunk: shown.map(({ event }) => ({ ...event, room_id: room.id })),
    state: [],
  };
}
