import { countIn, NOT_A_PART, NUMBER, UNIT } from '../question-patterns.ts';
import type { Turn } from './turn.ts';

/** Backing, binding and the bed; kits and papers. */
export const FINISH_TURNS: readonly Turn[] = [
  {
    of: /^finish backing$/,
    words: /\bwide[- ]?(?:back(?:ing)?|width)\b(?: (?:fabric|cloth))?/i,
    unless: /\b\d{2,3} ?(?:in|inch|inches|cm|")?[- ]*(?:wide|width)\b/i,
    says: () => 'width:106in',
  },
  {
    of: /^finish (?:backing|batting)$/,
    words: new RegExp(
      `(?<!(?:x|by) ?)(?<![\\d./])\\b(${NUMBER}${UNIT}?) (?:of )?(?:overhang|overlap|over|extra|excess|larger|bigger)\\b`,
      'i',
    ),
    says: ([, size]) => `over:${size}`,
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
    words: new RegExp(
      `(?<!\\b(?:x|by) ?)\\b(${NUMBER}${UNIT})(?=[ ,.?!]*$)|(?<!\\b(?:x|by) ?)${NOT_A_PART}\\b([1-4](?:\\.\\d+| \\d\\/\\d))(?=,|[ .?!]*$)`,
      'i',
    ),
    unless: /\bhex|\brosette|\bflower|\bside\b/i,
    says: ([, size, other]) => `strip:${size ?? other}`,
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
  { of: /^kit$/, words: /\bkits?\b ?:/i },
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
    words: new RegExp(`\\b(${NUMBER}${UNIT}?)(?: of)?[- ](?:drop|hang|overhang)\\b`, 'i'),
    says: ([, size]) => `drop:${size}`,
  },
  {
    of: /^finish bed$/,
    words: new RegExp(`\\b(${NUMBER}${UNIT}?)(?: of)?[- ](?:pillow )?tuck\\b`, 'i'),
    says: ([, size]) => `tuck:${size}`,
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
