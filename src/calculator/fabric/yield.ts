import type { CutPatch } from '../shapes/shape.ts';
import { ceilingOf } from './ceiling.ts';
import type { CuttingMethod } from './lay.ts';
import { laysOf } from './lays.ts';
import { type ClothSize, type CuttingPlan, planOf } from './plan.ts';

/** How many patches a piece of cloth gives, by each method the better of both directions. */
export interface Yield {
  readonly strips: number;
  readonly nested?: number;
  readonly turned?: number;
  readonly squares?: number;
  /** The most of them all; at least so many can be cut, perhaps more. */
  readonly best: number;
  /** More than this no plan can give: the cloth's area by the patch's. */
  readonly ceiling: number;
  /** Every plan that gives at least one, the largest first; of equal ones the fewest cuts first. */
  readonly plans: readonly CuttingPlan[];
  /** The plan that gives `best`; none where not even one patch fits. */
  readonly bestPlan?: CuttingPlan;
}

export interface YieldOptions {
  /** Left free along all four edges, in inches. */
  readonly margin?: number;
}

/** How many patches can be cut from a piece of cloth, and how. Width and length may be exchanged. */
export function yieldFrom(patch: CutPatch, cloth: ClothSize, { margin = 0 }: YieldOptions = {}): Yield {
  const plans = laysOf(patch).flatMap((lay) => [
    planOf(lay, 'across', cloth, margin),
    planOf(lay, 'lengthwise', cloth, margin),
  ]);
  const cuttable = plans.filter((plan) => plan.count > 0).sort((a, b) => b.count - a.count);
  const bestPlan = cuttable.find((plan) => plan.patch.cornerStyle === patch.cornerStyle);
  return {
    ...mostByMethod(plans),
    best: bestPlan?.count ?? 0,
    ceiling: ceilingOf(patch.cut.area, cloth.width - 2 * margin, cloth.length - 2 * margin),
    plans: cuttable,
    ...(bestPlan && { bestPlan }),
  };
}

type ByMethod = Partial<Record<CuttingMethod, number>> & { strips: number };

function mostByMethod(plans: readonly CuttingPlan[]): ByMethod {
  const most: ByMethod = { strips: 0 };
  for (const plan of plans) most[plan.method] = Math.max(most[plan.method] ?? 0, plan.count);
  return most;
}
