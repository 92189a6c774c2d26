import { ok, type Result } from '../../measure/result.ts';
import { direction } from './lattice.ts';
import { type Layout, tooMany } from './layout.ts';
import { GrowingList } from './patches.ts';

/** How many diamonds the middle is of: one, or four set together. */
export type Middle = 1 | 4;

/** A large diamond of small ones, grown in rounds. Its roles are the centre and the rounds. */
export interface DiamondField extends Layout {
  /** Diamonds along each side. */
  readonly side: number;
  /** Diamonds of each round, the centre first. */
  readonly rounds: readonly number[];
}

/**
 * Diamonds along each side of the field after so many rounds.
 *
 * @example
 * sideAfter(4, 3) // 8
 * sideAfter(1, 2) // 5
 */
export const sideAfter = (from: Middle, rounds: number): number => (from === 1 ? 1 : 2) + 2 * rounds;

/**
 * Diamonds of round r, the centre being round 0.
 *
 * @example
 * inDiamondRound(4, 1) // 12
 * inDiamondRound(1, 2) // 16
 */
export const inDiamondRound = (from: Middle, r: number): number =>
  r === 0 ? from : 4 * (sideAfter(from, r) - 1);

/**
 * A diamond field standing on its point: n edges wide and √3·n high, for n a side. Each patch's part is its
 * round. Refused with `too-many-patches` past the largest layout.
 */
export function diamonds(from: Middle, rounds: number): Result<DiamondField> {
  const side = sideAfter(from, rounds);
  const refused = tooMany(side * side);
  if (refused !== null) return refused;
  const every = Array.from({ length: rounds + 1 }, (_, r) => r);
  const placed = new GrowingList(
    every.map((r) => (r === 0 ? 'centre' : `round ${r}`)),
    side * side,
    'down',
  );
  const [a, b] = [direction(2), direction(3)];
  const inward = (place: number): number => Math.min(place, side - 1 - place);
  for (let i = 0; i < side; i++) {
    for (let j = 0; j < side; j++) {
      const round = rounds - Math.min(inward(i), inward(j));
      placed.diamond(i * a.u + j * b.u, i * a.v + j * b.v, 2, round, round);
    }
  }
  return ok({
    name: 'diamonds',
    patches: placed.done(),
    trim: null,
    side,
    rounds: every.map((r) => inDiamondRound(from, r)),
  });
}
