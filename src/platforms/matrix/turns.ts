/** Works about one thing run one after another; works about different things at once. */
export class Turns {
  readonly #last = new Map<string, Promise<unknown>>();

  /** Runs the work after those about the same thing that were begun before it. */
  take<T>(about: string, work: () => Promise<T>): Promise<T> {
    const before = this.#last.get(about) ?? Promise.resolve();
    const done = before.then(work, work);
    this.#last.set(about, done);
    const over = () => {
      if (this.#last.get(about) === done) this.#last.delete(about);
    };
    done.then(over, over);
    return done;
  }
}
