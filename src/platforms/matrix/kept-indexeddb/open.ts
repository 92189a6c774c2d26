import { IDBFactory } from 'fake-indexeddb';
import { collect, keepIn, wrapLibrary } from './capture.ts';
import { type Journal, type KeptDatabase, openJournal, type StoreShape } from './journal.ts';
import type { Seal } from './seal.ts';

/** An IndexedDB whose databases are on the disk when whoever writes to them is told so. */
export interface KeptIndexedDb {
  readonly factory: IDBFactory;
  close(): void;
}

/** Opens what was kept in a file and fills the databases with it; from then on every change is written there. */
export async function openKept(file: string, seal: Seal): Promise<KeptIndexedDb> {
  wrapLibrary();
  const journal = openJournal(file, seal);
  const factory = new IDBFactory();
  try {
    for (const kept of journal.databases()) await refill(factory, journal, kept);
  } catch (error) {
    journal.close();
    throw error;
  }
  keepFactory(factory, journal);
  return { factory, close: () => journal.close() };
}

/** Every database that is opened from here on is kept, its first transaction included. */
function keepFactory(factory: IDBFactory, journal: Journal): void {
  const open = factory.open.bind(factory);
  const remove = factory.deleteDatabase.bind(factory);
  factory.open = (...given) => {
    const request = open(...given);
    // Attached before the caller can attach anything, so that it runs first.
    request.addEventListener('upgradeneeded', () => {
      keepIn(journal, request.result);
      if (request.transaction) collect(request.transaction, true);
    });
    request.addEventListener('success', () => keepIn(journal, request.result));
    return request;
  };
  factory.deleteDatabase = (name) => {
    const request = remove(name);
    request.addEventListener('success', () => journal.remove(name));
    return request;
  };
}

function refill(factory: IDBFactory, journal: Journal, kept: KeptDatabase): Promise<void> {
  const request = factory.open(kept.name, kept.version);
  return new Promise((done, failed) => {
    request.addEventListener('error', () => failed(request.error));
    request.addEventListener('upgradeneeded', () => {
      try {
        for (const shape of kept.stores) refillStore(request.result, journal, kept.name, shape);
      } catch (error) {
        failed(error);
      }
    });
    request.addEventListener('success', () => {
      request.result.close();
      done();
    });
  });
}

function refillStore(database: IDBDatabase, journal: Journal, name: string, shape: StoreShape): void {
  const { keyPath, autoIncrement, indexes } = shape;
  const store = database.createObjectStore(shape.name, { keyPath, autoIncrement });
  for (const { name: index, keyPath: path, unique, multiEntry } of indexes)
    store.createIndex(index, path, { unique, multiEntry });
  for (const { key, value } of journal.records(name, shape.name))
    keyPath === null ? store.put(value, key) : store.put(value);
  if (autoIncrement) goOnFrom(store, journal.highest(name, shape.name));
}

/** Lets the automatic keys go on after the highest that was ever given, though its record may be gone. */
function goOnFrom(store: IDBObjectStore, highest: number): void {
  if (highest < 1) return;
  const path = typeof store.keyPath === 'string' ? store.keyPath : null;
  const known = store.getKey(highest);
  known.addEventListener('success', () => {
    if (known.result !== undefined) return;
    path === null ? store.put(0, highest) : store.put({ [path]: highest });
    store.delete(highest);
  });
}
