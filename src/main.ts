/** Every verb of the program, each loaded when it is asked for. */
const VERBS: Readonly<Record<string, () => Promise<(args: readonly string[]) => Promise<number>>>> = {
  start: async () => (await import('./verbs/start.ts')).start,
  invite: async () => (await import('./verbs/invite.ts')).invite,
  'recovery-key': async () => (await import('./verbs/recovery-key.ts')).recoveryKey,
  ask: async () => (await import('./verbs/ask.ts')).ask,
  export: async () => (await import('./verbs/export.ts')).exportBook,
  check: async () => (await import('./verbs/check.ts')).check,
  backup: async () => (await import('./verbs/backup.ts')).backup,
  restore: async () => (await import('./verbs/restore.ts')).restoreVerb,
};

/**
 * Runs one verb and gives the status that the process ends with: 0 done, 1 a fault of the program, 2 a mistake
 * in what was typed.
 */
export async function main([verb = 'start', ...args]: readonly string[]): Promise<number> {
  if (verb === 'help' || [verb, ...args].some((word) => word === '--help' || word === '-h')) {
    const { asksForHelp, helpWith } = await import('./verbs/help.ts');
    if (verb === 'help' || asksForHelp([verb, ...args])) {
      process.stdout.write(helpWith(verb === 'help' ? (args[0] ?? '') : verb));
      return 0;
    }
  }
  const load = Object.hasOwn(VERBS, verb) ? VERBS[verb] : undefined;
  if (!load) {
    process.stderr.write(`I know no ‘${verb}’. There is ${Object.keys(VERBS).join(', ')}.\n`);
    return 2;
  }
  // Whoever reads our output may have had enough of it (`| head`): that is no fault.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1));
  const run = await load();
  return run(args);
}
