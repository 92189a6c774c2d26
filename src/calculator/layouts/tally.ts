import { FORMS, type Form } from './forms.ts';
import { type Counts, Ground, spanOf } from './ground.ts';
import { COLUMN, DIRECTIONS, type Spot } from './lattice.ts';
import type { PatchList } from './patches.ts';

/** What a list of patches says of itself. Lengths are in edges: multiply by the finished edge. */
export interface Tally {
  readonly total: number;
  readonly byRole: Readonly<Record<string, number>>;
  /** Unit edges that two patches share. */
  readonly seams: number;
  /** Unit edges on the outside (or round a hole). */
  readonly outline: number;
  /** All corners, outside ones too. Where there are no holes, corners − (seams + outline) + total is 1. */
  readonly corners: number;
  /** Corners with patches all round, by how many patches meet there: `closedBy[3]` are the three-way ones. */
  readonly closedBy: readonly number[];
  /** Corners that must be set in: exactly three patches meet, with no gap left. */
  readonly setIns: number;
  readonly seamLength: number;
  /** The box round all the patches, and where its corner is from the layout's origin (y down). */
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly top: number;
}

const ALL_ROUND = 6;
const ONE_PATCH = 16;
const WAYS = 3;

/** One corner of a form and the side that leaves it, as they are marked on the ground. */
interface Step {
  readonly corner: Spot;
  /** What the corner adds to its spot: one patch in the upper four bits, its angle in sixths in the lower. */
  readonly gain: number;
  /** A side is kept at that one of its ends from which it leaves in one of the first three directions. */
  readonly kept: Spot;
  readonly way: number;
}

function stepsOf({ corners }: Form): Step[] {
  return corners.map((corner, k) => {
    const next = corners[(k + 1) % corners.length]!;
    const way = DIRECTIONS.findIndex((d) => corner.u + d.u === next.u && corner.v + d.v === next.v);
    return { corner, gain: ONE_PATCH + corner.sixths, kept: way < WAYS ? corner : next, way: way % WAYS };
  });
}

const FORM_STEPS = FORMS.map(stepsOf);
const STEPS = FORM_STEPS.flat();
const SIDES = Uint8Array.from(FORM_STEPS, (steps) => steps.length);
const FIRST = Uint8Array.from(FORM_STEPS, (_, form) => FORM_STEPS.slice(0, form).flat().length);
const GAIN = Uint8Array.from(STEPS, (step) => step.gain);

/** For each step, how far its corner's and its side's count is from the patch's own, by column even and odd. */
function distances(ground: Ground): { corners: Int32Array; sides: Int32Array } {
  const both = [0, 1].flatMap((column) => STEPS.map((step) => ({ column, ...step })));
  return {
    corners: Int32Array.from(both, ({ column, corner }) => ground.further(column, corner.u, corner.v)),
    sides: Int32Array.from(
      both,
      ({ column, kept, way }) => WAYS * ground.further(column, kept.u, kept.v) + way,
    ),
  };
}

/** Marks every patch's corners and sides; returns how many sides came twice. */
function mark(list: PatchList, ground: Ground, corners: Counts, sides: Counts): number {
  const { form, u, v, count } = list;
  const far = distances(ground);
  const [toCorner, toSide] = [far.corners, far.sides];
  let shared = 0;
  for (let i = 0; i < count; i++) {
    const own = ground.place(u[i]!, v[i]!);
    const column = (u[i]! & 1) * STEPS.length;
    const first = FIRST[form[i]!]!;
    const end = first + SIDES[form[i]!]!;
    for (let k = first; k < end; k++) {
      corners.add(own + toCorner[column + k]!, GAIN[k]!);
      if (sides.add(WAYS * own + toSide[column + k]!, 1) === 2) shared++;
    }
  }
  return shared;
}

function countCorners(marked: Uint8Array): { corners: number; closedBy: number[] } {
  const closedBy = new Array<number>(ALL_ROUND + 1).fill(0);
  let corners = 0;
  for (let i = 0; i < marked.length; i++) {
    const spot = marked[i]!;
    if (spot === 0) continue;
    corners++;
    if (spot % ONE_PATCH === ALL_ROUND) closedBy[Math.floor(spot / ONE_PATCH)]!++;
  }
  return { corners, closedBy };
}

function countRoles(list: PatchList): Record<string, number> {
  const counts = new Uint32Array(list.roles.length);
  for (let i = 0; i < list.count; i++) counts[list.role[i]!]!++;
  return Object.fromEntries(list.roles.map((role, k) => [role, counts[k]!]));
}

function countSides(list: PatchList): number {
  let sides = 0;
  for (let i = 0; i < list.count; i++) {
    sides += SIDES[list.form[i]!]!;
  }
  return sides;
}

function sizeOf(list: PatchList): Pick<Tally, 'width' | 'height' | 'left' | 'top'> {
  const span = spanOf(list);
  const along = { at: span.left * COLUMN, length: (span.right - span.left) * COLUMN };
  const down = { at: span.top / 2, length: (span.bottom - span.top) / 2 };
  const [x, y] = list.rows === 'across' ? [along, down] : [down, along];
  return { left: x.at, top: y.at, width: x.length, height: y.length };
}

/**
 * Counts everything that a layout is asked for, in one reading of its list: time grows with the patches.
 * The patches must not overlap (no layout of this room does; its tests look).
 */
export function tally(list: PatchList): Tally {
  const sides = countSides(list);
  const ground = new Ground(spanOf(list), sides);
  const marked = ground.counts();
  const seams = mark(list, ground, marked, ground.counts(WAYS));
  const { corners, closedBy } = countCorners(marked.values());
  return {
    total: list.count,
    byRole: countRoles(list),
    seams,
    outline: sides - 2 * seams,
    corners,
    closedBy,
    setIns: closedBy[3]!,
    seamLength: seams,
    ...sizeOf(list),
  };
}
