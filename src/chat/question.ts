/** What a plain question was taken to ask: a command's form, and the words its options are read from. */
export interface Question {
  readonly command: string;
  readonly form: string;
  readonly words: string;
}

interface Sign {
  readonly command: string;
  readonly form?: string;
  /** All of these must be there. */
  readonly all: readonly RegExp[];
  /** None of these may be. */
  readonly none?: readonly RegExp[];
}

const PIECE =
  /\bfat[- ]?(?:quarter|eighth|quater)|\bfqs?\b|\b(?:5|10)[- ]?(?:in(?:ch)?|")?[- ]?squares?\b|\bcharms?\b|\bstrips?\b|\bletter\b|\ba4\b/i;
const CLOTH = /\b(?:fabric|cloth|yards?|yardage|yds?|met(?:re|er)s?|material)\b/i;
const TIME =
  /\bhow long\b.*\b(?:take|sew|stitch|finish|piece)|\b(?:hours?|weeks?|minutes|thread|needlefuls?|stitches)\b/i;
const QUILT =
  /\b(?:quilts?|queen|king|twin|throw|lap|crib|cot|single|double|bed|top|cover|wall|cushion|runner)\b|\d\s*(?:x|by)\s*\d/i;
const MANY = /\bhow many\b|\bcount\b|\bnumber of\b|\bdo i need\b|\bneeded\b/i;
const CUT =
  /\b(?:cut|cutting|ruler|template size|what size|how big|how large|seam allowance|flat to flat)\b/i;
const GET = /\b(?:from|out of|get|fit|per)\b/i;
const PATCH =
  /\b(?:hex(?:agon|ie|ies|y)?s?|diamonds?|triangles?|kites?|squares?|half[- ]hex\w*|patch(?:es)?)\b/i;

/** Read from the top: the first line whose signs are all there is what was meant. */
const SIGNS: readonly Sign[] = [
  { command: 'help', all: [/^\s*(?:help|hello|hi|hey|what can you do|commands?)\b/i] },
  { command: 'me', form: 'show', all: [/\bmy (?:settings|defaults|units?)\b/i] },
  { command: 'time', all: [TIME] },
  {
    command: 'yield',
    all: [PIECE, /\bhow many\b|\bfrom\b|\bout of\b|\bget\b|\bfit/i],
    none: [/\bhow much\b/i],
  },
  {
    command: 'yield',
    all: [MANY, GET, /\b(?:yards?|yds?|met(?:re|er)s?|fabric|cloth)\b/i],
    none: [/\bhow (?:much|many yards|many met)/i],
  },
  { command: 'yardage', all: [/\bhow (?:much|many (?:yards?|yds|met))/i] },
  { command: 'yardage', all: [CLOTH, /\bneed|\bbuy|\bfor\b/i] },
  { command: 'count', form: 'garden', all: [/\bgarden\b|\brosettes\b.*\bpath\b|\bpath\b.*\brosettes\b/i] },
  { command: 'count', form: 'rosette', all: [/\b(?:rosettes?|flowers?)\b/i] },
  { command: 'count', form: 'star', all: [/\bstars?\b/i] },
  { command: 'count', form: 'blocks', all: [/\b(?:tumbling|baby) blocks?\b|\bblocks?\b/i] },
  { command: 'count', form: 'diamonds', all: [/\bdiamonds?\b/i, /\brounds?\b|\bcent(?:re|er)\b/i] },
  { command: 'cut', all: [CUT, PATCH], none: [QUILT] },
  { command: 'count', form: 'field', all: [QUILT] },
  { command: 'cut', all: [CUT] },
  { command: 'cut', all: [PATCH, /\d/] },
];

/**
 * What a question in plain words asks for, or null where no sign of a known question is there. The words are
 * handed on whole: the options of the form meant are picked out of them, the rest passed over.
 *
 * @example
 * readQuestion('how many 1 inch hexagons from a fat quarter?').command // "yield"
 * readQuestion('queen size, 1-inch, out of my scraps').form // "field"
 * readQuestion('how much fabric for 240 hexagons').command // "yardage"
 * readQuestion('good morning all') // null
 */
export function readQuestion(text: string): Question | null {
  const found = SIGNS.find(
    ({ all, none = [] }) => all.every((sign) => sign.test(text)) && !none.some((sign) => sign.test(text)),
  );
  return found ? { command: found.command, form: found.form ?? '', words: text } : null;
}
