import { ok, type Result, TOLERANCE } from '../../measure/result.ts';
import { NEXT_HEXAGON, type Rows, type Spot } from './lattice.ts';
import type { Layout } from './layout.ts';
import { centredIn, outsideOf, reachesInto } from './outside.ts';

/** One layout that grows by rounds, or by diamonds along its side. */
export interface Growing<L extends Layout> {
  readonly least: number;
  readonly make: (n: number) => Result<L>;
  /** Width and height at n, in edges. */
  readonly sizeOf: (n: number) => readonly [width: number, height: number];
  /**
   * A number below which it cannot cover so much, corners and all, and not far below the one that does. Left out
   * of what is never trimmed.
   */
  readonly coversFrom?: (width: number, height: number) => number;
}

/** At so many rounds, in edges. */
export interface Grown<L extends Layout> {
  readonly layout: L;
  readonly n: number;
  readonly width: number;
  readonly height: number;
}

export interface AsLargeAs<L extends Layout> {
  /** The least that is as wide and as high; its corners are open. */
  readonly reach: Grown<L>;
  /** The least that covers it, corners too, to be trimmed; null past the largest layout, and where none is. */
  readonly cover: Grown<L> | null;
  /** The largest that lies inside; null where none does. */
  readonly inside: Grown<L> | null;
}

/** The least number from `least` up that is enough, all above it being enough too. */
function leastOf(least: number, isEnough: (n: number) => boolean): number {
  let known = least + 1;
  while (!isEnough(known)) known = least + 2 * (known - least);
  let low = least;
  while (low < known) {
    const middle = Math.floor((low + known) / 2);
    if (isEnough(middle)) known = middle;
    else low = middle + 1;
  }
  return known;
}

function grow<L extends Layout>({ make, sizeOf }: Growing<L>, n: number): Result<Grown<L>> {
  const made = make(n);
  if (!made.ok) return made;
  const [width, height] = sizeOf(n);
  return ok({ layout: made.value, n, width, height });
}

/** A step that is level on the page. */
const LEVEL: Readonly<Record<Rows, Spot>> = { across: NEXT_HEXAGON, down: { u: 0, v: 1 } };

/** Whether a rectangle about the middle of a layout is all patches. */
function isCovered(layout: Layout, width: number, height: number): boolean {
  const outside = outsideOf(layout.patches, LEVEL[layout.patches.rows]);
  return !reachesInto(outside, centredIn(outside.box, width, height));
}

const FURTHER = 4;

function coverOf<L extends Layout>(
  of: Growing<L>,
  reach: number,
  width: number,
  height: number,
): Grown<L> | null {
  if (of.coversFrom === undefined) return null;
  const from = Math.max(reach, of.coversFrom(width, height));
  for (let n = from; n <= from + FURTHER; n++) {
    const grown = grow(of, n);
    // Past the largest layout it is not told.
    if (!grown.ok) return null;
    if (isCovered(grown.value.layout, width, height)) return grown.value;
  }
  return null;
}

/**
 * The largest number at which a growing layout lies inside a width and a height in edges; null where none does.
 *
 * @example
 * largestInside({ least: 1, sizeOf: (n) => [3 * n, 2 * Math.sqrt(3) * n] }, 54, 54) // 15
 * largestInside({ least: 1, sizeOf: (n) => [3 * n, 2 * Math.sqrt(3) * n] }, 2, 2) // null
 */
export function largestInside(
  { least, sizeOf }: Pick<Growing<Layout>, 'least' | 'sizeOf'>,
  width: number,
  height: number,
): number | null {
  const first = leastOf(least, (n) => {
    const [wide, high] = sizeOf(n);
    return wide > width + TOLERANCE || high > height + TOLERANCE;
  });
  return first > least ? first - 1 : null;
}

/**
 * A layout that grows from its middle, as large as a width and a height in edges: the least that reaches so
 * far, the least that covers it all, and the largest inside. Refused with `too-many-patches` past the largest
 * layout.
 */
export function asLargeAs<L extends Layout>(
  of: Growing<L>,
  width: number,
  height: number,
): Result<AsLargeAs<L>> {
  const reaches = (n: number): boolean => {
    const [wide, high] = of.sizeOf(n);
    return wide >= width - TOLERANCE && high >= height - TOLERANCE;
  };
  const reach = grow(of, leastOf(of.least, reaches));
  if (!reach.ok) return reach;
  const largest = largestInside(of, width, height);
  const inside = largest === null ? null : grow(of, largest);
  return ok({
    reach: reach.value,
    cover: coverOf(of, reach.value.n, width, height),
    inside: inside?.ok ? inside.value : null,
  });
}
