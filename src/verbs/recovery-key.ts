import { newRecoveryKey } from '../platforms/matrix/recovery.ts';

/** Prints a new recovery key for the bot's Matrix account, to be kept where the settings look for it. */
export async function recoveryKey(): Promise<number> {
  process.stdout.write(`${newRecoveryKey()}\n`);
  return 0;
}
