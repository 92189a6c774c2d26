import type { CutPatch } from '../shapes/shape.ts';
import { endsOf } from './ends.ts';
import type { Lay, Row } from './lay.ts';
import { type Lie, lieOf } from './lie.ts';
import { evenly } from './spacing.ts';
import { stepBetween } from './step.ts';

/** The lie in the middle of a square cell, so that cells can be set side by side whichever way it is turned. */
const inCell = (lie: Lie, cell: number): Lie => ({
  ...lie,
  origin: { x: lie.origin.x + (cell - lie.width) / 2, y: lie.origin.y + (cell - lie.height) / 2 },
});

/** From the middle of one lie to the middle of the next beside it, level with it. */
function apart(one: Lie, next: Lie): number {
  const step = stepBetween(endsOf(one.outline), endsOf(next.outline), (one.height - next.height) / 2);
  return step + (next.width - one.width) / 2;
}

/**
 * Apple-cores in a grid, every second one a quarter turned, so that each swelling reaches into a neighbour's
 * hollow. Sewn they fill the plane; cut, the swelling has grown and the hollow has shrunk, and the swelling
 * rests on the hollow's two corners. Computed, no source.
 */
export function coreGrid(patch: CutPatch): Lay[] {
  const [lying, standing] = [lieOf(patch.cut.outline, 0), lieOf(patch.cut.outline, 90)];
  const cell = Math.max(lying.width, lying.height);
  const step = Math.max(apart(lying, standing), apart(standing, lying));
  const lies = [inCell(lying, cell), inCell(standing, cell)] as const;
  const row = (first: Lie, second: Lie): Row => ({
    lead: 0,
    patches: evenly(cell, step),
    lies: [first, second],
  });
  return [
    {
      method: 'nested',
      patch,
      rows: [row(...lies), row(lies[1], lies[0])],
      stack: evenly(cell, step),
      cutAngles: [],
    },
  ];
}
