import { existsSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { begin, expectNoTrace, newFolder, run } from './program.ts';

describe.concurrent('started with no terminal on standard input', () => {
  test('reads one ask a line, prints each reply, ends with 0', async () => {
    const file = join(newFolder(), 'guild.sqlite');
    const ended = await run(['start', '--data', file], {
      input:
        '/cut hexagon 1 1/2in\n\n/nosuch\n/count rosette rounds:3\nhow many 1 inch hexagons from a fat quarter?',
    });
    expect(ended.status).toBe(0);
    expect(ended.out).toMatch(/^Hexagon, 1 1\/2 in side\n/);
    const order = ['3 1/8 in', 'nosuch', '37 hexagons', 'At least 77'].map((words) =>
      ended.out.indexOf(words),
    );
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(order).not.toContain(-1);
    expect(ended.out).not.toContain('\u001b');
    expectNoTrace(ended);
  });

  test('nothing to read is no fault', async () => {
    expect(await run(['start', '--data', ':memory:'])).toMatchObject({ status: 0, out: '' });
  });

  test('with no verb at all it starts', async () => {
    const settings = join(newFolder(), 'config.json');
    writeFileSync(settings, '{}');
    const ended = await run([], { input: '/help\n', env: { HONEYCOUNT_CONFIG: settings } });
    expect(ended.status).toBe(0);
    expect(ended.out).toContain('/yardage');
  });

  test('makes the database on first start, for its owner alone, and keeps what is set', async () => {
    const folder = newFolder();
    const settings = join(folder, 'config.json');
    writeFileSync(settings, '{"data":"facts/of/the/guild"}');
    const first = await run(['start', '--config', settings], {
      input: '/me set seam:3/8in\n/as Ada\n/cut hexagon 1in\n',
    });
    expect(first.status).toBe(0);
    expect(first.out).toContain('1/4 in seam');
    const file = join(folder, 'facts/of/the/guild/honeycount.sqlite');
    expect(existsSync(file)).toBe(true);
    expect(statSync(file).mode & 0o077).toBe(0);
    expect((await run(['start', '--config', settings], { input: '/cut hexagon 1in\n' })).out).toContain(
      'your 3/8 in seam',
    );
    expect((await run(['ask', '--config', settings, '/me'])).out).toContain('3/8 in');
  });

  test('says on standard error, in one JSON line, that the room is ready', async () => {
    const ended = await run(['start', '--data', ':memory:'], { input: '/help\n' });
    const lines = ended.err
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(lines).toContainEqual(expect.objectContaining({ ready: 'terminal' }));
  });

  test.each(['SIGTERM', 'SIGINT'] as const)('%s stops it cleanly, with 0', async (signal) => {
    const file = join(newFolder(), 'guild.sqlite');
    const { child, ended, says } = begin(['start', '--data', file]);
    child.stdin.write('/me set seam:3/8in\n');
    await says('Kept for you');
    child.kill(signal);
    const end = await ended;
    expect(end).toMatchObject({ status: 0, signal: null });
    expect(end.err.trim().split('\n')).toHaveLength(1);
    expectNoTrace(end);
    // Closed, not dropped: no log of writes is left beside it.
    expect(existsSync(`${file}-wal`)).toBe(false);
    expect((await run(['ask', '--data', file, '/me'])).out).toContain('3/8 in');
  });

  test('killed in the middle: what was said to be kept is kept', async () => {
    const file = join(newFolder(), 'guild.sqlite');
    const { child, ended, says } = begin(['start', '--data', file]);
    child.stdin.write('/me set seam:3/8in\n');
    await says('Kept for you');
    child.kill('SIGKILL');
    await ended;
    expect((await run(['start', '--data', file], { input: '/cut hexagon 1in\n' })).out).toContain(
      'your 3/8 in seam',
    );
  });

  test('members take turns, and choices can be answered by their number', async () => {
    const ended = await run(['start', '--data', ':memory:'], {
      input:
        '/as Ada\n/cut hexagon 4in\n2\n/guild set width:40in\n/as Olga organiser\n/guild set width:40in\n',
    });
    expect(ended.out).toContain('Ada is at the keyboard');
    expect(ended.out).toContain('Hexagon, 4 in flat to flat');
    expect(ended.out).toMatch(/organisers[\s\S]*Olga[\s\S]*Kept for the guild/);
  });

  test('a reader who has had enough is no fault', async () => {
    const { child, ended } = begin(['start', '--data', ':memory:']);
    child.stdin.write('/help\n'.repeat(500));
    child.stdout.once('data', () => child.stdout.destroy());
    child.stdin.end();
    const end = await ended;
    expect(end.status).toBe(0);
    expectNoTrace(end);
  });

  test('an ask beside it, on the same database, sees and keeps', async () => {
    const file = join(newFolder(), 'guild.sqlite');
    const { child, ended, says } = begin(['start', '--data', file]);
    child.stdin.write('/me set seam:3/8in\n');
    await says('Kept for you');
    expect((await run(['ask', '--data', file, '/me'])).out).toContain('3/8 in');
    expect((await run(['ask', '--data', file, '/me set seam:1/2in'])).status).toBe(0);
    child.stdin.end('/cut hexagon 1in\n');
    expect((await ended).out).toContain('your 1/2 in seam');
  });

  test('a database that cannot be used: one sentence, status 2', async () => {
    const folder = newFolder();
    mkdirSync(join(folder, 'guild.sqlite'));
    const ended = await run(['start', '--data', join(folder, 'guild.sqlite')]);
    expect(ended).toMatchObject({ status: 2, out: '' });
    expect(ended.err).toContain('is a folder');
    expectNoTrace(ended);
  });
});
