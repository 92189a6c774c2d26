import { wholeAbove } from '../../measure/result.ts';

/** How the corners of a border are made: strips that meet square, or that meet at 45°. */
export type BorderJoin = 'butted' | 'mitred';

export interface BorderAsk {
  /** The top inside the border, finished, inches. */
  readonly width: number;
  readonly height: number;
  /** The border's finished width. */
  readonly border: number;
  readonly seam: number;
  readonly usable: number;
  readonly join: BorderJoin;
}

/** A border of four strips. Inches. */
export interface Border {
  /** How wide the strips are cut. */
  readonly cutStrip: number;
  /** Each of the two at the sides. */
  readonly sides: number;
  /** Each of the two at top and bottom. */
  readonly topBottom: number;
  /** All four together. */
  readonly total: number;
  /** Strips across the cloth, joined straight. */
  readonly strips: number;
  /** Cloth along its length. */
  readonly length: number;
  readonly newWidth: number;
  readonly newHeight: number;
}

/** More than its finished length that a mitred strip is cut, inches. Common practice, no source. */
const MITRE_EXTRA = 4;

/**
 * The strips of a border. Butted: the sides first, as long as the top and two seams, then top and bottom over
 * them. Mitred: each as long as the new edge, and 4 in. Strips shorter than needed are joined straight, each
 * join taking two seams. Derived; the mitre's 4 in is common practice, no source.
 *
 * @example
 * border({ width: 50, height: 60, border: 3, seam: 0.25, usable: 40, join: 'butted' }) // {"cutStrip":3.5,"sides":60.5,"topBottom":56.5,"total":234,"strips":6,"length":21,"newWidth":56,"newHeight":66}
 * border({ width: 50, height: 60, border: 3, seam: 0.25, usable: 40, join: 'mitred' }).sides // 70
 */
export function border({ width, height, border: wide, seam, usable, join }: BorderAsk): Border {
  const newWidth = width + 2 * wide;
  const newHeight = height + 2 * wide;
  const cutStrip = wide + 2 * seam;
  const [sides, topBottom] =
    join === 'butted'
      ? [height + 2 * seam, newWidth + 2 * seam]
      : [newHeight + MITRE_EXTRA, newWidth + MITRE_EXTRA];
  const total = 2 * (sides + topBottom);
  const strips = Math.max(1, wholeAbove((total - 2 * seam) / (usable - 2 * seam)));
  return { cutStrip, sides, topBottom, total, strips, length: strips * cutStrip, newWidth, newHeight };
}
