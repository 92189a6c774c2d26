import type { KeptDefaults } from '../../src/chat/defaults.ts';
import type { Answer, DefaultChanges, Facts } from '../../src/chat/facts.ts';

/** Facts kept in this process only, for tests that are not about how facts are kept. */
export function memoryFacts(): Facts {
  const kept = new Map<string, KeptDefaults>();
  const answers = new Map<string, Answer>();
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
    answered: {
      find: async (guild, event) => answers.get(key(guild, event)),
      keep: async (guild, event, answer) => {
        if (answers.has(key(guild, event))) return false;
        answers.set(key(guild, event), answer);
        return true;
      },
    },
    together: (work) => work(facts),
  };
  return facts;
}
