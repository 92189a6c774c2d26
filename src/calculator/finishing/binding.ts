import { wholeAbove } from '../../measure/result.ts';

/** More than the way round, for the corners and the last join, inches. Common practice, no source: 10 to 12. */
export const BINDING_EXTRA = 10;

/** Strips cut across the cloth and joined on the slant. Lengths in inches. */
export interface StraightBinding {
  readonly strips: number;
  /** Cloth along its length. */
  readonly length: number;
  /** The joined strips, end to end. */
  readonly joined: number;
}

/**
 * Strips of a width for a binding of a length. A slanted join takes the strip's own width of each next strip,
 * so n strips of cloth U wide give nU − (n − 1)b, and n = ⌈(P − b)/(U − b)⌉. (Dividing P by U is one strip
 * short about as often as not.) Derived.
 *
 * @example
 * straightBinding(274, 2.5, 40) // {"strips":8,"length":20,"joined":302.5}
 * straightBinding(330, 2.5, 40).strips // 9
 */
export function straightBinding(needed: number, strip: number, usable: number): StraightBinding {
  const strips = Math.max(1, wholeAbove((needed - strip) / (usable - strip)));
  return { strips, length: strips * strip, joined: strips * usable - (strips - 1) * strip };
}

/** A square of cloth cut into one long bias strip, or several of them where one would be wider than the cloth. */
export interface BiasBinding {
  readonly squares: number;
  /** The side of each square, its two construction seams reckoned in. */
  readonly square: number;
  /** The same if seams took nothing: what area alone would say. */
  readonly plain: number;
  /** What to cut: the next whole inch. */
  readonly cut: number;
  /** Cloth along its length. */
  readonly length: number;
}

/** The seams by which a square becomes a tube, inches. */
const TUBE_SEAM = 1 / 4;

/** More squares than this for one binding is another kind of work. */
const MOST_SQUARES = 1000;

/**
 * The square that gives a bias strip of a length and width. Area is kept, so its side would be √(length × width)
 * (open worked examples agree: a 20 in square gives 200 in of 2 in strip); its two seams of e cost 4eQ, so
 * Q = 2e + √(4e² + length × width). Squares that would be wider than the cloth are made smaller and more, each
 * joined to the next on the slant. Undefined where the strip is too wide for the cloth to give any.
 *
 * @example
 * biasBinding(274, 2.25, 42).square // 25.3345
 * biasBinding(274, 2.25, 42).plain // 24.8294
 * biasBinding(274, 2.25, 42).cut // 26
 */
export function biasBinding(needed: number, strip: number, usable: number): BiasBinding | undefined {
  for (let squares = 1; squares <= MOST_SQUARES; squares++) {
    const each = (needed + (squares - 1) * strip) / squares;
    const square = sideFor(each, strip, TUBE_SEAM);
    const cut = wholeAbove(square);
    const side = cut <= usable ? cut : square;
    if (side > usable) continue;
    const abreast = Math.floor(usable / side);
    const plain = sideFor(each, strip, 0);
    return { squares, square, plain, cut: side, length: Math.ceil(squares / abreast) * side };
  }
  return undefined;
}

/**
 * The side of the square for one strip.
 *
 * @example
 * sideFor(200, 2, 0) // 20
 */
export const sideFor = (length: number, strip: number, seam: number): number =>
  2 * seam + Math.sqrt(4 * seam * seam + length * strip);
