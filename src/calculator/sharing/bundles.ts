/** Something that is sewn as a whole: a block. */
export interface Whole {
  readonly seamLength: number;
}

/**
 * Whole blocks shared out so that every share has as nearly the same length of seam as can be found: the
 * longest first, each to the share with the least so far; then blocks are moved and exchanged between two
 * shares while that brings them nearer to each other. The same blocks always give the same shares.
 *
 * @example
 * sharedWhole([{ seamLength: 90 }, { seamLength: 42 }, { seamLength: 42 }, { seamLength: 12 }], 2) // [[{"seamLength":90}],[{"seamLength":42},{"seamLength":42},{"seamLength":12}]]
 */
export function sharedWhole<T extends Whole>(blocks: readonly T[], parts: number): T[][] {
  const shares: T[][] = Array.from({ length: parts }, () => []);
  const longestFirst = [...blocks].sort((a, b) => b.seamLength - a.seamLength);
  for (const block of longestFirst) leastOf(shares).push(block);
  while (improve(shares));
  return shares;
}

/**
 * The seam length of a share.
 *
 * @example
 * lengthOf([{ seamLength: 42 }, { seamLength: 12 }]) // 54
 */
export const lengthOf = (share: readonly Whole[]): number =>
  share.reduce((sum, { seamLength }) => sum + seamLength, 0);

const leastOf = <T extends Whole>(shares: readonly T[][]): T[] =>
  shares.reduce((least, share) => (lengthOf(share) < lengthOf(least) - NEARLY ? share : least));

const NEARLY = 1e-9;

/** One move or exchange between two shares that brings them nearer; false when there is none. */
function improve<T extends Whole>(shares: readonly T[][]): boolean {
  for (const from of shares)
    for (const to of shares) {
      const apart = lengthOf(from) - lengthOf(to);
      if (apart <= NEARLY) continue;
      for (const given of from)
        for (const back of [null, ...to]) {
          const moved = given.seamLength - (back?.seamLength ?? 0);
          if (moved <= NEARLY || moved >= apart - NEARLY) continue;
          from.splice(from.indexOf(given), 1);
          if (back) {
            to.splice(to.indexOf(back), 1);
            from.push(back);
          }
          to.push(given);
          return true;
        }
    }
  return false;
}
