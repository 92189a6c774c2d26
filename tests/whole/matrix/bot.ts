import { type ChildProcess, spawn } from 'node:child_process';
import { appendFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { encodeRecoveryKey } from 'matrix-js-sdk/lib/crypto-api/recovery-key.js';
import type { Account, Reach } from './homeserver.ts';

const ENTRY = fileURLToPath(new URL('../../../src/entry.js', import.meta.url));

/** So long an ending may take, milliseconds. */
const PATIENCE = 15_000;

/** The program as its operator runs it: a process with a settings file. */
export class Bot {
  readonly folder: string;
  readonly account: Account;
  readonly output: string[] = [];
  readonly errors: string[] = [];
  readonly env: Record<string, string>;
  readonly #config: string;
  #process: ChildProcess | undefined;

  constructor({ address, folder }: Reach, account: Account, more: object = {}, level = 'debug') {
    this.account = account;
    this.folder = join(folder, `bot-${account.name}`);
    mkdirSync(this.folder);
    this.#config = join(this.folder, 'config.json');
    this.env = {
      BOT_PASSWORD: account.password,
      BOT_STORE_KEY: 'a long secret that locks the keys',
      BOT_RECOVERY_KEY: encodeRecoveryKey(new Uint8Array(32).fill(7)) ?? '',
    };
    const matrix = {
      ...{ homeserver: address, user: account.user, password: { env: 'BOT_PASSWORD' } },
      ...{
        storeKey: { env: 'BOT_STORE_KEY' },
        recoveryKey: { env: 'BOT_RECOVERY_KEY' },
        inviteFrom: ['bees.test'],
      },
      ...more,
    };
    writeFileSync(this.#config, JSON.stringify({ data: 'data', matrix, log: { level } }));
  }

  get data(): string {
    return join(this.folder, 'data');
  }

  /** The session that it keeps. */
  session(): { deviceId: string; accessToken: string } {
    return JSON.parse(readFileSync(join(this.data, 'matrix', 'session.json'), 'utf8'));
  }

  /** Starts the process; resolves when it says that it is ready, in so many milliseconds. */
  start(): Promise<number> {
    const from = performance.now();
    const child = spawn(process.execPath, [ENTRY, 'start', '--config', this.#config], {
      env: { ...process.env, ...this.env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    this.#process = child;
    const orphaned = () => child.kill('SIGKILL');
    process.once('exit', orphaned);
    child.once('exit', () => process.off('exit', orphaned));
    let rest = '';
    child.stderr.on('data', (data: Buffer) => this.errors.push(data.toString()));
    return new Promise((ready, failed) => {
      child.stdout.on('data', (data: Buffer) => {
        const lines = (rest + data.toString()).split('\n');
        rest = lines.pop() ?? '';
        this.output.push(...lines);
        appendFileSync(join(this.folder, 'bot.log'), data);
        if (lines.some((line) => line.includes('"ready":"matrix"'))) ready(performance.now() - from);
      });
      child.once('exit', (code, signal) =>
        failed(
          new Error(
            `the bot ended (${code ?? signal}): ${this.errors.join('')}${this.output.slice(-5).join('\n')}`,
          ),
        ),
      );
    });
  }

  /** Ends the process; its status, null where it was killed. It has its own ten seconds to finish what it began. */
  async end(signal: 'SIGTERM' | 'SIGKILL'): Promise<number | null> {
    const child = this.#process;
    if (!child || child.exitCode !== null || child.signalCode !== null) return child?.exitCode ?? null;
    const gone = new Promise<number | null>((done) => child.once('exit', done));
    child.kill(signal);
    const late = setTimeout(() => child.kill('SIGKILL'), PATIENCE);
    const status = await gone;
    clearTimeout(late);
    if (signal === 'SIGTERM' && status === null) throw new Error('the bot did not end when it was told to');
    return status;
  }

  /** Waits until the process ends by itself; its status. */
  async ended(): Promise<number | null> {
    const child = this.#process;
    if (!child || child.exitCode !== null) return child?.exitCode ?? null;
    return new Promise((done) => child.once('exit', done));
  }

  /** Its log lines of at least that level (info is 30). */
  logged(level = 30): { level: number; msg: string; [key: string]: unknown }[] {
    return this.output.map((line) => JSON.parse(line)).filter((line) => line.level >= level);
  }
}
