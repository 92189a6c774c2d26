import { setTimeout as after } from 'node:timers/promises';
import type { MatrixClient } from 'matrix-js-sdk';
import type { MatrixStart } from './settings.ts';
import { PLATFORM, TOO_OLD } from './settings.ts';
import { pageIn, type RoomEvent } from './sync-answer.ts';
import { brings, refusalIn } from './trouble.ts';

/** What a sync left out of a room. */
export interface Gap {
  readonly room: string;
  /** Where the messages that came begin. */
  readonly from: string;
  /** Where we had read to; unknown on the first start ever. */
  readonly to: string | undefined;
  /** What was said before then does not concern us, milliseconds. */
  readonly oldest: number;
}

interface GapNeeds extends Pick<MatrixStart, 'log' | 'watch' | 'now'> {
  client(): Promise<MatrixClient>;
  readonly signal: AbortSignal;
}

const PAGE = 50;
const FIRST_PAUSE = 1000;
const LONGEST_PAUSE = 60_000;

/** Where the homeserver will never let us read: no longer in the room, or nothing is there. */
const isFinal = (error: unknown): boolean => {
  const status = refusalIn(error)?.status;
  return status === 400 || status === 403 || status === 404;
};

/** Reads what was left out, page after page, and goes on where it failed. */
export class GapReader {
  readonly #needs: GapNeeds;
  readonly #gap: Gap;
  readonly #read: RoomEvent[] = [];
  readonly #begun: number;
  #from: string;
  #to: string | undefined;

  constructor(gap: Gap, needs: GapNeeds) {
    this.#gap = gap;
    this.#needs = needs;
    this.#from = gap.from;
    this.#to = gap.to;
    this.#begun = needs.now().getTime();
  }

  /** What was said, the oldest first. Rejects where it cannot be read now; may be called again. */
  async read(): Promise<RoomEvent[]> {
    for (;;) {
      const { events, end, oldest } = pageIn(await this.#page());
      this.#read.push(...events);
      if (end === null || end === this.#from || oldest < this.#gap.oldest) return this.#read.reverse();
      this.#from = end;
    }
  }

  async #page(): Promise<unknown> {
    const { room } = this.#gap;
    const client = await this.#needs.client();
    const ask = (to: string | undefined) =>
      client.http.authedRequest(
        'GET' as never,
        `/rooms/${encodeURIComponent(room)}/messages`,
        { dir: 'b', from: this.#from, limit: String(PAGE), ...(to ? { to } : {}) },
        undefined,
        { abortSignal: this.#needs.signal, priority: 'auto' },
      );
    try {
      return await ask(this.#to);
    } catch (error) {
      if (!this.#to || refusalIn(error)?.status !== 400) throw error;
      // Where we had read to may be from before the homeserver was set up anew: then age alone is the end.
      this.#to = undefined;
      return ask(undefined);
    }
  }

  /**
   * Reads on after a failure, with pauses that grow, for as long as anybody could wait for an answer. What cannot
   * be read is said once; null where it is given up.
   */
  async readOn(failed: unknown): Promise<RoomEvent[] | null> {
    const { log, signal, now } = this.#needs;
    const { room } = this.#gap;
    let error = failed;
    if (!isFinal(error))
      log.warn({ ...brings(error), room }, 'what a sync left out cannot be read yet; trying on');
    for (let pause = FIRST_PAUSE; ; pause = Math.min(pause * 2, LONGEST_PAUSE)) {
      if (isFinal(error) || now().getTime() - this.#begun > TOO_OLD) return this.#givenUp(error);
      await after(refusalIn(error)?.wait ?? pause, undefined, { signal });
      try {
        const read = await this.read();
        log.info({ room }, 'what a sync left out has been read');
        return read;
      } catch (again) {
        signal.throwIfAborted();
        error = again;
      }
    }
  }

  #givenUp(error: unknown): null {
    const { log, watch } = this.#needs;
    watch.count('gaps_lost_total', { platform: PLATFORM });
    log.error(
      { ...brings(error), room: this.#gap.room },
      'what a sync left out cannot be read: asks in it stay unanswered',
    );
    return null;
  }
}
