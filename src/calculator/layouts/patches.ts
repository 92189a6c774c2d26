import type { Point } from '../shapes/outline.ts';
import { DIAMONDS, FORMS, HALVES, HEXAGON, type Kind, type Settled, TRIANGLES } from './forms.ts';
import { COLUMN, type Rows, type Spot } from './lattice.ts';

/** Placed patches, one a row of these columns. Everything that is said of a layout is read from such a list. */
export interface PatchList {
  readonly count: number;
  /** Kind and turn of each patch, as its place among the forms. */
  readonly form: Uint8Array;
  /** Where each patch's own spot is. */
  readonly u: Int32Array;
  readonly v: Int32Array;
  /** What each patch is for, as its place in `roles`. */
  readonly role: Uint16Array;
  /** Which rosette, star, point or block it belongs to, numbered from 1; 0 where it belongs to none. */
  readonly part: Uint32Array;
  readonly roles: readonly string[];
  readonly rows: Rows;
}

type Columns = Pick<PatchList, 'form' | 'u' | 'v' | 'role' | 'part'>;

const columns = (room: number): Columns => ({
  form: new Uint8Array(room),
  u: new Int32Array(room),
  v: new Int32Array(room),
  role: new Uint16Array(room),
  part: new Uint32Array(room),
});

function widened(old: Columns, room: number): Columns {
  const wide = columns(room);
  wide.form.set(old.form);
  wide.u.set(old.u);
  wide.v.set(old.v);
  wide.role.set(old.role);
  wide.part.set(old.part);
  return wide;
}

/** A list of patches while it is being placed. `room` is how many are expected; more may come. */
export class GrowingList {
  private readonly roles: readonly string[];
  private readonly rows: Rows;
  private columns: Columns;
  private count = 0;

  constructor(roles: readonly string[], room = 64, rows: Rows = 'across') {
    this.roles = roles;
    this.rows = rows;
    this.columns = columns(Math.max(1, room));
  }

  /** A hexagon with its centre at (u, v). */
  hexagon(u: number, v: number, role: number, part = 0): void {
    this.place(HEXAGON, u, v, role, part);
  }

  /** A diamond with a sharp corner at (u, v), its sides leaving there in directions k and k + 1. */
  diamond(u: number, v: number, k: number, role: number, part = 0): void {
    this.settle(DIAMONDS[k % 6]!, u, v, role, part);
  }

  /** A triangle with a corner at (u, v), its sides leaving there in directions k and k + 1. */
  triangle(u: number, v: number, k: number, role: number, part = 0): void {
    this.settle(TRIANGLES[k % 6]!, u, v, role, part);
  }

  /** A half-hexagon with the middle of its long side at (u, v), its corners in directions k to k + 3. */
  half(u: number, v: number, k: number, role: number, part = 0): void {
    this.settle(HALVES[k % 6]!, u, v, role, part);
  }

  done(): PatchList {
    const { count, roles, rows } = this;
    const { form, u, v, role, part } = this.columns;
    return {
      count,
      roles,
      rows,
      form: form.subarray(0, count),
      u: u.subarray(0, count),
      v: v.subarray(0, count),
      role: role.subarray(0, count),
      part: part.subarray(0, count),
    };
  }

  private settle(at: Settled, u: number, v: number, role: number, part: number): void {
    this.place(at.form, u + at.u, v + at.v, role, part);
  }

  private place(form: number, u: number, v: number, role: number, part: number): void {
    const i = this.count++;
    if (i === this.columns.form.length) this.columns = widened(this.columns, 2 * i);
    const columns = this.columns;
    columns.form[i] = form;
    columns.u[i] = u;
    columns.v[i] = v;
    columns.role[i] = role;
    columns.part[i] = part;
  }
}

export const kindOf = (list: PatchList, i: number): Kind => FORMS[list.form[i]!]!.kind;

export const roleOf = (list: PatchList, i: number): string => list.roles[list.role[i]!]!;

/**
 * Where a spot is in the layout's frame, in inches: x to the right, y down the page, so that the first row
 * of a layout is at the top of its picture. The spot (0, 0) is the origin.
 */
export function pointOf(spot: Spot, rows: Rows, edge: number): Point {
  const along = spot.u * COLUMN * edge;
  const down = (spot.u / 2 + spot.v) * edge;
  return rows === 'across' ? { x: along, y: down } : { x: down, y: along };
}

/**
 * The corners of patch i in the layout's frame (inches, y down), in the order that gives a positive area by
 * the shoelace rule, which on the page is clockwise. The middle of a half-hexagon's long side is left out.
 */
export function outlineOf(list: PatchList, i: number, edge: number): Point[] {
  const at = { u: list.u[i]!, v: list.v[i]! };
  const points = FORMS[list.form[i]!]!.corners.filter((corner) => corner.sixths < 3).map((corner) =>
    pointOf({ u: at.u + corner.u, v: at.v + corner.v }, list.rows, edge),
  );
  return list.rows === 'across' ? points : points.reverse();
}
