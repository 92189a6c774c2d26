import Database from 'better-sqlite3';
import type { Facts } from '../chat/facts.ts';
import { ok, type Result, wrong } from '../measure/result.ts';
import { holdOpen } from './held-open.ts';
import { takeIntoUse, type Use } from './in-use.ts';
import type { Keeping } from './keeping.ts';
import { makePlace } from './place.ts';
import { KNOWN_STEPS, takeSteps } from './steps.ts';
import { survey } from './survey.ts';
import { storeProblem } from './trouble.ts';

/** The facts kept in one database, until it is closed. */
export interface Store extends Facts {
  readonly file: string;
  /** Waits for the work that is going on, then closes the database. */
  close(): Promise<void>;
}

/** How long to wait for another process that is writing, milliseconds. */
const PATIENCE = 5000;

const usual: Keeping = { now: () => new Date(), report: () => {} };

/**
 * Opens the database in a file (or ':memory:', which keeps nothing), making it on first use and taking the
 * steps that it is behind. A database that cannot be used is a problem whose code begins with `store-`. The one
 * bot that runs on it says so; all others are beside it.
 */
export async function openStore(
  file: string,
  keeping: Partial<Keeping> = {},
  use: Exclude<Use, 'alone'> = 'beside',
): Promise<Result<Store>> {
  if (/^\w+:\/\//.test(file)) return wrong('store-not-served', { kind: file.slice(0, file.indexOf(':')) });
  try {
    return await (file === ':memory:' ? openAt(file, keeping) : openInPlace(file, keeping, use));
  } catch (thrown) {
    const problem = storeProblem(thrown, file);
    if (!problem) throw thrown;
    return { ok: false, problem };
  }
}

async function openInPlace(file: string, keeping: Partial<Keeping>, use: Use): Promise<Result<Store>> {
  const place = makePlace(file);
  if (!place.ok) return place;
  const taken = takeIntoUse(file, use);
  if (!taken.ok) return taken;
  const letGo = both(holdOpen(file), taken.value);
  let store: Result<Store> | undefined;
  try {
    store = await openAt(file, keeping);
  } finally {
    if (!store?.ok) letGo();
  }
  if (!store.ok) return store;
  const { close } = store.value;
  return ok({ ...store.value, close: () => close().finally(letGo) });
}

const both = (one: () => void, other: () => void) => () => {
  one();
  other();
};

async function openAt(file: string, keeping: Partial<Keeping>): Promise<Result<Store>> {
  const database = new Database(file, { timeout: PATIENCE });
  let store: Result<Store> | undefined;
  try {
    store = await storeIn(database, file, { ...usual, ...keeping });
    return store;
  } finally {
    if (!store?.ok) database.close();
  }
}

async function storeIn(database: Database.Database, file: string, keeping: Keeping): Promise<Result<Store>> {
  const taken = survey(database, file);
  if (!taken.ok) return taken;
  settle(database);
  // The query language takes a tenth of a second to load: only now that it is sure to be used.
  const [{ tablesOf }, { factsIn }] = await Promise.all([import('./connection.ts'), import('./facts.ts')]);
  const tables = tablesOf(database);
  if (taken.value < KNOWN_STEPS) {
    await tables.transaction().execute((inside) => takeSteps(inside, keeping.now));
  }
  const close = () => tables.connection().execute(async () => void database.close());
  const sweepDue = database.pragma('user_version', { simple: true }) !== 0;
  return ok({ ...factsIn(tables, file, keeping, sweepDue), file, close });
}

/**
 * Readers beside one writer (WAL), each commit on the disk before it is told (FULL), and what is deleted
 * overwritten, so that a forgotten member is gone from the file too.
 */
export function settle(database: Database.Database): void {
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = FULL');
  database.pragma('foreign_keys = ON');
  database.pragma('secure_delete = ON');
}
