import { existsSync } from 'node:fs';
import { many } from '../measure/speech.ts';
import { backupsBeside, backupsIn } from '../run/backup.ts';
import { restore } from '../run/restore.ts';
import { readDataFlags } from './data-flags.ts';
import { bytesWords, complain, tell } from './telling.ts';

/** Puts a backup in the database's place, once it was found sound and nobody is using the data. */
export async function restoreVerb(args: readonly string[]): Promise<number> {
  const flags = await readDataFlags(args);
  if (!flags.ok) return complain(flags);
  const { file, named } = flags.value;
  if (named === undefined) return askWhich(file);
  const done = restore(file, named, new Date());
  if (!done.ok) return complain(done, 1);
  const { from, aside, bytes, rows } = done.value;
  tell(`Restored ${file} from ${from}: ${bytesWords(bytes)}, ${many(rows, 'row', 'rows')}, sound.`);
  if (aside) tell(`What was there before is kept as ${aside}.`);
  tell('What was kept or forgotten since that backup is not in it.');
  return 0;
}

/** Restoring is never guessed: what was kept since the last backup would go. */
function askWhich(database: string): number {
  const [last] = backupsIn(backupsBeside(database));
  const how = last
    ? `The last one: npm run restore -- ${last}`
    : `Name its file. ${existsSync(database) ? 'There is none beside the database yet: npm run backup makes one.' : ''}`;
  process.stderr.write(`Restore which backup? ${how.trim()}\n`);
  return 2;
}
