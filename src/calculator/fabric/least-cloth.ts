/** Pieces that are alike: how many there are, how many patches each gives, how much cloth each is. */
export interface Handful {
  readonly at: number;
  readonly count: number;
  readonly gives: number;
  /** Square inches. */
  readonly cloth: number;
}

/** So many pieces of a handful. */
export interface Taken {
  readonly at: number;
  readonly count: number;
}

/** Up to so many patches the very least cloth is found; above, pieces are taken by what they waste. */
const EXACTLY = 20_000;

/**
 * The pieces with the least cloth in all that give so many patches; every piece where all together are not
 * enough. (A knapsack filled from the other side, textbook.)
 *
 * @example
 * leastCloth([{ at: 0, count: 3, gives: 77, cloth: 378 }, { at: 1, count: 12, gives: 4, cloth: 25 }], 40) // [{"at":1,"count":10}]
 * leastCloth([{ at: 0, count: 3, gives: 77, cloth: 378 }, { at: 1, count: 12, gives: 4, cloth: 25 }], 80) // [{"at":0,"count":1},{"at":1,"count":1}]
 */
export function leastCloth(handfuls: readonly Handful[], wanted: number): Taken[] {
  const all = handfuls.reduce((sum, { count, gives }) => sum + count * gives, 0);
  if (all <= wanted) return handfuls.map(({ at, count }) => ({ at, count }));
  return wanted <= EXACTLY ? exactly(handfuls, wanted) : byWaste(handfuls, wanted);
}

interface Bundle {
  readonly handful: Handful;
  readonly pieces: number;
}

/** Handfuls in bundles of 1, 2, 4 … pieces and a rest, so that any number is some of the bundles. */
function bundlesOf(handfuls: readonly Handful[]): Bundle[] {
  return handfuls
    .toSorted((a, b) => a.cloth - b.cloth)
    .flatMap((handful) => {
      const bundles: Bundle[] = [];
      let left = handful.count;
      for (let pieces = 1; left > 0; pieces *= 2) {
        bundles.push({ handful, pieces: Math.min(pieces, left) });
        left -= pieces;
      }
      return bundles;
    });
}

function exactly(handfuls: readonly Handful[], wanted: number): Taken[] {
  const bundles = bundlesOf(handfuls);
  const least = new Float64Array(wanted + 1).fill(Number.POSITIVE_INFINITY);
  least[0] = 0;
  const taken = bundles.map(({ handful, pieces }) => {
    const [gives, cloth] = [handful.gives * pieces, handful.cloth * pieces];
    const takes = new Uint8Array(wanted + 1);
    for (let n = wanted; n > 0; n--) {
      const cut = least[Math.max(0, n - gives)]! + cloth;
      if (cut >= least[n]! - 1e-9) continue;
      least[n] = cut;
      takes[n] = 1;
    }
    return takes;
  });
  const counts = new Map<number, number>();
  for (let n = wanted, k = bundles.length - 1; n > 0 && k >= 0; k--) {
    if (taken[k]![n] === 0) continue;
    const { handful, pieces } = bundles[k]!;
    counts.set(handful.at, (counts.get(handful.at) ?? 0) + pieces);
    n = Math.max(0, n - handful.gives * pieces);
  }
  return takenOf(handfuls, counts);
}

function byWaste(handfuls: readonly Handful[], wanted: number): Taken[] {
  const counts = new Map<number, number>();
  let left = wanted;
  for (const { at, count, gives } of handfuls.toSorted((a, b) => a.cloth / a.gives - b.cloth / b.gives)) {
    const pieces = Math.min(count, Math.ceil(Math.max(0, left) / gives));
    counts.set(at, pieces);
    left -= pieces * gives;
  }
  return takenOf(handfuls, counts);
}

const takenOf = (handfuls: readonly Handful[], counts: ReadonlyMap<number, number>): Taken[] =>
  handfuls.flatMap(({ at }) => {
    const count = counts.get(at) ?? 0;
    return count > 0 ? [{ at, count }] : [];
  });
