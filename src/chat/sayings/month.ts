import { MONTH_NAME } from '../option-days.ts';
import { DAY, END, heard, LEAD, of, type Saying } from './saying.ts';

/** The number of a block of the month. */
const BLOCK = /\bblock (?:no\.? ?|number )?(\d{1,3})\b/i;
const blockIn = (text: string): string => BLOCK.exec(text)?.[1] ?? '';

const DID = `${LEAD}(?:i(?:['’]ve| have)?\\s+|ive\\s+)?(?:just\\s+|today\\s+|yesterday\\s+)*(?:finished|made|sewed|sewn|stitched|completed|done|did|pieced)\\s+`;
const ENDING = `(?:,?\\s+${DAY})?${END}`;

const THE_MONTH = '(?:the|this) month';
/** Of which month; behind "for" and "in" may stand for whom or in what it was made as well, which is no month. */
const OF_MONTH = `(?:of|from)\\s+(?:${THE_MONTH}|(?:the )?(?<month>[\\p{L}\\d][\\p{L}\\d ’'-]*?))`;
const IN_MONTH = `(?:in|for)\\s+(?:${THE_MONTH}|(?<named>${MONTH_NAME}(?: \\d{4})?)|[^?]*?)`;
/** "I finished block 1 of Garden". */
const FINISHED = of(
  DID,
  `(?:my |the )?block (?:no\\.? ?|number )?(?<block>\\d{1,3})(?:\\s+(?:${OF_MONTH}|${IN_MONTH}))?`,
  ENDING,
);
/** "I've finished this month's block". */
const FINISHED_THIS = of(
  DID,
  `(?:this month['’]?s|the month['’]?s|my|this) block(?: (?:of|for) (?:the|this) month)?`,
  ENDING,
);
const ASKING = /\?|\bhow\b|\bneed|\bcan\b|\bout of\b/i;

function finished(text: string): string {
  const { block = '', month, named } = FINISHED.exec(text)?.groups ?? {};
  return month || named ? `${block} month:${month ?? named}` : block;
}

/** What is asked of the block of the month before a log is looked for, and after. */
export const BLOCKS: readonly Saying[] = [
  heard('month done', { any: [FINISHED], none: [ASKING], words: finished }),
  heard('month done', { any: [FINISHED_THIS], none: [ASKING] }),
  heard('month show', {
    any: [
      of(LEAD, `when(?:['’]s| is| does)? the next block(?: open| due| on)?`, END),
      of(LEAD, `is there a block (?:this month|of the month)(?: on| now)?`, END),
    ],
  }),
  heard('month block', { any: [/\b(?:this|the) month(?:['’]?s)? block\b|\bblock (?:for|of) this month\b/i] }),
  heard('month show', { any: [/\bblocks? of the month\b/i] }),
  heard('month block', { any: [BLOCK], all: [/\bwhen\b/i], words: blockIn }),
];

export const BLOCKS_DONE: readonly Saying[] = [
  heard('month show', {
    any: [
      /\bwho\b.*\b(?:finished|done|made)\b.*\bblocks?\b/i,
      /\b(?:all|list of) (?:the )?blocks of the month\b/i,
    ],
  }),
  heard('month block', {
    any: [
      /\b(?:which|what|show)\b.*\bblock (?:of the month|is (?:it|on|next|open)|this month|(?:no\.? ?|number )?\d)/i,
      /\bthis month['’]?s block\b/i,
      /^\s*block of the month\b/i,
    ],
    words: blockIn,
  }),
];
