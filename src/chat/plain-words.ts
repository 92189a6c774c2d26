import { isOneSlip } from './near.ts';
import { plainMeasures } from './plain-measures.ts';
import { inRounds } from './plain-rounds.ts';

const ALL = '(?:all|everyone|everybody|ladies|girls|folks|friends|there|again|bees?)';
const THANKS = '(?:(?:many )?thanks|thank you|thx|tia|ty|cheers)';

/** What is said around a question, and says nothing of it. */
const MANNERS: readonly RegExp[] = [
  new RegExp(`^${THANKS}\\b[^.!?]*[.!]+\\s+(?=\\S)`, 'i'),
  new RegExp(
    `^(?:hi+|hello|hey|hiya|howdy|(?:good )?(?:morning|afternoon|evening))(?:[ ,]+${ALL})*\\s*[,.!:;-]*\\s+(?=\\S)`,
    'i',
  ),
  /^(?:a )?quick (?:q|question)\b[ ,:.!-]*(?=\S)/i,
  /\s*\b(?:please|pls|plz)\b/gi,
  new RegExp(`[\\s,.!;-]+${THANKS}\\b[^.?!\\d]*[.!x:)\\s]*$`, 'i'),
];

/** Short forms and slips of words that tell what is asked, as they are spelled in full. */
const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/\bw\/ ?/gi, 'with '],
  [/(?<!\d ?)\bw (?=[a-z\d])/gi, 'with '],
  [/(\d ?x ?\d+) w (?=\d)/gi, '$1 with '],
  [/\bbtwn\b/gi, 'between'],
  [/\bfat (?:qtr|qrtr|1\/4)(s?)\b/gi, 'fat quarter$1'],
  [/\((?![\d,]+\.\d+\))([^()]*)\)/g, ', $1,'],
  [/ & /g, ' and '],
  [/\b(2 1\/2|2\.5)(?: ?(?:in(?:ch)?|"))?[- ]wide strips?\b/gi, '$1in strips'],
  [/\bstrips?,? (2 1\/2|2\.5)(?: ?(?:in(?:ch)?|"))?[- ]wide(?: ?x ?\d+)?/gi, '$1in strips'],
  [
    /\b((?:half an?|an?|\d[\d /.]*) ?(?:y(?:ar)?ds?|met(?:re|er)s?|m|fat quarters?|fqs?)) each of (\w+) and (\w+)/gi,
    '$1 of $2 and $1 of $3',
  ],
  [
    /\b(?:an? )?(?:uk |us )?fat[- ]?q\w*rs?\b(?: uk| us)?[ ,]+(?:is |are |of |at |about )*(?=(?:1[5-9]|2[0-3])(?: ?in| ?")? ?(?:x|by) ?(?:1[5-9]|2[0-3])\b|[45]\d ?(?:cm )?(?:x|by) ?[456]\d ?cm\b)/gi,
    'pieces of ',
  ],
  [/\bcharm packs? of (\d+)(?: (?:charms?|squares?))?\b/gi, '$1 charms'],
  [/\b(\d+)[- ](rosette|flower) garden\b/gi, 'garden of $1 $2s'],
  [/(?<=\d ?(?:in|inch|") strips?\b.*),? (?:per|from each|in each|to a|to each) strip\b/gi, ''],
  [/\bper (?=(?:y(?:ar)?d|met(?:re|er))\b)/gi, 'from a '],
  [/\bhalf an hour\b/gi, '1/2 hour'],
  [/\bhex(?:i|is|ys|ees?|eis)\b/gi, 'hexies'],
  [/\b(hexagon|hexie|diamond|rosette|flower|star|block|square|quarter|patch)'s\b/gi, '$1s'],
  [/\byrd(s?)\b/gi, 'yard$1'],
  [/\bmtrs?\b/gi, 'metres'],
  [/\bhrs?\b/gi, 'hours'],
  [/\bwks?\b/gi, 'weeks'],
  [/\binchs\b/gi, 'inches'],
  [/\b(fabric|cloth|material|yardage|enough|yards?|metres?|need|buy) 4 (?=\d)/gi, '$1 for '],
  [/\b(\d\/\d) (?:of )?an? (?=(?:y(?:ar)?d|met|inch|in\b|hour))/gi, '$1 '],
];

/** Words that tell what is asked, and must be right for it to be found. */
const TELLING = [
  ...['rosette', 'rosettes', 'flower', 'flowers', 'garden', 'backing', 'binding', 'batting', 'wadding'],
  ...['border', 'borders', 'template', 'templates', 'yardage', 'fabric', 'mattress', 'basting'],
];
const SHORTEST_SLIP = 6;
/** Words of their own, however near to one of those. */
const NO_SLIPS = ['fabrics', 'wedding', 'packing', 'pasting', 'lasting'];

const spelled = (word: string): string =>
  word.length < SHORTEST_SLIP || [...TELLING, ...NO_SLIPS].includes(word.toLowerCase())
    ? word
    : (TELLING.find((meant) => isOneSlip(word, meant)) ?? word);

/**
 * A question without greetings and thanks, its short forms spelled out, and a word that is one slip away from
 * one that tells what is asked put right.
 *
 * @example
 * plainWords('Hi all, how many 1in hexies from a FQ pls? Thanks!') // "how many 1in hexies from a FQ?"
 * plainWords('how much bakcing w/ 108 wide') // "how much backing with 108 wide"
 * plainWords('hello') // "hello"
 */
export function plainWords(text: string, slips: 'mended' | 'as they are' = 'mended'): string {
  const bare = MANNERS.reduce((said, manner) => said.replace(manner, ''), text).trim();
  const spelledOut = SPELLINGS.reduce((said, [short, long]) => said.replace(short, long), bare || text);
  const full = inRounds(plainMeasures(spelledOut));
  return slips === 'mended' ? full.replace(/[a-z]+/gi, spelled) : full;
}
