import { z } from 'zod';

/*
 * The edge where the homeserver's words come in. Events that are not what the specification says are left out
 * one by one, so that none of them takes the others with it; and what is said in rooms is parted from the rooms'
 * state. The library gets the state alone: it would keep every message for ever, and an event that it trips over
 * would lose the rest.
 */

const id = z.string().min(1);
const content = z.record(z.string(), z.unknown());

/** An event outside a room: account data, to a device. */
const plainEvent = z.looseObject({ type: id, content });
const sentEvent = plainEvent.extend({ sender: id });
const stateEvent = sentEvent.extend({ state_key: z.string() });
const roomEvent = sentEvent.extend({
  event_id: id,
  origin_server_ts: z.number(),
  state_key: z.string().optional(),
  redacts: z.string().optional(),
});

/** What was said in a room, as the homeserver tells it. */
export type RoomEvent = z.infer<typeof roomEvent>;

/** What a sync tells of one room. */
export interface RoomNews {
  readonly room: string;
  readonly events: readonly RoomEvent[];
  /** Where these begin, if the sync left out what was said before. */
  readonly from: string | null;
  /** When the first of what the sync brought were said, milliseconds. */
  readonly begins: number;
}

/** A sync's answer as far as it is for us. */
export interface News {
  readonly next: string;
  readonly rooms: readonly RoomNews[];
  /** How many events could not be read. */
  readonly unsound: number;
}

type Json = Record<string, unknown>;

const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Keeps what fits of a list in its place; tells how much did not. */
function keep(within: unknown, name: string, shape: z.ZodType): number {
  if (!isObject(within)) return 0;
  const list = within[name];
  if (!Array.isArray(list)) return 0;
  const sound = list.filter((one) => shape.safeParse(one).success);
  within[name] = sound;
  return list.length - sound.length;
}

/** The lists of a sync's answer by where they are, and what must be in them. */
const LISTS: readonly (readonly [where: readonly string[], shape: z.ZodType])[] = [
  [['account_data'], plainEvent],
  [['to_device'], sentEvent],
];

const ROOM_LISTS: readonly (readonly [kind: string, list: string, shape: z.ZodType])[] = [
  ['join', 'state', stateEvent],
  ['join', 'org.matrix.msc4222.state_after', stateEvent],
  ['join', 'timeline', roomEvent],
  ['join', 'account_data', plainEvent],
  ['join', 'ephemeral', plainEvent],
  ['leave', 'state', stateEvent],
  ['leave', 'timeline', roomEvent],
  ['invite', 'invite_state', stateEvent],
];

/**
 * Takes out of a sync's answer what cannot be read and what was said in rooms; what is left is for the library.
 * Throws where it is no such answer at all.
 */
export function takeNews(answer: unknown): News {
  if (!isObject(answer) || typeof answer.next_batch !== 'string')
    throw new Error('the answer to a sync cannot be read');
  let unsound = 0;
  for (const [[name = ''], shape] of LISTS) unsound += keep(answer[name], 'events', shape);
  const kinds = isObject(answer.rooms) ? answer.rooms : {};
  for (const [kind, list, shape] of ROOM_LISTS)
    for (const room of roomsIn(kinds[kind])) unsound += keep(room[list], 'events', shape);
  const joined = isObject(kinds.join) ? Object.entries(kinds.join) : [];
  const rooms = joined.flatMap(([room, part]) => newsOf(room, part) ?? []);
  return { next: answer.next_batch, rooms, unsound };
}

function roomsIn(kind: unknown): Json[] {
  if (!isObject(kind)) return [];
  for (const [room, part] of Object.entries(kind)) if (!isObject(part)) delete kind[room];
  return Object.values(kind) as Json[];
}

function newsOf(room: string, part: unknown): RoomNews | undefined {
  const timeline = isObject(part) ? part.timeline : undefined;
  if (!isObject(timeline) || !Array.isArray(timeline.events)) return undefined;
  const all = timeline.events as RoomEvent[];
  timeline.events = all.filter((event) => event.state_key !== undefined);
  const from =
    timeline.limited === true && typeof timeline.prev_batch === 'string' ? timeline.prev_batch : null;
  const begins = all.length > 0 ? newestOf(all.slice(0, NEIGHBOURS)) : Number.POSITIVE_INFINITY;
  return { room, events: saidIn(all), from, begins };
}

/** A clock may be wrong: one event alone does not tell how old its neighbours are. */
const NEIGHBOURS = 3;

const newestOf = (events: readonly RoomEvent[]): number =>
  Math.max(0, ...events.map(({ origin_server_ts: at }) => at));

/** What was said, without the state; what the server adds to an event is not needed. */
const saidIn = (events: readonly RoomEvent[]): RoomEvent[] =>
  events
    .filter((event) => event.state_key === undefined && !isTakenAway(event))
    .map(({ unsigned: _, ...event }) => event);

/** Of what was taken away nothing is left; locked or not, it is no ask any more. */
const isTakenAway = ({ type, content }: RoomEvent): boolean =>
  type !== 'm.room.redaction' && Object.keys(content).length === 0;

/** A page of earlier messages: what was said, where the page ends, and when the oldest were said. */
export interface Page {
  readonly events: readonly RoomEvent[];
  readonly end: string | null;
  readonly oldest: number;
  readonly unsound: number;
}

/** Reads a page of earlier messages, the newest first as it comes. */
export function pageIn(answer: unknown): Page {
  if (!isObject(answer) || !Array.isArray(answer.chunk))
    throw new Error('a page of earlier messages cannot be read');
  const unsound = keep(answer, 'chunk', roomEvent);
  const all = answer.chunk as RoomEvent[];
  const end = typeof answer.end === 'string' && all.length > 0 ? answer.end : null;
  return { events: saidIn(all), end, oldest: newestOf(all.slice(-NEIGHBOURS)), unsound };
}
