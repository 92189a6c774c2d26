import { chmodSync, mkdirSync, readdirSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { ok, type Result } from '../measure/result.ts';
import { copyDatabase, type Sound, soundness } from '../store/copy.ts';
import { storeProblem } from '../store/trouble.ts';
import { wholeFile } from './whole-file.ts';

/** A copy of the database that was read back and found sound. */
export interface Backup extends Sound {
  readonly file: string;
}

/** Where backups lie when nobody names another place. */
export const backupsBeside = (database: string): string => join(dirname(database), 'backups');

const NAME = /^honeycount-\d{4}-\d{2}-\d{2}T\d{2}-\d{2}-\d{2}Z\.sqlite$/;

/** A name that sorts by its moment and is allowed on every disk. */
export const backupName = (now: Date): string =>
  `honeycount-${now.toISOString().slice(0, 19).replaceAll(':', '-')}Z.sqlite`;

/** Backups in a folder, the newest first. */
export function backupsIn(folder: string): string[] {
  const there = statSync(folder, { throwIfNoEntry: false });
  if (!there?.isDirectory()) return [];
  const names = readdirSync(folder).filter((name) => NAME.test(name));
  return names
    .sort()
    .reverse()
    .map((name) => join(folder, name));
}

/**
 * Copies the database, beside whoever is using it, and reads the copy back. `to` is a file or a folder; a file
 * there that is no backup of ours is left as it is.
 */
export function backUp(database: string, to: string | undefined, now: Date): Result<Backup> {
  try {
    const file = placeFor(resolve(to ?? backupsBeside(database)), to === undefined, now);
    const inTheWay = checkedPlace(file);
    if (!inTheWay.ok) return inTheWay;
    mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
    const made = wholeFile(file, (temporary) => {
      const copied = copyDatabase(database, temporary);
      if (!copied.ok) return copied;
      chmodSync(temporary, 0o600);
      return soundness(temporary);
    });
    return made.ok ? ok({ ...made.value, file }) : made;
  } catch (thrown) {
    const problem = storeProblem(thrown, to ?? backupsBeside(database));
    if (!problem) throw thrown;
    return { ok: false, problem };
  }
}

const placeFor = (to: string, folder: boolean, now: Date): string =>
  folder || statSync(to, { throwIfNoEntry: false })?.isDirectory() ? join(to, backupName(now)) : to;

/** A backup may take the place of an older one, of an empty or a damaged file of that kind, and of nothing else. */
function checkedPlace(file: string): Result<void> {
  if (!statSync(file, { throwIfNoEntry: false })?.size) return ok(undefined);
  const there = soundness(file);
  return there.ok || ['store-damaged', 'store-empty', 'store-newer'].includes(there.problem.code)
    ? ok(undefined)
    : there;
}
