import { ok, type Result } from '../../measure/result.ts';
import { type Arrangement, howMany, pairsIn, standings, stands, threesIn } from './arrangement.ts';
import { direction, plus, type Rows, type Spot, spread, times } from './lattice.ts';
import { type Layout, tooMany } from './layout.ts';
import { GrowingList } from './patches.ts';
import { placeSmallStar, starTotal } from './star.ts';

/** Stars that share two tips with a diamond between, or that touch tip to tip with hexagons between. */
export type StarSet = 'diamonds' | 'hexagons';

/**
 * The edge of a group of stars: left as it is; with the outer notches filled too; or, of stars set with
 * diamonds, made straight with triangles besides (seven stars then fill a hexagon of side 5).
 */
export type StarEdge = 'open' | 'notches' | 'straight';

export interface StarsAsk {
  readonly arrangement: Arrangement;
  readonly set: StarSet;
  readonly edge: StarEdge;
}

/** Six-point stars of single diamonds. Roles: star, between, triangle; a star's patches have its number. */
export interface Stars extends Layout {
  readonly stars: number;
  /** What is set between them, to each star, where the pattern has no end. */
  readonly betweenPerStar: number;
}

const STAR = 0;
const BETWEEN = 1;
const TRIANGLE = 2;

/** Whether a star stands in direction k from this one. */
type Faces = (k: number) => boolean;

/** The diamond in the notch that faces direction k; one shared by two stars is placed from the first. */
function placeNotch(placed: GrowingList, centre: Spot, k: number): void {
  const tip = plus(centre, plus(direction(k + 5), direction(k)));
  placed.diamond(tip.u, tip.v, k + 1, BETWEEN);
}

/** Beyond a tip that two stars share and no third, a triangle makes the edge straight. */
function placeEdgeTriangle(placed: GrowingList, centre: Spot, k: number): void {
  const tip = plus(centre, plus(direction(k), direction(k + 1)));
  placed.triangle(tip.u, tip.v, k + 1, TRIANGLE);
}

function placeDiamonds(placed: GrowingList, centre: Spot, faces: Faces, edge: StarEdge): void {
  for (let k = 0; k < 6; k++) {
    if (faces(k) ? k < 3 : edge !== 'open') placeNotch(placed, centre, k);
    if (edge === 'straight' && faces(k) && !faces(k + 1)) placeEdgeTriangle(placed, centre, k);
  }
}

/**
 * The hexagon two edges away in direction k lies between this star and those that it faces in k + 1 and k + 2,
 * for whom it is in directions k + 2 and k + 4. The star with the lowest direction places it.
 */
function placeHexagons(placed: GrowingList, centre: Spot, faces: Faces, edge: StarEdge): void {
  for (let k = 0; k < 6; k++) {
    const others = [k + 1, k + 2].map(faces);
    if (edge === 'open' && others.includes(false)) continue;
    const mine = others.every((there, i) => !there || (k + 2 + 2 * i) % 6 > k);
    if (!mine) continue;
    const at = plus(centre, times(direction(k), 2));
    placed.hexagon(at.u, at.v, BETWEEN);
  }
}

interface Setting {
  readonly step: Spot;
  readonly rows: Record<Arrangement['kind'], Rows>;
  readonly perStar: number;
  readonly place: typeof placeDiamonds;
  readonly count: (arrangement: Arrangement, edge: StarEdge) => number;
}

/** Tips that two stars share and no third. */
const looseTips = (arrangement: Arrangement): number => 2 * pairsIn(arrangement) - 3 * threesIn(arrangement);

function countDiamonds(arrangement: Arrangement, edge: StarEdge): number {
  const pairs = pairsIn(arrangement);
  if (edge === 'open') return pairs;
  const filled = 6 * howMany(arrangement) - pairs;
  return edge === 'notches' ? filled : filled + looseTips(arrangement);
}

function countHexagons(arrangement: Arrangement, edge: StarEdge): number {
  const threes = threesIn(arrangement);
  return edge === 'open' ? threes : 6 * howMany(arrangement) - 2 * pairsIn(arrangement) + threes;
}

const SETTINGS: Record<StarSet, Setting> = {
  diamonds: {
    step: { u: 3, v: 0 },
    rows: { rings: 'across', rows: 'down' },
    perStar: 3,
    place: placeDiamonds,
    count: countDiamonds,
  },
  hexagons: {
    step: { u: 2, v: -4 },
    rows: { rings: 'across', rows: 'across' },
    perStar: 2,
    place: placeHexagons,
    count: countHexagons,
  },
};

/**
 * What is set between the stars: diamonds (and the triangles of a straight edge), or hexagons.
 *
 * @example
 * piecesBetween({ arrangement: { kind: 'rings', rings: 1 }, set: 'diamonds', edge: 'open' }) // 12
 * piecesBetween({ arrangement: { kind: 'rings', rings: 1 }, set: 'hexagons', edge: 'notches' }) // 24
 */
export const piecesBetween = ({ arrangement, set, edge }: StarsAsk): number =>
  SETTINGS[set].count(arrangement, edge);

/** From one star to the next, on the lattice. */
export const starsStep = (set: StarSet): Spot => SETTINGS[set].step;

/**
 * Six-point stars of single diamonds set together. With diamonds, centres are 3 edges apart; with hexagons,
 * 2√3. Refused with `too-many-patches` past the largest layout.
 */
export function stars(ask: StarsAsk): Result<Stars> {
  const { arrangement, set, edge } = ask;
  const count = howMany(arrangement);
  const expected = count * starTotal(1) + piecesBetween(ask);
  const refused = tooMany(expected);
  if (refused !== null) return refused;
  const { step, rows, perStar, place } = SETTINGS[set];
  const placed = new GrowingList(['star', 'between', 'triangle'], expected, rows[arrangement.kind]);
  standings(arrangement).forEach((spot, i) => {
    const centre = spread(spot, step);
    placeSmallStar(placed, centre, STAR, i + 1);
    place(placed, centre, (k) => stands(arrangement, plus(spot, direction(k))), edge);
  });
  return ok({ name: 'stars', patches: placed.done(), trim: null, stars: count, betweenPerStar: perStar });
}
