import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { peekDefaults } from '../../src/store/peek.ts';
import { steps } from '../../src/store/steps.ts';
import { newFile, newFolder, opened } from './places.ts';

const nothing = { own: {}, guild: {}, problems: [] };

async function kept(): Promise<string> {
  const file = newFile();
  const store = await opened(file);
  await store.defaults.set('guild', 'ada', { seam: 0.375, zone: 'Europe/Vienna' });
  await store.defaults.set('guild', '', { width: 40 });
  await store.defaults.set('other', 'ada', { seam: 0.5 });
  await store.close();
  return file;
}

function change(file: string, sql: string): void {
  mkdirSync(dirname(file), { recursive: true });
  const database = new Database(file);
  database.exec(sql);
  database.close();
}

describe('a peek at the defaults', () => {
  it("reads the asker's and her guild's", async () => {
    const file = await kept();
    expect(await peekDefaults(file, 'guild', 'ada')).toEqual({
      own: { seam: 0.375, zone: 'Europe/Vienna' },
      guild: { width: 40 },
      problems: [],
    });
    expect(await peekDefaults(file, 'guild', 'bea')).toEqual({ own: {}, guild: { width: 40 }, problems: [] });
    expect(await peekDefaults(file, 'nowhere', 'ada')).toEqual(nothing);
  });

  it('makes nothing where there is nothing', async () => {
    const file = newFile();
    expect(await peekDefaults(file, 'guild', 'ada')).toEqual(nothing);
    expect(existsSync(dirname(file))).toBe(false);
    expect(await peekDefaults(':memory:', 'guild', 'ada')).toEqual(nothing);
  });

  it('leaves the database as it was, and the store opens after it', async () => {
    const file = await kept();
    const before = readFileSync(file);
    await peekDefaults(file, 'guild', 'ada');
    expect(readFileSync(file).equals(before)).toBe(true);
    const store = await opened(file);
    expect(await store.defaults.set('guild', 'ada', { pace: 2 })).toMatchObject({ seam: 0.375, pace: 2 });
    await store.close();
    expect(readdirSync(dirname(file))).toEqual(['honeycount.sqlite', 'honeycount.sqlite.lock']);
  });

  it('an empty file, and an older database without the table, have nothing yet', async () => {
    const empty = join(newFolder(), 'empty.sqlite');
    writeFileSync(empty, '');
    expect(await peekDefaults(empty, 'guild', 'ada')).toEqual(nothing);
    const older = await kept();
    change(older, 'DROP TABLE defaults; DELETE FROM steps');
    expect(await peekDefaults(older, 'guild', 'ada')).toEqual(nothing);
  });

  it('a newer database is not read, and told', async () => {
    const file = await kept();
    change(file, `INSERT INTO steps VALUES (${steps.length + 1}, 'from the future', '2030-01-01')`);
    const newer = { code: 'store-newer', path: file, has: steps.length + 1, knows: steps.length };
    expect(await peekDefaults(file, 'guild', 'ada')).toEqual({ ...nothing, problems: [newer] });
    change(file, 'DROP TABLE defaults');
    expect(await peekDefaults(file, 'guild', 'ada')).toEqual({ ...nothing, problems: [newer] });
  });

  it.each([
    ['no database', 'only words', 'store-not-a-database'],
    ["another program's database", null, 'store-foreign'],
  ])('%s is told', async (_name, text, code) => {
    const file = join(newFolder(), 'other');
    if (text) writeFileSync(file, text);
    else change(file, 'CREATE TABLE recipes (name TEXT)');
    expect(await peekDefaults(file, 'guild', 'ada')).toEqual({
      ...nothing,
      problems: [{ code, path: file }],
    });
  });

  it('a folder is told', async () => {
    const folder = newFolder();
    expect((await peekDefaults(folder, 'guild', 'ada')).problems).toEqual([
      { code: 'store-is-a-folder', path: folder },
    ]);
  });

  it('one that another has to itself is told as busy, soon', async () => {
    const file = await kept();
    const script = `
      const D = require('better-sqlite3'); const d = new D(process.argv[1]);
      d.pragma('locking_mode = EXCLUSIVE'); d.exec('BEGIN EXCLUSIVE'); d.exec('DELETE FROM defaults');
      const peek = require('node:child_process').spawnSync(process.execPath, ['--input-type=module', '-e',
        'import { peekDefaults } from ' + JSON.stringify(process.argv[2]) +
        '; console.log(JSON.stringify(await peekDefaults(' + JSON.stringify(process.argv[1]) + ', "guild", "ada")))']);
      process.stdout.write(peek.stdout); process.stderr.write(peek.stderr);`;
    const peek = new URL('../../src/store/peek.ts', import.meta.url).href;
    const start = performance.now();
    const out = execFileSync(process.execPath, ['-e', script, file, peek], { encoding: 'utf8' });
    expect(JSON.parse(out)).toEqual({ ...nothing, problems: [{ code: 'store-busy', path: file }] });
    expect(performance.now() - start).toBeLessThan(10_000);
  });

  it('a bad row is told and left out', async () => {
    const file = await kept();
    change(file, "UPDATE defaults SET settings = '{' WHERE member = 'ada' AND guild = 'guild'");
    expect(await peekDefaults(file, 'guild', 'ada')).toEqual({
      own: {},
      guild: { width: 40 },
      problems: [{ code: 'store-bad-row', table: 'defaults', guild: 'guild', member: 'ada', names: ['*'] }],
    });
  });

  it('keeps away from a file that this process has open as a store', async () => {
    const file = newFile();
    const store = await opened(file);
    await expect(peekDefaults(file, 'guild', 'ada')).rejects.toThrow('store that has');
    await store.close();
    expect(await peekDefaults(file, 'guild', 'ada')).toEqual(nothing);
  });

  it('loads no library', async () => {
    const file = await kept();
    const script = `
      import { registerHooks } from 'node:module';
      const loaded = [];
      registerHooks({ load: (url, context, next) => { loaded.push(url); return next(url, context); } });
      const { peekDefaults } = await import(process.argv[1]);
      await peekDefaults(process.argv[2], 'guild', 'ada');
      console.log(JSON.stringify(loaded));`;
    const peek = new URL('../../src/store/peek.ts', import.meta.url).href;
    const out = execFileSync(process.execPath, ['--input-type=module', '-e', script, peek, file], {
      encoding: 'utf8',
    });
    const loaded = JSON.parse(out) as string[];
    expect(loaded).toContain(peek);
    expect(loaded.filter((url) => url.includes('node_modules'))).toEqual([]);
  });
});
