import { Allotment, type Link, type SwapLine, type SwapTerms } from './swap-allotment.ts';
import { giveMore, giveOtherwise, giveToAll } from './swap-better.ts';
import { makeFair } from './swap-fair.ts';
import { fill } from './swap-fill.ts';
import { Paths } from './swap-paths.ts';

/** So many pieces of one offer to one wish, both by their place in what was given to match. */
export interface Parcel extends Link {
  /** Square inches. */
  readonly area: number;
}

export interface Match {
  readonly parcels: readonly Parcel[];
  /** Area sent and received by each member, square inches. */
  readonly sent: ReadonlyMap<string, number>;
  readonly received: ReadonlyMap<string, number>;
  readonly area: number;
  /** How many pieces each offer and each wish has left, and why. */
  readonly left: { readonly offers: readonly Left[]; readonly wants: readonly Left[] };
  /** As much could be given if fairness were no matter: the parcels' own area where nothing was held back. */
  readonly mostArea: number;
}

/** What is left of a line: nothing was there to meet it, it was all gone to others, or it was held back to be fair. */
export interface Left {
  readonly count: number;
  readonly why: 'none' | 'nothing-like-it' | 'gone' | 'held-back';
}

/** Offers looked at while the match is made better: a bound on the time that is the same on every machine. */
const LOOKS = 2_000_000;

/**
 * Matches offers with wishes of other members. Nobody receives less area than she sends by more than `share` of
 * it (0 to 1); of what that allows, as much area as can be found is given, and to as many members as are found.
 *
 * The most area that can be given at all is found exactly (pieces of one kind are alike, so it is the largest
 * flow from offers to wishes, kind by kind). Where that is fair already, it is the answer. Else it is made fair
 * by passing pieces on and holding some back, and made larger again by rounds of favours: good, not proven best.
 * The same lines in the same order give the same match.
 *
 * @example
 * matchSwap([{ member: 'Ada', kind: 'quarter', words: ['blue'], area: 378, count: 2 }, { member: 'Bea', kind: 'charm', words: [], area: 25, count: 30 }], [{ member: 'Bea', kind: 'quarter', words: [], area: 378, count: 1 }, { member: 'Ada', kind: 'charm', words: [], area: 25, count: 30 }], { share: 0.2 }).parcels.map(({ count }) => count) // [1, 18]
 */
export function matchSwap(offers: readonly SwapLine[], wants: readonly SwapLine[], terms: SwapTerms): Match {
  const all = new Allotment(offers, wants, terms);
  const paths = new Paths(all, LOOKS);
  fill(all, paths);
  const mostArea = all.area;
  makeFair(all, paths);
  giveMore(all, paths);
  giveOtherwise(all, paths);
  giveToAll(all, paths);
  return {
    parcels: all.links().map((link) => ({ ...link, area: link.count * all.offers[link.offer]!.area })),
    sent: byName(all, all.sent),
    received: byName(all, all.received),
    area: all.area,
    mostArea,
    left: leftOf(all),
  };
}

function leftOf(all: Allotment): Match['left'] {
  const wishers = wishersOf(all);
  const offers = all.offers.map(({ left, who }, offer): Left => {
    const likes = wishers.get(offer) ?? [];
    if (left === 0) return { count: 0, why: 'none' };
    if (!likes.some(({ any }) => others(any, who))) return { count: left, why: 'nothing-like-it' };
    return { count: left, why: likes.some(({ open }) => others(open, who)) ? 'held-back' : 'gone' };
  });
  const wants = all.wants.map(({ left, who, options }): Left => {
    const likes = options.map((offer) => all.offers[offer]!).filter((offer) => offer.who !== who);
    if (left === 0) return { count: 0, why: 'none' };
    if (likes.length === 0) return { count: left, why: 'nothing-like-it' };
    return { count: left, why: likes.some((offer) => offer.left > 0) ? 'held-back' : 'gone' };
  });
  return { offers, wants };
}

/** Members whose wishes are alike, and those of them who wish for more still. */
interface Wishers {
  readonly any: Set<number>;
  readonly open: Set<number>;
}

/** For each offer those who wish for what it is. */
function wishersOf(all: Allotment): Map<number, Wishers[]> {
  const alike = new Map<readonly number[], Wishers>();
  for (const { options, who, left } of all.wants) {
    const wishers = alike.get(options) ?? { any: new Set(), open: new Set() };
    alike.set(options, wishers);
    wishers.any.add(who);
    if (left > 0) wishers.open.add(who);
  }
  const of = new Map<number, Wishers[]>();
  for (const [options, wishers] of alike)
    for (const offer of options) {
      const known = of.get(offer);
      if (known) known.push(wishers);
      else of.set(offer, [wishers]);
    }
  return of;
}

const others = (members: ReadonlySet<number>, who: number): boolean =>
  members.size > (members.has(who) ? 1 : 0);

const byName = (all: Allotment, areas: Float64Array): Map<string, number> =>
  new Map(all.members.map((member, i) => [member, areas[i]!]));
