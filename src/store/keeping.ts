import type { Problem } from '../measure/result.ts';

/** What the store is handed from outside. */
export interface Keeping {
  /** The clock that dates what is kept. */
  now(): Date;
  /** Told of a row that could not be read and was left out; it goes to the operator's log. */
  report(problem: Problem): void;
}
