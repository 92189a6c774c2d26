import { existsSync, renameSync } from 'node:fs';
import { CannotStart, EXIT } from '../platform.ts';
import { WrongKey } from './kept-indexeddb/journal.ts';
import { globalsOf } from './kept-indexeddb/library.ts';
import { type KeptIndexedDb, openKept } from './kept-indexeddb/open.ts';
import { sealWith } from './kept-indexeddb/seal.ts';

export interface Keys {
  readonly file: string;
  readonly storeKey: string;
  onParted(error: unknown): void;
}

/**
 * Opens the keys and puts them where the library will look: it must not have been imported yet. Undefined where
 * they are lost: a file that should be there and is not, or that is damaged (it is put aside).
 */
export async function openKeys(
  { file, storeKey, onParted }: Keys,
  expected: boolean,
): Promise<KeptIndexedDb | undefined> {
  if (expected && !existsSync(file)) return undefined;
  try {
    const kept = await openKept(file, sealWith(storeKey), onParted);
    for (const [name, value] of Object.entries(globalsOf(kept.factory)))
      Object.defineProperty(globalThis, name, { value, configurable: true, writable: true });
    return kept;
  } catch (error) {
    if (!(error instanceof WrongKey)) return undefined;
    throw new CannotStart({
      sentence: `"matrix.storeKey" does not open the keys in ${file}. Give the key they were locked with. Where it is lost, move that file away: the bot then begins with a new device.`,
      status: EXIT.settings,
    });
  }
}

/** Puts damaged keys where nobody will trip over them, and where they can be looked at. */
export function putAside(file: string, now: Date): void {
  const stamp = now.toISOString().replace(/[:.]/g, '-');
  for (const tail of ['', '-wal', '-shm'])
    if (existsSync(`${file}${tail}`)) renameSync(`${file}${tail}`, `${file}.lost-${stamp}${tail}`);
}
