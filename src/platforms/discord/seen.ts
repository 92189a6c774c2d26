/** Remembers the last events, so that one delivered again while it is being answered is not begun again. */
export class Seen {
  readonly #least: number;
  #now = new Set<string>();
  #before = new Set<string>();

  /** At least so many of the last ids are remembered, at most twice as many. */
  constructor(least = 10_000) {
    this.#least = least;
  }

  /** True the first time an id is told. */
  first(id: string): boolean {
    if (this.#now.has(id) || this.#before.has(id)) return false;
    this.#now.add(id);
    if (this.#now.size >= this.#least) [this.#before, this.#now] = [this.#now, new Set()];
    return true;
  }
}
