import {
  A_COUNT,
  APART,
  amount,
  BED,
  infant,
  isMetric,
  NUMBER,
  PATCHES,
  SIZE,
  UNIT,
} from './question-patterns.ts';

/** Words of a question that say an option without naming it. They are taken out, and the option put in front. */
export interface Turn {
  /** The commands, with their form, of which the words are an option. */
  readonly of: RegExp;
  readonly words: RegExp;
  /** The option as it is typed, from what was found in the question; none where the words are only in the way. */
  readonly says?: (found: readonly string[], question: string) => string;
  /** Somewhere in the question this must be there too. */
  readonly where?: RegExp;
  readonly unless?: RegExp;
}

const A_SIDE = /\b(\d+) (?:diamonds? )?(?:per|an?|to an?|to each|on each|on an?|along each|each) side\b/i;
const MEASURE =
  '(?:(?:flat|side) to (?:flat|side)|(?:point|corner|tip) to (?:point|corner|tip)|across the (?:flats|points|corners))\\b';
const ROSETTE = /\b(?:rosettes?|flowers?)\b/i;
const STAR = /\bstars?\b/i;
const BLOCKS = /\bblocks?\b/i;
const GARDEN = /^(?:count garden|plan make|kit)$/;
const SEWN = /^(?:time|yardage)$/;
const BOUGHT = /^(?:yield|yardage|finish backing|finish binding|finish border|plan make|kit)$/;

/** How a print repeats: one measure, or two. */
const REPEAT = `${NUMBER}${UNIT}?(?: ?(?:x|by) ?${NUMBER}${UNIT}?)?`;

/** The width of cloth: a bare number among metric ones is in centimetres. */
const widthOf = (number = '', unit = '', question = ''): string =>
  `width:${number}${unit || (isMetric(question) ? 'cm' : '')}`;

/** A rosette by the number of its pieces. */
const PIECED = /\b(7|19|37|61|91)[- ](?:piece|patch)(?: (?:rosette|flower)s?)?\b/i;
const ROUNDS_OF: Readonly<Record<string, number>> = { 7: 1, 19: 2, 37: 3, 61: 4, 91: 5 };

/** Rows of so many, where rosettes or stars are counted: no size of a quilt. */
const IN_ROWS = /\b(\d{1,3}) ?(?:x|by) ?(\d{1,3})(?= (?:rosettes|flowers|stars|stagger|garden|rows)\b)/i;

/** What is said of rosettes set together, in the words of the option that takes all of it. */
function gardenOf([, rows, each, many]: readonly string[], question: string): string {
  const rounds = /\b(\d+)[- ]rounds?\b/i.exec(question)?.[1] ?? '1';
  const path = /\b(?:no|without(?: an?)?) paths?\b/i.test(question)
    ? ', path none'
    : /\b(?:double|own|separate|two) paths?\b/i.test(question)
      ? ', own path'
      : '';
  return `garden:${rows ? `${rows}x${each}` : many} of ${rounds} rounds${path},`;
}

/** From the top. Where two would take the same words, the first has them. */
export const TURNS: readonly Turn[] = [
  // "60 degree diamonds" is a shape, not sixty of something.
  { of: /./, words: /\b60[- ]?(?:degrees?\b|deg\b|°)[- ]?(?=diamond|triangle)/i },
  { of: /^count stars?$|^(?:time|yardage)$/, words: /\b(?:6|six)[- ]?point(?:ed)?\b/i },
  { of: /^count /, words: /\bround (?:and|&|n) round\b/i },
  { of: /^count ball$/, words: /\b(?:12|twelve|dozen)\b(?! ?(?:in|cm|mm|"))/i },
  {
    of: /^count ball$/,
    words: new RegExp(`\\b(${NUMBER}${UNIT}?) (?:across|wide|in diameter|big)\\b`, 'i'),
    says: ([, size]) => `across:${size}`,
  },

  // A row that was measured.
  { of: /^check$/, words: new RegExp(`\\bshould(?: have)? (?:be|been|measured?) ${NUMBER}${UNIT}?`, 'i') },
  { of: /^check$/, words: /\brows? of (\d+)\b/i, says: ([, n]) => `row:${n}` },
  { of: /^check$/, words: new RegExp(`= ?(${NUMBER}${UNIT}?)`, 'i'), says: ([, size]) => `measured:${size}` },
  {
    of: /^check$/,
    words: new RegExp(A_COUNT, 'i'),
    unless: /\b\d+(?: [a-z]+){0,2} in (?:a|the|one|each|my) row\b/i,
    says: ([, n, other]) => `row:${n ?? other}`,
  },
  {
    of: /^check$/,
    words: new RegExp(`(?<=${PATCHES})[ ,:=-]+(${NUMBER}${UNIT}?)(?=[ ,.!?]|$)`, 'i'),
    unless: /\b(?:out|measures?|measured|measuring|is|are|was|were)\b[a-z ]*\d/i,
    says: ([, size]) => `measured:${size}`,
  },

  {
    of: SEWN,
    words: /\b(\d+) rows of (\d+) (?:rosettes|flowers)\b|\b(\d+) (?:\d+[- ]rounds? )?(?:rosettes|flowers)\b/i,
    says: gardenOf,
  },
  {
    of: SEWN,
    words: /\b\d+[- ]rounds?\b(?: each)?/i,
    where: /\b\d+ (?:\d+[- ]rounds? )?(?:rosettes|flowers)\b/i,
  },
  { of: SEWN, words: PIECED, says: ([, n = '']) => `rosette:${ROUNDS_OF[n]}` },
  { of: /^(?:kit|plan make)$/, words: PIECED, says: ([, n = '']) => `layout:rosette rounds:${ROUNDS_OF[n]}` },
  { of: /^count rosette$/, words: PIECED, says: ([, n = '']) => `rounds:${ROUNDS_OF[n]}` },
  {
    of: SEWN,
    words: /\b(\d+)[- ]rounds?\b/i,
    where: ROSETTE,
    says: ([, n]) => `rosette:${n}`,
  },
  {
    of: SEWN,
    words: /\b(?:rosette|flower)\b(?! garden)/i,
    unless: /\brounds?\b/i,
    says: () => 'rosette:1',
  },
  { of: /^count rosette$/, words: /\b(?:1|an?) (?=rosette|flower)/i },
  { of: SEWN, words: A_SIDE, where: STAR, says: ([, n]) => `star:${n}` },
  { of: /^count (?:star|blocks)$/, words: A_SIDE, says: ([, n]) => `side:${n}` },
  { of: /^plan make$|^kit$/, words: A_SIDE, says: ([, n]) => `side:${n}` },
  {
    of: /^count (?:star|blocks)$/,
    words: /\b(\d+) (?:diamonds )?(?:to|on|along) (?:a|the|each) (?:side|point)\b/i,
    says: ([, n]) => `side:${n}`,
  },
  { of: SEWN, words: /\b(\d+) (?:tumbling |baby )?blocks?\b/i, says: ([, n]) => `blocks:${n}` },
  {
    of: SEWN,
    words: /\b(\d+) of (?:them|those|these)\b/i,
    where: BLOCKS,
    says: ([, n]) => `blocks:${n}`,
  },
  { of: /^count blocks$/, words: /\b(\d+) of (?:them|those|these)\b/i, says: ([, n]) => `blocks:${n}` },
  { of: /^yardage$/, words: /\b(\d+) of (?:them|those|these)\b/i, says: ([, n]) => `pieces:${n}` },

  { of: GARDEN, words: IN_ROWS, says: ([, rows, each]) => `rosettes:${rows}x${each}` },
  { of: GARDEN, words: /\b\d+ (?=rosettes|flowers)/i, where: IN_ROWS },
  { of: /^count stars$/, words: IN_ROWS, says: ([, rows, each]) => `stars:${rows}x${each}` },
  // A size in figures is surer than the name of a bed.
  {
    of: /^(?:count \w+|time|yardage|plan make|finish \w+)$/,
    words: new RegExp(BED, 'i'),
    where: new RegExp(SIZE, 'i'),
  },
  {
    of: /^count (?:field|garden|rosette|stars?|blocks|diamonds)$|^plan make$/,
    words: new RegExp(SIZE, 'i'),
    says: ([size], question) => `quilt:${infant(question)}${size}`,
  },
  {
    of: SEWN,
    words: new RegExp(SIZE, 'i'),
    unless: /\brectang/i,
    says: ([size], question) => `field:${infant(question)}${size}`,
  },
  { of: SEWN, words: new RegExp(BED, 'i'), unless: BLOCKS, says: ([bed]) => `field:${bed}` },
  { of: /^count field$/, words: /\bflats?(?: sides?)? (?:up|on top)\b/i, says: () => 'rows:down' },
  { of: /^count field$/, words: /\bpoints?(?: side)? (?:up|on top)\b/i, says: () => 'rows:across' },
  // "The whole quilt" says nothing of its sides.
  { of: /^(?:plan make|count field)$/, words: /\b(?:the |a )?whole (?:quilt|thing|lot|top)\b/i },

  // The cloth's width, and what is cut to be safe.
  {
    of: BOUGHT,
    words:
      /\b(\d{2,3}(?:\.\d+)?(?= ?(?:in|inch|inches|cm|"|-| ))|\d(?:\.\d+)?(?= ?m\b))( ?(?:in|inch|inches|cm|m)\b| ?")?[- ]*(?:wide|width)\b(?! (?:border|binding|strips?))/i,
    says: ([, n, unit], question) => widthOf(n, unit, question),
  },
  {
    of: BOUGHT,
    words:
      /\b(?:of|on|with|from|in) (\d{2,3})( ?(?:in|inch|inches|cm)\b| ?")?[- ]*(?:fabric|cloth|material|cotton|wide ?back)\b/i,
    says: ([, n, unit], question) => widthOf(n, unit, question),
  },
  {
    of: BOUGHT,
    words: /\b(\d{2,3})( ?(?:in|inch|inches|cm)\b| ?")[- ]*(?:fabric|cloth|material|cotton)\b/i,
    says: ([, n, unit], question) => widthOf(n, unit, question),
  },
  {
    of: BOUGHT,
    words: /\b(?:at|on) (?:(4\d|10\d)( ?(?:in|inch|inches)\b| ?")|(9\d|1[0-6]\d)( ?cm\b))/i,
    says: ([, n, unit, metric, cm], question) => widthOf(n ?? metric, unit ?? cm, question),
  },
  {
    of: /^(?:yardage|plan make|kit)$/,
    words:
      /\b(?:and |plus |with )?(\d+(?:\.\d+)?) ?(?:%|percent) (?:extra|spare|more|over|to spare|for (?:mishaps|mistakes|luck))\b/i,
    says: ([, n]) => `spare:${n}%`,
  },
  {
    of: /^(?:yield|yardage)$/,
    words: new RegExp(
      `\\b(?:print |motifs? |pattern )?(?:repeats?|repeating|motifs?)(?: is| are| of| every| each| at)* (${REPEAT})|(?:\\ban? )?\\b(${REPEAT}) (?:pattern |print )?repeats?\\b`,
      'i',
    ),
    says: ([, one, other, size = one ?? other ?? '']) =>
      `motif:${/x|by/i.test(size) ? size : `${size.replace(/[a-z" ]+$/i, '')}x${size}`}`,
  },
  {
    of: /^(?:yield|yardage)$/,
    words: /\b(?:easiest|quickest|fastest|simplest|fewest cuts)\b/i,
    says: () => 'method:fewest',
  },

  // How many there are is no size.
  {
    of: /^yardage$/,
    words: new RegExp(`\\b(1[3-9]|[2-9]\\d|\\d{3,}) (?=\\d\\/\\d+${UNIT})`, 'i'),
    says: ([, n]) => `pieces:${n}`,
  },
  { of: /^yardage$/, words: new RegExp(A_COUNT, 'i'), says: ([, n, other]) => `pieces:${n ?? other}` },
  {
    of: /^yield$/,
    words: new RegExp(A_COUNT, 'i'),
    unless: /\b(?:a4|letter|papers?|sheet|page)\b/i,
    says: ([, n, other]) => `pieces:${n ?? other}`,
  },
  { of: /^(?:yield|time)$/, words: new RegExp(A_COUNT, 'i') },
  { of: /^cut$/, words: new RegExp(A_COUNT, 'i'), where: new RegExp(`${NUMBER}${UNIT}`, 'i') },
  { of: /^yield$/, words: new RegExp(`\\b\\d+ (?=\\d+(?:[ -]\\d+\\/\\d+|\\.\\d+)?${UNIT})`, 'i') },
  // What she has is not what she needs.
  { of: /^yardage$/, words: new RegExp(`\\b${NUMBER} ?(?:yards?|yds?|met(?:re|er)s?)\\b`, 'i') },

  {
    of: /^cut$/,
    words:
      /(?<!\b(?:do|should|must|would|will|to|can|could) )\b(?:i|we|she)(?:'ve| have| had)? (?:already )?cut\b/i,
    where: /\b(?:finish|end up|come out|sewn)/i,
    says: () => 'given:cut',
  },
  {
    of: /^cut$/,
    words: /\bcut\b(?! size)/i,
    where: /\bwhat\b.*\b(?:finish|end up)/i,
    unless: /\b(?:do|should|must|to|can) (?:i |we |you |one )?cut\b|\bhow (?:big|large|wide)\b/i,
    says: () => 'given:cut',
  },
  {
    of: /^cut$/,
    words: /\b(?:with|including|incl\.?) (?:the |its )?seams?(?: allowances?)?\b(?! (?:of|at)? ?\d)/i,
    unless: /\bcut\b/i,
    says: () => 'given:cut',
  },
  { of: /^cut$/, words: /\bcut (?:them|it|those|these)\b/i },
  {
    of: /^cut$/,
    words: /\b(?:what|which) (?:strip )?(?:width|height|size)\b(?! square)|\bstrip (?:width|height)\b/i,
  },
  { of: /^cut$/, words: /\bwhat\w*(?:['’]s| is)? (?:the )?cut size\b|\bcut size\b(?! (?:is|of|was) ?\d)/i },
  { of: /^cut$/, words: /\b(?:what|which|how big a|how large a) (?:size )?square\b/i },
  {
    of: /^(?:cut|yield|yardage|template)$/,
    words: new RegExp(`\\b(${NUMBER}${UNIT}?) (?:tall|high)\\b`, 'i'),
    where: /\btumbler/i,
    says: ([, size]) => `height:${size}`,
  },
  // Which measure is asked for, not which was given: the answer has them all.
  {
    of: /^cut$/,
    words: new RegExp(
      `\\b(?:what\\w*(?:['’]s| is| are)?|how (?:big|wide|large|tall|far)(?: is it| are they)?)(?: the)? ${MEASURE}`,
      'i',
    ),
  },
  {
    of: /^cut$/,
    words: new RegExp(`(?<=[a-z] )(?<!\\d ?(?:in|inch|inches|cm|mm) )${MEASURE}(?=[ ?.]*$)`, 'i'),
    where: /\bhow (?:big|wide|large|tall|far) (?:is|are)\b/i,
  },

  {
    of: /^(?:plan make|kit)$/,
    words: /\b(\d+) (?:separate |loose )?(?:rosettes|flowers)\b/i,
    where: APART,
    says: ([, n]) => `layout:rosette number:${n}`,
  },
  {
    of: GARDEN,
    words: /\b(\d+) rows of (\d+)\b/i,
    says: ([, rows, each]) => `rosettes:${rows}x${each}`,
  },
  { of: GARDEN, words: /\b(\d+)[- ]rounds?\b(?: each)?/i, says: ([, n]) => `rounds:${n}` },
  { of: GARDEN, words: /\b(?:no|without(?: an?)?|without any) paths?\b/i, says: () => 'path:none' },
  {
    of: GARDEN,
    words: /\b(?:double|own|separate|two) paths?\b|\bpath (?:each|of (?:their|its) own)\b/i,
    says: () => 'path:own',
  },
  {
    of: GARDEN,
    words:
      /\b(?:set |joined )?(?:with |by )?diamonds? (?:(?:in )?between|path)(?: (?:them|each|the (?:rosettes|flowers)))?\b|\b(?:set|joined) (?:with|by) diamonds\b|\bdiamonds (?:to|that|which)? ?join(?:ing)?\b/i,
    where: /\brosettes?\b|\bflowers?\b/i,
    says: () => 'path:diamonds',
  },
  {
    of: GARDEN,
    words:
      /\b(?:(?:path|all) )?(?:a?round|on) the outside\b|\bouter path\b|\b(?<=paths? )(?:all )?a?round\b(?! (?:each|every|the (?:rosettes|flowers)))/i,
    says: () => 'outer:yes',
  },
  {
    of: /^(?:plan make|kit|count stars)$/,
    words:
      /\b(?:set )?(?:with )?(hexagons|hexies|diamonds) (?:in )?between\b|\bset with (hexagons|hexies|diamonds)\b/i,
    where: STAR,
    says: ([, one, other]) => `set:${/^hex/i.test(one ?? other ?? '') ? 'hexagons' : 'diamonds'}`,
  },
  {
    of: /^count stars$/,
    words:
      /\b(?:made|complet\w*|filled|built|turned) (?:in)?to (?:make )?an? (?:big |large |whole )?hexagon\b|\bstraight edges?\b|\bcompleted?\b/i,
    says: () => 'outer:straight',
  },
  {
    of: /^count diamonds$/,
    words:
      /\b([14])[- ](?:diamond )?cent(?:re|er)\b|\bcent(?:re|er) of ([14])\b|\b([14]) in the (?:middle|cent(?:re|er))\b/i,
    says: ([, one, other, third]) => `from:${one ?? other ?? third}`,
  },
  {
    of: /^(?:time|plan make)$/,
    words: new RegExp(
      `\\b(${NUMBER}) hours? (?:of sewing )?(?:an?|per|each|every) (?:day|night|evening)\\b`,
      'i',
    ),
    says: ([, n = '']) => `hours:${amount(n) * 7}`,
  },
  {
    of: /^(?:time|plan make)$/,
    words: new RegExp(`\\b(${NUMBER}) hours? (?:of sewing )?(?:an?|per|each|every) week\\b`, 'i'),
    says: ([, n = '']) => `hours:${amount(n)}`,
  },

  { of: /^time$/, words: new RegExp(`\\b${NUMBER}${UNIT} (?:of )?(?:sewing |cotton )?thread\\b`, 'i') },
  {
    of: /^finish backing$/,
    words: /\bwide[- ]?(?:back(?:ing)?|width)\b(?: (?:fabric|cloth))?/i,
    unless: /\b\d{2,3} ?(?:in|inch|inches|cm|")?[- ]*(?:wide|width)\b/i,
    says: () => 'width:106in',
  },
  {
    of: /^finish binding$/,
    words: new RegExp(
      `\\b(?:at|of|with|in|using) (${NUMBER}${UNIT}?)(?: (?:strips?|binding))\\b|\\b(?:at|using) (${NUMBER}${UNIT}?)(?! ?(?:x|by|wide)\\b)|\\b(${NUMBER}${UNIT}?) (?:wide )?binding\\b`,
      'i',
    ),
    says: ([, one, other, third]) => `strip:${one ?? other ?? third}`,
  },
  {
    of: /^finish binding$/,
    words: new RegExp(`\\b(${NUMBER}${UNIT}) ?(?:hexagons|hexies|sides?)?(?=[ ,.?]|$)`, 'i'),
    where: /\brosette\b/i,
    says: ([, size]) => `size:${size}`,
  },

  // Who gets a kit, and how many papers.
  {
    of: /^kit$/,
    words:
      /\b(?:we are |there are )?(\d+) (?:of us|members|people|ladies|girls|women|quilters|friends|students|kits)\b/i,
    says: ([, n]) => `members:${n}`,
  },
  {
    of: /^kit$/,
    words: new RegExp(
      `\\bfor (?:the |all |my )?(\\d+)(?!\\d|[./]|${UNIT}|[- ](?:rounds?|rosettes?|flowers?|stars?|blocks?))`,
      'i',
    ),
    says: ([, n]) => `members:${n}`,
  },
  {
    of: /^template$/,
    words: new RegExp(
      `\\b(\\d{1,5}) x (?=${NUMBER}${UNIT})|(?<=\\d ?(?:in|inch|inches|cm|mm|") )x ?(\\d{1,5})\\b|(?<=")[ ,]*x ?(\\d{1,5})\\b`,
      'i',
    ),
    says: ([, one, other, third]) => `papers:${one ?? other ?? third}`,
  },
  { of: /^template$/, words: new RegExp(A_COUNT, 'i'), says: ([, n, other]) => `papers:${n ?? other}` },

  {
    of: /^finish bed$/,
    words: new RegExp(`\\b(${NUMBER}${UNIT}?)(?: of)?[- ](drop|hang|overhang|tuck|pillow tuck)\\b`, 'i'),
    says: ([, size, what = '']) => `${/tuck/i.test(what) ? 'tuck' : 'drop'}:${size}`,
  },
  {
    of: /^finish bed$/,
    words: new RegExp(`\\b(?:pillow )?tuck(?: of)? (${NUMBER}${UNIT}?)`, 'i'),
    says: ([, size]) => `tuck:${size}`,
  },
  // A tuck without a number is the usual one: common practice, no source.
  {
    of: /^finish bed$/,
    words: /\b(?:pillow )?tuck\b/i,
    unless: /\b(?:no|without)(?: an?)? (?:pillow )?tuck/i,
    says: () => 'tuck:12in',
  },
];
