const NUMBERS: Readonly<Record<string, number>> = {
  ...{ one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9, ten: 10 },
  ...{ eleven: 11, twelve: 12, fifteen: 15, twenty: 20, thirty: 30, forty: 40, fifty: 50, sixty: 60 },
};

/** A count as it may be said in words. */
export const SMALL_NUMBER = Object.keys(NUMBERS).join('|');

const SAID = new RegExp(
  `^(?:(half a)|(an?)|(${SMALL_NUMBER}|\\d+))\\s+(?:(dozen|hundred)\\s+)?(?:of\\s+)?`,
  'i',
);

/** A count in words with nothing behind it: "two", "two, the blue ones". */
const ALONE = new RegExp(`^(${SMALL_NUMBER})(?=\\s*(?:$|[,;.]))`, 'i');

/**
 * A count that stands alone in figures.
 *
 * @example
 * loneCountInFigures('two') // "2"
 * loneCountInFigures('two, the blue ones') // "2, the blue ones"
 * loneCountInFigures('two blue ones') // "two blue ones"
 */
export const loneCountInFigures = (line: string): string =>
  line.replace(ALONE, (word) => String(NUMBERS[word.toLowerCase()]));

/**
 * The count that a line begins with in figures, where it is said in words. Half of something stays as it is
 * said: a half yard is a length.
 *
 * @example
 * countInFigures('ten fat quarters') // "10 fat quarters"
 * countInFigures('two dozen 5in squares') // "24 5in squares"
 * countInFigures('half a dozen charms') // "6 charms"
 * countInFigures('two half yards') // "2 half yards"
 * countInFigures('a fat quarter') // "a fat quarter"
 */
export function countInFigures(line: string): string {
  const found = SAID.exec(line);
  if (!found) return line;
  const [all, half, article, number = '', times] = found;
  if (!times && (half || article || /^\d/.test(number))) return line;
  const one = half ? 1 / 2 : article ? 1 : (NUMBERS[number.toLowerCase()] ?? Number(number));
  const count = one * (times === undefined ? 1 : /^d/i.test(times) ? 12 : 100);
  return `${count} ${line.slice(all.length)}`;
}
