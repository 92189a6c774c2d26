import { dirname, join } from 'node:path';
import { pino } from 'pino';
import type { Log } from '../platforms/platform.ts';
import type { Keeping } from './keeping.ts';

/**
 * The operator's log: one JSON line an event. To standard output where the program serves platforms alone; to
 * standard error where members talk on standard output; beside the database where both are one screen.
 */
export function openLog({ settings, file }: Keeping, terminalAlone: boolean): Log {
  const terminal = terminalAlone || process.stdin.isTTY === true;
  const onScreen = process.stderr.isTTY === true && process.stdin.isTTY === true;
  if (onScreen && file === ':memory:') return pino({ level: 'silent' });
  const destination = onScreen
    ? { dest: join(dirname(file), 'honeycount.log'), mode: 0o600 }
    : { dest: terminal ? 2 : 1 };
  return pino({ level: settings.log.level, base: null }, pino.destination({ ...destination, sync: true }));
}
