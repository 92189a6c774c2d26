import { type Cuts, cutsInAll } from './cuts.ts';
import type { CuttingPlan } from './plan.ts';
import { planCuts } from './plan-cuts.ts';

export interface FewestCuts<T> {
  readonly of: T;
  readonly cuts: Cuts;
}

/** Ways whose cuts differ by less than this part are as easy as each other. */
const ALIKE = 0.02;

/**
 * Of some plans the first that takes hardly more cuts, for each patch that it gives, than the one with the
 * fewest: so hand in the best ones first. Plans whose patches are traced are left out where there are others:
 * each of their sides is a cut by itself.
 */
export function fewestCuts<T>(all: readonly T[], planOf: (one: T) => CuttingPlan): FewestCuts<T> | undefined {
  const straight = all.filter((one) => isCutStraight(planOf(one)));
  const counted = (straight.length > 0 ? straight : all)
    .filter((one) => planOf(one).count > 0)
    .map((of) => {
      const cuts = planCuts(planOf(of));
      return { of, cuts, each: cutsInAll(cuts) / planOf(of).count };
    });
  const fewest = Math.min(...counted.map(({ each }) => each));
  const found = counted.find(({ each }) => each <= fewest * (1 + ALIKE));
  return found && { of: found.of, cuts: found.cuts };
}

const isCutStraight = ({ method }: CuttingPlan): boolean => method === 'squares' || method === 'strips';
