import { passes } from '../shapes/extent.ts';
import type { Outline, Point } from '../shapes/outline.ts';
import { type Arc, type Side, sidesOf } from '../shapes/sides.ts';
import { type EndArc, type Ends, onceEach } from './levels.ts';

/** Where a level line crosses a side: on a straight one, or on the left or the right half of an arc's circle. */
interface Crossing {
  readonly x: number;
  readonly side: Side;
  readonly arc: EndArc | null;
}

/** The heights at which a side starts, ends, or turns from going up to going down. */
function turningLevels({ from, to, arc }: Side): number[] {
  if (arc === null) return [from.y, to.y];
  const tops = [1, -1].filter((way) => passes(arc, from, { x: 0, y: way }));
  return [from.y, to.y, ...tops.map((way) => arc.centre.y + way * arc.radius)];
}

function crossings(side: Side, level: number): Crossing[] {
  const { from, to, arc } = side;
  if (arc !== null) return arcCrossings(side, arc, level);
  if (level < Math.min(from.y, to.y) || level > Math.max(from.y, to.y) || from.y === to.y) return [];
  return [{ x: from.x + ((level - from.y) / (to.y - from.y)) * (to.x - from.x), side, arc: null }];
}

function arcCrossings(side: Side, arc: Arc, level: number): Crossing[] {
  const { centre, radius } = arc;
  const up = level - centre.y;
  const reach = Math.sqrt(radius * radius - up * up);
  if (Number.isNaN(reach)) return [];
  return ([-1, 1] as const)
    .filter((half) => passes(arc, side.from, { x: half * reach, y: up }))
    .map((half) => ({
      x: centre.x + half * reach,
      side,
      arc: { x: centre.x, y: centre.y, radius, half },
    }));
}

/** Where an end that was met between two levels lies at one of those levels. */
function endAt({ side: { from, to }, arc }: Crossing, level: number): number {
  if (arc !== null) return onArc(arc, level);
  return from.x + ((level - from.y) / (to.y - from.y)) * (to.x - from.x);
}

/** Where an arc's end lies at a height. */
export const onArc = ({ x, y, radius, half }: EndArc, level: number): number =>
  x + half * Math.sqrt(Math.max(0, radius * radius - (level - y) ** 2));

type Pick = (crossings: readonly Crossing[]) => Crossing;
const leftmost: Pick = (all) => all.reduce((best, one) => (one.x < best.x ? one : best));
const rightmost: Pick = (all) => all.reduce((best, one) => (one.x > best.x ? one : best));

/**
 * The ends of an outline with arcs. A hollow that a level line would enter is not seen from the side: there
 * the outline counts as filled, as nothing that comes along the row can get in.
 */
export function curvedEndsOf(outline: Outline): Ends {
  const sides = sidesOf(outline);
  const levels = onceEach(sides.flatMap(turningLevels));
  const bands = levels.slice(1).map((high, i) => {
    const middle = (levels[i]! + high) / 2;
    return sides.flatMap((side) => crossings(side, middle));
  });
  const lefts = bands.map(leftmost);
  const rights = bands.map(rightmost);
  const atLevels = (ends: readonly Crossing[], outermost: (a: number, b: number) => number): number[] =>
    levels.map((level, i) => {
      const touching = [ends[i - 1], ends[i]].filter((end) => end !== undefined);
      return touching.map((end) => endAt(end, level)).reduce(outermost);
    });
  return {
    levels,
    lefts: atLevels(lefts, Math.min),
    rights: atLevels(rights, Math.max),
    arcs: { left: lefts.map(({ arc }) => arc), right: rights.map(({ arc }) => arc) },
  };
}

/** An outline with x and y exchanged, so that its top and bottom are its ends along the row. */
export const sideways = (outline: Outline): Outline =>
  outline.map(({ x, y, bulge }): Point & { bulge?: number } =>
    bulge === undefined ? { x: y, y: x } : { x: y, y: x, bulge: -bulge },
  );
