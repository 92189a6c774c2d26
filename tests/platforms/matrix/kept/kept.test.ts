import { copyFileSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, describe, expect, test } from 'vitest';
import { written } from '../../../../src/platforms/matrix/kept-indexeddb/key.ts';
import {
  type DatabaseLike,
  type Factory,
  IDBFactory,
} from '../../../../src/platforms/matrix/kept-indexeddb/library.ts';
import { openKept } from '../../../../src/platforms/matrix/kept-indexeddb/open.ts';
import { sealWith } from '../../../../src/platforms/matrix/kept-indexeddb/seal.ts';
import { dump, nextKey, numbers, opened, transact } from './script.ts';

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

function place(): string {
  const folder = mkdtempSync(join(tmpdir(), 'honeycount-kept-'));
  folders.push(folder);
  return join(folder, 'keys.sqlite');
}

const seal = sealWith('a secret');
const never = (error: unknown) => {
  throw error;
};

describe('what a transaction did is there after opening again', () => {
  // The model beside it is the same library, kept nowhere: fake-indexeddb, which passes the web platform tests.
  test.each([1, 2, 3, 4])('random transactions, aborts and upgrades, seed %i', async (seed) => {
    const file = place();
    const model: Factory = new IDBFactory();
    let kept = await openKept(file, seal, never);
    let version = 1;
    let pair: [DatabaseLike, DatabaseLike] = [await opened(model), await opened(kept.factory)];
    for (let at = 0; at < 60; at++) {
      const [one, other] = await Promise.all(
        pair.map((database) => transact(database, numbers(seed * 1000 + at))),
      );
      expect(one).toBe(other);
      const choice = numbers(seed * 7777 + at)();
      if (choice > 0.12) continue;
      for (const database of pair) database.close();
      if (choice < 0.05) version++;
      kept.close();
      kept = await openKept(file, seal, never);
      expect(await dump(kept.factory)).toEqual(await dump(model));
      pair = [await opened(model, version), await opened(kept.factory, version)];
    }
    for (const database of pair) database.close();
    kept.close();
    kept = await openKept(file, seal, never);
    expect(await dump(kept.factory)).toEqual(await dump(model));
    pair = [await opened(model, version), await opened(kept.factory, version)];
    for (const store of ['counted', 'counted-pathed'])
      expect(await nextKey(pair[1], store), store).toBe(await nextKey(pair[0], store));
    for (const database of pair) database.close();
    kept.close();
  });

  test('an upgrade that is aborted leaves the version before', async () => {
    const file = place();
    const kept = await openKept(file, seal, never);
    (await opened(kept.factory)).close();
    await new Promise<void>((done) => {
      const request = kept.factory.open('things', 2);
      request.addEventListener('upgradeneeded', () => {
        request.result.deleteObjectStore('plain');
        request.transaction?.abort();
      });
      request.addEventListener('error', () => done());
    });
    const before = await dump(kept.factory);
    kept.close();
    const again = await openKept(file, seal, never);
    expect(await dump(again.factory)).toEqual(before);
    again.close();
  });

  test('a database that is deleted is gone, and so is what was in it', async () => {
    const file = place();
    const kept = await openKept(file, seal, never);
    const database = await opened(kept.factory);
    await transact(database, numbers(1));
    database.close();
    await new Promise<void>((done) =>
      kept.factory.deleteDatabase('things').addEventListener('success', () => done()),
    );
    kept.close();
    const again = await openKept(file, seal, never);
    expect(await again.factory.databases()).toEqual([]);
    again.close();
    const rows = new Database(file).prepare('SELECT count(*) FROM records').pluck().get();
    expect(rows).toBe(0);
  });

  test('a value changed after it was put is kept as it was put', async () => {
    const file = place();
    const kept = await openKept(file, seal, never);
    const database = await opened(kept.factory);
    const transaction = database.transaction('plain', 'readwrite');
    const bytes = new Uint8Array([1, 2, 3]);
    transaction.objectStore('plain').put(bytes, 'bytes');
    bytes.fill(9);
    await new Promise<void>((done) => transaction.addEventListener('complete', () => done()));
    database.close();
    kept.close();
    const again = await openKept(file, seal, never);
    const stores = (await dump(again.factory)) as { stores: { name: string; values: unknown[] }[] };
    expect(stores.stores.find(({ name }) => name === 'plain')?.values).toEqual([new Uint8Array([1, 2, 3])]);
    again.close();
  });

  test('a new name for a kept store is refused at once', async () => {
    const kept = await openKept(place(), seal, never);
    const refused = await new Promise((done) => {
      const request = kept.factory.open('things', 1);
      request.addEventListener('upgradeneeded', () => {
        const store = request.result.createObjectStore('old') as { name: string };
        try {
          store.name = 'new';
        } catch (error) {
          done(String(error));
        }
      });
    });
    expect(refused).toContain('cannot be renamed');
    kept.close();
  });
});

describe('when the disk fails', () => {
  test('nobody is told that it is done, and whoever opened it is told why', async () => {
    const file = place();
    const told: unknown[] = [];
    const kept = await openKept(file, seal, (error) => told.push(error));
    const database = await opened(kept.factory);
    // The next write fails, as on a full disk.
    const other = new Database(file);
    other.exec("CREATE TRIGGER full BEFORE INSERT ON records BEGIN SELECT RAISE(ABORT, 'full'); END");
    other.close();
    const transaction = database.transaction('plain', 'readwrite');
    transaction.objectStore('plain').put(1, 1);
    let done = false;
    transaction.addEventListener('complete', () => {
      done = true;
    });
    (transaction as unknown as { oncomplete: () => void }).oncomplete = () => {
      done = true;
    };
    await expect.poll(() => told.length).toBe(1);
    await new Promise((later) => setTimeout(later, 50));
    expect(done).toBe(false);
    kept.close();
  });
});

describe('the file', () => {
  async function filled(): Promise<string> {
    const file = place();
    const kept = await openKept(file, seal, never);
    const database = await opened(kept.factory);
    const transaction = database.transaction('plain', 'readwrite');
    transaction.objectStore('plain').put({ colour: 'a word to be found' }, 'a key to be found');
    transaction.objectStore('plain').put({ colour: 'another' }, 'another key');
    await new Promise<void>((done) => transaction.addEventListener('complete', () => done()));
    database.close();
    kept.close();
    return file;
  }

  test('can be read by its owner alone, and shows neither keys nor values', async () => {
    const file = await filled();
    expect(statSync(file).mode & 0o777).toBe(0o600);
    const bytes = readFileSync(file).toString('latin1');
    expect(bytes).not.toContain('to be found');
    expect(bytes).not.toContain('colour');
  });

  test('is not opened with another key, even while it is empty', async () => {
    await expect(openKept(await filled(), sealWith('another'), never)).rejects.toThrow();
    const empty = place();
    (await openKept(empty, seal, never)).close();
    await expect(openKept(empty, sealWith('another'), never)).rejects.toThrow();
  });

  test('is not opened where a record was changed, or put in another’s place', async () => {
    const file = await filled();
    const changed = place();
    copyFileSync(file, changed);
    const sql = new Database(changed);
    const [one, two] = sql.prepare('SELECT name, locked FROM records').all() as {
      name: Buffer;
      locked: Buffer;
    }[];
    const set = sql.prepare('UPDATE records SET locked = ? WHERE name = ?');
    set.run(two!.locked, one!.name);
    set.run(one!.locked, two!.name);
    sql.close();
    await expect(openKept(changed, seal, never)).rejects.toThrow();
    const garbage = place();
    writeFileSync(
      garbage,
      'this is no database at all, though it is long enough to look like one'.repeat(40),
    );
    await expect(openKept(garbage, seal, never)).rejects.toThrow();
  });
});

test('keys that the standard holds equal are written alike, others are not', () => {
  const bytes = new Uint8Array([7, 8, 9]);
  expect(written(bytes.subarray(1))).toBe(written(new Uint8Array([8, 9]).buffer));
  expect(written(-0)).toBe(written(0));
  expect(written(new Float64Array([5])[0]!)).toBe(written(5));
  const different = [1, '1', new Date(1), [1], ['1'], [[1]], new Uint8Array([1]), Infinity, ''].map(written);
  expect(new Set(different).size).toBe(different.length);
});
