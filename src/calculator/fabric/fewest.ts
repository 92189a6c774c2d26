import { type Cuts, cutsInAll } from './cuts.ts';
import type { CuttingPlan } from './plan.ts';
import { planCuts } from './plan-cuts.ts';

export interface FewestCuts<T> {
  readonly of: T;
  readonly cuts: Cuts;
}

/**
 * Of some plans the one with the fewest cuts for each patch that it gives; of equal ones the first. Plans
 * whose patches are traced are left out where there are others: each of their sides is a cut by itself.
 */
export function fewestCuts<T>(all: readonly T[], planOf: (one: T) => CuttingPlan): FewestCuts<T> | undefined {
  const straight = all.filter((one) => isCutStraight(planOf(one)));
  let best: FewestCuts<T> | undefined;
  let fewest = Number.POSITIVE_INFINITY;
  for (const of of straight.length > 0 ? straight : all) {
    const plan = planOf(of);
    if (plan.count === 0) continue;
    const cuts = planCuts(plan);
    const each = cutsInAll(cuts) / plan.count;
    if (each >= fewest - 1e-9) continue;
    fewest = each;
    best = { of, cuts };
  }
  return best;
}

const isCutStraight = ({ method, cutAngles }: CuttingPlan): boolean =>
  method === 'squares' || (method === 'strips' && cutAngles.length > 0);
