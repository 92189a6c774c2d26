import {
  A_SIDE,
  DIAMONDS_ALONG,
  LARGE_DIAMOND,
  NOT_A_PART,
  NUMBER,
  OTHER_SHAPES,
  PATCHES,
  UNIT,
} from '../question-patterns.ts';
import type { Turn } from './turn.ts';

/** A hexagon of blocks by its side: "5 side", "side 5", "5 a side". */
const BLOCKS_ALONG = new RegExp(
  `${A_SIDE.source}|${NOT_A_PART}\\b(\\d+) side\\b|\\bside(?: of)? (\\d+)\\b(?![./]\\d| \\d+\\/|${UNIT})`,
  'i',
);
/** The number, in whichever way it was said. */
const said = (found: readonly string[]): number => Number(found.slice(1).find((one) => one !== undefined));

/** A large diamond of so many a side has one in its centre, or four, and rounds about it. */
const diamondsOf = (found: readonly string[]): string => {
  const side = said(found);
  return `from:${side % 2 === 1 ? 1 : 4} rounds:${Math.floor((side - 1) / 2)}`;
};
const ROSETTE = /\b(?:rosettes?|flowers?)\b/i;
const STAR = /\bstars?\b/i;
const BLOCKS = /\bblocks?\b/i;
const SEWN = /^(?:time|yardage)$/;

/** A rosette by the number of its pieces. */
const PIECED = /\b(7|19|37|61|91)[- ](?:piece|patch)(?: (?:rosette|flower)s?)?\b/i;
const ROUNDS_OF: Readonly<Record<string, number>> = { 7: 1, 19: 2, 37: 3, 61: 4, 91: 5 };

/** What is said of rosettes set together, in the words of the option that takes all of it. */
function gardenOf([, rows, each, many]: readonly string[], question: string): string {
  const rounds = /\b(\d+)[- ]rounds?\b/i.exec(question)?.[1] ?? '1';
  const path = /\b(?:no|without(?: an?)?) paths?\b/i.test(question)
    ? ', path none'
    : /\b(?:double|own|separate|two) paths?\b/i.test(question)
      ? ', own path'
      : '';
  return `garden:${rows ? `${rows}x${each}` : many} of ${rounds} rounds${path},`;
}

/** Rosettes are what is asked for, and no print, nor what the patches are for. */
const ROSETTES_COUNTED = new RegExp(
  `\\b(?:how many|make|get|cut) (?:(?!${PATCHES}\\b)[\\w./"-]+ ){0,5}?(?:rosettes|flowers)\\b(?! (?:${NUMBER}${UNIT}?[- ]*)?${OTHER_SHAPES})|^(?:\\d+[- ]rounds? )?(?:rosettes|flowers) (?:of \\d+ rounds? )?(?:from|out of)\\b`,
  'i',
);

const BALLS = /\b(?:(\d+) )?(?:pentagon )?balls?\b(?! of (?:thread|yarn|wool|cotton|string)\b)/i;
const PENTAGONS_A_BALL = 12;
const SEAMS_A_BALL = 30;

/** How many rosettes, rounds, stars or blocks; a layout in place of a number of patches. */
export const LAYOUT_TURNS: readonly Turn[] = [
  { of: /^count stars?$|^(?:time|yardage)$/, words: /\b(?:6|six)[- ]?point(?:ed)?\b/i },
  { of: /^count /, words: /\bround (?:and|&|n) round\b/i },
  { of: /^count ball$/, words: /\b(?:12|twelve|dozen)\b(?! ?(?:in|cm|mm|"))/i },
  {
    of: /^count ball$/,
    words: new RegExp(`\\b(${NUMBER}${UNIT}?) (?:across|wide|in diameter|big)\\b`, 'i'),
    says: ([, size]) => `across:${size}`,
  },
  {
    of: /^yardage$/,
    words: BALLS,
    says: ([, n = '1']) => `pieces:${Number(n) * PENTAGONS_A_BALL} shape:pentagon`,
  },
  { of: /^time$/, words: BALLS, says: ([, n = '1']) => `seams:${Number(n) * SEAMS_A_BALL}` },

  {
    of: SEWN,
    words: /\b(\d+) rows of (\d+) (?:rosettes|flowers)\b|\b(\d+) (?:\d+[- ]rounds? )?(?:rosettes|flowers)\b/i,
    says: gardenOf,
  },
  {
    of: SEWN,
    words: /\b\d+[- ]rounds?\b(?: each)?/i,
    where: /\b\d+ (?:\d+[- ]rounds? )?(?:rosettes|flowers)\b/i,
  },
  { of: SEWN, words: PIECED, says: ([, n = '']) => `rosette:${ROUNDS_OF[n]}` },
  { of: /^(?:kit|plan make)$/, words: PIECED, says: ([, n = '']) => `layout:rosette rounds:${ROUNDS_OF[n]}` },
  { of: /^count rosette$|^yield$/, words: PIECED, says: ([, n = '']) => `rounds:${ROUNDS_OF[n]}` },
  {
    of: SEWN,
    words: /\b(\d+)[- ]rounds?\b/i,
    where: ROSETTE,
    says: ([, n]) => `rosette:${n}`,
  },
  {
    of: SEWN,
    words: /\b(?:rosette|flower)\b(?! garden)/i,
    unless: /\brounds?\b/i,
    says: () => 'rosette:1',
  },
  { of: /^count rosette$/, words: /\b(?:1|an?) (?=rosette|flower)/i },
  {
    of: /^yield$/,
    words: /\b(?:of |with )?(\d+)[- ]rounds?\b/i,
    where: ROSETTES_COUNTED,
    says: ([, n]) => `rounds:${n}`,
  },
  { of: /^yield$/, words: /\b(?:rosettes|flowers)\b/i, where: ROSETTES_COUNTED, says: () => 'rounds:1' },
  { of: /^count diamonds$/, words: DIAMONDS_ALONG, says: diamondsOf },
  { of: SEWN, words: DIAMONDS_ALONG, where: LARGE_DIAMOND, says: (found) => `diamonds:${said(found)}` },
  { of: SEWN, words: BLOCKS_ALONG, where: BLOCKS, says: (found) => `blocks:${said(found) ** 2}` },
  { of: /^(?:kit|plan make)$/, words: /\bhexagon\b(?= (?:of|with|side|\d))/i, where: BLOCKS },
  { of: SEWN, words: A_SIDE, where: STAR, says: ([, n]) => `star:${n}` },
  { of: /^count (?:star|blocks)$/, words: A_SIDE, says: ([, n]) => `side:${n}` },
  { of: /^plan make$|^kit$/, words: A_SIDE, says: ([, n]) => `side:${n}` },
  {
    of: /^count (?:star|blocks)$/,
    words: /\b(\d+) (?:diamonds )?(?:to|on|along) (?:a|the|each) (?:side|point)\b/i,
    says: ([, n]) => `side:${n}`,
  },
  { of: SEWN, words: /\b(\d+) (?:tumbling |baby )?blocks?\b/i, says: ([, n]) => `blocks:${n}` },
  {
    of: SEWN,
    words: /\b(\d+) of (?:them|those|these)\b/i,
    where: BLOCKS,
    says: ([, n]) => `blocks:${n}`,
  },
  { of: /^count blocks$/, words: /\b(\d+) of (?:them|those|these)\b/i, says: ([, n]) => `blocks:${n}` },
  { of: /^(?:yield|yardage)$/, words: /\b(\d+) of(?=\s*(?:[,.?!]|$))/i, says: ([, n]) => `pieces:${n}` },
  { of: /^yardage$/, words: /\b(\d+) of (?:them|those|these)\b/i, says: ([, n]) => `pieces:${n}` },
];
