import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Accounts } from './accounts.ts';
import { House, type RoomWish } from './house.ts';
import { InRooms } from './in-rooms.ts';
import { BOT } from './names.ts';
import type { Draft, Place, WireEvent } from './place.ts';
import { answer, type Outcome, ok, type Request, refusal, requestOf } from './requests.ts';
import { bodyFaults } from './rules.ts';
import { Syncing } from './syncing.ts';

export { BOT, PASSWORD, SERVER } from './names.ts';
export type { SyncAnswer } from './syncing.ts';

/** How a request ends otherwise: with another answer, or with none, whether or not it was done. */
type Unsaid = Outcome | 'no answer' | 'done, unheard';

interface Planned {
  readonly when: (request: Request) => boolean;
  readonly outcome: Unsaid;
  times: number;
}

/** Events are held to the schema of their type where they are put into a room; a file is of any shape. */
const HELD_ELSEWHERE = new Set(['sendMessage', 'redactEvent', 'setRoomStateWithKey', 'uploadContent']);

/** A homeserver on loopback, strict: what the bot sends is held to the specification, slips are in `faults`. */
export class MatrixStandIn {
  readonly faults: string[] = [];
  readonly requests: Request[] = [];
  readonly #http = createServer((request, response) => void this.#serve(request, response));
  readonly #planned: Planned[] = [];
  readonly #house = new House();
  readonly #accounts = new Accounts();
  readonly #inRooms: InRooms;
  readonly #syncing: Syncing;
  readonly #routes: Readonly<Record<string, (request: Request) => Outcome | Promise<Outcome>>>;
  #port = 0;

  constructor() {
    const fault = (...faults: readonly string[]) => void this.faults.push(...faults);
    const parts = { house: this.#house, accounts: this.#accounts, fault };
    this.#inRooms = new InRooms(parts);
    this.#syncing = new Syncing(parts);
    this.#routes = {
      getVersions: () => ok({ versions: ['v1.1', 'v1.11', 'v1.16'], unstable_features: {} }),
      getCapabilities: () => ok({ capabilities: {} }),
      getPushRules: () => ok({ global: {} }),
      ...this.#accounts.routes,
      ...this.#inRooms.routes,
      ...this.#syncing.routes,
    };
  }

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
    this.#house.wake();
    const closed = new Promise((done) => this.#http.close(done));
    this.#http.closeAllConnections();
    await closed;
  }

  close = (): Promise<void> => this.unreachable();

  get address(): string {
    return `http://127.0.0.1:${this.#port}`;
  }

  get rooms(): ReadonlyMap<string, Place> {
    return this.#house.rooms;
  }

  get devices(): Accounts['devices'] {
    return this.#accounts.devices;
  }

  get uploads(): InRooms['uploads'] {
    return this.#inRooms.uploads;
  }

  get spoil(): Syncing['spoil'] {
    return this.#syncing.spoil;
  }

  /** Lets the next requests of a kind end otherwise. */
  next(when: string | ((request: Request) => boolean), outcome: Unsaid, times = 1): Planned {
    const is = typeof when === 'string' ? ({ operation }: Request) => operation === when : when;
    const planned = { when: is, outcome, times };
    this.#planned.push(planned);
    return planned;
  }

  asked = (operation: string): Request[] => this.requests.filter((one) => one.operation === operation);
  giveToken = (device?: string): { token: string; device: string } => this.#accounts.giveToken(device);
  makeRoom = (wish: RoomWish = {}): string => this.#house.makeRoom(wish);
  room = (id: string): Place => this.#house.room(id);
  put = (room: string, draft: Draft): WireEvent => this.#house.put(room, draft);
  together = (work: () => void): void => this.#house.together(work);

  invite(room: string, by: string): void {
    this.put(room, { type: 'm.room.member', sender: by, state_key: BOT, content: { membership: 'invite' } });
  }

  async #serve(incoming: IncomingMessage, response: ServerResponse): Promise<void> {
    const request = await requestOf(incoming);
    this.requests.push(request);
    const planned = this.#planned.find((one) => one.times > 0 && one.when(request));
    if (planned) planned.times--;
    if (planned?.outcome === 'no answer') return void incoming.socket.destroy();
    if (planned && typeof planned.outcome !== 'string') return answer(response, planned.outcome);
    const outcome = await this.#outcomeOf(request);
    if (planned) incoming.socket.destroy();
    else answer(response, outcome);
  }

  async #outcomeOf(request: Request): Promise<Outcome> {
    const { operation, method, path, body } = request;
    const unknown = this.#accounts.unknown(request);
    if (unknown) return unknown;
    const route = this.#routes[operation];
    if (!route) {
      // Paths outside the specification are looked for by the library and answered so by any server.
      if (!/unstable|well-known/.test(path)) this.faults.push(`no such operation: ${method} ${path}`);
      return refusal(404, 'M_UNRECOGNIZED');
    }
    const faults = HELD_ELSEWHERE.has(operation) ? [] : bodyFaults(operation, body);
    this.faults.push(...faults.map((fault) => `${operation} ${path}: ${fault}`));
    return route(request);
  }
}
