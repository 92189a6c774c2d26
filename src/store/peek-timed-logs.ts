import { statSync } from 'node:fs';
import type { TimedLog } from '../guild/challenge-facts.ts';
import { readingOnly } from './peek-file.ts';
import { TIMED_LOGS } from './timed-logs.ts';

/**
 * A member's last logs with minutes, read without opening the store. None where there is no database yet, or
 * one that cannot be read: the ask is answered without them, and the peek at her defaults has told why.
 */
export function peekTimedLogs(file: string, guild: string, member: string, most: number): TimedLog[] {
  if (file === ':memory:') return [];
  try {
    if (!statSync(file, { throwIfNoEntry: false })?.isFile()) return [];
    return readingOnly(
      file,
      (database) => database.prepare(TIMED_LOGS).all(guild, member, most) as unknown as TimedLog[],
    );
  } catch {
    return [];
  }
}
