import { createHash } from 'node:crypto';
import { setTimeout as after } from 'node:timers/promises';
import type { MatrixClient } from 'matrix-js-sdk';
import type { Watch } from '../../chat/watch.ts';
import type { Log } from '../platform.ts';
import type { Reach } from './reach.ts';
import { PLATFORM, TOO_OLD } from './settings.ts';
import { brings, type Refusal, refusalIn } from './trouble.ts';

/** Something was not allowed there: it has been counted and said, and there is nothing more to do about it. */
export class Refused extends Error {
  override readonly name = 'Refused';
  readonly refusal: Refusal;

  constructor(refusal: Refusal) {
    super(`${refusal.status} ${refusal.code}`);
    this.refusal = refusal;
  }
}

interface OutboxNeeds {
  readonly log: Log;
  readonly watch: Watch;
  readonly reach: Reach;
  /** The client as it is now: after a new login it is another one. Rejects when there will be none. */
  client(): Promise<MatrixClient>;
}

/** That it makes us wait is not said again before, milliseconds. */
const SAID_AGAIN = 60_000;
const FIRST_PAUSE = 1000;
const LONGEST_PAUSE = 60_000;

/** The same event makes the same name, so that the homeserver takes a send that is repeated for one. */
export const transactionOf = (...about: readonly string[]): string =>
  `hc${createHash('sha256').update(JSON.stringify(about)).digest('base64url').slice(0, 32)}`;

/** Sends, and waits as it is asked to: a busy or unreachable homeserver delays a message and loses none. */
export class Outbox {
  readonly #needs: OutboxNeeds;
  readonly #refusing = new Set<string>();
  readonly #stopping = new AbortController();
  #asked = Number.NEGATIVE_INFINITY;

  constructor(needs: OutboxNeeds) {
    this.#needs = needs;
  }

  /** Waits, but not beyond the end. */
  pause(milliseconds: number): Promise<void> {
    return after(milliseconds, undefined, { signal: this.#stopping.signal });
  }

  /** From now on nothing is tried again. */
  stop(): void {
    this.#stopping.abort();
  }

  /** Sends an event, encrypted where the room is; its id. The same transaction is the same event. */
  async send(room: string, type: string, content: object, transaction: string): Promise<string> {
    return this.#trying(room, async (client) => {
      const sealed = await this.#sealed(client, room, type, content);
      const path = `/rooms/${encodeURIComponent(room)}/send/${encodeURIComponent(sealed.type)}/${transaction}`;
      const answer = await put(client, path, sealed.content);
      return answer.event_id;
    });
  }

  async redact(room: string, event: string, transaction: string): Promise<void> {
    await this.#trying(room, (client) =>
      put(
        client,
        `/rooms/${encodeURIComponent(room)}/redact/${encodeURIComponent(event)}/${transaction}`,
        {},
      ),
    );
  }

  /** Any other call about a room, tried again in the same way. */
  call<T>(room: string, act: (client: MatrixClient) => Promise<T>): Promise<T> {
    return this.#trying(room, act);
  }

  /**
   * Whether a room is encrypted: its state says so, or did so once. It may be in a way that we do not know, or whose
   * name was taken away; then nothing can be said there, and least of all in the clear.
   */
  async encrypts(room: string): Promise<boolean> {
    const client = await this.#needs.client();
    if (client.getRoom(room)?.hasEncryptionStateEvent()) return true;
    return (await client.getCrypto()?.isEncryptionEnabledInRoom(room)) ?? false;
  }

  /** Reactions stay readable to the homeserver, as in every client: it counts them. */
  async #sealed(client: MatrixClient, room: string, type: string, content: object) {
    if (type !== 'm.room.message' || !(await this.encrypts(room))) return { type, content };
    const { MatrixEvent } = await import('matrix-js-sdk');
    const event = new MatrixEvent({
      type,
      content: { ...content },
      room_id: room,
      sender: client.getSafeUserId(),
    });
    const crypto = client.getCrypto() as unknown as { encryptEvent(event: unknown): Promise<void> };
    try {
      await crypto.encryptEvent(event);
    } catch (error) {
      const code = error instanceof Error ? error.message : '';
      if (!code.startsWith('Cannot encrypt')) throw error;
      const refusal = { status: 0, code, wait: null, softLogout: false };
      throw this.#refused(room, refusal, 'no message can be encrypted for this room: nothing is said there');
    }
    return { type: event.getWireType(), content: event.getWireContent() };
  }

  /** Tries for as long as anybody could wait for an answer. */
  async #trying<T>(room: string, act: (client: MatrixClient) => Promise<T>): Promise<T> {
    const until = performance.now() + TOO_OLD;
    for (let pause = FIRST_PAUSE; ; pause = Math.min(pause * 2, LONGEST_PAUSE)) {
      const client = await this.#needs.client();
      // The client may be gone by then.
      this.#stopping.signal.throwIfAborted();
      try {
        const done = await act(client);
        this.#needs.reach.found('to send');
        this.#refusing.delete(room);
        return done;
      } catch (error) {
        // What failed since its client was put away for a new login is done with the new one.
        if (client !== (await this.#needs.client())) continue;
        const refusal = refusalIn(error);
        if (refusal && !isPassing(refusal)) throw this.#refused(room, refusal);
        if ((!refusal && !isNetwork(error)) || performance.now() > until) throw error;
        this.#held(error, refusal);
        await this.pause(refusal?.wait ?? pause);
      }
    }
  }

  /** Asked to wait or not served: each is said once, not with every message. */
  #held(error: unknown, refusal: Refusal | null): void {
    if (refusal?.code === 'M_UNKNOWN_TOKEN') return;
    if (refusal?.status !== 429) {
      this.#needs.reach.lost('to send', error);
      return;
    }
    if (performance.now() - this.#asked < SAID_AGAIN) return;
    this.#asked = performance.now();
    this.#needs.log.warn(brings(error), 'the homeserver makes us wait');
  }

  #refused(room: string, refusal: Refusal, words = 'not allowed there'): Refused {
    const { log, watch } = this.#needs;
    watch.count('sends_refused_total', { platform: PLATFORM });
    if (!this.#refusing.has(room)) log.warn({ room, status: refusal.status, code: refusal.code }, words);
    this.#refusing.add(room);
    return new Refused(refusal);
  }
}

/** Waiting mends it: busy, failing for now, or logged out while a new login is on its way. */
const isPassing = ({ status, code }: Refusal): boolean =>
  status === 429 || status >= 500 || code === 'M_UNKNOWN_TOKEN';

const isNetwork = (error: unknown): boolean =>
  error instanceof Error &&
  (error.name === 'ConnectionError' || error.name === 'TypeError' || error.name === 'AbortError');

const put = (client: MatrixClient, path: string, content: object) =>
  client.http.authedRequest<{ event_id: string }>('PUT' as never, path, undefined, content as never);
