import { ok, type Result } from '../../measure/result.ts';
import { type Arrangement, centresOf, howMany, pairsIn, standings, stands, threesIn } from './arrangement.ts';
import { direction, NEXT_HEXAGON, plus, type Spot, spread, times } from './lattice.ts';
import { type Layout, tooMany } from './layout.ts';
import { GrowingList } from './patches.ts';
import { placeRosettes, rosetteTotal } from './rosette.ts';

export interface DiamondGardenAsk {
  readonly arrangement: Arrangement;
  readonly rounds: number;
  /** Whether the valleys on the outside hold diamonds too. */
  readonly outer: boolean;
}

/**
 * Rosettes set with diamonds. Roles: centre, petal, diamond, triangle; a patch's part is its rosette's number
 * (of a diamond or a triangle between rosettes: the number of the one it was placed from).
 */
export interface DiamondGarden extends Layout {
  readonly rosettes: number;
  /** Diamonds to each rosette where the pattern has no end. Two triangles go with them. */
  readonly diamondsPerRosette: number;
}

/** After the centre and the petals. */
const DIAMOND = 2;
const TRIANGLE = 3;

/**
 * The diamonds of a garden set with them: R between each touching pair, or all 6R valleys of every rosette.
 *
 * @example
 * diamondsBetween({ arrangement: { kind: 'rings', rings: 1 }, rounds: 1, outer: false }) // 12
 * diamondsBetween({ arrangement: { kind: 'rings', rings: 1 }, rounds: 2, outer: true }) // 60
 */
export function diamondsBetween({ arrangement, rounds, outer }: DiamondGardenAsk): number {
  const held = rounds * pairsIn(arrangement);
  return outer ? 6 * rounds * howMany(arrangement) - held : held;
}

/** From one rosette to the next, on the lattice. */
export const diamondGardenStep = (rounds: number): Spot => ({ u: 3 * rounds + 2, v: 0 });

/** The valleys on the side that faces direction k hold a diamond each, its sharp corners between two tips. */
function placeSide(placed: GrowingList, centre: Spot, rounds: number, k: number, part: number): void {
  const corner = times(spread(direction(k), NEXT_HEXAGON), rounds);
  const along = spread(direction(k + 2), NEXT_HEXAGON);
  for (let t = 0; t < rounds; t++) {
    const tip = plus(plus(centre, direction(k)), plus(corner, times(along, t)));
    placed.diamond(tip.u, tip.v, k + 1, DIAMOND, part);
  }
}

/** The triangle between a rosette and its neighbours in directions k and k + 1. */
function placeTriangle(placed: GrowingList, centre: Spot, rounds: number, k: number, part: number): void {
  const towards = plus(direction(k), direction(k + 1));
  const far = plus(centre, times(towards, rounds + 1));
  placed.triangle(far.u, far.v, k + 3, TRIANGLE, part);
}

/** A diamond between two rosettes is placed from the first of them, so in three of the six directions. */
const isMine = (k: number): boolean => k < 3;

function placeBetween(placed: GrowingList, ask: DiamondGardenAsk, step: Spot): void {
  standings(ask.arrangement).forEach((spot, i) => {
    const centre = spread(spot, step);
    const faces = (k: number) => stands(ask.arrangement, plus(spot, direction(k)));
    for (let k = 0; k < 6; k++) {
      if (faces(k) ? isMine(k) : ask.outer) placeSide(placed, centre, ask.rounds, k, i + 1);
    }
    for (const k of [0, 1]) {
      if (faces(k) && faces(k + 1)) placeTriangle(placed, centre, ask.rounds, k, i + 1);
    }
  });
}

/**
 * Rosettes standing point to point, valley against valley: each facing pair of valleys holds a 60° diamond, and
 * a triangle is left where three rosettes meet. Centres are 3R + 2 edges apart. Refused with
 * `too-many-patches` past the largest layout.
 */
export function gardenWithDiamonds(ask: DiamondGardenAsk): Result<DiamondGarden> {
  const rosettes = howMany(ask.arrangement);
  const expected = rosettes * rosetteTotal(ask.rounds) + diamondsBetween(ask) + threesIn(ask.arrangement);
  const refused = tooMany(expected);
  if (refused !== null) return refused;
  const step = diamondGardenStep(ask.rounds);
  const rows = ask.arrangement.kind === 'rows' ? 'down' : 'across';
  const placed = new GrowingList(['centre', 'petal', 'diamond', 'triangle'], expected, rows);
  placeRosettes(placed, centresOf(ask.arrangement, step), ask.rounds);
  placeBetween(placed, ask, step);
  return ok({
    name: 'garden with diamonds',
    patches: placed.done(),
    trim: null,
    rosettes,
    diamondsPerRosette: 3 * ask.rounds,
  });
}
