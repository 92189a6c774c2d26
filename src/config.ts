import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { ok, type Problem, type Result, wrong } from './measure/result.ts';

/** Where a secret is found. It is never written in the settings themselves. */
export type Secret = { readonly env: string } | { readonly file: string };

export type LogLevel = 'trace' | 'debug' | 'info' | 'warn' | 'error' | 'fatal' | 'silent';

export interface DiscordSettings {
  readonly token: Secret;
  /** The REST address without its version, for proxies and tests. */
  readonly api?: string | undefined;
  /** The one guild whose commands are registered, while trying things out. */
  readonly testGuild?: string | undefined;
  /** How many connections share the guilds; "auto" lets the platform say. */
  readonly shards?: number | 'auto' | undefined;
}

export interface MatrixSettings {
  readonly homeserver: string;
  readonly user: string;
  readonly password?: Secret | undefined;
  readonly accessToken?: Secret | undefined;
  /** Locks the encryption keys that are kept on disk. */
  readonly storeKey: Secret;
  readonly recoveryKey?: Secret | undefined;
  readonly prefix: string;
  /** Servers and people whose invitations are taken. */
  readonly inviteFrom: readonly string[];
}

export interface HealthSettings {
  readonly host: string;
  readonly port: number;
}

/** The settings of the program, with what was left out filled in and paths made whole. */
export interface Settings {
  /** The file they were read from; null when there is none. */
  readonly file: string | null;
  /** The folder from which the paths in them are meant. */
  readonly base: string;
  /** The folder where facts are kept. */
  readonly data: string;
  /** 'sqlite' for a file in `data`, or the address of a database server. */
  readonly store: string;
  readonly discord?: DiscordSettings | undefined;
  readonly matrix?: MatrixSettings | undefined;
  readonly health?: HealthSettings | undefined;
  readonly log: { readonly level: LogLevel };
}

export interface SettingsWanted {
  /** The file that was named on the command line. */
  readonly file?: string | undefined;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** The folder of the program, where package.json is. */
  readonly root: string;
}

/**
 * Reads the settings: the file that was named, else the one that HONEYCOUNT_CONFIG names, else config.json
 * beside package.json, else none. The schema's library is loaded only when there is a file: a single ask
 * has not the time for it.
 */
export async function readSettings({ file, env, root }: SettingsWanted): Promise<Result<Settings>> {
  const named = file ?? (env.HONEYCOUNT_CONFIG || undefined);
  const path = resolve(named ?? join(root, 'config.json'));
  if (!existsSync(path))
    return named === undefined ? ok(without(root)) : wrong('config-missing', { file: path });
  const text = textOf(path);
  if (!text.ok) return text;
  const { checkSettings } = await import('./config-schema.ts');
  const checked = checkSettings(text.value, path);
  if (!checked.ok) return checked;
  const base = dirname(path);
  return ok({ ...checked.value, file: path, base, data: resolve(base, checked.value.data) });
}

const without = (root: string): Settings => ({
  file: null,
  base: resolve(root),
  data: resolve(root, 'data'),
  store: 'sqlite',
  log: { level: 'info' },
});

function textOf(path: string): Result<string> {
  try {
    // Some editors put a mark before the first character that no reader of JSON takes.
    return ok(readFileSync(path, 'utf8').replace(/^\uFEFF/, ''));
  } catch {
    return wrong('config-unreadable', { file: path });
  }
}

/** What `openStore` opens: the database's file, or the address of a database server. */
export const storeOf = ({ data, store }: Settings): string =>
  store === 'sqlite' ? join(data, 'honeycount.sqlite') : store;

/**
 * Reads a secret when it is needed: an environment variable as it is, a file without the blanks around it.
 * What is returned is for the platform alone, never for a log; a problem names the place and not the secret.
 */
export function readSecret(secret: Secret, env: SettingsWanted['env'], base: string): Result<string> {
  if ('env' in secret) {
    const value = env[secret.env];
    return value ? ok(value) : wrong('secret-missing', { env: secret.env });
  }
  const path = resolve(base, secret.file);
  const text = textOf(path);
  const value = text.ok ? text.value.trim() : '';
  return value === '' ? wrong('secret-missing', { file: path }) : ok(value);
}

/** What the person who starts the program is told: what was wrong, where, and what to write instead. */
const sentences: Readonly<Record<string, (problem: Problem) => string>> = {
  'config-missing': ({ file }) =>
    `There are no settings at ${file}. Name a file that is there, or name none.`,
  'config-unreadable': ({ file }) => `I cannot read the settings in ${file}. Allow it, or name another file.`,
  'config-not-json': ({ file, line }) =>
    `The settings in ${file} are not JSON. Look at line ${line} and the one above for a comma, quote or bracket.`,
  'config-unknown-key': ({ file, key, known }) =>
    `I do not know "${key}" in ${file}. Known there: ${(known as readonly string[]).join(', ')}.`,
  'config-missing-key': ({ file, key, want }) => `"${key}" is missing in ${file}. It should be ${want}.`,
  'config-bad-value': ({ file, key, want }) => `"${key}" in ${file} should be ${want}.`,
  'secret-plain': ({ file, key, want }) =>
    `"${key}" in ${file} is a secret, which does not belong in the settings. Write ${want} in its place.`,
  'secret-missing': ({ env, file }) =>
    env === undefined
      ? `I find no secret in ${file}. Put it there, alone in the file.`
      : `The environment does not set ${env}, a secret that the settings name. Set it and start again.`,
};

/** The sentence for a problem of the settings, or undefined when the problem is another's. */
export const settingsSentence = (problem: Problem): string | undefined => sentences[problem.code]?.(problem);
