import type { SwapLine } from '../../../src/guild/swap-allotment.ts';

/** What the best of all assignments gives: area, and of those with that area the most members who get something. */
export interface Best {
  readonly area: number;
  readonly members: number;
}

const HAIR = 1e-6;

/**
 * Tries every assignment of offers to wishes, one count at a time, and keeps the best that is fair. Written apart
 * from the program: it knows the rules and nothing of how they are kept. Null where there are too many to try.
 */
export function bestByTrying(
  offers: readonly SwapLine[],
  wants: readonly SwapLine[],
  share: number,
  most = 30_000,
): Best | null {
  const pairs = offers.flatMap((offer, o) =>
    wants.flatMap((want, w) => (meets(offer, want) ? [{ o, w }] : [])),
  );
  const left = offers.map(({ count }) => count);
  const open = wants.map(({ count }) => count);
  const sent = new Map<string, number>();
  const received = new Map<string, number>();
  let best: Best = { area: 0, members: 0 };
  let tried = 0;

  const add = (to: Map<string, number>, who: string, area: number) => to.set(who, (to.get(who) ?? 0) + area);
  const isFair = () =>
    [...sent].every(([who, area]) => (received.get(who) ?? 0) >= (1 - share) * area - HAIR);

  // From each pair on: which offers each wish may still be met by.
  const reaches = pairs.map((_, from) => [...Map.groupBy(pairs.slice(from), ({ w }) => w)]);

  /** No more than this can still be added: every wish filled by what is left of its offers. */
  function atMost(from: number): number {
    let area = 0;
    for (const [w, by] of reaches[from] ?? []) {
      let reachable = 0;
      for (const { o } of by) reachable += left[o]!;
      area += Math.min(open[w]!, reachable) * wants[w]!.area;
    }
    return area;
  }

  function choose(at: number, area: number): boolean {
    if (++tried > most) return false;
    if (area + atMost(at) < best.area - HAIR) return true;
    const pair = pairs[at];
    if (!pair) {
      const members = [...received.values()].filter((got) => got > HAIR).length;
      const better = area > best.area + HAIR || (area > best.area - HAIR && members > best.members);
      if (better && isFair()) best = { area, members };
      return true;
    }
    const { o, w } = pair;
    const piece = offers[o]!.area;
    for (let count = Math.min(left[o]!, open[w]!); count >= 0; count--) {
      const change = (by: number) => {
        left[o]! -= by;
        open[w]! -= by;
        add(sent, offers[o]!.member, by * piece);
        add(received, wants[w]!.member, by * piece);
      };
      change(count);
      const whole = choose(at + 1, area + count * piece);
      change(-count);
      if (!whole) return false;
    }
    return true;
  }

  return choose(0, 0) ? best : null;
}

const meets = (offer: SwapLine, want: SwapLine): boolean =>
  offer.kind === want.kind &&
  offer.member !== want.member &&
  want.words.every((word) => offer.words.includes(word));
