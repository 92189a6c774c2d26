import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ask, begin, documents, expectNoTrace, newFolder, run } from './program.ts';

const R3 = Math.sqrt(3);

describe.concurrent('one ask from a shell', () => {
  test('prints what a member would read, on standard output alone, and ends with 0', async () => {
    const ended = await ask('/cut hexagon 1 1/2in');
    expect(ended).toMatchObject({ status: 0, err: '' });
    expect(ended.out).toMatch(/^Hexagon, 1 1\/2 in side\nCut 3 1\/8 in \(3\.098\) flat to flat\./);
    expect(ended.out).toMatch(/[^\n]\n$/);
    expect(ended.out).not.toContain('\u001b');
    for (const line of ended.out.split('\n')) expect(line.length).toBeLessThanOrEqual(72);
  });

  test('words in several arguments are one ask', async () => {
    const several = await run(['ask', '--data', ':memory:', '/cut', 'hexagon', '1', '1/2in']);
    expect(several.out).toBe((await ask('/cut hexagon 1 1/2in')).out);
  });

  test('a plain question', async () => {
    const ended = await ask('how many 1 inch hexagons from a fat quarter?');
    expect(ended.status).toBe(0);
    expect(ended.out).toContain('75');
  });

  test('a mistake by the member prints the sentence that she would get, and ends with 2', async () => {
    const ended = await ask('/cut hexagon 0');
    expect(ended).toMatchObject({ status: 2, err: '' });
    expect(ended.out).toMatch(/too small/);
    expect(ended.out).toMatch(/\n\/cut .*\n$/);
  });

  test.each([`/cut ${'9'.repeat(10_000)}`, '/cut \u0001hexagon', 'good morning'])(
    'nonsense ends with 2 and no trace: %s',
    async (words) => {
      const ended = await ask(words);
      expect(ended).toMatchObject({ status: 2, err: '' });
      expectNoTrace(ended);
    },
  );

  test('a question back is no mistake: the choices are shown, status 0', async () => {
    const ended = await ask('/cut hexagon 4in');
    expect(ended.status).toBe(0);
    expect(ended.out).toMatch(/1 {2}4 in side:\n {3}\/cut .*measure:edge/);
  });
});

describe.concurrent('flags', () => {
  test('--json prints the reply document, whole and on one line', async () => {
    const ended = await ask('/cut shape:hexagon size:1 1/2in seam:1/4in', ['--json']);
    expect(ended).toMatchObject({ status: 0, err: '' });
    const [document, ...more] = documents(ended.out);
    expect(more).toEqual([]);
    expect(Object.keys(document!)).toEqual([
      'command',
      'title',
      'text',
      'figures',
      'table',
      'notes',
      'cautions',
      'asks',
      'choices',
      'pictures',
      'error',
    ]);
    expect(document).toMatchObject({ command: 'cut', asks: null, error: null });
    expect(document).toHaveProperty('figures.cutFlats.unit', 'in');
    expect(document?.figures.cutFlats?.value).toBeCloseTo(1.5 * R3 + 0.5, 12);
  });

  test('--json of a mistake has its code and its message; of a question back its choices', async () => {
    const mistake = await ask('/cut hexagon 0', ['--json']);
    expect(mistake.status).toBe(2);
    expect(documents(mistake.out)[0]).toMatchObject({
      error: { code: 'too-small', message: expect.stringContaining('too small') },
    });
    const back = documents((await ask('/cut hexagon 4in', ['--json'])).out)[0];
    expect(back).toMatchObject({ asks: expect.stringMatching(/\?$/), error: null });
    expect(back?.choices).toHaveLength(3);
  });

  test('--as asks as a member, who may not do an organiser’s work; --organiser may', async () => {
    expect((await ask('/me', ['--as', 'Ada'])).out).toContain('Set for Ada');
    expect((await ask('/guild set width:40in')).status).toBe(0);
    const member = await ask('/guild set width:40in', ['--as', 'Ada']);
    expect(member.status).toBe(2);
    expect(member.out).toContain('organisers');
    expect((await ask('/guild set width:40in', ['--as', 'Olga', '--organiser'])).status).toBe(0);
  });

  test('--now fixes the clock', async () => {
    const [document] = documents(
      (await ask('/time seams:1 size:1in hours:112', ['--json', '--now', '2028-02-28T12:00:00Z'])).out,
    );
    expect(document).toHaveProperty('figures.finishDate.value', '2028-02-29');
    const [day] = documents(
      (await ask('/time seams:1 size:1in hours:112', ['--json', '--now', '2026-12-31'])).out,
    );
    expect(day).toHaveProperty('figures.finishDate.value', '2027-01-01');
  });

  test.each(['yesterday', '2026-13-45'])('--now %j is refused', async (now) => {
    const ended = await ask('/help', ['--now', now]);
    expect(ended).toMatchObject({ status: 2, out: '' });
    expect(ended.err).toContain('2026-12-01T10:00:00Z');
    expectNoTrace(ended);
  });

  test('--place names the room and is taken by every ask', async () => {
    expect((await ask('/cut hexagon 1in', ['--place', 'corner'])).status).toBe(0);
  });

  test('--pictures takes a folder, made only when there is something to write', async () => {
    const folder = join(newFolder(), 'pictures');
    const ended = await ask('/help', ['--json', '--pictures', folder]);
    expect(ended.status).toBe(0);
    expect(existsSync(folder)).toBe(false);
    const [document] = documents((await ask('/cut hexagon 1in', ['--json', '--pictures', folder])).out);
    for (const { file } of document?.pictures ?? []) expect(existsSync(file ?? '')).toBe(true);
  });

  test.each([
    [['ask', '--bogus', '/help'], '--bogus'],
    [['ask'], 'Ask something'],
    [['ask', '--json'], 'Ask something'],
    [['ask', '--as'], '--as'],
    [['start', '--bogus'], '--bogus'],
    [['nosuch'], 'nosuch'],
  ])('%j: one sentence on standard error, status 2', async (args, told) => {
    const ended = await run(args);
    expect(ended).toMatchObject({ status: 2, out: '' });
    expect(ended.err).toContain(told);
    expect(ended.err.trimEnd().split('\n')).toHaveLength(1);
    expectNoTrace(ended);
  });
});

describe.concurrent('what is kept between asks', () => {
  test('--data FILE is made by the first ask that keeps something, and read by the next', async () => {
    const file = join(newFolder(), 'kept', 'guild.sqlite');
    const data = ['--data', file];
    expect((await run(['ask', ...data, '/me set seam:3/8in'])).status).toBe(0);
    expect(existsSync(file)).toBe(true);
    const then = await run(['ask', ...data, '/cut hexagon 1in']);
    expect(then.out).toContain('your 3/8 in seam');
    expect((await run(['ask', ...data, '--as', 'Ada', '/cut hexagon 1in'])).out).toContain('1/4 in seam');
    expect((await run(['ask', ...data, '/guild set seam:1/2in'])).status).toBe(0);
    expect((await run(['ask', ...data, '--as', 'Ada', '/cut hexagon 1in'])).out).toContain(
      'the guild’s 1/2 in seam',
    );
  });

  test('an ask that only reads makes no file and no folder', async () => {
    const folder = newFolder();
    const file = join(folder, 'kept', 'guild.sqlite');
    for (const words of ['/cut hexagon 1in', '/me', '/guild', '/help', '/cut hexagon 0'])
      await run(['ask', '--data', file, words], { cwd: folder });
    expect(readdirSync(folder)).toEqual([]);
  });

  test(':memory: keeps nothing, in no file', async () => {
    const folder = newFolder();
    expect((await run(['ask', '--data', ':memory:', '/me set seam:3/8in'], { cwd: folder })).status).toBe(0);
    expect((await run(['ask', '--data', ':memory:', '/me'], { cwd: folder })).out).not.toContain('3/8');
    expect(readdirSync(folder)).toEqual([]);
  });

  test('from another folder the database is the same one', async () => {
    const file = join(newFolder(), 'guild.sqlite');
    const one = await run(['ask', '--data', file, '/me set seam:3/8in'], { cwd: newFolder() });
    const other = await run(['ask', '--data', file, '/me'], { cwd: '/' });
    expect([one.status, other.status]).toEqual([0, 0]);
    expect(other.out).toContain('3/8 in');
  });

  test('a file that is no database: reading does without, keeping says so with status 1 and no trace', async () => {
    const file = join(newFolder(), 'notes.txt');
    writeFileSync(file, 'a shopping list\n'.repeat(100));
    const read = await run(['ask', '--data', file, '/cut hexagon 1in']);
    expect(read.status).toBe(0);
    const keep = await run(['ask', '--data', file, '/me set seam:3/8in']);
    expect(keep.status).toBe(1);
    expect(keep.out).toMatch(/reference/);
    expect(keep.err).toContain('is not a database');
    expectNoTrace(read);
    expectNoTrace(keep);
  });

  test('two at once on one file: both are kept', async () => {
    const file = join(newFolder(), 'guild.sqlite');
    const names = ['Ada', 'Bea', 'Cleo', 'Dora'];
    const ended = await Promise.all(
      names.map((as) => run(['ask', '--data', file, '--as', as, '/me set seam:3/8in'])),
    );
    expect(ended.map(({ status }) => status)).toEqual(names.map(() => 0));
    for (const as of names)
      expect((await run(['ask', '--data', file, '--as', as, '/me'])).out).toContain('3/8 in');
  });
});

describe.concurrent('many asks on standard input', () => {
  const lines = (input: string, flags: readonly string[] = []) =>
    run(['ask', '--data', ':memory:', '--json', ...flags, '-'], { input });

  test('plain text and JSON, one document a line, in order; empty lines passed over', async () => {
    const ended = await lines(
      [
        '/cut hexagon 1in',
        '',
        '{"ask": "/count rosette rounds:2"}',
        '   ',
        'how many 1 inch hexagons from a fat quarter?',
        '/nosuch',
        '{"ask":"/me","as":"Ada"}',
      ].join('\n'),
    );
    expect(ended.status).toBe(0);
    expect(documents(ended.out).map(({ command, error }) => [command, error === null])).toEqual([
      ['cut', true],
      ['count', true],
      ['yield', true],
      ['', false],
      ['me', true],
    ]);
    expect(documents(ended.out).at(-1)?.title).toContain('Ada');
  });

  test('without --json each reply is printed as it is read', async () => {
    const ended = await run(['ask', '--data', ':memory:', '-'], {
      input: '/cut hexagon 1in\n/count rosette rounds:2',
    });
    expect(ended.status).toBe(0);
    expect(ended.out.indexOf('Hexagon')).toBe(0);
    expect(ended.out.indexOf('Rosette')).toBeGreaterThan(0);
  });

  test('the same event again is the same event delivered again: the same reply, one effect', async () => {
    const file = join(newFolder(), 'guild.sqlite');
    const set = (seam: string, event?: string) =>
      JSON.stringify({ ask: `/me set seam:${seam}`, as: 'Ada', ...(event && { event }) });
    const input = [
      set('3/8in', 'e1'),
      set('1/2in'),
      set('3/8in', 'e1'),
      '{"ask":"/cut hexagon 1in","as":"Ada"}',
    ].join('\n');
    const ended = await run(['ask', '--data', file, '--json', '-'], { input });
    const [first, , again, cut] = documents(ended.out);
    expect(again).toEqual(first);
    expect(JSON.stringify(cut)).toContain('your 1/2 in seam');
    // And in another process, days later.
    const later = await run(['ask', '--data', file, '--json', '--now', '2030-01-01', '-'], {
      input: `${set('3/8in', 'e1')}\n{"ask":"/me","as":"Ada"}`,
    });
    expect(documents(later.out)[0]).toEqual(first);
    expect(later.out).toContain('1/2 in');
  });

  test('"now" and "place" hold for their own line', async () => {
    const ended = await lines(
      [
        '{"ask":"/time seams:1 hours:112","now":"2027-01-31T00:00:00Z","place":"corner"}',
        '/time seams:1 hours:112',
      ].join('\n'),
      ['--now', '2026-12-01'],
    );
    expect(documents(ended.out).map(({ figures }) => figures.finishDate?.value)).toEqual([
      '2027-02-01',
      '2026-12-02',
    ]);
  });

  test('rights are the line’s: a member without "organiser", an organiser with it, you always', async () => {
    const ended = await lines(
      [
        '{"ask":"/guild set width:40in","as":"Ada"}',
        '{"ask":"/guild set width:40in","as":"Olga","organiser":true}',
        '/guild set width:41in',
        '{"ask":"/guild set width:41in","organiser":false}',
      ].join('\n'),
    );
    expect(documents(ended.out).map(({ error }) => error?.code ?? 'ok')).toEqual([
      'organisers-only',
      'ok',
      'ok',
      'organisers-only',
    ]);
  });

  test('lines that cannot be read say why, and the next one is answered', async () => {
    const bad = [
      '{"ask": 1}',
      '{"ask": "/me", "whom": "Ada"}',
      '{bad}',
      '{}',
      '{"ask":"/me","event":7}',
      '{"ask":"/me","now":"soon"}',
      '{"ask":"/me","as":""}',
    ];
    const ended = await lines(
      [...bad, '/cut hexagon 1in', '/cut hexagon -1', '/cut hexagon NaN', '/cut hexagon 1e400'].join('\n'),
    );
    expect(ended).toMatchObject({ status: 0, err: '' });
    const replies = documents(ended.out);
    for (const [i, line] of bad.entries()) {
      expect(replies[i]?.error?.code, line).toBe('not-a-line');
      expect(replies[i]?.error?.message, line).not.toMatch(/invalid|expected|received/i);
    }
    expect(replies.slice(bad.length).map(({ error }) => error?.code)).toEqual([
      undefined,
      'below-zero',
      'words-unread',
      'words-unread',
    ]);
    expectNoTrace(ended);
  });

  test('each reply is out before the next line is read', async () => {
    const { child, ended, says } = begin(['ask', '--data', ':memory:', '--json', '-']);
    child.stdin.write('/cut hexagon 1in\n');
    await says('"command":"cut"');
    child.stdin.write('/count rosette rounds:2\n');
    await says('"command":"count"');
    child.stdin.end();
    expect((await ended).status).toBe(0);
  });

  test('what a reply says is kept is kept when it is read, though the program is killed', async () => {
    const file = join(newFolder(), 'guild.sqlite');
    const { child, ended, says } = begin(['ask', '--data', file, '--json', '-']);
    child.stdin.write('/me set seam:3/8in\n');
    await says('"command":"me"');
    child.kill('SIGKILL');
    await ended;
    expect((await run(['ask', '--data', file, '/me'])).out).toContain('3/8 in');
  });

  test('a thousand lines', async () => {
    const ended = await lines('/cut hexagon 1in\n'.repeat(1000));
    expect(documents(ended.out)).toHaveLength(1000);
  });
});

describe.concurrent('settings', () => {
  const withSettings = (settings: unknown) => {
    const folder = newFolder();
    writeFileSync(
      join(folder, 'config.json'),
      typeof settings === 'string' ? settings : JSON.stringify(settings),
    );
    return { folder, file: join(folder, 'config.json') };
  };

  test('--config names the folder where facts are kept, seen from the file', async () => {
    const { folder, file } = withSettings({ data: 'facts' });
    expect((await run(['ask', '--config', file, '/me set seam:3/8in'])).status).toBe(0);
    expect(existsSync(join(folder, 'facts', 'honeycount.sqlite'))).toBe(true);
    expect((await run(['ask', '--config', file, '/me'])).out).toContain('3/8 in');
  });

  test('HONEYCOUNT_CONFIG does the same; --config comes before it', async () => {
    const { folder, file } = withSettings({ data: 'facts' });
    const env = { HONEYCOUNT_CONFIG: file };
    expect((await run(['ask', '/me set seam:3/8in'], { env })).status).toBe(0);
    expect(existsSync(join(folder, 'facts', 'honeycount.sqlite'))).toBe(true);
    const other = withSettings({ data: 'others' });
    expect((await run(['ask', '--config', other.file, '/me'], { env })).out).not.toContain('3/8');
  });

  test.each([
    ['{"data": ', /not JSON/],
    [{ dta: 'x' }, /"dta"/],
    [{ data: 7 }, /"data"/],
    [{ log: { level: 'loud' } }, /"log\.level"/],
    [{ discord: { token: 'abc123secret' } }, /"discord\.token"/],
  ])('settings %j: one sentence, status 2, for ask and start', async (settings, told) => {
    const { file } = withSettings(settings);
    for (const verb of [
      ['ask', '--config', file, '/help'],
      ['start', '--config', file],
    ]) {
      const ended = await run(verb);
      expect(ended).toMatchObject({ status: 2, out: '' });
      expect(ended.err).toMatch(told);
      expect(ended.err).not.toContain('abc123secret');
      expect(ended.err.trimEnd().split('\n')).toHaveLength(1);
      expectNoTrace(ended);
    }
  });

  test('settings that are not there', async () => {
    const ended = await run(['ask', '--config', join(newFolder(), 'none.json'), '/help']);
    expect(ended).toMatchObject({ status: 2, out: '' });
    expect(ended.err).toContain('none.json');
  });

  test('a folder in place of the database', async () => {
    const folder = newFolder();
    mkdirSync(join(folder, 'facts', 'honeycount.sqlite'), { recursive: true });
    const { file } = { file: join(folder, 'config.json') };
    writeFileSync(file, '{"data":"facts"}');
    const ended = await run(['start', '--config', file]);
    expect(ended.status).toBe(2);
    expect(ended.err).toContain('is a folder');
    expectNoTrace(ended);
  });
});
