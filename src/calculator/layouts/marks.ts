import { FORMS, type Form } from './forms.ts';
import { type Counts, Ground, spanOf } from './ground.ts';
import { DIRECTIONS, plus, type Spot } from './lattice.ts';
import type { PatchList } from './patches.ts';

/** What one patch adds to the mark at a corner, beside its angle in sixths, which fill the lower four bits. */
export const ONE_PATCH = 16;
const WAYS = 3;

/** One corner of a form and the side that leaves it, as they are marked on the ground. */
interface Step {
  readonly corner: Spot;
  readonly next: Spot;
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
    const kept = way < WAYS ? corner : next;
    return { corner, next, gain: ONE_PATCH + corner.sixths, kept, way: way % WAYS };
  });
}

const FORM_STEPS = FORMS.map(stepsOf);
const STEPS = FORM_STEPS.flat();
/** How many sides each form has. */
export const SIDES = Uint8Array.from(FORM_STEPS, (steps) => steps.length);
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

/** Every corner and side of a list of patches, marked on the ground that they lie on. */
export interface Marks {
  /** At each corner 16 for each patch and the sixths of a turn that they fill. */
  readonly corners: Counts;
  readonly sides: Counts;
  /** How many sides two patches share. */
  readonly shared: number;
  /** Calls for each side in turn, with its patch and its place among the counts. */
  eachSide(visit: (patch: number, step: number, place: number) => void): void;
}

/** Marks the corners and the sides of every patch. */
export function marksOf(list: PatchList): Marks {
  const { form, u, v, count } = list;
  let expected = 0;
  for (let i = 0; i < count; i++) expected += SIDES[form[i]!]!;
  const ground = new Ground(spanOf(list), expected);
  const [corners, sides] = [ground.counts(), ground.counts(WAYS)];
  const { corners: toCorner, sides: toSide } = distances(ground);
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
  return {
    corners,
    sides,
    shared,
    eachSide(visit) {
      for (let i = 0; i < count; i++) {
        const own = WAYS * ground.place(u[i]!, v[i]!);
        const column = (u[i]! & 1) * STEPS.length;
        const first = FIRST[form[i]!]!;
        for (let k = first; k < first + SIDES[form[i]!]!; k++) visit(i, k, own + toSide[column + k]!);
      }
    },
  };
}

/** A unit side on the outside of a layout, from one of its ends to the other. */
export interface LooseSide {
  readonly from: Spot;
  readonly to: Spot;
}

/**
 * The sides that no two patches share: the outline of a layout (and round a hole). Time grows with the patches.
 *
 * @example
 * looseSides({ count: 0, form: new Uint8Array(), u: new Int32Array(), v: new Int32Array(), role: new Uint16Array(), part: new Uint32Array(), roles: [], rows: 'across' }) // []
 */
export function looseSides(list: PatchList): LooseSide[] {
  const { sides, eachSide } = marksOf(list);
  const loose: LooseSide[] = [];
  eachSide((patch, step, place) => {
    if (sides.at(place) !== 1) return;
    const at = { u: list.u[patch]!, v: list.v[patch]! };
    const { corner, next } = STEPS[step]!;
    loose.push({ from: plus(at, corner), to: plus(at, next) });
  });
  return loose;
}
