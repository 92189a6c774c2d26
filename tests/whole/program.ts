import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { afterAll, expect } from 'vitest';

/** The program as it is started, plain Node on its entry file. */
export const ENTRY = fileURLToPath(new URL('../../src/entry.js', import.meta.url));

export interface Ended {
  readonly status: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly out: string;
  readonly err: string;
}

export interface Running {
  readonly child: ChildProcessWithoutNullStreams;
  readonly ended: Promise<Ended>;
  /** Resolves when standard output (or error) has this in it. */
  says(words: string | RegExp, on?: 'out' | 'err'): Promise<string>;
}

export interface Run {
  readonly input?: string;
  readonly cwd?: string;
  readonly env?: Readonly<Record<string, string>>;
  readonly node?: string;
  /** A command that starts it, such as one that takes rights away; the program and its words follow. */
  readonly by?: readonly string[];
  /** Whose rights it has, where not those of whoever runs the tests. */
  readonly uid?: number;
}

const started: ChildProcessWithoutNullStreams[] = [];
const folders: string[] = [];

afterAll(() => {
  for (const child of started) child.kill('SIGKILL');
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

/** A folder of its own, gone after the tests. */
export function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'honeycount-'));
  folders.push(folder);
  return folder;
}

/** Starts the program; its standard input stays open. Settings of whoever runs the tests do not count. */
export function begin(
  args: readonly string[],
  { cwd, env = {}, node = process.execPath, by = [], uid }: Run = {},
): Running {
  const [command = node, ...words] = [...by, node, ENTRY, ...args];
  const child = spawn(command, words, {
    ...(uid === undefined ? {} : { uid, gid: uid }),
    cwd: cwd ?? newFolder(),
    env: { PATH: process.env.PATH, HOME: process.env.HOME, NO_COLOR: '1', ...env },
    stdio: 'pipe',
  });
  started.push(child);
  const text = { out: '', err: '' };
  child.stdout.setEncoding('utf8').on('data', (part) => (text.out += part));
  child.stderr.setEncoding('utf8').on('data', (part) => (text.err += part));
  child.stdin.on('error', () => {});
  const ended = new Promise<Ended>((done) =>
    child.once('close', (status, signal) => done({ status, signal, ...text })),
  );
  const says = (words: string | RegExp, on: 'out' | 'err' = 'out') =>
    new Promise<string>((done, fail) => {
      const look = () => {
        if (typeof words === 'string' ? text[on].includes(words) : words.test(text[on])) done(text[on]);
      };
      child[on === 'out' ? 'stdout' : 'stderr'].on('data', look);
      child.once('close', () => fail(new Error(`ended without saying ${words}: ${text.out}${text.err}`)));
      look();
    });
  return { child, ended, says };
}

/** Runs the program to its end. */
export function run(args: readonly string[], settings: Run = {}): Promise<Ended> {
  const { child, ended } = begin(args, settings);
  child.stdin.end(settings.input ?? '');
  return ended;
}

/** One ask in a guild that keeps nothing. */
export const ask = (words: string, flags: readonly string[] = [], settings: Run = {}): Promise<Ended> =>
  run(['ask', '--data', ':memory:', ...flags, '--', words], settings);

/** Nothing that a program says may show where in the program it went wrong. */
export function expectNoTrace({ out, err }: Ended): void {
  for (const text of [out, err]) {
    expect(text).not.toMatch(/^\s+at .+:\d+/m);
    expect(text).not.toMatch(/node:internal|Error:|\.ts:\d+/);
  }
}

/** What `--json` prints of a reply, as far as these tests look at it. */
export interface Document {
  readonly command: string;
  readonly title: string;
  readonly figures: Readonly<Record<string, { readonly value: number | string; readonly unit: string }>>;
  readonly notes: readonly string[];
  readonly choices: readonly unknown[];
  readonly pictures: readonly { readonly file: string | null }[];
  readonly error: { readonly code: string; readonly message: string } | null;
}

/** The reply documents of `--json`, one a line. */
export const documents = (out: string): Document[] =>
  out
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line));
