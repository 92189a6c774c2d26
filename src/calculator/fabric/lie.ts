import { box } from '../shapes/extent.ts';
import type { Outline, Point } from '../shapes/outline.ts';
import { placeOutline } from '../shapes/place.ts';

/** How a patch lies in a row: turned, then moved until its box starts at (0, 0). The row runs along x. Inches. */
export interface Lie {
  /** Counter-clockwise, from lying on its base. */
  readonly turnDegrees: number;
  readonly outline: Outline;
  /** Along the row. */
  readonly width: number;
  /** Across the row. */
  readonly height: number;
  /** Where the patch's own origin has come to. */
  readonly origin: Point;
}

/** An outline turned about its own origin, and its box moved to (0, 0). */
export function lieOf(outline: Outline, turnDegrees: number): Lie {
  const turned = placeOutline(outline, { x: 0, y: 0, turnDegrees });
  const { left, bottom, width, height } = box(turned);
  return {
    turnDegrees,
    outline: turned.map((corner) => ({ ...corner, x: corner.x - left, y: corner.y - bottom })),
    width,
    height,
    origin: { x: -left, y: -bottom },
  };
}
