import { chmodSync, copyFileSync, existsSync, linkSync, rmSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { ok, type Result, wrong } from '../measure/result.ts';
import { emptyLog, type Sound, soundness } from '../store/copy.ts';
import { takeIntoUse } from '../store/in-use.ts';
import { makePlace } from '../store/place.ts';
import { storeProblem } from '../store/trouble.ts';
import { flush, wholeFile } from './whole-file.ts';

export interface Restored extends Sound {
  readonly from: string;
  /** Where the database that was replaced lies now; null when there was none. */
  readonly aside: string | null;
}

/**
 * Puts a backup in the database's place: checked before and after it is copied, with nobody else on the data,
 * and what was there kept aside. A crash at any moment leaves the old database or the new one, whole.
 */
export function restore(database: string, backup: string, now: Date): Result<Restored> {
  const from = resolve(backup);
  try {
    if (from === resolve(database)) return wrong('store-same-file', { path: database });
    const good = soundness(from);
    if (!good.ok) return good;
    const had = Boolean(statSync(database, { throwIfNoEntry: false })?.size);
    const place = makePlace(database);
    if (!place.ok) return place;
    const taken = takeIntoUse(database, 'alone');
    if (!taken.ok) return taken;
    try {
      return putInPlace(from, database, had ? asideName(database, now) : null);
    } finally {
      taken.value();
    }
  } catch (thrown) {
    const problem = storeProblem(thrown, database);
    if (!problem) throw thrown;
    return { ok: false, problem };
  }
}

function putInPlace(from: string, database: string, aside: string | null): Result<Restored> {
  const made = wholeFile(database, (temporary) => {
    copyFileSync(from, temporary);
    chmodSync(temporary, 0o600);
    const sound = soundness(temporary);
    if (sound.ok && aside) setAside(database, aside);
    // A log of the old database must never be read into the new one.
    if (sound.ok) for (const end of ['-wal', '-shm']) rmSync(database + end, { force: true });
    return sound;
  });
  return made.ok ? ok({ ...made.value, from, aside }) : made;
}

/** Gives the database that is there a second name. What is only in its log is first brought into it. */
function setAside(database: string, aside: string): void {
  emptyLog(database);
  try {
    linkSync(database, aside);
  } catch {
    copyFileSync(database, aside);
  }
  if (existsSync(`${database}-wal`)) copyFileSync(`${database}-wal`, `${aside}-wal`);
  flush(dirname(database));
}

function asideName(database: string, now: Date): string {
  const moment = now.toISOString().slice(0, 19).replaceAll(':', '-');
  const name = (more: string) => join(dirname(database), `before-restore-${moment}Z${more}.sqlite`);
  let tries = 1;
  while (existsSync(name(tries === 1 ? '' : `-${tries}`))) tries++;
  return name(tries === 1 ? '' : `-${tries}`);
}
