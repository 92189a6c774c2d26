import { ok, type Result } from '../../measure/result.ts';
import { type Arrangement, centresOf, howMany, pairsIn, threesIn } from './arrangement.ts';
import { Ground } from './ground.ts';
import { plus, type Rows, type Spot } from './lattice.ts';
import { type Layout, tooMany } from './layout.ts';
import { GrowingList } from './patches.ts';
import { placeRosettes, rosetteTotal, roundSpots } from './rosette.ts';

/** Nothing between the rosettes, one hexagon's width shared by neighbours, or a ring for each rosette. */
export type Path = 'none' | 'one' | 'own';

export interface GardenAsk {
  readonly arrangement: Arrangement;
  /** Rounds of each rosette about its centre; 0 is single hexagons. */
  readonly rounds: number;
  readonly path: Path;
  /** Whether the path also runs round the outside. With their own rings the rosettes have that already. */
  readonly outer: boolean;
}

/** Rosettes set together. Roles: centre, petal, path; a patch's part is its rosette's number. */
export interface Garden extends Layout {
  readonly rosettes: number;
  /** Path pieces to each rosette where the pattern has no end. */
  readonly pathPerRosette: number;
}

/** After the centre and the petals. */
const PATH = 2;

/**
 * Path pieces to a rosette in the endless pattern: none, 3R + 2 where neighbours share one, 6(R + 1) where
 * each has its own ring.
 *
 * @example
 * pathPerRosette('one', 2) // 8
 * pathPerRosette('own', 1) // 12
 */
export const pathPerRosette = (path: Path, rounds: number): number =>
  ({ none: 0, one: 3 * rounds + 2, own: 6 * (rounds + 1) })[path];

/** From one rosette's centre to the next, the least that leaves room for the path. */
const spacing = (path: Path, rounds: number): Spot =>
  ({
    none: { u: 3 * rounds + 2, v: -1 },
    one: { u: 3 * rounds + 3, v: 0 },
    own: { u: 3 * rounds + 5, v: -1 },
  })[path];

/** Path pieces of a shared path: inside, those that touch two rosettes or three; with the outer ones, all. */
function sharedPath({ arrangement, rounds, outer }: GardenAsk): number {
  const pairs = (rounds + 2) * pairsIn(arrangement);
  const threes = threesIn(arrangement);
  return outer ? 6 * (rounds + 1) * howMany(arrangement) - pairs + threes : pairs - 2 * threes;
}

/**
 * The path pieces of a garden with an end: it has fewer inside, and more with an outer path, than the endless
 * rule gives. (Round a garden without a path the outer pieces are not counted here.)
 *
 * @example
 * pathPieces({ arrangement: { kind: 'rings', rings: 1 }, rounds: 1, path: 'one', outer: false }) // 24
 * pathPieces({ arrangement: { kind: 'rows', rows: 6, perRow: 5 }, rounds: 2, path: 'one', outer: true }) // 304
 */
export const pathPieces = (ask: GardenAsk): number =>
  ask.path === 'one' ? sharedPath(ask) : pathPerRosette(ask.path, ask.rounds) * howMany(ask.arrangement);

/** A garden in rows is laid so that its rows of rosettes run across; rings keep the single rosette's way up. */
function layingOf({ arrangement, rounds, path }: GardenAsk): { step: Spot; rows: Rows } {
  const single = path === 'none' && rounds === 0;
  if (arrangement.kind === 'rows' && single) return { step: { u: 1, v: -2 }, rows: 'across' };
  return { step: spacing(path, rounds), rows: arrangement.kind === 'rows' ? 'down' : 'across' };
}

/** From one rosette to the next of a garden in rows, on the lattice. */
export const gardenStep = (rounds: number, path: Path): Spot =>
  layingOf({ arrangement: { kind: 'rows', rows: 1, perRow: 1 }, rounds, path, outer: false }).step;

function placeRings(placed: GrowingList, centres: readonly Spot[], rounds: number): void {
  const around = roundSpots(rounds + 1);
  centres.forEach((centre, i) => {
    for (const at of around) placed.hexagon(centre.u + at.u, centre.v + at.v, PATH, i + 1);
  });
}

/** The ground on which every hexagon's centre, of the rosettes and of the rings round them, has a number. */
function groundOf(centres: readonly Spot[], rounds: number): Ground {
  const margin = 2 * (rounds + 1);
  let [left, right, top, bottom] = [0, 0, 0, 0];
  for (const { u, v } of centres) {
    left = Math.min(left, u - margin);
    right = Math.max(right, u + margin);
    top = Math.min(top, u + 2 * v - 2 * margin);
    bottom = Math.max(bottom, u + 2 * v + 2 * margin);
  }
  return new Ground({ left, right, top, bottom }, centres.length * rosetteTotal(rounds + 1));
}

/** Marks a hexagon that is placed. No hexagon touches so many rosettes. */
const TAKEN = 255;

/** Places each hexagon just outside a rosette that touches at least `least` of them; its part is 0. */
function placeSharedPath(placed: GrowingList, centres: readonly Spot[], rounds: number, least: number): void {
  const ground = groundOf(centres, rounds);
  const touched = ground.counts();
  const visit = (around: readonly Spot[], mark: (place: number, at: Spot) => void): void => {
    for (const centre of centres) {
      for (const step of around) {
        const at = plus(centre, step);
        mark(ground.place(at.u, at.v), at);
      }
    }
  };
  const around = roundSpots(rounds + 1);
  visit(around, (place) => touched.add(place, 1));
  visit(roundSpots(rounds), (place) => touched.set(place, TAKEN));
  visit(around, (place, at) => {
    if (touched.at(place) < least || touched.at(place) === TAKEN) return;
    touched.set(place, TAKEN);
    placed.hexagon(at.u, at.v, PATH);
  });
}

function placePath(placed: GrowingList, centres: readonly Spot[], { rounds, path, outer }: GardenAsk): void {
  if (path === 'own') placeRings(placed, centres, rounds);
  else if (outer) placeSharedPath(placed, centres, rounds, 1);
  else if (path === 'one') placeSharedPath(placed, centres, rounds, 2);
}

/**
 * Rosettes of hexagons set together, with or without a path of hexagons between them. With no path and an
 * outer one, the path runs round the whole garden alone. Refused with `too-many-patches` past the largest
 * layout.
 */
export function garden(ask: GardenAsk): Result<Garden> {
  const rosettes = howMany(ask.arrangement);
  const expected = rosettes * rosetteTotal(ask.rounds) + pathPieces(ask);
  const refused = tooMany(expected);
  if (refused !== null) return refused;
  const { step, rows } = layingOf(ask);
  const centres = centresOf(ask.arrangement, step);
  const placed = new GrowingList(['centre', 'petal', 'path'], expected, rows);
  placeRosettes(placed, centres, ask.rounds);
  placePath(placed, centres, ask);
  const patches = placed.done();
  return (
    tooMany(patches.count) ??
    ok({
      name: 'garden',
      patches,
      trim: null,
      rosettes,
      pathPerRosette: pathPerRosette(ask.path, ask.rounds),
    })
  );
}
