import { AsyncLocalStorage } from 'node:async_hooks';
import type { Kysely } from 'kysely';
import { type Facts, FactsTrouble } from '../chat/facts.ts';
import { answersIn } from './answered.ts';
import { defaultsIn } from './defaults.ts';
import { forgetGuildIn } from './forget-guild.ts';
import type { Keeping } from './keeping.ts';
import { notesIn } from './notes.ts';
import { plansIn } from './plans.ts';
import type { Tables } from './tables.ts';
import { storeProblem } from './trouble.ts';

type Reach = <T>(act: () => Promise<T>) => Promise<T>;

/** The facts in one database. `file` is named in what is said when they are out of reach. */
export function factsIn(tables: Kysely<Tables>, file: string, keeping: Keeping): Facts {
  const reach: Reach = (act) => reaching(file, act);
  const works = new AsyncLocalStorage<{ open: boolean }>();

  /** Waiting for the work that one is part of would be waiting for ever: say so instead. */
  const fromOutside: Reach = (act) => {
    if (works.getStore()?.open) throw new Error('inside together, use the facts that are handed in');
    return reach(act);
  };

  async function together<T>(work: (facts: Facts) => Promise<T>): Promise<T> {
    const running = { open: true };
    const transaction = () => tables.transaction().execute((inside) => work(joined(inside, reach, keeping)));
    try {
      return await fromOutside(() => works.run(running, transaction));
    } finally {
      running.open = false;
    }
  }

  return {
    defaults: {
      ...reached(defaultsIn(tables, keeping), fromOutside),
      set: (guild, member, changes) => together((facts) => facts.defaults.set(guild, member, changes)),
    },
    answered: reached(answersIn(tables, keeping), fromOutside),
    plans: reached(plansIn(tables, keeping), fromOutside),
    notes: reached(notesIn(tables, keeping), fromOutside),
    forgetGuild: (guild) => together((facts) => facts.forgetGuild(guild)),
    together,
  };
}

/** The facts inside a transaction. */
function joined(inside: Kysely<Tables>, reach: Reach, keeping: Keeping): Facts {
  const facts: Facts = {
    defaults: reached(defaultsIn(inside, keeping), reach),
    answered: reached(answersIn(inside, keeping), reach),
    plans: reached(plansIn(inside, keeping), reach),
    notes: reached(notesIn(inside, keeping), reach),
    forgetGuild: (guild) => reach(() => forgetGuildIn(inside, guild)),
    together: (work) => work(facts),
  };
  return facts;
}

/** The same calls, each through `reach`. */
function reached<Calls extends object>(calls: Calls, reach: Reach): Calls {
  const each = Object.entries(calls).map(([name, call]) => [
    name,
    async (...given: unknown[]) => reach(() => call(...given)),
  ]);
  return Object.fromEntries(each) as Calls;
}

/** Turns the database's own errors into trouble that can be told; any other error passes as it is. */
async function reaching<T>(file: string, act: () => Promise<T>): Promise<T> {
  try {
    return await act();
  } catch (thrown) {
    const problem = storeProblem(thrown, file);
    throw problem ? new FactsTrouble(problem, thrown) : thrown;
  }
}
