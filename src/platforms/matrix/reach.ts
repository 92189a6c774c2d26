import type { MatrixStart } from './settings.ts';
import { PLATFORM } from './settings.ts';
import { brings } from './trouble.ts';

/** What we try to do at the homeserver, each in its own time. */
type Trying = 'to sync' | 'to send';

/** The same is not said again before, milliseconds: a homeserver may be lost and found with every call. */
const SAID_AGAIN = 60_000;

/** Whether the homeserver serves us: lost and found are said once, however many calls find it out. */
export class Reach {
  readonly #needs: Pick<MatrixStart, 'log' | 'watch'>;
  readonly #failing = new Set<Trying>();
  #said = Number.NEGATIVE_INFINITY;

  constructor(needs: Pick<MatrixStart, 'log' | 'watch'>) {
    this.#needs = needs;
  }

  lost(trying: Trying, error: unknown): void {
    const before = this.#failing.size;
    this.#failing.add(trying);
    if (before > 0 || performance.now() - this.#said < SAID_AGAIN) return;
    this.#said = performance.now();
    this.#needs.log.warn(brings(error), 'the homeserver cannot be reached, or fails; trying on');
  }

  found(trying: Trying): void {
    if (!this.#failing.delete(trying) || this.#failing.size > 0) return;
    this.#needs.watch.count('reconnects_total', { platform: PLATFORM });
    this.#needs.log.info({}, 'the homeserver is back');
  }
}
