import { MONTH_NAME } from '../option-days.ts';
import { countedAs, NOUN } from './counts.ts';
import { END, heard, LEAD, NOT_SO, of, type Saying } from './saying.ts';

const CHALLENGE = "(?:(?:the|our|this) )?(?<name>[\\p{L}\\d’' -]+?) challenge";
const DATE = `(?:on )?(?<date>\\d{4}-\\d{1,2}-\\d{1,2}|\\d{1,2}(?:st|nd|rd|th)?(?: of)? ${MONTH_NAME}(?:,? \\d{4})?|${MONTH_NAME} \\d{1,2}(?:st|nd|rd|th)?(?:,? \\d{4})?|\\d{1,2}[/.]\\d{1,2}[/.]\\d{4})`;

/** A name as it is written: what begins with a small letter may be anything. */
const NAMED = /^\p{Lu}/u;

const COUNT = '(?<count>\\d[\\d,]*(?:\\.\\d+)?)';
/** Where a name ends and what is said of it begins. */
const NAME_ENDS = `[,;:]|(?= (?:with|until|till|from|goal|counting|by \\d|[-–—]|(?:for|of|to (?:do|make|sew|finish|reach)) (?:an? )?(?:goal |\\d)|\\d[\\d,]* ${NOUN}\\b))|$`;
const OPEN = of(
  LEAD,
  '(?:open|start|begin) an? (?:new )?challenge (?<before>(?:for|of|with|counting|until|to) [^,;:]+? )?(?:called |named )(?<name>[^,;:]+?)',
  `(?:${NAME_ENDS})`,
);
/** Where "goal" is said the goal stands behind it; else it is so many of what is counted. */
const GOAL_SAID = of(`\\b(?:an? |the )?goal(?: of| is|:)?(?: up to)? ${COUNT}(?: ${NOUN}\\b)?`);
const GOAL_UNSAID = of(`(?<![\\d.,/-])${COUNT} ${NOUN}\\b`);
const EACH: readonly RegExp[] = [
  of(`\\beach(?: of us| member)?:? ${COUNT}\\b`),
  of(`(?<![\\d.,/-])${COUNT}(?: ${NOUN})? (?:each|apiece|(?:a|per) (?:member|head))\\b`),
];
const SIZE = /(?<![\d/])(?<count>(?:\d+ \d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?)(?:in| ?(?:inch(?:es)?|cm|mm)))\b/iu;
const ROUNDS = /\b(?:of )?(?<count>\d{1,2})[- ]rounds?\b/iu;
const LAST = of(`\\b(?:until|till|to|by|ending|ends) ${DATE}`);
const FIRST = of(`\\b(?:from|starting|begins?|beginning) ${DATE}`);
const COUNTED_NOUN = of(`\\b(?<noun>${NOUN})\\b`);

/** A number that nothing took, with the words behind it. */
const LEFT = /\d.*$/u;

/** What she said of a challenge that is opened, each under its name; a number left over stays, to be refused. */
function opening(text: string): string {
  const found = OPEN.exec(text);
  const { name = '', before = '' } = found?.groups ?? {};
  let rest = `${before}${text.slice((found?.index ?? 0) + (found?.[0].length ?? 0))}`;
  const noun = COUNTED_NOUN.exec(rest)?.groups?.noun;
  const taken = (option: string, ...ways: readonly RegExp[]): string[] => {
    const way = ways.find((one) => one.test(rest));
    const { count, date } = way?.exec(rest)?.groups ?? {};
    const value = count ?? date;
    if (!way || value === undefined) return [];
    rest = rest.replace(way, ' ').replace(/ {2,}/g, ' ');
    return [`${option}:${value}`];
  };
  const days = [...taken('first', FIRST), ...taken('last', LAST)];
  const rounds = taken('rounds', ROUNDS);
  const size = taken('size', SIZE);
  const each = taken('each', ...EACH);
  const goal = taken('goal', /\bgoal\b/i.test(rest) ? GOAL_SAID : GOAL_UNSAID);
  const counting = noun ? [`counting:${countedAs(noun) ?? 'patch'}`] : [];
  const left = LEFT.exec(rest)?.[0].replace(/[\s,;:.]+$/, '');
  return [
    `name:${name.trim()}`,
    ...[...counting, ...goal, ...each, ...rounds, ...size, ...days],
    ...(left ? [left] : []),
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
