import { amount, countIn, NOT_A_PART, NUMBER, SIZE, UNIT } from '../question-patterns.ts';
import type { Turn } from './turn.ts';

const MONTH =
  '(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)';
const FROM_DAY = '\\b(?:start|starting|begin|beginning)(?: it)?(?: on| from| in)? (?:the )?';
const STARTING = new RegExp(
  `${FROM_DAY}(\\d{4}-\\d{1,2}-\\d{1,2}|\\d{1,2}(?:st|nd|rd|th)? (?:of )?${MONTH}\\b(?: \\d{4})?|${MONTH} \\d{1,2}(?:st|nd|rd|th)?\\b(?:,? \\d{4})?|today|tomorrow)`,
  'i',
);
const STARTING_IN = new RegExp(`${FROM_DAY}(${MONTH}\\b(?: \\d{4})?)`, 'i');

const OFTEN = '(?:an?|per|each|every)';
const A_DAY = `${OFTEN} (?:day|night|evening)`;
const A_WEEK = `${OFTEN} week`;
const HOURS = `\\b(${NUMBER}) (?:hours?|(min)(?:ute)?s?) (?:of sewing )?`;
const DAYS_A_WEEK = 7;
const MINUTES_AN_HOUR = 60;

/** Hours a week, of so much time on so many days of it. */
const hoursOf = (number: string, minutes: string | undefined, days: number): string => {
  const hours = (amount(number) * days) / (minutes ? MINUTES_AN_HOUR : 1);
  return `hours:${Math.round(hours * 100) / 100}`;
};

const SEWING = /\b(?:sew\w*|stitch\w*|piec(?:e|ing)|join\w*|finish\w*|incl\w*)\b/i;
/** The sewing is asked for with it, or it is done already, or left out. */
const sewnOrDone = (doing: string, done: string): RegExp =>
  new RegExp(
    `${SEWING.source}|\\b(?:already|pre|all|are|is|were|been|be|have|i've|ready)[- ]${done}\\b|\\b(?:not|without|excluding|except|besides|after) (?:\\w+ ){0,3}${doing}\\b|\\b${doing} (?:is |are )?(?:already |all )?done\\b`,
    'i',
  );

const WIDE = `${NOT_A_PART}\\b(${NUMBER}${UNIT}?)`;
const ITS_SIZE = '(?: borders?)?(?: of| is| at|:)?';
/** "Inner border 2 in", "2 in inner border": the number stands on either side, and belongs to one border. */
const bordering = (which: string): RegExp =>
  new RegExp(
    `\\b${which}${ITS_SIZE} (${NUMBER}${UNIT}?)|(?<!\\b(?:inner|outer)${ITS_SIZE} )${WIDE} (?:wide )?${which}\\b`,
    'i',
  );
const BEFORE_BORDER = new RegExp(`${NOT_A_PART}\\b(${NUMBER}${UNIT}) (?=(?:[a-z]+ )?borders?\\b)`, 'i');
/** Borders of two quilts are not one round the other. */
const TWO_QUILTS = new RegExp(`${SIZE}.*${SIZE}`, 'i');

/** One border, or one round the other. */
const BORDER_TURNS: readonly Turn[] = [
  {
    of: /^finish border$/,
    words: new RegExp(
      `\\bstrips? (?:of |at )?(${NUMBER}${UNIT}?) cut\\b|\\bcut (?:at )?(${NUMBER}${UNIT}?)(?: wide)? strips?\\b|\\bstrips? cut (?:at )?(${NUMBER}${UNIT}?)(?! ?(?:x|by)\\b)`,
      'i',
    ),
    says: ([, ...sizes]) => `strip:${sizes.find((size) => size !== undefined)}`,
  },
  { of: /^finish border$/, words: bordering('inner'), says: ([, one, other]) => `border:${one ?? other}` },
  {
    of: /^finish border$/,
    words: bordering('outer'),
    where: /\binner\b/i,
    says: ([, one, other]) => `outer:${one ?? other}`,
  },
  {
    of: /^finish border$/,
    words: new RegExp(
      `\\b(?:(?:2|two) )?borders?[,:]? (?:of |at )?(${NUMBER}${UNIT}?) (?:and|then|plus) (${NUMBER}${UNIT})(?! ?(?:x|by)\\b)`,
      'i',
    ),
    says: ([, one, other]) => `border:${one}, outer:${other}`,
  },
  {
    of: /^finish border$/,
    words: new RegExp(
      `${WIDE}(?= (?:and|then|plus)(?: an?)? ${NUMBER}${UNIT}? (?:[a-z]+ )?borders?\\b)`,
      'i',
    ),
    says: ([, size]) => `border:${size}`,
  },
  { of: /^finish border$/, words: BEFORE_BORDER, says: ([, size]) => `border:${size}` },
  {
    of: /^finish border$/,
    words: BEFORE_BORDER,
    unless: TWO_QUILTS,
    says: ([, size]) => `outer:${size}`,
  },
];

/** Backing, binding and the bed; hours, kits and papers. */
export const FINISH_TURNS: readonly Turn[] = [
  {
    of: /^(?:time|plan make)$/,
    words: new RegExp(`${HOURS}${A_DAY}\\b`, 'i'),
    says: ([, n = '', minutes]) => hoursOf(n, minutes, DAYS_A_WEEK),
  },
  {
    of: /^(?:time|plan make)$/,
    words: new RegExp(`${HOURS}${A_WEEK}\\b`, 'i'),
    says: ([, n = '', minutes]) => hoursOf(n, minutes, 1),
  },

  {
    of: /^time$/,
    words: new RegExp(
      `\\b(?:(?:my|own) pace (?:is|of) )?(${NUMBER}) ?min(?:ute)?s? ${OFTEN}\\b(?! (?:day|night|evening|week))(?: seam)?`,
      'i',
    ),
    says: ([, n = '']) => `pace:${amount(n)}`,
  },
  { of: /^time$/, words: STARTING, says: ([, start]) => `start:${start}` },
  { of: /^time$/, words: STARTING_IN, says: ([, month]) => `start:1 ${month}` },
  { of: /^time$/, words: new RegExp(`\\b${NUMBER}${UNIT} (?:of )?(?:sewing |cotton )?thread\\b`, 'i') },
  // What comes before the sewing, where the sewing is not asked for with it.
  {
    of: /^time$/,
    words:
      /\b(?:(?:cut(?:ting)?|trac(?:e|ing)) (?:and|&|n) )?(?:(?:thread|glue)[- ])?(?:bast(?:e|ing)|tack(?:ing)?)\b|\bprep(?:ar(?:e|ing|ation))?\b/i,
    unless: sewnOrDone('(?:basting|tacking|prep\\w*)', '(?:basted|tacked)'),
    says: () => 'work:basting',
  },
  {
    of: /^time$/,
    words: /\b(?:trac(?:e|ing) (?:and|&|n) )?cut(?:ting)?(?: out)?\b/i,
    unless: sewnOrDone('(?:cutting|tracing)', '(?:traced|cut)'),
    says: () => 'work:cutting',
  },
  ...BORDER_TURNS,
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
