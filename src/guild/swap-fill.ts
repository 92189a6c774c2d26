import type { Allotment } from './swap-allotment.ts';
import type { Paths } from './swap-paths.ts';

/** In so many steps everyone comes nearer to as much as she offers. */
const LEVELS = 16;

/**
 * Gives as much area as can be given at all, whoever sends it: first one piece to each member, then to all alike
 * in steps of what they themselves offer, then whatever is left. Where several could send, the one sends who has
 * sent least of what she would like to receive.
 */
export function fill(all: Allotment, paths: Paths): void {
  const offered = areaBy(all, all.offers);
  const wished = areaBy(all, all.wants);
  const wantsOf = Map.groupBy(all.wants.keys(), (want) => all.wants[want]!.who);
  for (const wants of wantsOf.values()) wants.some((want) => take(all, want, 1, wished) > 0);
  for (let level = 1; level <= LEVELS; level++)
    for (const want of all.wants.keys()) {
      const { who, area } = all.wants[want]!;
      const upTo = (level / LEVELS) * offered[who]! - all.received[who]!;
      take(all, want, Math.floor(upTo / area + 1e-9), wished);
    }
  for (const want of all.wants.keys()) take(all, want, Number.POSITIVE_INFINITY, wished);
  paths.giveAll();
}

/** Gives a wish up to so many pieces of what is still free. Tells how many it got. */
function take(all: Allotment, want: number, upTo: number, wished: Float64Array): number {
  const wish = all.wants[want]!;
  let got = 0;
  while (got < upTo && wish.left > 0) {
    const offer = bestSender(all, want, wished);
    if (offer === undefined) return got;
    const count = Math.min(upTo - got, wish.left, all.offers[offer]!.left);
    all.link(offer, want, count);
    got += count;
  }
  return got;
}

function bestSender(all: Allotment, want: number, wished: Float64Array): number | undefined {
  const { who, options } = all.wants[want]!;
  let best: number | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const offer of options) {
    const { left, who: from, area } = all.offers[offer]!;
    if (left === 0 || from === who) continue;
    // In eighths, so that a parcel that is sent anyway is filled before another is begun.
    const eighths = Math.ceil((8 * (all.sent[from]! + area)) / (wished[from]! + area));
    const rank = eighths - (all.sends(from, who) ? 0.5 : 0);
    if (rank < least) [best, least] = [offer, rank];
  }
  return best;
}

function areaBy(all: Allotment, lines: Allotment['offers']): Float64Array {
  const areas = new Float64Array(all.members.length);
  for (const { who, area, count } of lines) areas[who]! += area * count;
  return areas;
}
