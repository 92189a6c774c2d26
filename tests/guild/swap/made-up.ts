import type { SwapLine } from '../../../src/guild/swap-allotment.ts';

/** Areas of what is swapped most: a quarter, an eighth, a 10-inch and a 5-inch square, a strip, a 1-inch hexagon. */
export const AREAS = [378, 189, 100, 25, 105, 4.314582562299425] as const;

export interface MadeUp {
  readonly members: number;
  readonly linesEach: number;
  readonly kinds: number;
  readonly words: number;
  readonly most: number;
}

/** The same numbers in every run. */
export function seeded(seed: number): (below: number) => number {
  let at = seed * 2_654_435_761 + 1;
  return (below) => {
    at = (Math.imul(at ^ (at >>> 15), 0x2c1b3c6d) + 0x9e3779b9) >>> 0;
    return Math.floor((at / 4_294_967_296) * below);
  };
}

/** A swap that nobody held: every member with about as many offers as wishes. */
export function madeUpSwap(seed: number, { members, linesEach, kinds, words, most }: MadeUp) {
  const random = seeded(seed);
  const offers: SwapLine[] = [];
  const wants: SwapLine[] = [];
  for (let who = 0; who < members; who++)
    for (let line = 0; line < linesEach; line++) {
      const kind = random(kinds);
      const word = words > 0 ? [`w${random(words)}`] : [];
      const made = {
        member: `m${who}`,
        kind: `k${kind}`,
        area: AREAS[kind % AREAS.length]!,
        count: 1 + random(most),
      };
      if (line % 2 === 0) offers.push({ ...made, words: word });
      else wants.push({ ...made, words: random(10) < 6 ? word : [] });
    }
  return { offers, wants };
}
