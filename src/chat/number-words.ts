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
  ...{ nine: '9', ten: '10', eleven: '11', twelve: '12', dozen: '12', nineteen: '19', twenty: '20' },
  ...{ thirty: '30', forty: '40', fifty: '50', sixty: '60', hundred: '100' },
};

const SHARES: Readonly<Record<string, string>> = {
  half: '1/2',
  quarter: '1/4',
  quarters: '1/4',
  eighth: '1/8',
};

const SAID = `(?:an?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|dozen|nineteen|twenty|thirty|forty|fifty|sixty|hundred)`;
const UNIT = '(?=inch|in\\b|")';
/** What is counted in a question: before one of these a number's word is a number. */
const COUNTED =
  '(?:inch|in\\b|yards?|met(?:re|er)s?|rounds?|rosettes?|flowers?|stars?|blocks?|seams?|hours?|hex|diamonds?|pieces?|fat|charms?|sheets?|\\d)';

const figure = (word: string): string => NUMBERS[word.toLowerCase()] ?? word;
const share = (word: string): string => SHARES[word.toLowerCase()] ?? word;

type Rewrite = readonly [words: RegExp, figures: (found: string[]) => string];

/** From the top, each wherever it occurs: the longer ways of saying a number before the shorter. */
const REWRITES: readonly Rewrite[] = [
  [
    new RegExp(
      `\\b(${SAID}|\\d+) and (?:an? )?(half|quarter|\\d\\/\\d+)(?=[- ](?:inch|in\\b|yard|met|hour))`,
      'gi',
    ),
    ([, n = '', s = '']) => `${figure(n)} ${share(s)}`,
  ],
  [
    new RegExp(`\\b(${SAID}|\\d+) (inch|yard|met(?:re|er)|hour) and (?:an? )?(half|quarter)\\b`, 'gi'),
    ([, n = '', unit = '', s = '']) => `${figure(n)} ${share(s)} ${unit}`,
  ],
  [new RegExp(`\\bthree[- ]quarters?(?: of)?(?: an?)?[- ]${UNIT}`, 'gi'), () => '3/4 '],
  [
    new RegExp(`\\b(three|five|seven)[- ]eighths?(?: of)?(?: an?)?[- ]${UNIT}`, 'gi'),
    ([, n = '']) => `${figure(n)}/8 `,
  ],
  [
    new RegExp(`\\b(?:an? )?(half|quarter|eighth)(?: of)?(?: an?)?[- ]${UNIT}`, 'gi'),
    ([, s = '']) => `${share(s)} `,
  ],
  [
    new RegExp(`\\b(?:an? )?(${SAID.replace('an?|', '')})[- ](?=(?:of (?:them|those) )?${COUNTED})`, 'gi'),
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
 * inFigures('half a yard of one path') // "half a yard of one path"
 */
export const inFigures = (text: string): string =>
  REWRITES.reduce(
    (said, [words, figures]) => said.replace(words, (...found) => figures(found.slice(0, -2))),
    text,
  );
