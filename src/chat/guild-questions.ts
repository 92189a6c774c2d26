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
const ASKING = /\?|\bhow\b|\bneed|\bcan\b|\bfrom\b|\bout of\b/i;
const DONE = /\b(?:finished|made|sewed|sewn|stitched|completed|done|did|pieced)\b/i;
const TELLING = /^\s*(?:i|i've|i have|ive|just|today|yesterday)\b/i;

/** The count in figures, and what follows it: what stands before is how she says that it is a log. */
function fromCount(text: string): string {
  const found = COUNTED.exec(text) ?? /\b(\d[\d,]*)\b/.exec(text);
  if (!found) return text;
  const before = /\b(yesterday|today)\b/i.exec(text.slice(0, found.index))?.[1];
  const said = found[1]!.toLowerCase();
  const number = /^(?:an?|another)$/.test(said) ? 1 : NUMBERS.indexOf(said) + 1;
  const figures = number === 0 ? said : String(number);
  const after = text.slice(found.index + found[1]!.length).replace(/\s*[.!]+\s*$/, '');
  return `${figures}${after}${before ? ` day:${before}` : ''}`;
}

const SAID: readonly Said[] = [
  {
    ask: 'standings',
    all: [
      /\bstandings\b|\bhow far\b.*\b(?:are we|have we|along)\b|\bhow are we (?:doing|getting on)\b|\bare we (?:there|on track|nearly)\b|\bhow many (?:\w+ )?(?:have we|are (?:done|finished|left)|did we)\b|\bwhen will (?:we|the challenge|it all) be (?:done|finished|ready)\b|\bhow many .*\bso far\b/i,
    ],
  },
  {
    ask: 'challenge list',
    all: [/\b(?:which|what) challenges?\b|\bchallenges? (?:is|are) (?:on|open|running)\b/i],
  },
  { ask: 'month block', all: [/\b(?:this|the) month(?:['’]?s)? block\b|\bblock (?:for|of) this month\b/i] },
  { ask: 'month show', all: [/\bblocks? of the month\b/i] },
  { ask: 'log', all: [/^\s*(?:please\s+)?log\s/i, new RegExp(COUNT, 'i')], words: fromCount },
  { ask: 'log', all: [TELLING, DONE, COUNTED], none: [ASKING], words: fromCount },
  {
    ask: 'undo',
    all: [/^\s*(?:please\s+)?(?:undo|take (?:that|it|my last(?: log)?) back)\b/i],
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
