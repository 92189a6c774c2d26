/** What is known of a challenge at one moment. Times are in weeks of seven days. */
export interface Progress {
  /** Pieces logged so far. */
  readonly done: number;
  /** Since the first day. */
  readonly weeks: number;
  /** Pieces still to go. */
  readonly toGo: number;
  /** Until the last day; null where there is none. */
  readonly weeksLeft: number | null;
  /** Variance over mean of what one piece of luck brings: 1 when pieces come singly, more when in lumps. */
  readonly lumpiness?: number;
  /** What was known of the weekly rate beforehand. */
  readonly prior?: Prior;
}

/** A gamma distribution of the weekly rate: as if `pieces` had been seen in `weeks`. */
export interface Prior {
  readonly pieces: number;
  readonly weeks: number;
}

/** When the rest will be done, in weeks from now. */
export interface Forecast {
  /** Pieces a week so far. */
  readonly perWeek: number;
  /** The chance of being done by the last day; null where there is none. */
  readonly chance: number | null;
  /** As likely earlier as later. */
  readonly medianWeeks: number;
  /** Four times in five it is between these two. */
  readonly weeksLow: number;
  readonly weeksHigh: number;
  /** Four times in five it is done by then. */
  readonly weeksSure: number;
  /** Four times in five so many are done by the last day, those done already with them; null where there is none. */
  readonly byLast: { readonly low: number; readonly high: number } | null;
}

/**
 * Hardly anything is taken for granted: half a piece, seen in no time. A bolder prior is not harmless: with
 * one piece in one week, 57 in 6 weeks and 143 to go, the chance within 15 weeks falls from 0.50 to 0.18.
 */
export const WEAK_PRIOR: Prior = { pieces: 1 / 2, weeks: 0 };

/**
 * When a challenge will reach its goal, from what was logged so far: the weekly rate has a gamma
 * distribution, pieces arrive by Poisson's law, so the time to K more is a beta prime variable, and
 * P(T ≤ x) = I(K, a) at x / (x + b), the regularised incomplete beta function, with a the pieces and b the
 * weeks seen, prior included. (Open textbook pages on gamma–Poisson conjugacy.) Where pieces come in lumps,
 * both counts are divided by the lumpiness, which widens the range and leaves the rate as it is.
 *
 * Give it some time first: `weeks` above 0.
 */
export async function forecast(progress: Progress): Promise<Forecast> {
  const { default: incompleteBeta } = await import('@stdlib/math-base-special-betainc');
  const { done, weeks, toGo, weeksLeft, lumpiness = 1, prior = WEAK_PRIOR } = progress;
  const perWeek = done / weeks;
  if (toGo <= 0) {
    return { perWeek, chance: 1, medianWeeks: 0, weeksLow: 0, weeksHigh: 0, weeksSure: 0, byLast: null };
  }
  const lumps = Math.max(1, lumpiness);
  const seen = prior.pieces + done / lumps;
  const over = prior.weeks + weeks;
  // Less than one lump to go is done with the next.
  const lumpsToGo = Math.max(Math.min(1, toGo), toGo / lumps);
  const chanceWithin = (x: number) => incompleteBeta(x / (x + over), lumpsToGo, seen);
  const within = (chance: number) => whenReached(chanceWithin, chance, over);
  // As many as come in so many weeks are negative binomial: fewer than n with 1 - I(n, a) at x / (x + b).
  const likelyIn = (x: number) => {
    const fewerThan = (n: number) => 1 - incompleteBeta(x / (x + over), n, seen);
    const [low, high] = [1 / 10, 9 / 10].map((chance) => whenReached(fewerThan, chance, (seen * x) / over));
    return { low: done + Math.floor((low ?? 0) * lumps), high: done + Math.floor((high ?? 0) * lumps) };
  };
  return {
    perWeek,
    chance: weeksLeft === null ? null : weeksLeft <= 0 ? 0 : chanceWithin(weeksLeft),
    medianWeeks: within(1 / 2),
    weeksLow: within(1 / 10),
    weeksHigh: within(9 / 10),
    weeksSure: within(4 / 5),
    byLast: weeksLeft === null || weeksLeft <= 0 ? null : likelyIn(weeksLeft),
  };
}

const STEPS = 100;
const EXACT = 1e-12;

/**
 * The time by which the chance is reached. Between two times on either side of it a line is drawn, and where it
 * crosses is the next to look at; a side that stays twice is drawn half as far away, so that both come nearer
 * (the Illinois rule). Looked for among logarithms, in which the chance rises evenly.
 */
function whenReached(chanceWithin: (weeks: number) => number, chance: number, scale: number): number {
  const gap = (log: number): number => chanceWithin(Math.exp(log)) - chance;
  let [low, high] = [Math.log(scale), Math.log(scale)];
  let [below, above] = [gap(low), gap(high)];
  for (let step = 1; below > 0 && step < 500; step *= 2) [low, below] = [low - step, gap(low - step)];
  for (let step = 1; above < 0 && step < 500; step *= 2) [high, above] = [high + step, gap(high + step)];
  let moved: 'low' | 'high' | null = null;
  for (let i = 0; i < STEPS && high - low > EXACT; i++) {
    const at = (low * above - high * below) / (above - below);
    const found = gap(at);
    if (Math.abs(found) < EXACT) return Math.exp(at);
    const side = found < 0 ? 'low' : 'high';
    if (side === 'low') [low, below] = [at, found];
    else [high, above] = [at, found];
    if (side === moved && side === 'low') above /= 2;
    if (side === moved && side === 'high') below /= 2;
    moved = side;
  }
  return Math.exp((low + high) / 2);
}

/** With fewer full weeks than this, their spread says little. */
const LEAST_WEEKS = 3;

/**
 * How lumpy the weekly counts are: their variance over their mean, at least 1. It takes three full weeks to
 * tell; before that 1 is all that can be said.
 *
 * @example
 * lumpinessOf([9, 10, 9, 10]) // 1
 * lumpinessOf([0, 20, 0, 20]) // 13.3333
 * lumpinessOf([40, 0]) // 1
 */
export function lumpinessOf(weekly: readonly number[]): number {
  if (weekly.length < LEAST_WEEKS) return 1;
  const mean = weekly.reduce((sum, count) => sum + count, 0) / weekly.length;
  if (mean <= 0) return 1;
  const squares = weekly.reduce((sum, count) => sum + (count - mean) ** 2, 0);
  return Math.max(1, squares / (weekly.length - 1) / mean);
}
