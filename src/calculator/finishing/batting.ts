import { TOLERANCE } from '../../measure/result.ts';

export interface BattingPackage {
  readonly name: string;
  readonly width: number;
  readonly height: number;
}

/**
 * Packages of batting, the smallest first, in inches. Common practice, no source: the same list is on several
 * open pages, none of them authoritative; some give full as 84 × 96 and king as 124 × 120.
 *
 * @example
 * BATTING_PACKAGES.map(({ name }) => name) // ["crib","throw","twin","full","queen","king"]
 */
export const BATTING_PACKAGES: readonly BattingPackage[] = [
  { name: 'crib', width: 45, height: 60 },
  { name: 'throw', width: 60, height: 60 },
  { name: 'twin', width: 72, height: 90 },
  { name: 'full', width: 81, height: 96 },
  { name: 'queen', width: 90, height: 108 },
  { name: 'king', width: 120, height: 120 },
];

export interface Batting {
  readonly needWidth: number;
  readonly needHeight: number;
  /** The smallest package that is large enough, laid either way; undefined where none is. */
  readonly package: BattingPackage | undefined;
  /** Where none is: the smallest of which two, side by side, are. */
  readonly twice: BattingPackage | undefined;
}

/**
 * Batting for a quilt, so much more than the top on every side (4 in is common practice, no source).
 *
 * @example
 * batting(62, 76, 4).package.name // "twin"
 * batting(90, 108, 4).package.name // "king"
 * batting(130, 100, 4).twice.name // "queen"
 */
export function batting(width: number, height: number, over: number): Batting {
  const needWidth = width + 2 * over;
  const needHeight = height + 2 * over;
  const enough = ({ width: w, height: h }: Omit<BattingPackage, 'name'>): boolean =>
    (fits(needWidth, w) && fits(needHeight, h)) || (fits(needWidth, h) && fits(needHeight, w));
  const one = BATTING_PACKAGES.find(enough);
  const two = BATTING_PACKAGES.find(
    ({ width: w, height: h }) => enough({ width: 2 * w, height: h }) || enough({ width: w, height: 2 * h }),
  );
  return { needWidth, needHeight, package: one, twice: one ? undefined : two };
}

const fits = (needed: number, there: number): boolean => needed <= there + TOLERANCE;
