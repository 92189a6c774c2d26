import { END, heard, LEAD, NOT_SO, of, type Saying } from './saying.ts';

const THE_SWAP = /\b(?:to swap|(?:for|in|into|to|from) (?:the|our|this) swap|swap (?:away|them|it))\b/i;
/** What is to be swapped away is given, though she wants to. */
const TO_SWAP = '(?:like|love|want|wish|need|have|hope|hoping|looking) to swap';
const GIVING = of(`\\b${TO_SWAP}\\b`);
const OFFERING = of(
  `\\b(?:(?:would |['’]d )?${TO_SWAP}|i(?: have|['’]ve got| got|['’]ve| can offer| offer)|offer(?:ing)?|put(?:ting)? in)\\b`,
);
const WISHING = /\b(?:want|would like|['’]d like|wish for|looking for|need|after)\b/i;
const SWAPPED = new RegExp(THE_SWAP.source, 'gi');
/** What is given and what is wanted for it are two lines, an offer and a wish. */
const IN_EXCHANGE = /\bfor \d/i;
const ASKING = /\?|\bhow\b|\bwho\b/i;

/** The goods of a sentence about a swap: what stands behind the verb, less the words that say it is for the swap. */
const goodsAfter = (verb: RegExp) => (text: string) => {
  const found = verb.exec(text);
  const behind = found ? text.slice(found.index + found[0].length) : text;
  return behind
    .replace(SWAPPED, ' ')
    .replace(/\b(?:please|thanks|thank you)\b/gi, ' ')
    .replace(/[\s,.!?]+$/, '')
    .trim();
};

const HAVE = "(?:i(?:['’]ve| have)?|ive)(?: just| now| already)?";
const SENT: readonly RegExp[] = [
  of(
    LEAD,
    HAVE,
    ` (?:posted|sent|mailed)(?: off)? (?:mine|my (?:parcels?|envelopes?)|all my (?:parcels|envelopes))`,
    END,
  ),
  of(LEAD, `my (?:parcels?|envelopes?) (?:is|are) in the post`, END),
];
const CAME: readonly RegExp[] = [
  of(LEAD, `(?:all )?my (?:parcels?|envelopes?) (?:has |have )?(?:come|came|arrived)`, END),
];

/** What is said of a swap. */
export const SWAPPING: readonly Saying[] = [
  heard('swap want', {
    any: [WISHING],
    all: [THE_SWAP, /\d/],
    none: [ASKING, GIVING],
    words: goodsAfter(WISHING),
  }),
  heard('swap offer', {
    any: [OFFERING],
    all: [THE_SWAP, /\d/],
    none: [ASKING, IN_EXCHANGE],
    words: goodsAfter(OFFERING),
  }),
  heard('swap list', {
    any: [
      /\bwho (?:wants|offers|has|would like)\b.*\bswap\b/i,
      /\bwhat(?:['’]s| is)? (?:offered|on offer|wished for|in the swap)\b/i,
      of(LEAD, `when (?:does|will|is) (?:the|our|this) swap (?:close|end|over|finish|closing)`, END),
      of(LEAD, `is there a swap(?: on| open| running| now)*`, END),
    ],
  }),
  heard('swap sent', { any: SENT, none: [NOT_SO, /\?/] }),
  heard('swap received', { any: CAME, none: [NOT_SO, /\?/] }),
  heard('swap withdraw', { any: [of(LEAD, `withdraw my (?:\\p{L}+ ?){1,3}`, END)], none: [NOT_SO, /\?/] }),
  heard('swap envelopes', {
    any: [
      /\b(?:who|what)\b.*\bdo i (?:send|pack|post)\b/i,
      /\bmy envelopes?\b/i,
      of(LEAD, `what do i get(?: (?:from|in|out of) (?:the|our|this) swap)?`, END),
      /\bwhat goes in (?:my|the) envelopes?\b/i,
    ],
  }),
];
