import { CATALOGUE, shapeNames } from '../src/calculator/shapes/catalogue.ts';
import type { CornerStyle, ShapeName } from '../src/calculator/shapes/shape.ts';
import type { Option, Values } from '../src/chat/option.ts';
import { bare, otherwise, usually } from '../src/chat/option.ts';
import { choice, LONGEST, length, SHORTEST, writeLength, writeSize } from '../src/chat/option-kinds.ts';
import { takeLength } from '../src/measure/length.ts';
import { ok, wrong } from '../src/measure/result.ts';
import { takeSize } from '../src/measure/size.ts';
import { CORNERS, FLATS, followed, measured } from './measured.ts';
import { dimensionOptions } from './patch-dimensions.ts';

/** Other words for a shape, beside its name and the plural. */
const SPOKEN: Readonly<Partial<Record<ShapeName, readonly string[]>>> = {
  hexagon: ['hex', 'hexes', 'hexie', 'hexy', 'hexies', 'six-sided'],
  diamond: ['60° diamond', '60 degree diamond', '60 diamond', 'lozenge', 'rhombus'],
  triangle: ['equilateral triangle', '60° triangle', '60 degree triangle'],
  'half-hexagon': ['half hex', 'half hexie', 'halves', 'half hexagons point to point'],
  'half-hexagon-flats': ['half hexagon flat to flat', 'half hex flats', 'half hexagons flat to flat'],
  kite: ['sixth', 'sixth of a hexagon'],
  third: ['third of a hexagon'],
  'long-hexagon': ['elongated hexagon', 'stretched hexagon', 'long hex', 'church window', 'long hexie'],
  diamond45: ['45° diamond', '45 degree diamond', '45 diamond', 'eight-point star diamond'],
  octagon: ['eight-sided'],
  pentagon: ['five-sided'],
  clamshell: ['clam shell', 'fish scale', 'scale'],
  'apple-core': ['apple core', 'axe head', 'axe blade'],
};

export const shapeChoices = shapeNames.map((name) => ({
  name,
  title: CATALOGUE[name].title,
  ...(SPOKEN[name] ? { words: SPOKEN[name] } : {}),
}));

export const measureChoices = [
  { name: 'edge', title: 'one side', words: ['side', 'sides', 'per side', 'side length', 'on the side'] },
  {
    name: 'flats',
    title: 'flat to flat',
    words: ['flat', 'flat to flat', 'across the flats', 'across flats', 'side to side'],
  },
  {
    name: 'corners',
    title: 'point to point',
    words: ['point to point', 'corner to corner', 'tip to tip', 'across the points', 'across the corners'],
  },
  { name: 'height', title: 'height', words: ['high', 'tall'] },
  { name: 'width', title: 'width' },
] as const;

/** The size of a patch as given: one length, or two for a rectangle. */
export type PatchSize = { readonly value: number; readonly second?: number };

export const patchSize: Option<PatchSize, false> = {
  kind: 'size',
  summary: 'How large the finished patch is; its side unless measure: says otherwise',
  example: '1 1/2in',
  bounds: '1/8in to 480in; 2x3in for a rectangle',
  shape: { as: 'words', longest: 40 },
  take(text, context) {
    const one = takeLength(text, context.unit);
    const two = one ? null : takeSize(text, context.unit);
    if (!one && (!two || two.value.bed)) return null;
    const values = one ? [one.value] : [two?.value.width ?? 0, two?.value.height ?? 0];
    for (const value of values) {
      const got = writeLength(value);
      if (value < SHORTEST)
        return wrong('too-small', { got, least: writeLength(SHORTEST), most: writeLength(LONGEST) });
      if (value > LONGEST)
        return wrong('too-large', { got, least: writeLength(SHORTEST), most: writeLength(LONGEST) });
    }
    const [value = 0, second] = values;
    return ok({
      value: second === undefined ? { value } : { value, second },
      rest: (one ?? two)?.rest ?? '',
    });
  },
  write: ({ value, second }) => (second === undefined ? writeLength(value) : writeSize(value, second)),
};

const pointToPointLength = length('The size, point to point');

/** `corners:` says how the allowance ends, or gives the size from point to point. */
const cornersOption: Option<CornerStyle | { readonly length: number }, false> = {
  kind: 'corner',
  summary: 'How the allowance ends at a corner; or the size, point to point',
  example: 'blunt',
  bounds: 'pointed, blunt, or a length',
  shape: { as: 'words', longest: 40 },
  take(text, context) {
    const style = /^(pointed|blunt)\b/i.exec(text);
    if (style)
      return ok({ value: style[1]?.toLowerCase() as CornerStyle, rest: text.slice(style[0].length) });
    const taken = pointToPointLength.take(text, context);
    return taken?.ok ? ok({ value: { length: taken.value.value }, rest: taken.value.rest }) : taken;
  },
  write: (value) => (typeof value === 'string' ? value : writeLength(value.length)),
};

/** A word that is bare only in a few safe phrases: "cut" alone says what to do, not what was measured. */
const givenOption = {
  ...bare(
    choice('Whether the size is the finished or the cut patch', [
      { name: 'finished', title: 'finished', words: ['sewn'] },
      { name: 'cut', title: 'cut', words: ['cut size', 'as cut', 'cut at'] },
    ]),
  ),
  bareWhen: /^(?:finished|sewn|cut size|as cut|cut at)\b/i,
};

/** The options by which every command that is about one patch is told which patch. */
export const patchOptions = {
  shape: otherwise(bare(choice('The shape of the patch', shapeChoices)), 'hexagon'),
  size: bare(followed(patchSize, /^[\s-]*wide\b/i)),
  measure: bare(choice('What the size measures', measureChoices)),
  given: givenOption,
  edge: length('The size, along one side'),
  flats: measured(length('The size, flat to flat'), FLATS),
  height: length('The size, base to top; or a tumbler’s height, beside its size'),
  ...dimensionOptions,
  seam: usually(length('Seam allowance', 0, 6, '1/4in'), 'what /me and /guild keep, or 1/4in'),
  corners: measured(cornersOption, CORNERS),
};

export type PatchValues = Values<typeof patchOptions>;
