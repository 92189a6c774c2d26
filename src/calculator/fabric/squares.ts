import { wholeBelow } from '../../measure/result.ts';
import { cutPatch } from '../shapes/cut.ts';
import type { CutPatch } from '../shapes/shape.ts';
import type { Lay, Row } from './lay.ts';
import { type Lie, lieOf } from './lie.ts';
import { evenly } from './spacing.ts';

/**
 * The side of the square that each hexagon for paper piecing is cut from: its corners need only a blunt
 * allowance, so it is the finished point to point and a seam at each end. Common practice, no source.
 *
 * @example
 * paperSquare(1, 0.25) // 2.5
 */
export const paperSquare = (edge: number, seam: number): number => 2 * edge + 2 * seam;

/** Squares for hexagons over papers. A pointed hexagon lies turned in its square where it fits; a blunt one upright. */
export function squareLays(patch: CutPatch): Lay[] {
  if (patch.shape !== 'hexagon') return [];
  const side = paperSquare(patch.dimensions.edge, patch.seam);
  const laid = inSquare(patch, side);
  const lie = centred(laid.lie, side);
  const squares = evenly(side, side);
  const row: Row = { lead: 0, patches: squares, lies: [lie, lie] };
  return [{ method: 'squares', patch: laid.patch, rows: [row, row], stack: squares, cutAngles: [90] }];
}

function inSquare(patch: CutPatch, side: number): { patch: CutPatch; lie: Lie } {
  if (patch.cornerStyle === 'blunt') return { patch, lie: lieOf(patch.cut.outline, 0) };
  // 15° is the turn at which a regular hexagon needs the smallest square.
  const turned = lieOf(patch.cut.outline, 15);
  if (wholeBelow(side / turned.width) >= 1) return { patch, lie: turned };
  const blunt = cutPatch(patch.shape, patch.dimensions, patch.seam, 'blunt');
  return { patch: blunt, lie: lieOf(blunt.cut.outline, 0) };
}

function centred(lie: Lie, side: number): Lie {
  const origin = {
    x: lie.origin.x + (side - lie.width) / 2,
    y: lie.origin.y + (side - lie.height) / 2,
  };
  return { ...lie, origin };
}
