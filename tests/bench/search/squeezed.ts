import { Crowd } from './crowd.ts';
import { descend } from './descend.ts';

/** Depths below this, in edges, are put right by drawing the hexagons apart. */
const TOUCH = 1e-9;

/** The square drawn in round an arrangement until no push makes room any more. */
export function squeezed(crowd: Crowd): { side: number; places: number[] } {
  let held = new Crowd(crowd.count, crowd.side, crowd.places.slice());
  let step = 1e-3;
  let isHeld = false;
  while (step > 2e-9) {
    const tried = new Crowd(held.count, held.side - (isHeld ? step : 0), held.places.slice());
    if (isHeld)
      for (let k = 0; k < tried.places.length; k++)
        if (k % 3 !== 2) tried.places[k]! *= tried.side / held.side;
    const overlap = descend(tried, tried.places, 3000, TOUCH ** 2);
    if (overlap <= TOUCH ** 2) {
      held = tried;
      isHeld = true;
    } else if (isHeld) step /= 2;
    else {
      // Not quite in yet: give it a hair more room first.
      held.side += 1e-3;
      if (held.side > crowd.side + 0.02) return { side: Number.POSITIVE_INFINITY, places: [] };
    }
  }
  return { side: held.side, places: [...held.places] };
}
