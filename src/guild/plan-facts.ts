import type { PlanWish } from '../calculator/plan/wish.ts';

/*
 * The plans that a guild keeps under a name, as the rooms that use them see them. A kept plan is its wish: its
 * numbers are worked out anew whenever it is looked at.
 */

export type { PlanWish };

export interface KeptPlan {
  /** As it was typed. */
  readonly name: string;
  /** The member who keeps it; empty when she has been forgotten. */
  readonly owner: string;
  readonly ownerName: string;
  readonly wish: PlanWish;
  /** The day it was kept, and the day it was last changed, YYYY-MM-DD. */
  readonly keptOn: string;
  readonly changedOn: string;
}

export interface PlansKept {
  /** The plan of that name, however its letters are written, or undefined. */
  find(guild: string, name: string): Promise<KeptPlan | undefined>;
  /** Every plan of the guild, by name. */
  list(guild: string): Promise<readonly KeptPlan[]>;
  /** Keeps a plan. False when there is one of that name already, which stays. */
  keep(guild: string, plan: KeptPlan): Promise<boolean>;
  /** Puts another wish in the place of a plan's own. False when there is no such plan. */
  change(guild: string, name: string, wish: PlanWish, on: string): Promise<boolean>;
  /** False when there was no such plan. */
  remove(guild: string, name: string): Promise<boolean>;
}

declare module '../chat/facts.ts' {
  interface Facts {
    readonly plans: PlansKept;
  }
}
