import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect } from 'vitest';
import { commands as real } from '../../../commands/index.ts';
import type { CommandList } from '../../../src/chat/command.ts';
import { openRoom, type Room } from '../../../src/chat/dispatch.ts';
import type { Facts } from '../../../src/chat/facts.ts';
import type { Counted } from '../../../src/chat/watch.ts';
import { draw } from '../../../src/pictures/draw.ts';
import type { MatrixStart } from '../../../src/platforms/matrix/settings.ts';
import { startMatrix } from '../../../src/platforms/matrix/start.ts';
import type { Ended, Platform } from '../../../src/platforms/platform.ts';
import { BOT, type MatrixStandIn, PASSWORD, SERVER } from '../../standin/matrix/standin.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';

export interface Logged {
  readonly level: string;
  readonly message: string;
  readonly details: Readonly<Record<string, unknown>>;
}

export interface Running {
  readonly standIn: MatrixStandIn;
  readonly platform: Platform;
  readonly facts: Facts;
  readonly folder: string;
  readonly counts: Map<Counted, number>;
  readonly logged: Logged[];
  readonly ended: Ended[];
  stop(): Promise<void>;
}

export interface BotNeeds extends Partial<MatrixStart> {
  readonly standIn?: MatrixStandIn;
  readonly room?: Room;
  readonly commands?: CommandList;
}

/** Starts the bot at a stand-in homeserver. */
export async function startBot(
  standIn: MatrixStandIn,
  needs: Omit<BotNeeds, 'standIn'> & { folder: string },
): Promise<Running> {
  const { facts = memoryFacts(), commands = real, folder } = needs;
  const counts = new Map<Counted, number>();
  const logged: Logged[] = [];
  const ended: Ended[] = [];
  const logger = (level: string) => (details: object, message: string) =>
    void logged.push({ level, message, details: { ...details } });
  const platform = await startMatrix({
    ...{ commands, facts, draw, homeserver: standIn.address, user: BOT, password: PASSWORD },
    ...{ storeKey: 'a key of the test', prefix: '!', inviteFrom: [SERVER], now: () => new Date() },
    room: openRoom({
      commands,
      facts,
      onFault: (error) => logged.push({ level: 'fault', message: String(error), details: {} }),
    }),
    watch: { count: (what) => void counts.set(what, (counts.get(what) ?? 0) + 1), took: () => {} },
    log: { debug: logger('debug'), info: logger('info'), warn: logger('warn'), error: logger('error') },
    ended: (why) => void ended.push(why),
    ...needs,
  });
  let stopping: Promise<void> | undefined;
  const stop = () => {
    stopping ??= platform.stop();
    return stopping;
  };
  return { standIn, platform, facts, folder, counts, logged, ended, stop };
}

/** One bot for all tests of a file, started with the first that asks for it. */
export function startedBot(
  open: () => Promise<MatrixStandIn>,
  needs: Omit<BotNeeds, 'standIn' | 'folder'> = {},
): () => Promise<Running> {
  let started: Promise<Running> | undefined;
  let folder = '';
  afterAll(async () => {
    const bot = await started;
    await bot?.stop();
    await bot?.standIn.close();
    if (folder) rmSync(folder, { recursive: true, force: true });
    expect(bot?.standIn.faults).toEqual([]);
  });
  return () => {
    started ??= open().then((standIn) => {
      folder = mkdtempSync(join(tmpdir(), 'honeycount-matrix-'));
      return startBot(standIn, { ...needs, folder });
    });
    return started;
  };
}
