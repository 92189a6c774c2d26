import type { Server } from 'node:http';
import { type WebSocket, WebSocketServer } from 'ws';

interface Frame {
  readonly op: number;
  readonly d?: unknown;
  readonly s?: number | null;
  readonly t?: string | null;
}

export interface GatewayNeeds {
  readonly token: string;
  /** The socket's own address, for HELLO's READY. */
  address(): string;
  readonly bot: { readonly id: string; readonly username: string };
  readonly guilds: readonly { readonly id: string; readonly name: string }[];
  /** Tells of what a strict server would refuse. */
  fault(what: string): void;
}

/** The gateway: HELLO, IDENTIFY, READY, GUILD_CREATE, heartbeats, RESUME with what was missed. */
export class Gateway {
  readonly #needs: GatewayNeeds;
  readonly #sockets = new Set<WebSocket>();
  readonly #sent: Frame[] = [];
  #sequence = 0;
  identified = 0;
  /** The shards that have identified, as they said which of how many they are. */
  readonly shards: string[] = [];
  resumed = 0;
  /** The guilds that the bot is in, when it identifies. */
  guilds: readonly { readonly id: string; readonly name: string }[];
  /** How often it wants to hear a heartbeat, milliseconds. */
  heartbeat = 20_000;
  /** The heartbeats heard, by the number that each gave of the last event. */
  readonly beats: unknown[] = [];
  /** Close the next connection that identifies with this code. */
  refuseWith: number | null = null;

  constructor(http: Server, needs: GatewayNeeds) {
    this.#needs = needs;
    this.guilds = needs.guilds;
    const server = new WebSocketServer({ server: http });
    server.on('connection', (socket, request) => {
      const query = new URL(request.url ?? '', 'ws://x').searchParams;
      if (query.get('v') !== '10' || query.get('encoding') !== 'json')
        needs.fault(`gateway asked as ${request.url}`);
      this.#sockets.add(socket);
      socket.on('close', () => this.#sockets.delete(socket));
      const path = new URL(request.url ?? '', 'ws://x').pathname;
      socket.on('message', (data) => this.#hear(socket, JSON.parse(String(data)) as Frame, path));
      this.#send(socket, { op: 10, d: { heartbeat_interval: this.heartbeat } });
    });
  }

  get connected(): number {
    return this.#sockets.size;
  }

  /** Tells every connection of an event, and keeps it for those that resume. */
  dispatch(t: string, d: unknown, times = 1): void {
    const frame = { op: 0, t, d, s: ++this.#sequence };
    this.#sent.push(frame);
    for (const socket of this.#sockets) for (let i = 0; i < times; i++) this.#send(socket, frame);
  }

  /** Drops every connection as a failing network would. */
  drop(): void {
    for (const socket of this.#sockets) socket.terminate();
  }

  /** Closes every connection with a code. */
  close(code: number): void {
    for (const socket of this.#sockets) socket.close(code);
  }

  #hear(socket: WebSocket, { op, d }: Frame, path: string): void {
    if (op === 1) {
      this.beats.push(d);
      return void this.#send(socket, { op: 11 });
    }
    if (op === 2)
      return void this.#identify(socket, d as { token: string; intents: number; shard?: number[] });
    if (op === 6 && path !== '/resume') this.#needs.fault(`resumed at ${path}`);
    if (op === 6) return void this.#resume(socket, d as { seq: number; session_id: string });
    if (op !== 3) this.#needs.fault(`gateway op ${op}`);
  }

  #identify(
    socket: WebSocket,
    { token, intents, shard }: { token: string; intents: number; shard?: number[] },
  ): void {
    this.identified++;
    if (shard) this.shards.push(shard.join(' of '));
    if (this.refuseWith !== null) return void socket.close(this.refuseWith);
    if (token.replace(/^Bot /, '') !== this.#needs.token) return void socket.close(4004);
    const allowed = (1 << 0) | (1 << 9);
    if ((intents & ~allowed) !== 0) this.#needs.fault(`intents ${intents}`);
    const { bot } = this.#needs;
    const { guilds } = this;
    const ready = {
      v: 10,
      user: {
        ...bot,
        discriminator: '0',
        global_name: null,
        avatar: null,
        bot: true,
        flags: 0,
        verified: true,
        mfa_enabled: false,
        email: null,
      },
      guilds: guilds.map(({ id }) => ({ id, unavailable: true })),
      session_id: 'session-1',
      resume_gateway_url: `${this.#needs.address()}/resume`,
      application: { id: bot.id, flags: 0 },
      ...(shard ? { shard } : {}),
    };
    this.#send(socket, { op: 0, t: 'READY', d: ready, s: ++this.#sequence });
    for (const guild of guilds)
      this.#send(socket, { op: 0, t: 'GUILD_CREATE', d: wholeGuild(guild), s: ++this.#sequence });
  }

  #resume(socket: WebSocket, { seq }: { seq: number }): void {
    this.resumed++;
    for (const frame of this.#sent) if ((frame.s ?? 0) > seq) this.#send(socket, frame);
    this.#send(socket, { op: 0, t: 'RESUMED', d: {}, s: ++this.#sequence });
  }

  #send(socket: WebSocket, frame: Frame): void {
    if (socket.readyState === socket.OPEN) socket.send(JSON.stringify({ s: null, t: null, ...frame }));
  }
}

export const CHANNEL = '300000000000000001';
/** The channel of a member's own messages with the bot. */
export const OWN = '500000000000000001';
/** Another channel of the same guild. */
export const KITCHEN = '300000000000000002';

/** The role of those who may do an organiser's work. */
export const ORGANISERS = '100000000000000005';

const role = (id: string, name: string, permissions: string) => ({
  ...{ id, name, permissions, color: 0, hoist: false, position: 0 },
  ...{ managed: false, mentionable: false, flags: 0 },
});

const textChannel = (id: string, name: string) => ({
  ...{ id, name, type: 0, position: 0, permission_overwrites: [], nsfw: false, parent_id: null },
});

export const wholeGuild = ({ id, name }: { id: string; name: string }) => ({
  id,
  name,
  icon: null,
  owner_id: '400000000000000001',
  region: 'x',
  afk_timeout: 300,
  system_channel_flags: 0,
  verification_level: 0,
  default_message_notifications: 0,
  explicit_content_filter: 0,
  mfa_level: 0,
  nsfw_level: 0,
  premium_tier: 0,
  preferred_locale: 'en-US',
  features: [],
  emojis: [],
  stickers: [],
  roles: [role(id, '@everyone', '117760'), role(ORGANISERS, 'organisers', '32')],
  channels: [textChannel(CHANNEL, 'sewing'), textChannel(KITCHEN, 'kitchen')],
  members: [],
  threads: [],
  voice_states: [],
  presences: [],
  stage_instances: [],
  guild_scheduled_events: [],
  soundboard_sounds: [],
  member_count: 3,
  large: false,
  unavailable: false,
  joined_at: '2026-01-01T00:00:00.000000+00:00',
});
