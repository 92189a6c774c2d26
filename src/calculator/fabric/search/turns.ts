import type { Outline, Point } from '../../shapes/outline.ts';
import { smallestSquare } from '../../shapes/turned-square.ts';
import type { Touches } from './row-kinds.ts';

/** Between the turns at which something changes, every whole degree is tried too. */
const FAN = 1;

/** Turns closer than this, in degrees, are one. */
const SAME_TURN = 1e-7;

/** The turns of a patch that are worth trying, in degrees from 0 up to a half turn. */
export interface Turns {
  /** A side along or across the row, and the turn of the smallest square. */
  readonly upright: readonly number[];
  readonly all: readonly number[];
}

/**
 * The turns of a convex outline that are worth trying in rows along an edge of the cloth (past a half turn
 * heads and tails change places): a side along or across the row, every turn at which neighbours in a row
 * touch at other sides or corners, the turn of the smallest square, and a fan of whole degrees between them.
 * They depend on the patch alone, never on the cloth, so that a larger piece of cloth is searched for all
 * that a smaller one is.
 */
export function turnsOf(outline: Outline, { alike, opposed }: Touches): Turns {
  const square = smallestSquare(outline).degrees;
  const upright = [...sidesOf(outline).map(levelling), square].flatMap((turn) => [turn, turn + 90]);
  const touching = [...alike, ...opposed].map(levelling);
  const fan = Array.from({ length: 180 / FAN }, (_, i) => i * FAN);
  return {
    upright: onceEach(upright.map(wholeDegrees)),
    all: onceEach([...upright, ...touching, ...fan].map(wholeDegrees)),
  };
}

const sidesOf = (outline: Outline): Point[] =>
  outline.map(({ x, y }, i) => {
    const next = outline[i + 1] ?? outline[0]!;
    return { x: next.x - x, y: next.y - y };
  });

/** The turn that brings a direction level. */
const levelling = ({ x, y }: Point): number => (-Math.atan2(y, x) * 180) / Math.PI;

/** Between 0 and 180, and whole where it is so but for rounding. */
function wholeDegrees(turn: number): number {
  const within = ((turn % 180) + 180) % 180;
  const whole = Math.round(within);
  return Math.abs(within - whole) < SAME_TURN ? whole % 180 : within;
}

function onceEach(turns: readonly number[]): number[] {
  const sorted = turns.toSorted((a, b) => a - b);
  return sorted.filter((turn, i) => i === 0 || turn - sorted[i - 1]! > SAME_TURN);
}
