import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { Crowd } from './search/crowd.ts';
import { descend } from './search/descend.ts';
import { Dice } from './search/dice.ts';
import { squeezed } from './search/squeezed.ts';

/*
 * Looks, offline and for as long as it is given, for the least square that holds so many regular hexagons of
 * edge 1: hexagons are thrown into a square and pushed apart until nothing overlaps, then the square is
 * drawn in. What it finds is kept as data in src/calculator/fabric/known.
 *
 *   node tests/bench/search-small-squares.ts --count 5 --side 4.45 --seconds 60 --seed 1 --out found.json
 *
 * `--side` is where to begin; with `--goal` it stops as soon as that side is reached.
 */

const { values: said } = parseArgs({
  options: {
    count: { type: 'string' },
    side: { type: 'string' },
    goal: { type: 'string' },
    seconds: { type: 'string', default: '60' },
    seed: { type: 'string', default: '1' },
    out: { type: 'string' },
  },
});

const count = Number(said.count);
const begin = Number(said.side);
const goal = Number(said.goal ?? 0);
const until = performance.now() + Number(said.seconds) * 1000;
const dice = new Dice(Number(said.seed));

/** So little overlap, as a sum of squares, that drawing in can go on from there. */
const NEARLY = 1e-9;
/** Hops from one arrangement to a like one before a new throw. */
const HOPS = 60;

let best = { side: Number.POSITIVE_INFINITY, places: [] as number[] };
let throws = 0;
while (performance.now() < until && best.side > goal) {
  throws++;
  const crowd = Crowd.thrown(count, Math.min(best.side - 1e-4, begin) + slack(), dice);
  let overlap = descend(crowd, crowd.places, 120);
  for (let hop = 0; hop < HOPS && overlap > NEARLY && performance.now() < until; hop++) {
    const tried = crowd.hopped(dice);
    const after = descend(crowd, tried, 120);
    if (after < overlap || dice.next() < 0.02) {
      crowd.places.set(tried);
      overlap = after;
    }
  }
  if (overlap > NEARLY) continue;
  const found = squeezed(crowd);
  if (found.side < best.side) {
    best = found;
    console.log(`${count}: ${found.side.toFixed(7)} after ${throws} throws`);
    if (said.out) writeFileSync(said.out, JSON.stringify(best));
  }
}
console.log(`${count}: ${best.side.toFixed(7)}, ${throws} throws`);

/** Now and then the square starts a little wider, so that an arrangement may slip into place and be drawn in. */
function slack(): number {
  return dice.next() < 0.5 ? 0 : dice.next() * 0.04;
}
