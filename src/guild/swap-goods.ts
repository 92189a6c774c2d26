import { yieldFrom } from '../calculator/fabric/yield.ts';
import { CATALOGUE } from '../calculator/shapes/catalogue.ts';
import { cutPatch, dimensionsFrom } from '../calculator/shapes/cut.ts';
import type { CutPatch, ShapeName } from '../calculator/shapes/shape.ts';
import { PIECES } from '../measure/cloth.ts';
import { INCHES } from '../measure/length.ts';
import { decimal } from '../measure/ruler.ts';
import { type Speech, speech } from '../measure/speech.ts';

/*
 * What is swapped, a piece of one kind. Squares, strips and other pieces of cloth are measured as cut; patches
 * by their finished side, as everywhere, and their area is what is cut for them.
 */

export type Good =
  | { readonly is: 'cloth'; readonly width: number; readonly length: number }
  /** Cut across the whole width of the cloth. */
  | { readonly is: 'strip'; readonly width: number }
  /** Off the bolt, so long. */
  | { readonly is: 'yardage'; readonly length: number }
  | { readonly is: 'patch'; readonly shape: ShapeName; readonly edge: number };

/**
 * Usable width of cloth that a strip or a yard is reckoned at, inches, and the seam of patches: the same for all
 * members, so that a swap is fair whatever each has set for herself (common practice, no source).
 */
export const SWAP_WIDTH = 42;
export const SWAP_SEAM = 1 / 4;

/** The shapes that one length tells the size of. */
export const SWAP_SHAPES: readonly ShapeName[] = (Object.keys(CATALOGUE) as ShapeName[]).filter(
  (name) => !['square', 'rectangle', 'long-hexagon', 'tumbler'].includes(name),
);

/**
 * A name that alike pieces share, and from which the good is read back.
 *
 * @example
 * goodKey({ is: 'cloth', width: 18, length: 21 }) // "cloth 18 21"
 * goodKey({ is: 'patch', shape: 'hexagon', edge: 1 }) // "patch hexagon 1"
 */
export function goodKey(good: Good): string {
  switch (good.is) {
    case 'cloth':
      // Turned, it is the same piece.
      return `cloth ${[good.width, good.length]
        .sort((a, b) => a - b)
        .map(size)
        .join(' ')}`;
    case 'strip':
      return `strip ${size(good.width)}`;
    case 'yardage':
      return `yardage ${size(good.length)}`;
    case 'patch':
      return `patch ${good.shape} ${size(good.edge)}`;
  }
}

/** Sizes that differ by less than a thousandth are one: 25 mm is not an inch, 25.4 is. */
const size = (inches: number): string => String(Number(inches.toFixed(3)));

/**
 * The good that a key names.
 *
 * @example
 * goodOf('strip 2.5') // {"is":"strip","width":2.5}
 */
export function goodOf(key: string): Good {
  const [is, first = '', second = ''] = key.split(' ');
  if (is === 'strip') return { is, width: Number(first) };
  if (is === 'yardage') return { is, length: Number(first) };
  if (is === 'patch') return { is, shape: first as ShapeName, edge: Number(second) };
  return { is: 'cloth', width: Number(first), length: Number(second) };
}

/**
 * The area of one piece, square inches: what fairness goes by.
 *
 * @example
 * goodArea({ is: 'cloth', width: 18, length: 21 }) // 378
 * goodArea({ is: 'strip', width: 2.5 }) // 105
 * goodArea({ is: 'patch', shape: 'hexagon', edge: 1 }) // 4.3146
 */
export function goodArea(good: Good): number {
  switch (good.is) {
    case 'cloth':
      return good.width * good.length;
    case 'strip':
      return good.width * SWAP_WIDTH;
    case 'yardage':
      return good.length * SWAP_WIDTH;
    case 'patch':
      return patchOf(good.shape, good.edge)?.cut.area ?? 0;
  }
}

/** The patch of a shape by its finished side; null where that side is too small for the shape. */
export function patchOf(shape: ShapeName, edge: number): CutPatch | null {
  const stated = {
    measure: 'edge',
    given: 'finished',
    value: edge,
    seam: SWAP_SEAM,
    cornerStyle: 'pointed',
  } as const;
  const dimensions = dimensionsFrom(shape, stated);
  return dimensions.ok ? cutPatch(shape, dimensions.value, SWAP_SEAM, 'pointed') : null;
}

/**
 * How many patches one piece makes, at the best way the calculator knows. A patch that is cut already makes
 * itself and no other.
 *
 * @example
 * makes({ is: 'cloth', width: 18, length: 21 }, 'hexagon', 1) // 75
 * makes({ is: 'patch', shape: 'hexagon', edge: 1 }, 'hexagon', 1) // 1
 * makes({ is: 'patch', shape: 'hexagon', edge: 1 }, 'diamond', 1) // 0
 */
export function makes(good: Good, shape: ShapeName, edge: number): number {
  if (good.is === 'patch') return goodKey(good) === goodKey({ is: 'patch', shape, edge }) ? 1 : 0;
  const patch = patchOf(shape, edge);
  if (!patch) return 0;
  const width = good.is === 'cloth' ? good.width : SWAP_WIDTH;
  const length = good.is === 'strip' ? good.width : good.length;
  return yieldFrom(patch, { width, length }).best;
}

/**
 * What a number of them are called, in a reader's units.
 *
 * @example
 * goodWords({ is: 'cloth', width: 18, length: 21 }, 6) // "fat quarters"
 * goodWords({ is: 'patch', shape: 'hexagon', edge: 1 }, 1) // "1 in hexagon"
 * goodWords({ is: 'yardage', length: 18 }, 2) // "half yards"
 * goodWords({ is: 'yardage', length: 54 }, 1) // "1 1/2 yd"
 */
export function goodWords(good: Good, count: number, say: Speech = speech('ruler')): string {
  const s = count === 1 ? '' : 's';
  switch (good.is) {
    case 'cloth':
      return `${clothName(good, say)}${s}`;
    case 'strip':
      return `${say.plain(good.width)} strip${s}`;
    case 'yardage':
      return yardageName(good.length, count, say);
    case 'patch': {
      const { title, titles } = CATALOGUE[good.shape];
      return `${say.plain(good.edge)} ${count === 1 ? title : titles}`;
    }
  }
}

function clothName(good: { readonly width: number; readonly length: number }, say: Speech): string {
  const key = goodKey({ is: 'cloth', ...good });
  const known = PIECES.find(
    ({ kind, width, length }) =>
      kind === 'piece' && width !== null && goodKey({ is: 'cloth', width, length }) === key,
  );
  if (known) return known.title;
  const [short, long] = [good.width, good.length].sort((a, b) => a - b) as [number, number];
  return short === long ? `${say.plain(short)} square` : `${say.size(short, long)} piece`;
}

const YARDS: Readonly<Record<number, readonly [one: string, more: string]>> = {
  36: ['yard', 'yards'],
  18: ['half yard', 'half yards'],
  9: ['quarter yard', 'quarter yards'],
};

/** An eighth of a yard: what cloth is bought by. */
const EIGHTH = 4.5;

/** Quarters of a metre are told as they are, other lengths to a tenth. */
const metresWords = (metres: number): string => {
  const inQuarters = Math.abs(metres * 4 - Math.round(metres * 4)) < 1e-3;
  return `${decimal(metres, inQuarters ? 2 : 1)} m`;
};

/** By the yard where it was cut so; a length off the bolt of another guild's measure in inches. */
function yardageName(inches: number, count: number, { reading, purchase, side }: Speech): string {
  const named = reading === 'metric' ? undefined : YARDS[inches];
  if (named) return named[count === 1 ? 0 : 1];
  const cutByYard = reading === 'metric' || inches % EIGHTH === 0;
  const metres = metresWords(inches / INCHES.m);
  const byYard = reading === 'metric' ? metres : purchase(inches / INCHES.yd, inches / INCHES.m);
  const long = cutByYard ? byYard : side(inches);
  return `${long}${count === 1 ? '' : ' lengths'}`;
}

/** Words that say nothing of colour or print. */
const IDLE = new Set('a an and of in the with some any one from for or to fabric cloth print'.split(' '));

/**
 * The words that tell colour and print, alike for one and for many.
 *
 * @example
 * tellingWords('of the Florals, blue') // ["floral","blue"]
 */
export function tellingWords(text: string): string[] {
  const words = text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  return [...new Set(words.map(single).filter((word) => !IDLE.has(word)))];
}

const single = (word: string): string =>
  word.length > 3 ? word.replace(/(?<=[^aeiou])ies$/, 'y').replace(/(?<=[^s])s$/, '') : word;
