import { INK } from './ink.ts';

/** A cloth's colour as it is drawn where its name says which colour it is. */
export interface ClothColour {
  readonly fill: string;
  /** The ink of the texture, and of a letter on it. */
  readonly mark: string;
  /** Which colour of the palette comes near it, so that the two are not drawn side by side. */
  readonly like: number | null;
}

const WHITE = '#FFFFFF';

const light = (fill: string, like: number | null = null): ClothColour => ({ fill, mark: INK, like });
const dark = (fill: string, like: number | null = null): ClothColour => ({ fill, mark: WHITE, like });

/**
 * The colours by their names. The shades were searched for, each within what its name allows, so that any two
 * stay apart for readers who do not see red, green or blue as most do; a test simulates that.
 */
const COLOURS: readonly (readonly [names: string, colour: ClothColour])[] = [
  ['red, crimson, scarlet, ruby', dark('#AD0A09', 3)],
  ['maroon, burgundy, wine, claret, dark red, deep red', dark('#7A2243', 3)],
  ['pink, rose, blush', light('#FF7FB2')],
  ['orange, rust, terracotta', dark('#E65400', 3)],
  ['yellow, lemon', light('#FFD519', 0)],
  ['gold, golden, mustard, ochre, amber', light('#D9A20B', 0)],
  ['olive, khaki, moss, sage', dark('#676539')],
  ['green, emerald', light('#59A649', 4)],
  ['lime, light green, pale green', light('#BAEB79', 4)],
  ['teal, peacock', dark('#006272')],
  ['turquoise, aqua, cyan, mint', light('#41D9D6', 4)],
  ['blue', dark('#1646D9', 1)],
  ['sky, sky blue, light blue, pale blue, baby blue, powder blue', light('#A1CEFF', 2)],
  ['navy, navy blue, dark blue, indigo, midnight', dark('#042057', 1)],
  ['purple, violet, plum, aubergine', dark('#79279E', 5)],
  ['lavender, lilac, mauve, light purple, pale purple', light('#B196F2', 5)],
  ['brown, chocolate', dark('#542B19')],
  ['tan, beige, fawn, taupe, sand, light brown', light('#B79A7D')],
  ['cream, ivory, ecru, natural, off white', light('#F8E7C1', 2)],
  ['white, snow', light('#FFFFFF', 2)],
  ['grey, gray, silver', dark('#7D8184')],
  ['black, charcoal', dark('#151212', 1)],
];

const BY_NAME: ReadonlyMap<string, ClothColour> = new Map(
  COLOURS.flatMap(([names, colour]) => names.split(', ').map((name) => [name, colour] as const)),
);

/** The first name of each: said anywhere in a cloth's name it is the colour, where another might be its print. */
const PLAIN_NAMES: ReadonlySet<string> = new Set(COLOURS.map(([names]) => names.split(',')[0]!));

/**
 * The colour that a cloth's name says: by its last words, or by the only plain colour in it; null where it says
 * none, or several.
 *
 * @example
 * colourNamed('Sky Blue').fill // "#A1CEFF"
 * colourNamed('my red florals').fill === colourNamed('red').fill // true
 * colourNamed('wine bottles') // null
 * colourNamed('red and white stripes') // null
 */
export function colourNamed(cloth: string): ClothColour | null {
  const words = cloth.toLowerCase().match(/\p{L}+/gu) ?? [];
  const last = BY_NAME.get(words.slice(-2).join(' ')) ?? BY_NAME.get(words.at(-1) ?? '');
  if (last) return last;
  const within = new Set(words.filter((word) => PLAIN_NAMES.has(word)).map((word) => BY_NAME.get(word)!));
  return within.size === 1 ? [...within][0]! : null;
}
