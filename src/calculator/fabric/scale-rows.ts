import type { CutPatch } from '../shapes/shape.ts';
import { sideways } from './curved-ends.ts';
import { rowStep } from './double-rows.ts';
import { endsOf } from './ends.ts';
import { type Lay, oneWayRow } from './lay.ts';
import { lieOf } from './lie.ts';
import { evenly } from './spacing.ts';
import { stepBetween } from './step.ts';

/** From the closest that shells stand in a row to the closest that rows stand, in so many equal steps. */
const WIDENINGS = [0, 1 / 3, 2 / 3, 1];

/**
 * The step along a row at which clamshells take the least cloth. Sewn, they lie like scales: each row half a
 * shell along and half a shell up. Cut, the outer curve has grown and the hollow has shrunk, so a shell
 * rests on the two below by its cusp and by its two rims. Both touch at once where the step s makes
 * s = r + √(2(r + 2a)² − r²), r being the finished radius and a the allowance; rows then stand s / 2 apart.
 * Computed, no source.
 *
 * @example
 * scaleStep(1.5, 0.25) // 3.8979
 * scaleStep(1.5, 0) // 3
 */
export const scaleStep = (radius: number, allowance: number): number =>
  radius + Math.sqrt(2 * (radius + 2 * allowance) ** 2 - radius ** 2);

/**
 * Clamshells like scales. Shells that touch in their row keep the next row away, shells further apart let it
 * in; which of them gives more depends on the cloth, so a few are laid.
 */
export function scaleRows(patch: CutPatch): Lay[] {
  const lie = lieOf(patch.cut.outline, 0);
  const ends = endsOf(lie.outline);
  const upright = endsOf(sideways(lie.outline));
  const closest = stepBetween(ends, ends);
  const roomiest = scaleStep(patch.dimensions.edge / 2, patch.seam);
  return WIDENINGS.map((part) => {
    const step = closest + part * (roomiest - closest);
    const half = rowStep(upright, upright, step / 2, step);
    // Rows in line with each other must clear each other too, whatever lies between them.
    const up = Math.max(half, rowStep(upright, upright, 0, step) / 2);
    return {
      method: 'nested',
      patch,
      rows: [oneWayRow(lie, step), oneWayRow(lie, step, step / 2)],
      stack: evenly(lie.height, up),
      cutAngles: [],
    };
  });
}
