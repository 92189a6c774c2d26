import type { Here } from '../src/chat/command.ts';
import type { KeptPlan } from '../src/guild/plan-facts.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';

/** The plan that the guild keeps under a name. */
export async function keptPlan(
  name: string,
  { facts, guild }: Pick<Here, 'facts' | 'guild'>,
): Promise<Result<KeptPlan>> {
  const found = await facts.plans.find(guild, name);
  if (found) return ok(found);
  const known = (await facts.plans.list(guild)).map((one) => one.name);
  return known.length === 0
    ? wrong('plans-none', { instead: '/plan keep name:Spring garden rosettes:7 rounds:2' })
    : wrong('plan-unknown', { got: name, known });
}
