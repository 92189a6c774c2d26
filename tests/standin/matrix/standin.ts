import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { earlier, invitedPart, joinedPart, placeIn, tokenOf } from './answers.ts';
import { type Levels, Place, type WireEvent } from './place.ts';
import { answer, type Outcome, type Request, refusal, requestOf } from './requests.ts';
import { bodyFaults, eventFaults, filterFaults, messagesFaults, syncFaults } from './rules.ts';

export const SERVER = 'bees.test';
export const BOT = `@bee:${SERVER}`;
export const PASSWORD = 'a password of the stand-in';

interface Planned {
  readonly when: (request: Request) => boolean;
  readonly outcome: Outcome | 'no answer';
  times: number;
}

interface Device {
  readonly id: string;
  standing: 'good' | 'soft-logout' | 'gone';
}

export interface RoomWish {
  readonly members?: readonly string[];
  readonly levels?: Levels;
  readonly encrypted?: boolean;
  readonly version?: string;
  readonly isDirect?: boolean;
}

/** A homeserver on loopback, strict: what the bot sends is held to the specification, slips are in `faults`. */
export class MatrixStandIn {
  readonly faults: string[] = [];
  readonly requests: Request[] = [];
  readonly rooms = new Map<string, Place>();
  readonly uploads = new Map<string, { bytes: Buffer; type: string; name: string | null }>();
  readonly devices = new Map<string, Device>();
  /** Changes the next answers of a sync before they are given: what no sound server would say. */
  readonly spoil: ((answer: SyncAnswer) => void)[] = [];
  readonly #http = createServer((request, response) => void this.#serve(request, response));
  readonly #planned: Planned[] = [];
  readonly #sent = new Map<string, string>();
  readonly #filters: object[] = [];
  readonly #waiting = new Set<() => void>();
  readonly #accountData = new Map<string, { at: number; content: unknown }>();
  #keys = new Map<string, unknown>();
  #port = 0;
  #at = 0;
  #names = 0;

  static async open(): Promise<MatrixStandIn> {
    const standIn = new MatrixStandIn();
    await standIn.listen();
    return standIn;
  }

  /** Begins to serve; after `unreachable`, at the same address again. */
  async listen(): Promise<void> {
    await new Promise<void>((done) => this.#http.listen(this.#port, '127.0.0.1', done));
    this.#port = (this.#http.address() as AddressInfo).port;
  }

  async unreachable(): Promise<void> {
    this.#wake();
    const closed = new Promise((done) => this.#http.close(done));
    this.#http.closeAllConnections();
    await closed;
  }

  get address(): string {
    return `http://127.0.0.1:${this.#port}`;
  }

  close = (): Promise<void> => this.unreachable();

  /** Lets the next requests of a kind end otherwise. */
  next(when: string | ((request: Request) => boolean), outcome: Outcome | 'no answer', times = 1): Planned {
    const is = typeof when === 'string' ? ({ operation }: Request) => operation === when : when;
    const planned = { when: is, outcome, times };
    this.#planned.push(planned);
    return planned;
  }

  asked = (operation: string): Request[] => this.requests.filter((one) => one.operation === operation);

  /** A token as if it had been given out. */
  giveToken(): { token: string; device: string } {
    const device = `DEVICE${++this.#names}`;
    const token = `secret-token-${this.#names}-${Math.random().toString(36).slice(2)}`;
    this.devices.set(token, { id: device, standing: 'good' });
    return { token, device };
  }

  /** Makes a room in which the bot already is. Its first member has the highest power. */
  makeRoom({ members = [], levels, encrypted, version = '11', isDirect }: RoomWish = {}): string {
    const [maker = BOT] = members;
    const room = this.#newRoom();
    const state = (type: string, content: Record<string, unknown>, state_key = '', sender = maker) =>
      room.add({ type, sender, state_key, content });
    state('m.room.create', { room_version: version });
    for (const member of [...members, BOT].filter((one, i, all) => all.indexOf(one) === i))
      state(
        'm.room.member',
        {
          membership: 'join',
          displayname: member.slice(1).split(':')[0],
          ...(isDirect ? { is_direct: true } : {}),
        },
        member,
        member,
      );
    state('m.room.power_levels', { users: { [maker]: 100 }, ...levels });
    if (encrypted) state('m.room.encryption', { algorithm: 'm.megolm.v1.aes-sha2' });
    this.#wake();
    return room.id;
  }

  room(id: string): Place {
    const room = this.rooms.get(id);
    if (!room) throw new Error(`no room ${id}`);
    return room;
  }

  /** Puts something into a room, as its members or the server do. */
  put(room: string, draft: Parameters<Place['add']>[0]): WireEvent {
    const event = this.room(room).add(draft);
    this.#wake();
    return event;
  }

  /** Puts several things into rooms so that one sync brings them all. */
  together(work: () => void): void {
    this.#held = true;
    work();
    this.#held = false;
    this.#wake();
  }
  #held = false;

  invite(room: string, by: string): void {
    this.put(room, { type: 'm.room.member', sender: by, state_key: BOT, content: { membership: 'invite' } });
  }

  #newRoom(): Place {
    const room = new Place(`!room${++this.#names}:${SERVER}`, () => ++this.#at);
    this.rooms.set(room.id, room);
    return room;
  }

  #wake(): void {
    if (this.#held) return;
    for (const wake of this.#waiting) wake();
  }

  async #serve(incoming: IncomingMessage, response: ServerResponse): Promise<void> {
    const request = await requestOf(incoming);
    this.requests.push(request);
    const planned = this.#planned.find((one) => one.times > 0 && one.when(request));
    if (planned) planned.times--;
    if (planned?.outcome === 'no answer') return void incoming.socket.destroy();
    if (planned?.outcome) return answer(response, planned.outcome);
    const outcome = this.#unknown(request) ?? (await this.#routes[request.operation]?.(request));
    if (!outcome) {
      // Paths outside the specification are looked for by the library and answered so by any server.
      if (!/unstable|well-known/.test(request.path))
        this.faults.push(`no such operation: ${request.method} ${request.path}`);
      return answer(response, refusal(404, 'M_UNRECOGNIZED'));
    }
    this.faults.push(
      ...bodyFaultsOf(request).map((fault) => `${request.operation} ${request.path}: ${fault}`),
    );
    answer(response, outcome);
  }

  /** The answer to whoever has no right token. */
  #unknown({ operation, token }: Request): Outcome | undefined {
    if (operation === 'login' || operation === 'getVersions') return undefined;
    const device = this.devices.get(token);
    if (device?.standing === 'good') return undefined;
    if (device?.standing === 'soft-logout') return refusal(401, 'M_UNKNOWN_TOKEN', { soft_logout: true });
    return refusal(401, token ? 'M_UNKNOWN_TOKEN' : 'M_MISSING_TOKEN');
  }

  readonly #routes: Readonly<Record<string, (request: Request) => Outcome | Promise<Outcome>>> = {
    getVersions: () => ok({ versions: ['v1.1', 'v1.11', 'v1.16'], unstable_features: {} }),
    getTokenOwner: ({ token }) => ok({ user_id: BOT, device_id: this.devices.get(token)?.id }),
    login: ({ body }) => this.#login(body as never),
    logout: ({ token }) => {
      this.devices.delete(token);
      return ok();
    },
    getCapabilities: () => ok({ capabilities: {} }),
    getPushRules: () => ok({ global: {} }),
    defineFilter: ({ body }) => ok({ filter_id: `f${this.#filters.push(body as object)}` }),
    sync: (request) => this.#sync(request),
    uploadKeys: (request) => this.#uploadKeys(request),
    queryKeys: () => ok({ device_keys: { [BOT]: Object.fromEntries(this.#keys) }, failures: {} }),
    claimKeys: () => ok({ one_time_keys: {}, failures: {} }),
    sendToDevice: () => ok(),
    uploadCrossSigningKeys: () => ok(),
    uploadCrossSigningSignatures: () => ok({ failures: {} }),
    getRoomKeysVersionCurrent: () => refusal(404, 'M_NOT_FOUND'),
    getAccountData: ({ parts: [, type = ''] }) => {
      const found = this.#accountData.get(type);
      return found ? ok(found.content) : refusal(404, 'M_NOT_FOUND');
    },
    setAccountData: ({ parts: [, type = ''], body }) => {
      this.#accountData.set(type, { at: ++this.#at, content: body });
      this.#wake();
      return ok();
    },
    createRoom: ({ body }) => this.#createRoom(body as never),
    joinRoom: ({ parts: [room = ''] }) => this.#joinRoom(room),
    leaveRoom: ({ parts: [room = ''] }) => {
      this.put(room, member(BOT, BOT, 'leave'));
      return ok();
    },
    sendMessage: (request) => this.#send(request),
    redactEvent: (request) => this.#redact(request),
    setRoomStateWithKey: ({ parts: [room = '', type = '', state_key = ''], body }) => {
      if (!this.room(room).maySend(BOT, type, true)) return refusal(403, 'M_FORBIDDEN');
      this.#hold(type, body);
      return ok({
        event_id: this.put(room, { type, sender: BOT, state_key, content: body as never }).event_id,
      });
    },
    getRoomEvents: ({ parts: [id = ''], query }) => {
      const room = this.room(id);
      if (room.membershipOf(BOT) !== 'join') return refusal(403, 'M_FORBIDDEN');
      const from = placeIn(query.get('from')) ?? this.#at;
      const page = earlier(room, { from, to: placeIn(query.get('to')), limit: Number(query.get('limit')) });
      this.faults.push(...messagesFaults(page));
      return ok(page);
    },
    getOneRoomEvent: ({ parts: [room = '', id = ''] }) => {
      const event = this.room(room).find(id);
      return event ? ok({ ...event, room_id: room }) : refusal(404, 'M_NOT_FOUND');
    },
    getMembersByRoom: ({ parts: [room = ''] }) =>
      ok({
        chunk: this.room(room)
          .stateBetween(0, Number.POSITIVE_INFINITY)
          .filter(({ type }) => type === 'm.room.member'),
      }),
    uploadContent: ({ bytes, type, query }) => {
      const url = `mxc://${SERVER}/media${++this.#names}`;
      this.uploads.set(url, { bytes, type, name: query.get('filename') });
      return ok({ content_uri: url });
    },
  };

  #login({ identifier, password, device_id }: Login): Outcome {
    if (password !== PASSWORD || ![BOT, 'bee'].includes(identifier.user)) return refusal(403, 'M_FORBIDDEN');
    const given = this.giveToken();
    const device = device_id ?? given.device;
    this.devices.set(given.token, { id: device, standing: 'good' });
    return ok({ user_id: BOT, device_id: device, access_token: given.token });
  }

  #uploadKeys({ token, body }: Request): Outcome {
    const { device_keys, one_time_keys = {} } = body as { device_keys?: unknown; one_time_keys?: object };
    if (device_keys) this.#keys.set(this.devices.get(token)?.id ?? '', device_keys);
    this.#oneTimeKeys += Object.keys(one_time_keys).length;
    return ok({ one_time_key_counts: { signed_curve25519: this.#oneTimeKeys } });
  }
  #oneTimeKeys = 0;

  #createRoom({ invite, is_direct, initial_state = [] }: NewRoom): Outcome {
    const room = this.#newRoom();
    const state = (type: string, content: Record<string, unknown>, state_key = '') =>
      room.add({ type, sender: BOT, state_key, content });
    state('m.room.create', { room_version: '11' });
    state('m.room.member', { membership: 'join', displayname: 'bee' }, BOT);
    // "trusted_private_chat": those who are asked in have its maker's power.
    state('m.room.power_levels', { users: Object.fromEntries([BOT, ...invite].map((one) => [one, 100])) });
    for (const { type, state_key, content } of initial_state) state(type, content, state_key);
    for (const one of invite)
      state('m.room.member', { membership: 'invite', ...(is_direct ? { is_direct } : {}) }, one);
    this.#wake();
    return ok({ room_id: room.id });
  }

  #joinRoom(id: string): Outcome {
    const room = this.room(id);
    if (room.membershipOf(BOT) !== 'invite') return refusal(403, 'M_FORBIDDEN');
    this.put(id, member(BOT, BOT, 'join', 'bee'));
    return ok({ room_id: id });
  }

  /** The same transaction of the same device is the same event ("Transaction identifiers"). */
  #once({ token, path }: Request, work: () => string): string {
    const key = `${this.devices.get(token)?.id} ${path}`;
    const known = this.#sent.get(key);
    if (known) return known;
    const id = work();
    this.#sent.set(key, id);
    return id;
  }

  #send(request: Request): Outcome {
    const [id = '', type = '', transaction = ''] = request.parts;
    const room = this.room(id);
    if (!room.maySend(BOT, type, false)) return refusal(403, 'M_FORBIDDEN');
    const content = request.body as Record<string, unknown>;
    this.#hold(type, content);
    if (type === 'm.room.message' && room.stateOf('m.room.encryption'))
      this.faults.push(`a message in the clear in ${id}`);
    const event_id = this.#once(
      request,
      () => this.put(id, { type, sender: BOT, content, unsigned: { transaction_id: transaction } }).event_id,
    );
    return ok({ event_id });
  }

  #redact(request: Request): Outcome {
    const [id = '', redacts = ''] = request.parts;
    const room = this.room(id);
    if (room.membershipOf(BOT) !== 'join') return refusal(403, 'M_FORBIDDEN');
    if (!room.find(redacts)) return refusal(404, 'M_NOT_FOUND');
    const event_id = this.#once(
      request,
      () => this.put(id, { type: 'm.room.redaction', sender: BOT, redacts, content: { redacts } }).event_id,
    );
    return ok({ event_id });
  }

  #hold(type: string, content: unknown): void {
    this.faults.push(...eventFaults(type, content).map((fault) => `${type}: ${fault}`));
  }

  async #sync({ query }: Request): Promise<Outcome> {
    const since = placeIn(query.get('since'));
    const filter = this.#filterOf(query.get('filter'));
    const wait = Number(query.get('timeout') ?? 0);
    if (since !== null && since >= this.#at && wait > 0) await this.#somethingNew(wait);
    const said = this.#answerSync(since, filter);
    this.faults.push(...syncFaults(said));
    const spoiled = JSON.parse(JSON.stringify(said)) as SyncAnswer;
    for (const change of this.spoil.splice(0)) change(spoiled);
    return ok(spoiled);
  }

  #somethingNew(wait: number): Promise<void> {
    return new Promise((done) => {
      const over = () => {
        clearTimeout(late);
        this.#waiting.delete(over);
        done();
      };
      const late = setTimeout(over, wait);
      this.#waiting.add(over);
    });
  }

  #filterOf(named: string | null): Filter {
    if (!named) return {};
    if (!named.startsWith('{')) return (this.#filters[Number(named.slice(1)) - 1] ?? {}) as Filter;
    const filter = JSON.parse(named) as Filter;
    this.faults.push(...filterFaults(filter).map((fault) => `filter: ${fault}`));
    return filter;
  }

  #answerSync(since: number | null, filter: Filter): SyncAnswer {
    const wish = { since, limit: filter.room?.timeline?.limit ?? 10 };
    const join: SyncAnswer['rooms']['join'] = {};
    const invite: Record<string, unknown> = {};
    const leave: Record<string, unknown> = {};
    for (const room of this.rooms.values()) {
      const membership = room.membershipOf(BOT);
      const changed = room.memberSince(BOT) > (since ?? 0);
      if (membership === 'join') {
        const part = joinedPart(room, BOT, wish);
        if (part) join[room.id] = part as never;
      } else if (membership === 'invite' && changed) invite[room.id] = invitedPart(room, BOT);
      else if (since !== null && changed) {
        const events = room.stateBetween(since, Number.POSITIVE_INFINITY);
        leave[room.id] = { state: { events: [] }, timeline: { events, limited: false, prev_batch: 's0' } };
      }
    }
    const data = [...this.#accountData].filter(([, { at }]) => at > (since ?? 0));
    return {
      next_batch: tokenOf(this.#at),
      account_data: { events: data.map(([type, { content }]) => ({ type, content })) },
      to_device: { events: [] },
      device_lists: { changed: [], left: [] },
      device_one_time_keys_count: { signed_curve25519: this.#oneTimeKeys },
      device_unused_fallback_key_types: ['signed_curve25519'],
      rooms: { join, invite, leave },
    };
  }
}

interface Filter {
  readonly room?: { readonly timeline?: { readonly limit?: number } };
}

interface Login {
  readonly identifier: { readonly user: string };
  readonly password: string;
  readonly device_id?: string;
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

export interface SyncAnswer {
  next_batch: string;
  rooms: {
    join: Record<string, { timeline: { events: unknown[]; limited: boolean }; state: { events: unknown[] } }>;
    invite: Record<string, unknown>;
    leave: Record<string, unknown>;
  };
  [more: string]: unknown;
}

const ok = (body: unknown = {}): Outcome => ({ status: 200, body });

const member = (user: string, by: string, membership: string, displayname?: string) => ({
  type: 'm.room.member',
  sender: by,
  state_key: user,
  content: { membership, ...(displayname ? { displayname } : {}) },
});

function bodyFaultsOf({ operation, body }: Request): string[] {
  // Events are held to the schema of their type where they are put into a room.
  if (['sendMessage', 'redactEvent', 'setRoomStateWithKey', 'uploadContent'].includes(operation)) return [];
  return bodyFaults(operation, body);
}
