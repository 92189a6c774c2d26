import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  type BothDefaults,
  type DefaultChanges,
  type Facts,
  FactsTrouble,
  type KeptDefaults,
} from '../chat/facts.ts';
import { readSettings, type Settings, storeOf } from '../config.ts';
import { ok, type Problem, type Result } from '../measure/result.ts';
import type { Store } from '../store/open.ts';
import { peekDefaults } from '../store/peek.ts';

/** The folder of the program: settings and data lie beside its package.json unless told otherwise. */
export const ROOT = fileURLToPath(new URL('../..', import.meta.url));

export interface Keeping {
  readonly settings: Settings;
  /** The database's file. */
  readonly file: string;
  /** The folder that it is in; null where nothing is kept. */
  readonly folder: string | null;
  readonly facts: Facts;
  close(): Promise<void>;
}

export interface Where {
  readonly data?: string | undefined;
  readonly config?: string | undefined;
  /** Makes and opens the database now, as the one bot that runs on it; not when something is first kept. */
  readonly open?: boolean;
}

/** The settings in force and the facts that are kept by them. */
export async function keepingAt({ data, config, open = false }: Where): Promise<Result<Keeping>> {
  const settings = await readSettings({ file: config, env: process.env, root: ROOT });
  if (!settings.ok) return settings;
  const file = data ?? storeOf(settings.value);
  const lazy = new OpenedWhenNeeded(file, open ? 'bot' : 'beside');
  if (open) {
    const store = await lazy.open();
    if (!store.ok) return store;
  }
  const folder = file === ':memory:' ? null : dirname(resolve(file));
  return ok({ settings: settings.value, file, folder, facts: lazy, close: () => lazy.close() });
}

/**
 * Facts that cost next to nothing until something is kept: what one ask reads is looked up in the file as it
 * is, and the store is opened by the first that writes (or needs an event's answer).
 */
class OpenedWhenNeeded implements Facts {
  readonly #file: string;
  readonly #use: 'bot' | 'beside';
  #opening: Promise<Result<Store>> | undefined;

  constructor(file: string, use: 'bot' | 'beside') {
    this.#file = file;
    this.#use = use;
  }

  async open(): Promise<Result<Store>> {
    this.#opening ??= import('../store/open.ts').then(({ openStore }) =>
      openStore(this.#file, { report: tellOperator }, this.#use),
    );
    const opened = await this.#opening;
    // A store that could not be opened now may be had later: a disk gets room, a folder its rights.
    if (!opened.ok) this.#opening = undefined;
    return opened;
  }

  async close(): Promise<void> {
    const opened = await this.#opening;
    this.#opening = undefined;
    if (opened?.ok) await opened.value.close();
  }

  async together<T>(work: (facts: Facts) => Promise<T>): Promise<T> {
    return (await this.#opened()).together(work);
  }

  readonly defaults = {
    read: async (guild: string, member: string): Promise<KeptDefaults> => {
      if (this.#opening) return (await this.#opened()).defaults.read(guild, member);
      return (await this.#peeked(guild, member)).own;
    },
    both: async (guild: string, member: string): Promise<BothDefaults> => {
      if (this.#opening) return (await this.#opened()).defaults.both(guild, member);
      return this.#peeked(guild, member);
    },
    set: async (guild: string, member: string, changes: DefaultChanges) =>
      (await this.#opened()).defaults.set(guild, member, changes),
    clear: async (guild: string, member: string) => (await this.#opened()).defaults.clear(guild, member),
  };

  async forgetGuild(guild: string): Promise<void> {
    await (await this.#opened()).forgetGuild(guild);
  }

  readonly answered = this.#part('answered', {});
  readonly notes = this.#part('notes', {});
  readonly keptOf = this.#part('keptOf', {});
  readonly swaps = this.#part('swaps', {});
  readonly plans = this.#part('plans', {});

  /** As it stands in the file: nothing is opened for it. */
  async #peeked(guild: string, member: string): Promise<BothDefaults> {
    const { problems, ...both } = await peekDefaults(this.#file, guild, member);
    for (const problem of problems) tellOperator(problem);
    return both;
  }

  readonly challenges = this.#part('challenges', {
    timedLogs: async (guild, member, most) => {
      if (this.#opening) return (await this.#opened()).challenges.timedLogs(guild, member, most);
      const { peekTimedLogs } = await import('../store/peek-timed-logs.ts');
      return peekTimedLogs(this.#file, guild, member, most);
    },
  });

  readonly months = this.#part('months', {});

  readonly reminders = this.#part('reminders', {});

  /** A part of the facts: a call opens the store, unless it has a way of its own. */
  #part<Name extends Exclude<keyof Facts, 'together'>>(name: Name, own: Partial<Facts[Name]>): Facts[Name] {
    type Calls = Record<PropertyKey, (...given: unknown[]) => unknown>;
    const whenOpened =
      (call: PropertyKey) =>
      async (...given: unknown[]) =>
        ((await this.#opened())[name] as unknown as Calls)[call]?.(...given);
    return new Proxy(own as Facts[Name], {
      get: (calls, call) => Reflect.get(calls, call) ?? whenOpened(call),
    });
  }

  async #opened(): Promise<Store> {
    const opened = await this.open();
    if (opened.ok) return opened.value;
    throw new FactsTrouble(opened.problem);
  }
}

/** What the operator should know but no member needs to. */
function tellOperator(problem: Problem): void {
  process.stderr.write(`${JSON.stringify({ level: 'warn', ...problem })}\n`);
}
