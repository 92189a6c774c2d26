/** So many signs of what was passed over are told. */
const MOST_PASSED = 40;

/** Numbers of a plain question that no option took: the answer may not be about all of it. */
export function passedOver(left: readonly string[]): string[] {
  const numbers = left.filter((word) => /\d/.test(word)).join(' ');
  const told = numbers.length > MOST_PASSED ? `${numbers.slice(0, MOST_PASSED)}…` : numbers;
  return told === '' ? [] : [`Passed over: ‘${told}’.`];
}
