import type { Outline, Point } from '../shapes/outline.ts';

/** Where an outline ends to the left and to the right at each height at which it has a corner, from the lowest. */
export interface Ends {
  readonly levels: readonly number[];
  readonly lefts: readonly number[];
  readonly rights: readonly number[];
}

/** Lengths within this are the same length, in inches. */
export const SAME = 1e-9;

/** The ends of a straight-sided outline that a level line cuts once, as every convex one. */
export function endsOf(outline: Outline): Ends {
  const levels = onceEach(outline.map((corner) => corner.y));
  return {
    levels,
    lefts: levels.map((level) => endAt(outline, level, Math.min)),
    rights: levels.map((level) => endAt(outline, level, Math.max)),
  };
}

/** In order, near-equal ones once. */
export function onceEach(lengths: readonly number[]): number[] {
  const once: number[] = [];
  for (const length of lengths.toSorted((a, b) => a - b))
    if (once.length === 0 || length - once.at(-1)! > SAME) once.push(length);
  return once;
}

/** Where an end lies at any height between the lowest and the highest: straight from corner to corner. */
export function between(levels: readonly number[], ends: readonly number[], level: number): number {
  let above = 1;
  while (above < levels.length - 1 && levels[above]! < level) above++;
  const [low, high] = [levels[above - 1]!, levels[above]!];
  const part = Math.min(1, Math.max(0, (level - low) / (high - low)));
  return ends[above - 1]! + part * (ends[above]! - ends[above - 1]!);
}

type Outermost = (a: number, b: number) => number;

function endAt(outline: Outline, level: number, outermost: Outermost): number {
  let end: number | undefined;
  let from = outline.at(-1)!;
  for (const to of outline) {
    const here = crossing(from, to, level, outermost);
    if (here !== undefined) end = end === undefined ? here : outermost(end, here);
    from = to;
  }
  return end!;
}

/** Where the side from one corner to another crosses a height, if it does. */
function crossing(from: Point, to: Point, level: number, outermost: Outermost): number | undefined {
  if (level < Math.min(from.y, to.y) - SAME || level > Math.max(from.y, to.y) + SAME) return undefined;
  const rise = to.y - from.y;
  if (Math.abs(rise) <= SAME) return outermost(from.x, to.x);
  return from.x + Math.min(1, Math.max(0, (level - from.y) / rise)) * (to.x - from.x);
}
