import { curvedStepBetween } from './curved-step.ts';
import { between, type Ends, onceEach, SAME } from './ends.ts';

/**
 * The least step along x from one outline to the next, so that the two touch and do not overlap; the next
 * one may stand raised. At each height it must start where the first ends, and where both ends run straight
 * between two corners, the corners' heights decide. −Infinity where one stands wholly above the other.
 *
 * @example
 * stepBetween({ levels: [0, 2], lefts: [0, 1], rights: [2, 1] }, { levels: [0, 2], lefts: [1, 0], rights: [1, 2] }) // 1
 */
export function stepBetween(first: Ends, next: Ends, raised = 0): number {
  if (first.arcs || next.arcs) return curvedStepBetween(first, next, raised);
  const low = Math.max(first.levels[0]!, next.levels[0]! + raised);
  const high = Math.min(first.levels.at(-1)!, next.levels.at(-1)! + raised);
  let least = Number.NEGATIVE_INFINITY;
  if (high - low <= SAME) return least;
  first.levels.forEach((level, index) => {
    if (level < low - SAME || level > high + SAME) return;
    least = Math.max(least, first.rights[index]! - between(next.levels, next.lefts, level - raised));
  });
  next.levels.forEach((level, index) => {
    if (level + raised < low - SAME || level + raised > high + SAME) return;
    least = Math.max(least, between(first.levels, first.rights, level + raised) - next.lefts[index]!);
  });
  return least;
}

/**
 * The angle to the row, in degrees, of the one cut that parts two patches of equal height a step apart;
 * undefined where they only touch at a point, as outlines with arcs do.
 *
 * @example
 * cutAngleBetween({ levels: [0, 2], lefts: [0, 0], rights: [1, 3] }, { levels: [0, 2], lefts: [0, 2], rights: [3, 3] }, 1) // 45
 */
export function cutAngleBetween(first: Ends, next: Ends, step: number): number | undefined {
  if (first.arcs || next.arcs) return undefined;
  const levels = onceEach([...first.levels, ...next.levels]);
  const endOf = (level: number) => between(first.levels, first.rights, level);
  const touches = levels.map(
    (level) => endOf(level) - between(next.levels, next.lefts, level) >= step - SAME,
  );
  const top = touches.findIndex((touch, index) => touch && touches[index - 1]);
  if (top < 0) return undefined;
  const rise = levels[top]! - levels[top - 1]!;
  const run = Math.abs(endOf(levels[top]!) - endOf(levels[top - 1]!));
  // To a millionth of a degree, so that 60° reads 60.
  return Math.round((Math.atan2(rise, run) * 180e6) / Math.PI) / 1e6;
}
