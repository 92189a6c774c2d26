import type { Crowd } from './crowd.ts';

/** Steps remembered. */
const MEMORY = 8;

/**
 * Goes downhill from `places`, which it changes, until the overlap is gone or no step helps; returns what is
 * left of it. The way is the limited-memory quasi-Newton one (textbook), the step halved until it helps.
 */
export function descend(crowd: Crowd, places: Float64Array, steps: number, enough = 1e-24): number {
  const n = places.length;
  let slope = new Float64Array(n);
  const next = new Float64Array(n);
  let nextSlope = new Float64Array(n);
  const way = new Float64Array(n);
  const [moves, bends]: [Float64Array[], Float64Array[]] = [[], []];
  const share = new Float64Array(MEMORY);
  let height = crowd.measure(places, slope);
  for (let step = 0; step < steps && height > enough; step++) {
    for (let k = 0; k < n; k++) way[k] = -slope[k]!;
    steer(way, moves, bends, share);
    let fall = dot(way, slope);
    if (fall >= 0) {
      moves.length = bends.length = 0;
      for (let k = 0; k < n; k++) way[k] = -slope[k]!;
      fall = dot(way, slope);
    }
    if (fall > -1e-40) break;
    let stride = moves.length === 0 ? 0.25 : 1;
    let nextHeight = Number.POSITIVE_INFINITY;
    for (let halved = 0; halved < 20; halved++) {
      for (let k = 0; k < n; k++) next[k] = places[k]! + stride * way[k]!;
      nextHeight = crowd.measure(next, nextSlope);
      if (nextHeight <= height + 1e-4 * stride * fall) break;
      stride /= 2;
    }
    if (nextHeight >= height) break;
    remember(moves, bends, places, next, slope, nextSlope);
    const gained = height - nextHeight;
    height = nextHeight;
    places.set(next);
    [slope, nextSlope] = [nextSlope, slope];
    if (gained < 1e-6 * height && step > 20) break;
  }
  return height;
}

function steer(way: Float64Array, moves: Float64Array[], bends: Float64Array[], share: Float64Array): void {
  for (let m = moves.length - 1; m >= 0; m--) {
    share[m] = dot(moves[m]!, way) / dot(moves[m]!, bends[m]!);
    add(way, bends[m]!, -share[m]!);
  }
  const last = moves.length - 1;
  if (last >= 0) {
    const scale = dot(moves[last]!, bends[last]!) / dot(bends[last]!, bends[last]!);
    for (let k = 0; k < way.length; k++) way[k]! *= scale;
  }
  for (let m = 0; m <= last; m++) {
    const back = dot(bends[m]!, way) / dot(moves[m]!, bends[m]!);
    add(way, moves[m]!, share[m]! - back);
  }
}

function remember(
  moves: Float64Array[],
  bends: Float64Array[],
  from: Float64Array,
  to: Float64Array,
  slopeFrom: Float64Array,
  slopeTo: Float64Array,
): void {
  const move = to.map((value, k) => value - from[k]!);
  const bend = slopeTo.map((value, k) => value - slopeFrom[k]!);
  if (dot(move, bend) <= 1e-300) return;
  moves.push(move);
  bends.push(bend);
  if (moves.length > MEMORY) {
    moves.shift();
    bends.shift();
  }
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]!;
  return sum;
}

function add(to: Float64Array, what: Float64Array, times: number): void {
  for (let k = 0; k < to.length; k++) to[k]! += times * what[k]!;
}
