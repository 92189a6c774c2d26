import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { afterwards, newFile, newFolder, opened } from './places.ts';

const script = fileURLToPath(new URL('./children/child.ts', import.meta.url));
const running: ChildProcess[] = [];
afterAll(() => running.forEach((child) => void child.kill('SIGKILL')));

function start(act: string, file: string): ChildProcess {
  const child = spawn(process.execPath, [script, act, file], { stdio: 'pipe' });
  running.push(child);
  return child;
}

async function ended(child: ChildProcess): Promise<string> {
  let out = '';
  let err = '';
  child.stdout?.on('data', (part) => (out += part));
  child.stderr?.on('data', (part) => (err += part));
  const [code] = await once(child, 'close');
  if (code !== 0) throw new Error(`ended with ${code}: ${err}`);
  return out;
}

/** What a child says, line by line as it comes. */
const linesOf = (child: ChildProcess) => createInterface({ input: child.stdout! });

async function said(child: ChildProcess, atLeast: number): Promise<number> {
  let last = 0;
  for await (const line of linesOf(child)) {
    last = Number(line);
    if (last >= atLeast) break;
  }
  return last;
}

describe('several processes', () => {
  it('starting at the same moment on no database, all come up', async () => {
    const file = newFile();
    await Promise.all(Array.from({ length: 3 }, () => ended(start('start', file))));
    const store = await opened(file);
    expect(await store.answered.find('guild', 'none')).toBeUndefined();
  });

  it('two read while one writes, never half a write and never backwards', async () => {
    const file = newFile();
    await (await opened(file)).close();
    const readers = [start('read', file), start('peek', file)].map(ended);
    const writer = start('write', file);
    linesOf(writer).on('line', () => {});
    const reads = await Promise.all(readers);
    writer.kill('SIGKILL');
    expect(reads.map(Number).every((count) => count > 1)).toBe(true);
  });

  it('killed outright in the middle of writing, what was acknowledged is kept, and wholly', async () => {
    const file = newFile();
    const writer = start('write', file);
    const acknowledged = await said(writer, 150);
    writer.kill('SIGKILL');
    await once(writer, 'close');
    const store = await opened(file);
    const { hours = 0, pace } = await store.defaults.read('guild', 'ada');
    expect(hours).toBe(pace);
    expect(hours).toBeGreaterThanOrEqual(acknowledged);
    for (let i = 1; i <= hours; i++)
      expect(await store.answered.find('guild', `e${i}`)).toMatchObject({ reply: i });
    expect(await store.answered.find('guild', `e${hours + 1}`)).toBeUndefined();
  });
});

describe('what may not be used', () => {
  interface Denied {
    problem: unknown;
    sentence: string;
    peek: unknown;
  }

  let stranger: ChildProcess;
  let answers: AsyncIterator<string>;
  beforeAll(() => {
    stranger = start('stranger', '');
    answers = linesOf(stranger)[Symbol.asyncIterator]();
  });
  afterAll(() => void stranger.stdin?.end());

  /** What somebody without the rights of root meets. */
  async function asStranger(file: string): Promise<Denied> {
    stranger.stdin?.write(`${file}\n`);
    return JSON.parse((await answers.next()).value) as Denied;
  }

  /** A folder that everybody may look into, so that what stops a stranger is what is made in it. */
  function openFolder(): string {
    const folder = newFolder();
    chmodSync(folder, 0o755);
    return folder;
  }

  /** A folder with these rights, which it has until the test ends. */
  function folderWith(mode: number): string {
    const folder = join(openFolder(), 'data');
    mkdirSync(folder);
    chmodSync(folder, mode);
    afterwards(() => chmodSync(folder, 0o755));
    return folder;
  }

  it('a folder that may only be read is told in a sentence, and nothing is made in it', async () => {
    const folder = folderWith(0o555);
    const { problem, sentence, peek } = await asStranger(join(folder, 'honeycount.sqlite'));
    expect(problem).toEqual({ code: 'store-read-only', path: folder });
    expect(sentence).toBe(
      `I may not write in ${folder}. Allow it, or name another folder as "data" in the settings.`,
    );
    expect(peek).toEqual({ own: {}, guild: {}, problems: [] });
    expect(readdirSync(folder)).toEqual([]);
  });

  it('a folder that cannot be made', async () => {
    const folder = join(folderWith(0o555), 'deep', 'deeper');
    const { problem } = await asStranger(join(folder, 'honeycount.sqlite'));
    expect(problem).toEqual({ code: 'store-read-only', path: folder });
  });

  it('a folder that may not be looked into', async () => {
    const folder = folderWith(0o000);
    const file = join(folder, 'honeycount.sqlite');
    const { problem, sentence, peek } = await asStranger(file);
    expect(problem).toEqual({ code: 'store-no-access', path: folder });
    expect(sentence).toContain('may not look into');
    expect(peek).toEqual({ own: {}, guild: {}, problems: [{ code: 'store-no-access', path: file }] });
  });

  it('a database that may only be read is refused, though a peek may read it', async () => {
    const file = join(folderWith(0o777), 'honeycount.sqlite');
    const store = await opened(file);
    await store.defaults.set('guild', 'ada', { seam: 0.375 });
    await store.close();
    chmodSync(file, 0o444);
    const { problem, peek } = await asStranger(file);
    expect(problem).toEqual({ code: 'store-read-only', path: file });
    expect(peek).toEqual({ own: { seam: 0.375 }, guild: {}, problems: [] });
  });
});
