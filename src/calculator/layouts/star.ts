import { ok, type Result } from '../../measure/result.ts';
import { direction, type Spot } from './lattice.ts';
import { type Layout, tooMany } from './layout.ts';
import { GrowingList } from './patches.ts';

/** A six-point star of 60° diamonds. Its roles are its rounds; a patch's part is its point, 1 to 6. */
export interface Star extends Layout {
  readonly perPoint: number;
  /** Diamonds of each round, the innermost first. */
  readonly rounds: readonly number[];
}

/**
 * The diamonds of a star whose points have n diamonds a side: 6n² (OEIS A033581).
 *
 * @example
 * starTotal(4) // 96
 */
export const starTotal = (side: number): number => 6 * side * side;

/**
 * The diamonds of round k of a star, counted from 1: 6(2k − 1).
 *
 * @example
 * inStarRound(3) // 30
 */
export const inStarRound = (k: number): number => 6 * (2 * k - 1);

/** Places the point that opens between directions k and k + 1, its diamonds' role being their round. */
function placePoint(placed: GrowingList, side: number, k: number): void {
  const [a, b] = [direction(k), direction(k + 1)];
  for (let i = 0; i < side; i++) {
    for (let j = 0; j < side; j++) {
      placed.diamond(i * a.u + j * b.u, i * a.v + j * b.v, k, Math.max(i, j), k + 1);
    }
  }
}

/** Places a star of six single diamonds round a spot. */
export function placeSmallStar(placed: GrowingList, centre: Spot, role: number, part: number): void {
  for (let k = 0; k < 6; k++) placed.diamond(centre.u, centre.v, k, role, part);
}

/**
 * A star of n diamonds a side, a point up: 3n edges wide and 2√3·n high. Refused with `too-many-patches` past
 * the largest layout.
 */
export function star(side: number): Result<Star> {
  const total = starTotal(side);
  const refused = tooMany(total);
  if (refused !== null) return refused;
  const every = Array.from({ length: side }, (_, r) => r + 1);
  const placed = new GrowingList(
    every.map((k) => `round ${k}`),
    total,
    'down',
  );
  for (let k = 0; k < 6; k++) placePoint(placed, side, k);
  return ok({
    name: 'star',
    patches: placed.done(),
    trim: null,
    perPoint: side * side,
    rounds: every.map(inStarRound),
  });
}
