import { BARE_COUNT, COUNT, inPlainFigures, NOUN } from './counts.ts';
import { A_WEEKDAY, DAY, END, heard, LEAD, of, type Saying } from './saying.ts';

const VERB = '(?:finished|made|sewed|sewn|stitched|completed|done|did|pieced)';
const SHE = "(?:(?:i|me)(?:['’]ve| have)?|ive)";
const ONLY = '(?:just|now|finally|only|already|also|all|about|exactly)';
const MORE = '(?:\\s+(?:more|new|further|other))?';
const LONG = '\\d[\\d.,/ ]*\\s*(?:h|hrs?|hours?|m|mins?|minutes?)\\b';
/** A time that is past, though not which day. */
const LATELY = '(?:this week(?:end)?|last week(?:end)?|at the weekend|the other day)';
/** Tonight is past only where it is said that it was done. */
const WHEN = `(?:${DAY}|tonight)`;

/** Behind what is counted: the work is measured with it. */
const ACROSS = '(?:wide|long|tall|high|deep|across|by|x|(?:a|per|each) (?:side|row|strip|sheet|way))\\b';

/** Nothing may stand between what she did and how many, else the number is of something else. */
const DID = `${LEAD}(?:(?<day>${WHEN})[,:]?\\s+)?(?:${SHE}\\s+)?(?:${ONLY}\\s+)*${VERB}(?: up| off| sewing| stitching| piecing| making)?\\s+(?:${ONLY}\\s+)*`;

/** Where no verb says that it was sewn, a day does, or that it is done. */
const DONE_THEN = `(?:\\s+${VERB}(?:,?\\s+${WHEN})?|,?\\s+${DAY})`;
const TO_LOG = '\\s+(?:to|in) (?:my|the|our) (?:log|book|total)';

/** Ways to tell what was sewn; `count` is how many, what follows it is read on by the log. */
const TOLD: readonly RegExp[] = [
  of(DID, `(?<count>${COUNT})(?=${MORE}\\s+${NOUN}\\b(?! ${ACROSS}))`),
  of(DID, `(?<count>${BARE_COUNT})(?=${MORE}(?:\\s*[.!]*$|,?\\s+(?:${WHEN}|${LATELY})\\b))`),
  of(DID, `(?<count>${BARE_COUNT})(?=\\s*,?\\s+(?:at|in|for|took|taking) ${LONG})`),
  of(
    DID,
    `(?<count>${BARE_COUNT})(?=${MORE}\\s+for\\s+(?:(?!${COUNT}\\b|an?\\b|the\\b)\\S|the .*challenge${END}))`,
  ),
  of(LEAD, `${SHE}\\s+(?:got\\s+)?(?<count>${COUNT})(?=\\s+${NOUN}\\s+${VERB}\\b)`),
  of(`^\\s*(?<count>${COUNT})(?=${MORE}\\s+${NOUN}(?:\\s+more)?\\s*,?\\s+${DAY}\\b)`),
  of(`^\\s*(?<count>${COUNT})(?=${MORE}\\s+${NOUN}\\s+${VERB}\\s*,?\\s+${WHEN}\\b)`),
  of(`^\\s*(?<count>another)\\s+(?:one\\s+)?(?=(?:${NOUN}\\s+)?${VERB}(?:,?\\s+${WHEN})?${END})`),
  of(`^\\s*(?<count>${BARE_COUNT})(?=\\s+more(?:\\s+${NOUN})?${DONE_THEN}${END})`),
  of(`^\\s*add\\s+(?<count>${BARE_COUNT})(?=${MORE}(?:\\s+${NOUN})?(?:${DONE_THEN}|${TO_LOG})${END})`),
];

/** "did 5 rosettes get logged?" asks; "did 5 rosettes today" tells. */
const DID_THEY = of(
  `^\\s*did\\s+(?:an?\\b|${COUNT}\\s+${NOUN}\\s+(?!${DAY}|done\\b|for\\b|with\\b|in\\b|\\d))`,
);
const ASKING = /\?|\bhow\b|\bwh(?:at|ich)\b|\bneed|\bcan\b|\bfrom\b|\bout of\b/i;
/** A row that was measured is no log, nor is what went wrong, nor a layout that is described. */
const NO_LOG =
  /\bmeasur|\b(?:came|come|comes|coming|turned) (?:out|to)\b|\bin a row\b|\bwrong|\bmistake|\bunpick|\btoo (?:big|small|large|short|long)\b|\bpaths?\b|\bsizes?\b|\bseams?\b|\ba side\b|\bin square\b/i;

/** "/log" without its stroke; a log cabin is a quilt. */
const LOG_OF = of(
  LEAD,
  `log\\s+(?!cabin)(?:(?:that|in|my|our|the|these|those|up|me)\\s+)*(?:(?:${SHE}\\s+)(?:${ONLY}\\s+)*${VERB}\\s+)?(?<count>${BARE_COUNT}|an?(?=${MORE}\\s+${NOUN}\\b))(?![\\w/.]*[a-z])`,
);

/** The count in figures, and what follows it: what stands before is how she says that it is a log. */
function fromCount(text: string, found: RegExpExecArray): string {
  const { count = '', day } = found.groups ?? {};
  const after = text
    .slice(found.index + found[0].length)
    .replace(/\s*[.!]+\s*$/, '')
    .replace(of(`\\b(?:at|in|for|took|taking) (?=${LONG})`), '')
    .replace(of(`${TO_LOG}\\b`), '');
  return `${inPlainFigures(count)}${after === '' || /^[\s,.;:]/.test(after) ? '' : ' '}${after}${day ? ` day:${day}` : ''}`;
}

function told(text: string): string | null {
  if (ASKING.test(text) || NO_LOG.test(text) || DID_THEY.test(text)) return null;
  for (const way of TOLD) {
    const found = way.exec(text);
    if (found) return fromCount(text, found);
  }
  return null;
}

/** "Log 3". */
export const LOGGING: readonly Saying[] = [
  {
    ask: 'log',
    read(text) {
      const found = LOG_OF.exec(text);
      return found && fromCount(text, found);
    },
  },
];

/** "I made 3". */
export const TELLING: readonly Saying[] = [{ ask: 'log', read: told }];

const N = '(?<count>[-−]?\\d[\\d,]*(?:\\.\\d+)?(?: \\d+\\/\\d+)?)';
const SORRY = '^\\s*(?:(?:sorry|oops|no|wait|actually|my mistake|wrong)[,!.: ]+)*';
/** Behind the number it is over: what goes on tells of something else. The noun goes to the log, which knows what it counts. */
const MEANT_SO = `(?=(?:\\s+(?<noun>${NOUN}))?(?:\\s*,?\\s+(?:instead|not \\d[\\d.,]*|sorry|oops))*\\s*[.!]*\\s*$)`;

/** Ways to say that what was logged was another number. */
const MEANT: readonly RegExp[] = [
  of(SORRY, `(?:i (?:only )?meant|make that|that (?:was|should (?:be|have been))) (?:only )?${N}`, MEANT_SO),
  of(SORRY, `(?:it )?should (?:be|have been) (?:only )?${N}(?= not \\d+\\s*[.!]*$)`),
  of(`\\b(?:mistake|sorry|oops|wrong)\\b[^\\d]*\\bi (?:only |just )?(?:did|meant) (?:only )?${N}`, MEANT_SO),
  of(`\\b(?:mistake|sorry|oops|wrong)\\b[,.!]* (?:(?:it|that) was |i did )?only ${N}`, MEANT_SO),
  of(`^\\s*(?:(?:sorry|oops|no|wait)[,!. ]+)+${N}(?=,? not \\d+\\s*[.!]*$)`),
  of(LEAD, `(?:change|correct|fix|set) my last (?:log|entry|one) to ${N}`, MEANT_SO),
];

const LOG = '(?:log|entry|one)';
const UNDO = `${LEAD}(?:undo|take back|delete|remove|cancel)`;
/** A log by its number; a number alone may be of anything that is taken away, unless it is undone. */
const NUMBERED = `(?:(?:the |my )?${LOG} (?:no\\.? ?|number )?|no\\.? ?|number )`;
const YESTERDAYS = of(
  UNDO,
  ` (?:my )?(?<day>yesterday|today|last night|${A_WEEKDAY})['’]?s(?: last)?(?: ${LOG})?${END}`,
);
const FROM_DAY = of(UNDO, ` (?:the|my)(?: last)? ${LOG} (?:from |of )?(?<day>${DAY})${END}`);
const HERS = of(UNDO, ` (?<whose>[\\p{L}’'-]+?)['’]s (?:last )?(?:${LOG}|last)${END}`);

/** "Undo that", "undo yesterday's", "undo Bea's last". */
const TAKING_BACK: readonly Saying[] = [
  heard('undo', {
    any: [
      of(UNDO, `(?: (?:that|it|(?:my|the) last(?: ${LOG})?|(?:my|the) ${LOG}))?${END}`),
      of(LEAD, `take (?:that|it|my last(?: ${LOG})?) back${END}`),
    ],
    none: [of(LEAD, `(?:take back|delete|remove|cancel)(?: (?:it|that|the one))?${END}`)],
  }),
  heard('undo', {
    any: [of(UNDO, ` ${NUMBERED}\\d+${END}`), of(LEAD, `undo \\d+${END}`)],
    words: (text) => /\d+/.exec(text)?.[0] ?? '',
  }),
  ...[YESTERDAYS, FROM_DAY].map((way) =>
    heard('undo', { any: [way], words: (text) => `day:${way.exec(text)?.groups?.day}` }),
  ),
  heard('undo', { any: [HERS], words: (text) => `whose:${HERS.exec(text)?.groups?.whose}` }),
];

const UNMEANT = /\?|\bhow\b|\bin a row\b|\bmeasur/i;

/** "I meant 2". */
export const CORRECTING: readonly Saying[] = [
  {
    ask: 'fix',
    read(text) {
      if (UNMEANT.test(text)) return null;
      const found = MEANT.map((way) => way.exec(text)).find((one) => one !== null);
      const { count, noun } = found?.groups ?? {};
      return found ? `pieces:${count}${noun ? ` ${noun}` : ''}` : null;
    },
  },
  ...TAKING_BACK,
];
