import { setTimeout as after } from 'node:timers/promises';
import type { Account, Reach } from '../whole/matrix/homeserver.ts';

type Json = Record<string, unknown>;

interface Synced {
  readonly next_batch: string;
  readonly rooms?: { readonly join?: Record<string, { readonly timeline?: { readonly events?: Json[] } }> };
}

/** A member without a client: she asks by plain requests, so that she costs next to nothing beside the bots. */
export class LightMember {
  readonly user: string;
  readonly token: string;
  readonly #address: string;
  /** What waits for an answer to a message, by the message; and the answers that came before anybody waited. */
  readonly #waiting = new Map<string, () => void>();
  readonly #answered = new Set<string>();
  #number = 0;
  #over = false;

  private constructor(address: string, user: string, token: string) {
    this.#address = address;
    this.user = user;
    this.token = token;
  }

  static async logIn({ address }: Reach, { user, password }: Account): Promise<LightMember> {
    const door = new LightMember(address, user, '');
    const { access_token: token } = await door.call('POST', 'login', {
      type: 'm.login.password',
      identifier: { type: 'm.id.user', user },
      password,
    });
    return new LightMember(address, user, String(token));
  }

  async call(method: string, path: string, body?: object): Promise<Json> {
    const answer = await fetch(`${this.#address}/_matrix/client/v3/${path}`, {
      method,
      headers: this.token ? { authorization: `Bearer ${this.token}` } : {},
      ...(body ? { body: JSON.stringify(body) } : {}),
    });
    const said = (await answer.json()) as Json;
    if (!answer.ok) throw new Error(`${method} ${path}: ${JSON.stringify(said)}`);
    return said;
  }

  async makeRoom(invite: readonly string[], more: object = {}): Promise<string> {
    const made = await this.call('POST', 'createRoom', { preset: 'private_chat', invite, ...more });
    return String(made.room_id);
  }

  join(room: string): Promise<Json> {
    return this.call('POST', `join/${encodeURIComponent(room)}`, {});
  }

  /** Waits until somebody is in a room. */
  async meets(room: string, user: string): Promise<void> {
    for (;;) {
      const { joined } = await this.call('GET', `rooms/${encodeURIComponent(room)}/joined_members`);
      if (Object.hasOwn(joined as Json, user)) return;
      await after(100);
    }
  }

  /** Says something; its event. */
  async say(room: string, body: string): Promise<string> {
    const path = `rooms/${encodeURIComponent(room)}/send/m.room.message/b${process.pid}.${this.#number++}`;
    return String((await this.call('PUT', path, { msgtype: 'm.text', body })).event_id);
  }

  /** Listens for answers, to whoever asked, until it is told to stop. */
  async listen(): Promise<void> {
    let since = '';
    const filter = encodeURIComponent(JSON.stringify({ room: { timeline: { limit: 1000 } } }));
    while (!this.#over) {
      const synced = (await this.call(
        'GET',
        `sync?timeout=5000&filter=${filter}${since && `&since=${since}`}`,
      )) as unknown as Synced;
      for (const { timeline } of Object.values(synced.rooms?.join ?? {}))
        for (const event of timeline?.events ?? []) this.#hear(event);
      since = synced.next_batch;
    }
  }

  stop(): void {
    this.#over = true;
  }

  #hear({ content }: Json): void {
    const { msgtype, 'm.relates_to': relation } = content as Json;
    const on = ((relation as Json)?.['m.in_reply_to'] as Json)?.event_id;
    if (msgtype !== 'm.notice' || typeof on !== 'string') return;
    this.#answered.add(on);
    this.#waiting.get(on)?.();
    this.#waiting.delete(on);
  }

  /** Resolves when a message has been answered. */
  answerTo(event: string): Promise<void> {
    if (this.#answered.has(event)) return Promise.resolve();
    return new Promise((done, failed) => {
      const late = setTimeout(() => failed(new Error(`no answer to ${event} in a minute`)), 60_000);
      this.#waiting.set(event, () => {
        clearTimeout(late);
        done();
      });
    });
  }
}
