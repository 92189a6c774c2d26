import type { Dice } from './dice.ts';

const SIXTH = Math.PI / 3;
const APOTHEM = Math.sqrt(3) / 2;

/** The angle from the nearest corner of a hexagon, between −30° and 30°; its corners are at whole sixths. */
const fromCorner = (angle: number): number => angle - SIXTH * Math.round(angle / SIXTH);

/**
 * Regular hexagons of edge 1 in a square from (0, 0) to (side, side), three numbers each: x, y of the centre
 * and the turn in radians. `measure` tells how much they overlap each other and leave the square: the sum of
 * the squared depths, 0 when all is well, and how that sum changes with each number.
 */
export class Crowd {
  readonly count: number;
  side: number;
  readonly places: Float64Array;

  constructor(count: number, side: number, places: Float64Array) {
    this.count = count;
    this.side = side;
    this.places = places;
  }

  static thrown(count: number, side: number, dice: Dice): Crowd {
    const crowd = new Crowd(count, side, new Float64Array(3 * count));
    for (let i = 0; i < count; i++) crowd.#throwOne(crowd.places, i, dice);
    return crowd;
  }

  #throwOne(places: Float64Array, i: number, dice: Dice): void {
    places[3 * i] = 0.9 + dice.next() * (this.side - 1.8);
    places[3 * i + 1] = 0.9 + dice.next() * (this.side - 1.8);
    places[3 * i + 2] = dice.next() * SIXTH;
  }

  /** A like arrangement: one or two hexagons thrown anew, or all of them jolted. */
  hopped(dice: Dice): Float64Array {
    const places = this.places.slice();
    const kind = dice.next();
    if (kind < 0.6) {
      this.#throwOne(places, dice.whole(this.count), dice);
      if (kind < 0.2) this.#throwOne(places, dice.whole(this.count), dice);
      return places;
    }
    const [far, turn] = [dice.next() * 0.4, dice.next() * 0.5];
    for (let i = 0; i < places.length; i++) places[i]! += (dice.next() - 0.5) * (i % 3 === 2 ? turn : far);
    return places;
  }

  measure(places: Float64Array, slope: Float64Array): number {
    slope.fill(0);
    let sum = 0;
    for (let i = 0; i < this.count; i++) {
      sum += this.#outside(places, slope, 3 * i);
      for (let j = 0; j < i; j++) sum += overlap(places, slope, 3 * i, 3 * j);
    }
    return sum;
  }

  #outside(places: Float64Array, slope: Float64Array, i: number): number {
    const turn = places[i + 2]!;
    let sum = 0;
    for (let axis = 0; axis < 2; axis++) {
      const bend = fromCorner(turn - (axis * Math.PI) / 2);
      const reach = Math.cos(bend);
      const at = places[i + axis]!;
      const low = reach - at;
      const high = at + reach - this.side;
      for (const [depth, way] of [
        [low, -1],
        [high, 1],
      ] as const) {
        if (depth <= 0) continue;
        sum += depth * depth;
        slope[i + axis]! += 2 * depth * way;
        slope[i + 2]! -= 2 * depth * Math.sin(bend);
      }
    }
    return sum;
  }
}

/**
 * How deep two hexagons stand in each other, squared, by the separating axes: of the six directions square to
 * a side, the one that parts them best. Adds how it changes to the slope.
 */
function overlap(places: Float64Array, slope: Float64Array, i: number, j: number): number {
  const dx = places[j]! - places[i]!;
  const dy = places[j + 1]! - places[i + 1]!;
  const square = dx * dx + dy * dy;
  if (square >= 4) return 0;
  let best = Number.NEGATIVE_INFINITY;
  let [axisX, axisY, bent, owner] = [0, 0, 0, i];
  const towards = Math.atan2(dy, dx);
  for (const [own, other] of [
    [i, j],
    [j, i],
  ] as const) {
    const turn = places[own + 2]!;
    // The sides of a hexagon face half-way between its corners; the one nearest to the other hexagon parts best,
    // or one of its neighbours.
    const nearest = SIXTH * Math.round((towards - turn) / SIXTH - 0.5) + SIXTH / 2 + turn;
    for (let step = -1; step <= 1; step++) {
      const angle = nearest + step * SIXTH;
      const bend = fromCorner(angle - places[other + 2]!);
      const [x, y] = [Math.cos(angle), Math.sin(angle)];
      const apart = dx * x + dy * y - APOTHEM - Math.cos(bend);
      if (apart <= best) continue;
      best = apart;
      if (best >= 0) return 0;
      [axisX, axisY, bent, owner] = [x, y, bend, own];
    }
  }
  const depth = -best;
  const other = owner === i ? j : i;
  slope[i]! += 2 * depth * axisX;
  slope[i + 1]! += 2 * depth * axisY;
  slope[j]! -= 2 * depth * axisX;
  slope[j + 1]! -= 2 * depth * axisY;
  // The axis turns with its owner; the other's reach along it changes with the angle between them.
  const swing = -dx * axisY + dy * axisX;
  slope[owner + 2]! -= 2 * depth * (swing + Math.sin(bent));
  slope[other + 2]! += 2 * depth * Math.sin(bent);
  return depth * depth;
}
