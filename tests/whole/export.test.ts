import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openStore } from '../../src/store/open.ts';
import { expectNoTrace, newFolder, run } from './program.ts';

const LINES = 1203;

/** A challenge of the terminal's guild with a book longer than what is read at a time. */
async function withBook(): Promise<string> {
  const file = join(newFolder(), 'guild.sqlite');
  const opened = await openStore(file);
  if (!opened.ok) throw new Error(opened.problem.code);
  const { together, close } = opened.value;
  await together(async ({ challenges }) => {
    const of = await challenges.add('terminal', {
      ...{ name: 'Spring', counting: 'rosette', rounds: 2, size: 1, goal: 200, each: null },
      ...{ first: '2026-12-01', last: null, place: 'home', who: 'everyone', plan: null },
    });
    for (let i = 1; i <= LINES; i++) {
      const member = { id: `m${i % 7}`, name: `Member ${i % 7}, "the ${i % 7}th" ✂` };
      const note = i % 100 === 0 ? '=1+1, “blue”' : '';
      const at = new Date(Date.UTC(2026, 11, 2, 0, 0, i));
      await challenges.write(of, { kind: 'log', member, by: member, day: '2026-12-02', pieces: 1, note, at });
    }
  });
  await close();
  return file;
}

describe('npm run export', () => {
  test('writes the whole book, each line once and in order, as CSV and as JSON', async () => {
    const data = await withBook();
    const csv = await run(['export', '--data', data, '--challenge', 'Spring']);
    expect(csv).toMatchObject({ status: 0, err: '' });
    const rows = csv.out.trimEnd().split('\r\n');
    expect(rows).toHaveLength(LINES + 1);
    expect(rows.slice(1).map((row) => Number(row.split(',')[0]))).toEqual(
      Array.from({ length: LINES }, (_, i) => i + 1),
    );
    expect(rows[100]).toContain(`"Member 2, ""the 2th"" ✂"`);
    expect(rows[100]).toContain(`"'=1+1, “blue”"`);

    const out = join(newFolder(), 'spring.json');
    const json = await run(['export', '--data', data, '--challenge', '1', '--format', 'json', '--out', out]);
    expect(json).toMatchObject({ status: 0, out: '', err: '' });
    const book = JSON.parse(readFileSync(out, 'utf8'));
    expect(book.challenge).toMatchObject({ name: 'Spring', total: LINES });
    expect(book.lines).toHaveLength(LINES);
    expect(book.lines[99]).toMatchObject({
      number: 100,
      name: 'Member 2, "the 2th" ✂',
      note: '=1+1, “blue”',
    });
    expect(statSync(out).mode & 0o077).toBe(0);
  });

  test('leaves nothing half written where it cannot be put', async () => {
    const data = await withBook();
    const folder = newFolder();
    const out = join(folder, 'taken');
    mkdirSync(out);
    const ended = await run(['export', '--data', data, '--challenge', 'Spring', '--out', out]);
    expect(ended.status).toBe(2);
    expect(ended.err).toContain(out);
    expectNoTrace(ended);
    expect(readdirSync(folder)).toEqual(['taken']);
    const nowhere = join(folder, 'none', 'spring.csv');
    const lost = await run(['export', '--data', data, '--challenge', 'Spring', '--out', nowhere]);
    expect(lost.status).toBe(2);
    expectNoTrace(lost);
    expect(existsSync(nowhere)).toBe(false);
  });

  test('a file that is no database is told, and left as it is', async () => {
    const data = join(newFolder(), 'letter.txt');
    writeFileSync(data, 'Dear Ada, '.repeat(100));
    const ended = await run(['export', '--data', data, '--challenge', 'Spring']);
    expect(ended.status).toBe(2);
    expect(ended.err).toContain(data);
    expectNoTrace(ended);
    expect(readFileSync(data, 'utf8')).toBe('Dear Ada, '.repeat(100));
  });

  test.each([
    [[], 'Which challenge?'],
    [['--challenge', 'Autumn'], 'It has Spring.'],
    [['--challenge', 'Spring', '--guild', 'other'], 'The guild other has no challenge.'],
    [['--challenge', 'Spring', '--format', 'pdf'], 'csv or json'],
    [['--chalenge', 'Spring'], '--challenge'],
  ])('%j is a mistake that is told', async (args, words) => {
    const ended = await run(['export', '--data', await withBook(), ...args]);
    expect(ended.status).toBe(2);
    expect(ended.err).toContain(words);
    expectNoTrace(ended);
  });
});
