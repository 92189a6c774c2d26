import { cutPatch } from '../shapes/cut.ts';
import type { Outline } from '../shapes/outline.ts';
import type { CutPatch } from '../shapes/shape.ts';
import type { Lay } from './lay.ts';

/** Lays a patch, turned by so many degrees, with room for an outline that is its own or goes round it. */
export type Laying = (patch: CutPatch, outline: Outline, turnDegrees: number) => Lay;

/**
 * The lay at each turn. Blunting an end makes a row lower, but then head and tail meet where both are
 * broader, and fewer may go in it. So a blunt patch may also lie as if it were pointed, wherever that brings
 * patches closer in some way.
 */
export function laysAt(turns: readonly number[], patch: CutPatch, laying: Laying): Lay[] {
  const lays = turns.map((turn) => laying(patch, patch.cut.outline, turn));
  if (patch.cornerStyle === 'pointed') return lays;
  const pointed = cutPatch(patch.shape, patch.dimensions, patch.seam, 'pointed').cut.outline;
  return lays.flatMap((lay, index) => {
    const roomier = laying(patch, pointed, turns[index]!);
    return isSomewhereCloser(roomier, lay) ? [lay, roomier] : [lay];
  });
}

function isSomewhereCloser(one: Lay, other: Lay): boolean {
  const spacings = spacingsOf(other);
  return spacingsOf(one).some((length, index) => length < spacings[index]! - 1e-9);
}

function spacingsOf({ rows, stack }: Lay): number[] {
  const [first, second] = rows;
  const { steps } = first.patches;
  return [steps[0], steps[0] + steps[1], second.lead, stack.steps[0], stack.steps[0] + stack.steps[1]];
}
