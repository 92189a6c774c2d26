import type {
  CursorLike,
  DatabaseLike,
  Factory,
  Request,
  StoreLike,
} from '../../../../src/platforms/matrix/kept-indexeddb/library.ts';
import { IDBKeyRange } from '../../../../src/platforms/matrix/kept-indexeddb/library.ts';

/** A row of numbers between 0 and 1 that is the same for the same seed (mulberry32, in the public domain). */
export function numbers(seed: number): () => number {
  let at = seed >>> 0;
  return () => {
    at = (at + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(at ^ (at >>> 15), 1 | at);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

export const STORES = ['plain', 'pathed', 'counted', 'counted-pathed'] as const;

export const opened = (factory: Factory, version = 1): Promise<DatabaseLike> =>
  new Promise((done, failed) => {
    const request = factory.open('things', version);
    request.addEventListener('error', () => failed(request.error));
    request.addEventListener('upgradeneeded', () => reshape(request.result, request.transaction, version));
    request.addEventListener('success', () => done(request.result));
  });

/** Version 1 makes the stores; later ones drop, make anew and index. */
function reshape(database: DatabaseLike, transaction: unknown, version: number): void {
  const at = transaction as { objectStore(name: string): StoreLike };
  const there = new Set(database.objectStoreNames);
  if (!there.has('plain')) {
    database.createObjectStore('plain').createIndex('by colour', 'colour');
    database
      .createObjectStore('pathed', { keyPath: ['id', 'part'] })
      .createIndex('tags', 'tags', { multiEntry: true });
    database.createObjectStore('counted', { autoIncrement: true });
    database.createObjectStore('counted-pathed', { keyPath: 'under.id', autoIncrement: true });
  }
  if (version < 2) return;
  at.objectStore('plain').createIndex(`size ${version}`, 'size');
  if (version % 2 === 0) at.objectStore('plain').deleteIndex('by colour');
  else at.objectStore('plain').createIndex('by colour', 'colour');
  database.deleteObjectStore('counted');
  const anew = database.createObjectStore('counted', { autoIncrement: true });
  anew.put({ made: version });
}

const COLOURS = ['red', 'green', 'blue'];

/** What one transaction of the script does; the same numbers, the same doing. */
export function transact(database: DatabaseLike, next: () => number): Promise<'complete' | 'abort'> {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!;
  const keys = [1, 0, -0, 2.5, 'one', 'two', new Date(5), new Uint8Array([1, 2]).buffer, ['a', 1]] as const;
  const value = () => ({
    ...{ colour: pick(COLOURS), size: Math.floor(next() * 9), bytes: new Uint8Array([next() * 255]) },
    ...{ deep: { list: [undefined, null, new Map([['k', next()]])] }, tags: [pick(COLOURS), pick(COLOURS)] },
  });
  const transaction = database.transaction(STORES, 'readwrite');
  const store = (name: (typeof STORES)[number]) => transaction.objectStore(name);
  const steps: (() => void)[] = [
    () => void store('plain').put(value(), pick(keys) as never),
    () => void quiet(store('plain').add(value(), pick(keys) as never)),
    () => void store('plain').delete(pick(keys) as never),
    () => void store('plain').delete(IDBKeyRange.bound(0, 2)),
    () => next() < 0.1 && void store('plain').clear(),
    () => void store('pathed').put({ id: Math.floor(next() * 6), part: pick(COLOURS), ...value() }),
    () => void store('pathed').delete([Math.floor(next() * 6), pick(COLOURS)]),
    () => void store('counted').put(value()),
    () => void store('counted').delete(IDBKeyRange.lowerBound(Math.floor(next() * 12))),
    () => void store('counted-pathed').put({ under: {}, ...value() }),
    () => void store('counted-pathed').put(value()),
    () => {
      // Only some versions have this index.
      if (Array.from(store('plain').indexNames).includes('by colour'))
        walk(store('plain').index('by colour'), next);
    },
    () => walk(store('plain'), next),
    () => walk(store('counted-pathed'), next),
  ];
  const count = 1 + Math.floor(next() * 6);
  const aborts = next() < 0.2;
  for (let i = 0; i < count; i++) pick(steps)();
  if (aborts) {
    const last = store('plain').get(1);
    last.addEventListener('success', () => transaction.abort());
  }
  return new Promise((done) => {
    transaction.addEventListener('complete', () => done('complete'));
    transaction.addEventListener('abort', () => done('abort'));
  });
}

/** A refused addition does not undo the others. */
function quiet(request: Request): void {
  request.addEventListener('error', (event) => (event as unknown as Event).preventDefault());
}

/** A cursor that changes some of what it passes and takes some of it away. */
function walk(over: { openCursor(): Request<CursorLike | null> }, next: () => number): void {
  const choices = Array.from({ length: 40 }, next);
  const request = over.openCursor();
  let at = 0;
  request.addEventListener('success', () => {
    const cursor = request.result;
    if (!cursor) return;
    const choice = choices[at++ % choices.length]!;
    if (choice < 0.25) cursor.update({ ...(cursor.value as object), passed: choice });
    else if (choice < 0.4) cursor.delete();
    cursor.continue();
  });
}

/** All that a factory's database holds, read through its public interface. */
export async function dump(factory: Factory): Promise<unknown> {
  const [about] = await factory.databases();
  if (!about) return null;
  const database = await new Promise<DatabaseLike>((done) => {
    const request = factory.open('things');
    request.addEventListener('success', () => done(request.result));
  });
  const names = Array.from(database.objectStoreNames);
  const transaction = database.transaction(names);
  const read = <T>(request: Request<T>) =>
    new Promise<T>((done) => request.addEventListener('success', () => done(request.result)));
  const stores = await Promise.all(
    names.map(async (name) => {
      const store = transaction.objectStore(name);
      const indexes = await Promise.all(
        Array.from(store.indexNames).map(async (index) => ({
          index,
          keys: await read(store.index(index).getAllKeys()),
        })),
      );
      return {
        ...{ name, keyPath: store.keyPath, autoIncrement: store.autoIncrement, indexes },
        keys: await read(store.getAllKeys()),
        values: await read(store.getAll()),
      };
    }),
  );
  database.close();
  return { version: about.version, stores };
}

/** The next automatic key of a store: found by putting something and undoing it. */
export const nextKey = (database: DatabaseLike, name: string): Promise<unknown> =>
  new Promise((done) => {
    const transaction = database.transaction(name, 'readwrite');
    const request = transaction.objectStore(name).put({});
    request.addEventListener('success', () => {
      done(request.result);
      transaction.abort();
    });
  });
