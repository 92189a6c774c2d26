import { distance } from 'fastest-levenshtein';

/** Signs that may differ between a word as typed and a word as meant, by the length of the longer. */
const LOOSE: readonly (readonly [upTo: number, misses: number])[] = [
  [4, 1],
  [8, 2],
  [Number.POSITIVE_INFINITY, 3],
];

/** The same where the word may well be an ordinary one that was meant as it stands. */
const STRICT: typeof LOOSE = [
  [5, 0],
  [7, 1],
  [Number.POSITIVE_INFINITY, 2],
];

/** Longer than this nothing is a slip of the finger. */
const LONGEST = 40;

/**
 * The known word that a mistyped one is nearest to, or null where none is near enough to be meant. Two signs
 * that changed places count once; blanks and hyphens are alike; the beginning of a word is near to it.
 *
 * @example
 * nearest('hexgon', ['diamond', 'hexagon']) // "hexagon"
 * nearest('fat quater', ['fat-quarter', 'fat-eighth']) // "fat-quarter"
 * nearest('bananas', ['diamond', 'hexagon']) // null
 */
export const nearest = (got: string, known: readonly string[]): string | null => nearestBy(LOOSE, got, known);

/**
 * The first words of a stretch that are near to a known word, and that word: three words, two or one.
 *
 * @example
 * nearestStart('fat quater please', ['fat-quarter']) // {"got":"fat quater","word":"fat-quarter"}
 */
export function nearestStart(
  stretch: string,
  known: readonly string[],
): { readonly got: string; readonly word: string } | null {
  const words = stretch.split(' ');
  for (let size = Math.min(3, words.length); size >= 1; size--) {
    const got = words
      .slice(0, size)
      .join(' ')
      .replace(/[,;.!?]+$/, '');
    const word = nearest(got, known);
    if (word !== null) return { got, word };
  }
  return null;
}

/**
 * The known word that an ordinary word is a slip of: stricter, and the first letter must be right.
 *
 * @example
 * slipOf('dimonds', ['diamonds']) // "diamonds"
 * slipOf('about', ['square', 'strip']) // null
 */
export const slipOf = (got: string, known: readonly string[]): string | null =>
  nearestBy(
    STRICT,
    got,
    known.filter((word) => word[0] === got[0]?.toLowerCase()),
  );

/**
 * Whether a word is one sign away from another that it begins like: one too many, one missing, one wrong, or two
 * that changed places.
 *
 * @example
 * isOneSlip('bakcing', 'backing') // true
 * isOneSlip('building', 'binding') // false
 */
export const isOneSlip = (got: string, meant: string): boolean =>
  got[0]?.toLowerCase() === meant[0] &&
  Math.abs(got.length - meant.length) <= 1 &&
  missesBetween(got.toLowerCase(), meant) === 1;

function nearestBy(allowed: typeof LOOSE, got: string, known: readonly string[]): string | null {
  if (got.length > LONGEST) return null;
  const asked = plain(got);
  let best: { word: string; misses: number } | null = null;
  for (const word of known) {
    const meant = plain(word);
    const limit = most(allowed, Math.max(asked.length, meant.length));
    if (Math.abs(asked.length - meant.length) > limit) continue;
    const misses = missesBetween(asked, meant);
    if (misses <= limit && (!best || misses < best.misses)) best = { word, misses };
  }
  return best?.word ?? (allowed === LOOSE ? begunBy(asked, known) : null);
}

const begunBy = (asked: string, known: readonly string[]): string | null =>
  asked.length < 2 ? null : (known.find((word) => plain(word).startsWith(asked)) ?? null);

const plain = (word: string): string => word.toLowerCase().replaceAll(' ', '-');

const most = (allowed: typeof LOOSE, length: number): number =>
  allowed.find(([upTo]) => length <= upTo)?.[1] ?? 0;

/** Two neighbours that changed places are one slip, not two. */
function missesBetween(asked: string, word: string): number {
  const apart = distance(asked, word);
  return apart === 2 && asked.length === word.length && swapped(asked, word) ? 1 : apart;
}

function swapped(asked: string, word: string): boolean {
  const at = [...asked].findIndex((sign, i) => sign !== word[i]);
  return asked.slice(0, at) + asked[at + 1] + asked[at] + asked.slice(at + 2) === word;
}
