import type { KeptDefaults } from '../../src/chat/defaults.ts';
import type { Answer, DefaultChanges, Facts } from '../../src/chat/facts.ts';
import type { KeptPlan } from '../../src/guild/plan-facts.ts';
import { planKey } from '../../src/guild/plan-rules.ts';

/** Facts kept in this process only, for tests that are not about how facts are kept. */
export function memoryFacts(): Facts {
  const kept = new Map<string, KeptDefaults>();
  const plans = new Map<string, KeptPlan>();
  const answers = new Map<string, Answer>();
  const notes = new Map<string, { value: unknown; at: number }>();
  const key = (...parts: string[]) => JSON.stringify(parts);
  const facts: Facts = {
    defaults: {
      read: async (guild, member) => kept.get(key(guild, member)) ?? {},
      set: async (guild: string, member: string, changes: DefaultChanges) => {
        const entries = Object.entries({ ...kept.get(key(guild, member)), ...changes });
        const now = Object.fromEntries(entries.filter(([, value]) => value !== null)) as KeptDefaults;
        kept.set(key(guild, member), now);
        return now;
      },
      clear: async (guild, member) => {
        kept.delete(key(guild, member));
      },
    },
    plans: {
      find: async (guild, name) => plans.get(key(guild, planKey(name))),
      list: async (guild) => [...plans].filter(([at]) => JSON.parse(at)[0] === guild).map(([, plan]) => plan),
      keep: async (guild, plan) => {
        const at = key(guild, planKey(plan.name));
        if (plans.has(at)) return false;
        plans.set(at, plan);
        return true;
      },
      change: async (guild, name, wish, changedOn) => {
        const at = key(guild, planKey(name));
        const plan = plans.get(at);
        if (plan) plans.set(at, { ...plan, wish, changedOn });
        return plan !== undefined;
      },
      remove: async (guild, name) => plans.delete(key(guild, planKey(name))),
    },
    answered: {
      find: async (guild, event) => answers.get(key(guild, event)),
      keep: async (guild, event, answer) => {
        if (answers.has(key(guild, event))) return false;
        answers.set(key(guild, event), answer);
        return true;
      },
    },
    notes: {
      find: async (platform, key) => notes.get(JSON.stringify([platform, key]))?.value,
      keep: async (platform, key, value) => {
        notes.set(JSON.stringify([platform, key]), { value, at: Date.now() });
      },
      remove: async (platform, key) => {
        notes.delete(JSON.stringify([platform, key]));
      },
      before: async () => [],
      prune: async () => 0,
    },
    forgetGuild: async (guild) => {
      for (const map of [kept, answers])
        for (const one of map.keys()) if (JSON.parse(one)[0] === guild) map.delete(one);
    },
    together: (work) => work(facts),
  };
  return facts;
}
