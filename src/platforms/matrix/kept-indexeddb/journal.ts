import { chmodSync, closeSync, openSync } from 'node:fs';
import { deserialize, serialize } from 'node:v8';
import Database from 'better-sqlite3';
import type { Seal } from './seal.ts';

export type Key = IDBValidKey;

/** One change that a finished transaction made. */
export type Change =
  | { readonly does: 'put'; readonly store: string; readonly key: Key; readonly value: Buffer }
  | { readonly does: 'delete'; readonly store: string; readonly key: Key }
  | { readonly does: 'clear'; readonly store: string };

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

/** A database as it was left: its version, its stores, and what is in them. */
export interface KeptDatabase {
  readonly name: string;
  readonly version: number;
  readonly stores: readonly StoreShape[];
}

/** What is on the disk. Every call is done, and safe on the disk, when it returns. */
export interface Journal {
  databases(): KeptDatabase[];
  records(database: string, store: string): Generator<{ key: Key; value: unknown }>;
  /** Writes what one transaction did, all or nothing; with `shape`, how the database now looks. */
  write(database: string, changes: readonly Change[], shape?: KeptDatabase): void;
  /** The highest number an automatic key has had: it must never be given again. */
  highest(database: string, store: string): number;
  remove(database: string): void;
  close(): void;
}

const TABLES = `
CREATE TABLE IF NOT EXISTS shapes (database TEXT PRIMARY KEY, shape TEXT NOT NULL) STRICT;
CREATE TABLE IF NOT EXISTS highest (database TEXT, store TEXT, number REAL NOT NULL, PRIMARY KEY (database, store)) STRICT;
CREATE TABLE IF NOT EXISTS records (
  database TEXT, store TEXT, name BLOB, locked BLOB NOT NULL, PRIMARY KEY (database, store, name)
) STRICT, WITHOUT ROWID;`;

/** Opens the journal in a file that only its owner may read. */
export function openJournal(file: string, seal: Seal): Journal {
  // Made with its rights before anything is in it; the side files of the database take them over.
  closeSync(openSync(file, 'a', 0o600));
  chmodSync(file, 0o600);
  const sql = new Database(file);
  sql.pragma('journal_mode = WAL');
  sql.pragma('synchronous = FULL');
  sql.pragma('secure_delete = ON');
  sql.exec(TABLES);
  const put = sql.prepare('INSERT OR REPLACE INTO records VALUES (?, ?, ?, ?)');
  const erase = sql.prepare('DELETE FROM records WHERE database = ? AND store = ? AND name = ?');
  const clear = sql.prepare('DELETE FROM records WHERE database = ? AND store = ?');
  const raise = sql.prepare(
    'INSERT INTO highest VALUES (?, ?, ?) ON CONFLICT DO UPDATE SET number = max(number, excluded.number)',
  );
  const reshape = sql.prepare('INSERT OR REPLACE INTO shapes VALUES (?, ?)');
  const read = sql.prepare('SELECT locked FROM records WHERE database = ? AND store = ?');

  const nameOf = (database: string, store: string, key: Key) => seal.nameOf(`${database}\0${store}`, serialize(key));

  function apply(database: string, change: Change): void {
    const { store } = change;
    if (change.does === 'clear') return void clear.run(database, store);
    const name = nameOf(database, store, change.key);
    if (change.does === 'delete') return void erase.run(database, store, name);
    const locked = seal.lock(`${database}\0${store}`, serialize([change.key, change.value]));
    put.run(database, store, name, locked);
    if (typeof change.key === 'number') raise.run(database, store, change.key);
  }

  /** Stores that are gone take what was in them along. */
  function keepShape(shape: KeptDatabase): void {
    const there = new Set(shape.stores.map(({ name }) => name));
    const known = sql.prepare('SELECT DISTINCT store FROM records WHERE database = ?').pluck().all(shape.name);
    for (const store of known as string[]) if (!there.has(store)) clear.run(shape.name, store);
    reshape.run(shape.name, JSON.stringify(shape));
  }

  const write = sql.transaction((database: string, changes: readonly Change[], shape?: KeptDatabase) => {
    if (shape) keepShape(shape);
    for (const change of changes) apply(database, change);
  });

  const remove = sql.transaction((database: string) => {
    for (const table of ['records', 'highest', 'shapes'])
      sql.prepare(`DELETE FROM ${table} WHERE database = ?`).run(database);
  });

  return {
    databases: () =>
      (sql.prepare('SELECT shape FROM shapes ORDER BY database').pluck().all() as string[]).map(
        (shape) => JSON.parse(shape) as KeptDatabase,
      ),
    *records(database, store) {
      for (const { locked } of read.all(database, store) as { locked: Buffer }[]) {
        const [key, value] = deserialize(seal.unlock(`${database}\0${store}`, locked)) as [Key, Buffer];
        yield { key, value: deserialize(value) };
      }
    },
    write,
    highest: (database, store) =>
      Number(sql.prepare('SELECT number FROM highest WHERE database = ? AND store = ?').pluck().get(database, store) ?? 0),
    remove,
    close: () => void sql.close(),
  };
}
