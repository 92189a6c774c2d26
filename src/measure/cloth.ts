import { INCHES, takeLength, type Unit } from './length.ts';
import type { Taken } from './number.ts';
import { takeSize } from './size.ts';

/** A piece of cloth (or a sheet of paper) as asked for. Lengths in inches; a missing width is the usable width. */
export interface Cloth {
  readonly name: string;
  /** Across, selvage to selvage; `null`: the usable width of cloth on the bolt. */
  readonly width: number | null;
  readonly length: number;
  readonly kind: 'piece' | 'yardage' | 'paper';
}

interface Piece extends Cloth {
  readonly words: RegExp;
  readonly title: string;
}

/**
 * Pieces known by name, at their usable measures in inches. Common practice, no source: a fat quarter is sold
 * as 18 × 22 and gives 18 × 21, a fat eighth 9 × 21. Paper: ISO 216 for A4; letter is 8½ × 11 in.
 */
export const PIECES: readonly Piece[] = [
  piece('fat-quarter', 'fat quarter', /^(?:fat[- ]?(?:q(?:ua|au|u)?rt?ers?|qtrs?)|fqs?)\b/i, 18, 21),
  piece('fat-eighth', 'fat eighth', /^(?:fat[- ]?eighths?|f8s?)\b/i, 9, 21),
  piece('10in-square', '10-inch square', /^10(?: ?in| ?"|[- ]inch)[- ]?squares?\b/i, 10, 10),
  piece(
    '5in-square',
    '5-inch square',
    /^(?:5(?: ?in| ?"|[- ]inch)[- ]?(?:squares?|charms?)|charms?(?:[- ]size)?(?: squares?)?)\b/i,
    5,
    5,
  ),
  {
    ...piece(
      'strip',
      '2½-inch strip',
      /^(?:2[- ]1\/2(?: ?in| ?"|[- ]inch)?[- ]?strips?|2\.5(?: ?in| ?"|[- ]inch)?[- ]?strips?|strips?)\b/i,
      0,
      2.5,
    ),
    width: null,
  },
  { ...piece('letter', 'letter sheet', /^letter(?:[- ]?sheets?|[- ]?paper)?\b/i, 8.5, 11), kind: 'paper' },
  {
    ...piece('a4', 'A4 sheet', /^a4(?:[- ]?sheets?|[- ]?paper)?\b/i, 210 * INCHES.mm, 297 * INCHES.mm),
    kind: 'paper',
  },
];

function piece(name: string, title: string, words: RegExp, width: number, length: number): Piece {
  return { name, title, words, width, length, kind: 'piece' };
}

const YARD = 'y(?:ar)?d\\b(?: of)?';
const METRE = 'met(?:re|er)\\b(?: of)?';

/** The bare words that stand for one yard or metre of cloth, or part of one, when no number comes with them. */
const HALVES: readonly (readonly [RegExp, number])[] = [
  [new RegExp(`^(?:a )?half (?:an? )?${YARD}`, 'i'), 18],
  [new RegExp(`^(?:a )?quarter (?:of an? )?${YARD}`, 'i'), 9],
  [new RegExp(`^three[- ]quarters? (?:of an? )?${YARD}`, 'i'), 27],
  [new RegExp(`^(?:an?|one) ${YARD}`, 'i'), 36],
  [new RegExp(`^(?:a )?half (?:an? )?${METRE}`, 'i'), 500 * INCHES.mm],
  [new RegExp(`^(?:a )?quarter (?:of an? )?${METRE}`, 'i'), 250 * INCHES.mm],
  [new RegExp(`^(?:an?|one) ${METRE}`, 'i'), 1000 * INCHES.mm],
];

/**
 * Reads a cloth piece off the front of a tidied text: a piece by name, width × length, or a length of yardage.
 *
 * @example
 * takeCloth('fat quarter of blue', 'in').value.length // 21
 * takeCloth('1 1/2yd', 'in').value.length // 54
 * takeCloth('18x21in', 'in').value.width // 18
 */
export function takeCloth(text: string, unit: Unit): Taken<Cloth> | null {
  for (const known of PIECES) {
    const found = known.words.exec(text);
    if (found) return { value: known, rest: text.slice(found[0].length) };
  }
  for (const [words, inches] of HALVES) {
    const found = words.exec(text);
    if (found) return { value: yardage(inches), rest: text.slice(found[0].length) };
  }
  const size = takeSize(text, unit);
  if (size && !size.value.bed) {
    const { width, height } = size.value;
    return { value: { name: `${width}x${height}in`, width, length: height, kind: 'piece' }, rest: size.rest };
  }
  const length = takeLength(text, unit);
  return length?.unit ? { value: yardage(length.value), rest: length.rest } : null;
}

const yardage = (inches: number): Cloth => ({
  name: `${inches}in`,
  width: null,
  length: inches,
  kind: 'yardage',
});

/** The words for a piece known by name, or null for one given by its measures. */
export const pieceTitle = (name: string): string | null => PIECES.find((p) => p.name === name)?.title ?? null;
