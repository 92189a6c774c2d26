import type { CutPatch } from '../shapes/shape.ts';
import type { Lay } from './lay.ts';
import { nestedLays } from './nested.ts';
import { squareLays } from './squares.ts';
import { stripLays } from './strips.ts';
import { turnedLays } from './turned.ts';

/** Every lay that the calculator knows for a patch, fewest cuts first, so that of equal plans the easier one leads. */
export const laysOf = (patch: CutPatch): Lay[] => [
  ...stripLays(patch),
  ...squareLays(patch),
  ...nestedLays(patch),
  ...turnedLays(patch),
];
