import { type Allotment, HAIR } from './swap-allotment.ts';
import type { Paths } from './swap-paths.ts';

/**
 * Makes the allotment fair: as long as somebody receives too little for what she sends, she is given more by
 * those who have room, or somebody who has room sends in her place, or she sends less.
 */
export function makeFair(all: Allotment, paths: Paths): void {
  const lines = { offersOf: byMember(all, all.offers), wantsOf: byMember(all, all.wants) };
  const pastHelp = new Set<number>();
  for (;;) {
    const who = worstOff(all, pastHelp);
    if (who === undefined) return;
    if (receiveMore(all, paths, lines.wantsOf[who]!, who)) continue;
    if (sendInHerPlace(all, lines.offersOf[who]!)) continue;
    while (all.room(who) < -HAIR && sendLess(all, lines.offersOf[who]!, who));
    // She has sent it before, and nobody can make up for it.
    if (all.room(who) < -HAIR) pastHelp.add(who);
  }
}

function byMember(all: Allotment, lines: Allotment['offers']): number[][] {
  const of: number[][] = all.members.map(() => []);
  for (const [line, { who }] of lines.entries()) of[who]!.push(line);
  return of;
}

function worstOff(all: Allotment, pastHelp: ReadonlySet<number>): number | undefined {
  let worst: number | undefined;
  let least = -HAIR;
  for (const who of all.members.keys()) {
    const room = all.room(who);
    if (room < least && !pastHelp.has(who)) [worst, least] = [who, room];
  }
  return worst;
}

/** So many pieces of this area bring her up to where she must be. */
const piecesShort = (all: Allotment, who: number, area: number): number =>
  Math.max(1, Math.ceil(-all.room(who) / area - 1e-9));

/** One of her wishes gets more: from an offer with pieces left, or from a wish whose member has room to give up. */
function receiveMore(all: Allotment, paths: Paths, wants: readonly number[], who: number): boolean {
  for (const want of wants) {
    const { left, area } = all.wants[want]!;
    if (left === 0) continue;
    const path =
      paths.find(want, { offer: (offer) => all.maySend(all.offers[offer]!.who, area) }) ??
      paths.find(want, { want: (lost) => hasRoom(all, all.wants[lost]!.who, who, area) });
    if (!path) continue;
    const allowed =
      path.offer === undefined
        ? all.room(all.wants[path.lost!]!.who) / area
        : all.room(all.offers[path.offer]!.who) / (all.least * area || HAIR);
    const most = Math.max(1, Math.floor(allowed + 1e-9));
    paths.give(path, Math.min(path.most, most, piecesShort(all, who, area)));
    return true;
  }
  return false;
}

const hasRoom = (all: Allotment, other: number, who: number, area: number): boolean =>
  other !== who && all.room(other) >= area - HAIR;

/** Another offer takes the place of one of hers, straight away: the wish keeps what it has. */
function sendInHerPlace(all: Allotment, offers: readonly number[]): boolean {
  for (const offer of offers)
    for (const want of all.offers[offer]!.links.keys()) {
      const { who, options } = all.wants[want]!;
      const other = options.find((one) => {
        const { left, who: from, area } = all.offers[one]!;
        return left > 0 && from !== who && from !== all.offers[offer]!.who && all.maySend(from, area);
      });
      if (other === undefined) continue;
      all.link(offer, want, -1);
      all.link(other, want, 1);
      return true;
    }
  return false;
}

/**
 * Takes back some pieces of one offer: where it harms the receiver least, and not more area than must be. Tells
 * whether there were any.
 */
function sendLess(all: Allotment, offers: readonly number[], who: number): boolean {
  const over = -all.room(who) / all.least;
  let best: { offer: number; want: number; count: number } | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const offer of offers) {
    const { area, links } = all.offers[offer]!;
    for (const [want, linked] of links) {
      const spare = Math.max(0, all.room(all.wants[want]!.who));
      const cost = 2 * Math.max(0, area - spare) + Math.max(0, area - over);
      if (cost >= least - HAIR) continue;
      const count = Math.max(1, Math.min(linked, Math.floor(Math.min(over, spare) / area + 1e-9)));
      [best, least] = [{ offer, want, count }, cost];
    }
  }
  if (best) all.link(best.offer, best.want, -best.count);
  return best !== undefined;
}
