import { format } from 'node:util';
import type { Log } from '../platform.ts';

type Say = (...words: unknown[]) => void;

/** A logger as the library wants it. */
export interface LibraryLogger {
  trace: Say;
  debug: Say;
  info: Say;
  warn: Say;
  error: Say;
  getChild(name: string): LibraryLogger;
}

const LEVELS = ['trace', 'debug', 'info', 'warn', 'error'] as const;

/** Everything the library says goes to the operator's log at debug, without the secrets that are told here. */
export class Quiet {
  readonly #log: Log;
  readonly #secrets = new Set<string>();
  #restore: (() => void) | undefined;

  constructor(log: Log) {
    this.#log = log;
  }

  /** From now on these never stand in the log. */
  hide(...secrets: readonly (string | undefined)[]): void {
    for (const secret of secrets) if (secret) this.#secrets.add(secret);
  }

  readonly logger = (name = ''): LibraryLogger => ({
    ...this.#levels(name),
    getChild: (child) => this.logger(`${name}${child}`),
  });

  /** The library also writes to the console; while it runs, that is sent the same way. */
  takeConsole(): void {
    const was = { ...console };
    const levels = this.#levels('console');
    Object.assign(console, levels, { log: levels.debug });
    this.#restore = () => Object.assign(console, was);
  }

  giveConsoleBack(): void {
    this.#restore?.();
    this.#restore = undefined;
  }

  #levels(name: string): Omit<LibraryLogger, 'getChild'> {
    const say =
      (level: string): Say =>
      (...words) =>
        this.#log.debug(
          { library: name, as: level, words: this.#without(format(...words)) },
          'the library says',
        );
    return Object.fromEntries(LEVELS.map((level) => [level, say(level)])) as Omit<LibraryLogger, 'getChild'>;
  }

  #without(words: string): string {
    let clean = words;
    for (const secret of this.#secrets) clean = clean.replaceAll(secret, '…');
    return clean;
  }
}
