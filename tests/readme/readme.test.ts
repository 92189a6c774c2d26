import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { examplesIn, madeTrue } from './made.ts';

const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');

test('the README shows ten asks or more', () => {
  expect(examplesIn(readme).length).toBeGreaterThanOrEqual(10);
});

test('every reply and the table of commands in the README are what the program says today', async () => {
  expect(await madeTrue(readme)).toBe(readme);
});

test('no example in the README is a mistake', () => {
  expect(readme).not.toContain('\nNot yet\n');
});

test('the README names both commands that a fresh machine needs', () => {
  expect(readme).toContain('npm ci && npm start');
  expect(readme).toContain('npm cit');
});
