import { AsyncLocalStorage } from 'node:async_hooks';
import type { Kysely } from 'kysely';
import { type Facts, FactsTrouble } from '../chat/facts.ts';
import { answersIn } from './answered.ts';
import { challengesIn } from './challenges.ts';
import { defaultsIn } from './defaults.ts';
import { forgetGuildIn } from './forget-guild.ts';
import type { Keeping } from './keeping.ts';
import { keptOfIn } from './kept-of.ts';
import { monthsIn } from './months.ts';
import { notesIn } from './notes.ts';
import { plansIn } from './plans.ts';
import { remindersIn } from './reminders.ts';
import { swapsIn } from './swaps.ts';
import type { Tables } from './tables.ts';
import { storeProblem } from './trouble.ts';
import { type Upkeep, upkeepOf } from './upkeep.ts';

type Reach = <T>(act: () => Promise<T>) => Promise<T>;

/** The facts in one database. `file` is named in what is said when they are out of reach. */
export function factsIn(tables: Kysely<Tables>, file: string, keeping: Keeping, sweepDue = false): Facts {
  const reach: Reach = (act) => reaching(file, act);
  const works = new AsyncLocalStorage<{ open: boolean }>();
  const upkeep = upkeepOf(file, keeping, sweepDue);

  /** Waiting for the work that one is part of would be waiting for ever: say so instead. */
  const fromOutside: Reach = (act) => {
    if (works.getStore()?.open) throw new Error('inside together, use the facts that are handed in');
    return reach(act);
  };

  async function together<T>(work: (facts: Facts) => Promise<T>): Promise<T> {
    const running = { open: true };
    const inTransaction = (held: Kysely<Tables>) =>
      held.transaction().execute((inside) => work(new Joined(inside, keeping, upkeep) as unknown as Facts));
    // The one connection is held to the end of the upkeep, so that closing waits for it.
    const workThenUpkeep = () =>
      tables.connection().execute((held) => inTransaction(held).finally(() => upkeep.afterWork(held)));
    try {
      return await fromOutside(() => works.run(running, workThenUpkeep));
    } finally {
      running.open = false;
    }
  }

  const slices = Object.fromEntries(
    Object.entries(MAKERS).map(([name, make]) => [
      name,
      reached(make(tables, keeping, upkeep) as object, fromOutside),
    ]),
  ) as unknown as Slices;
  /** A group of facts in which these calls, of several statements each, are works of their own. */
  const whole = <Name extends keyof Slices>(
    name: Name,
    ...calls: (keyof Slices[Name] & string)[]
  ): Slices[Name] => {
    type Calls = Record<string, (...given: unknown[]) => Promise<unknown>>;
    const works = calls.map((call) => [
      call,
      (...given: unknown[]) => together(async (facts) => (facts[name] as unknown as Calls)[call]?.(...given)),
    ]);
    return { ...slices[name], ...Object.fromEntries(works) };
  };
  return {
    ...slices,
    defaults: whole('defaults', 'set'),
    keptOf: whole('keptOf', 'forget'),
    swaps: whole('swaps', 'add', 'take', 'addEntry', 'removeEntries', 'replan', 'mark'),
    challenges: whole('challenges', 'add', 'write'),
    months: whole('months', 'add', 'finish'),
    forgetGuild: (guild) => together((facts) => facts.forgetGuild(guild)),
    together,
  };
}

type Slices = Omit<Facts, 'together' | 'forgetGuild'>;

type Maker<Slice> = (tables: Kysely<Tables>, keeping: Keeping, upkeep: Upkeep) => Slice;

/** How each group of facts is made over one connection. */
const MAKERS: { readonly [Name in keyof Slices]: Maker<Slices[Name]> } = {
  defaults: defaultsIn,
  answered: answersIn,
  notes: notesIn,
  keptOf: (tables, _, upkeep) => keptOfIn(tables, upkeep),
  swaps: swapsIn,
  plans: plansIn,
  challenges: challengesIn,
  months: monthsIn,
  reminders: remindersIn,
};

/** Forgets all that is kept of a guild, in the file too. */
const forgettingIn =
  (tables: Kysely<Tables>, upkeep: Upkeep): Facts['forgetGuild'] =>
  async (guild) => {
    await upkeep.sweepNext(tables);
    return forgetGuildIn(tables, guild);
  };

/**
 * The facts inside a transaction, which a `together` joins. Each group is made when it is first asked for: most
 * works need two or three. What goes wrong in a call passes through the work as it is, and is turned into
 * trouble that can be told where the work as a whole is reached.
 */
class Joined {
  readonly #tables: Kysely<Tables>;
  readonly #keeping: Keeping;
  readonly #upkeep: Upkeep;
  readonly #made: Partial<Record<keyof Slices, unknown>> = {};

  constructor(tables: Kysely<Tables>, keeping: Keeping, upkeep: Upkeep) {
    this.#tables = tables;
    this.#keeping = keeping;
    this.#upkeep = upkeep;
  }

  slice<Name extends keyof Slices>(name: Name): Slices[Name] {
    this.#made[name] ??= MAKERS[name](this.#tables, this.#keeping, this.#upkeep);
    return this.#made[name] as Slices[Name];
  }

  forgetGuild(guild: string) {
    return forgettingIn(this.#tables, this.#upkeep)(guild);
  }

  together<T>(work: (facts: Facts) => Promise<T>): Promise<T> {
    return work(this as unknown as Facts);
  }

  static {
    for (const name of Object.keys(MAKERS) as (keyof Slices)[])
      Object.defineProperty(Joined.prototype, name, {
        get(this: Joined) {
          return this.slice(name);
        },
      });
  }
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
