import type { CutPatch } from '../shapes/shape.ts';
import { endsOf } from './ends.ts';
import { type Lay, oneWayRow } from './lay.ts';
import { lieOf } from './lie.ts';
import { evenly } from './spacing.ts';
import { stepBetween } from './step.ts';

/**
 * Hexagons all turned by 15° stand in a square grid of 1.7932 times their edge and reach 1.9319 times it:
 * less dense than the honeycomb, but more of them fit small squares and narrow strips. At 15° a hexagon
 * reaches equally far along and across, so one step serves both ways. Computed, no source.
 */
export function turnedLays(patch: CutPatch): Lay[] {
  if (patch.shape !== 'hexagon') return [];
  const lie = lieOf(patch.cut.outline, 15);
  const ends = endsOf(lie.outline);
  const step = stepBetween(ends, ends);
  const row = oneWayRow(lie, step);
  return [{ method: 'turned', patch, rows: [row, row], stack: evenly(lie.height, step), cutAngles: [] }];
}
