import { type Cloth, pieceTitle, takeCloth } from '../measure/cloth.ts';
import { takeClothList } from '../measure/cloth-said.ts';
import { NUMBER, SIZE, UNIT } from './question-patterns.ts';

/** A stretch of a question that was understood, and what it says. */
export interface Stretch {
  readonly at: number;
  readonly length: number;
  readonly words: string;
}

/** Cloth that one has, as a list that can be read again. */
export interface Had extends Stretch {
  readonly pieces: number;
}

const MINE = '(?:(?:about|only|just|exactly|at least|all|these|those|this|my|our|the|some|up|of) )*';
const I_HAVE =
  "\\b(?:i|we)(?:'ve|ve)?(?: only| still| just| also)*(?: have| had| got| own| found| bought)+ |\\b(?:i|we)'ve (?!been)";

/** Words that stand before cloth, looked for only where the question has one of them at all. */
interface Before {
  readonly where: RegExp;
  readonly words: RegExp;
}

/** A piece so small is no quilt: under 40 in, or told in centimetres. */
const SMALL = `(?=[1-3]?\\d(?:\\.\\d+| \\d+\\/\\d+)?(?: ?(?:in|inch|inches)\\b| ?")? ?(?:x|by) ?[1-3]?\\d(?!\\d)|\\d{1,3} ?(?:cm )?(?:x|by) ?\\d{1,3} ?cm\\b)`;

/** What stands before the cloth that one has. */
const HAD: readonly Before[] = [
  {
    where: /\b(?:have|had|got|own|found|bought)\b|'?ve\b/i,
    words: new RegExp(`(?:${I_HAVE}|(?:^|[,.;] )(?:have |got ))${MINE}`, 'gi'),
  },
  {
    where: /\b(?:my|our|these|those|this)\b/i,
    words: new RegExp(
      `\\b(?:from|out of|with|using|use) (?=(?:all |these |those |this )?(?:my|our|these|those|this)\\b)${MINE}`,
      'gi',
    ),
  },
  {
    where: /\b(?:scraps?|remnants?|offcuts?|leftovers?)\b/i,
    words: new RegExp(
      `\\b(?:scraps?|remnants?|offcuts?|leftovers?)(?: of cloth| of fabric| of| are| is| about| measuring|:|,)* ${SMALL}(?!${SIZE} ?(?:quilt|top|throw|blanket|cushion)\\b)`,
      'gi',
    ),
  },
  { where: /\benough\b/i, words: new RegExp(`\\benough(?: (?:in|with|of) |[?:,]+ )${MINE}`, 'gi') },
  {
    where: /\benough\b|\b(?:give|make|yield|do) (?:me |us )?\d/i,
    words: new RegExp(`\\b(?:is|are|will|would|does|do|can|could) ${MINE}`, 'gi'),
  },
];
/** The same, of several pieces: one alone is the piece to cut from. */
const FROM_SEVERAL = new RegExp(`\\b(?:from|out of|with|using) ${MINE}`, 'gi');
/** Said first of all; by measures alone it may be a quilt. */
const AT_THE_START = /^/g;
const CLOTH_NAMED =
  /\bfat\b|\bpieces of\b|\bfqs?\b|charm|squares?|strips?|y(?:ar)?ds?\b|met(?:re|er)|\d ?m\b/i;

/** Without one of these nothing is cloth. */
const MAY_BE_CLOTH =
  /fat|fq|charm|square|strip|y(?:ar)?d|met(?:re|er)|\d ?m\b|\d ?(?:x|by) ?\d|\d ?(?:in|cm|") of/i;

/** What was found last: several signs ask it of the same question. */
let last: { readonly text: string; readonly had: Had | null } | undefined;

/** The cloth that a question says one has; null where it says none. */
export function hadIn(text: string): Had | null {
  if (last?.text !== text) last = { text, had: MAY_BE_CLOTH.test(text) ? findHad(text) : null };
  return last.had;
}

function findHad(text: string): Had | null {
  for (const { where, words } of HAD) {
    const found = where.test(text) ? listAfter(words, text) : null;
    if (found) return found;
  }
  const several = listAfter(FROM_SEVERAL, text) ?? listAfter(AT_THE_START, text);
  return several && several.pieces > 1 && CLOTH_NAMED.test(several.words) ? several : null;
}

function listAfter(before: RegExp, text: string): Had | null {
  for (const { 0: lead, index: at } of text.matchAll(before)) {
    const from = text.slice(at + lead.length);
    const taken = takeClothList(from, 'in');
    if (!taken) continue;
    const length = lead.length + from.length - taken.rest.length;
    return { at, length, words: taken.words, pieces: taken.pieces };
  }
  return null;
}

/** What stands before the cloth to cut from. Last, how many there are of it: the answer is for one. */
// "5 in charm" is no charm in which there is something.
const IN = '(?:(?<!\\d )in|in(?= (?:an?|one|half|each|every|the|\\d)\\b))';
const FROM = `\\b(?:from|out of|${IN}|on|per|have|got|is) `;
const BEFORE_CLOTH = [
  new RegExp(FROM, 'gi'),
  new RegExp(`${FROM}(?:my|the|each|every|this|an?|\\d+) `, 'gi'),
];
const SO_MANY = /\b\d+ /g;
const BY_LENGTH = /yard|yd|met(?:re|er)|\d ?m\b/i;
/** Squares that other patches are cut from; those of 5 and 10 inches are known by name. */
const A_SQUARE = new RegExp(`\\b(?!(?:5|10) ?(?:in|inch|"))(${NUMBER}${UNIT})[- ]squares?\\b`, 'i');
const OTHER_PATCH = /\b(?:hex\w*|diamonds?|triangles?|kites?|pentagons?|clam\w*|tumblers?)\b/i;

/** Last of all, wherever a word begins: a piece by its name, a length of cloth, a piece by its measures. */
const ANYWHERE = /(?<![^\s,(])(?=[a-z\d])/gi;
const OF_CLOTH = /^ ?of (?:fabric|cloth|material|cotton)\b/i;
const SHEET = /\b(?:on|per|to|from|in) (?:an?|one|each|the|every) (?:page|sheet)(?: of (?:paper|card))?\b/i;

/** The piece that a question says the patches are cut from; a page of paper is as large as is usual there. */
export function clothIn(text: string, sheet: 'letter' | 'a4'): Stretch | null {
  const square = OTHER_PATCH.test(text) ? A_SQUARE.exec(text) : null;
  if (square) {
    const [all, side = ''] = square;
    return { at: square.index, length: all.length, words: `${side.replace(/[a-z" ]+$/i, '')}x${side}` };
  }
  for (const before of BEFORE_CLOTH) {
    const found = clothAfter(before, text, ({ kind }, words) => kind !== 'yardage' || BY_LENGTH.test(words));
    if (found) return found;
  }
  const page = SHEET.exec(text);
  if (page) return { at: page.index, length: page[0].length, words: sheet };
  return (
    clothAfter(SO_MANY, text, ({ name }) => pieceTitle(name) !== null) ??
    clothAfter(
      ANYWHERE,
      text,
      ({ name }, words, then) => pieceTitle(name) !== null || BY_LENGTH.test(words) || OF_CLOTH.test(then),
    ) ??
    clothAfter(ANYWHERE, text, ({ name, width }) => pieceTitle(name) === null && width !== null)
  );
}

function clothAfter(
  before: RegExp,
  text: string,
  is: (cloth: Cloth, words: string, then: string) => boolean,
): Stretch | null {
  for (const { 0: lead, index: at } of text.matchAll(before)) {
    const from = text.slice(at + lead.length);
    const taken = takeCloth(from, 'in');
    if (!taken) continue;
    const words = from.slice(0, from.length - taken.rest.length);
    if (is(taken.value, words, taken.rest)) return { at, length: lead.length + words.length, words };
  }
  return null;
}

const PART = '(?:cent(?:re|er)s?|middles?|petals?|paths?|backgrounds?|round \\d+)';
const FOR_A_PART = new RegExp(
  `\\b\\d[\\d,]*(?<!,) (?:for (?:the )?)?(?:[a-z]+ )?${PART}\\b|\\b${PART}:? \\d[\\d,]*(?<!,)(?!\\d| ?(?:in|inch|cm|mm|")\\b)`,
  'gi',
);

/** How many patches for which part, where a question says so of two parts or more: "7 centres and 42 petals". */
export function partsIn(text: string): Stretch | null {
  const found = [...text.matchAll(FOR_A_PART)];
  const [first] = found;
  const last = found.at(-1);
  if (!first || !last || found.length < 2) return null;
  return {
    at: first.index,
    length: last.index + last[0].length - first.index,
    words: found.map(([words]) => words).join(', '),
  };
}
