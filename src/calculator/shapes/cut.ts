import { CATALOGUE, measuresOf } from './catalogue.ts';
import { box } from './extent.ts';
import { FINISHED, faceOf } from './face.ts';
import type { CornerStyle, CutPatch, Dimensions, ShapeName } from './shape.ts';
import { smallestSquare, type TurnedSquare } from './turned-square.ts';

/**
 * A patch, finished and cut, from its finished dimensions. Inches throughout.
 *
 * The allowance moves every side outward by the seam. Pointed corners run out to where the moved sides meet.
 * Blunt ones are cut off square, the seam away from the finished corner, which is all that cloth folded over
 * paper needs (common practice, no source). Measures of a blunt patch are read off its blunt outline.
 *
 * @example
 * cutPatch('hexagon', { edge: 1.5 }, 0.25, 'pointed').cut.measures.flats // 3.0981
 * cutPatch('hexagon', { edge: 1 }, 0.25, 'pointed').cut.area // 4.3146
 * cutPatch('hexagon', { edge: 1 }, 0.25, 'blunt').cut.measures.corners // 2.5
 * cutPatch('diamond', { edge: 1 }, 0.25, 'pointed').cut.measures.longDiagonal // 2.7321
 * cutPatch('rectangle', { edge: 2, side: 3 }, 0.25, 'pointed').cut.measures.height // 3.5
 */
export const cutPatch = (
  name: ShapeName,
  dimensions: Dimensions,
  seam: number,
  cornerStyle: CornerStyle,
): CutPatch => {
  const shape = CATALOGUE[name];
  return {
    shape: name,
    dimensions,
    seam,
    cornerStyle,
    finished: faceOf(shape, dimensions, FINISHED, measuresOf(name, 'finished')),
    cut: faceOf(shape, dimensions, { seam, cornerStyle }, measuresOf(name, 'cut')),
  };
};

/**
 * The side of the square of cloth that one patch is cut from, the patch lying on its base. Inches.
 *
 * @example
 * startSquare(cutPatch('hexagon', { edge: 1 }, 0.25, 'pointed')) // 2.5774
 * startSquare(cutPatch('hexagon', { edge: 1 }, 0.25, 'blunt')) // 2.5
 */
export const startSquare = ({ cut }: CutPatch): number => {
  const { width, height } = box(cut.outline);
  return Math.max(width, height);
};

/**
 * The smallest square of cloth that one patch can be cut from, and how far the patch is turned in it.
 *
 * @example
 * startSquareTurned(cutPatch('hexagon', { edge: 1 }, 0.25, 'pointed')).side // 2.4895
 * startSquareTurned(cutPatch('hexagon', { edge: 1 }, 0.25, 'pointed')).degrees // 15
 */
export const startSquareTurned = ({ cut }: CutPatch): TurnedSquare => smallestSquare(cut.outline);

export { dimensionsFrom, type StatedSize } from './uncut.ts';
export type { TurnedSquare };
