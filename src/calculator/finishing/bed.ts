/** A mattress by the name of its bed, in inches. */
export interface Mattress {
  readonly name: string;
  readonly width: number;
  readonly length: number;
  /** Made for a baby: no quilt belongs in it. */
  readonly infant?: true;
}

/**
 * Mattresses as sold in the United States (an encyclopaedia and trade tables; makers differ by an inch, and
 * some lists have king 78 wide). The crib is the inside of a full-size one, 28 × 52⅜ (16 CFR 1219).
 *
 * @example
 * MATTRESSES.find(({ name }) => name === 'queen') // {"name":"queen","width":60,"length":80}
 */
export const MATTRESSES: readonly Mattress[] = [
  { name: 'crib', width: 28, length: 52.375, infant: true },
  { name: 'twin', width: 39, length: 75 },
  { name: 'twin-long', width: 39, length: 80 },
  { name: 'full', width: 54, length: 75 },
  { name: 'queen', width: 60, length: 80 },
  { name: 'king', width: 76, length: 80 },
  { name: 'western-king', width: 72, length: 84 },
];

/** The widest and longest that a full-size crib's inside may be, 28⅝ × 53 (16 CFR 1219). */
const CRIB = { width: 28.625, length: 53 };

/**
 * Whether a mattress of this size goes into a full-size crib, so that the caution on infants belongs with it.
 *
 * @example
 * isCribSize(52, 28) // true
 * isCribSize(39, 75) // false
 */
export const isCribSize = (width: number, length: number): boolean =>
  Math.min(width, length) <= CRIB.width && Math.max(width, length) <= CRIB.length;

export interface BedAsk {
  readonly width: number;
  readonly length: number;
  /** How far the quilt hangs down at each side and at the foot. */
  readonly drop: number;
  /** What is tucked under and laid over the pillows, on the length. */
  readonly tuck: number;
}

/**
 * The quilt for a mattress: a drop at both sides and at the foot, and a tuck at the head. Inches. A pillow tuck
 * is 10 to 15 in, common practice, no source.
 *
 * @example
 * quiltForBed({ width: 60, length: 80, drop: 12, tuck: 0 }) // {"width":84,"length":92}
 */
export const quiltForBed = ({ width, length, drop, tuck }: BedAsk): { width: number; length: number } => ({
  width: width + 2 * drop,
  length: length + drop + tuck,
});
