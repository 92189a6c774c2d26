import { rmSync, statSync } from 'node:fs';
import Database from 'better-sqlite3';
import { ok, type Result, wrong } from '../measure/result.ts';
import { KNOWN_STEPS } from './steps.ts';
import { survey } from './survey.ts';
import { storeProblem } from './trouble.ts';

/** What was found in a database that is sound. */
export interface Sound {
  /** Steps it has taken, of those that this program knows. */
  readonly steps: number;
  readonly known: number;
  readonly rows: number;
  readonly bytes: number;
}

/** How long to wait for a process that has the whole file to itself, milliseconds. */
const PATIENCE = 5000;

/**
 * Writes the database as it is at this moment to a file that is not there yet, while others go on reading and
 * writing it. The copy is one whole file without a log beside it, and holds nothing that was deleted.
 */
export function copyDatabase(from: string, to: string): Result<void> {
  if (!statSync(from, { throwIfNoEntry: false })) return wrong('store-none', { path: from });
  try {
    const database = new Database(from, { readonly: true, fileMustExist: true, timeout: PATIENCE });
    try {
      const sound = examined(database, from);
      if (!sound.ok) return sound;
      database.prepare('VACUUM INTO ?').run(to);
      return ok(undefined);
    } finally {
      database.close();
    }
  } catch (thrown) {
    rmSync(to, { force: true });
    return troubleWith(thrown, from, to);
  }
}

/** Brings what is only in the log into the database. A damaged one may not let it: then its log stays. */
export function emptyLog(file: string): void {
  try {
    const database = new Database(file, { timeout: PATIENCE });
    try {
      database.pragma('wal_checkpoint(TRUNCATE)');
    } finally {
      database.close();
    }
  } catch (thrown) {
    if (!storeProblem(thrown, file)) throw thrown;
  }
}

/** A full disk is the copy's trouble; any other is the database's that was to be copied. */
function troubleWith(thrown: unknown, from: string, to: string): Result<never> {
  const problem = storeProblem(thrown, from);
  if (!problem) throw thrown;
  const path = problem.code === 'store-full' ? to : from;
  return { ok: false, problem: { ...problem, path } };
}

/** Whether the whole database is sound and one that this program can use. Reads all of it and changes nothing. */
export function soundness(file: string): Result<Sound> {
  const place = statSync(file, { throwIfNoEntry: false });
  if (!place) return wrong('store-none', { path: file });
  if (place.isDirectory()) return wrong('store-is-a-folder', { path: file });
  try {
    const database = new Database(file, { readonly: true, fileMustExist: true, timeout: PATIENCE });
    try {
      return examined(database, file);
    } finally {
      database.close();
    }
  } catch (thrown) {
    return troubleWith(thrown, file, file);
  }
}

function examined(database: Database.Database, file: string): Result<Sound> {
  // First: what a damaged page says of the steps is nothing to go by.
  const found = database.pragma('integrity_check(1)', { simple: true });
  if (found !== 'ok') return wrong('store-damaged', { path: file });
  const steps = survey(database, file);
  if (!steps.ok) return steps;
  if (steps.value === 0) return wrong('store-empty', { path: file });
  const loose = database.pragma('foreign_key_check') as unknown[];
  if (loose.length > 0) return wrong('store-damaged', { path: file });
  const bytes = Number(
    database.prepare('SELECT page_count * page_size FROM pragma_page_count, pragma_page_size').pluck().get(),
  );
  return ok({ steps: steps.value, known: KNOWN_STEPS, rows: rowsIn(database), bytes });
}

function rowsIn(database: Database.Database): number {
  const names = database
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
    .pluck()
    .all() as string[];
  return names
    .map((name) =>
      Number(
        database
          .prepare(`SELECT count(*) FROM "${name.replaceAll('"', '""')}"`)
          .pluck()
          .get(),
      ),
    )
    .reduce((sum, rows) => sum + rows, 0);
}
