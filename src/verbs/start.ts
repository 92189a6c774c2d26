import { setTimeout as after } from 'node:timers/promises';
import { commands } from '../../commands/index.ts';
import { openRoom, type Room } from '../chat/dispatch.ts';
import { guildAlone } from '../chat/facts.ts';
import type { Reply } from '../chat/reply.ts';
import type { Settings } from '../config.ts';
import type { Reminder } from '../guild/reminders.ts';
import { DrawnApart } from '../pictures/drawn-apart.ts';
import { drawnBefore } from '../pictures/drawn-before.ts';
import { CannotStart, type Ended, EXIT, type Platform, type PlatformNeeds } from '../platforms/platform.ts';
import { HOME_GUILD } from '../platforms/terminal/start.ts';
import { openHealth } from '../run/health.ts';
import { type Metrics, openMetrics } from '../run/metrics.ts';
import { startReminding } from '../run/reminding.ts';
import { whereaboutsIn } from '../run/whereabouts.ts';
import { type Keeping, keepingAt } from './keeping.ts';
import { openLog } from './log.ts';
import { PLATFORMS } from './platforms.ts';
import { sentence } from './sentence.ts';
import { readStartFlags } from './start-flags.ts';

/** How long a platform that is still starting is waited for when all is to end, milliseconds. */
const STARTING = 2000;

/** How long the process may take to end by itself once everything is closed, milliseconds. */
const LEFTOVERS = 100;

/** Starts each platform that the settings name, and the terminal room where there is one at the keyboard. */
export async function start(args: readonly string[]): Promise<number> {
  const flags = readStartFlags(args);
  const keeping = flags.ok ? await keepingAt({ ...flags.value, open: true }) : flags;
  if (!keeping.ok) {
    process.stderr.write(`${sentence(keeping.problem)}\n`);
    return 2;
  }
  return new Running(keeping.value).untilEnded();
}

/** The program while it runs: what is up, and how it ends. */
class Running {
  readonly #keeping: Keeping;
  readonly #metrics: Metrics = openMetrics();
  readonly #standing = new Map<string, boolean>();
  readonly #platforms: Platform[] = [];
  readonly #log;
  readonly #ending = Promise.withResolvers<number>();
  readonly #whereabouts;
  readonly #apart = new DrawnApart();
  readonly #draw = drawnBefore((recipe) => this.#apart.draw(recipe));

  constructor(keeping: Keeping) {
    this.#keeping = keeping;
    this.#whereabouts = whereaboutsIn(keeping.facts);
    this.#log = openLog(keeping, namedIn(keeping.settings).length === 0);
  }

  async untilEnded(): Promise<number> {
    const stop = () => this.#ending.resolve(0);
    process.once('SIGTERM', stop).once('SIGINT', stop);
    const health = await this.#health();
    const wanted = platformsFor(this.#keeping.settings);
    const starting = Promise.all(wanted.map((name) => this.#start(name))).catch((error: unknown) =>
      this.#ending.resolve(this.#cannotStart(error)),
    );
    const reminding = this.#reminding();
    const status = await this.#ending.promise;
    await reminding.stop();
    // A platform that never comes up, since whom it waits for is away, is not waited for.
    await Promise.race([starting, after(STARTING, undefined, { ref: false })]);
    await Promise.allSettled(this.#platforms.map((platform) => platform.stop()));
    this.#apart.stop();
    await health?.close();
    await this.#keeping.close();
    // All of ours is closed. The Matrix library leaves a timer of up to two minutes behind each of its requests.
    setTimeout(() => process.exit(), LEFTOVERS).unref();
    return status;
  }

  async #start(name: string): Promise<void> {
    this.#standing.set(name, false);
    const open = await PLATFORMS[name]?.();
    const platform = await open?.(this.#keeping.settings, this.#needs(name), this.#keeping.folder);
    if (!platform) return;
    this.#platforms.push(platform);
    this.#standing.set(name, true);
    this.#metrics.up(name, true);
    this.#log.info({ ready: name }, 'up');
  }

  #needs(name: string): PlatformNeeds {
    const { facts } = this.#keeping;
    const room = openRoom({
      commands,
      facts,
      onFault: (error, reference, ask) => {
        this.#metrics.count('faults_total', { platform: name });
        this.#log.error({ err: error, reference, place: ask.place }, 'an ask failed');
      },
    });
    return {
      ...{
        room: this.#listening(name, room),
        commands,
        facts,
        draw: this.#draw,
        watch: this.#metrics,
        log: this.#log,
      },
      now: () => new Date(),
      ended: (why) => {
        this.#standing.set(name, false);
        this.#metrics.up(name, false);
        this.#ending.resolve(this.#say(why));
      },
    };
  }

  /** The same room; which platform a guild is on is learned by the way. */
  #listening(name: string, room: Room): Room {
    return {
      answer: async (ask) => {
        const reply = await room.answer(ask);
        if (reply.forgets) {
          this.#whereabouts.lost(guildAlone(ask.who.id));
          return reply;
        }
        await this.#whereabouts.heard(name, ask.guild).catch((err: unknown) => {
          this.#log.warn({ err }, 'a guild’s platform was not kept');
        });
        return reply;
      },
    };
  }

  #reminding() {
    return startReminding({
      facts: this.#keeping.facts,
      now: () => new Date(),
      tell: (reminder, reply) => this.#tell(reminder, reply),
      onFault: (err) => this.#log.error({ err }, 'a reminder failed'),
    });
  }

  async #tell({ guild, place, once }: Reminder, reply: Reply): Promise<boolean> {
    const name = guild === HOME_GUILD ? 'terminal' : await this.#whereabouts.platformOf(guild);
    const platform = this.#platforms.find((one) => one.name === name && this.#standing.get(one.name));
    await platform?.tell(place, reply, once);
    return platform !== undefined;
  }

  #cannotStart(error: unknown): number {
    if (error instanceof CannotStart) return this.#say(error.ended);
    this.#log.error({ err: error }, 'could not start');
    return 1;
  }

  #say({ sentence: words, status }: Ended): number {
    if (words) process.stderr.write(`${words}\n`);
    return words ? status : 0;
  }

  async #health() {
    const { health } = this.#keeping.settings;
    if (!health) return undefined;
    try {
      return await openHealth({ ...health, metrics: this.#metrics, standing: () => this.#standing });
    } catch (error) {
      const words = `I cannot serve health at ${health.host}:${health.port}: ${error instanceof Error ? error.message : error}. Name another port in the settings.`;
      this.#ending.resolve(this.#say({ sentence: words, status: EXIT.settings }));
      return undefined;
    }
  }
}

const namedIn = ({ discord, matrix }: Settings): string[] => [
  ...(discord ? ['discord'] : []),
  ...(matrix ? ['matrix'] : []),
];

function platformsFor(settings: Settings): string[] {
  const named = namedIn(settings);
  return named.length === 0 || process.stdin.isTTY ? [...named, 'terminal'] : named;
}
