import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { tellDue } from '../../src/run/reminding.ts';
import { guildRoom } from '../standin/guild-room.ts';

describe('/me export', () => {
  test('gives all that is kept of her, in every guild, as a file and read out when short', async () => {
    const guild = await guildRoom();
    await guild.ask('/me set seam:3/8in', { as: 'Bea' });
    await guild.ask('/me set seam:1/2in', { as: 'Bea', guild: 'elsewhere' });
    await guild.ask('/me set seam:1in', { as: 'Cora' });
    const reply = await guild.ask('/me export', { as: 'Bea' });
    expect(reply.audience).toBe('asker');
    expect(reply.figures.kept?.value).toBe(2);
    const file = JSON.parse(String(reply.pictures[0]?.of.text));
    expect(reply.pictures[0]?.name).toMatch(/\.json$/);
    expect(file).toMatchObject({ member: 'bea', name: 'Bea' });
    expect(file.kept[0].rows.map(({ settings }: { settings: object }) => settings)).toEqual([
      { seam: 0.375 },
      { seam: 0.5 },
    ]);
    expect(JSON.parse(reply.lines[1]!)).toEqual({ defaults: file.kept[0].rows });
  });

  test('asked as an event is answered each time, and kept nowhere', async () => {
    const guild = await guildRoom();
    await guild.ask('/me set seam:3/8in', { as: 'Bea', event: 'e1' });
    const kept = async () => (await guild.ask('/me export', { as: 'Bea', event: 'e2' })).figures.kept?.value;
    expect([await kept(), await kept()]).toEqual([2, 2]);
    expect(await guild.facts.answered.find('guild', 'e2')).toBeUndefined();
  });
});

describe('/me forget', () => {
  test('asks first, and forgets only when told so', async () => {
    const guild = await guildRoom();
    const seam = async () => (await guild.facts.defaults.read('guild', 'bea')).seam;
    await guild.ask('/me set seam:3/8in', { as: 'Bea' });
    const first = await guild.ask('/me forget', { as: 'Bea' });
    expect(first.asks).toMatch(/\?/);
    expect(first.choices.map(({ ask }) => ask)).toEqual(['/me forget confirm:yes', '/me forget confirm:no']);
    await guild.ask('/me forget confirm:no', { as: 'Bea' });
    expect(await seam()).toBe(0.375);
    const done = await guild.ask('/me forget confirm:yes', { as: 'Bea' });
    expect(done.figures.gone?.value).toBe(1);
    expect(await seam()).toBeUndefined();
    expect((await guild.ask('/me forget', { as: 'Bea' })).lines).toEqual(['Nothing is kept of you.']);
  });

  test('delivered twice is answered alike, and the answer is nobody’s', async () => {
    const guild = await guildRoom();
    await guild.ask('/me set seam:3/8in', { as: 'Bea', event: 'e1' });
    const forget = () => guild.ask('/me forget confirm:yes', { as: 'Bea', event: 'e2' });
    const once = await forget();
    expect(await forget()).toEqual(once);
    expect(JSON.stringify(once)).not.toMatch(/Bea|bea\b/);
    expect(await guild.facts.answered.find('guild', 'e2')).toMatchObject({ member: '' });
    expect(await guild.facts.keptOf.read('bea')).toEqual([]);
  });

  test('an event of hers that comes again afterwards has no second effect', async () => {
    const guild = await guildRoom();
    const set = () => guild.ask('/me set seam:3/8in', { as: 'Bea', event: 'e1' });
    await set();
    await guild.ask('/me forget confirm:yes', { as: 'Bea' });
    expect((await set()).error).toBeNull();
    expect(await guild.facts.defaults.read('guild', 'bea')).toEqual({});
  });

  test('totals of a challenge stay true', async () => {
    const guild = await guildRoom();
    await guild.ask(
      '/challenge open name:Spring counting:rosette rounds:2 goal:200 first:2026-12-01 last:2026-12-31',
    );
    for (const as of ['Ada', 'Bea']) await guild.ask('/challenge join', { as });
    await guild.ask('/log 3 note:from my attic', { as: 'Bea' });
    await guild.ask('/log 2');
    const total = async () => (await guild.ask('/standings')).figures.total?.value;
    expect(await total()).toBe(5);
    await guild.ask('/me forget confirm:yes', { as: 'Bea' });
    expect(await total()).toBe(5);
    expect(JSON.stringify(await guild.ask('/standings'))).not.toContain('Bea');
  });
});

describe('nothing of her is left in the files', () => {
  const folder = mkdtempSync(join(tmpdir(), 'honeycount-forget-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const HER = 'Zuzana';
  const WORDS = ['grandmother', 'lilac', 'marigold', 'periwinkle'];

  test('after she has done all that a member can do, and others have seen and corrected it', async () => {
    const file = join(folder, 'guild.sqlite');
    const guild = await guildRoom(file);
    let event = 0;
    const ask = async (words: string, as: string, where = 'guild') => {
      const reply = await guild.ask(words, { as, guild: where, event: `e${++event}` });
      expect(reply.error, words).toBeNull();
    };
    const alone = `alone:${HER.toLowerCase()}`;
    const setup = [
      '/challenge open name:Spring counting:rosette rounds:2 goal:200 first:2026-12-01 last:2026-12-31',
      '/month open name:Garden rosettes:7 rounds:2 first:2026-12-01',
      '/swap open name:Stash',
      '/swap offer 6 fat quarters florals',
      '/swap want 60 1in hexagons',
    ];
    for (const words of setup) await ask(words, 'Ada');
    const hers = [
      ...['/challenge join', '/log 3 note:from grandmother', '/log 2 picture:lilac.jpg', '/fix pieces:3'],
      ...[
        '/month done 1',
        '/me set nudge:daily',
        '/plan keep name:Her periwinkle garden rosettes:7 rounds:2',
      ],
      ...['/swap offer 100 1in hexagons marigold', '/swap want 4 fat quarters', '/me export', '/standings'],
    ];
    for (const words of hers) await ask(words, HER);
    await ask('/challenge open name:Mine goal:3', 'Ada', alone);
    await ask('/log 1 note:grandmother again', HER, alone);
    const others = [
      '/fix 3 note:grandmother’s, says Ada',
      '/swap match',
      '/swap envelopes',
      '/challenge history',
    ];
    for (const words of others) await ask(words, 'Ada');
    await tellDue({
      ...{ facts: guild.facts, now: () => new Date('2026-12-08T12:00:00Z'), tell: async () => true },
      onFault: (error) => expect.fail(String(error)),
    });
    const bytes = () =>
      ['', '-wal', '-shm']
        .map((end) => file + end)
        .filter((path) => existsSync(path))
        .map((path) => readFileSync(path).toString('utf8').toLowerCase())
        .join('');
    for (const word of [HER.toLowerCase(), ...WORDS]) expect(bytes(), word).toContain(word);
    const before = await guild.figure('/standings', 'total');
    await ask('/me forget confirm:yes', HER);
    for (const word of [HER.toLowerCase(), ...WORDS]) expect(bytes(), word).not.toContain(word);
    expect(await guild.figure('/standings', 'total')).toBe(before);
    // Said once more to the bot alone, whose guild bears her name.
    await ask('/me forget confirm:yes', HER, alone);
    await guild.store.close();
    for (const word of [HER.toLowerCase(), ...WORDS]) expect(bytes(), word).not.toContain(word);
  });
});

describe('names', () => {
  test.each([
    ['Ada\u001b[31m\u0007', 'Ada[31m'],
    ['Ada\u202enaelc\u200b', 'Adanaelc'],
    ['two\nlines', 'two lines'],
    ['a\u0301\u0301\u0301\u0301\u0301b', 'a\u0301\u0301b'],
    [' \u2066 ', 'somebody'],
    ['שרה', 'שרה'],
  ])('%j is shown as %j', async (name, shown) => {
    const guild = await guildRoom();
    expect((await guild.ask('/me', { as: name })).title).toBe(`Set for ${shown}`);
  });
});
