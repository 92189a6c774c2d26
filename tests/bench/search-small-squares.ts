import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { Crowd } from './search/crowd.ts';
import { descend } from './search/descend.ts';
import { Dice } from './search/dice.ts';
import { asKept, type Squeezed, squeezed } from './search/squeezed.ts';

/*
 * Looks, offline and for as long as it is given, for the least square that holds so many regular hexagons of
 * edge 1: hexagons are thrown into a square and pushed apart until nothing overlaps, then the square is
 * drawn in. What it found is kept as data in src/calculator/fabric/known.
 *
 *   node tests/bench/search-small-squares.ts --count 5 --side 4.45 --seconds 60 --seed 1 --out five.json
 *
 * `--side` is where to begin; with `--goal` it stops as soon as that side is reached. The file gets the
 * arrangement as it is kept.
 */

const { values: said } = parseArgs({
  options: {
    count: { type: 'string' },
    side: { type: 'string' },
    goal: { type: 'string', default: '0' },
    seconds: { type: 'string', default: '60' },
    seed: { type: 'string', default: '1' },
    out: { type: 'string' },
  },
});

const count = Number(said.count);
const begin = Number(said.side);
const until = performance.now() + Number(said.seconds) * 1000;
const dice = new Dice(Number(said.seed));

/** So little overlap, as a sum of squares, that drawing in can go on from there. */
const NEARLY = 1e-9;
/** Hops from one arrangement to a like one before a new throw. */
const HOPS = 60;
/** How often a worse arrangement is hopped on from. */
const ASTRAY = 0.02;
/** Steps downhill after each throw or hop. */
const STEPS = 120;

let best: Squeezed | undefined;
let throws = 0;
while (performance.now() < until && (best?.side ?? Number.POSITIVE_INFINITY) > Number(said.goal)) {
  throws++;
  const found = squeezedFrom(Math.min((best?.side ?? begin) - 1e-4, begin) + slack());
  if (!found || found.side >= (best?.side ?? Number.POSITIVE_INFINITY)) continue;
  best = found;
  console.log(`${count}: ${best.side.toFixed(7)} after ${throws} throws`);
  if (said.out) writeFileSync(said.out, JSON.stringify(asKept(best), null, 2));
}
console.log(`${count}: ${best?.side.toFixed(7) ?? 'nothing found'}, ${throws} throws`);

/** Now and then the square starts a little wider, so that an arrangement may slip into place and be drawn in. */
function slack(): number {
  return dice.next() < 0.5 ? 0 : dice.next() * 0.04;
}

/** One throw, hopped on from until nothing overlaps, and drawn in. */
function squeezedFrom(side: number): Squeezed | undefined {
  const crowd = Crowd.thrown(count, side, dice);
  let overlap = descend(crowd, crowd.places, STEPS);
  for (let hop = 0; hop < HOPS && overlap > NEARLY && performance.now() < until; hop++) {
    const tried = crowd.hopped(dice);
    const after = descend(crowd, tried, STEPS);
    if (after >= overlap && dice.next() >= ASTRAY) continue;
    crowd.places.set(tried);
    overlap = after;
  }
  return overlap <= NEARLY ? squeezed(crowd) : undefined;
}
