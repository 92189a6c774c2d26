import type { Answer, Here } from '../src/chat/command.ts';
import { reply } from '../src/chat/reply.ts';
import type { KeptPlan } from '../src/guild/plan-facts.ts';
import { mayChange } from '../src/guild/plan-rules.ts';
import { type Result, wrong } from '../src/measure/result.ts';
import { keptPlan, plansMeant } from './kept-plan.ts';
import { layoutWords } from './plan-roles.ts';

/** The kept plan that was meant, or what is to be answered instead. */
export type WhichPlan = Result<KeptPlan> | { readonly asks: Answer };

/** So many are offered when it must be asked which one. */
const MOST_OFFERED = 5;

/**
 * The kept plan of that name; else the only one whose name begins so, in any case; of several that do, the
 * question which. `option` is the ask's option that names it.
 */
export async function whichPlan(name: string, option: 'name' | 'plan', here: Here): Promise<WhichPlan> {
  const meant = await plansMeant(name, here);
  return meant.length > 1 ? { asks: askWhich(name, option, meant, here) } : keptPlan(name, here);
}

/** The same, where the asker may change it. */
export async function whichOfHers(name: string, here: Here): Promise<WhichPlan> {
  const found = await whichPlan(name, 'name', here);
  if ('asks' in found || !found.ok || mayChange(here.who, found.value)) return found;
  return wrong('plan-not-yours', { got: found.value.name, owner: found.value.ownerName });
}

const askWhich = (got: string, option: string, begun: readonly KeptPlan[], here: Here): Answer =>
  reply({
    title: 'Which plan?',
    asks: `Which of the plans that begin with ‘${got}’?`,
    choices: begun.slice(0, MOST_OFFERED).map(({ name, wish }) => ({
      label: `${name}: ${layoutWords({ wish }, here.say)}`,
      ask: here.again({ [option]: name }),
    })),
  });
