import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isDeepStrictEqual } from 'node:util';
import { expect, test } from 'vitest';
import { type Factory, IDBFactory } from '../../../../src/platforms/matrix/kept-indexeddb/library.ts';
import { openKept } from '../../../../src/platforms/matrix/kept-indexeddb/open.ts';
import { sealWith } from '../../../../src/platforms/matrix/kept-indexeddb/seal.ts';
import { dump, numbers, opened, transact } from './script.ts';

const WRITER = fileURLToPath(new URL('children/writer.ts', import.meta.url));

/** Runs the writer until it is killed; the number of the last transaction that it was told of. */
function writeUntilKilled(file: string, seed: number, from: number, after: number): Promise<number> {
  const child = spawn(process.execPath, [WRITER, file, String(seed), String(from)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let last = from - 1;
  return new Promise((done, failed) => {
    child.stdout.on('data', (data: Buffer) => {
      for (const word of data.toString().trim().split('\n')) {
        if (word === 'open') setTimeout(() => child.kill('SIGKILL'), after);
        else last = Number(word);
      }
    });
    child.on('close', (code) => (code === null ? done(last) : failed(new Error(`ended with ${code}`))));
  });
}

test('killed at any moment: all that was told is there, and of the next transaction all or nothing', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'honeycount-kill-'));
  const file = join(folder, 'keys.sqlite');
  const seed = 42;
  const model: Factory = new IDBFactory();
  const database = await opened(model);
  let next = 0;
  for (let round = 0; round < 8; round++) {
    const last = await writeUntilKilled(file, seed, next, 20 + numbers(round)() * 150);
    while (next <= last) await transact(database, numbers(seed * 100_000 + next++));
    const kept = await openKept(file, sealWith('a secret'), (error) => expect.unreachable(String(error)));
    const there = await dump(kept.factory);
    kept.close();
    if (isDeepStrictEqual(there, await dump(model))) continue;
    // It was on the disk, but the writer was killed before it could tell.
    await transact(database, numbers(seed * 100_000 + next++));
    expect(there).toEqual(await dump(model));
  }
  expect(next).toBeGreaterThan(30);
  database.close();
  rmSync(folder, { recursive: true });
}, 60_000);
