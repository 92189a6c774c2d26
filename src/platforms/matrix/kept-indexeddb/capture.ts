import { serialize } from 'node:v8';
import { IDBCursor, IDBDatabase, IDBObjectStore } from 'fake-indexeddb';
import type { Change, Journal, KeptDatabase, Key, StoreShape } from './journal.ts';

/** Something that a transaction asked for: what it changed, once the transaction is complete. */
type Asked = () => readonly Change[];

const journals = new WeakMap<IDBDatabase, Journal>();
const transactions = new WeakMap<IDBTransaction, Asked[]>();
const shapes = new WeakMap<IDBDatabase, Map<string, StoreShape>>();

/** From now on what is done to a database is written to the journal. */
export function keepIn(journal: Journal, database: IDBDatabase): void {
  journals.set(database, journal);
}

/**
 * Collects what a transaction does, and writes it in one synchronous transaction of the journal when it is
 * complete. The listener is attached when the transaction is made, so before any of whoever asked for it: who
 * is therefore never told that something is done before it is on the disk. An aborted transaction never
 * completes, and nothing of it is written.
 */
export function collect(transaction: IDBTransaction, reshaping = false): void {
  const journal = journals.get(transaction.db);
  if (!journal || transactions.has(transaction)) return;
  const asked: Asked[] = [];
  transactions.set(transaction, asked);
  if (reshaping) for (const name of transaction.objectStoreNames) noteShape(transaction.objectStore(name));
  transaction.addEventListener('complete', () => {
    const changes = asked.flatMap((one) => one());
    if (reshaping) journal.write(transaction.db.name, changes, shapeOf(transaction.db));
    else if (changes.length > 0) journal.write(transaction.db.name, changes);
  });
}

function shapeOf(database: IDBDatabase): KeptDatabase {
  const known = shapes.get(database) ?? new Map<string, StoreShape>();
  const names = Array.from(database.objectStoreNames);
  return { name: database.name, version: database.version, stores: names.flatMap((name) => known.get(name) ?? []) };
}

/** Notes how a store looks while its transaction is going on: afterwards it may not be asked. */
function noteShape(store: IDBObjectStore): void {
  const { db } = store.transaction;
  const known = shapes.get(db) ?? new Map<string, StoreShape>();
  shapes.set(db, known);
  const indexes = Array.from(store.indexNames).map((index) => {
    const { name, keyPath, unique, multiEntry } = store.index(index);
    return { name, keyPath, unique, multiEntry };
  });
  known.set(store.name, { name: store.name, keyPath: store.keyPath, autoIncrement: store.autoIncrement, indexes });
}

const succeeded = (request: IDBRequest): boolean => request.readyState === 'done' && request.error === null;

/** The value is taken as it is now: whoever asked may go on to change it, or the memory that it lies in. */
function put(store: IDBObjectStore, request: IDBRequest<Key>, value: unknown): void {
  const asked = transactions.get(store.transaction);
  if (!asked) return;
  const bytes = serialize(value);
  const { name } = store;
  asked.push(() => (succeeded(request) ? [{ does: 'put', store: name, key: request.result, value: bytes }] : []));
}

/** The keys that a deletion takes are asked for just before it, in the same transaction: so in the same state. */
function taken(store: IDBObjectStore, range: Key | IDBKeyRange): void {
  const asked = transactions.get(store.transaction);
  if (!asked) return;
  const keys = store.getAllKeys(range);
  const { name } = store;
  asked.push(() => (succeeded(keys) ? keys.result.map((key) => ({ does: 'delete', store: name, key })) : []));
}

const storeOf = (cursor: IDBCursor): IDBObjectStore =>
  'objectStore' in cursor.source ? cursor.source.objectStore : cursor.source;

type Method = (this: never, ...given: never[]) => unknown;

/** Lets a method do what it did, with something before or after it. */
function around<Of extends object, Name extends keyof Of>(
  prototype: Of,
  name: Name,
  wrap: (was: Extract<Of[Name], Method>) => Of[Name],
): void {
  prototype[name] = wrap(prototype[name] as Extract<Of[Name], Method>);
}

let wrapped = false;

/** Wraps the library at its public interface, once. Databases that are not kept go on as they were. */
export function wrapLibrary(): void {
  if (wrapped) return;
  wrapped = true;
  around(IDBDatabase.prototype, 'transaction', (was) => function (this: IDBDatabase, ...given) {
    const transaction = was.apply(this, given);
    if (transaction.mode !== 'readonly') collect(transaction);
    return transaction;
  });
  for (const name of ['put', 'add'] as const)
    around(IDBObjectStore.prototype, name, (was) => function (this: IDBObjectStore, ...given) {
      const request = was.apply(this, given);
      put(this, request, given[0]);
      return request;
    });
  around(IDBObjectStore.prototype, 'delete', (was) => function (this: IDBObjectStore, range) {
    taken(this, range);
    return was.call(this, range);
  });
  around(IDBObjectStore.prototype, 'clear', (was) => function (this: IDBObjectStore) {
    const request = was.call(this);
    const { name } = this;
    transactions.get(this.transaction)?.push(() => (succeeded(request) ? [{ does: 'clear', store: name }] : []));
    return request;
  });
  around(IDBCursor.prototype, 'update', (was) => function (this: IDBCursor, value) {
    const request = was.call(this, value);
    put(storeOf(this), request, value);
    return request;
  });
  around(IDBCursor.prototype, 'delete', (was) => function (this: IDBCursor) {
    taken(storeOf(this), this.primaryKey);
    return was.call(this);
  });
  wrapShapes();
}

function wrapShapes(): void {
  around(IDBDatabase.prototype, 'createObjectStore', (was) => function (this: IDBDatabase, ...given) {
    const store = was.apply(this, given);
    noteShape(store);
    return store;
  });
  around(IDBObjectStore.prototype, 'createIndex', (was) => function (this: IDBObjectStore, ...given: never[]) {
    const index = (was as (...given: never[]) => IDBIndex).apply(this, given);
    noteShape(this);
    return index;
  });
  around(IDBObjectStore.prototype, 'deleteIndex', (was) => function (this: IDBObjectStore, name) {
    was.call(this, name);
    noteShape(this);
  });
}
