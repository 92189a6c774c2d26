import { type Colour, colourIn } from '../measure/colour-words.ts';
import { INK } from './ink.ts';

/** A cloth's colour as it is drawn where its name says which colour it is. */
export interface ClothColour {
  readonly fill: string;
  /** The ink of the texture, and of a letter on it. */
  readonly mark: string;
  /** Which colour of the palette comes near it, so that the two are not drawn side by side. */
  readonly like: number | null;
}

const light = (fill: string, like: number | null = null): ClothColour => ({ fill, mark: INK, like });
const dark = (fill: string, like: number | null = null): ClothColour => ({ fill, mark: '#FFFFFF', like });

/**
 * The shades were searched for, each within what its name allows, so that any two stay apart for readers who do
 * not see red, green or blue as most do; a test simulates that.
 */
const SHADES: Readonly<Record<Colour, ClothColour>> = {
  red: dark('#AD0A09', 3),
  maroon: dark('#7A2243', 3),
  pink: light('#FF7FB2'),
  orange: dark('#E65400', 3),
  yellow: light('#FFD519', 0),
  gold: light('#D9A20B', 0),
  olive: dark('#676539'),
  green: light('#59A649', 4),
  lime: light('#BAEB79', 4),
  teal: dark('#006272'),
  turquoise: light('#41D9D6', 4),
  blue: dark('#1646D9', 1),
  sky: light('#A1CEFF', 2),
  navy: dark('#042057', 1),
  purple: dark('#79279E', 5),
  lavender: light('#B196F2', 5),
  brown: dark('#542B19'),
  tan: light('#B79A7D'),
  cream: light('#F8E7C1', 2),
  white: light('#FFFFFF', 2),
  grey: dark('#7D8184'),
  black: dark('#151212', 1),
};

/**
 * How a cloth is drawn whose name says a colour; null where it says none.
 *
 * @example
 * colourNamed('Sky Blue').fill // "#A1CEFF"
 * colourNamed('wine bottles') // null
 */
export function colourNamed(cloth: string): ClothColour | null {
  const colour = colourIn(cloth);
  return colour && SHADES[colour];
}
