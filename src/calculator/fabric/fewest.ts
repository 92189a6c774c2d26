import { type Cuts, cutsInAll } from './cuts.ts';
import type { CuttingPlan } from './plan.ts';
import { planCuts } from './plan-cuts.ts';

export interface FewestCuts<T> {
  readonly of: T;
  readonly cuts: Cuts;
  /** Cuts for each patch. */
  readonly each: number;
}

/** Ways whose cuts differ by less than this part are as easy as each other. */
const ALIKE = 0.02;

/**
 * Of some plans the first that takes hardly more cuts, for each patch that it gives, than the one with the
 * fewest: so hand in the best ones first. Strips and squares are asked first; where none of them has a
 * straight cut (a shape that is all curves), every plan is.
 */
export function fewestCuts<T>(all: readonly T[], planOf: (one: T) => CuttingPlan): FewestCuts<T> | undefined {
  const straight = counted(
    all.filter((one) => isCutStraight(planOf(one))),
    planOf,
  );
  return easiest(straight.some(({ cuts }) => cuts.straight > 0) ? straight : counted(all, planOf));
}

/** Whether one way takes clearly fewer cuts than another, whose cuts may not have been counted. */
export const isEasier = ({ each }: FewestCuts<unknown>, cuts: Cuts | undefined, patches: number): boolean =>
  cuts === undefined || each * (1 + ALIKE) < cutsInAll(cuts) / patches;

const isCutStraight = ({ method }: CuttingPlan): boolean => method === 'squares' || method === 'strips';

const counted = <T>(all: readonly T[], planOf: (one: T) => CuttingPlan): FewestCuts<T>[] =>
  all
    .filter((one) => planOf(one).count > 0)
    .map((of) => {
      const cuts = planCuts(planOf(of));
      return { of, cuts, each: cutsInAll(cuts) / planOf(of).count };
    });

function easiest<T>(all: readonly FewestCuts<T>[]): FewestCuts<T> | undefined {
  const fewest = Math.min(...all.map(({ each }) => each));
  return all.find(({ each }) => each <= fewest * (1 + ALIKE));
}
