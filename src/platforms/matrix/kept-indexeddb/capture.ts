import { serialize } from 'node:v8';
import type { Change, Journal, KeptDatabase, StoreShape } from './journal.ts';
import {
  type CursorLike,
  type DatabaseLike,
  IDBCursor,
  IDBDatabase,
  IDBIndex,
  IDBKeyRange,
  IDBObjectStore,
  type IndexLike,
  type Key,
  type KeyRange,
  type Request,
  type StoreLike,
  type TransactionLike,
} from './library.ts';

/** Something that a transaction asked for: what it changed, once the transaction is complete. */
type Asked = () => readonly Change[];

const journals = new WeakMap<DatabaseLike, Journal>();
const transactions = new WeakMap<TransactionLike, Asked[]>();
const shapes = new WeakMap<DatabaseLike, Map<string, StoreShape>>();

/** From now on what is done to a database is written to the journal. */
export function keepIn(journal: Journal, database: DatabaseLike): void {
  journals.set(database, journal);
}

/**
 * Collects what a transaction does, and writes it in one synchronous transaction of the journal when it is
 * complete. The listener is attached when the transaction is made, so before any of whoever asked for it: who
 * is therefore never told that something is done before it is on the disk. Where it cannot be written nobody is
 * told at all. An aborted transaction never completes, and nothing of it is written.
 */
export function collect(transaction: TransactionLike, reshaping = false): void {
  const journal = journals.get(transaction.db);
  if (!journal || transactions.has(transaction)) return;
  const asked: Asked[] = [];
  transactions.set(transaction, asked);
  if (reshaping) for (const name of transaction.objectStoreNames) noteShape(transaction.objectStore(name));
  transaction.addEventListener('complete', (event) => {
    const changes = asked.flatMap((one) => one());
    if (changes.length === 0 && !reshaping) return;
    const shape = reshaping ? shapeOf(transaction.db) : undefined;
    if (!journal.write(transaction.db.name, changes, shape)) event.stopImmediatePropagation();
  });
}

function shapeOf(database: DatabaseLike): KeptDatabase {
  const known = shapes.get(database) ?? new Map<string, StoreShape>();
  const stores = Array.from(database.objectStoreNames).flatMap((name) => known.get(name) ?? []);
  return { name: database.name, version: database.version, stores };
}

/** Notes how a store looks while its transaction is going on: afterwards it may not be asked. */
function noteShape(store: StoreLike): void {
  const { db } = store.transaction;
  const known = shapes.get(db) ?? new Map<string, StoreShape>();
  shapes.set(db, known);
  const indexes = Array.from(store.indexNames).map((index) => {
    const { name, keyPath, unique, multiEntry } = store.index(index);
    return { name, keyPath, unique, multiEntry };
  });
  const { name, keyPath, autoIncrement } = store;
  known.set(name, { name, keyPath, autoIncrement, indexes });
}

const succeeded = (request: Request): boolean => request.readyState === 'done' && !request.error;

function note(store: StoreLike, request: Request, changes: () => readonly Change[]): void {
  transactions.get(store.transaction)?.push(() => (succeeded(request) ? changes() : []));
}

/** The value is taken as it is now: whoever asked may go on to change it, or the memory that it lies in. */
function put(store: StoreLike, request: Request<Key>, value: unknown): void {
  if (!transactions.has(store.transaction)) return;
  const bytes = serialize(value);
  const { name } = store;
  note(store, request, () => [{ does: 'put', store: name, key: request.result, value: bytes }]);
}

/** A range's keys are asked for just before it is deleted, in the same transaction: so in the same state. */
function erase(store: StoreLike, what: Key | KeyRange, act: () => Request): Request {
  if (!transactions.has(store.transaction)) return act();
  const { name } = store;
  const gone = (keys: readonly Key[]) => keys.map((key): Change => ({ does: 'delete', store: name, key }));
  if (what instanceof IDBKeyRange) {
    const keys = store.getAllKeys(what);
    const request = act();
    note(store, request, () => gone(keys.result));
    return request;
  }
  const request = act();
  const key = structuredClone(what as Key);
  note(store, request, () => gone([key]));
  return request;
}

const storeOf = ({ source }: CursorLike): StoreLike =>
  'objectStore' in source ? source.objectStore : source;

/** Lets a method do what it did, with something before or after it. */
function around<Of extends object, Name extends keyof Of>(
  { prototype }: { readonly prototype: Of },
  name: Name,
  wrap: (was: Of[Name]) => Of[Name],
): void {
  prototype[name] = wrap(prototype[name]);
}

let wrapped = false;

/** Wraps the library at its public interface, once. Databases that are not kept go on as they were. */
export function wrapLibrary(): void {
  if (wrapped) return;
  wrapped = true;
  around(
    IDBDatabase,
    'transaction',
    (was) =>
      function (this: DatabaseLike, ...given) {
        const transaction = was.apply(this, given);
        if (transaction.mode !== 'readonly') collect(transaction);
        return transaction;
      },
  );
  for (const name of ['put', 'add'] as const)
    around(
      IDBObjectStore,
      name,
      (was) =>
        function (this: StoreLike, ...given) {
          const request = was.apply(this, given);
          put(this, request, given[0]);
          return request;
        },
    );
  around(
    IDBObjectStore,
    'delete',
    (was) =>
      function (this: StoreLike, ...given) {
        return erase(this, given[0], () => was.apply(this, given));
      },
  );
  around(
    IDBObjectStore,
    'clear',
    (was) =>
      function (this: StoreLike) {
        const request = was.call(this);
        const { name } = this;
        note(this, request, () => [{ does: 'clear', store: name }]);
        return request;
      },
  );
  around(
    IDBCursor,
    'update',
    (was) =>
      function (this: CursorLike, ...given) {
        const request = was.apply(this, given);
        put(storeOf(this), request, given[0]);
        return request;
      },
  );
  around(
    IDBCursor,
    'delete',
    (was) =>
      function (this: CursorLike) {
        return erase(storeOf(this), this.primaryKey, () => was.call(this));
      },
  );
  wrapShapes();
}

function wrapShapes(): void {
  around(
    IDBDatabase,
    'createObjectStore',
    (was) =>
      function (this: DatabaseLike, ...given) {
        const store = was.apply(this, given);
        noteShape(store);
        return store;
      },
  );
  around(
    IDBDatabase,
    'deleteObjectStore',
    (was) =>
      function (this: DatabaseLike, name) {
        const transaction = upgrading.get(this);
        was.call(this, name);
        shapes.get(this)?.delete(name);
        if (transaction) transactions.get(transaction)?.push(() => [{ does: 'drop', store: name }]);
      },
  );
  around(
    IDBObjectStore,
    'createIndex',
    (was) =>
      function (this: StoreLike, ...given) {
        const index = was.apply(this, given);
        noteShape(this);
        return index;
      },
  );
  around(
    IDBObjectStore,
    'deleteIndex',
    (was) =>
      function (this: StoreLike, name) {
        was.call(this, name);
        noteShape(this);
      },
  );
  refuseRenaming(IDBObjectStore.prototype, (store) => store.transaction);
  refuseRenaming(IDBIndex.prototype, (index) => index.objectStore.transaction);
}

const upgrading = new WeakMap<DatabaseLike, TransactionLike>();

/** The upgrade of a database: its stores may change. */
export function collectUpgrade(transaction: TransactionLike): void {
  upgrading.set(transaction.db, transaction);
  collect(transaction, true);
}

/** A new name is the one change that is not kept: it fails at once, rather than after the next start. */
function refuseRenaming<Named extends StoreLike | IndexLike>(
  prototype: Named,
  transactionOf: (named: Named) => TransactionLike,
): void {
  const was = Object.getOwnPropertyDescriptor(prototype, 'name');
  if (!was?.set) return;
  Object.defineProperty(prototype, 'name', {
    ...was,
    set(this: Named, name: string) {
      if (transactions.has(transactionOf(this))) throw new Error('a kept store or index cannot be renamed');
      was.set?.call(this, name);
    },
  });
}
