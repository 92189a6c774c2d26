/**
 * The triangular lattice of the patches' edge. A spot is a whole number of steps along two directions 60°
 * apart; every corner of every patch, and every hexagon's centre, is on one.
 */
export interface Spot {
  readonly u: number;
  readonly v: number;
}

/**
 * How rows of hexagons run, which is how the lattice lies on the page: `across` the width, with a point of
 * each hexagon up, or `down` the length, with a flat side up. One is the other with x and y exchanged.
 */
export type Rows = 'across' | 'down';

/** The six steps from a spot to its neighbours, each 60° on from the one before. */
export const DIRECTIONS: readonly Spot[] = [
  { u: 1, v: 0 },
  { u: 0, v: 1 },
  { u: -1, v: 1 },
  { u: -1, v: 0 },
  { u: 0, v: -1 },
  { u: 1, v: -1 },
];

/**
 * The step in direction k, counted on past a full turn.
 *
 * @example
 * direction(7) // {"u":0,"v":1}
 */
export const direction = (k: number): Spot => DIRECTIONS[k % 6]!;

export const plus = (a: Spot, b: Spot): Spot => ({ u: a.u + b.u, v: a.v + b.v });

export const times = (a: Spot, n: number): Spot => ({ u: a.u * n, v: a.v * n });

/** A step turned 60°, the way the directions go round. */
export const turned = (a: Spot): Spot => ({ u: -a.v, v: a.u + a.v });

/** Where `spot` comes to lie when its two steps are `step` and `step` turned 60°. */
export const spread = (spot: Spot, step: Spot): Spot => ({
  u: spot.u * step.u - spot.v * step.v,
  v: spot.u * step.v + spot.v * (step.u + step.v),
});

/** From the centre of a hexagon to the centre of the next one in its row. */
export const NEXT_HEXAGON: Spot = { u: 2, v: -1 };

/** One column of spots is this far from the next, in edges: the height of a unit triangle. */
export const COLUMN = Math.sqrt(3) / 2;

/**
 * The spots of ring r round a spot (6r of them, one for r = 0), in the order in which they are sewn on: each
 * touches the one before, and the ring begins where the last one ended.
 *
 * @example
 * ring(0).length // 1
 * ring(3).length // 18
 */
export function ring(r: number): Spot[] {
  if (r === 0) return [{ u: 0, v: 0 }];
  const spots: Spot[] = [];
  for (let k = 0; k < 6; k++) {
    const corner = times(direction(k), r);
    for (let s = 1; s <= r; s++) spots.push(plus(corner, times(direction(k + 2), s)));
  }
  return spots;
}
