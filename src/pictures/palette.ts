import { type ClothColour, colourNamed } from './cloth-colours.ts';
import { INK } from './ink.ts';
import { element } from './svg.ts';

export { INK };
/** Lines and letters that may stand back. */
export const SOFT_INK = '#525A6B';
/** The page. */
export const PAPER = '#FFFDF8';
/** Cloth that is not used. */
export const WASTE = '#ECE7DC';
/** The line that is sewn, everywhere. */
export const SEWN = '#A63A17';

/** How one role is drawn: its own colour, and a texture that tells it apart where colours are not seen. */
export interface Look {
  readonly fill: string;
  /** The ink of the texture, and of a letter on it. */
  readonly mark: string;
  readonly texture: Texture;
}

export type Texture = 'plain' | 'dots' | 'slant' | 'lines' | 'backslant' | 'lattice';

/**
 * The colours of the roles, chosen so that any two stay apart for readers who do not see red, green or blue
 * as most do; a test simulates that. Their own names are ours: honey, night, rust, mist, leaf, heather.
 */
const COLOURS: readonly { readonly fill: string; readonly mark: string }[] = [
  { fill: '#EFAE38', mark: INK },
  { fill: '#12285F', mark: '#FFFFFF' },
  { fill: '#D6E8F8', mark: INK },
  { fill: '#A63A17', mark: '#FFFFFF' },
  { fill: '#4DBB8A', mark: INK },
  { fill: '#8D72A0', mark: '#FFFFFF' },
];

const TEXTURES: readonly Texture[] = ['plain', 'dots', 'slant', 'lines', 'backslant', 'lattice'];

/**
 * The look of the n-th role, counted from 0. No two of the first 36 are alike in both colour and texture.
 *
 * @example
 * lookOf(0).texture // "plain"
 * lookOf(7).fill === lookOf(1).fill // true
 * lookOf(7).texture === lookOf(1).texture // false
 */
export function lookOf(n: number): Look {
  const colour = COLOURS[n % COLOURS.length]!;
  const turn = Math.floor(n / COLOURS.length);
  return { ...colour, texture: TEXTURES[(n + turn) % TEXTURES.length]! };
}

/**
 * The looks of several roles, by the cloth that each is of (empty where none is named): a cloth whose name says
 * a colour has that colour, the others the palette's, as far from those as there are. No two are alike while a
 * colour has textures left, and the first six differ in texture alone.
 *
 * @example
 * looksFor(['', '', ''])[2].fill === lookOf(2).fill // true
 * looksFor(['red', 'dark red', 'red']).map(({ texture }) => texture) // ["plain","dots","slant"]
 */
export function looksFor(cloths: readonly string[]): Look[] {
  const named = cloths.map(colourNamed);
  if (named.every((colour) => colour === null)) return cloths.map((_, i) => lookOf(i));
  const others = apartFrom(named);
  const taken = new Set<string>();
  let next = 0;
  return named.map((colour, i) => {
    const { fill, mark } = colour ?? others[next++ % others.length]!;
    const texture = textureFrom(i, (one) => !taken.has(`${fill} ${one}`));
    taken.add(`${fill} ${texture}`);
    return { fill, mark, texture };
  });
}

/** The palette without what comes near a colour that was named; all of it where that leaves nothing. */
function apartFrom(named: readonly (ClothColour | null)[]): typeof COLOURS {
  const near = new Set(named.map((colour) => colour?.like));
  const apart = COLOURS.filter((_, i) => !near.has(i));
  return apart.length > 0 ? apart : COLOURS;
}

/** The first texture that is free, from the n-th on. */
function textureFrom(n: number, free: (texture: Texture) => boolean): Texture {
  const { texture } = lookOf(n);
  const from = TEXTURES.indexOf(texture);
  const inTurn = TEXTURES.map((_, i) => TEXTURES[(from + i) % TEXTURES.length]!);
  return inTurn.find(free) ?? texture;
}

/** How many looks there are before one comes again. */
export const LOOKS = COLOURS.length * TEXTURES.length;

/** Each texture on a tile of 20 pixels; lines run on over the tiles' edges. */
const TILE = 20;

const stroked = (d: string, mark: string): string =>
  element('path', { d, stroke: mark, 'stroke-width': 2.4, fill: 'none', 'stroke-opacity': 0.6 });

const DRAWN: Readonly<Record<Texture, (mark: string) => string>> = {
  plain: () => '',
  dots: (mark) =>
    [
      [5, 5],
      [15, 15],
    ]
      .map(([cx, cy]) => element('circle', { cx, cy, r: 2.6, fill: mark, 'fill-opacity': 0.7 }))
      .join(''),
  slant: (mark) => stroked('M-2 22L22 -2M-2 2L2 -2M18 22L22 18', mark),
  lines: (mark) => stroked('M0 5H20M0 15H20', mark),
  backslant: (mark) => stroked('M-2 -2L22 22M18 -2L22 2M-2 18L2 22', mark),
  lattice: (mark) => stroked('M0 5H20M0 15H20M5 0V20M15 0V20', mark),
};

/** The tile of a look, to be put among a picture's definitions; smaller where the patches are small. */
export function tile(id: string, { fill, mark, texture }: Look, scale = 1): string {
  const ground = element('rect', { width: TILE, height: TILE, fill });
  return element(
    'pattern',
    {
      id,
      width: TILE,
      height: TILE,
      patternUnits: 'userSpaceOnUse',
      patternTransform: scale === 1 ? undefined : `scale(${scale.toFixed(2)})`,
    },
    ground + DRAWN[texture](mark),
  );
}
