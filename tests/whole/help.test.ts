import { describe, expect, test } from 'vitest';
import { ask, run } from './program.ts';

const VERBS = ['start', 'ask', 'export', 'check', 'backup', 'restore', 'invite'];

describe.concurrent('help at the shell', () => {
  test.each(VERBS)('%s --help says what it does and names each of its flags', async (verb) => {
    const help = await run([verb, '--help']);
    expect(help).toMatchObject({ status: 0, err: '' });
    expect(help.out).toMatch(/^[A-Z].*\.\n\n {2}npm /);
    for (const line of help.out.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
    const named = [...help.out.matchAll(/^ {2}(--\w+)/gm)].map(([, flag]) => flag);
    // What the verb itself knows, as it says when it is given another.
    const { err } = await run([verb, '--no-such-flag']);
    const known = [...(err.split('There is ')[1] ?? '').matchAll(/--\w+/g)].map(([flag]) => flag);
    expect(named.toSorted()).toEqual(known.toSorted());
    expect(named.length).toBeGreaterThan(1);
  });

  test.each([['--help'], ['-h'], ['help']])('%s names every verb', async (asked) => {
    const { out, status } = await run([asked]);
    expect(status).toBe(0);
    for (const verb of VERBS) expect(out).toMatch(new RegExp(`^ {2}${verb} +\\w`, 'm'));
    expect((await run(['help', 'backup'])).out).toBe((await run(['backup', '-h'])).out);
  });

  test('words of an ask are no flag', async () => {
    const { out } = await ask('--help');
    expect(out).not.toContain('npm run');
  });
});
