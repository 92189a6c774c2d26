import { heard, LEAD, type Saying } from './saying.ts';

/** The number of a block of the month. */
const BLOCK = /\bblock (?:no\.? ?|number )?(\d{1,3})\b/i;
const blockIn = (text: string): string => BLOCK.exec(text)?.[1] ?? '';

const FINISHED = new RegExp(
  `${LEAD}(?:i(?:['’]ve| have)?\\s+|ive\\s+)?(?:just\\s+|today\\s+|yesterday\\s+)*(?:finished|made|sewed|sewn|stitched|completed|done|did|pieced)\\s+(?:my |the )?block (?:no\\.? ?|number )?\\d{1,3}\\b`,
  'i',
);
const ASKING = /\?|\bhow\b|\bneed|\bcan\b|\bfrom\b|\bout of\b/i;

/** What is asked of the block of the month before a log is looked for, and after. */
export const BLOCKS: readonly Saying[] = [
  heard('month block', { any: [/\b(?:this|the) month(?:['’]?s)? block\b|\bblock (?:for|of) this month\b/i] }),
  heard('month show', { any: [/\bblocks? of the month\b/i] }),
  heard('month block', { any: [BLOCK], all: [/\bwhen\b/i], words: blockIn }),
];

export const BLOCKS_DONE: readonly Saying[] = [
  heard('month done', { any: [FINISHED], none: [ASKING], words: blockIn }),
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
