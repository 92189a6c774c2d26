import { ok, type Result, TOLERANCE, wholeAbove, wholeBelow } from '../../measure/result.ts';
import type { Arrangement } from './arrangement.ts';
import { type Spot, turned } from './lattice.ts';
import type { Layout, Rectangle } from './layout.ts';
import { outsideOf, solidIn } from './outside.ts';

/** Rosettes or stars that can stand in staggered rows. */
export interface Standing<L extends Layout> {
  /** From one to the next, on the patches' lattice; rows run along it turned 60°. */
  readonly step: Spot;
  readonly make: (arrangement: Arrangement) => Result<L>;
}

/** So many rows of so many. Sizes in edges, the rows level (which they need not be on the patches' own lines). */
export interface Stood<L extends Layout> {
  readonly layout: L;
  readonly rows: number;
  readonly perRow: number;
  /** The box round all the patches. */
  readonly box: Rectangle;
  /** What is left when the edges are trimmed straight, inside the gaps of the stagger. */
  readonly solid: Rectangle;
}

/** Straight sides: at the ends of the rows halves, cut upright through their middles, in place of the gaps. */
export interface StraightSides {
  readonly rows: number;
  readonly wholes: number;
  readonly halves: number;
  /** Edges. */
  readonly width: number;
}

export interface AsManyAsMake<L extends Layout> {
  /** The fewest rows of the fewest that cover it, to be trimmed. */
  readonly cover: Stood<L>;
  /** The most that lie inside it; null where not one does. */
  readonly inside: Stood<L> | null;
  readonly straight: StraightSides;
}

/** Enough rows of enough to have a middle: what more of them add is the same each time. */
const SAMPLE = { rows: 4, perRow: 3 };

/** From one place to the next along a row, and from one row to the next, in edges. */
function pitchesOf({ u, v }: Spot): { along: number; over: number } {
  const along = Math.sqrt(u * u + u * v + v * v);
  return { along, over: (along * Math.sqrt(3)) / 2 };
}

function stand<L extends Layout>(of: Standing<L>, rows: number, perRow: number): Result<Stood<L>> {
  const made = of.make({ kind: 'rows', rows, perRow });
  if (!made.ok) return made;
  const outside = outsideOf(made.value.patches, turned(of.step));
  // A little more than the pitch, so that a valley at the very end of the stretch is seen.
  const solid = solidIn(outside, 1.01 * pitchesOf(of.step).along);
  return ok({ layout: made.value, rows, perRow, box: outside.box, solid });
}

interface Size {
  readonly width: number;
  readonly height: number;
}

const covers = ({ solid }: Stood<Layout>, { width, height }: Size): boolean =>
  solid.width >= width - TOLERANCE && solid.height >= height - TOLERANCE;

/** A corner of the pattern may be cut a little deeper than its middle, and one more is needed. */
const TRIES = 4;

function leastCover<L extends Layout>(of: Standing<L>, wish: Size, from: Stood<L>): Result<Stood<L>> {
  const { along, over } = pitchesOf(of.step);
  let rows = Math.max(1, SAMPLE.rows + wholeAbove((wish.height - from.solid.height) / over));
  let perRow = Math.max(1, SAMPLE.perRow + wholeAbove((wish.width - from.solid.width) / along));
  let stood = stand(of, rows, perRow);
  for (let tried = 0; stood.ok && !covers(stood.value, wish) && tried < TRIES; tried++) {
    const { solid } = stood.value;
    if (solid.height < wish.height - TOLERANCE) rows++;
    if (solid.width < wish.width - TOLERANCE) perRow++;
    stood = stand(of, rows, perRow);
  }
  return stood;
}

function mostInside<L extends Layout>(of: Standing<L>, wish: Size, from: Stood<L>): Stood<L> | null {
  const { along, over } = pitchesOf(of.step);
  const rows = SAMPLE.rows + wholeBelow((wish.height - from.box.height) / over);
  const staggered = SAMPLE.perRow + wholeBelow((wish.width - from.box.width) / along);
  // One row alone has no stagger, half a pitch less.
  const alone = SAMPLE.perRow + wholeBelow((wish.width - from.box.width + along / 2) / along);
  const inRows = rows < 2 || staggered < 1 ? 0 : rows * staggered;
  const inOne = rows < 1 ? 0 : Math.max(0, alone);
  if (inRows === 0 && inOne === 0) return null;
  const stood = inRows >= inOne ? stand(of, rows, staggered) : stand(of, 1, alone);
  return stood.ok ? stood.value : null;
}

/** As with single hexagons: an odd number of half pitches has one half to each row, an even one two to each second. */
function straightSides(width: number, rows: number, pitch: number): StraightSides {
  const steps = Math.max(1, wholeAbove((2 * width) / pitch));
  const wholes = Math.floor(steps / 2);
  const short = Math.floor(rows / 2);
  const odd = steps % 2 === 1;
  return {
    rows,
    wholes: odd ? rows * wholes : rows * wholes - short,
    halves: odd ? rows : 2 * short,
    width: (steps * pitch) / 2,
  };
}

/**
 * As many rosettes or stars as make a quilt of a width and a height, in edges: enough to cover it, and the most
 * that lie inside. Found from placed patches: what a few rows measure, and what each more adds. Refused with
 * `too-many-patches` past the largest layout.
 */
export function asManyAsMake<L extends Layout>(
  of: Standing<L>,
  width: number,
  height: number,
): Result<AsManyAsMake<L>> {
  const wish = { width, height };
  const sample = stand(of, SAMPLE.rows, SAMPLE.perRow);
  if (!sample.ok) return sample;
  const cover = leastCover(of, wish, sample.value);
  if (!cover.ok) return cover;
  return ok({
    cover: cover.value,
    inside: mostInside(of, wish, sample.value),
    straight: straightSides(width, cover.value.rows, pitchesOf(of.step).along),
  });
}
