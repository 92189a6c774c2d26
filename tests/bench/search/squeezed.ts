import type { KnownSquare } from '../../../src/calculator/fabric/known/square.ts';
import { Crowd } from './crowd.ts';
import { descend } from './descend.ts';

/** Depths below this, in edges, are put right when the square is rounded up. */
const TOUCH = 1e-9;
/** Sides are rounded up to the next millionth but one, and the hexagons drawn apart as much. */
const MILLIONTH = 1e-6;

/** A square that holds a crowd, drawn in until no push makes room any more. */
export interface Squeezed {
  readonly side: number;
  readonly places: Float64Array;
}

/** The square drawn in round an arrangement; undefined where it would have to grow. */
export function squeezed(crowd: Crowd): Squeezed | undefined {
  let held = settled(crowd);
  if (!held) return undefined;
  for (let step = 1e-3; step > 2e-9; ) {
    const smaller = drawnIn(held, step);
    if (smaller) held = smaller;
    else step /= 2;
  }
  return { side: held.side, places: held.places };
}

/** The crowd with its last overlaps pushed out, in a square up to a fiftieth larger. */
function settled(crowd: Crowd): Crowd | undefined {
  for (let room = 0; room < 0.02; room += 1e-3) {
    const tried = new Crowd(crowd.count, crowd.side + room, crowd.places.slice());
    if (fits(tried)) return tried;
  }
  return undefined;
}

function drawnIn(crowd: Crowd, step: number): Crowd | undefined {
  const side = crowd.side - step;
  const places = crowd.places.map((value, k) => (k % 3 === 2 ? value : (value * side) / crowd.side));
  const tried = new Crowd(crowd.count, side, places);
  return fits(tried) ? tried : undefined;
}

const fits = (crowd: Crowd): boolean => descend(crowd, crowd.places, 3000, TOUCH ** 2) <= TOUCH ** 2;

/** As it is kept: the side rounded up by a millionth or so, turns in degrees. */
export function asKept({ side, places }: Squeezed): KnownSquare {
  const rounded = Math.ceil((side + MILLIONTH / 2) / MILLIONTH) * MILLIONTH;
  const apart = rounded / side;
  const digits = (value: number) => Number(value.toFixed(9));
  return {
    side: digits(rounded),
    places: Array.from({ length: places.length / 3 }, (_, i) => {
      const [x = 0, y = 0, turn = 0] = places.subarray(3 * i, 3 * i + 3);
      const degrees = ((((turn * 180) / Math.PI) % 60) + 60) % 60;
      return [digits(x * apart), digits(y * apart), digits(degrees)] as const;
    }),
  };
}
