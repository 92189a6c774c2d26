import { execFileSync } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { begin, documents, expectNoTrace, newFolder, type Run, run } from './program.ts';

const newFile = () => join(newFolder(), 'data', 'guild.sqlite');
const data = (file: string) => ['--data', file] as const;

describe.concurrent('one bot on the data', () => {
  test('a second one is told who the first is, and asks, backup and check work beside it', async () => {
    const file = newFile();
    const bot = begin(['start', ...data(file)]);
    await bot.says('"ready"', 'err');
    const second = await run(['start', ...data(file)], { input: '/help\n' });
    expect(second).toMatchObject({ status: 2, out: '' });
    expect(second.err).toContain(`A bot is running on ${file} already (process ${bot.child.pid}`);
    expectNoTrace(second);
    expect((await run(['ask', ...data(file), '/me set seam:3/8in'])).status).toBe(0);
    bot.child.stdin.write('/cut hexagon 1in\n');
    await bot.says('your 3/8 in seam');
    const check = await run(['check', ...data(file)]);
    expect(check.status).toBe(0);
    expect(check.out).toMatch(/A bot is running since .*\nAll is well\.\n$/);
    const backup = await run(['backup', ...data(file)]);
    expect(backup).toMatchObject({ status: 0, err: '' });
    const [copy = ''] = readdirSync(join(file, '..', 'backups'));
    const restore = await run(['restore', ...data(file), join(file, '..', 'backups', copy)]);
    expect(restore).toMatchObject({ status: 1, out: '' });
    expect(restore.err).toContain('Stop it first');
    bot.child.kill('SIGKILL');
    await bot.ended;
    const after = await run(['start', ...data(file)], { input: '/me\n' });
    expect(after.status).toBe(0);
    expect(after.out).toContain('3/8 in');
  });
});

describe.concurrent('backup, restore, check', () => {
  test('what was kept comes back; what was there meanwhile is kept aside', async () => {
    const file = newFile();
    await run(['ask', ...data(file), '/me set seam:3/8in']);
    const copy = join(newFolder(), 'copy.sqlite');
    expect((await run(['backup', ...data(file), copy])).out).toMatch(
      /^Backed up to .*read back and sound\.\n$/,
    );
    await run(['ask', ...data(file), '/me set seam:1/2in']);
    const restored = await run(['restore', ...data(file), copy]);
    expect(restored).toMatchObject({ status: 0, err: '' });
    expect((await run(['ask', ...data(file), '/me'])).out).toContain('3/8 in');
    const aside = readdirSync(join(file, '..')).find((name) => name.startsWith('before-restore'));
    expect((await run(['ask', ...data(join(file, '..', aside ?? '')), '/me'])).out).toContain('1/2 in');
  });

  test('restoring nothing in particular is asked back, with the line to type', async () => {
    const file = newFile();
    await run(['ask', ...data(file), '/me set seam:3/8in']);
    await run(['backup', ...data(file)]);
    const asked = await run(['restore', ...data(file)]);
    expect(asked).toMatchObject({ status: 2, out: '' });
    expect(asked.err).toMatch(/^Restore which backup\? The last one: npm run restore -- \S+\.sqlite\n$/);
  });

  test('a damaged database is found by the check and by the backup, in a sentence', async () => {
    const file = newFile();
    await run(['ask', ...data(file), '/me set seam:3/8in']);
    const database = new Database(file);
    database.unsafeMode().exec('PRAGMA writable_schema = ON');
    database.exec("UPDATE sqlite_schema SET rootpage = 99999 WHERE name = 'defaults'");
    database.close();
    const check = await run(['check', ...data(file)]);
    expect(check.status).toBe(1);
    expect(check.out).toMatch(
      /is damaged\. Put it aside and restore the last backup\.\n1 thing to mend\.\n$/,
    );
    const backup = await run(['backup', ...data(file)]);
    expect(backup).toMatchObject({ status: 1, out: '' });
    expect(backup.err).toContain('is damaged');
    expectNoTrace(backup);
  });

  test('settings that cannot be read, and secrets that are not there, are told by the check', async () => {
    const folder = newFolder();
    const settings = join(folder, 'config.json');
    writeFileSync(settings, '{"dat":"x"}');
    expect(await run(['check', '--config', settings])).toMatchObject({ status: 2 });
    writeFileSync(settings, '{"discord":{"token":{"env":"NO_SUCH_TOKEN"}}}');
    const check = await run(['check', '--config', settings]);
    expect(check.status).toBe(1);
    expect(check.out).toContain('NO_SUCH_TOKEN');
  });
});

/** A log and an offer in turn, each with its number. */
const EVENTS = [
  { ask: '/challenge open name:Spring counting:rosette rounds:1 first:2026-12-01', event: 'first1' },
  { ask: '/swap open name:Stash first:2026-12-01', event: 'first2' },
  ...Array.from({ length: 900 }, (_, n) => ({
    ask: n % 2 ? `/log 1 note:n${n} ${'x'.repeat(150)}` : `/swap offer 1 fat quarter n${n}`,
    as: `m${Math.floor(n / 40)}`,
    event: `e${n}`,
  })),
];

/** The program in a shell line of its own, with a folder that the line has made into what it should be. */
const shell = (line: string): readonly string[] => ['sh', '-c', line, 'sh'];

/** How a disk of its own is made here: as root, or as the root of a small world; undefined where neither is allowed. */
const OWN_DISK = [
  ['unshare', '-m'],
  ['unshare', '-rm'],
].find(canMount);

const onDisk = (folder: string, line: string): readonly string[] => [
  ...(OWN_DISK ?? []),
  ...shell(`mount -t tmpfs -o size=900k none '${folder}' && ${line}`),
];

/** Ways to have no room left: a disk that is full, where one can be made; files that may grow no further, everywhere. */
const NO_ROOM = [
  {
    way: 'files may grow no further',
    by: (folder: string, saved: string) =>
      shell(
        `trap '' XFSZ; (ulimit -f 1500; "$@"); status=$?; cp '${folder}'/guild* '${saved}'; exit $status`,
      ),
    member: /^I cannot reach what is kept just now\. Nothing was changed\. /,
    operator: 'The disk failed while I used',
  },
  {
    way: 'the disk is full',
    by: (folder: string, saved: string) =>
      onDisk(folder, `{ "$@"; status=$?; cp '${folder}'/guild* '${saved}'; exit $status; }`),
    member: /^I have no room left to keep anything\. Nothing was changed\. /,
    operator: 'The disk is full',
  },
].slice(0, OWN_DISK ? 2 : 1);

/** Ways to be kept from writing: by the folder's own rights, and by a disk that may only be read. */
const READ_ONLY = [
  {
    way: 'the folder',
    async prepared(folder: string): Promise<Run> {
      chmodSync(folder, 0o555);
      return rightless();
    },
  },
  {
    way: 'the disk',
    prepared: async (folder: string): Promise<Run> => ({
      by: onDisk(folder, `mount -o remount,ro '${folder}' && exec "$@"`),
    }),
  },
].slice(0, OWN_DISK ? 2 : 1);

describe.concurrent('nothing can be written', () => {
  test.each(NO_ROOM)(
    'because $way: it is said in a sentence, and nothing that was told is lost',
    async ({ by, member, operator }) => {
      const [folder, saved] = [newFolder(), newFolder()];
      const input = EVENTS.map((one) => `${JSON.stringify({ ...one, now: '2026-12-02T10:00:00Z' })}\n`);
      const ended = await run(['ask', '--json', ...data(join(folder, 'guild.sqlite')), '-'], {
        input: input.join(''),
        by: by(folder, saved),
      });
      expect(ended.status).toBe(1);
      const replies = documents(ended.out);
      expect(replies).toHaveLength(EVENTS.length);
      const refused = replies.filter(({ error }) => error !== null);
      expect(refused.length).toBeGreaterThan(0);
      for (const { error } of refused) expect(error?.message).toMatch(member);
      expect(ended.err).toContain(operator);
      const told = EVENTS.filter((_, i) => replies[i]?.error === null).map(({ event }) => event);
      expect(told.length).toBeGreaterThan(20);
      expectKept(
        join(saved, 'guild.sqlite'),
        told.filter((event) => !event.startsWith('first')),
      );
    },
    60_000,
  );

  test.each(READ_ONLY)(
    'because $way may only be read: what can be answered is, the rest is told',
    async ({ prepared }) => {
      const folder = newFolder();
      const rights = await prepared(folder);
      const file = join(folder, 'guild.sqlite');
      const asked = await run(['ask', ...data(file), '-'], {
        ...rights,
        input: '/cut hexagon 1in\n/me set seam:3/8in\n',
      });
      expect(asked.status).toBe(1);
      expect(asked.out).toContain('flat to flat');
      expect(asked.out).toMatch(/I may not write where things are kept\. Nothing was\s+changed\./);
      expect(asked.err).toContain(`I may not write in ${folder}`);
      expectNoTrace(asked);
      const start = await run(['start', ...data(file)], { ...rights, input: '/help\n' });
      expect(start).toMatchObject({ status: 2, out: '' });
      expect(start.err).toBe(
        `I may not write in ${folder}. Allow it, or name another folder as "data" in the settings.\n`,
      );
      expect(existsSync(file)).toBe(false);
    },
  );
});

/** The database is sound, and what is in it is just what was told. */
function expectKept(file: string, told: readonly string[]): void {
  const database = new Database(file);
  expect(database.pragma('integrity_check', { simple: true })).toBe('ok');
  const answered = database
    .prepare("SELECT event FROM answered WHERE event LIKE 'e%'")
    .pluck()
    .all() as string[];
  const there = [
    ...(database.prepare("SELECT note FROM challenge_lines WHERE kind = 'log'").pluck().all() as string[]),
    ...(database.prepare('SELECT typed FROM swap_entries').pluck().all() as string[]),
  ].map((words) => `e${/n(\d+)/.exec(words)?.[1]}`);
  database.close();
  expect(answered.toSorted()).toEqual(told.toSorted());
  expect(there.toSorted()).toEqual(told.toSorted());
}

/** Rights that a folder's own bind: root's to pass over them are taken away, or it is run as nobody. */
function rightless(): Run {
  if (process.getuid?.() !== 0) return {};
  const by = ['setpriv', '--bounding-set=-dac_override,-dac_read_search'];
  return runs([...by, 'true']) ? { by } : { uid: 65_534, cwd: tmpdir() };
}

function runs([command = '', ...words]: readonly string[]): boolean {
  try {
    execFileSync(command, words, { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

/** A disk of its own takes rights that not every machine gives. */
function canMount(by: readonly string[]): boolean {
  const folder = mkdtempSync(join(tmpdir(), 'honeycount-mount-'));
  const may = runs([...by, 'mount', '-t', 'tmpfs', 'none', folder]);
  rmSync(folder, { recursive: true });
  return may;
}
