import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
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
  'long-hexagon': { edge: 'slanted side', width: 'long side to long side' },
  tumbler: { edge: 'wide end', longSide: 'wide end', shortSide: 'narrow end' },
  clamshell: { edge: 'wide' },
  'apple-core': {
    edge: 'corner to corner',
    corners: 'corner to corner',
    width: 'across the bulges',
    shortSide: 'across the waist',
  },
};

/** What a bare size of a shape is taken to be, where that is not one of its equal sides. */
const SIZE: Readonly<Partial<Record<ShapeName, string>>> = {
  'long-hexagon': 'the slanted side',
  tumbler: 'the wide end',
  clamshell: 'the width',
  'apple-core': 'corner to corner',
};

/** What a bare size of a shape is taken to be. */
export const sizeWords = (shape: ShapeName): string => {
  const part = CATALOGUE[shape].measures.edge?.of === 'whole';
  return SIZE[shape] ?? (part ? 'the whole hexagon’s side' : 'one side');
};

/** What a measure of a shape is called at the cutting table. */
export const measureWords = (shape: ShapeName, measure: MeasureName): string =>
  OWN[shape]?.[measure] ?? USUAL[measure];
