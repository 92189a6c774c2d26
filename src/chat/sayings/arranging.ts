import { NOUN } from './counts.ts';
import { END, heard, LEAD, NOT_SO, type Saying } from './saying.ts';

const of = (...parts: readonly string[]): RegExp => new RegExp(parts.join(''), 'iu');

const CHALLENGE = "(?:(?:the|our|this) )?(?<name>[\\p{L}\\d’' -]+?) challenge";
const DATE =
  '(?:on )?(?<date>\\d{4}-\\d{1,2}-\\d{1,2}|\\d{1,2}(?:st|nd|rd|th)?(?: of)? \\p{L}{3,9}\\.?(?:,? \\d{4})?|\\p{L}{3,9} \\d{1,2}(?:st|nd|rd|th)?(?:,? \\d{4})?|\\d{1,2}[/.]\\d{1,2}[/.]\\d{4})';

/** A name as it is written: what begins with a small letter may be anything. */
const NAMED = /^\p{Lu}/u;

const OPEN = of(
  LEAD,
  '(?:open|start|begin) an? (?:new )?challenge (?:called |named )(?<name>[^,;:]+?)(?:[,;:]| with | until | till | from |$)',
);
const GOAL = of(`(?:goal (?:of |is )?|\\b)(?<goal>\\d[\\d,]*) (?<noun>${NOUN})\\b`);
const ROUNDS = /\b(\d{1,2})[- ]rounds?\b/iu;
const LAST = of(`\\b(?:until|till|to|by|ending|ends) ${DATE}`);
const FIRST = of(`\\b(?:from|starting|begins?|beginning) ${DATE}`);

const COUNTED: readonly (readonly [RegExp, string])[] = [
  [/^(?:rosette|flower)/i, 'rosette'],
  [/^block/i, 'block'],
  [/^star/i, 'star'],
  [/./, 'patch'],
];

/** What she said of a challenge that is opened, each under its name. */
function opening(text: string): string {
  const name = OPEN.exec(text)?.groups?.name?.trim() ?? '';
  const { goal, noun = '' } = GOAL.exec(text)?.groups ?? {};
  const rounds = ROUNDS.exec(text)?.[1];
  const [first, last] = [FIRST, LAST].map((day) => day.exec(text)?.groups?.date);
  return [
    `name:${name}`,
    ...(goal ? [`counting:${COUNTED.find(([words]) => words.test(noun))?.[1]}`, `goal:${goal}`] : []),
    ...(rounds ? [`rounds:${rounds}`] : []),
    ...(first ? [`first:${first}`] : []),
    ...(last ? [`last:${last}`] : []),
  ].join(' ');
}

const NEW_GOAL = of(
  LEAD,
  '(?:change|set|raise|lower|make) (?:the|our) goal (?:to|=) (?<goal>\\d[\\d,]*)',
  END,
);
const NEW_END = of(
  LEAD,
  '(?:extend|move|change|set|put) (?:the|our) (?:deadline|end|end date|last day|challenge) (?:to|until|till) ',
  DATE,
  END,
);
const CLOSE = of(LEAD, `(?:close|end) ${CHALLENGE}`, END);
const CLOSE_NAMED = /^\s*(?:[Pp]lease )?[Cc]lose (?<name>\p{Lu}[\p{L}\d’' ]*?)\s*[.!]*$/u;

const named = (way: RegExp) => (text: string) => way.exec(text)?.groups?.name?.trim() ?? '';

/** What organisers say: a challenge is opened, changed, closed. */
export const ARRANGING: readonly Saying[] = [
  heard('challenge open', { any: [OPEN], none: [NOT_SO, /\?|\bhow\b/i], words: opening }),
  heard('challenge open', {
    any: [of(LEAD, '(?:open|start|begin) an? (?:new )?challenge', END)],
    none: [/\?/],
  }),
  heard('challenge edit', {
    any: [NEW_GOAL],
    none: [/\?/],
    words: (text) => `goal:${NEW_GOAL.exec(text)?.groups?.goal}`,
  }),
  heard('challenge edit', {
    any: [NEW_END],
    none: [/\?/],
    words: (text) => `last:${NEW_END.exec(text)?.groups?.date}`,
  }),
  ...[CLOSE, CLOSE_NAMED].map(
    (way): Saying => ({
      ask: 'challenge close',
      read: (text) => (way.test(text) && NAMED.test(named(way)(text)) ? named(way)(text) : null),
    }),
  ),
  heard('challenge close', {
    any: [of(LEAD, '(?:close|end) (?:the|our|this) challenge', END)],
    none: [/\?/],
  }),
];
