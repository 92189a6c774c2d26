/**
 * Runs a few works at a time, the first come first. Were all begun at once, all would end late and at the same
 * time, and a process that is killed again and again would finish none.
 */
export class Few {
  readonly #most: number;
  readonly #waiting: (() => void)[] = [];
  #going = 0;

  constructor(most: number) {
    this.#most = most;
  }

  async take<T>(work: () => Promise<T>): Promise<T> {
    if (this.#going >= this.#most) await new Promise<void>((go) => this.#waiting.push(go));
    else this.#going++;
    try {
      return await work();
    } finally {
      // Whoever waits longest takes the place over.
      const next = this.#waiting.shift();
      if (next) next();
      else this.#going--;
    }
  }
}
