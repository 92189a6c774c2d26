import { oneInchSeams } from '../calculator/stitching/rates.ts';
import type { TimedLog } from './challenge-facts.ts';
import { worthOf } from './counted.ts';

/** Her own pace counts from so many logs with minutes on, and is told from the last few. */
export const LEAST_LOGS = 3;
export const MOST_LOGS = 6;

/** A member's pace as her logs have it. */
export interface LoggedPace {
  /** Minutes a seam of one inch. */
  readonly perInchSeam: number;
  readonly logs: number;
}

/**
 * Minutes a seam from a member's last logs with minutes, the latest first; null while there are fewer than
 * three. Seams of other lengths count as the usual rates have them. With so few a learning curve would be
 * guessed, not read: the last four to six tell more.
 *
 * @example
 * paceOf([{ counting: 'rosette', rounds: 2, size: 1, pieces: 1, minutes: 84 }, { counting: 'rosette', rounds: 2, size: 1, pieces: 2, minutes: 168 }, { counting: 'rosette', rounds: 1, size: 1, pieces: 1, minutes: 24 }]) // {"perInchSeam":2,"logs":3}
 * paceOf([{ counting: 'block', rounds: 0, size: 1, pieces: 4, minutes: 24 }]) // null
 */
export function paceOf(logs: readonly TimedLog[]): LoggedPace | null {
  const timed = logs
    .map((log) => ({
      minutes: log.minutes,
      seams: oneInchSeams(worthOf(log).seams * log.pieces, log.size),
    }))
    .filter(({ seams }) => seams > 0)
    .slice(0, MOST_LOGS);
  if (timed.length < LEAST_LOGS) return null;
  const sum = (of: (log: (typeof timed)[number]) => number) =>
    timed.reduce((total, log) => total + of(log), 0);
  return { perInchSeam: sum(({ minutes }) => minutes) / sum(({ seams }) => seams), logs: timed.length };
}
