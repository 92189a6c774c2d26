import { readGuildQuestion } from './guild-questions.ts';
import { inFigures } from './number-words.ts';
import { optionWords } from './question-words.ts';

/** What a plain question was taken to ask: a command's form, and the words its options are read from. */
export interface Question {
  readonly command: string;
  readonly form: string;
  readonly words: string;
}

interface Sign {
  /** The command and its form; null for what is understood but cannot be answered. */
  readonly ask: string | null;
  /** All of these must be there. */
  readonly all: readonly RegExp[];
  /** None of these may be. */
  readonly none?: readonly RegExp[];
}

const PIECE =
  /\bfat[- ]?(?:q\w+rs?|eigh?ths?)\b|\bfqs?\b|\b(?:5|10)[- ]?(?:in(?:ch)?|")?[- ]?squares?\b|\bcharms?\b|\bstrips?\b|\bletter\b|\ba4\b/i;
const CLOTH = /\b(?:fabric|cloth|yards?|yardage|yds?|met(?:re|er)s?|material)\b/i;
const LENGTH = /\b(?:yards?|yds?|met(?:re|er)s?|fabric|cloth)\b|\d ?m\b/i;
const TIME =
  /\bhow long\b(?!.*\bsides?\b).*\b(?:take|sew|stitch|finish|piece|make|for|to|do)|\bwhen\b.*\b(?:finish|done)\b|\b(?:hours?|weeks?|minutes|thread|needlefuls?|stitches)\b/i;
const QUILT =
  /\b(?:quilts?|queen|king|twin|throw|lap|crib|cot|single|double|bed|top|cover|wall|cushion|runner)\b|\d ?(?:in|inch|inches|cm|m|ft|["'])? ?(?:x|by) ?\d/i;
const MANY = /\bhow many\b|\bcount\b|\bnumber of\b|\bdo i need\b|\bneeded\b/i;
const MUCH = /\bhow much\b|\bhow many (?:\w+ )?(?:yards?|yds|met(?:re|er)s)\b/i;
const CUT =
  /\b(?:cut|cutting|ruler|template size|what size|how big|how large|how wide|seam allowance|flat to flat)\b/i;
const GET = /\b(?:from|out of|get|gets|fit|fits|per|yield|enough|have|can i)\b/i;
const PATCH =
  /\b(?:hex\w*|dia?mo?n?d?s?|diamon\w*|triang\w*|kites?|squares?|rectang\w*|half[- ]hex\w*|octag\w*|pentag\w*|tumblers?|clam[- ]?shells?|apple[- ]?cores?|patch(?:es)?|papers?|pieces?)\b/i;
const ROSETTES = /\b\d+ (?!rounds?\b)(?:\d+[- ]rounds? )?(?:\w+ )?(?:rosettes|flowers)\b/i;
const WHOLES = /\bhow many (?:\w+[- ]){0,3}(?:rosettes|flowers|stars|blocks)\b/i;

/** Something to print, not something to reckon. */
const PRINTED =
  /\btemplates?\b|\bprint(?:able|ed|out)?\b.*\b(?:hex\w*|papers?|pieces?|patches|shapes?)\b|\bpapers?\b.*\bprint/i;
const FINISHING = /\b(?:backing|binding|batting|wadding)\b/i;

/** How much or how long for several rosettes: only one is worked out at a time. */
const MUCH_OR_LONG = new RegExp(`${MUCH.source}|${TIME.source}`, 'i');

/** Read from the top: the first line whose signs are all there is what was meant. */
const SIGNS: readonly Sign[] = [
  { ask: 'help', all: [/^help\b/i] },
  { ask: 'me show', all: [/\bmy (?:settings|defaults|units?)\b/i] },
  { ask: 'swap rounds', all: [/\bswap\b/i, /\b\d+ (?:members|people|of us|each)\b|\brounds?\b/i] },
  { ask: 'swap list', all: [/\bswap\b/i, /\b(?:what|who|list|show|offered|wanted|wished)\b/i] },
  { ask: null, all: [WHOLES, QUILT] },
  { ask: null, all: [ROSETTES, MUCH_OR_LONG] },
  { ask: 'template', all: [PRINTED], none: [/\btemplate size\b/i] },
  {
    ask: 'check',
    all: [/\brows?\b/i, /\b(?:(?:came|comes?|turned) out|measures?|measured|short|long)\b/i, /\d/],
    none: [/\bhow (?:many|much|long)\b/i],
  },
  { ask: 'kit', all: [/\bkits?\b/i, /\d/] },
  { ask: 'plan list', all: [/\b(?:our|the guild['’]?s|kept|which|what) plans\b/i] },
  { ask: 'plan make', all: [/\bplan\b|\bshopping list\b/i] },
  { ask: 'time', all: [TIME], none: [FINISHING] },
  { ask: 'finish backing', all: [/\bbacking\b|\bfor the back\b/i] },
  { ask: 'finish binding', all: [/\bbinding\b/i] },
  { ask: 'finish batting', all: [/\b(?:batting|wadding)\b/i] },
  { ask: 'finish border', all: [/\bborders?\b/i] },
  { ask: 'finish bed', all: [/\bmattress\b|\b(?:in(?:ch)?|cm) drop\b|\bdrop of\b/i] },
  {
    ask: 'yield',
    all: [PIECE, /\bhow many\b|\bfrom\b|\bout of\b|\bget\b|\bfits?\b|\benough\b/i],
    none: [/\bhow much\b/i],
  },
  { ask: 'yield', all: [MANY, GET, LENGTH], none: [MUCH] },
  { ask: 'yield', all: [MANY, PATCH, /\b(?:from|out of)\b/i], none: [MUCH, QUILT] },
  { ask: 'yield', all: [PATCH, /\b(?:from|out of)\b/i, LENGTH], none: [MUCH, QUILT, /\bneed|\bbuy/i] },
  { ask: 'yardage', all: [MUCH] },
  { ask: 'yardage', all: [CLOTH, /\bneed|\bbuy|\bfor\b|\benough\b/i] },
  { ask: 'count garden', all: [/\bgarden\b|\brosettes\b.*\bpaths?\b|\bpaths?\b.*\brosettes\b/i] },
  { ask: 'count garden', all: [ROSETTES] },
  { ask: 'count rosette', all: [/\b(?:rosettes?|flowers?)\b/i] },
  { ask: 'count stars', all: [/\b\d+ stars\b|\bstars (?:set|with|and)\b/i] },
  { ask: 'count star', all: [/\bstars?\b/i] },
  { ask: 'count blocks', all: [/\bblocks?\b/i] },
  { ask: 'count diamonds', all: [/\bdiamonds?\b/i, /\brounds?\b|\bcent(?:re|er)\b/i] },
  { ask: 'cut', all: [CUT, /\brectang/i] },
  { ask: 'cut', all: [CUT, PATCH], none: [QUILT] },
  { ask: 'count field', all: [QUILT] },
  { ask: 'cut', all: [CUT] },
  { ask: 'cut', all: [PATCH, /\d/] },
  { ask: 'help', all: [/^(?:hello|hi|hey|what can you do|commands?)\b/i] },
];

const HELP_WITH =
  /^help (?:(?:me )?(?:with|on|about) )?(?:the )?[/!]?(cut|count|yield|yardage|template|time|finish|check|plan|kit|swap|challenge|log|standings|guild)\b/i;

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
  const plain = inFigures(text);
  const ofGuild = readGuildQuestion(plain);
  if (ofGuild) return ofGuild;
  const found = SIGNS.find(
    ({ all, none = [] }) => all.every((sign) => sign.test(plain)) && !none.some((sign) => sign.test(plain)),
  );
  if (!found?.ask) return null;
  const [command = '', form = ''] = found.ask.split(' ');
  const words = command === 'help' ? (HELP_WITH.exec(plain)?.[1] ?? '') : optionWords(found.ask, plain);
  return { command, form, words };
}
