import { collectUpgrade, keepIn, wrapLibrary } from './capture.ts';
import { type Journal, type KeptDatabase, openJournal, type StoreShape } from './journal.ts';
import { inject } from './key.ts';
import { type DatabaseLike, type Factory, IDBFactory, type StoreLike } from './library.ts';
import type { Seal } from './seal.ts';

/** An IndexedDB whose databases are on the disk when whoever writes to them is told so. */
export interface KeptIndexedDb {
  readonly factory: Factory;
  close(): void;
}

/**
 * Opens what was kept in a file and fills the databases with it; from then on every change is written there.
 * Rejects where the file is damaged or was locked with another key. `onParted` is told once, when a change could
 * not be written: whoever asked for it is never told that it is done.
 */
export async function openKept(
  file: string,
  seal: Seal,
  onParted: (error: unknown) => void,
): Promise<KeptIndexedDb> {
  wrapLibrary();
  const journal = openJournal(file, seal, onParted);
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
function keepFactory(factory: Factory, journal: Journal): void {
  const open = factory.open.bind(factory);
  const remove = factory.deleteDatabase.bind(factory);
  factory.open = (...given) => {
    const request = open(...given);
    // Attached before the caller can attach anything, so that it runs first.
    request.addEventListener('upgradeneeded', () => {
      keepIn(journal, request.result);
      if (request.transaction) collectUpgrade(request.transaction);
    });
    request.addEventListener('success', (event) => {
      if (journal.parted) return event.stopImmediatePropagation();
      keepIn(journal, request.result);
    });
    return request;
  };
  factory.deleteDatabase = (name) => {
    const request = remove(name);
    request.addEventListener('success', (event) => {
      if (!journal.remove(name)) event.stopImmediatePropagation();
    });
    return request;
  };
}

function refill(factory: Factory, journal: Journal, kept: KeptDatabase): Promise<void> {
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

function refillStore(database: DatabaseLike, journal: Journal, name: string, shape: StoreShape): void {
  const { keyPath, autoIncrement, indexes } = shape;
  const store = database.createObjectStore(shape.name, { keyPath, autoIncrement });
  for (const { name: index, keyPath: path, unique, multiEntry } of indexes)
    store.createIndex(index, path, { unique, multiEntry });
  for (const { key, value } of journal.records(name, shape.name)) {
    if (keyPath === null) store.put(value, key);
    else {
      // The value was taken before its automatic key was put into it.
      if (autoIncrement && typeof keyPath === 'string') inject(value, keyPath, key);
      store.put(value);
    }
  }
  if (autoIncrement) goOnFrom(store, journal.highest(name, shape.name));
}

/** Lets the automatic keys go on after the highest that was ever given, though its record may be gone. */
function goOnFrom(store: StoreLike, highest: number): void {
  if (highest < 1) return;
  const known = store.getKey(highest);
  known.addEventListener('success', () => {
    if (known.result !== undefined) return;
    if (typeof store.keyPath === 'string') {
      const value = {};
      inject(value, store.keyPath, highest);
      store.put(value);
    } else store.put(0, highest);
    store.delete(highest);
  });
}
