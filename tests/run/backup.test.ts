import { spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { backUp, backupsBeside, backupsIn } from '../../src/run/backup.ts';
import { restore } from '../../src/run/restore.ts';
import { soundness } from '../../src/store/copy.ts';
import { takeIntoUse } from '../../src/store/in-use.ts';
import { storeSentence } from '../../src/store/sentences.ts';
import { steps } from '../../src/store/steps.ts';
import { afterwards, newFile, newFolder, opened } from '../store/places.ts';

const script = fileURLToPath(new URL('../store/children/child.ts', import.meta.url));
const NOW = new Date('2026-12-01T10:00:00Z');

async function kept(hours: number): Promise<string> {
  const file = newFile();
  const store = await opened(file);
  await store.defaults.set('guild', 'ada', { hours });
  await store.close();
  return file;
}

async function hoursIn(file: string): Promise<number | undefined> {
  const store = await opened(file);
  const { hours } = await store.defaults.read('guild', 'ada');
  await store.close();
  return hours;
}

function done<T>(result: { ok: true; value: T } | { ok: false; problem: object }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
}

const code = (result: ReturnType<typeof backUp> | ReturnType<typeof restore>) =>
  result.ok ? 'ok' : result.problem.code;

describe('a backup', () => {
  it('is one whole file beside the database, its owner’s alone, with what was kept', async () => {
    const file = await kept(5);
    const made = done(backUp(file, undefined, NOW));
    expect(made.file).toBe(join(dirname(file), 'backups', 'honeycount-2026-12-01T10-00-00Z.sqlite'));
    expect(statSync(made.file).mode & 0o777).toBe(0o600);
    expect(made.steps).toBe(steps.length);
    expect(readdirSync(dirname(made.file))).toEqual(['honeycount-2026-12-01T10-00-00Z.sqlite']);
    expect(await hoursIn(made.file)).toBe(5);
  });

  it('the newest is the first in the folder, and other files are none', async () => {
    const file = await kept(5);
    const first = done(backUp(file, undefined, NOW));
    const second = done(backUp(file, undefined, new Date('2027-01-01T00:00:00Z')));
    writeFileSync(join(backupsBeside(file), 'notes.txt'), '');
    expect(backupsIn(backupsBeside(file))).toEqual([second.file, first.file]);
    expect(backupsIn('/no/such/folder')).toEqual([]);
  });

  it('made while another process writes is of one moment, and the writing goes on', async () => {
    const file = await kept(0.5);
    const writer = spawn(process.execPath, [script, 'write', file], { stdio: 'pipe' });
    afterwards(() => void writer.kill('SIGKILL'));
    const lines = createInterface({ input: writer.stdout })[Symbol.asyncIterator]();
    const said = async () => Number((await lines.next()).value);
    for (let i = 0; i < 5; i++) {
      const before = await said();
      const made = done(backUp(file, join(newFolder(), 'copy.sqlite'), NOW));
      const copy = new Database(made.file, { readonly: true });
      const row = copy.prepare("SELECT settings FROM defaults WHERE member = 'ada'").get() as {
        settings: string;
      };
      const answers = copy.prepare('SELECT count(*) FROM answered').pluck().get();
      copy.close();
      const { hours, pace } = JSON.parse(row.settings) as { hours: number; pace: number };
      expect([pace, answers]).toEqual([hours, hours]);
      expect(hours).toBeGreaterThanOrEqual(before);
    }
    expect(await said()).toBeGreaterThan(0);
  });

  it('takes the place of an older one, and of no other file', async () => {
    const file = await kept(5);
    const folder = newFolder();
    const copy = join(folder, 'copy.sqlite');
    done(backUp(file, copy, NOW));
    done(backUp(file, copy, NOW));
    const letter = join(folder, 'letter.txt');
    writeFileSync(letter, 'Dear Bea, '.repeat(100));
    expect(code(backUp(file, letter, NOW))).toBe('store-not-a-database');
    expect(readFileSync(letter, 'utf8')).toContain('Dear Bea');
    expect(readdirSync(folder).sort()).toEqual(['copy.sqlite', 'letter.txt']);
  });

  it('of nothing, of a damaged database and of a stranger’s is told', async () => {
    expect(code(backUp(newFile(), undefined, NOW))).toBe('store-none');
    const foreign = join(newFolder(), 'recipes.sqlite');
    new Database(foreign).exec('CREATE TABLE recipes (name TEXT)').close();
    expect(code(backUp(foreign, undefined, NOW))).toBe('store-foreign');
    const damaged = await damagedFile();
    expect(code(backUp(damaged, undefined, NOW))).toBe('store-damaged');
    expect(backupsIn(backupsBeside(damaged))).toEqual([]);
  });
});

async function damagedFile(): Promise<string> {
  const file = await kept(5);
  const bytes = readFileSync(file);
  bytes.fill(0x7f, 5000);
  writeFileSync(file, bytes);
  return file;
}

describe('restoring', () => {
  it('brings back what was backed up, and keeps what was there aside', async () => {
    const file = await kept(5);
    const made = done(backUp(file, undefined, NOW));
    const store = await opened(file);
    await store.defaults.set('guild', 'ada', { hours: 9 });
    await store.close();
    const back = done(restore(file, made.file, NOW));
    expect(await hoursIn(file)).toBe(5);
    expect(await hoursIn(back.aside!)).toBe(9);
    expect(existsSync(made.file)).toBe(true);
  });

  it('works where nothing is there any more', async () => {
    const file = await kept(5);
    const made = done(backUp(file, join(newFolder(), 'copy.sqlite'), NOW));
    const elsewhere = newFile();
    expect(done(restore(elsewhere, made.file, NOW)).aside).toBeNull();
    expect(await hoursIn(elsewhere)).toBe(5);
  });

  it('in place of a damaged one, which is kept aside as it is', async () => {
    const damaged = await damagedFile();
    const bytes = readFileSync(damaged);
    const made = done(backUp(await kept(5), join(newFolder(), 'copy.sqlite'), NOW));
    const back = done(restore(damaged, made.file, NOW));
    expect(await hoursIn(damaged)).toBe(5);
    expect(readFileSync(back.aside!).equals(bytes)).toBe(true);
  });

  it('never reads the log that a killed program left into the new database, and keeps what was in it', async () => {
    const file = await kept(0.5);
    const made = done(backUp(file, undefined, NOW));
    const writer = spawn(process.execPath, [script, 'write', file], { stdio: 'pipe' });
    for await (const line of createInterface({ input: writer.stdout })) if (Number(line) >= 50) break;
    writer.kill('SIGKILL');
    await once(writer, 'close');
    expect(statSync(`${file}-wal`).size).toBeGreaterThan(0);
    const back = done(restore(file, made.file, NOW));
    expect(existsSync(`${file}-wal`)).toBe(false);
    expect(await hoursIn(file)).toBe(0.5);
    expect(await hoursIn(back.aside!)).toBeGreaterThanOrEqual(50);
  });

  it('is refused while a bot runs or somebody asks, and all stays as it was', async () => {
    const file = await kept(5);
    const made = done(backUp(file, undefined, NOW));
    const bot = done(takeIntoUse(file, 'bot'));
    const refused = restore(file, made.file, NOW);
    expect(code(refused)).toBe('store-bot-runs');
    if (!refused.ok) expect(storeSentence(refused.problem)).toContain('Stop it first');
    bot();
    const store = await opened(file);
    await store.defaults.set('guild', 'ada', { hours: 9 });
    await store.close();
    expect(await hoursIn(file)).toBe(9);
  });

  it.each([
    ['a letter', (file: string) => writeFileSync(file, 'Dear Bea, '.repeat(100)), 'store-not-a-database'],
    ['an empty file', (file: string) => writeFileSync(file, ''), 'store-empty'],
    [
      'a stranger’s database',
      (file: string) => void new Database(file).exec('CREATE TABLE recipes (name TEXT)').close(),
      'store-foreign',
    ],
    ['a folder', (file: string) => mkdirSync(file), 'store-is-a-folder'],
    ['nothing', () => {}, 'store-none'],
  ])('from %s is refused before anything is touched', async (_what, make, problem) => {
    const file = await kept(5);
    const before = readFileSync(file);
    const from = join(newFolder(), 'from');
    make(from);
    expect(code(restore(file, from, NOW))).toBe(problem);
    expect(readFileSync(file).equals(before)).toBe(true);
    expect(readdirSync(dirname(file)).filter((name) => name.includes('restore'))).toEqual([]);
  });

  it('from a damaged backup and from a newer program’s is refused', async () => {
    const file = await kept(5);
    expect(code(restore(file, await damagedFile(), NOW))).toBe('store-damaged');
    const newer = join(newFolder(), 'newer.sqlite');
    copyFileSync(file, newer);
    new Database(newer)
      .exec(`INSERT INTO steps VALUES (${steps.length + 1}, 'from the future', '2030-01-01')`)
      .close();
    expect(code(restore(file, newer, NOW))).toBe('store-newer');
    expect(code(restore(file, file, NOW))).toBe('store-same-file');
    expect(await hoursIn(file)).toBe(5);
  });
});

describe('soundness', () => {
  it('finds a page that was damaged, and says nothing of a sound one but its size', async () => {
    expect(done(soundness(await kept(5)))).toMatchObject({ steps: steps.length, known: steps.length });
    expect(soundness(await damagedFile())).toMatchObject({ ok: false, problem: { code: 'store-damaged' } });
  });
});
