import { type Box, box as boxOf } from './extent.ts';
import { endsOf, type Frame, outlineOf, tipOf } from './frame.ts';
import type { Outline, Point } from './outline.ts';
import type { Dimensions, Reading } from './shape.ts';
import { arcBetween, middleOf } from './sides.ts';

export const whole: Reading = { of: 'whole' };
export const side = (at: number): Reading => ({ of: 'side', side: at });
export const tips = (corner: number, other: number): Reading => ({ of: 'tips', corner, other });
export const across = (at: number, other: number): Reading => ({ of: 'across', side: at, other });
export const middles = (at: number, other: number): Reading => ({ of: 'middles', side: at, other });
export const radius = (at: number): Reading => ({ of: 'radius', side: at });
export const boxWidth: Reading = { of: 'box', way: 'width' };
export const boxHeight: Reading = { of: 'box', way: 'height' };
export const box = { width: boxWidth, height: boxHeight };

/** A patch being measured: its frame, and the outline and box that were read off it. */
export interface Measured {
  readonly dimensions: Dimensions;
  readonly frame: Frame;
  readonly outline: Outline;
  readonly box: Box;
}

export const measured = (dimensions: Dimensions, frame: Frame): Measured => {
  const outline = outlineOf(frame);
  return { dimensions, frame, outline, box: boxOf(outline) };
};

const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

const middleOfSide = (frame: Frame, at: number): Point => middleOf(...endsOf(frame, at), frame.bulges[at]!);

const betweenSides = (frame: Frame, at: number, other: number): number => {
  const [start, end] = endsOf(frame, at);
  const [point] = endsOf(frame, other);
  const cross = (end.x - start.x) * (point.y - start.y) - (end.y - start.y) * (point.x - start.x);
  return Math.abs(cross) / distance(start, end);
};

/** Reads one measure, in inches. */
export const read = (reading: Reading, { dimensions, frame, box: held }: Measured): number => {
  switch (reading.of) {
    case 'whole':
      return dimensions.edge;
    case 'side':
      return distance(...endsOf(frame, reading.side));
    case 'tips':
      return distance(tipOf(frame, reading.corner), tipOf(frame, reading.other));
    case 'across':
      return betweenSides(frame, reading.side, reading.other);
    case 'middles':
      return distance(middleOfSide(frame, reading.side), middleOfSide(frame, reading.other));
    case 'radius':
      return arcBetween(...endsOf(frame, reading.side), frame.bulges[reading.side]!).radius;
    case 'box':
      return held[reading.way];
  }
};
