import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readSecret, readSettings, settingsSentence, storeOf } from '../src/config.ts';
import { lineOfMistake } from '../src/config-json.ts';
import type { Problem } from '../src/measure/result.ts';

const project = fileURLToPath(new URL('..', import.meta.url));
let root = '';

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'honeycount-config-'));
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

function write(name: string, content: unknown): string {
  const file = join(root, name);
  writeFileSync(file, typeof content === 'string' ? content : JSON.stringify(content, null, 2));
  return file;
}

async function read(content: unknown) {
  write('config.json', content);
  const settings = await readSettings({ env: {}, root });
  if (!settings.ok) throw new Error(JSON.stringify(settings.problem));
  return settings.value;
}

async function refused(content: unknown): Promise<Problem & { says: string | undefined }> {
  const file = write('config.json', content);
  const settings = await readSettings({ env: {}, root });
  if (settings.ok) throw new Error('taken');
  expect(settings.problem.file).toBe(file);
  return { ...settings.problem, says: settingsSentence(settings.problem)?.replaceAll(file, 'FILE') };
}

const token = { env: 'TOKEN' };
const matrix = {
  ...{ homeserver: 'http://127.0.0.1:8008', user: '@bee:localhost' },
  ...{ password: { file: 'pw' }, storeKey: { file: 'key' } },
};

describe('where settings are found', () => {
  it('nowhere: the defaults', async () => {
    const settings = await readSettings({ env: {}, root });
    expect(settings).toEqual({
      ok: true,
      value: { file: null, base: root, data: join(root, 'data'), store: 'sqlite', log: { level: 'info' } },
    });
  });

  it('the file that was named, before the one of HONEYCOUNT_CONFIG, before config.json', async () => {
    write('config.json', { data: 'beside' });
    const env = { HONEYCOUNT_CONFIG: write('env.json', { data: 'env' }) };
    const named = write('named.json', { data: 'named' });
    const data = async (wanted: { file?: string; env: Record<string, string> }) => {
      const settings = await readSettings({ ...wanted, root });
      return settings.ok && relative(root, settings.value.data);
    };
    expect(await data({ file: named, env })).toBe('named');
    expect(await data({ env })).toBe('env');
    expect(await data({ env: {} })).toBe('beside');
    expect(await data({ env: { HONEYCOUNT_CONFIG: '' } })).toBe('beside');
  });

  it('a file that was named but is not there is told; config.json may be missing', async () => {
    const file = join(root, 'none.json');
    const missing = { ok: false, problem: { code: 'config-missing', file } };
    expect(await readSettings({ file, env: {}, root })).toEqual(missing);
    expect(await readSettings({ env: { HONEYCOUNT_CONFIG: file }, root })).toEqual(missing);
  });

  it('a folder in its place cannot be read', async () => {
    mkdirSync(join(root, 'config.json'));
    expect(await readSettings({ env: {}, root })).toMatchObject({
      ok: false,
      problem: { code: 'config-unreadable' },
    });
  });

  it('paths are meant from the folder of the file', async () => {
    mkdirSync(join(root, 'etc'));
    const file = write('etc/config.json', { data: '../kept' });
    expect(await readSettings({ file, env: {}, root: '/elsewhere' })).toMatchObject({
      value: { file, base: join(root, 'etc'), data: join(root, 'kept') },
    });
  });

  it('without a file the schema library is not loaded', () => {
    const script = `
      import { registerHooks } from 'node:module';
      const loaded = [];
      registerHooks({ load: (url, context, next) => { loaded.push(url); return next(url, context); } });
      const { readSettings } = await import(process.argv[1]);
      const settings = await readSettings({ env: {}, root: process.argv[2] });
      console.log(JSON.stringify({ settings, libraries: loaded.filter((url) => url.includes('node_modules')) }));`;
    const config = new URL('../src/config.ts', import.meta.url).href;
    const run = () =>
      JSON.parse(
        execFileSync(process.execPath, ['--input-type=module', '-e', script, config, root], {
          encoding: 'utf8',
        }),
      ) as { settings: { ok: boolean }; libraries: string[] };
    expect(run()).toMatchObject({ settings: { ok: true }, libraries: [] });
    write('config.json', '{}');
    expect(run().libraries.some((url) => url.includes('zod'))).toBe(true);
  });
});

describe('settings that are taken', () => {
  it('none: what was left out is filled in', async () => {
    expect(await read('{}')).toMatchObject({
      store: 'sqlite',
      data: join(root, 'data'),
      log: { level: 'info' },
    });
    expect(await read({ log: {}, health: {}, matrix })).toMatchObject({
      log: { level: 'info' },
      health: { host: '127.0.0.1', port: 9470 },
      matrix: { ...matrix, prefix: '!', inviteFrom: [] },
    });
  });

  it('all, as they were written', async () => {
    const all = {
      data: 'kept',
      store: 'postgres://localhost/guild',
      discord: { token, api: 'http://127.0.0.1:4000/api', testGuild: '123' },
      matrix: {
        ...matrix,
        accessToken: token,
        storeKey: token,
        recoveryKey: token,
        prefix: '?',
        inviteFrom: ['a.b'],
      },
      health: { host: '::1', port: 0 },
      log: { level: 'debug' },
    };
    expect(await read(all)).toEqual({
      ...all,
      data: join(root, 'kept'),
      file: join(root, 'config.json'),
      base: root,
    });
  });

  it('a mark of byte order before the first character', async () => {
    expect(await read('\uFEFF{ "data": "kept" }')).toMatchObject({ data: join(root, 'kept') });
  });

  it('the example, and nothing in it is a secret', async () => {
    copyFileSync(join(project, 'config.example.json'), join(root, 'config.json'));
    const settings = await readSettings({ env: {}, root });
    expect(settings).toMatchObject({
      ok: true,
      value: { discord: { token: { env: 'DISCORD_TOKEN' } }, matrix: { user: '@bee:example.org' } },
    });
    expect(readFileSync(join(project, 'config.example.json'), 'utf8')).not.toMatch(
      /"(token|\w+Key|password)": "/,
    );
  });

  it('what the store is opened with', async () => {
    expect(storeOf(await read('{}'))).toBe(join(root, 'data', 'honeycount.sqlite'));
    expect(storeOf(await read({ store: 'postgres://localhost/guild' }))).toBe('postgres://localhost/guild');
  });
});

describe('settings that are refused', () => {
  it('an unknown name, in any group, with the names known there', async () => {
    const top = await refused({ stor: 'sqlite', log: { level: 3 } });
    expect(top).toMatchObject({ code: 'config-unknown-key', key: 'stor' });
    expect(top.known).toEqual(['data', 'store', 'discord', 'matrix', 'health', 'log']);
    expect(top.says).toBe(
      'I do not know "stor" in FILE. Known there: data, store, discord, matrix, health, log.',
    );
    expect(await refused({ discord: { tokn: token } })).toMatchObject({
      code: 'config-unknown-key',
      key: 'discord.tokn',
      known: ['token', 'api', 'testGuild', 'shards'],
    });
    expect(await refused({ discord: { token: { env: 'A', path: 'b' } } })).toMatchObject({
      code: 'config-unknown-key',
      key: 'discord.token.path',
      known: ['env', 'file'],
    });
  });

  it.each([
    ['discord.token', { discord: { token: 'S3CRET' } }],
    ['matrix.password', { matrix: { ...matrix, password: 'S3CRET' } }],
    ['matrix.accessToken', { matrix: { ...matrix, accessToken: 'S3CRET' } }],
    ['matrix.storeKey', { matrix: { ...matrix, storeKey: 'S3CRET' } }],
    ['matrix.recoveryKey', { matrix: { ...matrix, recoveryKey: 'S3CRET' } }],
  ])('a secret written out: %s, and it is not repeated', async (key, content) => {
    const problem = await refused(content);
    expect(problem).toMatchObject({ code: 'secret-plain', key });
    expect(problem.says).toContain('Write { "env": "NAME" } or { "file": "PATH" } in its place.');
    expect(JSON.stringify(problem)).not.toContain('S3CRET');
  });

  it.each([
    ['discord.token', { discord: {} }],
    ['matrix.homeserver', { matrix: { user: '@bee:localhost', password: token } }],
    ['matrix.user', { matrix: { homeserver: 'http://localhost', password: token } }],
    ['matrix.storeKey', { matrix: { homeserver: 'http://localhost', user: '@a:b', password: token } }],
  ])('%s left out', async (key, content) => {
    const problem = await refused(content);
    expect(problem).toMatchObject({ code: 'config-missing-key', key });
    expect(problem.says).toMatch(new RegExp(`^"${key}" is missing in FILE. It should be .+\\.$`));
  });

  it.each([
    ['data', { data: 5 }, 'a folder'],
    ['data', { data: ' ' }, 'a folder'],
    ['store', { store: 'mysql://localhost' }, '"sqlite" or an address'],
    ['store', { store: 'sqlite3' }, '"sqlite" or an address'],
    ['discord', { discord: 'yes' }, 'a group'],
    ['discord.token', { discord: { token: 12 } }, '{ "env"'],
    ['discord.token.env', { discord: { token: { env: '' } } }, 'the name of'],
    ['discord.api', { discord: { token, api: 'discord.com' } }, 'an address'],
    ['discord.api', { discord: { token, api: 'ftp://discord.com' } }, 'an address'],
    ['discord.testGuild', { discord: { token, testGuild: 1234567 } }, "a guild's number in quotes"],
    [
      'matrix',
      { matrix: { homeserver: 'http://localhost', user: '@bee:localhost', storeKey: token } },
      'a group with a "password"',
    ],
    ['matrix.user', { matrix: { ...matrix, user: 'bee' } }, 'a user such as'],
    ['matrix.prefix', { matrix: { ...matrix, prefix: '' } }, 'up to eight signs'],
    ['matrix.inviteFrom', { matrix: { ...matrix, inviteFrom: 'example.org' } }, 'a list'],
    ['matrix.inviteFrom.1', { matrix: { ...matrix, inviteFrom: ['a.b', 7] } }, 'a server or a user'],
    ['health.port', { health: { port: 70_000 } }, 'a port'],
    ['health.port', { health: { port: 94.5 } }, 'a port'],
    ['log.level', { log: { level: 'loud' } }, 'one of trace, debug, info'],
    ['the whole', [], 'a group'],
    ['the whole', 'null', 'a group'],
  ])('%s: %j', async (key, content, want) => {
    const problem = await refused(content);
    expect(problem).toMatchObject({ code: 'config-bad-value', key });
    expect(problem.says).toContain(`"${key}" in FILE should be ${want}`);
  });

  it.each([
    ['a comma too many', '{\n  "data": "a",\n}', 3],
    ['a comma missing', '{\n  "data": "a"\n  "store": "sqlite"\n}', 3],
    ['a remark', '// ours\n{}', 1],
    ['a bracket missing', '{\n  "log": {\n', 3],
    ['single quotes', "{\n\n  'data': 1 }", 3],
    ['nothing', '', 1],
    ['something after the end', '{}\n{}', 2],
    ['a bare word', '{ "discord": {\n "token": S3CRET } }', 2],
  ])('not JSON: %s', async (_name, content, line) => {
    const problem = await refused(content);
    expect(problem).toMatchObject({ code: 'config-not-json', line });
    expect(JSON.stringify(problem)).not.toContain('S3CRET');
  });
});

describe('the line of a mistake', () => {
  it('is where the engine sees it, whenever its message names a line', () => {
    const named = { count: 0 };
    const signs = fc.constantFrom(...'{}[],:"\\ \n1-.e+tx'.split(''), 'true', '"a"', '"b": ');
    const content = fc.tuple(
      fc.json({ maxDepth: 3 }),
      fc.array(fc.tuple(fc.nat(), fc.boolean(), signs), { maxLength: 3 }),
    );
    fc.assert(
      fc.property(content, ([json, slips]) => {
        let text = JSON.stringify(JSON.parse(json), null, 1);
        for (const [seed, replace, sign] of slips) {
          const at = seed % (text.length + 1);
          text = text.slice(0, at) + sign + text.slice(at + (replace ? 1 : 0));
        }
        const engine = lineOfEngine(text);
        if (engine === undefined) return;
        named.count++;
        expect({ text, line: lineOfMistake(text) }).toEqual({ text, line: engine });
      }),
      { numRuns: 1500 },
    );
    expect(named.count).toBeGreaterThan(100);
  });

  function lineOfEngine(text: string): number | undefined {
    try {
      JSON.parse(text);
      return undefined;
    } catch (thrown) {
      const line = /\(line (\d+) column \d+\)/.exec((thrown as Error).message)?.[1];
      return line === undefined ? undefined : Number(line);
    }
  }
});

describe('secrets', () => {
  it('from the environment as they are, from a file without the blanks around', () => {
    write('pw', '  needle and thread \n');
    expect(readSecret({ env: 'PW' }, { PW: ' a b ' }, root)).toEqual({ ok: true, value: ' a b ' });
    expect(readSecret({ file: 'pw' }, {}, root)).toEqual({ ok: true, value: 'needle and thread' });
    expect(readSecret({ file: join(root, 'pw') }, {}, '/elsewhere')).toMatchObject({ ok: true });
  });

  it('a secret that is not there is told by its place', () => {
    write('empty', '\n');
    const missing = (place: object) => ({ ok: false, problem: { code: 'secret-missing', ...place } });
    expect(readSecret({ env: 'PW' }, {}, root)).toEqual(missing({ env: 'PW' }));
    expect(readSecret({ env: 'PW' }, { PW: '' }, root)).toEqual(missing({ env: 'PW' }));
    expect(readSecret({ file: 'none' }, {}, root)).toEqual(missing({ file: join(root, 'none') }));
    expect(readSecret({ file: 'empty' }, {}, root)).toEqual(missing({ file: join(root, 'empty') }));
    expect(settingsSentence({ code: 'secret-missing', env: 'PW' })).toBe(
      'The environment does not set PW, a secret that the settings name. Set it and start again.',
    );
  });
});
