import type { Accounts } from './accounts.ts';
import { earlier, placeIn } from './answers.ts';
import type { House } from './house.ts';
import { another, BOT, SERVER } from './names.ts';
import type { Place, WireEvent } from './place.ts';
import { type Outcome, ok, type Request, refusal } from './requests.ts';
import { eventFaults, messagesFaults } from './rules.ts';

interface InRoomsNeeds {
  readonly house: House;
  readonly accounts: Accounts;
  fault(...faults: readonly string[]): void;
}

interface NewRoom {
  readonly invite: readonly string[];
  readonly is_direct?: boolean;
  readonly initial_state?: readonly {
    readonly type: string;
    readonly state_key?: string;
    readonly content: Record<string, unknown>;
  }[];
}

const FORBIDDEN = refusal(403, 'M_FORBIDDEN');
const NOT_FOUND = refusal(404, 'M_NOT_FOUND');

/** What the bot does in rooms. */
export class InRooms {
  readonly uploads = new Map<string, { bytes: Buffer; type: string; name: string | null }>();
  readonly #needs: InRoomsNeeds;
  readonly #sent = new Map<string, string>();

  constructor(needs: InRoomsNeeds) {
    this.#needs = needs;
  }

  readonly routes: Readonly<Record<string, (request: Request) => Outcome>> = {
    createRoom: ({ body }) => this.#createRoom(body as NewRoom),
    joinRoom: ({ parts: [room = ''] }) => {
      if (this.#room(room).membershipOf(BOT) !== 'invite') return FORBIDDEN;
      this.#put(room, 'm.room.member', { membership: 'join', displayname: 'bee' }, { state_key: BOT });
      return ok({ room_id: room });
    },
    leaveRoom: ({ parts: [room = ''] }) => {
      this.#put(room, 'm.room.member', { membership: 'leave' }, { state_key: BOT });
      return ok();
    },
    sendMessage: (request) => this.#send(request),
    redactEvent: (request) => this.#redact(request),
    setRoomStateWithKey: ({ parts: [room = '', type = '', state_key = ''], body }) => {
      if (!this.#room(room).maySend(BOT, type, true)) return FORBIDDEN;
      this.#hold(type, body);
      return ok({ event_id: this.#put(room, type, body as never, { state_key }).event_id });
    },
    getRoomEvents: ({ parts: [id = ''], query }) => {
      const room = this.#room(id);
      if (room.membershipOf(BOT) !== 'join') return FORBIDDEN;
      const from = placeIn(query.get('from')) ?? this.#needs.house.at;
      const page = earlier(room, { from, to: placeIn(query.get('to')), limit: Number(query.get('limit')) });
      this.#needs.fault(...messagesFaults(page));
      return ok(page);
    },
    getOneRoomEvent: ({ parts: [room = '', id = ''] }) => {
      const event = this.#room(room).find(id);
      return event ? ok({ ...event, room_id: room }) : NOT_FOUND;
    },
    getMembersByRoom: ({ parts: [room = ''] }) => {
      const state = this.#room(room).stateBetween(0, Number.POSITIVE_INFINITY);
      const members = state.filter(({ type }) => type === 'm.room.member');
      return ok({ chunk: members.map((event) => ({ ...event, room_id: room })) });
    },
    uploadContent: ({ bytes, type, query }) => {
      const url = `mxc://${SERVER}/media${another()}`;
      this.uploads.set(url, { bytes, type, name: query.get('filename') });
      return ok({ content_uri: url });
    },
  };

  #room = (id: string): Place => this.#needs.house.room(id);

  #put(room: string, type: string, content: Record<string, unknown>, more: object = {}): WireEvent {
    return this.#needs.house.put(room, { type, sender: BOT, content, ...more });
  }

  #createRoom({ invite, is_direct, initial_state = [] }: NewRoom): Outcome {
    const room = this.#needs.house.newRoom();
    const state = (type: string, content: Record<string, unknown>, state_key = '') =>
      room.add({ type, sender: BOT, state_key, content });
    state('m.room.create', { room_version: '11' });
    state('m.room.member', { membership: 'join', displayname: 'bee' }, BOT);
    // "trusted_private_chat": those who are asked in have its maker's power.
    state('m.room.power_levels', { users: Object.fromEntries([BOT, ...invite].map((one) => [one, 100])) });
    for (const { type, state_key, content } of initial_state) state(type, content, state_key);
    for (const one of invite)
      state('m.room.member', { membership: 'invite', ...(is_direct ? { is_direct } : {}) }, one);
    this.#needs.house.wake();
    return ok({ room_id: room.id });
  }

  /** The same transaction of the same device is the same event ("Transaction identifiers"). */
  #once(request: Request, work: () => WireEvent): Outcome {
    const key = `${this.#needs.accounts.deviceOf(request)} ${request.path}`;
    const event_id = this.#sent.get(key) ?? work().event_id;
    this.#sent.set(key, event_id);
    return ok({ event_id });
  }

  #send(request: Request): Outcome {
    const [id = '', type = '', transaction_id = ''] = request.parts;
    const room = this.#room(id);
    if (!room.maySend(BOT, type, false)) return FORBIDDEN;
    const content = request.body as Record<string, unknown>;
    this.#hold(type, content);
    if (type === 'm.room.message' && room.stateOf('m.room.encryption'))
      this.#needs.fault(`a message in the clear in ${id}`);
    return this.#once(request, () => this.#put(id, type, content, { unsigned: { transaction_id } }));
  }

  #redact(request: Request): Outcome {
    const [id = '', redacts = ''] = request.parts;
    const room = this.#room(id);
    if (room.membershipOf(BOT) !== 'join') return FORBIDDEN;
    if (!room.find(redacts)) return NOT_FOUND;
    return this.#once(request, () => this.#put(id, 'm.room.redaction', { redacts }, { redacts }));
  }

  #hold(type: string, content: unknown): void {
    this.#needs.fault(...eventFaults(type, content).map((fault) => `${type}: ${fault}`));
  }
}
