/** Numbers that look random and come again from the same seed (a 32-bit mixing generator). */
export class Dice {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** From 0 up to 1. */
  next(): number {
    this.#state = (this.#state + 0x9e3779b9) >>> 0;
    let z = this.#state;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return ((z ^ (z >>> 16)) >>> 0) / 2 ** 32;
  }

  /** A whole number from 0 up to, not including, `below`. */
  whole(below: number): number {
    return Math.floor(this.next() * below);
  }
}
