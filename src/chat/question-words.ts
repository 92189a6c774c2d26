import { type Cloth, pieceTitle, takeCloth } from '../measure/cloth.ts';
import { BEDS } from '../measure/size.ts';

/** Words of a question that say an option without naming it. They are taken out, and the option put in front. */
interface Turn {
  /** The commands, with their form, of which the words are an option. */
  readonly of: RegExp;
  readonly words: RegExp;
  /** The option as it is typed, from what was found in the question; none where the words are only in the way. */
  readonly says?: (found: readonly string[], question: string) => string;
  /** Somewhere in the question this must be there too. */
  readonly where?: RegExp;
  readonly unless?: RegExp;
}

const NUMBER = '\\d+(?:[ -]\\d+\\/\\d+|\\/\\d+|\\.\\d+)?';
const UNIT = '(?: ?(?:inch(?:es)?|in|ft|feet|yards?|yd|cm|mm|m)\\b| ?["\'])';
const SIZE = `\\b${NUMBER}${UNIT}? ?(?:x|by) ?${NUMBER}(?:${UNIT})?`;
const wordsOf = (beds: typeof BEDS): string =>
  beds.map((bed) => bed.words.source.replace(/^\^/, '')).join('|');
const BED = `\\b(?:${wordsOf(BEDS)})`;
const INFANT = new RegExp(`\\b(?:${wordsOf(BEDS.filter((bed) => bed.infant))})`, 'i');
const A_SIDE = /\b(\d+) (?:diamonds? )?(?:per|an?|to an?|to each|on each|on an?|along each|each) side\b/i;
const MEASURE =
  '(?:(?:flat|side) to (?:flat|side)|(?:point|corner|tip) to (?:point|corner|tip)|across the (?:flats|points|corners))\\b';
const ROSETTE = /\b(?:rosettes?|flowers?)\b/i;
const STAR = /\bstars?\b/i;
const BLOCKS = /\bblocks?\b/i;

/** From the top. Where two would take the same words, the first has them. */
const TURNS: readonly Turn[] = [
  // "60 degree diamonds" is a shape, not sixty of something.
  { of: /./, words: /\b60[- ]?(?:degrees?\b|deg\b|°)[- ]?(?=diamond|triangle)/i },
  { of: /^count stars?$|^(?:time|yardage)$/, words: /\b(?:6|six)[- ]?point(?:ed)?\b/i },

  {
    of: /^(?:time|yardage)$/,
    words: /\b(\d+)[- ]rounds?\b/i,
    where: ROSETTE,
    says: ([, n]) => `rosette:${n}`,
  },
  {
    of: /^(?:time|yardage)$/,
    words: /\b(?:rosette|flower)\b/i,
    unless: /\brounds?\b/i,
    says: () => 'rosette:1',
  },
  { of: /^count rosette$/, words: /\b(?:1|an?) (?=rosette|flower)/i },
  { of: /^(?:time|yardage)$/, words: A_SIDE, where: STAR, says: ([, n]) => `star:${n}` },
  { of: /^count (?:star|blocks)$/, words: A_SIDE, says: ([, n]) => `side:${n}` },
  {
    of: /^(?:time|yardage)$/,
    words: /\b(\d+) (?:tumbling |baby )?blocks?\b/i,
    says: ([, n]) => `blocks:${n}`,
  },
  {
    of: /^(?:time|yardage)$/,
    words: /\b(\d+) of (?:them|those|these)\b/i,
    where: BLOCKS,
    says: ([, n]) => `blocks:${n}`,
  },
  { of: /^count blocks$/, words: /\b(\d+) of (?:them|those|these)\b/i, says: ([, n]) => `blocks:${n}` },
  { of: /^yardage$/, words: /\b(\d+) of (?:them|those|these)\b/i, says: ([, n]) => `pieces:${n}` },

  // A size in figures is surer than the name of a bed.
  { of: /^(?:count field|time|yardage)$/, words: new RegExp(BED, 'i'), where: new RegExp(SIZE, 'i') },
  {
    of: /^count field$/,
    words: new RegExp(SIZE, 'i'),
    says: ([size], question) => `quilt:${infant(question)}${size}`,
  },
  {
    of: /^(?:time|yardage)$/,
    words: new RegExp(SIZE, 'i'),
    unless: /\brectang/i,
    says: ([size], question) => `field:${infant(question)}${size}`,
  },
  { of: /^(?:time|yardage)$/, words: new RegExp(BED, 'i'), unless: BLOCKS, says: ([bed]) => `field:${bed}` },
  { of: /^count field$/, words: /\bflats?(?: sides?)? (?:up|on top)\b/i, says: () => 'rows:down' },
  { of: /^count field$/, words: /\bpoints?(?: side)? (?:up|on top)\b/i, says: () => 'rows:across' },

  {
    of: /^(?:yield|yardage)$/,
    words: /\b(\d{2,3}(?:\.\d+)?|\d\.\d+)( ?(?:in|inch|inches|cm|m)\b| ?")?[- ]*(?:wide|width)\b/i,
    says: ([, n, unit = '']) => `width:${n}${unit}`,
  },
  {
    of: /^(?:yield|yardage)$/,
    words:
      /\b(?:of|on|with|from|in) (\d{2,3})( ?(?:in|inch|inches|cm)\b| ?")?[- ]*(?:fabric|cloth|material|cotton)\b/i,
    says: ([, n, unit = '']) => `width:${n}${unit}`,
  },
  // "50 1/2 inch hexies" is fifty of them; "50 1 inch" too. "1 1/2 inch" is one size.
  {
    of: /^yardage$/,
    words: new RegExp(`\\b(1[3-9]|[2-9]\\d|\\d{3,}) (?=\\d\\/\\d+${UNIT})`, 'i'),
    says: ([, n]) => `pieces:${n}`,
  },
  { of: /^yield$/, words: new RegExp(`\\b(?:1[3-9]|[2-9]\\d|\\d{3,}) (?=\\d\\/\\d+${UNIT})`, 'i') },
  { of: /^yield$/, words: new RegExp(`\\b\\d+ (?=\\d+(?:[ -]\\d+\\/\\d+|\\.\\d+)?${UNIT})`, 'i') },
  // What she has is not what she needs.
  { of: /^yardage$/, words: new RegExp(`\\b${NUMBER} ?(?:yards?|yds?|met(?:re|er)s?)\\b`, 'i') },

  {
    of: /^cut$/,
    words: /\b(?:i|we|she)(?:['’]?ve| have| had)? (?:already )?cut\b/i,
    where: /\b(?:finish|end up|come out|sewn)/i,
    says: () => 'given:cut',
  },
  { of: /^cut$/, words: /\bwhat\w*(?:['’]s| is)? (?:the )?cut size\b|\bcut size\b(?! (?:is|of|was) ?\d)/i },
  // Which measure is asked for, not which was given: the answer has them all.
  {
    of: /^cut$/,
    words: new RegExp(
      `\\b(?:what\\w*(?:['’]s| is| are)?|how (?:big|wide|large|tall|far)(?: is it| are they)?)(?: the)? ${MEASURE}`,
      'i',
    ),
  },
  {
    of: /^cut$/,
    words: new RegExp(`(?<=[a-z] )(?<!\\d ?(?:in|inch|inches|cm|mm) )${MEASURE}(?=[ ?.]*$)`, 'i'),
    where: /\bhow (?:big|wide|large|tall|far) (?:is|are)\b/i,
  },

  {
    of: /^count garden$/,
    words: /\b(\d+) rows of (\d+)\b/i,
    says: ([, rows, each]) => `rosettes:${rows}x${each}`,
  },
  { of: /^count garden$/, words: /\b(?:no|without(?: an?)?|without any) paths?\b/i, says: () => 'path:none' },
  {
    of: /^count garden$/,
    words: /\b(?:double|own|separate|two) paths?\b|\bpath (?:each|of (?:their|its) own)\b/i,
    says: () => 'path:own',
  },
  {
    of: /^count garden$/,
    words: /\b(?:(?:path|all) )?(?:a?round|on) the outside\b|\bouter path\b/i,
    says: () => 'outer:yes',
  },
  {
    of: /^count diamonds$/,
    words: /\b([14])[- ](?:diamond )?cent(?:re|er)\b|\bcent(?:re|er) of ([14])\b/i,
    says: ([, one, other]) => `from:${one ?? other}`,
  },
  {
    of: /^time$/,
    words: /\b(\d+(?:\.\d+)?) (?:hours?|hrs?) (?:an?|per|each|every) (?:day|night|evening)\b/i,
    says: ([, n]) => `hours:${Number(n) * 7}`,
  },
];

/** The name of an infant's bed stays beside its size, for the caution that goes with it. */
const infant = (question: string): string => (INFANT.test(question) ? 'crib ' : '');

/**
 * The words of a question for the reader of options: what it says without naming it is named, in front.
 *
 * @example
 * optionWords('time', 'how long does a 2 round rosette take') // "rosette:2, how long does a rosette take"
 * optionWords('yardage', '240 hexies at 40 wide') // "width:40, 240 hexies at"
 * optionWords('yield', '1in hexies from 3 fat quarters') // "cloth:fat quarters, 1in hexies"
 */
export function optionWords(of: string, text: string): string {
  const said: string[] = [];
  let rest = text;
  const takeOut = (at: number, length: number, says: string) => {
    rest = `${rest.slice(0, at)} ${rest.slice(at + length)}`.replace(/ {2,}/g, ' ').trim();
    if (says !== '') said.push(says);
  };
  const cloth = of === 'yield' ? clothIn(rest) : null;
  if (cloth) takeOut(cloth.at, cloth.length, `cloth:${cloth.words}`);
  for (const turn of TURNS) {
    if (!turn.of.test(of) || turn.unless?.test(text) || turn.where?.test(text) === false) continue;
    const found = turn.words.exec(rest);
    const says = found ? (turn.says?.(found, text) ?? '') : '';
    if (found && !said.some((one) => one.split(':')[0] === says.split(':')[0]))
      takeOut(found.index, found[0].length, says);
  }
  return [...said, rest].join(', ');
}

/** What stands before the cloth to cut from. Last, how many she has: the answer is for one. */
const FROM = '\\b(?:from|out of|in|on|per|have|got|is) ';
const BEFORE_CLOTH = [
  new RegExp(FROM, 'gi'),
  new RegExp(`${FROM}(?:my|the|each|every|this|an?|\\d+) `, 'gi'),
];
const SO_MANY = /\b\d+ /g;
const BY_LENGTH = /yard|yd|met(?:re|er)|\d ?m\b/i;

interface Stretch {
  readonly at: number;
  readonly length: number;
  readonly words: string;
}

/** The piece that a question says the patches are cut from. */
function clothIn(text: string): Stretch | null {
  for (const before of BEFORE_CLOTH) {
    const found = clothAfter(before, text, ({ kind }, words) => kind !== 'yardage' || BY_LENGTH.test(words));
    if (found) return found;
  }
  return clothAfter(SO_MANY, text, ({ name }) => pieceTitle(name) !== null);
}

function clothAfter(
  before: RegExp,
  text: string,
  is: (cloth: Cloth, words: string) => boolean,
): Stretch | null {
  for (const { 0: lead, index: at } of text.matchAll(before)) {
    const from = text.slice(at + lead.length);
    const taken = takeCloth(from, 'in');
    if (!taken) continue;
    const words = from.slice(0, from.length - taken.rest.length);
    if (is(taken.value, words)) return { at, length: lead.length + words.length, words };
  }
  return null;
}
