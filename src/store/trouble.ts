import type { Problem } from '../measure/result.ts';

/** SQLite's result codes by their number, for the library that gives numbers: the low byte of the code. */
const RESULT_NAMES: Readonly<Record<number, string>> = {
  1: 'SQLITE_ERROR',
  5: 'SQLITE_BUSY',
  6: 'SQLITE_LOCKED',
  8: 'SQLITE_READONLY',
  10: 'SQLITE_IOERR',
  11: 'SQLITE_CORRUPT',
  13: 'SQLITE_FULL',
  14: 'SQLITE_CANTOPEN',
  26: 'SQLITE_NOTADB',
};

/** What went wrong, by the beginning of the code that SQLite or the file system gives. */
const TROUBLES: readonly (readonly [start: string, code: string])[] = [
  ['SQLITE_BUSY', 'store-busy'],
  ['SQLITE_LOCKED', 'store-busy'],
  ['SQLITE_READONLY', 'store-read-only'],
  ['SQLITE_FULL', 'store-full'],
  ['SQLITE_CORRUPT', 'store-damaged'],
  ['SQLITE_NOTADB', 'store-not-a-database'],
  ['SQLITE_CANTOPEN', 'store-unreachable'],
  ['SQLITE_IOERR', 'store-disk'],
  ['SQLITE_', 'store-failed'],
  ['EACCES', 'store-no-access'],
  ['EPERM', 'store-no-access'],
  ['EROFS', 'store-read-only'],
  ['ENOSPC', 'store-full'],
  ['EDQUOT', 'store-full'],
  ['EIO', 'store-disk'],
  ['ENOTDIR', 'store-unreachable'],
  ['EEXIST', 'store-unreachable'],
  ['ENOENT', 'store-unreachable'],
  ['ELOOP', 'store-unreachable'],
  ['ENAMETOOLONG', 'store-unreachable'],
];

/**
 * The problem behind what was thrown, or undefined when it is no trouble of the database or the disk.
 * The library's own words stay out of it: they go to the log as the cause.
 */
export function storeProblem(thrown: unknown, path: string): Problem | undefined {
  const found = codeOf(thrown);
  const code = TROUBLES.find(([start]) => found.startsWith(start))?.[1];
  return code === undefined ? undefined : { code, path };
}

/** The code of an error of SQLite (by name or by number) or of the file system; '' for any other. */
export function codeOf(thrown: unknown): string {
  const { code, errcode } = (thrown ?? {}) as { code?: unknown; errcode?: unknown };
  if (typeof errcode === 'number') return RESULT_NAMES[errcode & 0xff] ?? 'SQLITE_OTHER';
  return typeof code === 'string' ? code : '';
}
