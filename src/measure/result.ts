/** What was wrong, as data. The sentence a member reads is made from it in the chat room. */
export interface Problem {
  readonly code: string;
  readonly [detail: string]: string | number | readonly string[] | undefined;
}

/** What was wrong, where a value was wanted. */
export interface Wrong {
  readonly ok: false;
  readonly problem: Problem;
}

export type Result<T> = { readonly ok: true; readonly value: T } | Wrong;

export const ok = <T>(value: T): Result<T> => ({ ok: true, value });

export const wrong = (code: string, details: Omit<Problem, 'code'> = {}): Wrong => ({
  ok: false,
  problem: { code, ...details },
});

/** Lets a count that is a hair under a whole number be that whole number: 5 / 2.5 is 2, 10 flats are 10. */
export const TOLERANCE = 1e-9;

/** The whole number at or below x, forgiving rounding. `wholeBelow(4.9999999999)` is 5. */
export const wholeBelow = (x: number): number => Math.floor(x + TOLERANCE);

/** The whole number at or above x, forgiving rounding. `wholeAbove(5.0000000001)` is 5. */
export const wholeAbove = (x: number): number => Math.ceil(x - TOLERANCE) + 0;
