/** Works by the member they are for, until they end. */
export class OnTheirWay {
  readonly #works = new Map<string, Set<Promise<unknown>>>();

  /** The same work, known to be on its way until it ends. */
  take(member: string, work: Promise<void>): Promise<void> {
    const hers = this.#works.get(member) ?? new Set();
    this.#works.set(member, hers.add(work));
    const over = () => {
      hers.delete(work);
      if (hers.size === 0 && this.#works.get(member) === hers) this.#works.delete(member);
    };
    work.then(over, over);
    return work;
  }

  /** Waits until all that is on its way for her now has ended, however it ends. */
  async ended(member: string): Promise<void> {
    await Promise.allSettled(this.#works.get(member) ?? []);
  }
}
