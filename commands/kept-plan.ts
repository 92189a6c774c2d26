import type { Here } from '../src/chat/command.ts';
import type { KeptPlan } from '../src/guild/plan-facts.ts';
import { planKey } from '../src/guild/plan-rules.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';

type Kept = Pick<Here, 'facts' | 'guild'>;

/** The kept plans that a name may mean: the one of that name, else those whose names begin so, in any case. */
export async function plansMeant(name: string, { facts, guild }: Kept): Promise<readonly KeptPlan[]> {
  const named = await facts.plans.find(guild, name);
  if (named) return [named];
  const all = await facts.plans.list(guild);
  return all.filter((one) => planKey(one.name).startsWith(planKey(name)));
}

/** The one plan that the guild keeps under a name, or whose name begins so where no other's does. */
export async function keptPlan(name: string, here: Kept): Promise<Result<KeptPlan>> {
  const meant = await plansMeant(name, here);
  const [only, ...more] = meant;
  if (only && more.length === 0) return ok(only);
  const known = (only ? meant : await here.facts.plans.list(here.guild)).map((one) => one.name);
  return known.length === 0
    ? wrong('plans-none', { instead: '/plan keep name:Spring garden rosettes:7 rounds:2' })
    : wrong('plan-unknown', { got: name, known });
}
