import { many } from '../measure/speech.ts';
import { backUp } from '../run/backup.ts';
import { readDataFlags } from './data-flags.ts';
import { bytesWords, complain, tell } from './telling.ts';

/** Keeps a copy of the database, beside a bot that runs. */
export async function backup(args: readonly string[]): Promise<number> {
  const flags = await readDataFlags(args);
  if (!flags.ok) return complain(flags);
  const made = backUp(flags.value.file, flags.value.named, new Date());
  if (!made.ok) return complain(made, 1);
  const { file, bytes, rows } = made.value;
  tell(`Backed up to ${file}: ${bytesWords(bytes)}, ${many(rows, 'row', 'rows')}, read back and sound.`);
  return 0;
}
