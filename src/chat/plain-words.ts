import { isOneSlip } from './near.ts';

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
  [/(?<![\d.])\.(?=\d)/g, '0.'],
  [/(?<![\d,.])(\d{1,3}),(\d{1,2})(?=\s?(?:cm|mm|m|met\w+)\b)/gi, '$1.$2'],
  [/(\d\/\d+)(?:ths?|rds?|nds?)\b/gi, '$1'],
  [/\bfat 8ths?\b/gi, 'fat eighths'],
  [/(\d) ?(?:pcs?|pces)\b/gi, '$1 pieces'],
  [/(\d) ?wof\b/gi, '$1 wof'],
  [/(\d) ?spi\b/gi, '$1 stitches per inch'],
  [
    /\b(\d+) ?(?:inch|in|") and (\d+) ?(?:inch|in|")[- ]squares\b(?=.*\b(?:hex|diamond|triang|kite|pentag))/gi,
    '$1x$1in and $2x$2in pieces',
  ],
  [/\b(2 1\/2|2\.5)(?: ?(?:in(?:ch)?|"))?[- ]wide strips?\b/gi, '$1in strips'],
  [/\bstrips?,? (2 1\/2|2\.5)(?: ?(?:in(?:ch)?|"))?[- ]wide(?: ?x ?\d+)?/gi, '$1in strips'],
  [
    /\b((?:half an?|an?|\d[\d /.]*) ?(?:y(?:ar)?ds?|met(?:re|er)s?|m|fat quarters?|fqs?)) each of (\w+) and (\w+)/gi,
    '$1 of $2 and $1 of $3',
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
  [/\b(5|10)(?: ?in(?:ch)?| ?")?[- ]?sqs?\b/gi, '$1in squares'],
  [/\b(5|10) ?(?:in(?:ch)?|")[- ]squares? x ?(\d+)\b/gi, '$2 $1in squares'],
  [/\b5 ?(?:in(?:ch)?|")[- ]charm(s?)(?: squares?)?\b/gi, '5in square$1'],
  // A cushion is square; other things are, where that is said.
  [
    /(?<![\d/.]|\d ?x ?|\bby )\b(\d+) ?(in(?:ch)?|"|cm)(?: ?sq(?:uare)?)?[- ](cushions?|pillows?)\b(?: covers?)?/gi,
    '$1x$1$2 $3',
  ],
  [
    /\b(cushion|pillow)(?: cover| front)?,? (?:of )?(\d{2}) ?(in(?:ch(?:es)?)?|"|cm)(?: ?sq(?:uared?)?)?(?! ?(?:x|by|[a-z]*hex))(?=\W|$)/gi,
    '$1 $2x$2$3',
  ],
  [
    /(?<![\d/.]|\d ?x ?|\bby )\b(\d+) ?(in(?:ch)?|"|cm)[- ]sq(?:uare)? (quilts?|table\s?cloths?|toppers?|throws?|mats?|hangings?|tops?)\b/gi,
    '$1x$1$2 $3',
  ],
  [
    /\b(quilt|table\s?cloth|topper|throw|mat|hanging|top)(?: is| of|,)? (\d+) ?(in(?:ch(?:es)?)?|"|cm) sq(?:uared?)?\b/gi,
    '$1 $2x$2$3',
  ],
  [/\b(?:1|an?|one|per|each) sq(?:uare)?\.? m(?:et(?:re|er))?\b/gi, '100x100cm'],
  [/\b(?:1|an?|one|per|each) sq(?:uare)?\.? y(?:ar)?d\b/gi, '36x36in'],
  [/\b(?:1|an?|one|per|each) sq(?:uare)?\.? f(?:oo)?t\b/gi, '12x12in'],
  [/\b(fabric|cloth|material|yardage|enough|yards?|metres?|need|buy) 4 (?=\d)/gi, '$1 for '],
  [/\b(\d\/\d) (?:of )?an? (?=(?:y(?:ar)?d|met|inch|in\b|hour))/gi, '$1 '],
];

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

/** Rings of a rosette as rounds, and each by its number: "the fifth ring" is round 5. */
function inRounds(text: string): string {
  if (!OF_ROUNDS.test(text) || NO_RINGS.test(text)) return text;
  const rounds = text
    .replace(/\bring(s?)\b/gi, 'round$1')
    .replace(NTH, (_, nth: string | undefined, n: string) =>
      nth ? `round ${ORDINALS.indexOf(nth.toLowerCase()) + 1}` : `round ${n}`,
    );
  return rounds.replace(/\bin round \d+\b(?!.*\b(?:rosette|flower))/i, '$& of a rosette');
}

/** Words that tell what is asked, and must be right for it to be found. */
const TELLING = [
  ...['rosette', 'rosettes', 'flower', 'flowers', 'garden', 'backing', 'binding', 'batting', 'wadding'],
  ...['border', 'template', 'templates', 'yardage', 'fabric', 'mattress', 'basting'],
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
  const full = inRounds(SPELLINGS.reduce((said, [short, long]) => said.replace(short, long), bare || text));
  return slips === 'mended' ? full.replace(/[a-z]+/gi, spelled) : full;
}
