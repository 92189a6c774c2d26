import type { Exchanged, SwapLine } from './swap-allotment.ts';
import type { NewSwapParcel, Swap, SwapEntry, SwapParcel, Swapper } from './swap-facts.ts';
import { goodArea, goodOf } from './swap-goods.ts';
import { type Left, matchSwap } from './swap-match.ts';
import { roundsLeft } from './swap-rounds.ts';

/** All that is kept of one swap. */
export interface WholeSwap {
  readonly swap: Swap;
  readonly people: readonly Swapper[];
  readonly entries: readonly SwapEntry[];
  readonly parcels: readonly SwapParcel[];
}

/** What is to be sent from now on, and how each line and each member fares. */
export interface Plan {
  readonly parcels: readonly NewSwapParcel[];
  /** Areas by member, what was sent before included, square inches. */
  readonly exchanged: ReadonlyMap<string, Exchanged>;
  /** What is left of each line by its number. */
  readonly left: ReadonlyMap<number, Left>;
  readonly area: number;
  /** As much could be sent if fairness were no matter. */
  readonly mostArea: number;
}

/**
 * Plans who sends what to whom. What was sent already stays; all else is planned anew among those who are in
 * now, so that it may be done again whenever somebody came late or stayed away.
 */
export const planSwap = (whole: WholeSwap): Plan =>
  whole.swap.each === null ? planMatched(whole) : planEven(whole, whole.swap.each);

function planMatched({ swap, people, entries, parcels }: WholeSwap): Plan {
  const sent = parcels.filter(({ sentAt }) => sentAt !== null);
  const open = stillOpen(entries, people, sent);
  const offers = open.filter(({ side }) => side === 'offer');
  const wants = open.filter(({ side }) => side === 'want');
  const before = exchangedBy(sent);
  const match = matchSwap(offers.map(lineOf), wants.map(lineOf), { share: swap.share, before });
  const planned = match.parcels.map(({ offer, want, count }): NewSwapParcel => {
    const [of, wish] = [offers[offer]!, wants[want]!];
    return {
      ...{ from: of.member, to: wish.member, entry: of.number, wish: wish.number },
      ...{ good: of.good, count, typed: of.typed },
    };
  });
  const numbered = [
    ...offers.map(({ number }, i) => [number, match.left.offers[i]!] as const),
    ...wants.map(({ number }, i) => [number, match.left.wants[i]!] as const),
  ];
  return {
    parcels: planned,
    exchanged: exchangedBy([...sent, ...planned]),
    left: new Map(numbered),
    area: match.area,
    mostArea: match.mostArea,
  };
}

/** Lines of those who are in, each less what was sent of it or for it. */
function stillOpen(
  entries: readonly SwapEntry[],
  people: readonly Swapper[],
  sent: readonly SwapParcel[],
): SwapEntry[] {
  const active = new Set(people.filter(({ state }) => state === 'in').map(({ member }) => member));
  const gone = new Map<number, number>();
  for (const { entry, wish, count } of sent)
    for (const number of [entry, wish])
      if (number !== null) gone.set(number, (gone.get(number) ?? 0) + count);
  return entries
    .filter(({ member }) => active.has(member))
    .map((entry) => ({ ...entry, count: entry.count - (gone.get(entry.number) ?? 0) }))
    .filter(({ count }) => count > 0);
}

const lineOf = ({ member, good, words, count }: SwapEntry): SwapLine => ({
  ...{ member, kind: good, words, count },
  area: goodArea(goodOf(good)),
});

/** What each has sent and received by these parcels. Somebody who was forgotten is left out. */
export function exchangedBy(
  parcels: readonly Pick<NewSwapParcel, 'from' | 'to' | 'good' | 'count'>[],
): Map<string, Exchanged> {
  const by = new Map<string, Exchanged>();
  const add = (member: string, sent: number, received: number) => {
    const had = by.get(member) ?? { sent: 0, received: 0 };
    if (member !== '') by.set(member, { sent: had.sent + sent, received: had.received + received });
  };
  for (const { from, to, good, count } of parcels) {
    const area = areaOf(good, count);
    add(from, area, 0);
    add(to, 0, area);
  }
  return by;
}

/** The area of so many pieces, square inches. */
export const areaOf = (good: string, count: number): number => goodArea(goodOf(good)) * count;

function planEven({ swap, people, parcels }: WholeSwap, each: number): Plan {
  const sent = parcels.filter(({ sentAt }) => sentAt !== null);
  const done = new Set(sent.map(({ from, to }) => JSON.stringify([from, to])));
  const active = people.filter(({ state }) => state === 'in').map(({ member }) => member);
  const rounds = roundsLeft(active, (from, to) => done.has(JSON.stringify([from, to])));
  const good = swap.good ?? '';
  const planned = rounds
    .flat()
    .map(({ from, to }) => ({ from, to, entry: null, wish: null, good, count: each, typed: '' }));
  const area = planned.length * areaOf(good, each);
  return {
    parcels: planned,
    exchanged: exchangedBy([...sent, ...planned]),
    left: new Map(),
    area,
    mostArea: area,
  };
}
