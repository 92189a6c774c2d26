import * as fake from 'fake-indexeddb';

/*
 * The part of IndexedDB that is used here, as its standard has it (W3C, Indexed Database API 3.0). The library's
 * own types are those of a browser, which this program is not.
 */

export type Key = number | string | Date | ArrayBuffer | ArrayBufferView | readonly Key[];

export interface Told {
  stopImmediatePropagation(): void;
}

interface Listened {
  addEventListener(type: string, listener: (event: Told) => void): void;
}

export interface KeyRange {
  readonly lower: unknown;
  readonly upper: unknown;
}

export interface Request<T = unknown> extends Listened {
  readonly readyState: 'pending' | 'done';
  readonly result: T;
  readonly error: Error | null | undefined;
}

export interface OpenRequest extends Request<DatabaseLike> {
  readonly transaction: TransactionLike | null;
}

export interface IndexLike {
  readonly name: string;
  readonly keyPath: string | string[];
  readonly unique: boolean;
  readonly multiEntry: boolean;
  readonly objectStore: StoreLike;
  openCursor(range?: KeyRange | Key | null): Request<CursorLike | null>;
  getAllKeys(range?: KeyRange | Key | null): Request<Key[]>;
}

export interface StoreLike {
  readonly name: string;
  readonly keyPath: string | string[] | null;
  readonly autoIncrement: boolean;
  readonly indexNames: Iterable<string>;
  readonly transaction: TransactionLike;
  put(value: unknown, key?: Key): Request<Key>;
  add(value: unknown, key?: Key): Request<Key>;
  get(key: Key): Request;
  getKey(key: Key): Request<Key | undefined>;
  getAllKeys(range?: KeyRange | Key | null): Request<Key[]>;
  getAll(range?: KeyRange | Key | null): Request<unknown[]>;
  delete(range: KeyRange | Key): Request;
  clear(): Request;
  openCursor(range?: KeyRange | Key | null): Request<CursorLike | null>;
  index(name: string): IndexLike;
  createIndex(
    name: string,
    path: string | string[],
    options?: { unique?: boolean; multiEntry?: boolean },
  ): IndexLike;
  deleteIndex(name: string): void;
}

export interface CursorLike {
  readonly source: StoreLike | IndexLike;
  readonly primaryKey: Key;
  readonly value: unknown;
  update(value: unknown): Request<Key>;
  delete(): Request;
  continue(): void;
}

export interface TransactionLike extends Listened {
  readonly db: DatabaseLike;
  readonly mode: 'readonly' | 'readwrite' | 'versionchange';
  readonly objectStoreNames: Iterable<string>;
  objectStore(name: string): StoreLike;
  abort(): void;
}

export interface DatabaseLike {
  readonly name: string;
  readonly version: number;
  readonly objectStoreNames: Iterable<string>;
  transaction(names: string | readonly string[], mode?: 'readonly' | 'readwrite'): TransactionLike;
  createObjectStore(
    name: string,
    options?: { keyPath?: string | string[] | null; autoIncrement?: boolean },
  ): StoreLike;
  deleteObjectStore(name: string): void;
  close(): void;
}

export interface Factory {
  open(name: string, version?: number): OpenRequest;
  deleteDatabase(name: string): Request;
  databases(): Promise<{ name: string; version: number }[]>;
}

interface Library {
  readonly IDBFactory: new () => Factory;
  readonly IDBKeyRange: {
    new (): KeyRange;
    bound(lower: Key, upper: Key): KeyRange;
    only(key: Key): KeyRange;
    lowerBound(lower: Key): KeyRange;
  };
  readonly IDBDatabase: { readonly prototype: DatabaseLike };
  readonly IDBObjectStore: { readonly prototype: StoreLike };
  readonly IDBIndex: { readonly prototype: IndexLike };
  readonly IDBCursor: { readonly prototype: CursorLike };
}

export const { IDBFactory, IDBKeyRange, IDBDatabase, IDBObjectStore, IDBIndex, IDBCursor } =
  fake as unknown as Library;

/** Everything that a library looking for a browser's store expects to find. */
export const globalsOf = (factory: Factory): Record<string, unknown> => ({
  ...Object.fromEntries(Object.entries(fake).filter(([name]) => name.startsWith('IDB'))),
  indexedDB: factory,
});
