import type { Answer, Here } from '../src/chat/command.ts';
import { reply } from '../src/chat/reply.ts';
import type { KeptPlan } from '../src/guild/plan-facts.ts';
import { mayChange, planKey } from '../src/guild/plan-rules.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import { nameOption } from './plan-options.ts';
import { layoutWords } from './plan-roles.ts';

/** The name of a plan that is kept: offered while it is typed. */
export const keptName: typeof nameOption = {
  ...nameOption,
  suggest: async ({ facts, guild }) => (await facts.plans.list(guild)).map(({ name }) => name),
};

/** The kept plan that was meant, or what is to be answered instead. */
export type WhichPlan = Result<KeptPlan> | { readonly asks: Answer };

/** So many are offered when it must be asked which one. */
const MOST_OFFERED = 5;

/**
 * The kept plan of that name; else the only one whose name begins so, in any case; of several that do, the
 * question which. `option` is the ask's option that names it.
 */
export async function whichPlan(name: string, option: 'name' | 'plan', here: Here): Promise<WhichPlan> {
  const { facts, guild } = here;
  const named = await facts.plans.find(guild, name);
  if (named) return ok(named);
  const all = await facts.plans.list(guild);
  const begun = all.filter((one) => planKey(one.name).startsWith(planKey(name)));
  const [only, ...more] = begun;
  if (only) return more.length === 0 ? ok(only) : { asks: askWhich(name, option, begun, here) };
  if (all.length === 0) return wrong('plans-none');
  return wrong('plan-unknown', { got: name, known: all.map((one) => one.name) });
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
