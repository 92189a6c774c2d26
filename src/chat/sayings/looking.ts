import { END, heard, LEAD, namedIn, of, type Saying } from './saying.ts';

const CHALLENGE = "(?:the|our|this) (?:[\\p{L}’'-]+ )?challenge";

/** With one of these it is asked of the work, not of what was done together. */
const THE_WORK =
  /\bfor \d|\bin (?:a|an|one|\d)\b|\bquilt\b|\byardage\b|\bfabric\b|\bseams?\b|\bhours? a (?:day|week)\b|\d ?x ?\d/i;

const SHOW: readonly RegExp[] = [
  of(`\\bwhen (?:does|do|will|is|did) ${CHALLENGE}\\b`),
  of(`\\b(?:what(?:['’]s| is)|tell me about|show(?: me)?) ${CHALLENGE}${END}`),
  of(`\\b(?:what(?:['’]s| is)|show(?: me)?) (?:the|our) goal(?: of ${CHALLENGE})?${END}`),
  of(`\\bhow long (?:does|is|will|do we have)\\b.*\\bchallenge\\b`),
  of(`\\bwho(?: all)?(?:['’]s| is| has| have)? (?:joined|taking part)(?: in)?(?: ${CHALLENGE})?${END}`),
  of(`\\bwho(?:['’]s| is) in(?: ${CHALLENGE})?${END}`),
  of(
    `\\b(?:when(?:['’]s| is)|what(?:['’]s| is)) the (?:deadline|last day|end date)(?: of ${CHALLENGE})?${END}`,
  ),
  of(
    `\\bhow (?:many days|much time|long) (?:are |is |do we have )?(?:left|to go)(?: (?:in|of) ${CHALLENGE})?${END}`,
  ),
];

const DONE = '(?:done|made|finished|sewn|sewed|logged|completed)';

const STANDINGS: readonly RegExp[] = [
  /\bstandings\b/i,
  /\bhow far\b.*\b(?:are we|have we|along)\b/i,
  /\bhow are we (?:doing|getting on)\b/i,
  /\bare we (?:there|on track|nearly)\b/i,
  /\bwhen will (?:we|the challenge|it all) be (?:done|finished|ready)\b/i,
  of(`\\bhow many (?:\\w+ )?(?:have we|are (?:done|finished|left(?! over| of| from)))\\b`),
  of(`\\bhow many .*\\bso far${END}`),
  of(`\\bhow many (?:\\w+ )?(?:are )?(?:left(?! over| of| from| if)|to go)\\b`),
  /\bwhat (?:did|have) i (?:log|sewn?|logged)\b/i,
  of(`\\bhow many (?:\\w+ )?have (?:i|we) ${DONE}\\b`),
  of(`\\bhow many (?:\\w+ )?did (?:i|we) (?:do|make|finish|sew|log)\\b`),
  of(`\\bwhat(?:['’]s| is) (?:my|our) (?:total|number|score)(?: so far| now)?${END}`),
  of(`\\bhow many (?:\\w+ )?has (?!the |it |that )\\p{L}+ ${DONE}${END}`),
  of(`\\bwho (?:has |have )?(?:logged|sewn|made) (?:the )?most\\b`),
  of(`\\b(?:who(?:['’]s| is) (?:winning|ahead|in the lead|leading)|will we make it)${END}`),
  of(LEAD, `what(?:['’]s| is) left(?: to (?:do|sew|make))?${END}`),
];

/** "When does Winter end": a name begins with a capital. */
const WHEN_NAMED =
  /^\s*(?:[Ww]hen (?:does|is|will)|[Hh]ow long (?:is|does)) (?!The |Our |This |It |I )(?<name>\p{Lu}[\p{L}\d’' ]*?) (?:end|close|finish|over|run|on|last|begin|start)\s*[?.!]*$/u;
const AT_PACE = of(
  `\\bif (?:we|i) (?:do|make|sew|finish|log) (?<pace>\\d[\\d,]*) (?:\\w+ )?(?:a|per|each|every) week\\b.*\\b(?:when|how long|will)\\b|\\bwhen .*\\bif (?:we|i) (?:do|make|sew|finish|log) (?<other>\\d[\\d,]*) (?:\\w+ )?(?:a|per|each|every) week\\b`,
);

/** How it is done, asked by whoever has not done it yet. */
const HOW = (what: string): RegExp => of(LEAD, `how (?:do|can|does) (?:i|we|one|you) ${what}`, END);

/** What is asked of the challenges. */
export const LOOKING: readonly Saying[] = [
  heard('help', {
    any: [HOW('log(?: (?:it|them|one|something|what i made))?'), HOW('undo(?: (?:it|a log|my log))?')],
    words: (text) => /\b(?:log|undo)\b/i.exec(text)?.[0].toLowerCase() ?? '',
  }),
  heard('help', {
    any: [HOW(`(?:join|take part|leave)(?: in)?(?: ${CHALLENGE}| a challenge)?`)],
    words: () => 'challenge',
  }),
  heard('challenge show', { any: [WHEN_NAMED], words: (text) => WHEN_NAMED.exec(text)?.groups?.name ?? '' }),
  heard('standings', {
    any: [AT_PACE],
    none: [THE_WORK, /\d\b.*\b\d/],
    words: (text) => {
      const { pace, other } = AT_PACE.exec(text)?.groups ?? {};
      return `pace:${pace ?? other}`;
    },
  }),
  heard('challenge show', { any: SHOW, none: [THE_WORK], words: (text) => namedIn(text, 'challenge') }),
  heard('standings', { any: STANDINGS, none: [THE_WORK] }),
  heard('challenge list', {
    any: [
      /\b(?:which|what) challenges?\b/i,
      /\bchallenges? (?:is|are) (?:on|open|running)\b/i,
      of(LEAD, `is there a challenge(?: on| open| running| now)?${END}`),
    ],
  }),
];
