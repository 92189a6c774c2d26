import { z } from 'zod';
import { lineOfMistake } from './config-json.ts';
import { ok, type Result, wrong } from './measure/result.ts';

/*
 * The schema of the settings. Each value says, as the end of "it should be ...", what to write: the same
 * words whatever is wrong with what was written.
 */

const text = (pattern: RegExp, want: string) => z.string({ error: want }).regex(pattern, { error: want });
const address = (want: string) => z.url({ protocol: /^https?$/, error: want });
const group = <Shape extends z.ZodRawShape>(shape: Shape) =>
  z.strictObject(shape, { error: 'a group of settings in { }' });

const SECRET_WANT = '{ "env": "NAME" } or { "file": "PATH" }';
const PORT_WANT = 'a port, a whole number from 0 to 65535';

/** A secret; `what` goes on after how it is written. */
const secretThat = (what: string) =>
  z.union(
    [
      z.strictObject({ env: text(/\S/, 'the name of an environment variable') }),
      z.strictObject({ file: text(/\S/, 'the path of a file') }),
    ],
    { error: `${SECRET_WANT}${what}` },
  );
const secret = secretThat('');

const discord = group({
  token: secret,
  api: address('an address such as "https://discord.com/api"').optional(),
  testGuild: text(/^\d+$/, "a guild's number in quotes").optional(),
  shards: z
    .union([z.literal('auto'), z.int().min(1).max(1000)], { error: '"auto" or a number of shards' })
    .optional(),
});

const matrix = group({
  homeserver: address('an address such as "https://matrix.example.org"'),
  user: text(/^@[^\s:]+:\S+$/, 'a user such as "@bee:example.org"'),
  password: secret.optional(),
  accessToken: secret.optional(),
  storeKey: secretThat(', a long secret that locks the keys of encrypted rooms on the disk'),
  recoveryKey: secret.optional(),
  prefix: text(/^\S{1,8}$/, 'up to eight signs without a blank, such as "!"').default('!'),
  inviteFrom: z
    .array(text(/^\S+$/, 'a server or a user, such as "example.org" or "@ada:example.org"'), {
      error: 'a list such as ["example.org", "@ada:example.org"]',
    })
    .default([]),
}).refine(({ password, accessToken }) => password ?? accessToken, {
  error: 'a group with a "password" or an "accessToken"',
});

const health = group({
  host: text(/^\S+$/, 'an address such as "127.0.0.1"').default('127.0.0.1'),
  port: z
    .int({ error: PORT_WANT })
    .min(0, { error: PORT_WANT })
    .max(65_535, { error: PORT_WANT })
    .default(9470),
});

const LEVELS = ['trace', 'debug', 'info', 'warn', 'error', 'fatal', 'silent'] as const;
const log = group({ level: z.enum(LEVELS, { error: `one of ${LEVELS.join(', ')}` }).default('info') });

const settings = group({
  data: text(/\S/, 'a folder such as "data"').default('data'),
  store: text(
    /^(sqlite$|postgres(ql)?:\/\/.)/,
    '"sqlite" or an address such as "postgres://localhost/guild"',
  ).default('sqlite'),
  discord: discord.optional(),
  matrix: matrix.optional(),
  health: health.optional(),
  log: log.default({ level: 'info' }),
});

export type CheckedSettings = z.infer<typeof settings>;

/** Checks the text of a settings file. The first thing that is wrong is told; unknown names come first. */
export function checkSettings(text: string, file: string): Result<CheckedSettings> {
  const given = parsed(text);
  if (given === undefined) return wrong('config-not-json', { file, line: lineOfMistake(text) });
  const checked = settings.safeParse(given.value);
  if (checked.success) return ok(checked.data);
  const issues = checked.error.issues;
  const issue = issues.find(({ code }) => code === 'unrecognized_keys') ?? issues[0]!;
  return issue.code === 'unrecognized_keys'
    ? unknownKey(issue.path, issue.keys[0]!, file)
    : badValue(issue, given.value, file);
}

function parsed(text: string): { value: unknown } | undefined {
  try {
    return { value: JSON.parse(text) };
  } catch {
    return undefined;
  }
}

type Path = readonly PropertyKey[];

const keyOf = (path: Path): string => path.join('.');

/** The names known in each group, by its key; in any other place a secret is meant. */
const namesIn: Readonly<Record<string, readonly string[]>> = {
  '': Object.keys(settings.shape),
  discord: Object.keys(discord.shape),
  matrix: Object.keys(matrix.shape),
  health: Object.keys(health.shape),
  log: Object.keys(log.shape),
};

const unknownKey = (path: Path, key: string, file: string): Result<never> =>
  wrong('config-unknown-key', {
    key: keyOf([...path, key]),
    file,
    known: namesIn[keyOf(path)] ?? ['env', 'file'],
  });

function badValue({ path, message }: z.core.$ZodIssue, given: unknown, file: string): Result<never> {
  const value = path.reduce<unknown>(
    (within, name) => (within as Record<PropertyKey, unknown>)?.[name],
    given,
  );
  const code = value === undefined ? 'config-missing-key' : 'config-bad-value';
  const key = keyOf(path) || 'the whole';
  if (message.startsWith(SECRET_WANT) && typeof value === 'string')
    return wrong('secret-plain', { key, file, want: SECRET_WANT });
  return wrong(code, { key, file, want: message });
}
