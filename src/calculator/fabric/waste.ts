import type { LaidPlan } from './plan.ts';

/**
 * What is left of a piece of cloth when so many patches of a plan have been cut from it, as a part of its
 * area: 0.14 is fourteen in a hundred. Without a number, all that the plan gives.
 */
export const wasteOf = ({ patch, cloth, count }: LaidPlan, cut = count): number =>
  Math.max(0, 1 - (cut * patch.cut.area) / (cloth.width * cloth.length));
