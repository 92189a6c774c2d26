import { FORMS } from '../layouts/forms.ts';
import type { PatchList } from '../layouts/patches.ts';

/**
 * An order in which the patches of a layout can be sewn on, one after another: part by part where the layout
 * has parts (rosettes, stars, rounds), what lies between them with the first part that it touches; else row by
 * row. The places of the patches in their list, in that order.
 */
export function sewingOrder(list: PatchList): Uint32Array {
  const order = Uint32Array.from({ length: list.count }, (_, i) => i);
  const { along, down } = middles(list);
  const part = partsWithBetween(list);
  const role = part ? list.role : new Uint16Array(list.count);
  const inPart = part ?? new Uint32Array(list.count);
  return order.sort(
    (a, b) =>
      inPart[a]! - inPart[b]! || role[a]! - role[b]! || down[a]! - down[b]! || along[a]! - along[b]! || a - b,
  );
}

/** What each patch belongs to, numbered from 1, by its place in the list; and how many belong to each. */
export interface Groups {
  readonly of: Uint32Array;
  readonly count: readonly number[];
}

/** The rows of a layout that is laid in rows. */
export function rowsOf(list: PatchList): Groups {
  const { down } = middles(list);
  const heights = [...new Set(down)].sort((a, b) => a - b);
  const numbers = new Map(heights.map((height, k) => [height, k + 1]));
  return counted(Uint32Array.from(down, (height) => numbers.get(height)!));
}

/** The parts of a layout that has them, each with what lies between it and the parts after; else null. */
export function partsOf(list: PatchList): Groups | null {
  const part = partsWithBetween(list);
  return part && counted(part);
}

function counted(of: Uint32Array): Groups {
  const count: number[] = [];
  for (const one of of) count[one] = (count[one] ?? 0) + 1;
  return { of, count };
}

/** A multiple of the numbers of corners there are, so that the middle of any patch is a whole number. */
const SAME = 60;

/** The middle of each patch's corners along its row and from row to row, in whole numbers that compare exactly. */
function middles(list: PatchList): { along: Int32Array; down: Int32Array } {
  const [along, down] = [new Int32Array(list.count), new Int32Array(list.count)];
  for (let i = 0; i < list.count; i++) {
    const { corners } = FORMS[list.form[i]!]!;
    let [u, height] = [0, 0];
    for (const corner of corners) {
      u += corner.u;
      height += corner.u + 2 * corner.v;
    }
    const scale = SAME / corners.length;
    along[i] = SAME * list.u[i]! + u * scale;
    down[i] = SAME * (list.u[i]! + 2 * list.v[i]!) + height * scale;
  }
  return { along, down };
}

/** The part of each patch; of those between parts, the first part that they touch. Null where there are none. */
function partsWithBetween(list: PatchList): Uint32Array | null {
  const part = Uint32Array.from(list.part);
  if (part.every((one) => one === 0)) return null;
  const last = part.reduce((most, one) => Math.max(most, one), 0) + 1;
  const firstAt = new Map<number, number>();
  for (let i = 0; i < list.count; i++) {
    if (part[i] === 0) continue;
    for (const key of cornerKeys(list, i)) firstAt.set(key, Math.min(firstAt.get(key) ?? last, part[i]!));
  }
  for (let i = 0; i < list.count; i++) {
    if (part[i] !== 0) continue;
    part[i] = Math.min(...cornerKeys(list, i).map((key) => firstAt.get(key) ?? last));
  }
  return part;
}

const cornerKeys = (list: PatchList, i: number): number[] =>
  FORMS[list.form[i]!]!.corners.map(({ u, v }) => keyOf(list.u[i]! + u, list.v[i]! + v));

const WIDE = 2 ** 22;

/** One number for each spot of the lattice. */
export const keyOf = (u: number, v: number): number => (u + WIDE / 2) * WIDE + v + WIDE / 2;
