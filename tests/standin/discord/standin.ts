import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { bodyOf, type SentFile } from './body.ts';
import { type Event, type EventNeeds, eventOf, snowflake } from './events.ts';
import { CHANNEL, Gateway, OWN } from './gateway.ts';
import { unofferedIn } from './offered.ts';
import { faultsOf } from './rules.ts';

export const TOKEN = 'a.test.token';
export const BOT = { id: '200000000000000001', username: 'bee' };
export const GUILD = { id: '100000000000000001', name: 'The Tuesday Table' };

/** A message as members would see it. */
export interface Seen {
  readonly id: string;
  readonly alone: boolean;
  readonly channel: string;
  readonly body: { embeds?: Record<string, never>[]; components?: never[]; content?: string } & Record<
    string,
    unknown
  >;
  readonly files: readonly SentFile[];
  readonly kind: 'reply' | 'edit' | 'follow-up' | 'message' | 'modal' | 'suggestions' | 'update';
}

export interface Request {
  readonly method: string;
  readonly path: string;
  readonly body: unknown;
}

interface Outcome {
  readonly status: number;
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
  /** Milliseconds before the answer. */
  readonly after?: number;
  /** Does what was asked before it answers so. */
  readonly done?: boolean;
  /** Breaks the connection off in place of an answer. */
  readonly broken?: boolean;
}

interface Planned {
  readonly when: (request: Request) => boolean;
  readonly outcome: Outcome;
  times: number;
}

/** The three seconds within which the platform must have heard. */
const DEADLINE = 3000;

/** A loopback chat platform, strict: what the real one would refuse is a fault here, kept in `faults`. */
export class DiscordStandIn {
  readonly faults: string[] = [];
  readonly requests: Request[] = [];
  readonly seen: Seen[] = [];
  readonly pinned: string[] = [];
  /** Whether requests are held against the published schemas: not while it is measured how quick a bot is. */
  checking = true;
  /** How many shards it recommends. */
  shards = 1;
  /** A deadline shorter than the real one makes slow cases quick to test. */
  deadline = DEADLINE;
  readonly #http = createServer((request, response) => void this.#serve(request, response));
  /** The commands registered in each scope, by its address. */
  readonly #registered = new Map<string, unknown[]>();
  readonly #planned: Planned[] = [];
  /** Messages sent with a nonce that is to be used once: the same one again gives the message that there is. */
  readonly #byNonce = new Map<string, string>();
  readonly #events = new Map<string, Event & { readonly at: number; answered?: string; alone?: boolean }>();
  readonly #waiting = new Map<string, ((seen: Seen) => void)[]>();
  gateway!: Gateway;

  static async open(): Promise<DiscordStandIn> {
    const standIn = new DiscordStandIn();
    await new Promise<void>((done) => standIn.#http.listen(0, '127.0.0.1', done));
    standIn.gateway = new Gateway(standIn.#http, {
      ...{ token: TOKEN, bot: BOT, guilds: [GUILD] },
      address: () => standIn.socket,
      fault: (what) => standIn.faults.push(what),
    });
    return standIn;
  }

  /** What a member of the guild is offered. */
  get commands(): readonly unknown[] {
    return [...this.#registered.values()].flat();
  }

  /** Somebody takes a registered command away, in whichever scope. */
  unregister(name: string): void {
    for (const [scope, commands] of this.#registered)
      this.#registered.set(
        scope,
        commands.filter((one) => (one as { name: string }).name !== name),
      );
  }

  get #port(): number {
    return (this.#http.address() as AddressInfo).port;
  }

  /** The REST address without its version. */
  get api(): string {
    return `http://127.0.0.1:${this.#port}/api`;
  }

  get socket(): string {
    return `ws://127.0.0.1:${this.#port}`;
  }

  async close(): Promise<void> {
    this.gateway.close(1001);
    this.#http.closeAllConnections();
    await new Promise((done) => this.#http.close(done));
  }

  /** Lets the next requests of a kind end otherwise: 429, 5xx, late. */
  next(when: (request: Request) => boolean, outcome: Outcome, times = 1): void {
    this.#planned.push({ when, outcome, times });
  }

  /** Delivers an event, and gives the first thing that is seen in answer to it. */
  async deliver(needs: EventNeeds, times = 1): Promise<Seen> {
    if (needs.does === 'slash' || needs.does === 'typing')
      this.faults.push(...unofferedIn(this.commands, needs));
    const event = eventOf(needs, this.commands);
    const seen = this.firstFor(event.key);
    this.#events.set(event.key, { ...event, at: Date.now() });
    this.gateway.dispatch(event.type, event.payload, times);
    return seen;
  }

  /** Delivers an event that should get no answer. */
  tell(needs: EventNeeds): void {
    const event = eventOf(needs, this.commands);
    this.#events.set(event.key, { ...event, at: Date.now() });
    this.gateway.dispatch(event.type, event.payload);
  }

  /** Forgets what has been: in a long run it would fill the memory. */
  forget(): void {
    for (const list of [this.seen, this.requests, this.faults]) list.length = 0;
    this.#events.clear();
  }

  firstFor(key: string): Promise<Seen> {
    return new Promise((done) => this.#waiting.set(key, [...(this.#waiting.get(key) ?? []), done]));
  }

  #show(key: string, seen: Seen): void {
    this.seen.push(seen);
    for (const done of this.#waiting.get(key) ?? []) done(seen);
    this.#waiting.delete(key);
  }

  async #serve(incoming: IncomingMessage, response: ServerResponse): Promise<void> {
    const { body, files } = await bodyOf(incoming);
    const url = new URL(incoming.url ?? '', this.api);
    const path = decodeURIComponent(url.pathname).replace(/^\/api\/v10/, '');
    if (!url.pathname.startsWith('/api/v10/')) this.faults.push(`address ${url.pathname}`);
    const request = { method: incoming.method ?? '', path, body };
    this.requests.push(request);
    this.#checkAuthorization(incoming, path);
    const planned = this.#planned.find((one) => one.times > 0 && one.when(request));
    if (planned) planned.times--;
    const refused = planned && !planned.outcome.done;
    if (this.checking && body !== undefined && !refused)
      this.faults.push(
        ...faultsOf(
          request.method,
          path,
          body,
          files.map(({ name }) => name),
        ).map((f) => `${request.method} ${path}: ${f}`),
      );
    const own = refused ? planned.outcome : this.#answer(request, files, url.searchParams);
    const { status, body: said, headers = {} } = planned?.outcome ?? own;
    const after = planned?.outcome.after ?? 0;
    if (after > 0) await new Promise((done) => setTimeout(done, after));
    if (planned?.outcome.broken) return void incoming.socket.destroy();
    if (status === 204 || said === undefined) return void response.writeHead(status, headers).end();
    response.writeHead(status, { 'content-type': 'application/json', ...headers });
    response.end(JSON.stringify(said));
  }

  #checkAuthorization(incoming: IncomingMessage, path: string): void {
    const given = incoming.headers.authorization;
    const open = path.startsWith('/interactions/') || path.startsWith('/webhooks/');
    if (open && given) this.faults.push(`authorization sent to ${path}`);
    if (!open && given !== `Bot ${TOKEN}`) this.faults.push(`authorization missing at ${path}`);
  }

  #answer(request: Request, files: readonly SentFile[], query: URLSearchParams): Outcome {
    const { method, path, body } = request;
    if (path === '/gateway/bot')
      return {
        status: 200,
        body: {
          url: this.socket,
          shards: this.shards,
          session_start_limit: { total: 1000, remaining: 999, reset_after: 0, max_concurrency: 16 },
        },
      };
    if (path === '/applications/@me') return { status: 200, body: { id: BOT.id, name: BOT.username } };
    if (/^\/applications\/\d+\/(?:guilds\/\d+\/)?commands$/.test(path))
      return this.#commands(method, path, body);
    const callback = /^\/interactions\/(\d+)\/([^/]+)\/callback$/.exec(path);
    if (callback) return this.#callback(callback[1] ?? '', body as never, files, query);
    const webhook = /^\/webhooks\/\d+\/([^/]+)(?:\/messages\/(@original|\d+))?$/.exec(path);
    if (webhook) return this.#webhook(request, webhook[1] ?? '', webhook[2], files, query);
    const message = /^\/channels\/(\d+)\/messages(?:\/(\d+))?$/.exec(path);
    if (message) return this.#message(request, message[1] ?? '', message[2], files);
    if (/^\/channels\/\d+\/(?:messages\/)?pins\/\d+$/.test(path)) {
      this.pinned.push(path.split('/').at(-1) ?? '');
      return { status: 204 };
    }
    if (method === 'GET' && /^\/channels\/\d+$/.test(path))
      return { status: 200, body: { id: path.split('/')[2], type: 0, guild_id: GUILD.id, name: 'sewing' } };
    if (path === '/users/@me/channels')
      return {
        status: 200,
        body: {
          id: OWN,
          type: 1,
          recipients: [
            {
              id: (body as { recipient_id: string }).recipient_id,
              username: 'x',
              discriminator: '0',
              avatar: null,
            },
          ],
        },
      };
    this.faults.push(`no such route: ${method} ${path}`);
    return { status: 404, body: { code: 0, message: '404: Not Found' } };
  }

  #commands(method: string, path: string, body: unknown): Outcome {
    if (method === 'PUT')
      this.#registered.set(
        path,
        (body as object[]).map((one) => ({
          ...{ id: snowflake(), version: snowflake(), application_id: BOT.id },
          ...one,
        })),
      );
    return { status: 200, body: this.#registered.get(path) ?? [] };
  }

  #callback(
    id: string,
    body: { type: number; data?: Record<string, unknown> },
    files: readonly SentFile[],
    query: URLSearchParams,
  ): Outcome {
    const event = this.#events.get(id);
    if (!event || Date.now() - event.at > this.deadline)
      return { status: 404, body: { code: 10062, message: 'Unknown interaction' } };
    if (event.answered)
      return { status: 400, body: { code: 40060, message: 'Interaction has already been acknowledged.' } };
    const message = snowflake();
    event.answered = message;
    event.alone = (Number(body.data?.flags ?? 0) & 64) !== 0;
    const kind = ({ 4: 'reply', 7: 'update', 8: 'suggestions', 9: 'modal' } as const)[body.type as 4];
    if (kind)
      this.#show(id, {
        id: message,
        alone: event.alone,
        channel: CHANNEL,
        body: body.data as never,
        files,
        kind,
      });
    if (query.get('with_response') !== 'true') return { status: 204 };
    return {
      status: 200,
      body: {
        interaction: { id, type: 2 },
        resource: { type: body.type, message: this.#whole(message, body.data ?? {}) },
      },
    };
  }

  #webhook(
    { method, body }: Request,
    token: string,
    message: string | undefined,
    files: readonly SentFile[],
    query: URLSearchParams,
  ): Outcome {
    const event = this.#events.get(token.replace(/^token-/, ''));
    if (!event) return { status: 401, body: { code: 50027, message: 'Invalid Webhook Token' } };
    if (method === 'DELETE') return { status: 204 };
    if (!message && query.get('wait') !== 'true') this.faults.push('a follow-up without wait=true');
    const id = message ? (event.answered ?? '') : snowflake();
    if (message && !event.answered) return { status: 404, body: { code: 10008, message: 'Unknown Message' } };
    const data = (body ?? {}) as Record<string, unknown>;
    const alone = message ? (event.alone ?? false) : (Number(data.flags ?? 0) & 64) !== 0;
    if (method !== 'GET')
      this.#show(event.key, {
        id,
        alone,
        channel: CHANNEL,
        body: data as never,
        files,
        kind: message ? 'edit' : 'follow-up',
      });
    return { status: 200, body: this.#whole(id, data) };
  }

  #message(
    { method, body }: Request,
    channel: string,
    message: string | undefined,
    files: readonly SentFile[],
  ): Outcome {
    const data = (body ?? {}) as Record<string, unknown>;
    const repliedTo = (data.message_reference as { message_id?: string } | undefined)?.message_id;
    const nonce = data.enforce_nonce ? `${channel} ${data.nonce}` : undefined;
    const before = nonce && this.#byNonce.get(nonce);
    if (before) return { status: 200, body: this.#whole(before, data, channel) };
    const id = message ?? snowflake();
    if (nonce) this.#byNonce.set(nonce, id);
    const kind = method === 'PATCH' ? 'edit' : 'message';
    const seen: Seen = { id, alone: channel.startsWith('5'), channel, body: data as never, files, kind };
    const late = [...this.#events.values()].find(
      ({ key, at }) => this.#waiting.has(key) && (channel.startsWith('5') || Date.now() - at > this.deadline),
    );
    this.#show(repliedTo ?? late?.key ?? `channel:${channel}`, seen);
    return { status: 200, body: this.#whole(id, data, channel) };
  }

  #whole(id: string, data: Record<string, unknown>, channel = CHANNEL) {
    const author = { ...BOT, discriminator: '0', avatar: null, bot: true };
    return {
      ...{
        id,
        channel_id: channel,
        author,
        content: data.content ?? '',
        timestamp: new Date().toISOString(),
      },
      ...{
        edited_timestamp: null,
        tts: false,
        mention_everyone: false,
        mentions: [],
        mention_roles: [],
        attachments: [],
      },
      ...{
        embeds: data.embeds ?? [],
        components: data.components ?? [],
        pinned: false,
        type: 0,
        flags: data.flags ?? 0,
        nonce: data.nonce,
      },
    };
  }
}
