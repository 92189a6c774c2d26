import { takeLength } from '../measure/length.ts';
import type { Doubt } from './doubt.ts';
import { clothIn } from './question-cloth.ts';
import { NUMBER, PATCHES } from './question-patterns.ts';
import { QUILT } from './question-signs.ts';
import { toldOfPlan } from './question-told.ts';
import { optionWords } from './question-words.ts';
import { writeLength } from './write-length.ts';

const INCH = '(?: ?(?:inch(?:es)?|in|cm|mm)\\b| ?")';
const LENGTH = `${NUMBER}${INCH}?`;
const SHAPE = '(?:hexagon|hexie|diamond|triangle|kite|octagon|pentagon|clam[- ]?shell|apple[- ]?core)';
const NOUN = `(?:${PATCHES}|${SHAPE}|patch|ones?|sides?|edges?|hex)`;
const ONE = `\\b${LENGTH}(?:[- ](?:sides?[- ])?${NOUN})?`;
const BETWEEN =
  '(?:,? (?:and|or|vs\\.?|versus|against|than|instead of|compared (?:to|with)),?(?: (?:how many|how much|what|in|with|for|of|to|from|about|a|an|the|at|use|using))*)';
/** What a size of patches is followed by; not what a border, a seam or a square to cut from is. */
const THEN = `(?=[?.!,;:]|$|[- ](?:sides?[- ])?${NOUN}\\b(?! (?:seams?|strips?))|[- ](?:for|from|out of|in|to|on|make|come|take|need|is|are|would|do|side)\\b)`;
const SIZES = new RegExp(
  `(?<![\\d./:~])${ONE}(?:(?:,(?: and| or)?|${BETWEEN}) ${ONE}){0,2}${BETWEEN} ${ONE}${THEN}`,
  'i',
);
const EACH_SIZE = new RegExp(`(?<![\\d./])\\b(${NUMBER})(${INCH})?`, 'gi');

/** Lengths that are not of patches: seams, cloth, strips, repeats. */
const SEVERAL = `${LENGTH}(?:,? (?:and|or) ${LENGTH})*`;
const OF_ELSE = [
  `\\b(?:seams?|allowances?|repeats?|repeating|motifs?)(?: allowances?)?(?: of| is| are| at| every)* ${LENGTH}`,
  `\\bstrips?(?: of| at)* ${SEVERAL}`,
  `\\b${LENGTH}(?: for| of| as)?(?: the| a| my| all)? (?:seams?|repeats?)\\b`,
  `\\b${SEVERAL}[- ](?:wide )?(?:strips?|squares? (?=.*\\b(?:hex|diamond|triang|kite|pentag|clam|tumbler)))`,
].map((words) => new RegExp(words, 'gi'));
/** "1 and 1/2 inch". */
const ONE_SIZE = /^\d+,? and \d+\/\d+ ?[a-z"]/i;
/** Shapes that have two measures of their own. */
const OF_TWO_MEASURES = /\brectang|\btumbler|\b(?:long|elongated|stretched)[- ]hex/i;

const COMPARED = /\b(?:difference|compare[ds]?|comparing|comparison|versus|vs|better|bigger|smaller)\b/i;
const OTHER_NUMBERS = /\b(?:rounds?|rosettes|flowers|stars|blocks|borders?|binding|squares?|strips?)\b/i;
const QUICKER = /\b(?:quick|fast|slow)(?:er|est)\b|\btime[- ]wise\b|\b(?:less|more) (?:time|work|sewing)\b/i;

const HOW_MUCH_BIGGER = /\bhow much (?:bigger|larger|smaller|wider)\b/i;

/** Larger than this nobody compares patches: it is cloth, or a quilt. Inches. */
const LARGEST = 8;

const SIZED_FORMS = /^(?:cut|count \w+|yield|yardage|time|plan make|template)$/;

/** "1 inch or 1 1/2 inch": the same is worked out with each size, and which it shall be is asked. */
export function severalSizes(sign: string, question: string): Doubt | null {
  const ask = comparedBy(sign || 'cut', question);
  const found = SIZED_FORMS.test(ask) ? SIZES.exec(withoutOthers(question)) : null;
  if (!found || (OF_TWO_MEASURES.test(question) && /\band\b/i.test(found[0]))) return null;
  const [all] = found;
  const parts: readonly Part[] = [...all.matchAll(EACH_SIZE)].map(([, number = '', unit]) => ({
    number,
    unit,
  }));
  const told =
    parts.at(-1)?.unit ?? (/\band\b/i.test(all) ? undefined : parts.find(({ unit }) => unit)?.unit);
  if (!told && (!COMPARED.test(question) || OTHER_NUMBERS.test(question))) return null;
  if (ONE_SIZE.test(all)) return null;
  const sizes = parts
    .map((part, i) => sizeOf(part, [...parts.slice(i), ...parts]))
    .filter((one) => one !== null);
  if (new Set(sizes.map(({ size }) => size)).size < parts.length) return null;
  const rest = optionWords(ask, question.replace(all, withoutSizes));
  return {
    ask,
    title: sizes.map(({ label }) => label).join(' or '),
    asks: 'Which size shall it be?',
    ways: sizes.map(({ label, size }) => ({ label, words: `size:${size}, ${rest}` })),
    ...(ask === 'plan make' ? { tells: toldOfPlan(question) } : {}),
  };
}

/** Which is quicker is told by its hours; which is better for a piece of cloth, by what comes out of it. */
function comparedBy(sign: string, question: string): string {
  if (sign === 'yardage' && HOW_MUCH_BIGGER.test(question)) return 'cut';
  if (/^(?:cut|count (?:field|rosette))$/.test(sign) && QUICKER.test(question) && QUILT.test(question))
    return 'time';
  return sign === 'cut' && COMPARED.test(question) && clothIn(question, 'letter') ? 'yield' : sign;
}

/** The question, its figures crossed out where they are of something else than patches. */
const withoutOthers = (question: string): string =>
  OF_ELSE.reduce((said, words) => said.replace(words, (found) => found.replace(/\d/g, '~')), question);

interface Part {
  readonly number: string;
  readonly unit: string | undefined;
}

/** A size as it can be typed, in its own unit or in that of another beside it; null where it is no patch's. */
function sizeOf({ number, unit }: Part, beside: readonly Part[]) {
  const said = (unit ?? beside.find((other) => other.unit)?.unit ?? 'in').trim();
  const taken = takeLength(`${number}${said}`, 'in');
  if (!taken || taken.value > LARGEST) return null;
  const size = writeLength(taken.value);
  return { size, label: /m$/i.test(said) ? `${number} ${said}` : size.replace(/([a-z]+)$/, ' $1') };
}

/** What stands about the sizes, such as the shape, is read with the rest. */
const withoutSizes = (words: string): string =>
  words.replace(new RegExp(`\\b${LENGTH}`, 'gi'), ' ').replace(/[-,] /g, ' ');
