import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { ADA } from '../standin/discord/events.ts';
import { DiscordStandIn, type Seen, TOKEN } from '../standin/discord/standin.ts';
import { middle } from './measure.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const AT_ONCE = 16;
/** Asks until a bot is as quick as it gets. */
const WARM = 3000;
const ASKS = 500;
const ROUNDS = 7;

/** What a guild asks again and again. */
const CUTS = ['3/4in', '1in', '1 1/4in', '1 1/2in', '2in'].flatMap((size) =>
  ['hexagon', 'diamond'].map((shape) => ({ name: 'cut', options: { shape, size } })),
);
/** An answer without a picture. */
const TEXT = [{ name: 'finish', sub: 'batting', options: { quilt: '62x76in' } }];

type Asked = readonly {
  readonly name: string;
  readonly sub?: string;
  readonly options: Record<string, string | number>;
}[];

interface Bot {
  readonly standIn: DiscordStandIn;
  readonly child: ChildProcess;
}

/**
 * Interactions answered per second and memory held, beside the least bots on the same library: one that says
 * pong, and one that attaches a ready picture of the same size. Turn by turn in one run; the stand-in does not
 * hold what is sent against the schemas meanwhile, which it does in the tests.
 */
export async function benchDiscord(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'honeycount-bench-'));
  const bots: Bot[] = [];
  const begin = async (args: readonly string[], env: Record<string, string> = {}): Promise<Bot> => {
    const bot = await started(folder, args, env);
    bots.push(bot);
    return bot;
  };
  try {
    // As npm start does, but for npm; once before, so that the stripped sources are at hand as they usually are.
    const { scripts } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
      scripts: { start: string };
    };
    const start = [...scripts.start.split(' ').slice(1), '--config', join(folder, 'config.json')];
    await stopped(await begin(start));
    const ours = await begin(start);
    const picture = join(folder, 'picture.png');
    const drawn = await new Drawn(ours).largest();
    writeFileSync(picture, drawn);
    const pong = await begin(['tests/bench/pong-bot.js']);
    const withPicture = await begin(['tests/bench/picture-bot.js'], { PICTURE: picture });
    for (const [bot, asked] of [
      [ours, TEXT],
      [ours, CUTS],
      [pong, TEXT],
      [withPicture, CUTS],
    ] as const)
      await answered(bot, asked, WARM);
    const cut: Rates = { mine: [], pong: [], picture: [] };
    const text: Rates = { mine: [], pong: [], picture: [] };
    for (let round = 0; round < ROUNDS; round++) {
      cut.mine.push(await answered(ours, CUTS));
      cut.pong.push(await answered(pong, CUTS));
      cut.picture.push(await answered(withPicture, CUTS));
      text.mine.push(await answered(ours, TEXT));
      text.pong.push(await answered(pong, TEXT));
    }
    console.log('\nDiscord: answered through the stand-in, beside the least bots on the same library');
    tell('/cut with its picture', cut.mine, [
      [`a ready picture of ${(drawn.length / 1024).toFixed(0)} KiB`, cut.picture],
      ['pong', cut.pong],
    ]);
    tell('/finish batting, words alone', text.mine, [['pong', text.pong]]);
    tellMemory(ours, [
      ['pong', pong],
      ['the picture’s', withPicture],
    ]);
  } finally {
    for (const bot of bots) await stopped(bot);
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Rates {
  readonly mine: number[];
  readonly pong: number[];
  readonly picture: number[];
}

function tell(
  what: string,
  mine: readonly number[],
  besides: readonly (readonly [string, readonly number[]])[],
): void {
  const ratios = besides.map(
    ([whose, theirs]) => `x ${middle(mine.map((rate, i) => rate / (theirs[i] ?? 1))).toFixed(2)} of ${whose}`,
  );
  console.log(`${what}: ${middle(mine).toFixed(0)} a second, ${ratios.join(', ')} (pong: at least x 0.8)`);
}

function tellMemory(ours: Bot, besides: readonly (readonly [string, Bot])[]): void {
  const drawing = drawingBeside(ours);
  const held = rss(ours.child.pid);
  const ratios = besides.map(([whose, bot]) => `x ${(held / rss(bot.child.pid)).toFixed(2)} of ${whose}`);
  console.log(`held: ${mebi(held)}, ${ratios.join(', ')} (pong: at most x 1.5)`);
  console.log(
    drawing === undefined
      ? 'the process that draws has ended'
      : `beside it ${mebi(rss(drawing))} in the process that draws, which ends when it has nothing to draw`,
  );
}

/** Draws what is asked once, so that it is at hand. */
class Drawn {
  readonly #bot: Bot;

  constructor(bot: Bot) {
    this.#bot = bot;
  }

  /** The largest picture among the answers. */
  async largest(): Promise<Uint8Array> {
    let largest = new Uint8Array();
    for (const one of CUTS)
      for (const { bytes } of (await asked(this.#bot, one)).files)
        if (bytes.length > largest.length) largest = new Uint8Array(bytes);
    return largest;
  }
}

const mebi = (kibi: number): string => `${(kibi / 1024).toFixed(0)} MiB`;

async function started(folder: string, args: readonly string[], env: Record<string, string>): Promise<Bot> {
  const standIn = await DiscordStandIn.open();
  standIn.checking = false;
  const discord = { token: { env: 'TOKEN' }, api: standIn.api };
  writeFileSync(join(folder, 'config.json'), JSON.stringify({ data: folder, discord }));
  const child = spawn(process.execPath, args, {
    cwd: ROOT,
    env: { ...process.env, TOKEN, API: standIn.api, ...env },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const { promise: ready, resolve, reject } = Promise.withResolvers<void>();
  child.once('exit', (status) => reject(new Error(`${args.join(' ')} ended with ${status}`)));
  createInterface({ input: child.stdout }).on('line', (line) => line.includes('"ready"') && resolve());
  await ready;
  return { standIn, child };
}

async function stopped({ child, standIn }: Bot): Promise<void> {
  if (child.exitCode === null && child.signalCode === null) {
    const ended = new Promise((done) => child.once('exit', done));
    child.kill('SIGTERM');
    await ended;
  }
  await standIn.close();
}

const asked = ({ standIn }: Bot, one: Asked[number]): Promise<Seen> =>
  standIn.deliver({ who: ADA, does: 'slash', ...one });

/** Asks a second, so many in flight at a time. */
async function answered(bot: Bot, asks: Asked, times = ASKS): Promise<number> {
  const from = performance.now();
  let next = 0;
  const one = async () => {
    while (next < times) {
      const ask = asks[next++ % asks.length];
      if (ask) await asked(bot, ask);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, one));
  const rate = (times / (performance.now() - from)) * 1000;
  bot.standIn.forget();
  return rate;
}

/** Resident memory of a process in KiB, as the kernel tells it. */
function rss(pid: number | undefined): number {
  return Number(/^VmRSS:\s+(\d+)/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]);
}

/** The process that draws for a bot, if it is there. */
function drawingBeside({ child: { pid } }: Bot): number | undefined {
  const [child = ''] = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').split(' ');
  return child === '' ? undefined : Number(child);
}
