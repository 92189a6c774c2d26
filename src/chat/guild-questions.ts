/** What members say of what the guild sews together, and the form and the words that it stands for. */
interface Said {
  readonly ask: string;
  readonly all: readonly RegExp[];
  readonly none?: readonly RegExp[];
  /** The words that the options are read from; none where they say nothing. */
  words?(text: string): string;
}

const NUMBERS = [
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];
const COUNT = `(?:\\d[\\d,]*|an?|another|${NUMBERS.join('|')})`;
const NOUN = '(?:rosettes?|flowers?|blocks?|stars?|patch(?:es)?|hexies?|hexes|hexagons?|diamonds?)';
const COUNTED = new RegExp(`\\b(${COUNT})\\s+(?:(?:more|new|further)\\s+)?${NOUN}\\b`, 'i');
const DAYS =
  '(?:today|yesterday|last night|this (?:morning|evening|afternoon|week(?:end)?)|(?:on |last )?(?:mon|tues|wednes|thurs|fri|satur|sun)day)';
/** A count with nothing behind it: "log two", "log two, the blue ones", "two today". */
const LONE = new RegExp(`\\b(another|${NUMBERS.join('|')})(?=\\s*(?:$|[,;.!]|${DAYS}\\b))`, 'i');
const ALONE = new RegExp(
  `(?<![\\d./x-] ?)(?<!\\bby )\\b(?:\\d[\\d,]*|another|${NUMBERS.join('|')})(?: more| new)?(?=\\s*(?:[.!]*$|,? ?${DAYS}\\b))`,
  'i',
);
const ASKING = /\?|\bhow\b|\bneed|\bcan\b|\bfrom\b|\bout of\b/i;
const DONE = /\b(?:finished|made|sewed|sewn|stitched|completed|done|did|pieced)\b/i;
const TELLING =
  /^\s*(?:i|i['’]ve|i have|ive|just|today|yesterday|another|finished|made|sewed|sewn|stitched|completed|done|did)\b/i;
const A_DAY = new RegExp(`\\b${DAYS}\\b`, 'i');
const AT_THE_START = new RegExp(`^\\s*${COUNTED.source}`, 'i');
/** A row that was measured is no log. */
const MEASURED = /\bmeasur|\b(?:came|come|comes|coming|turned) (?:out|to)\b|\bin a row\b/i;
const THE_SWAP = /\b(?:to swap|(?:for|in|into|to|from) (?:the|our|this) swap|swap (?:away|them|it))\b/i;
const OFFERING = /\b(?:i(?: have|['’]ve got| got|['’]ve| can offer| offer)|offer(?:ing)?|put(?:ting)? in)\b/i;
const WISHING = /\b(?:want|would like|['’]d like|wish for|looking for|need|after)\b/i;
const SWAPPED = new RegExp(THE_SWAP.source, 'gi');

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
/** What she wants her answers in. */
const SETTING =
  /\b(?:set|use|using|switch|change|answer|show|speak|tell me|work)\b|\bplease\b|\bprefer\b|\bi(?:'m| am) in\b/i;
const IN_UNIT = /\b(cm|centimet\w+|mm|millimet\w+|metric|inch(?:es)?|imperial)\b/i;
const unitIn = (text: string): string => {
  const said = IN_UNIT.exec(text)?.[1] ?? '';
  return /^mm|^milli/i.test(said) ? 'mm' : /^inch|^imp/i.test(said) ? 'in' : 'cm';
};
/** With one of these it is a question about the work, asked in that unit. */
const A_JOB =
  /\b(?:how|what|hex\w*|diamonds?|triangles?|quilts?|fabric|cloth|rosettes?|flowers?|stars?|papers?|templates?|backing|binding|borders?|plan)\b/i;
const WEEKDAY = /\b(monday|tuesday|wednesday|thursday|friday|saturday|sunday)s?\b/i;
/** The number of a block of the month. */
const BLOCK = /\bblock (?:no\.? ?|number )?(\d{1,3})\b/i;
const blockIn = (text: string) => BLOCK.exec(text)?.[1] ?? '';

/** The count in figures, and what follows it: what stands before is how she says that it is a log. */
function fromCount(text: string): string {
  const found = COUNTED.exec(text) ?? /\b(\d[\d,]*)\b/.exec(text) ?? LONE.exec(text);
  if (!found) return text;
  const before = /\b(yesterday|today)\b/i.exec(text.slice(0, found.index))?.[1];
  const said = found[1]!.toLowerCase();
  const number = /^(?:an?|another)$/.test(said) ? 1 : NUMBERS.indexOf(said) + 1;
  const figures = number === 0 ? said : String(number);
  const after = text.slice(found.index + found[1]!.length).replace(/\s*[.!]+\s*$/, '');
  return `${figures}${after}${before ? ` day:${before}` : ''}`;
}

const CHALLENGE = /\bchallenge\b/i;
const SWAP = /\bswap\b/i;
const JOINING =
  /^\s*(?:please )?(?:(?:can|may|could) i |i(?:['’]d| would)? (?:like|love|want) to |i(?:['’]ll| will) |i wanna |let me )?(?:join|take part|be part)\b|\b(?:sign me up|count me in|add me|put me (?:down|in)|i(?:['’]m| am) in(?=\s*(?:$|[!.,]|for\b)))/i;
const LEAVING =
  /^\s*(?:please )?(?:(?:can|may|could) i |i(?:['’]d| would)? (?:like|want|have|need) to |i(?:['’]ll| will) )?(?:leave|drop out|withdraw from|quit)\b|\btake me (?:out|off)\b/i;
/** What she logged was another number. */
const MEANT =
  /\b(?:mistake|sorry|oops|wrong)\b.*\b(?:only|did|was|meant|made|be) (\d+)\b|^\s*(?:(?:sorry|oops|no)[,!. ]+)*(?:i (?:only )?meant|make (?:that|it)|(?:that|it) (?:was|should (?:be|have been))|should (?:be|have been)) (?:only )?(\d+)\b/i;
const MEANT_NUMBER = new RegExp(`${MEANT.source}(?=\\s*(?:$|[,.!]|not\\b|${NOUN}))`, 'i');

const SAID: readonly Said[] = [
  {
    ask: 'fix',
    all: [MEANT_NUMBER],
    none: [/\?|\bhow\b/i, /\bin a row\b|\bmeasur/i],
    words: (text) => {
      const [, one, other] = MEANT_NUMBER.exec(text) ?? [];
      return `pieces:${one ?? other}`;
    },
  },
  { ask: 'swap leave', all: [LEAVING, SWAP], none: [/\d/] },
  { ask: 'challenge leave', all: [LEAVING, CHALLENGE], none: [/\d/] },
  { ask: 'swap join', all: [JOINING, SWAP], none: [/\d/] },
  {
    ask: 'challenge join',
    all: [JOINING],
    none: [
      /\d/,
      SWAP,
      /\bjoin (?:the |them|it|my|two|all)? ?(?:seams?|rosettes?|patch|hex|rows?|pieces|corners|flowers|strips|blocks|together)/i,
    ],
  },
  {
    ask: 'challenge show',
    all: [
      /\bwhen (?:does|do|will|is|did) (?:the|our|this) (?:\w+ )?challenge\b|\b(?:what(?:['’]s| is)|tell me about|show(?: me)?) (?:the|our|this) (?:\w+ )?(?:challenge|goal)\b|\bhow long (?:does|is|will|do we have)\b.*\bchallenge\b|\bwho(?: all)?(?:['’]s| is| has| have)? (?:joined|taking part|in (?:the|our|this) challenge)\b/i,
    ],
  },
  {
    ask: 'standings',
    all: [
      /\bstandings\b|\bhow far\b.*\b(?:are we|have we|along)\b|\bhow are we (?:doing|getting on)\b|\bare we (?:there|on track|nearly)\b|\bhow many (?:\w+ )?(?:have we|are (?:done|finished|left)|did we)\b|\bwhen will (?:we|the challenge|it all) be (?:done|finished|ready)\b|\bhow many .*\bso far\b|\bhow many (?:\w+ )?(?:left|to go)\b|\bwhat (?:did|have) i (?:log|sewn?|logged)\b|\bhow many (?:\w+ )?(?:have i (?:done|made|finished|sewn|sewed|logged|completed)|did i (?:do|make|finish|sew|log))\b|\bwhat(?:['’]s| is) (?:my|our) (?:total|number|score)\b|\bwho (?:has |have )?(?:logged|sewn|made) (?:the )?most\b/i,
    ],
  },
  {
    ask: 'challenge list',
    all: [/\b(?:which|what) challenges?\b|\bchallenges? (?:is|are) (?:on|open|running)\b/i],
  },
  { ask: 'month block', all: [/\b(?:this|the) month(?:['’]?s)? block\b|\bblock (?:for|of) this month\b/i] },
  { ask: 'month show', all: [/\bblocks? of the month\b/i] },
  { ask: 'month block', all: [/\bwhen\b/i, BLOCK], words: blockIn },
  { ask: 'log', all: [/^\s*(?:please\s+)?log\s/i, new RegExp(COUNT, 'i')], words: fromCount },
  { ask: 'month done', all: [TELLING, DONE, BLOCK], none: [ASKING], words: blockIn },
  {
    ask: 'month show',
    all: [
      /\bwho\b.*\b(?:finished|done|made)\b.*\bblocks?\b|\b(?:all|list of) (?:the )?blocks of the month\b/i,
    ],
  },
  {
    ask: 'month block',
    all: [
      /\b(?:which|what|show)\b.*\bblock (?:of the month|is (?:it|on|next|open)|this month|(?:no\.? ?|number )?\d)|\bthis month['’]?s block\b|^\s*block of the month\b/i,
    ],
    words: blockIn,
  },
  {
    ask: 'swap want',
    all: [THE_SWAP, WISHING, /\d/],
    none: [/\?|\bhow\b|\bwho\b/i],
    words: goodsAfter(WISHING),
  },
  {
    ask: 'swap offer',
    all: [THE_SWAP, OFFERING, /\d/],
    none: [/\?|\bhow\b|\bwho\b/i],
    words: goodsAfter(OFFERING),
  },
  {
    ask: 'swap list',
    all: [
      /\bwho (?:wants|offers|has|would like)\b.*\bswap\b|\bwhat(?:['’]s| is)? (?:offered|on offer|wished for|in the swap)\b/i,
    ],
  },
  {
    ask: 'swap envelopes',
    all: [
      /\b(?:who|what)\b.*\bdo i (?:send|pack|post)\b|\bmy envelopes?\b|\bwhat goes in (?:my|the) envelopes?\b/i,
    ],
  },
  { ask: 'log', all: [TELLING, DONE, COUNTED], none: [ASKING, MEASURED], words: fromCount },
  { ask: 'log', all: [TELLING, DONE, ALONE], none: [ASKING, MEASURED], words: fromCount },
  { ask: 'log', all: [AT_THE_START, A_DAY], none: [ASKING], words: fromCount },
  {
    ask: 'undo',
    all: [
      /^\s*(?:please\s+)?(?:undo|take (?:that|it|my last(?: log| one)?) back|take back (?:that|it|my last(?: log| one)?)|(?:delete|remove) my last (?:log|one|entry))\b/i,
    ],
  },
  {
    ask: 'me export',
    all: [/\bwhat do you (?:keep|know|store|remember) (?:of|about|on) me\b|\bexport my data\b/i],
  },
  { ask: 'me forget', all: [/^\s*(?:please\s+)?(?:forget me|delete (?:my data|all my data|me))\b/i] },
  { ask: 'me set', all: [SETTING, IN_UNIT], none: [/\d/, A_JOB], words: (text) => `unit:${unitIn(text)}` },
  {
    ask: 'me set',
    all: [/\bremind me\b/i, WEEKDAY],
    words: (text) => `nudge:${WEEKDAY.exec(text)?.[1]?.toLowerCase()}`,
  },
  {
    ask: 'guild set',
    all: [/\b(?:remind|tell|update) (?:us|everyone|everybody|the (?:guild|group))\b/i, WEEKDAY],
    words: (text) => `digest:${WEEKDAY.exec(text)?.[1]?.toLowerCase()}`,
  },
  {
    ask: 'me set',
    all: [/\b(?:stop|no more)\b.*\bremind/i],
    words: () => 'nudge:off',
  },
];

/**
 * A question or a saying in plain words about what the guild sews together, or null where it is about something
 * else.
 *
 * @example
 * readGuildQuestion('how far are we?').command // "standings"
 * readGuildQuestion('I made two rosettes yesterday').words // "2 rosettes yesterday"
 * readGuildQuestion('how many rosettes from a fat quarter?') // null
 */
export function readGuildQuestion(text: string): { command: string; form: string; words: string } | null {
  const found = SAID.find(
    ({ all, none = [] }) => all.every((sign) => sign.test(text)) && !none.some((sign) => sign.test(text)),
  );
  if (!found) return null;
  const [command = '', form = ''] = found.ask.split(' ');
  return { command, form, words: found.words?.(text) ?? '' };
}
