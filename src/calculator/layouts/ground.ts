import { FORMS } from './forms.ts';
import type { PatchList } from './patches.ts';

/**
 * The least upright box of lattice that holds something: columns u, and heights u + 2v, which are twice the
 * distance down the page when rows run across.
 */
export interface Span {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const EMPTY: Span = { left: 0, right: 0, top: 0, bottom: 0 };

const reach = FORMS.map(({ corners }) => {
  const columns = corners.map((corner) => corner.u);
  const heights = corners.map((corner) => corner.u + 2 * corner.v);
  return {
    left: Math.min(...columns),
    right: Math.max(...columns),
    top: Math.min(...heights),
    bottom: Math.max(...heights),
  };
});

/** The box that holds every corner of every patch in the list. */
export function spanOf(list: PatchList): Span {
  if (list.count === 0) return EMPTY;
  let left = Infinity;
  let right = -Infinity;
  let top = Infinity;
  let bottom = -Infinity;
  for (let i = 0; i < list.count; i++) {
    const form = reach[list.form[i]!]!;
    const u = list.u[i]!;
    const height = u + 2 * list.v[i]!;
    if (u + form.left < left) left = u + form.left;
    if (u + form.right > right) right = u + form.right;
    if (height + form.top < top) top = height + form.top;
    if (height + form.bottom > bottom) bottom = height + form.bottom;
  }
  return { left, right, top, bottom };
}

/** A plain table over the whole box may be this many times larger than the spots in use, and this besides. */
const ROOMY = 4;
const ALWAYS = 65_536;

/**
 * A small count (0 to 255) for each of many places, all 0 to begin with: a plain table, or a map where most of
 * the places stay empty.
 */
export class Counts {
  private readonly table: Uint8Array;
  private readonly map: Map<number, number> | null;

  constructor(places: number, sparse: boolean) {
    this.table = new Uint8Array(sparse ? 0 : places);
    this.map = sparse ? new Map() : null;
  }

  at(place: number): number {
    return this.map === null ? this.table[place]! : (this.map.get(place) ?? 0);
  }

  set(place: number, count: number): void {
    if (this.map === null) this.table[place] = count;
    else this.map.set(place, count);
  }

  /** Adds to one place's count and returns it. */
  add(place: number, more: number): number {
    const count = this.at(place) + more;
    this.set(place, count);
    return count;
  }

  /** The counts, in no order that means anything; places that are empty may be among them as 0. */
  values(): Uint8Array {
    return this.map === null ? this.table : Uint8Array.from(this.map.values());
  }
}

/**
 * Numbers the spots of a piece of lattice, row by row over the box that holds them, so that something can be
 * counted at each. `most` is the most spots that will be in use: where the box is far larger than that (a few
 * patches far apart) the counts are kept in maps.
 */
export class Ground {
  private readonly left: number;
  private readonly top: number;
  private readonly across: number;
  private readonly places: number;
  private readonly sparse: boolean;

  constructor(span: Span, most: number) {
    this.left = span.left;
    this.top = span.top >> 1;
    this.across = span.right - span.left + 1;
    this.places = this.across * ((span.bottom >> 1) - this.top + 1);
    this.sparse = this.places > ROOMY * most + ALWAYS;
  }

  place(u: number, v: number): number {
    return (v + (u >> 1) - this.top) * this.across + u - this.left;
  }

  /** How far the place of a spot is from the place of another, by whose column is even (0) or odd (1). */
  further(column: number, u: number, v: number): number {
    return (v + ((column + u) >> 1)) * this.across + u;
  }

  /** Room for so many counts at every spot: the counts of a spot begin at its place times `each`. */
  counts(each = 1): Counts {
    return new Counts(each * this.places, this.sparse);
  }
}
