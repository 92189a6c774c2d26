import { endsOf, type Frame, tipOf } from '../calculator/shapes/frame.ts';
import type { Point } from '../calculator/shapes/outline.ts';
import type { Measured } from '../calculator/shapes/readings.ts';
import type { Reading } from '../calculator/shapes/shape.ts';
import { arcBetween, middleOf } from '../calculator/shapes/sides.ts';

/** Where on a patch a measure is taken, in its own inches (y upward). */
export interface Taken {
  readonly from: Point;
  readonly to: Point;
  /** Drawn beside the patch, in this direction from it; null where the line lies on the patch. */
  readonly beside: Point | null;
}

const DOWN: Point = { x: 0, y: -1 };
const RIGHT: Point = { x: 1, y: 0 };

/** A hair: tips that are level to this, in inches, are level. */
const LEVEL = 1e-6;

/** Lines that run level or upright are drawn outside the patch, where nothing crosses them. */
function straight(from: Point, to: Point): Taken {
  if (Math.abs(from.y - to.y) < LEVEL) return { from, to, beside: DOWN };
  if (Math.abs(from.x - to.x) < LEVEL) return { from, to, beside: RIGHT };
  return { from, to, beside: null };
}

/** Outward from a side: to the right of its direction, as outlines run counter-clockwise. */
function outward(from: Point, to: Point): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: (to.y - from.y) / length, y: (from.x - to.x) / length };
}

const furthest = ([a, b]: readonly [Point, Point], way: Point): Point =>
  (b.x - a.x) * way.x + (b.y - a.y) * way.y > 0 ? b : a;

const middleOfSide = (frame: Frame, at: number): Point => middleOf(...endsOf(frame, at), frame.bulges[at]!);

/** From the middle of one of two parallel sides square across to the other. */
function squareAcross(frame: Frame, side: number, other: number): Taken {
  const [start, end] = endsOf(frame, side);
  const out = outward(start, end);
  const [far] = endsOf(frame, other);
  const from = middleOfSide(frame, side);
  const apart = (far.x - from.x) * out.x + (far.y - from.y) * out.y;
  const taken = straight(from, { x: from.x + out.x * apart, y: from.y + out.y * apart });
  if (taken.beside === null) return taken;
  // Beside the patch it may be led out from any point of the two sides: from the one nearest to it.
  const { beside } = taken;
  return { from: furthest([start, end], beside), to: furthest(endsOf(frame, other), beside), beside };
}

/** Where a measure is taken; undefined for one that is not on the patch itself. */
export function takenAt(reading: Reading, { frame, box }: Measured): Taken | undefined {
  switch (reading.of) {
    case 'whole':
      return undefined;
    case 'side': {
      const [from, to] = endsOf(frame, reading.side);
      return { from, to, beside: outward(from, to) };
    }
    case 'tips':
      return straight(tipOf(frame, reading.corner), tipOf(frame, reading.other));
    case 'across':
      return squareAcross(frame, reading.side, reading.other);
    case 'middles':
      return straight(middleOfSide(frame, reading.side), middleOfSide(frame, reading.other));
    case 'radius': {
      const [start, end] = endsOf(frame, reading.side);
      const bulge = frame.bulges[reading.side]!;
      return { from: arcBetween(start, end, bulge).centre, to: middleOf(start, end, bulge), beside: null };
    }
    case 'box': {
      const { left, bottom, width, height } = box;
      return reading.way === 'width'
        ? straight({ x: left, y: bottom }, { x: left + width, y: bottom })
        : straight({ x: left + width, y: bottom }, { x: left + width, y: bottom + height });
    }
  }
}
