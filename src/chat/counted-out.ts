/** So many squares of 5 in are in a pack: common practice, no source. */
const SQUARES_IN_A_PACK = 42;

const EACH_OF =
  /\b(\d{1,4}) (?:((?:[a-z]+ )?(?:hex\w*|diamonds|triangles|kites|patches|pieces)) (?:in|of|from)|of|in|for) each of (\d{1,2}) (?=(?:colou?rs|fabrics|prints)\b)/gi;
const PACKS = /\b(?:(\d{1,3})|an?) charm packs?\b(?! of \d)(?!.*\b(?:per|each|every|an?) (?:charm|square))/gi;

/**
 * A question, its numbers in figures, with what is told by the lot counted out.
 *
 * @example
 * countedOut('19 hexies in each of 12 colours') // "228 hexies in 12 colours"
 * countedOut('12 of each of 3 fabrics') // "36 patches in 3 fabrics"
 * countedOut('2 charm packs, how many') // "84 charms, how many"
 */
export const countedOut = (text: string): string =>
  text
    .replace(
      EACH_OF,
      (_, n: string, what: string | undefined, of: string) =>
        `${Number(n) * Number(of)} ${what ?? 'patches'} in ${of} `,
    )
    .replace(PACKS, (_, n = '1') => `${Number(n) * SQUARES_IN_A_PACK} charms`);
