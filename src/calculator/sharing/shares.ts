import { FORMS, type Kind } from '../layouts/forms.ts';
import { COLUMN } from '../layouts/lattice.ts';
import { kindOf, type PatchList, roleOf } from '../layouts/patches.ts';
import { keyOf, sewingOrder } from './sewing-order.ts';

/** Patches of one role and kind. */
export interface SharePieces {
  readonly role: string;
  readonly kind: Kind;
  readonly count: number;
}

/** One share of a layout's sewing. A seam is one side long. */
export interface Share {
  /** What is to be cut. */
  readonly pieces: readonly SharePieces[];
  /** Seams between patches of the share, and those that join it to the shares before. */
  readonly inside: number;
  readonly joining: number;
  /** The patches' places in the list, in the order of sewing. */
  readonly patches: Uint32Array;
  /** The box round all that is sewn by then, in sides. */
  readonly width: number;
  readonly height: number;
}

/** Seams of a share in all. */
export const seamsOf = ({ inside, joining }: Pick<Share, 'inside' | 'joining'>): number => inside + joining;

/**
 * A layout's sewing in so many shares with equal seams, or as nearly so as whole patches allow: patches are
 * sewn on in order, each share going on from the ones before. Equal patches would not be equal work: the first
 * patch of a row has one seam, the last of a rosette three. Shares past the number of patches are empty.
 */
export function sharesOf(list: PatchList, parts: number): Share[] {
  const order = sewingOrder(list);
  const before = seamsBefore(list, order);
  const ends = cuts(before, parts);
  const box = new Box(list);
  return ends.map((end, k) => {
    const patches = order.subarray(k === 0 ? 0 : ends[k - 1], end);
    const sewn = before[end]! - before[k === 0 ? 0 : ends[k - 1]!]!;
    const inside = seamsWithin(list, patches);
    return {
      patches,
      pieces: piecesIn(list, patches),
      inside,
      joining: sewn - inside,
      ...box.with(patches),
    };
  });
}

/** For each number of patches sewn, the seams until then. */
function seamsBefore(list: PatchList, order: Uint32Array): Uint32Array {
  const open = new Set<number>();
  const before = new Uint32Array(order.length + 1);
  let seams = 0;
  order.forEach((i, k) => {
    seams += closed(list, i, open);
    before[k + 1] = seams;
  });
  return before;
}

function seamsWithin(list: PatchList, patches: Uint32Array): number {
  const open = new Set<number>();
  return patches.reduce((seams, i) => seams + closed(list, i, open), 0);
}

/** Lays a patch down; tells how many of its sides meet one that lies there already. */
function closed(list: PatchList, i: number, open: Set<number>): number {
  const { corners } = FORMS[list.form[i]!]!;
  const [u, v] = [list.u[i]!, list.v[i]!];
  let met = 0;
  for (let k = 0; k < corners.length; k++) {
    const [from, to] = [corners[k]!, corners[(k + 1) % corners.length]!];
    // Twice the middle of a side is a spot of the lattice, and no other side has it.
    const side = keyOf(2 * u + from.u + to.u, 2 * v + from.v + to.v);
    if (open.delete(side)) met++;
    else open.add(side);
  }
  return met;
}

/** Where to cut so that each share ends as near as can be to its part of all seams. */
function cuts(before: Uint32Array, parts: number): number[] {
  const all = before.at(-1)!;
  const last = before.length - 1;
  const ends: number[] = [];
  let at = 0;
  for (let k = 1; k <= parts; k++) {
    const want = (all * k) / parts;
    while (at < last && before[at + 1]! <= want) at++;
    const nearer = at < last && before[at + 1]! - want < want - before[at]!;
    if (nearer) at++;
    ends.push(k === parts ? last : at);
  }
  return ends;
}

function piecesIn(list: PatchList, patches: Uint32Array): SharePieces[] {
  const counts = new Map<string, SharePieces>();
  for (const i of patches) {
    const [role, kind] = [roleOf(list, i), kindOf(list, i)];
    const key = `${role}\n${kind}`;
    counts.set(key, { role, kind, count: (counts.get(key)?.count ?? 0) + 1 });
  }
  return [...counts.values()];
}

/** The box round patches as more and more are sewn on, in sides. */
class Box {
  readonly #list: PatchList;
  #left = Number.POSITIVE_INFINITY;
  #right = Number.NEGATIVE_INFINITY;
  #top = Number.POSITIVE_INFINITY;
  #bottom = Number.NEGATIVE_INFINITY;

  constructor(list: PatchList) {
    this.#list = list;
  }

  with(patches: Uint32Array): { width: number; height: number } {
    const { form, u, v, rows } = this.#list;
    for (const i of patches)
      for (const corner of FORMS[form[i]!]!.corners) {
        const column = u[i]! + corner.u;
        const half = column + 2 * (v[i]! + corner.v);
        this.#left = Math.min(this.#left, column);
        this.#right = Math.max(this.#right, column);
        this.#top = Math.min(this.#top, half);
        this.#bottom = Math.max(this.#bottom, half);
      }
    const along = Math.max(0, this.#right - this.#left) * COLUMN;
    const down = Math.max(0, this.#bottom - this.#top) / 2;
    return rows === 'across' ? { width: along, height: down } : { width: down, height: along };
  }
}
