import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Recipe } from './draw.ts';

const ENTRY = fileURLToPath(new URL('./drawing-entry.js', import.meta.url));

/** A process that has had nothing to draw for so long ends, milliseconds. */
const IDLE = 20_000;

/** One that has not finished a drawing for so long will not, milliseconds. */
const STUCK = 60_000;

/** What the other process answers. */
interface Drawn {
  readonly id: number;
  readonly picture?: Uint8Array;
  readonly failed?: string;
}

interface Waiting {
  done(picture: Uint8Array): void;
  failed(why: Error): void;
}

/**
 * Draws in a process of its own, one picture after another. A drawing keeps a process that answers members busy
 * for a tenth of a second, and leaves as much memory behind as all the rest needs; here both end with the
 * process. It is begun with the first drawing, and ends when there has been none for a while.
 */
export class DrawnApart {
  readonly #waiting = new Map<number, Waiting>();
  readonly #entry: string;
  #process: ChildProcess | undefined;
  #timer: NodeJS.Timeout | undefined;
  #count = 0;

  constructor(entry = ENTRY) {
    this.#entry = entry;
  }

  /** Whether the other process is there just now. */
  get running(): boolean {
    return this.#process !== undefined;
  }

  draw(recipe: Recipe): Promise<Uint8Array> {
    const id = ++this.#count;
    return new Promise((done, failed) => {
      this.#waiting.set(id, { done, failed });
      this.#process ??= this.#begun();
      this.#hold();
      this.#process.send({ id, recipe }, (error) => {
        if (error) this.#settle({ id, failed: error.message });
      });
    });
  }

  /** Lets the process go; what it has not drawn yet will not be. */
  stop(): void {
    clearTimeout(this.#timer);
    const stopped = this.#process;
    this.#process = undefined;
    if (stopped?.connected) stopped.disconnect();
    this.#fail(new Error('stopped'));
  }

  #begun(): ChildProcess {
    const begun = fork(this.#entry, {
      ...{ serialization: 'advanced', execArgv: [] },
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    });
    begun.on('message', (drawn) => this.#settle(drawn as Drawn));
    begun.once('error', (error) => this.#lost(begun, error));
    begun.once('exit', () => this.#lost(begun, new Error('the drawing process has ended')));
    return begun;
  }

  #settle({ id, picture, failed }: Drawn): void {
    const waiting = this.#waiting.get(id);
    this.#waiting.delete(id);
    if (picture) waiting?.done(picture);
    else waiting?.failed(new Error(failed));
    this.#hold();
  }

  /** While something is waited for the program does not end, and the wait has a limit; else the process has. */
  #hold(): void {
    clearTimeout(this.#timer);
    const { channel } = this.#process ?? {};
    if (this.#waiting.size > 0) {
      this.#process?.ref();
      channel?.ref();
      this.#timer = setTimeout(() => this.#process?.kill('SIGKILL'), STUCK).unref();
    } else {
      this.#process?.unref();
      channel?.unref();
      this.#timer = setTimeout(() => this.stop(), IDLE).unref();
    }
  }

  /** The process ended by itself: what it was to draw is not drawn, and the next drawing begins another. */
  #lost(ended: ChildProcess, why: Error): void {
    if (this.#process !== ended) return;
    clearTimeout(this.#timer);
    this.#process = undefined;
    this.#fail(why);
  }

  #fail(why: Error): void {
    for (const { failed } of this.#waiting.values()) failed(why);
    this.#waiting.clear();
  }
}
