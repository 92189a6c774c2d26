import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import process from 'node:process';
import { describe, expect, test } from 'vitest';
import { expectNoTrace, run } from './program.ts';

/** Node as the machine has it, where that is older than the one that the install brings. */
const OWN = ['/usr/bin/node', '/usr/local/bin/node'].find((path) => existsSync(path) && majorOf(path) < 24);

function majorOf(node: string): number {
  try {
    return Number(execFileSync(node, ['-p', 'process.versions.node.split(".")[0]'], { encoding: 'utf8' }));
  } catch {
    return Number.POSITIVE_INFINITY;
  }
}

test('these tests run on the Node that the install brings', () => {
  expect(Number(process.versions.node.split('.')[0])).toBeGreaterThanOrEqual(24);
});

describe.skipIf(!OWN)('on an older Node of the machine’s own', () => {
  test.each([['ask', '/help'], ['start'], []])('%s %s: a clear sentence, status 1', async (...args) => {
    const ended = await run(
      args.filter((arg) => arg !== undefined),
      { node: OWN ?? '' },
    );
    expect(ended).toMatchObject({ status: 1, out: '' });
    expect(ended.err).toMatch(/Node 24.*npm start/);
    expect(ended.err.trimEnd().split('\n')).toHaveLength(1);
    expectNoTrace(ended);
  });
});
