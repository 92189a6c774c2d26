/** Beyond the largest step found so many more are tried: a little larger may happen to lie better. */
const BEYOND = 2;

/**
 * The largest of the sizes 1, 2, 3 … `most` steps that serves; 0 where not even the least does. Sizes that
 * serve are taken to be the small ones, but for a few steps at the end that are looked at one by one.
 *
 * @example
 * largestThat((steps) => steps * steps <= 50, 100) // 7
 * largestThat((steps) => steps <= 5 || steps === 7, 100) // 7
 * largestThat(() => false, 100) // 0
 */
export function largestThat(serves: (steps: number) => boolean, most: number): number {
  let [served, failed] = [0, most + 1];
  while (failed - served > 1) {
    const middle = Math.floor((served + failed) / 2);
    if (serves(middle)) served = middle;
    else failed = middle;
  }
  if (served === 0) return 0;
  for (let beyond = Math.min(served + 1 + BEYOND, most); beyond > served + 1; beyond--)
    if (serves(beyond)) return beyond;
  return served;
}
