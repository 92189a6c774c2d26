/** Patches round one: a ring of them is a round. */
const OF_ROUNDS = /\b(?:rosettes?|flowers?|hex\w*|pieces?|patches|papers?)\b/i;
const NO_RINGS = /\bwedding\b|\bswap|\b(?:rosettes|flowers|stars) in \w+ rings?\b/i;
const ORDINALS = [
  'first',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
];
const NTH = new RegExp(`\\b(?:the )?(?:(${ORDINALS.join('|')})|(\\d+)(?:st|nd|rd|th)) round\\b`, 'gi');

/**
 * Rings of a rosette as rounds, and each by its number.
 *
 * @example
 * inRounds('a rosette of 3 rings') // "a rosette of 3 rounds"
 * inRounds('how many in the fifth ring of a flower') // "how many in round 5 of a flower"
 * inRounds('a double wedding ring quilt in hexagons') // "a double wedding ring quilt in hexagons"
 */
export function inRounds(text: string): string {
  if (!OF_ROUNDS.test(text) || NO_RINGS.test(text)) return text;
  const rounds = text
    .replace(/\bring(s?)\b/gi, 'round$1')
    .replace(NTH, (_, nth: string | undefined, n: string) =>
      nth ? `round ${ORDINALS.indexOf(nth.toLowerCase()) + 1}` : `round ${n}`,
    );
  return rounds.replace(/\bin round \d+\b(?!.*\b(?:rosette|flower))/i, '$& of a rosette');
}
