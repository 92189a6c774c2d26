import { box } from '../../shapes/extent.ts';
import type { Outline } from '../../shapes/outline.ts';
import { placeOutline } from '../../shapes/place.ts';
import type { Pattern, Stand } from './pattern.ts';
import { halfRound, type Roof, roofOf, stepOf } from './touch.ts';

/** Heads and tails, as the two ways are called in which a patch of one turn may lie. */
export type Way = 0 | 1;

/** A patch at one turn: its box, and how heads and tails stand beside and above each other. */
export interface Turned extends Pick<Pattern, 'turnDegrees' | 'width' | 'height' | 'origins'> {
  /** Of a box's corner to another's: `steps[tail after head …]`, `roofs[lower][upper]`. */
  readonly steps: readonly [readonly [number, number], readonly [number, number]];
  readonly roofs: readonly [readonly [Roof, Roof], readonly [Roof, Roof]];
}

/** The two touches that all others are turned from: of a head to a head and of a tail to a head. */
export interface Touches {
  readonly alike: Outline;
  readonly opposed: Outline;
}

export function turnedTo(outline: Outline, { alike, opposed }: Touches, turnDegrees: number): Turned {
  const turn = { x: 0, y: 0, turnDegrees };
  const { left, bottom, width, height } = box(placeOutline(outline, turn));
  // Told from box corner to box corner. A tail's box lies opposite to the head's.
  const heads = placeOutline(alike, turn);
  const tailOnHead = placeOutline(opposed, {
    x: -(2 * left + width),
    y: -(2 * bottom + height),
    turnDegrees,
  });
  const headOnTail = halfRound(tailOnHead);
  const same = roofOf(heads);
  const step = stepOf(heads);
  return {
    turnDegrees,
    width,
    height,
    origins: [
      { x: -left, y: -bottom },
      { x: left + width, y: bottom + height },
    ],
    steps: [
      [step, stepOf(tailOnHead)],
      [stepOf(headOnTail), step],
    ],
    roofs: [
      [same, roofOf(tailOnHead)],
      [roofOf(headOnTail), same],
    ],
  };
}

/** One kind of row: what stands in it, and after how long it repeats. */
export interface RowKind {
  readonly stands: readonly Stand[];
  readonly period: number;
}

const HEAD: Stand = { at: 0, tail: false };
const TAIL: Stand = { at: 0, tail: true };

/** All heads, or all tails, as close as they go. */
export const allOneWay = ({ steps }: Turned, tail = false): RowKind => ({
  stands: [tail ? TAIL : HEAD],
  period: steps[0][0],
});

/** Top and tail: each second one turned half round, as close as they go. */
export function topAndTail({ steps }: Turned): RowKind {
  const [there, back] = [steps[0][1], steps[1][0]];
  const stands = there <= back ? [HEAD, { at: there, tail: true }] : [TAIL, { at: back, tail: false }];
  return { stands, period: there + back };
}
