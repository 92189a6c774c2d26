import { CompiledQuery, type Kysely } from 'kysely';
import type { Keeping } from './keeping.ts';
import type { Tables } from './tables.ts';

/** Answers are kept so long, days: an event that is delivered again comes within hours, at worst days. */
export const ANSWERS_KEPT_DAYS = 30;

const DAY = 24 * 60 * 60 * 1000;

/** What is done beside the work, after it is safely kept and never in its way. */
export interface Upkeep {
  /** After a member was forgotten: what was hers must go from the file too. */
  sweepNext(): void;
  /** Does what is due. What fails is told to the operator and tried again after the next work. */
  afterWork(tables: Kysely<Tables>): Promise<void>;
}

export function upkeepOf(file: string, { now, report }: Keeping): Upkeep {
  let sweepDue = false;
  let prunedAt = 0;

  /**
   * Deleted rows are overwritten where they stood, but copies of them may be left where a page was once split:
   * the file is written anew, and the write-ahead log emptied into it.
   */
  async function sweep(tables: Kysely<Tables>): Promise<void> {
    await tables.executeQuery(CompiledQuery.raw('VACUUM'));
    const { rows } = await tables.executeQuery<{ busy: number }>(
      CompiledQuery.raw('PRAGMA wal_checkpoint(TRUNCATE)'),
    );
    if (rows[0]?.busy) throw new Error('somebody is still reading');
    sweepDue = false;
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
    sweepNext() {
      sweepDue = true;
    },
    async afterWork(tables) {
      if (sweepDue) await attempt(() => sweep(tables), 'store-trace-left');
      if (now().getTime() - prunedAt >= DAY) await attempt(() => prune(tables), 'store-not-pruned');
    },
  };
}
