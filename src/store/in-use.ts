import { readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import Database from 'better-sqlite3';
import { ok, type Result, wrong } from '../measure/result.ts';
import { makeFile } from './place.ts';
import { codeOf } from './trouble.ts';

/** How a process uses the data: as the one bot that runs on it, beside a bot, or with nobody else there. */
export type Use = 'bot' | 'beside' | 'alone';

/** How long to wait for somebody who is only there for a moment, milliseconds. */
const PATIENCE = 5000;

/**
 * Takes the data into use, until what is returned is called. The lock is SQLite's own on a small file beside
 * the database: the system drops it when the process ends, however it ends, so a crash leaves nothing behind
 * that would have to be cleared away. One bot may write to that file and never does; whoever is beside it reads;
 * whoever must be alone shuts out both.
 */
export function takeIntoUse(file: string, use: Use, patience = PATIENCE): Result<() => void> {
  makeFile(lockOf(file));
  const lock = new Database(lockOf(file), { timeout: patience });
  let taken: Result<void> | undefined;
  try {
    makeLockable(lock);
    taken = TAKE[use](lock, file);
  } finally {
    if (!taken?.ok) lock.close();
  }
  if (!taken.ok) return taken;
  if (use === 'bot') leaveWord(file);
  return ok(() => {
    if (!lock.open) return;
    if (use === 'bot') rmSync(wordOf(file), { force: true });
    lock.close();
  });
}

const lockOf = (file: string): string => `${file}.lock`;
const wordOf = (file: string): string => `${file}.bot`;

/** An empty file gets its first page now: in one without, the bot's lock would be a write that is never done. */
function makeLockable(lock: Database.Database): void {
  if (statSync(lock.name).size === 0) lock.pragma('user_version = 1');
}

const TAKE: Readonly<Record<Use, (lock: Database.Database, file: string) => Result<void>>> = {
  bot: (lock, file) => {
    lock.pragma('busy_timeout = 0');
    if (tried(lock, 'BEGIN IMMEDIATE')) return ok(undefined);
    return tried(lock, READ) ? wrong('store-bot-runs', { path: file, ...botOf(file) }) : restoring(file);
  },
  beside: (lock, file) => (tried(lock, READ) ? ok(undefined) : restoring(file)),
  alone: (lock, file) => {
    if (botRunsOn(lock)) return wrong('store-bot-runs', { path: file, ...botOf(file) });
    return tried(lock, 'BEGIN EXCLUSIVE') ? ok(undefined) : wrong('store-in-use', { path: file });
  },
};

/** Reading is begun with the first row that is read. */
const READ = 'BEGIN; SELECT count(*) FROM sqlite_schema';

const restoring = (file: string) => wrong('store-restoring', { path: file });

function tried(lock: Database.Database, sql: string): boolean {
  try {
    lock.exec(sql);
    return true;
  } catch (thrown) {
    if (lock.inTransaction) lock.exec('ROLLBACK');
    if (codeOf(thrown).startsWith('SQLITE_BUSY')) return false;
    throw thrown;
  }
}

function botRunsOn(lock: Database.Database): boolean {
  const patience = lock.pragma('busy_timeout', { simple: true });
  lock.pragma('busy_timeout = 0');
  const free = tried(lock, 'BEGIN IMMEDIATE');
  if (free) lock.exec('ROLLBACK');
  lock.pragma(`busy_timeout = ${patience}`);
  return !free;
}

/** Which process the bot is and since when, as far as it left word. */
export interface Bot {
  readonly process?: number;
  readonly since?: string;
}

/** The bot that runs on the data just now, or undefined when none does. */
export function runningBot(file: string): Bot | undefined {
  if (!statSync(lockOf(file), { throwIfNoEntry: false })?.size) return undefined;
  const lock = new Database(lockOf(file), { timeout: PATIENCE });
  try {
    return botRunsOn(lock) ? botOf(file) : undefined;
  } finally {
    lock.close();
  }
}

/** Word of who runs is for the person who meets it; the lock alone decides. */
function leaveWord(file: string): void {
  try {
    writeFileSync(wordOf(file), `${process.pid} ${new Date().toISOString()}\n`, { mode: 0o600 });
  } catch {
    // On a full disk the bot runs without it.
  }
}

function botOf(file: string): Bot {
  try {
    const [pid = '', since = ''] = readFileSync(wordOf(file), 'utf8').trim().split(' ');
    return /^\d+$/.test(pid) && since ? { process: Number(pid), since } : {};
  } catch {
    return {};
  }
}
