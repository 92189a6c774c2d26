import { hadIn, partsIn } from './question-cloth.ts';
import { coloursIn } from './question-colours.ts';
import {
  A_COUNT,
  APART,
  ASKED_IN,
  BED,
  countIn,
  DIAMONDS_ALONG,
  LARGE_DIAMOND,
  LOOSE_STARS,
  NUMBER,
  PATCH_SIZED,
  PATCHES,
  RULED,
  SIZE,
  SIZE_ASKED,
  UNIT,
} from './question-patterns.ts';

/** Something that a question has or has not: words in it, or what is read in it. */
export type Mark = RegExp | ((question: string) => boolean);

export interface Sign {
  /** The command and its form; null for what nothing here answers. */
  readonly ask: string | null;
  /** All of these must be there. */
  readonly all: readonly Mark[];
  /** None of these may be. */
  readonly none?: readonly Mark[];
}

const PIECE =
  /\bfat[- ]?(?:q\w+rs?|eigh?ths?)\b|\bfqs?\b|\b(?:5|10)[- ]?(?:in(?:ch)?|")?[- ]?squares?\b|\bcharms?\b|\bstrips?\b|\bletter\b|\ba4\b/i;
const FAT = /\bfat[- ]?(?:q\w+rs?|eigh?ths?)\b|\bfqs?\b/i;
const CLOTH = /\b(?:fabric|cloth|bolt|yards?|yardage|yds?|met(?:re|er)s?|material)\b/i;
const LENGTH = /\b(?:yards?|yds?|met(?:re|er)s?|fabric|cloth)\b|\d ?m\b/i;
const IN_A_LENGTH =
  /\bin (?:an?|half|one|\d[\d /.-]*) ?(?:an? )?(?:y(?:ar)?ds?|met(?:re|er)s?|m|fat|fqs?)\b/i;
const A_LENGTH =
  /(?:\b\d[\d /.-]*|\ban? |\bhalf (?:an? )?) ?(?:y(?:ar)?ds?|met(?:re|er)s?|m|(?:cm|in|inch|inches) of (?:fabric|cloth|material|\d+ ?(?:cm|in|inch)? ?wide))\b/i;
/** A piece that is cut from by its measures. */
const A_PIECE =
  /\b(?:pieces?|bits?|remnants?|offcuts?) (?:of \w+ )?(?:of |is |about |measuring )*\d|\d ?(?:in|inch|inches|cm)? (?:pieces?|remnants?|offcuts?)\b/i;
/** Squares that something else is cut from. */
const SQUARES = /\d ?(?:in|inch|inches|cm|")[- ]squares?\b/i;
const OTHERS = /\b(?:hex\w*|diamonds?|triangles?|kites?|pentagons?|clam\w*|tumblers?)\b/i;
const FROM_SIZE = new RegExp(
  `\\b(?:from|out of) (?:an? )?(?:(?!for\\b|to\\b|make\\b|my\\b|quilt\\b)[a-z]+ ){0,3}${SIZE}`,
  'i',
);
const ENOUGH = /\b(?:give|gives|make|makes|yield|yields|do) (?:me |us )?\d/i;
/** A patch that is cut already, and what it will come to. */
const WAS_CUT =
  /(?<!\b(?:do|should|must|would|will|to|can|could) )\b(?:i|we|she)(?:'ve| have| had)? (?:already )?cut\b/i;
const COMES_TO = /\b(?:finish|end up|come out|sewn)/i;
const PAGE = /\b(?:page|sheet)\b/i;
/** One length, in other units or by its mark; or nothing but the length. */
const IN_OTHER_UNITS = new RegExp(
  `${ASKED_IN}|\\bhow (?:much|long|big) is (?:\\d[\\d /.-]*|an? )${RULED}[ ?.!]*$|\\b(?:as a fraction|on (?:a|the|my) (?:ruler|tape))\\b|^(?:what(?:'?s| is) )?${NUMBER} ?(?:${RULED}|")[ ?.!]*$`,
  'i',
);
const A_MEASURE = new RegExp(
  `(?:\\d ?|\\b(?:an?|one|half|quarter)(?: of)?(?: an?)? )${RULED}\\b|\\d ?"`,
  'i',
);
/** "Convert 3/8 to mm": without its unit it is a bare length. */
const CONVERTED = new RegExp(`^(?:please )?convert ${NUMBER} (?:in|to|into) ${RULED}[ ?.!]*$`, 'i');
const WHAT_SQUARE = /\b(?:what|which|how (?:big|large) an?)(?: size)?(?: of)?(?: an?)? square\b/i;
const BIG_ENOUGH = /\b(?:big|large|wide) enough\b|\b(?:do|work) for\b/i;
/** A strip that is cut already, and what comes of it. */
const A_STRIP = new RegExp(
  `\\b${NUMBER}(?:${UNIT})?[- ](?:wide )?strips?\\b|\\bstrips? (?:is|are) ${NUMBER}`,
  'i',
);
const MADE_OF_IT = /\bfinished size\b|\bwhat(?: size)? \w+ (?:sides?|does|do|is)\b/i;
export const TIME =
  /\btime (?:for|to)\b|^(?:(?:the |my )?(?:total|sewing|stitching|prep|basting|cutting) )?time (?!zone)|\bmin(?:ute)?s? (?:an?|per|each|every) seam\b|\bhow long\b[?.! ]*$|\bhow long\b(?!.*(?<!\b(?:a|per|each) )\bsides?\b).*\b(?:take|sew|stitch|finish|piece|make|for|to|do)|\bwhen\b.*\b(?:finish|done)\b|\b(?:hours?|weeks?|evenings|nights|minutes|thread|needlefuls?|stitches)\b/i;
const TIME_FIRST = /^(?:(?:the |my )?total )?time\b/i;
/** Layers of a quilt are basted too, and not over papers. */
const LAYERS = /\b(?:sandwich\w*|layers?|pin(?:s|ned|ning)?)\b/i;
const BASTED = /\b(?:bast\w*|tack(?:ed|ing)?)\b/i;
/** How long, with nothing more said of what takes so long. */
const LONG = /\bhow long\b/i;
const SIZED = new RegExp(`${BED}|\\d ?(?:in|inch|inches|cm|m|ft|["'])? ?(?:x|by) ?\\d`, 'i');
export const QUILT = new RegExp(`\\b(?:quilts?|bed|top|cover|wall|cushion|runner)\\b|${SIZED.source}`, 'i');
export const MANY = /\bhow many\b|\bcount\b|\bnumber of\b|\bdo i need\b|\bneeded\b/i;
export const MUCH =
  /\bhow much\b|\bhow many (?:\w+ )?(?:yards?|yds|met(?:re|er)s)\b|\b(?:fabric|cloth|yardage|material) (?:for|needed|required)\b|\bneed (?:the )?(?:fabric|cloth|material)\b/i;
const CUT =
  /\b(?:cut|cutting|ruler|template size|what size|how big|how large|how wide|seam allowance|flat to flat)\b/i;
const GET = /\b(?:from|out of|get|gets|fit|fits|per|yield|enough|have|can i)\b/i;
const PATCH =
  /\b(?:hex\w*|dia?mo?n?d?s?|diamon\w*|triang\w*|kites?|squares?|rectang\w*|half[- ]hex\w*|oct\w*gons?|pentag\w*|tumblers?|clam[- ]?shells?|apple[- ]?cores?|patch(?:es)?|papers?|pieces?)\b/i;
export const ROSETTES =
  /\b\d+ (?!rounds?\b|pieces?\b|patch)(?:\d+[- ]rounds? )?(?:\w+ )?(?:rosettes|flowers)\b/i;
const SET_TOGETHER = /\b(?:rosettes|flowers|stars|gardens?|blocks)\b/i;
const BETWEEN_ROSETTES =
  /\b(?:rosettes|flowers)\b.*\b(?:paths?|diamonds? (?:in )?between|set with)\b|\bpaths?\b.*\b(?:rosettes|flowers)\b/i;

/** The cloth for one part of a garden is told beside that for the others. */
const A_PART = /\b(?:paths?|cent(?:re|er)s?|petals?)\b/i;
const OF_A_GARDEN = new RegExp(`\\bgarden\\b|${ROSETTES.source}`, 'i');
/** One patch round each motif of a print, so many of them. */
const FUSSY = /\bfussy|\bmotifs?\b/i;
const isCounted: Mark = (question) => countIn.test(question);
/** What is said of cloth to be bought, and of nothing else. */
const FOR_BUYING = /\bwide\b|\bwof\b|\bspare\b|\bshrink|\bin \d+ (?:colou?rs|fabrics|prints)\b/i;
/** What is asked of the cloth, though not how much of it. */
const PRICED = /\bcosts?\b|\b(?:fabric|cloth|material)[ ?.!]*$/i;
const HOW_MANY_OF: Mark = (question) =>
  countIn.test(question) || /\b\d+ of (?:them|those|these)\b/i.test(question);

export const LONG_OR_MUCH = new RegExp(`${MUCH.source}|${TIME.source}|\\byardage\\b`, 'i');

/** Something to print, not something to reckon. */
const PRINTED =
  /\btemplates?\b|(?<!\d )\bprint(?:able|ed|out)?\b(?! ?(?:repeats?|is\b|that\b)).*\b(?:hex\w*|papers?|pieces?|patches|shapes?|diamonds?|triangles?|kites?|squares?|octagons?|pentagons?|tumblers?|clam\w*|apple\w*)\b|\bpapers?\b.*\bprint/i;
const SHEETS = /\bhow many (?:(?:a4|letter|paper) )?(?:sheets|pages)\b/i;
/** Papers for rosettes or a quilt are as many as it has patches. */
const PAPERS_TO_MAKE = /\bpapers (?:for|to make)\b/i;
const PAPERS_FOR = /\bpapers (?:for|to make) (?:my |the |all )?\d{2,}/i;
const FINISHING = /\b(?:backing|binding|batting|wadding)\b/i;

const A_ROW = new RegExp(`${A_COUNT}|\\brows? of \\d+\\b|\\bin (?:a|the|one|each|my) row\\b`, 'i');
const CAME_OUT =
  /\b(?:(?:came|comes?|coming|turned|turns?) (?:out|to)|measures?|measured|measuring)\b[a-z ]*\d/i;
/** What a row should come to. */
const ROW_ASKED =
  /\b(?:how (?:long|wide|big)|what) should\b.*\b(?:be|measure|come)\b|\bshould (?:be|measure) how (?:long|wide|big)\b|\bacross how (?:long|wide|big)\b|\bhow (?:long|wide|big) (?:is|are)\b.*\b(?:in a row|across)\b/i;
const TIME_TAKEN = /\btakes?\b|\bhours?\b|\bweeks?\b|\bsew\b/i;
const PATCH_OR_ROW = new RegExp(`${PATCH.source}|\\brows?\\b`, 'i');
const OUT_WRONG =
  /\b(?:come|comes|coming|came|turn\w*) out (?:all |much |a bit |a little |far |too )*(?:small|short|big|large|long|wrong|uneven)\b/i;
const IS_LONG = /\b(?:is|are|was|were|only|got|get)\b (?:only |about |just )*\d/i;
/** The side of the patches, and last of all what their row measures. */
const SIZE_THEN_LENGTH = new RegExp(`${NUMBER}${UNIT}[ ,=]+${NUMBER}(?:${UNIT})?[ .!?]*$`, 'i');
const SHOULD_BE = /\bshould(?: have)? (?:be|been|measured?)\b/i;
const ROW_AND_LENGTH = new RegExp(`${PATCHES}[ ,:=-]+${NUMBER}(?:${UNIT})`, 'i');
const ASKING_NUMBER = /\bhow (?:many|much|long|big|wide)\b|\bwhat (?:should|do|would|can)\b/i;

/** A wish for a whole quilt: out of the pile, or said as a wish, or with all its questions at once. */
const PILE = /\b(?:scraps?|scrappy|stash|leftovers?)\b(?! (?:piece|bit|yard|metre))/i;
const WISH =
  /\bi(?:'d| would|'m| am)? (?:really )?(?:want|like|love|wish|hope|plan|dream|thinking|planning|going)\b|\bi(?:'m| am) making\b|\bmake me\b|^(?:planning|making|thinking of)\b|\b(?:everything|all) (?:that )?(?:i|we|you|one) needs?\b|\bwhat (?:do|should|must) (?:i|we) buy\b|\bwhat (?:do|will|would|does|all do) (?:i|it|we|one) (?:all )?(?:need|take)\b/i;

const had = (question: string): boolean => hadIn(question) !== null;
const NEEDED = new RegExp(
  `${A_COUNT}|\\b(?:for|make|cover|fill) (?:an? |the |my )?(?:${BED}|${SIZE})|\\b(?:rosettes?|flowers?|garden|stars?|blocks)\\b|\\b\\d+[- ]rounds?\\b`,
  'i',
);
/** The question without the cloth that one has. */
function besideCloth(question: string): string {
  const has = hadIn(question);
  return has ? `${question.slice(0, has.at)} ${question.slice(has.at + has.length)}` : question;
}
/** Patches or a layout, beside the cloth that one has. */
const needed: Mark = (question) => {
  const rest = besideCloth(question);
  return NEEDED.test(rest) || partsIn(rest) !== null;
};
/** The size of a quilt, beside the cloth that one has. */
const sizedBeside: Mark = (question) => SIZED.test(besideCloth(question));
/** The number asked for is what the cloth gives, and not what is needed. */
const HOW_MANY = /\bhow many\b(?! (?:more|yards?|yds?|met))/i;
const inColours: Mark = (question) => coloursIn(question) !== null;
/** Both how long and how much. */
const allOfIt: Mark = (question) =>
  /\bhow long\b|\bhow many hours\b/i.test(question) &&
  /\bhow much\b|\byards?\b|\bfabric\b|\bcloth\b/i.test(question);
const BACK_AND_EDGE =
  /\bbacking\b.*\b(?:binding|batting|wadding)\b|\b(?:binding|batting|wadding)\b.*\bbacking\b/i;
const much: Mark = (question) => MUCH.test(question) !== LONG.test(question);

const SOME_CLOTH: Mark = (question) =>
  PIECE.test(question) ||
  SQUARES.test(question) ||
  A_LENGTH.test(question) ||
  A_PIECE.test(question) ||
  FROM_SIZE.test(question) ||
  had(question);
const QUILT_NAMED = new RegExp(`\\b(?:quilts?|bed|border|backing|star|rosette|block)\\b|${BED}`, 'i');

/** Read from the top: the first line whose signs are all there is what was meant. */
export const SIGNS: readonly Sign[] = [
  { ask: 'help', all: [/^(?:(?:can|could|will) (?:you|u|anyone|someone|anybody|somebody) )?help\b/i] },
  { ask: 'me show', all: [/\bmy (?:settings|defaults|units?)\b/i] },
  {
    ask: 'swap rounds',
    all: [
      /\bswap(?:s|ping|ped)?\b/i,
      /\b\d+ (?:members|people|of us|each)\b|\beach (?:of us )?(?:gives?|swaps?|makes?)\b|\brounds?\b/i,
    ],
  },
  {
    ask: 'ruler',
    all: [IN_OTHER_UNITS, A_MEASURE],
    none: [
      PATCH,
      QUILT,
      PIECE,
      SET_TOGETHER,
      /\d ?(?:x|by) ?\d/i,
      /\b(?:seams?|border|binding|backing|wide|row|repeat)\b/i,
    ],
  },
  {
    ask: 'ruler',
    all: [/^(?:please )?convert\b/i, A_MEASURE],
    none: [PATCH, QUILT, /\d ?(?:x|by) ?\d/i, /\b(?:minutes?|hours?|weeks?|days?)\b/i],
  },
  { ask: 'ruler', all: [CONVERTED] },
  { ask: 'swap list', all: [/\bswap\b/i, /\b(?:what|who|list|show|offered|wanted|wished)\b/i] },
  { ask: 'plan list', all: [/\b(?:our|the guild['’]?s|kept|which|what) plans\b/i] },
  {
    ask: 'plan show',
    all: [/\b(?:show|see|open|look at|where['’]?s|find)\b.*\bplan (?:called |named |of )?\w/i],
  },
  { ask: 'plan make', all: [PAPERS_TO_MAKE, ROSETTES], none: [isCounted] },
  { ask: 'plan make', all: [PAPERS_TO_MAKE, SIZED], none: [isCounted, MANY] },
  { ask: 'template', all: [PRINTED], none: [/\btemplate size\b|\bmy templates?\b/i] },
  { ask: 'template', all: [SHEETS, PATCH] },
  { ask: 'template', all: [PAPERS_FOR], none: [/\d ?(?:x|by) ?\d/i] },
  { ask: 'template', all: [/\bpapers\b/i, /\b\d{2,5} ?x ?\d/i] },
  {
    ask: 'check',
    all: [/\brows?\b/i, /\b(?:(?:came|comes?|turned) (?:out|to)|measures?|measured|short|long)\b|=/i, /\d/],
    none: [/\bhow (?:many|much|long)\b/i],
  },
  { ask: 'check', all: [CAME_OUT, A_ROW], none: [ASKING_NUMBER] },
  { ask: 'check', all: [/\brows? of \d+\b/i, IS_LONG], none: [ASKING_NUMBER] },
  { ask: 'check', all: [SHOULD_BE, IS_LONG, A_ROW], none: [/\bhow (?:many|much)\b/i] },
  {
    ask: 'check',
    all: [/\b(?:short|small|long|large|wrong|off)\b/i, A_ROW, ROW_AND_LENGTH],
    none: [ASKING_NUMBER],
  },
  { ask: 'check', all: [/\bin (?:a|the|one|each|my) row\b/i, IS_LONG], none: [ASKING_NUMBER] },
  { ask: 'check', all: [/\brow\b/i, A_ROW, SIZE_THEN_LENGTH], none: [ASKING_NUMBER, SIZED] },
  { ask: 'check', all: [ROW_ASKED, A_ROW], none: [TIME_TAKEN] },
  { ask: null, all: [/\brows?\b/i, /\b(?:out|off) by\b/i] },
  { ask: 'check', all: [OUT_WRONG, PATCH_OR_ROW] },
  { ask: 'kit', all: [/\bkits?\b/i, /\d/] },
  { ask: 'cut', all: [WHAT_SQUARE, OTHERS], none: [/\bhow many\b/i, had] },
  { ask: 'yield', all: [BIG_ENOUGH, SQUARES, OTHERS] },
  { ask: 'cut', all: [A_STRIP, PATCH, MADE_OF_IT], none: [/\b(?:from|out of)\b/i] },
  { ask: 'yield', all: [SIZE_ASKED, PATCH, SOME_CLOTH], none: [QUILT_NAMED, PATCH_SIZED, COMES_TO] },
  { ask: 'plan make', all: [had, sizedBeside, SET_TOGETHER] },
  { ask: 'yardage', all: [had, needed], none: [HOW_MANY, PILE] },
  { ask: 'yield', all: [had, PATCH], none: [/\bhow much\b/i, CAME_OUT] },
  { ask: 'yield', all: [had, HOW_MANY], none: [QUILT_NAMED, TIME] },
  { ask: 'cut', all: [WAS_CUT, PATCH, COMES_TO], none: [/\bhow (?:many|much|long)\b/i] },
  { ask: 'plan remove', all: [/^(?:remove|delete|drop) (?:the |my |our )?plan \w/i] },
  { ask: 'plan make', all: [/\bplan\b|\bshopping list\b/i] },
  { ask: 'plan make', all: [PILE, SIZED], none: [MANY, much] },
  { ask: 'plan make', all: [allOfIt, SIZED] },
  { ask: 'plan make', all: [BACK_AND_EDGE, SIZED, PATCH] },
  { ask: 'plan make', all: [WISH, QUILT], none: [/\bhow many\b/i, much, FINISHING, /\bborders?\b/i] },
  {
    ask: 'plan make',
    all: [/\bhow much\b|\bhow long\b|\byardage\b|\bhours\b|\bfabric\b/i, SIZED, SET_TOGETHER],
    none: [FINISHING, /\bborders?\b/i],
  },
  { ask: 'plan make', all: [TIME_FIRST, SIZED, SET_TOGETHER] },
  { ask: 'plan make', all: [LONG_OR_MUCH, /\bstars\b|\b\d+ star\b/i, /\bhex\w*\b/i] },
  { ask: 'plan make', all: [LONG_OR_MUCH, /\bstar quilts?\b/i, SIZED], none: [FINISHING] },
  { ask: 'plan make', all: [APART, ROSETTES, LONG_OR_MUCH] },
  { ask: 'plan make', all: [LOOSE_STARS, LONG_OR_MUCH], none: [FINISHING, SIZED] },
  { ask: 'plan make', all: [MUCH, A_PART, OF_A_GARDEN], none: [FINISHING, /\bborders?\b/i] },
  { ask: 'yardage', all: [FUSSY, HOW_MANY_OF], none: [had] },
  { ask: null, all: [BASTED, LAYERS] },
  { ask: 'yardage', all: [isCounted, PRICED], none: [had] },
  { ask: 'time', all: [TIME], none: [FINISHING] },
  { ask: 'yield', all: [/\bhow many\b/i, PATCH, /\b(?:from|out of)\b/i, A_LENGTH], none: [MUCH, SIZED] },
  { ask: 'finish backing', all: [/\bbacking\b|\bfor the back\b|\bwide[- ]?back\b/i] },
  { ask: 'finish backing', all: [/\bback (?:of|for) (?:an?|the|my|this|our)\b/i, QUILT] },
  { ask: 'finish binding', all: [/\bbinding\b/i] },
  { ask: 'finish batting', all: [/\b(?:batting|wadding)\b/i] },
  { ask: 'finish border', all: [/\bborders?\b/i] },
  {
    ask: 'finish bed',
    all: [/\bquilt size\b|\bsize (?:is|of|for) an? \w+ quilt\b/i, SIZED],
    none: [PATCH, /\d/],
  },
  { ask: 'finish bed', all: [/\bmattress\b|\b(?:drop|overhang)\b/i], none: [PATCH] },
  {
    ask: 'finish bed',
    all: [/\b(?:what size|how (?:big|large|wide))\b.*\bquilts?\b|\bquilt size\b/i, /\bbed\b/i],
    none: [PATCH],
  },
  {
    ask: 'yield',
    all: [PIECE, /\bhow many\b|\bfrom\b|\bout of\b|\bget\b|\bfits?\b|\benough\b/i],
    none: [/\bhow much\b/i],
  },
  { ask: 'yield', all: [PIECE, PATCH, ENOUGH] },
  { ask: 'yield', all: [/\bhow many\b/i, SQUARES, OTHERS] },
  { ask: 'yield', all: [A_PIECE, SIZED, PATCH] },
  { ask: 'yield', all: [/\bhow many\b/i, PATCH, FROM_SIZE] },
  { ask: 'yield', all: [/\bhow many\b/i, PATCH, A_LENGTH], none: [MUCH, SIZED] },
  { ask: 'yield', all: [PAGE, PATCH, /\bhow many\b|\bfits?\b/i] },
  { ask: 'yield', all: [MANY, GET, LENGTH], none: [MUCH] },
  { ask: 'yield', all: [MANY, PATCH, IN_A_LENGTH], none: [MUCH] },
  { ask: 'yield', all: [MANY, PATCH, /\b(?:from|out of)\b/i], none: [MUCH, QUILT] },
  { ask: 'yield', all: [PATCH, /\b(?:from|out of)\b/i, LENGTH], none: [MUCH, QUILT, /\bneed|\bbuy/i] },
  { ask: 'yardage', all: [MUCH] },
  { ask: 'yardage', all: [/\byardage\b/i] },
  { ask: 'yardage', all: [CLOTH, /\bneed|\bbuy|\bfor\b|\benough\b/i] },
  { ask: 'count diamonds', all: [LARGE_DIAMOND, DIAMONDS_ALONG] },
  { ask: 'count ball', all: [/\bball\b/i] },
  { ask: 'count garden', all: [/\bgarden\b/i] },
  { ask: 'count garden', all: [BETWEEN_ROSETTES] },
  { ask: 'count garden', all: [ROSETTES] },
  { ask: 'count garden', all: [/\b(?:rosettes|flowers)\b/i, QUILT] },
  { ask: 'count rosette', all: [/\b(?:rosettes?|flowers?)\b/i] },
  { ask: 'count stars', all: [/\b\d+ stars\b|\bstars (?:set|with|and)\b/i] },
  { ask: 'count stars', all: [/\bstars\b/i, QUILT] },
  { ask: 'count star', all: [/\bstars?\b/i] },
  { ask: 'count blocks', all: [/\bblocks?\b/i] },
  { ask: 'count diamonds', all: [/\bdiamonds?\b/i, /\brounds?\b|\bcent(?:re|er)\b|\bin the middle\b/i] },
  { ask: 'count rosette', all: [/\bround (?:and|&|n) round\b/i] },
  { ask: 'count rosette', all: [inColours, /\brounds?\b/i] },
  { ask: 'yield', all: [FAT, PATCH], none: [MUCH, QUILT] },
  { ask: 'cut', all: [CUT, /\brectang|\b(?:elongated|stretched|long)[- ]hex/i] },
  { ask: 'cut', all: [CUT, PATCH], none: [QUILT] },
  { ask: 'count field', all: [QUILT] },
  { ask: 'cut', all: [CUT] },
  { ask: 'yardage', all: [isCounted, FOR_BUYING] },
  { ask: 'yield', all: [PATCH, A_LENGTH], none: [/^\d+ (?:squares|rectang)/i] },
  { ask: 'cut', all: [PATCH, /\d/] },
  { ask: 'help', all: [/^(?:hello|hi|hey|what can you do|commands?)\b/i] },
];

/** Each mark is looked for once: a pattern that is run again is compiled anew, and slower. */
function marked(question: string): (mark: Mark) => boolean {
  const known = new Map<Mark, boolean>();
  return (mark) => {
    const there = known.get(mark) ?? (mark instanceof RegExp ? mark.test(question) : mark(question));
    known.set(mark, there);
    return there;
  };
}

/** What a question is about, by its signs; null where it bears none that are known. */
export function signOf(question: string): string | null {
  const has = marked(question);
  return SIGNS.find(({ all, none = [] }) => all.every(has) && !none.some(has))?.ask ?? null;
}
