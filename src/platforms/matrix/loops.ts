/**
 * Words to us by name, or numbers pressed, from one sender within a minute, after which we fall silent: no person
 * talks so.
 */
const MOST = 12;
const MINUTE = 60_000;
/** So many are watched at once; of those watched longest nothing more is known. */
const WATCHED = 1000;

/** Finds out who answers whatever we say, and would keep us talking for ever. */
export class Loops {
  readonly #lately = new Map<string, readonly number[]>();

  /** How often this sender has spoken to us in the last minute: once more, at this moment (milliseconds). */
  heard(sender: string, at: number): 'as people do' | 'too often' | 'too often from now on' {
    const lately = [...(this.#lately.get(sender) ?? []).filter((one) => at - one < MINUTE), at].slice(
      -MOST - 2,
    );
    this.#lately.delete(sender);
    this.#lately.set(sender, lately);
    const [oldest] = this.#lately.keys();
    if (this.#lately.size > WATCHED && oldest !== undefined) this.#lately.delete(oldest);
    if (lately.length <= MOST) return 'as people do';
    return lately.length === MOST + 1 ? 'too often from now on' : 'too often';
  }
}
