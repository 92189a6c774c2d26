import { CompiledQuery, type Kysely } from 'kysely';
import type { Keeping } from './keeping.ts';
import type { Tables } from './tables.ts';

/** Answers are kept so long, days: an event that is delivered again comes within hours, at worst days. */
export const ANSWERS_KEPT_DAYS = 30;

const DAY = 24 * 60 * 60 * 1000;

/** How long to wait for a reader before the file is swept, milliseconds: all who ask are waiting meanwhile. */
const SWEEP_PATIENCE = 200;

/** What is done beside the work, after it is safely kept and never in its way. */
export interface Upkeep {
  /** After a member was forgotten: what was hers must go from the file too. Called within the work that forgets. */
  sweepNext(tables: Kysely<Tables>): Promise<void>;
  /** Does what is due. What fails is told to the operator and tried again after the next work. */
  afterWork(tables: Kysely<Tables>): Promise<void>;
}

/** That a sweep is due is kept in the file's own number for the program to use, so that a crash does not lose it. */
const DUE = CompiledQuery.raw('PRAGMA user_version = 1');
const DONE = CompiledQuery.raw('PRAGMA user_version = 0');

export function upkeepOf(file: string, { now, report }: Keeping, due = false): Upkeep {
  let sweepDue = due;
  let prunedAt = 0;

  /**
   * Deleted rows are overwritten where they stood, but copies of them may be left where a page was once split:
   * the file is written anew, and the write-ahead log emptied into it.
   */
  async function sweep(tables: Kysely<Tables>): Promise<void> {
    await tables.executeQuery(CompiledQuery.raw('VACUUM'));
    await tables.executeQuery(DONE);
    if (await patiently(tables, SWEEP_PATIENCE, emptyTheLog)) sweepDue = false;
    else {
      await tables.executeQuery(DUE);
      throw new Error('somebody is still reading');
    }
  }

  async function prune(tables: Kysely<Tables>): Promise<void> {
    const at = now().getTime();
    await tables
      .deleteFrom('answered')
      .where('answered_at', '<', new Date(at - ANSWERS_KEPT_DAYS * DAY).toISOString())
      .execute();
    prunedAt = at;
  }

  async function attempt(work: () => Promise<void>, code: string): Promise<void> {
    try {
      await work();
    } catch (thrown) {
      report({ code, path: file, why: thrown instanceof Error ? thrown.message : String(thrown) });
    }
  }

  return {
    async sweepNext(tables) {
      sweepDue = true;
      await tables.executeQuery(DUE);
    },
    async afterWork(tables) {
      if (sweepDue) await attempt(() => sweep(tables), 'store-trace-left');
      if (now().getTime() - prunedAt >= DAY) await attempt(() => prune(tables), 'store-not-pruned');
    },
  };
}

/** Whether all that was in the log is in the file and the log is empty. */
async function emptyTheLog(tables: Kysely<Tables>): Promise<boolean> {
  const log = await tables.executeQuery<{ busy: number }>(
    CompiledQuery.raw('PRAGMA wal_checkpoint(TRUNCATE)'),
  );
  return log.rows[0]?.busy === 0;
}

/** Does the work with another patience than the usual one. */
async function patiently<T>(
  tables: Kysely<Tables>,
  milliseconds: number,
  work: (tables: Kysely<Tables>) => Promise<T>,
): Promise<T> {
  const patience = (to: string) =>
    tables.executeQuery<{ timeout: number }>(CompiledQuery.raw(`PRAGMA busy_timeout${to}`));
  const usual = (await patience('')).rows[0]?.timeout ?? 0;
  await patience(` = ${milliseconds}`);
  try {
    return await work(tables);
  } finally {
    await patience(` = ${usual}`);
  }
}
