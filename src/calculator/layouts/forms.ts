import { DIRECTIONS, direction, plus, type Spot } from './lattice.ts';

export type Kind = 'hexagon' | 'diamond' | 'triangle' | 'half-hexagon';

/** A corner of a patch: where it is from the patch's own spot, and how many 60° its angle holds. */
export interface FormCorner extends Spot {
  readonly sixths: number;
}

/** A kind of patch in one of its turns on the lattice. Its outline is of unit edges, corner to corner. */
export interface Form {
  readonly kind: Kind;
  readonly turn: number;
  readonly corners: readonly FormCorner[];
}

const HERE: Spot = { u: 0, v: 0 };

const corner = (spot: Spot, sixths: number): FormCorner => ({ u: spot.u, v: spot.v, sixths });

/** The spot of a hexagon is its centre. */
const hexagon = (): FormCorner[] => DIRECTIONS.map((step) => corner(step, 2));

/** The spot of a diamond is one of its sharp corners; its sides leave there in directions k and k + 1. */
const diamond = (k: number): FormCorner[] => [
  corner(HERE, 1),
  corner(direction(k), 2),
  corner(plus(direction(k), direction(k + 1)), 1),
  corner(direction(k + 1), 2),
];

const triangle = (k: number): FormCorner[] => [
  corner(HERE, 1),
  corner(direction(k), 1),
  corner(direction(k + 1), 1),
];

/** The spot of a half-hexagon is the middle of its long side, which counts as a corner of 180°. */
const halfHexagon = (k: number): FormCorner[] => [
  corner(HERE, 3),
  corner(direction(k), 1),
  corner(direction(k + 1), 2),
  corner(direction(k + 2), 2),
  corner(direction(k + 3), 1),
];

const turnsOf = (kind: Kind, turns: number, corners: (k: number) => FormCorner[]): Form[] =>
  Array.from({ length: turns }, (_, turn) => ({ kind, turn, corners: corners(turn) }));

/** Every form that a patch can have. A list of patches keeps each patch's form as its place in here. */
export const FORMS: readonly Form[] = [
  ...turnsOf('hexagon', 1, hexagon),
  ...turnsOf('diamond', 3, diamond),
  ...turnsOf('triangle', 2, triangle),
  ...turnsOf('half-hexagon', 6, halfHexagon),
];

export const HEXAGON = 0;
const FIRST_DIAMOND = 1;
const FIRST_TRIANGLE = 4;
const FIRST_HALF = 6;

/** A form, and how far its spot is from the one that was named. */
export interface Settled extends Spot {
  readonly form: number;
}

const settled = (form: number, from: Spot = HERE): Settled => ({ form, u: from.u, v: from.v });

/** A diamond whose sides leave its spot in directions k and k + 1, for each of the six k. */
export const DIAMONDS: readonly Settled[] = [0, 1, 2, 3, 4, 5].map((k) =>
  k < 3 ? settled(FIRST_DIAMOND + k) : settled(FIRST_DIAMOND + k - 3, plus(direction(k), direction(k + 1))),
);

/** A triangle whose sides leave its spot in directions k and k + 1, for each of the six k. */
export const TRIANGLES: readonly Settled[] = [
  settled(FIRST_TRIANGLE),
  settled(FIRST_TRIANGLE + 1),
  settled(FIRST_TRIANGLE, direction(3)),
  settled(FIRST_TRIANGLE + 1, direction(4)),
  settled(FIRST_TRIANGLE, direction(4)),
  settled(FIRST_TRIANGLE + 1, direction(5)),
];

/** A half-hexagon whose corners lie in directions k to k + 3 from the middle of its long side. */
export const HALVES: readonly Settled[] = [0, 1, 2, 3, 4, 5].map((k) => settled(FIRST_HALF + k));

/**
 * The corners of a kind of patch in one of its turns, from its own spot, in order round the outline.
 *
 * @example
 * corners('diamond', 0).length // 4
 * corners('half-hexagon', 2).length // 5
 */
export const corners = (kind: Kind, turn: number): readonly FormCorner[] =>
  FORMS.find((form) => form.kind === kind && form.turn === turn)!.corners;
