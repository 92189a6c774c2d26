import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';
import type { FactsTrouble } from '../../src/chat/facts.ts';
import type { Problem } from '../../src/measure/result.ts';
import type { Keeping } from '../../src/store/keeping.ts';
import { openStore, type Store } from '../../src/store/open.ts';

/** Folders and stores that are cleared away after each test. */
const cleanups: (() => unknown)[] = [];

afterEach(async () => {
  for (const cleanup of cleanups.splice(0).reverse()) await cleanup();
});

/** Cleared away after the test that made it, the last made first. */
export const afterwards = (cleanup: () => unknown): void => void cleanups.push(cleanup);

export function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'honeycount-store-'));
  afterwards(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export const newFile = (): string => join(newFolder(), 'data', 'honeycount.sqlite');

export async function opened(file: string, keeping: Partial<Keeping> = {}): Promise<Store> {
  const store = await openStore(file, keeping);
  if (!store.ok) throw new Error(`not opened: ${JSON.stringify(store.problem)}`);
  let open = true;
  afterwards(() => open && store.value.close());
  return {
    ...store.value,
    close: async () => {
      open = false;
      await store.value.close();
    },
  };
}

export async function refused(file: string): Promise<Problem> {
  const store = await openStore(file);
  if (!store.ok) return store.problem;
  await store.value.close();
  throw new Error(`${file} was opened`);
}

/** The problem that a call rejects with. */
export const troubleOf = (call: Promise<unknown>): Promise<Problem> =>
  call.then(
    () => {
      throw new Error('no trouble');
    },
    (thrown: FactsTrouble) => {
      if (!thrown.problem) throw thrown;
      return thrown.problem;
    },
  );
