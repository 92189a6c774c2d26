import { ok, type Result, wrong } from '../measure/result.ts';
import { newerThanKnown } from './steps.ts';

/** The two calls that both SQLite libraries have alike. */
export interface Readable {
  prepare(sql: string): { get(...parameters: string[]): unknown };
}

/**
 * How many steps a database has taken, 0 for an empty one. Refuses a database of another program, so that
 * nothing is ever added to it, and one that a newer version of this program has changed.
 */
export function survey(database: Readable, file: string): Result<number> {
  const found = database
    .prepare(
      "SELECT count(*) AS tables, total(name = 'steps') AS ours FROM sqlite_schema WHERE type = 'table'",
    )
    .get() as { tables: number; ours: number };
  if (found.tables === 0) return ok(0);
  if (found.ours === 0) return wrong('store-foreign', { path: file });
  const { has } = database.prepare('SELECT coalesce(max(step), 0) AS has FROM steps').get() as {
    has: number;
  };
  const newer = newerThanKnown(has, file);
  return newer ? { ok: false, problem: newer } : ok(has);
}
