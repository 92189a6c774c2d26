import { statSync } from 'node:fs';
import type { Problem } from '../measure/result.ts';
import type { Peek } from './peek-file.ts';

export type { Peek };

/**
 * Reads a member's defaults and her guild's without opening the store: no database is made or changed.
 * Quick to load, for a single ask that starts cold; what is not needed is not loaded. Never of a file that
 * this process has open as a store.
 */
export async function peekDefaults(file: string, guild: string, member: string): Promise<Peek> {
  if (file === ':memory:') return nothing([]);
  try {
    const place = statSync(file, { throwIfNoEntry: false });
    if (!place) return nothing([]);
    if (place.isDirectory()) return nothing([{ code: 'store-is-a-folder', path: file }]);
    const { readDefaults } = await import('./peek-file.ts');
    return readDefaults(file, guild, member);
  } catch (thrown) {
    const { peekProblems } = await import('./peek-problems.ts');
    return nothing(peekProblems(thrown, file));
  }
}

const nothing = (problems: readonly Problem[]): Peek => ({ own: {}, guild: {}, problems });
