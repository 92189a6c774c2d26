import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { ADA } from '../standin/discord/events.ts';
import { DiscordStandIn, TOKEN } from '../standin/discord/standin.ts';
import { middle } from './measure.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const ASKS = 400;
const AT_ONCE = 16;
const ROUNDS = 5;

interface Bot {
  readonly standIn: DiscordStandIn;
  readonly child: ChildProcess;
}

/** Interactions answered per second and memory held, beside the least bot on the same library, turn by turn. */
export async function benchDiscord(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'honeycount-bench-'));
  const ours = await start((standIn) => {
    const config = join(folder, 'config.json');
    writeFileSync(
      config,
      JSON.stringify({ data: folder, discord: { token: { env: 'TOKEN' }, api: standIn.api } }),
    );
    return ['src/entry.js', 'start', '--config', config];
  });
  const pong = await start(() => ['tests/bench/pong-bot.js']);
  const [rates, ratios]: [number[], number[]] = [[], []];
  await answered(ours);
  await answered(pong);
  for (let round = 0; round < ROUNDS; round++) {
    const mine = await answered(ours);
    const theirs = await answered(pong);
    rates.push(mine);
    ratios.push(mine / theirs);
  }
  const memory = rss(ours.child) / rss(pong.child);
  console.log('\nDiscord: /cut answered through the stand-in, beside a bot that says pong');
  console.log(
    `${middle(rates).toFixed(0)} a second, x ${middle(ratios).toFixed(2)} of pong's (at least x 0.8)`,
  );
  console.log(
    `${(rss(ours.child) / 1024).toFixed(0)} MiB held, x ${memory.toFixed(2)} of pong's (at most x 1.5)`,
  );
  for (const { child, standIn } of [ours, pong]) {
    child.kill('SIGTERM');
    await standIn.close();
  }
  rmSync(folder, { recursive: true, force: true });
}

async function start(args: (standIn: DiscordStandIn) => string[]): Promise<Bot> {
  const standIn = await DiscordStandIn.open();
  const env = { ...process.env, TOKEN, API: standIn.api };
  const child = spawn(process.execPath, args(standIn), {
    cwd: ROOT,
    env,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  for await (const line of createInterface({ input: child.stdout })) if (line.includes('"ready"')) break;
  return { standIn, child };
}

/** Asks a second, so many in flight at a time. */
async function answered({ standIn }: Bot): Promise<number> {
  const from = performance.now();
  let left = ASKS;
  const one = async () => {
    while (left-- > 0)
      await standIn.deliver({
        who: ADA,
        does: 'slash',
        name: 'cut',
        options: { shape: 'hexagon', size: '1in' },
      });
  };
  await Promise.all(Array.from({ length: AT_ONCE }, one));
  return (ASKS / (performance.now() - from)) * 1000;
}

/** Resident memory in KiB, as the kernel tells it. */
function rss({ pid }: ChildProcess): number {
  return Number(/^VmRSS:\s+(\d+)/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]);
}
