import { ASKED_IN, BED, BY_ROWS, infant, SIZE } from '../question-patterns.ts';
import type { Turn } from './turn.ts';

const GARDEN = /^(?:count garden|plan make|kit)$/;
const SEWN = /^(?:time|yardage)$/;
const BLOCKS = /\bblocks?\b/i;

const SHARE: Readonly<Record<string, string>> = { half: '1/2', quarter: '1/4' };

/** Rows of so many, where rosettes or stars are counted: no size of a quilt. */
const ROWS = new RegExp(BY_ROWS, 'i');
const rowsIn = (found: readonly string[]): string => {
  const [rows, each] = found.slice(1).filter((number) => number !== undefined);
  return `${rows}x${each}`;
};

/** The size of a quilt, or the bed that it is for; rows of rosettes are neither. */
export const SIZE_TURNS: readonly Turn[] = [
  // The unit that the length is asked in.
  {
    of: /^ruler$/,
    words: new RegExp(ASKED_IN, 'i'),
  },
  {
    of: /^ruler$/,
    words:
      /\b(?:(?:a )?(half|quarter)(?: of)?(?: an?)?|an?) (inch|y(?:ar)?d|met(?:re|er)|centimet(?:re|er)|foot)\b/i,
    says: ([, part, unit]) => `length:${SHARE[part?.toLowerCase() ?? ''] ?? '1'} ${unit}`,
  },
  {
    of: /^(?:plan make|kit)$/,
    words: ROWS,
    unless: /\bstars\b/i,
    says: (found) => `rosettes:${rowsIn(found)} layout:garden`,
  },
  { of: /^(?:plan make|kit)$/, words: ROWS, where: /\bstars\b/i, says: (found) => `stars:${rowsIn(found)}` },
  { of: /^count garden$/, words: ROWS, says: (found) => `rosettes:${rowsIn(found)}` },
  { of: GARDEN, words: /\b\d+ (?=rosettes|flowers)/i, where: ROWS },
  { of: /^count stars$/, words: ROWS, says: (found) => `stars:${rowsIn(found)}` },
  // A size in figures is surer than the name of a bed.
  {
    of: /^(?:count \w+|time|yardage|plan make|finish \w+)$/,
    words: new RegExp(BED, 'i'),
    where: new RegExp(SIZE, 'i'),
  },
  {
    of: /^count (?:field|garden|rosette|stars?|blocks|diamonds)$|^plan make$/,
    words: new RegExp(SIZE, 'i'),
    says: ([size], question) => `quilt:${infant(question)}${size}`,
  },
  {
    of: SEWN,
    words: new RegExp(SIZE, 'i'),
    unless: /\brectang/i,
    says: ([size], question) => `field:${infant(question)}${size}`,
  },
  { of: SEWN, words: new RegExp(BED, 'i'), unless: BLOCKS, says: ([bed]) => `field:${bed}` },
  {
    of: /^count field$/,
    words: /\bflats?(?: sides?)? (?:up|on top)\b|\bflat[- ]top(?:ped)?\b/i,
    says: () => 'rows:down',
  },
  {
    of: /^count field$/,
    words: /\bpoints?(?: side)? (?:up|on top)\b|\bpoint(?:y|ed)?[- ]top(?:ped)?\b/i,
    says: () => 'rows:across',
  },
  // "The whole quilt" says nothing of its sides.
  { of: /^(?:plan make|count field)$/, words: /\b(?:the |a )?whole (?:quilt|thing|lot|top)\b/i },
];
