import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readSecret, type Secret, type Settings } from '../config.ts';
import type { Problem } from '../measure/result.ts';
import { many } from '../measure/speech.ts';
import { backupsBeside, backupsIn } from '../run/backup.ts';
import { soundness } from '../store/copy.ts';
import { runningBot } from '../store/in-use.ts';
import { storeProblem } from '../store/trouble.ts';
import { readDataFlags } from './data-flags.ts';
import { ROOT } from './keeping.ts';
import { sentence } from './sentence.ts';
import { bytesWords, complain, momentWords, tell } from './telling.ts';

const UNSOUND = 1;

/**
 * Looks at settings, versions, database and backups, beside a bot that runs, and changes nothing. Ends with 0
 * when all is well, 1 when something is not, 2 when the settings cannot be read.
 */
export async function check(args: readonly string[]): Promise<number> {
  tell(`Program: Honeycount ${version()}, Node ${process.versions.node}.`);
  const flags = await readDataFlags(args);
  if (!flags.ok) return complain(flags);
  const { settings, file } = flags.value;
  tell(`Settings: ${settings.file ?? 'none, so the usual ones'}.`);
  const problems = [...secretsMissing(settings), ...lookAtDatabase(file)];
  for (const problem of problems) tell(sentence(problem));
  tell(problems.length === 0 ? 'All is well.' : `${many(problems.length, 'thing', 'things')} to mend.`);
  return problems.length === 0 ? 0 : UNSOUND;
}

function version(): string {
  const { version } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { version: string };
  return version;
}

/** Secrets that the settings name and that are not where they say. What they are is not looked at. */
function secretsMissing({ discord, matrix, base }: Settings): Problem[] {
  const named: (Secret | undefined)[] = [
    discord?.token,
    matrix?.password,
    matrix?.accessToken,
    matrix?.storeKey,
    matrix?.recoveryKey,
  ];
  return named
    .filter((secret) => secret !== undefined)
    .map((secret) => readSecret(secret, process.env, base))
    .flatMap((read) => (read.ok ? [] : [read.problem]));
}

function lookAtDatabase(file: string): Problem[] {
  const sound = soundness(file);
  // None yet is how every guild begins.
  if (!sound.ok && sound.problem.code !== 'store-none' && sound.problem.code !== 'store-empty')
    return [sound.problem];
  tell(
    sound.ok
      ? `Database: ${file}, ${bytesWords(sound.value.bytes)}, ${many(sound.value.rows, 'row', 'rows')}, sound, step ${sound.value.steps} of ${sound.value.known}.`
      : `Database: ${file}, nothing kept yet.`,
  );
  const [last] = backupsIn(backupsBeside(file));
  tell(`Last backup: ${last ?? 'none here yet; npm run backup makes one'}.`);
  return lookForBot(file);
}

function lookForBot(file: string): Problem[] {
  try {
    const bot = runningBot(file);
    const since = bot?.since ? ` since ${momentWords(bot.since)}, process ${bot.process}` : '';
    tell(bot ? `A bot is running${since}.` : 'No bot is running.');
    return [];
  } catch (thrown) {
    const problem = storeProblem(thrown, file);
    if (!problem) throw thrown;
    return [problem];
  }
}
