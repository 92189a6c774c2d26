import type { MeasureName, ShapeName } from '../src/calculator/shapes/shape.ts';

const USUAL: Readonly<Record<MeasureName, string>> = {
  edge: 'side',
  flats: 'flat to flat',
  corners: 'point to point',
  height: 'height',
  width: 'width',
  longSide: 'long side',
  shortSide: 'short side',
  leg: 'slanted side',
  longDiagonal: 'long way, tip to tip',
  shortDiagonal: 'short way, tip to tip',
  convexRadius: 'outer curve, radius',
  concaveRadius: 'inner curve, radius',
};

const OWN: Readonly<Partial<Record<ShapeName, Partial<Record<MeasureName, string>>>>> = {
  'half-hexagon-flats': { longSide: 'cut line', shortSide: 'half side', leg: 'whole side' },
  kite: { longSide: 'side from the centre', shortSide: 'half side' },
  third: { longSide: 'side from the centre', shortSide: 'half side', leg: 'whole side' },
  square: { corners: 'corner to corner' },
  rectangle: { edge: 'width' },
};

/** What a measure of a shape is called at the cutting table. */
export const measureWords = (shape: ShapeName, measure: MeasureName): string =>
  OWN[shape]?.[measure] ?? USUAL[measure];
