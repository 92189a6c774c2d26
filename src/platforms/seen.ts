/** Remembers the last ids it was told, so that one delivered again while it is being answered is not begun again. */
export class Seen {
  readonly #most: number;
  readonly #ids = new Set<string>();

  constructor(most = 10_000) {
    this.#most = most;
  }

  /** True the first time an id is told. */
  first(id: string): boolean {
    if (this.#ids.has(id)) return false;
    this.#ids.add(id);
    if (this.#ids.size > this.#most) {
      const [oldest] = this.#ids;
      if (oldest !== undefined) this.#ids.delete(oldest);
    }
    return true;
  }

  has(id: string): boolean {
    return this.#ids.has(id);
  }
}
