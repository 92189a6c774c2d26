import { onArc } from './curved-ends.ts';
import { between, type EndArc, type Ends, SAME } from './levels.ts';

type Way = 'left' | 'right';

const bandOf = (levels: readonly number[], level: number): number => {
  let above = 1;
  while (above < levels.length - 1 && levels[above]! < level) above++;
  return above - 1;
};

/** Where an outline ends at a height. */
function endAt(ends: Ends, way: Way, level: number): number {
  const arc = ends.arcs?.[way][bandOf(ends.levels, level)] ?? null;
  if (arc !== null) return onArc(arc, level);
  return between(ends.levels, way === 'left' ? ends.lefts : ends.rights, level);
}

/** One end between two neighbouring levels, either straight from corner to corner or along an arc. */
interface Band {
  readonly low: number;
  readonly high: number;
  /** The sine of the angle at which a straight end faces; of no use on an arc. */
  readonly facing: number;
  readonly arc: EndArc | null;
}

function bandsOf(ends: Ends, way: Way, raised: number): Band[] {
  const { levels } = ends;
  const values = way === 'left' ? ends.lefts : ends.rights;
  return levels.slice(1).map((top, i) => {
    const [run, rise] = [values[i + 1]! - values[i]!, top - levels[i]!];
    const arc = ends.arcs?.[way][i] ?? null;
    return {
      low: levels[i]! + raised,
      high: top + raised,
      facing: -run / Math.hypot(run, rise),
      arc: arc && { ...arc, y: arc.y + raised },
    };
  });
}

/**
 * The height at which two ends that come together touch, when they face each other there: two arcs on the
 * line of their centres (a hollow one counts with its radius taken away), an arc and a straight end where
 * the arc faces as the straight one does.
 */
function touchLevel(first: Band, next: Band): number | null {
  const [one, other] = [first.arc, next.arc];
  if (one === null && other === null) return null;
  const outward = one === null ? 0 : one.half * one.radius;
  const inward = other === null ? 0 : -other.half * other.radius;
  if (one === null) return other!.y - inward * first.facing;
  if (other === null) return one.y + outward * next.facing;
  const sine = (other.y - one.y) / (outward + inward);
  return Math.abs(sine) < 1 ? one.y + outward * sine : null;
}

/** As `stepBetween`, where one outline or both have arcs. Exact: every height at which they can touch is tried. */
export function curvedStepBetween(first: Ends, next: Ends, raised: number): number {
  const low = Math.max(first.levels[0]!, next.levels[0]! + raised);
  const high = Math.min(first.levels.at(-1)!, next.levels.at(-1)! + raised);
  if (high - low <= SAME) return Number.NEGATIVE_INFINITY;
  const tried = [low, high, ...first.levels, ...next.levels.map((level) => level + raised)];
  const nexts = bandsOf(next, 'left', raised);
  for (const band of bandsOf(first, 'right', 0)) {
    for (const other of nexts) {
      const level = touchLevel(band, other);
      const held =
        level !== null && level > Math.max(band.low, other.low) && level < Math.min(band.high, other.high);
      if (held) tried.push(level);
    }
  }
  let least = Number.NEGATIVE_INFINITY;
  for (const level of tried) {
    if (level < low || level > high) continue;
    least = Math.max(least, endAt(first, 'right', level) - endAt(next, 'left', level - raised));
  }
  return least;
}
