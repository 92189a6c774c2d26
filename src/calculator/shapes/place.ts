import { box } from './extent.ts';
import type { Outline } from './outline.ts';

/** Where a patch lies: turned counter-clockwise about its own (0, 0), then moved by x and y. Inches. */
export interface Placement {
  readonly x: number;
  readonly y: number;
  readonly turnDegrees: number;
}

/** Inches. Lines shared by two patches, or by a patch and the edge of the cloth, are met within this. */
export const SHARED_LINE = 1e-7;

/** Sine and cosine of whole quarter turns come out a hair wrong from Math, which would tilt a straight edge. */
const QUARTER_TURNS: readonly (readonly [cos: number, sin: number])[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];

const cosAndSin = (degrees: number): readonly [cos: number, sin: number] => {
  const exact = QUARTER_TURNS[(((degrees % 360) + 360) % 360) / 90];
  const radians = (degrees * Math.PI) / 180;
  return exact ?? [Math.cos(radians), Math.sin(radians)];
};

/**
 * An outline turned and then moved.
 *
 * @example
 * placeOutline([{ x: 1, y: 0 }], { x: 5, y: 5, turnDegrees: 90 }) // [{"x": 5, "y": 6}]
 */
export const placeOutline = (outline: Outline, { x, y, turnDegrees }: Placement): Outline => {
  const [cos, sin] = cosAndSin(turnDegrees);
  return outline.map((corner) => ({
    ...corner,
    x: corner.x * cos - corner.y * sin + x,
    y: corner.x * sin + corner.y * cos + y,
  }));
};

/**
 * Whether an outline lies on a piece of cloth whose corner is at (0, 0), width along x and length along y.
 * Lying on the cloth's edge is within.
 *
 * @example
 * within([{ x: 0, y: 0 }, { x: 5, y: 0 }, { x: 0, y: 5 }], 5, 5) // true
 * within([{ x: 0, y: 0 }, { x: 5, y: 0, bulge: 0.6 }, { x: 0, y: 5 }], 5, 5) // false
 */
export const within = (outline: Outline, width: number, length: number): boolean => {
  const { left, bottom, width: wide, height: high } = box(outline);
  const rightEdge = width + SHARED_LINE;
  const farEdge = length + SHARED_LINE;
  return (
    left >= -SHARED_LINE && bottom >= -SHARED_LINE && left + wide <= rightEdge && bottom + high <= farEdge
  );
};
