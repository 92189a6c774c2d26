import { ok, type Result } from '../../measure/result.ts';
import { NEXT_HEXAGON, ring, type Spot, spread } from './lattice.ts';
import { type Layout, tooMany } from './layout.ts';
import { GrowingList } from './patches.ts';

/** A rosette of hexagons: a centre and rounds about it. Its roles are the centre and the rounds. */
export interface Rosette extends Layout {
  /** Pieces of each round, the centre first. */
  readonly rounds: readonly number[];
}

/**
 * The pieces of round r alone: 6r, and the centre is one.
 *
 * @example
 * inRound(0) // 1
 * inRound(3) // 18
 */
export const inRound = (r: number): number => (r === 0 ? 1 : 6 * r);

/**
 * The pieces of a rosette with so many rounds about its centre: 3R(R + 1) + 1, the centred hexagonal
 * numbers (OEIS A003215).
 *
 * @example
 * rosetteTotal(2) // 19
 * rosetteTotal(0) // 1
 */
export const rosetteTotal = (rounds: number): number => 3 * rounds * (rounds + 1) + 1;

/**
 * The seams in so many hexagons laid round by round about one, the last round begun and not closed where they do
 * not fill it: 3n - ceil(sqrt(12n - 3)). It is also the most that n hexagons can share (F. Harary and H. Harborth,
 * Extremal animals, 1976; from memory).
 *
 * @example
 * seamsRoundByRound(7) // 12
 * seamsRoundByRound(19) // 42
 * seamsRoundByRound(500) // 1422
 */
export const seamsRoundByRound = (pieces: number): number =>
  3 * pieces - Math.ceil(Math.sqrt(12 * pieces - 3));

/** The hexagons' centres of round r, from the rosette's centre. */
export const roundSpots = (r: number): Spot[] => ring(r).map((spot) => spread(spot, NEXT_HEXAGON));

/** Places rosettes about their centres: role 0 in the middle, role 1 round it, numbered as parts from 1. */
export function placeRosettes(placed: GrowingList, centres: readonly Spot[], rounds: number): void {
  const petals = Array.from({ length: rounds }, (_, r) => roundSpots(r + 1)).flat();
  centres.forEach((centre, i) => {
    placed.hexagon(centre.u, centre.v, 0, i + 1);
    for (const petal of petals) placed.hexagon(centre.u + petal.u, centre.v + petal.v, 1, i + 1);
  });
}

/**
 * A rosette, in rows across: (2R + 1)·√3 edges wide and 3R + 2 high. Each patch's part is its round.
 * Refused with `too-many-patches` past the largest layout.
 */
export function rosette(rounds: number): Result<Rosette> {
  const total = rosetteTotal(rounds);
  const refused = tooMany(total);
  if (refused !== null) return refused;
  const every = Array.from({ length: rounds + 1 }, (_, r) => r);
  const placed = new GrowingList(
    every.map((r) => (r === 0 ? 'centre' : `round ${r}`)),
    total,
  );
  for (const r of every) for (const at of roundSpots(r)) placed.hexagon(at.u, at.v, r, r);
  return ok({ name: 'rosette', patches: placed.done(), trim: null, rounds: every.map(inRound) });
}
