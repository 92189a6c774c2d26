import type { Corner, Outline } from './outline.ts';

/** The shapes that the calculator knows, by the name that is typed. */
export type ShapeName =
  | 'hexagon'
  | 'diamond'
  | 'triangle'
  | 'half-hexagon'
  | 'half-hexagon-flats'
  | 'kite'
  | 'third'
  | 'square'
  | 'rectangle'
  | 'long-hexagon'
  | 'diamond45'
  | 'octagon'
  | 'pentagon'
  | 'tumbler'
  | 'clamshell'
  | 'apple-core';

/** What can be measured on a patch. Which of them a shape has is the catalogue's to say. */
export type MeasureName =
  | 'edge'
  | 'flats'
  | 'corners'
  | 'height'
  | 'width'
  | 'longSide'
  | 'shortSide'
  | 'leg'
  | 'longDiagonal'
  | 'shortDiagonal'
  | 'convexRadius'
  | 'concaveRadius';

/**
 * The finished dimensions that fix one patch of a shape, in inches. Every shape has `edge` (for the parts of a
 * hexagon: the whole hexagon's edge; for a rectangle: its width; a long hexagon's slanted side, a tumbler's
 * wide end, a clamshell's width, an apple-core's corner to corner). The others belong to a few shapes, and
 * where they are left out the shape takes its usual proportions.
 */
export interface Dimensions {
  readonly edge: number;
  /** A rectangle's height, a long hexagon's long side. */
  readonly side?: number;
  /** Degrees: at the point of a long hexagon; the arcs of an apple-core. */
  readonly angle?: number;
  /** A tumbler's narrow end. */
  readonly narrow?: number;
  /** A tumbler's height. */
  readonly height?: number;
}

/** A dimension beside the edge. */
export type FurtherDimension = Exclude<keyof Dimensions, 'edge'>;

export type Measures = Readonly<Partial<Record<MeasureName, number>>>;

/** How the allowance ends at a corner: where the moved side lines meet, or cut off square at the allowance. */
export type CornerStyle = 'pointed' | 'blunt';

/** What can become of an outline's corner; the rounded one serves shapes with arcs, which no mitre fits. */
export type CornerAllowance = CornerStyle | 'rounded';

/** How one measure is read off an outline. Sides and corners are numbered from the base, counter-clockwise. */
export type Reading =
  /** The finished edge of the whole hexagon that a part is cut from; nothing on the part itself. */
  | { readonly of: 'whole' }
  /** The length of a side, straight from end to end. */
  | { readonly of: 'side'; readonly side: number }
  /** From the tip of a corner to the tip of another. */
  | { readonly of: 'tips'; readonly corner: number; readonly other: number }
  /** Between two parallel sides. */
  | { readonly of: 'across'; readonly side: number; readonly other: number }
  /** Between the middles of two sides. */
  | { readonly of: 'middles'; readonly side: number; readonly other: number }
  /** The radius of an arc side. */
  | { readonly of: 'radius'; readonly side: number }
  /** The box of the patch as it lies on its base. */
  | { readonly of: 'box'; readonly way: 'width' | 'height' };

/**
 * How a shape is cut from strips with a ruler and a rotary cutter. The measures are those of the cut patch
 * with pointed corners; blunt corners are trimmed afterwards.
 */
export interface StripRule {
  /** How high the strip is. */
  readonly height: MeasureName;
  /** Degrees between the strip's edge and the cross cuts. Two angles are cut by turns. */
  readonly angles: Angles;
  /** How far apart the cross cuts are. */
  readonly step: MeasureName;
  /** Whether the step is taken square to the cuts or along the strip's edge (both edges by turns). */
  readonly stepTaken: 'square' | 'along';
  /** Degrees to the strip's edge of the cuts that then trim each piece to shape; none when it is finished. */
  readonly trim: Angles;
}

/** Degrees, the same for every patch of the shape or by its dimensions. */
export type Angles = readonly number[] | ((dimensions: Dimensions) => readonly number[]);

/** One shape of the catalogue. */
export interface Shape {
  readonly name: ShapeName;
  readonly title: string;
  readonly titles: string;
  /** The finished outline lying on its base: side 0 runs from (0, 0) along x. */
  readonly outline: (dimensions: Dimensions) => Outline;
  readonly measures: Readonly<Partial<Record<MeasureName, Reading>>>;
  /** What a bare size may mean, likeliest first, no two of them alike. */
  readonly sizes: readonly MeasureName[];
  /** What a cutter is told, in order, no two of them alike. */
  readonly told: readonly MeasureName[];
  /** The measure that the second size of `2x3in` is, where the shape has two. */
  readonly second?: MeasureName;
  /** The further dimensions that may be given, and the measure that each is; an angle is none. */
  readonly also?: Readonly<Partial<Record<FurtherDimension, MeasureName | null>>>;
  /** What is wrong with dimensions that do not make this shape, as a problem's code. */
  readonly not?: (dimensions: Dimensions) => string | null;
  /** Set where the shape's corners are always rounded. */
  readonly corners?: 'rounded';
  readonly strip: StripRule;
}

/** One patch, finished and cut: everything the cutter, the layout of cloth and the picture read. */
export interface CutPatch {
  readonly shape: ShapeName;
  readonly dimensions: Dimensions;
  readonly seam: number;
  readonly cornerStyle: CornerStyle;
  readonly finished: PatchFace;
  readonly cut: PatchFace;
}

export interface PatchFace {
  readonly outline: Outline;
  readonly measures: Measures;
  /** Square inches. */
  readonly area: number;
  /** Inches round the outline. */
  readonly perimeter: number;
}

export type { Corner, Outline };
