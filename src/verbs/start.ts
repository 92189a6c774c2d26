import { dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { pino } from 'pino';
import { commands } from '../../commands/index.ts';
import { openRoom } from '../chat/dispatch.ts';
import { ok, type Result, wrong } from '../measure/result.ts';
import { earlierLines, rememberIn } from '../platforms/terminal/history.ts';
import { openTerminal } from '../platforms/terminal/room.ts';
import { HOME_GUILD } from './answering.ts';
import { keepingAt } from './keeping.ts';
import { sentence } from './sentence.ts';

/** Starts the program: the terminal room, until it is left. */
export async function start(args: readonly string[]): Promise<number> {
  const flags = readStartFlags(args);
  const keeping = flags.ok ? await keepingAt({ ...flags.value, open: true }) : flags;
  if (!keeping.ok) {
    process.stderr.write(`${sentence(keeping.problem)}\n`);
    return 2;
  }
  const { settings, file, facts, close } = keeping.value;
  const log = openLog(settings.log.level, join(dirname(file), 'honeycount.log'), file === ':memory:');
  const room = openRoom({
    commands,
    facts,
    onFault: (error, reference, ask) =>
      log.error({ err: error, reference, place: ask.place }, 'an ask failed'),
  });
  const stop = () => void close().then(() => process.exit(0));
  process.once('SIGTERM', stop);
  log.info({ ready: 'terminal' }, 'the room is open');
  const history = join(dirname(file), 'history');
  await openTerminal({
    ...{ room, commands, guild: HOME_GUILD, input: process.stdin, output: process.stdout },
    history: file === ':memory:' ? [] : earlierLines(history),
    remember: file === ':memory:' || !process.stdin.isTTY ? () => {} : rememberIn(history),
  });
  await close();
  return 0;
}

/** The log: to standard error, or beside the database where that is the screen the members talk on. */
function openLog(level: string, file: string, memory: boolean) {
  const onScreen = process.stderr.isTTY && process.stdin.isTTY;
  const destination = onScreen && !memory ? { dest: file, mode: 0o600, sync: true } : { dest: 2, sync: true };
  return pino({ level: onScreen && memory ? 'silent' : level, base: null }, pino.destination(destination));
}

function readStartFlags(
  args: readonly string[],
): Result<{ data: string | undefined; config: string | undefined }> {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: { data: { type: 'string' }, config: { type: 'string' } },
    });
    return ok({ data: values.data, config: values.config });
  } catch (error) {
    return wrong('flag-unread', {
      got: error instanceof Error ? error.message.split('. ')[0] : '',
      known: ['config', 'data'],
    });
  }
}
