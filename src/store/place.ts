import { accessSync, closeSync, constants, mkdirSync, openSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { ok, type Result, wrong } from '../measure/result.ts';
import { codeOf } from './trouble.ts';

const { R_OK, W_OK, X_OK } = constants;

/**
 * Makes the database's folder and its empty file where they are missing, readable by their owner alone, and
 * makes sure that both can be used: SQLite would open a file that cannot be written, and fail later.
 */
export function makePlace(file: string): Result<void> {
  const folder = dirname(file);
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
  } catch (thrown) {
    if (isDenied(thrown)) return wrong('store-read-only', { path: folder });
    throw thrown;
  }
  if (!allows(folder, R_OK | X_OK)) return wrong('store-no-access', { path: folder });
  if (!allows(folder, W_OK)) return wrong('store-read-only', { path: folder });
  makeFile(file);
  if (statSync(file).isDirectory()) return wrong('store-is-a-folder', { path: file });
  if (!allows(file, R_OK)) return wrong('store-no-access', { path: file });
  if (!allows(file, W_OK)) return wrong('store-read-only', { path: file });
  return ok(undefined);
}

/**
 * Makes an empty file for its owner alone, where there is none. An existing one is left unopened: closing it
 * would drop the locks that this process may have on it.
 */
export function makeFile(file: string): void {
  try {
    closeSync(openSync(file, 'ax', 0o600));
  } catch (thrown) {
    if (codeOf(thrown) !== 'EEXIST') throw thrown;
  }
}

function allows(path: string, mode: number): boolean {
  try {
    accessSync(path, mode);
    return true;
  } catch (thrown) {
    if (isDenied(thrown)) return false;
    throw thrown;
  }
}

const isDenied = (thrown: unknown): boolean => ['EACCES', 'EPERM', 'EROFS'].includes(codeOf(thrown));
