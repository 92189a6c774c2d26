import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { runningBot, takeIntoUse, type Use } from '../../src/store/in-use.ts';
import { openStore } from '../../src/store/open.ts';
import { storeSentence } from '../../src/store/sentences.ts';
import { afterwards, newFile, opened } from './places.ts';

const script = fileURLToPath(new URL('./children/child.ts', import.meta.url));

function place(): string {
  const file = newFile();
  mkdirSync(dirname(file), { recursive: true });
  return file;
}

function taken(file: string, use: Use): () => void {
  const got = takeIntoUse(file, use, 50);
  if (!got.ok) throw new Error(got.problem.code);
  afterwards(got.value);
  return got.value;
}

const refusal = (file: string, use: Use) => {
  const got = takeIntoUse(file, use, 50);
  if (!got.ok) return got.problem;
  got.value();
  throw new Error(`${use} got in`);
};

describe('who uses the data', () => {
  it('one bot at a time, told who the other is', () => {
    const file = place();
    const leave = taken(file, 'bot');
    const problem = refusal(file, 'bot');
    expect(problem).toMatchObject({ code: 'store-bot-runs', path: file, process: process.pid });
    expect(storeSentence(problem)).toContain(`process ${process.pid}`);
    leave();
    expect(runningBot(file)).toBeUndefined();
    taken(file, 'bot')();
  });

  it('any number beside a bot, and a bot beside them', () => {
    const file = place();
    taken(file, 'beside');
    taken(file, 'bot');
    taken(file, 'beside');
    expect(runningBot(file)).toMatchObject({ process: process.pid });
  });

  it('alone only when nobody else is there, and then nobody comes in', () => {
    const file = place();
    const bot = taken(file, 'bot');
    expect(refusal(file, 'alone').code).toBe('store-bot-runs');
    bot();
    const beside = taken(file, 'beside');
    expect(refusal(file, 'alone').code).toBe('store-in-use');
    beside();
    const alone = taken(file, 'alone');
    expect(refusal(file, 'beside').code).toBe('store-restoring');
    expect(refusal(file, 'bot').code).toBe('store-restoring');
    alone();
    taken(file, 'bot');
  });

  it('a store that is refused leaves nothing taken', async () => {
    const file = place();
    const bot = taken(file, 'bot');
    expect(await openStore(file, {}, 'bot')).toMatchObject({
      ok: false,
      problem: { code: 'store-bot-runs' },
    });
    await (await opened(file)).close();
    bot();
    taken(file, 'alone');
  });

  it('a bot that was killed outright is no longer there, whatever it left behind', async () => {
    const file = place();
    const child = spawn(process.execPath, [script, 'bot', file], { stdio: 'pipe' });
    await once(child.stdout, 'data');
    expect(refusal(file, 'bot')).toMatchObject({ process: child.pid });
    child.kill('SIGKILL');
    await once(child, 'close');
    expect(existsSync(`${file}.bot`)).toBe(true);
    expect(runningBot(file)).toBeUndefined();
    taken(file, 'bot');
    expect(readFileSync(`${file}.bot`, 'utf8')).toContain(String(process.pid));
  });
});
