import { setTimeout as after } from 'node:timers/promises';
import type { MatrixStart } from './settings.ts';
import { PLATFORM } from './settings.ts';
import { type News, takeNews } from './sync-answer.ts';
import { waitOf } from './trouble.ts';

type Fetch = typeof fetch;

/** The bot's way to the homeserver. */
export interface Wire {
  readonly fetch: Fetch;
  /** What a sync's answer told us, once the library has taken in the rest of it. */
  newsOf(answer: object): News | undefined;
}

/** Where the homeserver names no time to wait, milliseconds. */
const PAUSE = 5000;

/**
 * Counts what fails, and takes what was said in rooms out of each sync's answer. The library goes on to sync
 * whatever the homeserver asks it to wait: here it is held back.
 */
export function wireFor({ watch, log }: Pick<MatrixStart, 'watch' | 'log'>): Wire {
  const news = new WeakMap<object, News>();
  const count = (what: 'rate_limited_total' | 'server_errors_total') =>
    watch.count(what, { platform: PLATFORM });
  let notBefore = 0;

  async function called(...given: Parameters<Fetch>): Promise<Response> {
    const [, init] = given;
    try {
      const response = await fetch(...given);
      if (response.status === 429) count('rate_limited_total');
      if (response.status >= 500) count('server_errors_total');
      return response;
    } catch (error) {
      if (!init?.signal?.aborted) count('server_errors_total');
      throw error;
    }
  }

  async function synced(...given: Parameters<Fetch>): Promise<Response> {
    const signal = given[1]?.signal ?? undefined;
    const held = notBefore - performance.now();
    if (held > 0) await after(held, undefined, signal ? { signal } : {});
    const response = await called(...given);
    if (response.status === 429) {
      const { retry_after_ms: wait } = (await response
        .clone()
        .json()
        .catch(() => ({}))) as Waiting;
      notBefore = performance.now() + (waitOf(wait, response.headers.get('retry-after')) ?? PAUSE);
    }
    return response.ok ? taken(response) : response;
  }

  /** The same response, whose JSON is what is left for the library. */
  const taken = (response: Response): Response =>
    Object.defineProperty(response, 'json', {
      value: async () => {
        const answer = JSON.parse(await response.text());
        const told = takeNews(answer);
        news.set(answer, told);
        if (told.unsound > 0) {
          for (let i = 0; i < told.unsound; i++) watch.count('events_unsound_total', { platform: PLATFORM });
          log.warn({ events: told.unsound }, 'events that cannot be read were left out');
        }
        return answer;
      },
    });

  const isSync = (to: Parameters<Fetch>[0]) =>
    new URL(String(to)).pathname.endsWith('/_matrix/client/v3/sync');
  return {
    fetch: (...given) => (isSync(given[0]) ? synced(...given) : called(...given)),
    newsOf: (answer) => news.get(answer),
  };
}

interface Waiting {
  readonly retry_after_ms?: unknown;
}
