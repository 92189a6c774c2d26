import { COUNT_WORDS } from '../measure/number.ts';

const NUMBERS: Readonly<Record<string, string>> = {
  ...{
    a: '1',
    an: '1',
    one: '1',
    two: '2',
    three: '3',
    four: '4',
    five: '5',
    six: '6',
    seven: '7',
    eight: '8',
  },
  ...{ nine: '9', ten: '10', eleven: '11', twelve: '12', dozen: '12', thirteen: '13', fourteen: '14' },
  ...{ fifteen: '15', sixteen: '16', seventeen: '17', eighteen: '18', nineteen: '19', twenty: '20' },
  ...{ thirty: '30', forty: '40', fifty: '50', sixty: '60', seventy: '70', eighty: '80', ninety: '90' },
  ...{ hundred: '100' },
};

const SHARES: Readonly<Record<string, string>> = {
  half: '1/2',
  quarter: '1/4',
  quarters: '1/4',
  eighth: '1/8',
};

const SAID = `(?:${Object.keys(NUMBERS)
  .sort((a, b) => b.length - a.length)
  .join('|')
  .replace('|an|a', '|an?')})`;
/** Too many to be a size with a fraction. */
const MANY = Object.keys(NUMBERS)
  .filter((word) => Number(NUMBERS[word]) >= 5)
  .join('|');
const UNIT = '(?=inch|in\\b|")';
/** What is counted in a question: before one of these a number's word is a number. */
const COUNTED =
  '(?:inch|in\\b|cms?\\b|mm\\b|yards?|met(?:re|er)s?|rounds?|rosettes?|flowers?|stars?|(?:tumbling |baby )?blocks?|seams?|hours?|weeks?|hex|diamonds?|triang|kites?|pentag|squares?|pieces?|patches|papers?|fat|charms?|strips?|sheets?|members?|people|kits?|cent(?:re|er)s?|petals?|colou?rs|charm packs?|per side|a side|of us\\b|\\d)';

const figure = (word: string): string => NUMBERS[word.toLowerCase()] ?? word;
const share = (word: string): string => SHARES[word.toLowerCase()] ?? word;

const OVER: Readonly<Record<string, string>> = { h: '2', t: '3', q: '4', e: '8' };
const PARTS = '(?:(two|three|five|seven|[2357])[- ])?(thirds?|quarters?|eighths?)';
/** "Three eighths" in figures, one of a part where it is not said how many. */
const partOf = (n: string | undefined, part: string): string =>
  `${n === undefined ? '1' : figure(n)}/${OVER[part.charAt(0).toLowerCase()]}`;

const TENS = 'twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety';
const ONES = COUNT_WORDS.slice(1, 10).join('|');
const SMALL = Object.keys(NUMBERS)
  .filter((word) => word.length > 2 && Number(NUMBERS[word]) < 100)
  .join('|');
/** What follows makes a size or rounds of the last word: "fifty one inch hexies". */
const NO_SIZE = '\\b(?![- ](?:inch|in\\b|and\\b|(?:a )?(?:quarters?|half|thirds?|eighths?)|rounds?))';

type Rewrite = readonly [words: RegExp, figures: (found: string[]) => string];

/** From the top, each wherever it occurs: the longer ways of saying a number before the shorter. */
const REWRITES: readonly Rewrite[] = [
  [/\bhalf a dozen\b/gi, () => '6'],
  // "Two hundred and forty"; "fifty one inch hexies" are fifty of one inch.
  [
    new RegExp(
      `\\b(${SAID}|\\d+) hundred(?:(?: and)?[- ](${TENS})(?:[- ](${ONES})${NO_SIZE})?(?= |$)|(?: and) (${SMALL})${NO_SIZE})`,
      'gi',
    ),
    ([, n = '', tens = '', ones = '', small = '']) =>
      String(Number(figure(n)) * 100 + Number(figure(tens)) + Number(figure(ones)) + Number(figure(small))),
  ],
  [
    new RegExp(`\\b(${TENS})[- ](${ONES})${NO_SIZE}`, 'gi'),
    ([, tens = '', ones = '']) => String(Number(figure(tens)) + Number(figure(ones))),
  ],
  [
    new RegExp(`\\b(${TENS})(?= (?:${ONES})[- ](?:inch|in\\b|and\\b|quarter|half|third|eighth|round))`, 'gi'),
    ([, tens = '']) => figure(tens),
  ],
  [
    new RegExp(`\\b(${SAID}|\\d+) (dozen|hundred)\\b`, 'gi'),
    ([, n = '', of = '']) => String(Number(figure(n)) * Number(figure(of))),
  ],
  [new RegExp(`\\b(${MANY})(?= \\d\\/\\d)`, 'gi'), ([, n = '']) => `${figure(n)},`],
  [new RegExp(`(?<=\\bkits? for )(${SAID})\\b`, 'gi'), ([, n = '']) => figure(n)],
  [/\ba couple(?: of)? (?=[a-z]*[- ]?[a-z]+s\b)/gi, () => '2 '],
  [
    /\b(half an?|an?|\d[\d ./]*) (yard|yd)s? and (\d[\d ./]* ?inches)(?=[?.!,]|$| (?:in|to|of|from|how)\b)/gi,
    ([, n = '', yard = '', inches = '']) =>
      `${/^half/i.test(n) ? '1/2' : figure(n)} ${yard.toLowerCase()} ${inches}`,
  ],
  [
    new RegExp(
      `\\b(${SAID}|\\d+)[- ]and[- ](?:an?[- ])?${PARTS}(?=[- ](?:inch|in\\b|yard|met|hour|hex|dia|tri))`,
      'gi',
    ),
    ([, n = '', many, part = '']) => `${figure(n)} ${partOf(many, part)}`,
  ],
  [
    new RegExp(
      `\\b(?:(${SAID}|\\d+) )?(inch|yard|met(?:re|er)|hour)(?:e?s)? and (?:an? )?${PARTS}(?! (?:of|inch|yard|met)\\b)`,
      'gi',
    ),
    // Nobody has patches of 240 inches and a quarter: 240 of them.
    ([, n = '1', unit = '', many, part = '']) =>
      /^inch/i.test(unit) && Number(figure(n)) > 12
        ? `${figure(n)} 1 ${partOf(many, part)} ${unit}`
        : `${figure(n)} ${partOf(many, part)} ${unit}`,
  ],
  [
    new RegExp(`(?<!\\bfat )\\b(?:an? )?${PARTS}(?: of)?(?: an?)?[- ](?=(?:yard|yd|met(?:re|er))\\b)`, 'gi'),
    ([, many, part = '']) => `${partOf(many, part)} `,
  ],
  [
    new RegExp(
      `\\b(${SAID}|\\d+)[- ]and[- ](?:an?[- ])?(half|quarter|\\d\\/\\d+)(?=[- ](?:inch|in\\b|yard|met|hour))`,
      'gi',
    ),
    ([, n = '', s = '']) => `${figure(n)} ${share(s)}`,
  ],
  [
    new RegExp(`\\b(${SAID}|\\d+) (inch|yard|met(?:re|er)|hour) and (?:an? )?(half|quarter)\\b`, 'gi'),
    ([, n = '', unit = '', s = '']) => `${figure(n)} ${share(s)} ${unit}`,
  ],
  [
    /\b(?:an? )?(inch|yard|met(?:re|er)) and (?:an? )?(half|quarter)\b/gi,
    ([, unit = '', s = '']) => `1 ${share(s)} ${unit}`,
  ],
  [new RegExp(`\\bthree[- ]quarters?(?: of)?(?: an?)?[- ]${UNIT}`, 'gi'), () => '3/4 '],
  [
    new RegExp(`\\b(three|five|seven)[- ]eighths?(?: of)?(?: an?)?[- ]${UNIT}`, 'gi'),
    ([, n = '']) => `${figure(n)}/8 `,
  ],
  [
    new RegExp(`(?<!\\bfat )\\b(?:an? )?(half|quarter|eighth)(?: of)?(?: an?)?[- ]${UNIT}`, 'gi'),
    ([, s = '']) => `${share(s)} `,
  ],
  [
    new RegExp(`\\b(?:an? )?(${SAID.replace('|an?', '')})[- ](?=(?:of (?:them|those) )?${COUNTED})`, 'gi'),
    ([, n = '']) => `${figure(n)} `,
  ],
  [/(?<![\d/][- ]?|\d in |")\binch(?=[- ](?:hex|dia|tri|half|kite|square|patch))/gi, () => '1 inch'],
  [/\ban? (?=(?:inch|hour)\b)/gi, () => '1 '],
];

/**
 * A question with its numbers in figures where they are said in words before what is counted. "One path" and
 * "fat quarter" stay as they are.
 *
 * @example
 * inFigures('one and a half inch hexies') // "1 1/2 inch hexies"
 * inFigures('three quarter inch, two rounds') // "3/4 inch, 2 rounds"
 * inFigures('some inch hexies') // "some 1 inch hexies"
 * inFigures('two thirds of a yard') // "2/3 yard"
 * inFigures('half a yard of one path') // "half a yard of one path"
 */
export const inFigures = (text: string): string =>
  REWRITES.reduce(
    (said, [words, figures]) => said.replace(words, (...found) => figures(found.slice(0, -2))),
    text,
  );
