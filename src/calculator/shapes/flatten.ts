import type { Outline, Point } from './outline.ts';
import { type Arc, sidesOf } from './sides.ts';

/** In how many equal steps an arc is walked so that no chord strays from it by more than the tolerance. */
const stepsFor = ({ radius, sweep }: Arc, tolerance: number): number => {
  const widest = 2 * Math.acos(Math.max(0, 1 - tolerance / radius));
  return Math.max(1, Math.ceil(Math.abs(sweep) / widest));
};

const alongArc = (start: Point, arc: Arc, tolerance: number): Point[] => {
  const { centre, radius, sweep } = arc;
  const steps = stepsFor(arc, tolerance);
  const begin = Math.atan2(start.y - centre.y, start.x - centre.x);
  return Array.from({ length: steps }, (_, i) => {
    const angle = begin + (sweep * i) / steps;
    return i === 0
      ? start
      : { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
  });
};

/**
 * An outline with each arc walked in straight steps whose ends lie on the arc, no step straying from it by
 * more than the tolerance, in inches.
 *
 * @example
 * flatten([{ x: 0, y: 0, bulge: 1 }, { x: 2, y: 0, bulge: 1 }], 0.3).length // 4
 */
export const flatten = (outline: Outline, tolerance: number): Point[] =>
  sidesOf(outline).flatMap(({ from, arc }) => {
    const start = { x: from.x, y: from.y };
    return arc === null ? [start] : alongArc(start, arc, tolerance);
  });
