import type { Growing } from './as-large-as.ts';
import { type DiamondField, diamonds, type Middle, sideAfter } from './diamonds.ts';
import { type Rosette, rosette } from './rosette.ts';
import { type Star, star } from './star.ts';

const ROOT3 = Math.sqrt(3);

/**
 * One rosette, by its rounds. A quilt's corner lies √3/4 of its width and a quarter of its height out towards a
 * slanted side, whose points reach 1½ edges a round and one more.
 */
export const GROWING_ROSETTE: Growing<Rosette> = {
  least: 0,
  make: rosette,
  sizeOf: (R) => [(2 * R + 1) * ROOT3, 3 * R + 2],
  coversFrom: (width, height) => Math.ceil(((ROOT3 / 4) * width + height / 4 - 1) / 1.5 - 1e-9),
};

/** One star, by the diamonds along a side of its points; nobody trims a star. */
export const GROWING_STAR: Growing<Star> = {
  least: 1,
  make: star,
  sizeOf: (n) => [3 * n, 2 * ROOT3 * n],
};

/** One large diamond on its point, by its rounds. Its sides are straight, so that its size tells what it covers. */
export const growingDiamonds = (from: Middle): Growing<DiamondField> => ({
  least: 0,
  make: (rounds) => diamonds(from, rounds),
  sizeOf: (rounds) => [sideAfter(from, rounds), ROOT3 * sideAfter(from, rounds)],
  coversFrom: (width, height) => Math.ceil((width + height / ROOT3 - sideAfter(from, 0)) / 2 - 1e-9),
});
