import type { DatabaseSync } from 'node:sqlite';
import type { KeptDefaults } from '../chat/defaults.ts';
import type { Problem } from '../measure/result.ts';
import { isHeldOpen } from './held-open.ts';
import { badRow, readSettingsRow } from './settings-row.ts';
import { newerThanKnown } from './steps.ts';

/** What one ask needs: the asker's own defaults and her guild's. */
export interface Peek {
  readonly own: KeptDefaults;
  readonly guild: KeptDefaults;
  /** Why some were left out, for the operator. The ask is answered without them. */
  readonly problems: readonly Problem[];
}

interface Row {
  readonly has: number | null;
  readonly own: string | null;
  readonly guild: string | null;
}

/** How long to wait for a process that has the whole file to itself, milliseconds: a member is waiting. */
const PATIENCE = 500;

const ONE_ROW = `SELECT (SELECT max(step) FROM steps) AS has,
  (SELECT settings FROM defaults WHERE guild = ?1 AND member = ?2) AS own,
  (SELECT settings FROM defaults WHERE guild = ?1 AND member = '') AS guild`;

/**
 * Reads from a file that is there, with the SQLite that is built into Node: it loads ten times as fast as
 * the store's own. Opened, read and closed in one go, so that no store is opened on the file meanwhile.
 */
export function readingOnly<T>(file: string, read: (database: DatabaseSync) => T): T {
  if (isHeldOpen(file)) throw new Error(`read from the store that has ${file} open`);
  const { DatabaseSync } = process.getBuiltinModule('node:sqlite');
  const database = new DatabaseSync(file, { readOnly: true, timeout: PATIENCE });
  try {
    return read(database);
  } finally {
    database.close();
  }
}

export function readDefaults(file: string, guild: string, member: string): Peek {
  const row = readingOnly(file, (database) => database.prepare(ONE_ROW).get(guild, member) as unknown as Row);
  const newer = newerThanKnown(row.has ?? 0, file);
  if (newer) return { own: {}, guild: {}, problems: [newer] };
  const own = readSettingsRow(row.own);
  const guilds = readSettingsRow(row.guild);
  const problems = [
    ...(own.bad.length > 0 ? [badRow('defaults', guild, member, own.bad)] : []),
    ...(guilds.bad.length > 0 ? [badRow('defaults', guild, '', guilds.bad)] : []),
  ];
  return { own: own.settings, guild: guilds.settings, problems };
}
