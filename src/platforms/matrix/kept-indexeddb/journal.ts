import { chmodSync, closeSync, mkdirSync, openSync } from 'node:fs';
import { dirname } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import Database from 'better-sqlite3';
import { written } from './key.ts';
import type { Key } from './library.ts';
import type { Seal } from './seal.ts';

/** One change that a finished transaction made. */
export type Change =
  | { readonly does: 'put'; readonly store: string; readonly key: Key; readonly value: Buffer }
  | { readonly does: 'delete'; readonly store: string; readonly key: Key }
  | { readonly does: 'clear'; readonly store: string }
  /** The store itself is gone, with the number its automatic keys had come to. */
  | { readonly does: 'drop'; readonly store: string };

export interface IndexShape {
  readonly name: string;
  readonly keyPath: string | string[];
  readonly unique: boolean;
  readonly multiEntry: boolean;
}

export interface StoreShape {
  readonly name: string;
  readonly keyPath: string | string[] | null;
  readonly autoIncrement: boolean;
  readonly indexes: readonly IndexShape[];
}

/** A database as it was left: its version, and its stores. */
export interface KeptDatabase {
  readonly name: string;
  readonly version: number;
  readonly stores: readonly StoreShape[];
}

/** What is on the disk. Every call is done, and safe on the disk, when it returns. */
export interface Journal {
  databases(): KeptDatabase[];
  records(database: string, store: string): Generator<{ key: Key; value: unknown }>;
  /**
   * Writes what one transaction did, all or nothing; with `shape`, how the database now looks. False where it
   * could not be written: from then on nothing is, since the disk and the memory have parted.
   */
  write(database: string, changes: readonly Change[], shape?: KeptDatabase): boolean;
  /** The highest number an automatic key has had: it must never be given again. */
  highest(database: string, store: string): number;
  remove(database: string): boolean;
  readonly parted: boolean;
  close(): void;
}

/** Where a database's shape is kept, as far as the lock is concerned. */
const shapeOf = (database: string): string => `${database}\0\0shape`;

const TABLES = `
CREATE TABLE IF NOT EXISTS mark (only INTEGER PRIMARY KEY CHECK (only = 1), locked BLOB NOT NULL) STRICT;
CREATE TABLE IF NOT EXISTS shapes (database TEXT PRIMARY KEY, shape BLOB NOT NULL) STRICT;
CREATE TABLE IF NOT EXISTS highest (
  database TEXT, store TEXT, number REAL NOT NULL, PRIMARY KEY (database, store)
) STRICT;
CREATE TABLE IF NOT EXISTS records (
  database TEXT, store TEXT, name BLOB, locked BLOB NOT NULL, PRIMARY KEY (database, store, name)
) STRICT, WITHOUT ROWID;`;

/** The file was locked with another key. */
export class WrongKey extends Error {
  override readonly name = 'WrongKey';
}

/** Locked in every journal, so that another key is known at once, even where nothing is kept yet. */
const MARK = Buffer.from('honeycount');

/**
 * Opens the journal in a file that only its owner may read. Throws where the file is damaged, or was locked
 * with another key. `onParted` is told once, when a change could not be written.
 */
export function openJournal(file: string, seal: Seal, onParted: (error: unknown) => void): Journal {
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
  // Made with its rights before anything is in it; the side files of the database take them over.
  closeSync(openSync(file, 'a', 0o600));
  chmodSync(file, 0o600);
  const sql = new Database(file);
  try {
    return journalIn(sql, seal, onParted);
  } catch (error) {
    sql.close();
    throw error;
  }
}

function journalIn(sql: Database.Database, seal: Seal, onParted: (error: unknown) => void): Journal {
  sql.pragma('journal_mode = WAL');
  sql.pragma('synchronous = FULL');
  sql.pragma('secure_delete = ON');
  sql.exec(TABLES);
  const mark = sql.prepare('SELECT locked FROM mark').pluck().get() as Buffer | undefined;
  if (mark) unlockMark(seal, mark);
  else sql.prepare('INSERT INTO mark VALUES (1, ?)').run(seal.lock('mark', MARK));

  const put = sql.prepare('INSERT OR REPLACE INTO records VALUES (?, ?, ?, ?)');
  const erase = sql.prepare('DELETE FROM records WHERE database = ? AND store = ? AND name = ?');
  const clear = sql.prepare('DELETE FROM records WHERE database = ? AND store = ?');
  const forgetHighest = sql.prepare('DELETE FROM highest WHERE database = ? AND store = ?');
  const raise = sql.prepare(
    'INSERT INTO highest VALUES (?, ?, ?) ON CONFLICT DO UPDATE SET number = max(number, excluded.number)',
  );
  const reshape = sql.prepare('INSERT OR REPLACE INTO shapes VALUES (?, ?)');
  const read = sql.prepare('SELECT name, locked FROM records WHERE database = ? AND store = ?');
  const number = sql.prepare('SELECT number FROM highest WHERE database = ? AND store = ?').pluck();

  const nameOf = (where: string, key: Key) => seal.nameOf(where, Buffer.from(written(key)));

  function apply(database: string, change: Change): void {
    const { store } = change;
    const where = `${database}\0${store}`;
    if (change.does === 'drop') forgetHighest.run(database, store);
    if (change.does === 'drop' || change.does === 'clear') return void clear.run(database, store);
    const name = nameOf(where, change.key);
    if (change.does === 'delete') return void erase.run(database, store, name);
    // The name is part of what is locked: a record put in another's place is noticed.
    put.run(database, store, name, seal.lock(placeOf(where, name), serialize([change.key, change.value])));
    if (typeof change.key === 'number') raise.run(database, store, change.key);
  }

  const writeAll = sql.transaction(
    (database: string, changes: readonly Change[], shape: KeptDatabase | undefined) => {
      for (const change of changes) apply(database, change);
      if (shape) reshape.run(shape.name, seal.lock(shapeOf(shape.name), Buffer.from(JSON.stringify(shape))));
    },
  );

  const removeAll = sql.transaction((database: string) => {
    for (const table of ['records', 'highest', 'shapes'])
      sql.prepare(`DELETE FROM ${table} WHERE database = ?`).run(database);
  });

  let parted = false;
  function done(act: () => void): boolean {
    // What ends after the journal was closed is not on the disk: nobody is told that it is done.
    if (parted || !sql.open) return false;
    try {
      act();
      return true;
    } catch (error) {
      parted = true;
      onParted(error);
      return false;
    }
  }

  return {
    databases: () =>
      (
        sql.prepare('SELECT database, shape FROM shapes ORDER BY database').all() as {
          database: string;
          shape: Buffer;
        }[]
      ).map(
        ({ database, shape }) =>
          JSON.parse(seal.unlock(shapeOf(database), shape).toString('utf8')) as KeptDatabase,
      ),
    *records(database, store) {
      const where = `${database}\0${store}`;
      for (const { name, locked } of read.all(database, store) as { name: Buffer; locked: Buffer }[]) {
        const [key, value] = deserialize(seal.unlock(placeOf(where, name), locked)) as [Key, Buffer];
        yield { key, value: deserialize(value) };
      }
    },
    write: (database, changes, shape) => done(() => writeAll(database, changes, shape)),
    highest: (database, store) => Number(number.get(database, store) ?? 0),
    remove: (database) => done(() => removeAll(database)),
    get parted() {
      return parted;
    },
    close: () => void sql.close(),
  };
}

function unlockMark(seal: Seal, mark: Buffer): void {
  try {
    seal.unlock('mark', mark);
  } catch (error) {
    throw new WrongKey('locked with another key', { cause: error });
  }
}

const placeOf = (where: string, name: Buffer): string => `${where}\0${name.toString('base64')}`;
