/** Where an outline ends to the left and to the right at each height at which it has a corner, from the lowest. */
export interface Ends {
  readonly levels: readonly number[];
  readonly lefts: readonly number[];
  readonly rights: readonly number[];
  /** Between each level and the next: the arc that the end runs along, or null where it is straight. */
  readonly arcs?: { readonly left: readonly (EndArc | null)[]; readonly right: readonly (EndArc | null)[] };
}

/** The left (-1) or the right (1) half of a circle, as far as an outline ends on it. */
export interface EndArc {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly half: 1 | -1;
}

/** Lengths within this are the same length, in inches. */
export const SAME = 1e-9;

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
