import { randomBytes } from 'node:crypto';
import { closeSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Result } from '../measure/result.ts';

/**
 * Makes a file appear whole or not at all: `make` writes it under a temporary name beside its place, its
 * contents go to the disk before the name does, and the name goes to the disk before this returns. A crash at
 * any moment leaves the old file or the new one, and at worst a temporary one that nobody reads.
 */
export function wholeFile<Made>(file: string, make: (temporary: string) => Result<Made>): Result<Made> {
  const temporary = `${file}.${randomBytes(4).toString('hex')}.tmp`;
  try {
    const made = make(temporary);
    if (!made.ok) return made;
    flush(temporary);
    renameSync(temporary, file);
    flush(dirname(file));
    return made;
  } finally {
    rmSync(temporary, { force: true });
  }
}

/** Waits until a file's contents, or the names in a folder, are on the disk. */
export function flush(path: string): void {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
