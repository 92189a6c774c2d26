import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { decodeRecoveryKey } from 'matrix-js-sdk/lib/crypto-api/recovery-key.js';
import { afterEach, expect, test } from 'vitest';
import { BOT, PASSWORD } from '../../standin/matrix/standin.ts';
import { ADA, BEA, bodyOf, standIn, until, Voice } from './bot.ts';

const ENTRY = fileURLToPath(new URL('../../../src/entry.js', import.meta.url));
const STORE_KEY = 'a store key that nobody should read anywhere';

const folders: string[] = [];
const children: ChildProcess[] = [];
afterEach(async () => {
  for (const child of children.splice(0)) child.kill('SIGKILL');
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

function folderWith(matrix: object): string {
  const folder = mkdtempSync(join(tmpdir(), 'honeycount-process-'));
  folders.push(folder);
  writeFileSync(
    join(folder, 'config.json'),
    JSON.stringify({ data: 'data', matrix, log: { level: 'trace' } }),
  );
  return folder;
}

/** The program as its operator runs it. */
function program(verb: string, folder: string, env: Record<string, string> = {}) {
  const args = verb === 'start' ? ['start', '--config', join(folder, 'config.json')] : [verb];
  const child = spawn(process.execPath, [ENTRY, ...args], {
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  children.push(child);
  const seen = { out: '', err: '' };
  child.stdout.on('data', (part) => (seen.out += part));
  child.stderr.on('data', (part) => (seen.err += part));
  const ended = once(child, 'close').then(([status]) => status as number | null);
  return { child, seen, ended };
}

test.each([
  ['the environment', { env: 'BOT_PASSWORD' }, { env: 'BOT_STORE_KEY' }],
  ['files', { file: 'password' }, { file: 'key' }],
])(
  'secrets from %s; standard output is the log and nothing else, without a secret',
  async (_where, password, storeKey) => {
    const place = await standIn();
    const folder = folderWith({ homeserver: place.address, user: BOT, password, storeKey });
    writeFileSync(join(folder, 'password'), `${PASSWORD}\n`, { mode: 0o600 });
    writeFileSync(join(folder, 'key'), `${STORE_KEY}\n`, { mode: 0o600 });
    const bot = program('start', folder, { BOT_PASSWORD: PASSWORD, BOT_STORE_KEY: STORE_KEY });
    await until(() => bot.seen.out.includes('"ready":"matrix"'), 'it is ready', 60);
    const room = place.makeRoom({ members: [ADA, BEA] });
    expect(bodyOf(await new Voice(place, room, ADA).ask('!cut hexagon 1in'))).toMatch(/^Hexagon/);
    bot.child.kill('SIGTERM');
    expect(await bot.ended).toBe(0);
    expect(bot.seen.err).toBe('');
    const lines = bot.seen.out.split('\n').filter(Boolean);
    const told = lines.map((line) => JSON.parse(line) as { level: number; msg: string });
    expect(told.filter(({ msg }) => msg === 'the library says').length).toBeGreaterThan(20);
    // What the library says is of no account to an operator who has not asked for it: level 20 is debug.
    for (const { level, msg } of told) if (msg === 'the library says') expect(level).toBe(20);
    for (const secret of [PASSWORD, STORE_KEY, ...place.devices.keys()])
      expect(bot.seen.out).not.toContain(secret);
    expect(statSync(join(folder, 'data', 'matrix', 'session.json')).mode & 0o777).toBe(0o600);
  },
);

test('a homeserver that is not there: one sentence, and the status for “another time”', async () => {
  const folder = folderWith({
    homeserver: 'http://127.0.0.1:9',
    user: BOT,
    password: { env: 'P' },
    storeKey: { env: 'K' },
  });
  const bot = program('start', folder, { P: 'p', K: 'k' });
  expect(await bot.ended).toBe(75);
  expect(bot.seen.err).toBe('The homeserver http://127.0.0.1:9 cannot be reached. Try again later.\n');
});

test.each([
  [
    'no store key',
    { password: { env: 'P' } },
    2,
    /"matrix\.storeKey" is missing in .*a long secret that locks the keys of encrypted rooms/,
  ],
  [
    'a store key that is not set',
    { password: { env: 'P' }, storeKey: { env: 'NOT_SET' } },
    78,
    /does not set NOT_SET/,
  ],
  ['neither password nor token', { storeKey: { env: 'K' } }, 2, /a "password" or an "accessToken"/],
])('with %s it says what to write', async (_what, more, status, words) => {
  const folder = folderWith({ homeserver: 'http://127.0.0.1:9', user: BOT, ...more });
  const bot = program('start', folder, { P: 'p', K: 'k' });
  expect(await bot.ended).toBe(status);
  expect(bot.seen.err).toMatch(words);
  expect(bot.seen.err.split('\n')).toHaveLength(2);
  expect(existsSync(join(folder, 'data', 'matrix', 'session.json'))).toBe(false);
});

test('a new recovery key, another each time, is one that Matrix takes', async () => {
  const keys = await Promise.all(
    [1, 2].map(async () => {
      const made = program('recovery-key', '');
      expect(await made.ended).toBe(0);
      expect(made.seen.err).toBe('');
      return made.seen.out.trim();
    }),
  );
  expect(new Set(keys).size).toBe(2);
  for (const key of keys) {
    expect(key).toMatch(/^(?:\S{4} ){11}\S{4}$/);
    expect(decodeRecoveryKey(key)).toHaveLength(32);
  }
});
