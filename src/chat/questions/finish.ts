import { amount, countIn, NUMBER, UNIT } from '../question-patterns.ts';
import type { Turn } from './turn.ts';

const MONTH = '(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*';
const STARTING = new RegExp(
  `\\b(?:start|starting|begin|beginning)(?: it)?(?: on| from)? (?:the )?(\\d{4}-\\d{1,2}-\\d{1,2}|\\d{1,2}(?:st|nd|rd|th)? (?:of )?${MONTH}(?: \\d{4})?|${MONTH} \\d{1,2}(?:st|nd|rd|th)?(?:,? \\d{4})?|today|tomorrow)`,
  'i',
);

const SEWING = /\b(?:sew\w*|stitch\w*|piec(?:e|ing)|join\w*|finish\w*)\b/i;

/** Backing, binding and the bed; hours, kits and papers. */
export const FINISH_TURNS: readonly Turn[] = [
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

  {
    of: /^time$/,
    words: new RegExp(`\\b(${NUMBER}) ?min(?:ute)?s? (?:an?|per|each|every)\\b(?: seam)?`, 'i'),
    says: ([, n = '']) => `pace:${amount(n)}`,
  },
  {
    of: /^time$/,
    words: STARTING,
    says: ([, start]) => `start:${start}`,
  },
  { of: /^time$/, words: new RegExp(`\\b${NUMBER}${UNIT} (?:of )?(?:sewing |cotton )?thread\\b`, 'i') },
  // What comes before the sewing, where the sewing is not asked for with it.
  {
    of: /^time$/,
    words:
      /\b(?:(?:cut(?:ting)?|trac(?:e|ing)) (?:and|&|n) )?(?:(?:thread|glue)[- ])?(?:bast(?:e|ing)|tack(?:ing)?)\b/i,
    where: /\bglu(?:e|ing)\b/i,
    unless: SEWING,
    says: () => 'work:gluing',
  },
  {
    of: /^time$/,
    words:
      /\b(?:(?:cut(?:ting)?|trac(?:e|ing)) (?:and|&|n) )?(?:(?:thread|glue)[- ])?(?:bast(?:e|ing)|tack(?:ing)?)\b/i,
    unless: SEWING,
    says: () => 'work:basting',
  },
  {
    of: /^time$/,
    words: /\b(?:trac(?:e|ing) (?:and|&|n) )?cut(?:ting)?(?: out)?\b/i,
    unless: SEWING,
    says: () => 'work:cutting',
  },
  {
    of: /^finish border$/,
    words: new RegExp(`\\b(${NUMBER}${UNIT}?) (?:wide )?outer(?: borders?)?\\b`, 'i'),
    where: /\binner\b/i,
    says: ([, size]) => `outer:${size}`,
  },
  {
    of: /^finish border$/,
    words: new RegExp(
      `\\bborders? (?:of |at )?(${NUMBER}${UNIT}?) (?:and|then|plus) (${NUMBER}${UNIT})(?! ?(?:x|by)\\b)`,
      'i',
    ),
    says: ([, one, other]) => `border:${one}, outer:${other}`,
  },
  {
    of: /^finish border$/,
    words: new RegExp(
      `\\b(${NUMBER}${UNIT}?)(?= (?:and|then|plus)(?: an?)? ${NUMBER}${UNIT}? (?:[a-z]+ )?borders?\\b)`,
      'i',
    ),
    says: ([, size]) => `border:${size}`,
  },
  {
    of: /^finish border$/,
    words: new RegExp(`\\b(${NUMBER}${UNIT}) (?=(?:[a-z]+ )?borders?\\b)`, 'i'),
    says: ([, size]) => `border:${size}`,
  },
  {
    of: /^finish border$/,
    words: new RegExp(`\\b(${NUMBER}${UNIT}) (?=(?:[a-z]+ )?borders?\\b)`, 'i'),
    says: ([, size]) => `outer:${size}`,
  },
  {
    of: /^finish backing$/,
    words: /\bwide[- ]?(?:back(?:ing)?|width)\b(?: (?:fabric|cloth))?/i,
    unless: /\b\d{2,3} ?(?:in|inch|inches|cm|")?[- ]*(?:wide|width)\b/i,
    says: () => 'width:106in',
  },
  {
    of: /^finish binding$/,
    words: new RegExp(
      `\\bbinding (?:of |at )?(${NUMBER}${UNIT})(?! ?(?:x|by)\\b)|\\b(?:at|of|with|in|using) (${NUMBER}${UNIT}?)(?: (?:strips?|binding))\\b|\\b(?:at|using) (${NUMBER}${UNIT}?)(?! ?(?:x|by|wide)\\b)|\\b(${NUMBER}${UNIT}?) (?:wide )?binding\\b`,
      'i',
    ),
    says: ([, ...sizes]) => `strip:${sizes.find((size) => size !== undefined)}`,
  },
  // Said last of all: the strip, where the edge has no size of its own.
  {
    of: /^finish binding$/,
    words: new RegExp(`(?<!\\b(?:x|by) ?)\\b(${NUMBER}${UNIT})(?=[ ,.?!]*$)`, 'i'),
    unless: /\bhex|\brosette|\bflower|\bside\b/i,
    says: ([, size]) => `strip:${size}`,
  },
  {
    of: /^finish binding$/,
    words: new RegExp(`\\b(${NUMBER}${UNIT}) ?(?:hexagons|hexies|sides?)?(?=[ ,.?]|$)`, 'i'),
    where: /\brosette\b/i,
    says: ([, size]) => `size:${size}`,
  },

  { of: /^kit$/, words: /\bkits?\b ?:/i },
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
  // What is sewn over has no seam allowance; a template has.
  {
    of: /^template$/,
    words: /(?<!\b(?:a4|letter|an?|plain|the) )\bpapers\b/i,
    unless: /\bseams?\b|\btemplates?\b|\ballowance\b/i,
    says: () => 'seam:0',
  },
  // So many sheets of them are papers too: one template is drawn round again and again.
  {
    of: /^template$/,
    words: /\bhow many (?=(?:(?:a4|letter|paper) )?(?:sheets|pages)\b)/i,
    unless: /\bseams?\b|\btemplates?\b|\ballowance\b|\bpapers\b/i,
    says: () => 'seam:0',
  },
  { of: /^template$/, words: countIn, says: ([, n, other]) => `papers:${n ?? other}` },

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
