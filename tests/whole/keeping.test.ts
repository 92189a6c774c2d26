import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { begin, documents, ENTRY, expectNoTrace, newFolder, run } from './program.ts';

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

describe.runIf(canMount())('a disk of its own', () => {
  /** Runs a shell line with the folder on a small disk, which nobody else sees and which is gone afterwards. */
  async function onDisk(folder: string, options: string, line: string, input: string) {
    const script = `mount -t tmpfs -o ${options} none "$0" && ${line}`;
    const child = spawn('unshare', ['-m', 'sh', '-c', script, folder, process.execPath, ENTRY], {
      env: { PATH: process.env.PATH, HOME: process.env.HOME },
      stdio: 'pipe',
    });
    const text = { out: '', err: '' };
    child.stdout.on('data', (part) => (text.out += part));
    child.stderr.on('data', (part) => (text.err += part));
    child.stdin.on('error', () => {});
    child.stdin.end(input);
    const [status] = await once(child, 'close');
    return { status: status as number, ...text };
  }

  test('when it is full says so, in a sentence, and nothing that was told is lost', async () => {
    const [disk, saved] = [newFolder(), newFolder()];
    const input = EVENTS.map((one) => `${JSON.stringify({ ...one, now: '2026-12-02T10:00:00Z' })}\n`).join(
      '',
    );
    const ended = await onDisk(
      disk,
      'size=900k',
      `"$1" "$2" ask --json --data "$0/guild.sqlite" -; status=$?; cp "$0"/guild* ${saved}; exit $status`,
      input,
    );
    expect(ended.status).toBe(1);
    const replies = documents(ended.out);
    expect(replies).toHaveLength(EVENTS.length);
    const refused = replies.filter(({ error }) => error !== null);
    expect(refused.length).toBeGreaterThan(0);
    for (const { error } of refused) {
      expect(error?.message).toMatch(/^I have no room left to keep anything\. Nothing was changed\. /);
      expect(ended.err).toContain('The disk is full');
    }
    const told = EVENTS.filter((_, i) => replies[i]?.error === null).map(({ event }) => event);
    expect(told.length).toBeGreaterThan(20);
    const database = new Database(join(saved, 'guild.sqlite'));
    expect(database.pragma('integrity_check', { simple: true })).toBe('ok');
    const kept = database
      .prepare("SELECT event FROM answered WHERE event LIKE 'e%'")
      .pluck()
      .all() as string[];
    const there = [
      ...(database.prepare("SELECT note FROM challenge_lines WHERE kind = 'log'").pluck().all() as string[]),
      ...(database.prepare('SELECT typed FROM swap_entries').pluck().all() as string[]),
    ].map((words) => `e${/n(\d+)/.exec(words)?.[1]}`);
    database.close();
    const expected = told.filter((event) => !event.startsWith('first')).toSorted();
    expect(kept.toSorted()).toEqual(expected);
    expect(there.toSorted()).toEqual(expected);
  }, 60_000);

  test('that may only be read: what can be answered is, the rest is told', async () => {
    const disk = newFolder();
    const line = 'mount -o remount,ro "$0" && "$1" "$2" ask --data "$0/guild.sqlite" -';
    const asked = await onDisk(disk, 'size=900k', line, '/cut hexagon 1in\n/me set seam:3/8in\n');
    expect(asked.status).toBe(1);
    expect(asked.out).toContain('flat to flat');
    expect(asked.out).toMatch(/I may not write where things are kept\. Nothing was\s+changed\./);
    expect(asked.err).toContain(`I may not write in ${disk}`);
    const start = await onDisk(disk, 'size=900k', line.replace(/ask (.*) -$/, 'start $1'), '/help\n');
    expect(start).toMatchObject({ status: 2, out: '' });
    expect(start.err).toBe(
      `I may not write in ${disk}. Allow it, or name another folder as "data" in the settings.\n`,
    );
  });
});

test.skipIf(process.getuid?.() === 0)('a folder that may only be read is told in a sentence', async () => {
  const folder = join(newFolder(), 'data');
  mkdirSync(folder);
  chmodSync(folder, 0o555);
  const ended = await run(['ask', ...data(join(folder, 'guild.sqlite')), '/me set seam:3/8in']);
  expect(ended.status).toBe(1);
  expect(ended.out).toContain('I may not write where things are kept.');
  expect(existsSync(join(folder, 'guild.sqlite'))).toBe(false);
});

/** A disk of its own takes rights that not every machine gives. */
function canMount(): boolean {
  const folder = mkdtempSync(join(tmpdir(), 'honeycount-mount-'));
  try {
    execFileSync('unshare', ['-m', 'mount', '-t', 'tmpfs', 'none', folder], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  } finally {
    rmSync(folder, { recursive: true });
  }
}
