import type { Outline } from '../shapes/outline.ts';
import type { CutPatch, ShapeName } from '../shapes/shape.ts';
import { endsOf, onceEach } from './ends.ts';
import type { Lay, Row } from './lay.ts';
import { type Lie, lieOf } from './lie.ts';
import { laysAt } from './roomier.ts';
import { evenly } from './spacing.ts';
import { cutAngleBetween, stepBetween } from './step.ts';

/**
 * How a patch is turned in its strip, in degrees from lying on its base. A hexagon goes flat to flat across
 * the strip or point to point, a rectangle either way round; the parts of a hexagon go with any side or
 * their axis along the strip (the other turns of 30° are these in a mirror).
 */
const TURNS: Readonly<Record<ShapeName, readonly number[]>> = {
  hexagon: [0, 90],
  diamond: [0],
  triangle: [0],
  'half-hexagon': [0],
  square: [0],
  rectangle: [0, 90],
  kite: [0, 30, 60, 150],
  third: [0, 30, 60, 90],
  'half-hexagon-flats': [0, 30, 60, 90],
  'long-hexagon': [0, 90],
  diamond45: [0],
  octagon: [0],
  pentagon: [0, 18, 90],
  tumbler: [0],
  clamshell: [0, 90],
  'apple-core': [0, 90],
};

/**
 * Strips cut straight across, patches in each strip head to tail (every second one turned half round) at
 * the tightest step. For hexagons, diamonds, triangles and half-hexagons this is common practice at the
 * cutting table; for kites, thirds and flat-to-flat halves it is computed, no source.
 */
export const stripLays = (patch: CutPatch): Lay[] => laysAt(TURNS[patch.shape], patch, stripLay);

function stripLay(patch: CutPatch, outline: Outline, turn: number): Lay {
  const head = lieOf(outline, turn);
  const { row, cutAngles } = headToTail(head, lieOf(outline, turn + 180));
  return { method: 'strips', patch, rows: [row, row], stack: evenly(head.height, head.height), cutAngles };
}

/** The two ways alternate, starting with the one whose next patch lies closer. */
function headToTail(head: Lie, tail: Lie): { row: Row; cutAngles: number[] } {
  const [heads, tails] = [endsOf(head.outline), endsOf(tail.outline)];
  const [there, back] = [stepBetween(heads, tails), stepBetween(tails, heads)];
  const backFirst = back < there;
  return {
    row: {
      lead: 0,
      patches: { size: head.width, steps: backFirst ? [back, there] : [there, back] },
      lies: backFirst ? [tail, head] : [head, tail],
    },
    cutAngles: cutAnglesOf(cutAngleBetween(heads, tails, there), cutAngleBetween(tails, heads, back)),
  };
}

function cutAnglesOf(there: number | undefined, back: number | undefined): number[] {
  if (there === undefined || back === undefined) return [];
  return onceEach([there, back]);
}
