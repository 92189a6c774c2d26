import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { sizeOfPng } from './drawn.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'honeycount-pictures-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** The program as a shell runs it. */
function ask(args: readonly string[], input = ''): string {
  const done = spawnSync(process.execPath, ['src/entry.js', 'ask', '--data', ':memory:', ...args], {
    cwd: ROOT,
    encoding: 'utf8',
    input,
  });
  expect(done.stderr).toBe('');
  expect(done.status).toBe(0);
  return done.stdout;
}

interface Document {
  readonly pictures: readonly { readonly name: string; readonly alt: string; readonly file: string | null }[];
}

const documents = (out: string): Document[] =>
  out
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Document);

test('--pictures writes each reply’s files, none over another, and the document names them', () => {
  const into = join(folder, 'new', 'folder');
  const asks = [
    '/cut hexagon 1in',
    '/cut hexagon 1in corners:blunt',
    '/cut hexagon 1in',
    '/template hexagon 1in',
  ];
  const replies = documents(ask(['--json', '--pictures', into, '-'], asks.join('\n')));
  const files = replies.map(({ pictures }) => pictures[0]!.file!);
  expect(files.every((file) => file.startsWith(into) && existsSync(file))).toBe(true);
  // The third ask is the first one again: the same picture, the same file.
  expect(new Set(files).size).toBe(3);
  expect(files[2]).toBe(files[0]);
  expect(readFileSync(files[0]!).equals(readFileSync(files[1]!))).toBe(false);
  expect(sizeOfPng(readFileSync(files[0]!)).width).toBe(1200);
  expect(readFileSync(files[3]!).toString('latin1', 0, 5)).toBe('%PDF-');
  expect(readdirSync(into).every((name) => /^[a-z0-9.-]+\.(?:png|pdf)$/.test(name))).toBe(true);
});

test('the terminal says where a picture is, in words that would do without it', () => {
  const out = ask(['--pictures', join(folder, 'shell'), '/count rosette rounds:2']).replaceAll('\n', ' ');
  expect(out).toContain(`Picture ${join(folder, 'shell', 'rosette-2-rounds-1-in-side.png')}:`);
  expect(out).toContain('round 1: 6, round 2: 12; 19 patches, 8.66 x 8 in.');
});

test('without --pictures nothing is written, and a file that is wanted says how to have it', () => {
  const [{ pictures }] = documents(ask(['--json', '/cut hexagon 1in'])) as [Document];
  expect(pictures).toHaveLength(1);
  expect(pictures[0]!.file).toBeNull();
  expect(ask(['/template hexagon 1in']).replaceAll('\n', ' ')).toContain(
    '.pdf: ask with --pictures and a folder',
  );
  expect(ask(['/cut hexagon 1in'])).not.toContain('png');
});

test('in the terminal room /pictures draws the last answer', () => {
  const data = join(folder, 'room');
  const settings = join(folder, 'config.json');
  writeFileSync(settings, JSON.stringify({ data }));
  const done = spawnSync(process.execPath, ['src/entry.js', 'start', '--config', settings], {
    cwd: ROOT,
    encoding: 'utf8',
    input: '/pictures\n/count star side:2\n/pictures\n',
  });
  expect(done.stdout).toContain('There is nothing to draw');
  expect(readdirSync(join(data, 'pictures'))).toEqual(['star-2-a-side-1-in-diamonds.png']);
});

/** Which of the program's native libraries a process has loaded after an ask. */
function loaded(extra: string): string {
  const program = `
    const { commands } = await import('./commands/index.ts');
    const { openRoom } = await import('./src/chat/dispatch.ts');
    const facts = { defaults: { both: async () => ({ own: {}, guild: {} }) } };
    const room = openRoom({ commands, facts, onFault: (error) => { throw error; } });
    const who = { id: 'a', name: 'Ada', organiser: false };
    const reply = await room.answer({ who, guild: 'g', place: 'p', event: null, words: '/cut hexagon 1in', now: new Date(0) });
    ${extra}
    console.log(reply.pictures.length, process.report.getReport().sharedObjects.join(' '));`;
  const done = spawnSync(process.execPath, ['--input-type=module', '-e', program], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  expect(done.stderr).toBe('');
  return done.stdout;
}

test('a picture that nobody looks at costs nothing: the renderer is not even loaded', () => {
  expect(loaded('')).toMatch(/^1 /);
  expect(loaded('')).not.toContain('resvg');
  expect(loaded("await (await import('./src/pictures/draw.ts')).draw(reply.pictures[0].of);")).toContain(
    'resvg',
  );
});
