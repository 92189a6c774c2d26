import { describe, expect, test } from 'vitest';
import { draw } from '../../src/pictures/draw.ts';
import { type GuildRoom, guildRoom } from '../standin/guild-room.ts';

const OPEN =
  '/challenge open name:Spring counting:rosette rounds:2 goal:200 first:2026-12-01 last:2026-12-31';

async function opened(words = OPEN): Promise<GuildRoom> {
  const guild = await guildRoom();
  const reply = await guild.ask(words);
  expect(reply.error).toBeNull();
  return guild;
}

const errorOf = async (guild: GuildRoom, words: string, as = {}) => (await guild.ask(words, as)).error?.code;

describe('opening, looking, closing', () => {
  test('a challenge is opened, shown, listed, closed and opened again', async () => {
    const guild = await opened();
    expect((await guild.ask('/challenge show')).lines[0]).toBe('0 of 200 rosettes of 2 rounds.');
    expect((await guild.ask('/challenge list')).table?.rows).toEqual([
      ['1', 'Spring, 1 Dec 2026 to 31 Dec 2026', '0 of 200 rosettes'],
    ]);
    expect((await guild.ask('/challenge close')).title).toBe('Spring is closed');
    expect(await errorOf(guild, '/log 1')).toBe('none-open');
    expect((await guild.ask('/challenge reopen')).title).toBe('Spring is open again');
    expect((await guild.ask('/log 1')).error).toBeNull();
  });

  test('who takes part is told by name, unless the guild shows totals alone', async () => {
    const guild = await opened();
    const told = async () => (await guild.ask('/challenge show')).lines.find((line) => /take/.test(line));
    expect(await told()).toBe('0 members take part.');
    await guild.ask('/challenge join', { as: 'Cleo' });
    await guild.ask('/log 1', { as: 'Bea' });
    await guild.ask('/log 2', { as: 'Dot' });
    await guild.ask('/challenge leave', { as: 'Dot' });
    expect(await told()).toBe('2 members take part: Bea, Cleo.');
    for (const as of ['Eva', 'Fay', 'Gil', 'Hal', 'Ida', 'Jo', 'Kit'])
      await guild.ask('/challenge join', { as });
    expect(await told()).toBe('9 members take part: Bea, Cleo, Eva, Fay, Gil, Hal, Ida, Jo, Kit.');
    await guild.ask('/challenge join', { as: 'Lou' });
    expect(await told()).toBe('10 members take part: Bea, Cleo, Eva, Fay, Gil, Hal, Ida, Jo and 2 more.');
    await guild.ask('/guild set standings:totals');
    expect(await told()).toBe('10 members take part.');
  });

  test('one whose days are over says so, wherever it is told to be open', async () => {
    const guild = await guildRoom();
    const past = await guild.ask('/challenge open name:Autumn goal:20 first:2026-10-01 last:2026-11-30');
    expect(past.title).toBe('Autumn is open, though its days are over');
    expect((await guild.ask('/challenge list')).lines[0]).toBe('1 is open (1 past the last day), 0 closed.');
    const joined = await guild.ask('/challenge join');
    expect(joined.notes.at(-1)).toBe(
      'Its last day was 30 Nov 2026. Sewn before then? `/log 1 day:2026-11-30`',
    );
    expect((await guild.ask('/log 1 day:2026-11-30')).error).toBeNull();
  });

  test('how many days are left is told', async () => {
    const guild = await opened();
    expect((await guild.ask('how many days left?')).lines).toContain('23 days left after today.');
    const last = { now: '2026-12-31T12:00:00Z' };
    expect((await guild.ask('when does the challenge end', last)).lines).toContain('Today is the last day.');
  });

  test('opened, changed and closed in plain words', async () => {
    const guild = await guildRoom();
    const said = 'open a challenge called May, 50 rosettes of 2 rounds until 31 May 2027';
    expect((await guild.ask(said)).lines[0]).toBe('50 rosettes of 2 rounds.');
    expect(await errorOf(guild, said, { as: 'Bea' })).toBe('guild-organisers-only');
    expect(await guild.figure('change the goal to 120', 'goal')).toBe(120);
    expect((await guild.ask('extend the deadline to 14 Jun 2027')).figures.last?.value).toBe('2027-06-14');
    await guild.ask('/log 20');
    expect((await guild.ask('if we do 10 a week when do we finish')).lines[1]).toBe(
      'At 10 a week: 10 weeks more, until 16 Feb 2027.',
    );
    expect((await guild.ask('close May')).title).toBe('May is closed');
  });

  test('at a pace that is said it is done on a day that can be planned', async () => {
    const guild = await opened();
    await guild.ask('/log 20');
    const at = async (pace: string, as = {}) =>
      (await guild.ask(`/standings pace:${pace}`, as)).lines.find((line) => line.startsWith('At '));
    expect(await at('175')).toBe('At 175 a week: 2 weeks more, until 16 Dec 2026.');
    expect(await at('180')).toBe('At 180 a week: 1 week more, until 15 Dec 2026.');
    expect(await at('10')).toMatch(/: 18 weeks more, until 13 Apr 2027, after the last day, 31 Dec 2026\.$/);
    expect(await at('0.1')).toBe('At 0.1 a week: longer than 10 years.');
    await guild.ask('/challenge edit goal:10000000');
    expect(await at('0.1')).toBe('At 0.1 a week: longer than 10 years.');
    await guild.ask('/challenge edit goal:20');
    expect(await at('10')).toBe('At 10 a week: nothing is left to do, the goal is reached.');
    await guild.ask('/challenge edit goal:100');
    await guild.ask('/challenge close');
    expect(await at('10')).toBeUndefined();
  });

  test('before it begins, a pace is counted from its first day', async () => {
    const guild = await opened('/challenge open name:May goal:20 first:2027-05-01');
    expect((await guild.ask('/standings pace:10')).lines[1]).toBe(
      'At 10 a week: 2 weeks from 1 May 2027, until 15 May 2027.',
    );
  });

  test('a number that nothing took opens no challenge', async () => {
    const guild = await guildRoom();
    const asked = await guild.ask('open a challenge called Fox with 5 blocks a week goal 100 blocks');
    expect(asked.error?.message).toContain('not ‘5 blocks’');
    expect(await errorOf(guild, '/challenge show')).toBe('none-yet');
  });

  test('a correction in words keeps what it says was sewn', async () => {
    const guild = await opened();
    await guild.ask('/log 5');
    expect(await errorOf(guild, 'that was 7 hexies')).toBe('other-unit');
    expect(await guild.figure('that was 7 rosettes', 'total')).toBe(7);
    expect(await guild.figure('2 more rosettes done tonight', 'total')).toBe(9);
  });

  test('what one is made of comes from its layout', async () => {
    const guild = await opened();
    await guild.ask('/log 3');
    // 19 pieces and 42 seams of a rosette of two rounds: OEIS A003215 and A045945.
    const { figures } = await guild.ask('/standings');
    expect(figures.pieces?.value).toBe(57);
    expect(figures.seams?.value).toBe(126);
    expect(figures.seamLength).toEqual({ value: 126, unit: 'in' });
  });

  test('only organisers open, edit and close, unless the guild lets everyone', async () => {
    const guild = await guildRoom();
    const bea = { as: 'Bea' };
    expect(await errorOf(guild, OPEN, bea)).toBe('guild-organisers-only');
    await guild.ask('/guild set openers:everyone');
    expect(await errorOf(guild, OPEN, bea)).toBeUndefined();
    await guild.ask('/guild set openers:organisers');
    for (const words of ['/challenge close', '/challenge edit goal:3', '/challenge export'])
      expect(await errorOf(guild, words, bea)).toMatch(/organisers-only$/);
  });

  test('an edit is kept with what it changed and who did', async () => {
    const guild = await opened();
    const edited = await guild.ask('/challenge edit goal:250 each:4 last:2027-01-15 name:Spring long');
    expect(edited.error).toBeNull();
    const history = await guild.ask('/challenge history');
    expect(history.table?.rows[0]).toEqual([
      '2',
      'Ada',
      'changed it: name Spring to Spring long; goal 200 to 250; goal each none to 4; last day 31 Dec 2026 to 15 Jan 2027',
    ]);
    expect((await guild.ask('/challenge edit last:none')).lines[0]).toBe('Last day 15 Jan 2027 to none.');
    expect(await errorOf(guild, '/challenge edit')).toBe('nothing-to-change');
    expect(await errorOf(guild, '/challenge edit last:2026-11-01')).toBe('days-backward');
  });

  test('an edit cannot leave out what was logged, nor change what was counted', async () => {
    const guild = await opened();
    await guild.ask('/log 2 day:2026-12-02');
    expect(await errorOf(guild, '/challenge edit first:2026-12-03')).toBe('logs-outside');
    expect(await errorOf(guild, '/challenge edit rounds:3')).toBe('counting-fixed');
  });

  test.each([
    ['/challenge open Winter', 'Winter', 'rosette'],
    ['/challenge open Starry nights counting:star side:3', 'Starry nights', 'star'],
    ['/challenge open block name:Third', 'Third', 'block'],
  ])('%s needs no name before its name', async (words, name, counting) => {
    const guild = await guildRoom();
    expect((await guild.ask(words)).error).toBeNull();
    expect((await guild.facts.challenges.all('guild'))[0]).toMatchObject({ name, counting });
  });

  test('a name that is mistyped is met with the ask put right', async () => {
    const guild = await opened();
    const { lines } = await guild.ask('/standings Sprng');
    expect(lines.at(-1)).toBe('`/standings challenge:Spring`');
  });

  test('two open ones cannot have one name', async () => {
    const guild = await opened();
    expect(await errorOf(guild, OPEN)).toBe('name-taken');
  });

  test('joining and leaving are in the book; what was logged stays in the total', async () => {
    const guild = await opened();
    const bea = { as: 'Bea' };
    await guild.ask('/challenge join', bea);
    await guild.ask('/log 3', bea);
    const left = await guild.ask('/challenge leave', bea);
    expect(left.lines).toEqual(['Your 3 rosettes stay in the total.']);
    expect(await errorOf(guild, '/challenge leave', bea)).toBe('not-joined');
    expect(await guild.figure('/standings', 'total')).toBe(3);
  });
});

test('a goal for each alone is said as that', async () => {
  const guild = await guildRoom();
  const open = await guild.ask('/challenge open name:Hundred counting:patches each:100');
  expect(open.lines[0]).toBe('100 patches each, no goal for all.');
});

describe('logging', () => {
  test.each([
    ['/log 3', 3, {}],
    ['/log 2 rosettes yesterday', 2, { line: 'for 7 Dec 2026' }],
    ['/log 1 rosette 95 min, blue one', 1, { minutes: 95, note: 'blue one' }],
    [
      '/log pieces:2 day:2026-12-03 minutes:95 note:for the border',
      2,
      { minutes: 95, note: 'for the border' },
    ],
    // Minutes for each are told of all of them.
    ['/log 1 it took 95 min, the blue one', 1, { minutes: 95, note: 'the blue one' }],
    [
      '/log 2 blue, 95 min, for the border, yesterday',
      2,
      { minutes: 95, note: 'blue, for the border', line: 'for 7 Dec 2026' },
    ],
    ['/log 2 rosettes yesterday, 95 min each', 2, { minutes: 190, line: 'for 7 Dec 2026' }],
    ['/log 3 1 h 10 each, dark ones', 3, { minutes: 210, note: 'dark ones' }],
    ['/log 2 blue ones, 95 min each, from scraps', 2, { minutes: 190, note: 'blue ones, from scraps' }],
    ['/log 2 note:each of her own cloth', 2, { note: 'each of her own cloth' }],
    ['/log two', 2, {}],
    ['log two, the blue ones', 2, { note: 'the blue ones' }],
    ['/log 1 blue one, 1h 20 yesterday', 1, { minutes: 80, note: 'blue one', line: 'for 7 Dec 2026' }],
    ['/log 2 more rosettes on saturday', 2, { line: 'for 5 Dec 2026' }],
    ['/log 1 3 Dec', 1, { line: 'for 3 Dec 2026' }],
    ['/log 4 picture:https://example.org/blue.jpg', 4, {}],
    ['log 2 flowers', 2, {}],
    ['I made two rosettes yesterday, both blue', 2, { note: 'both blue', line: 'for 7 Dec 2026' }],
    ['just finished another rosette!', 1, {}],
    ['yesterday I finished 3 rosettes', 3, { line: 'for 7 Dec 2026' }],
  ])(
    '%s',
    async (words, pieces, { minutes, note, line }: { minutes?: number; note?: string; line?: string }) => {
      const guild = await opened();
      const reply = await guild.ask(words);
      expect(reply.error).toBeNull();
      expect(reply.command).toBe('log');
      expect(reply.figures).toMatchObject({
        logged: { value: pieces },
        total: { value: pieces },
        mine: { value: pieces },
      });
      expect(reply.figures.minutes?.value).toBe(minutes);
      if (line) expect(reply.lines[0]).toContain(line);
      const [kept] = await guild.facts.challenges.lastLogs('guild', 'ada', 1);
      expect(kept).toMatchObject({ pieces, note: note ?? '' });
    },
  );

  // A Tuesday, the eighth.
  test.each([
    ['/log a rosette, blue', 1, '2026-12-08', 'blue'],
    ['/log two more rosettes', 2, '2026-12-08', ''],
    ['/log half a dozen rosettes yesterday', 6, '2026-12-07', ''],
    ['/log 2 monday', 2, '2026-12-07', ''],
    ['/log 2 on monday, green', 2, '2026-12-07', 'green'],
    ['/log 2 last friday green', 2, '2026-12-04', 'green'],
    ['/log 2 on 3 Dec', 2, '2026-12-03', ''],
    ['/log 1 sun print', 1, '2026-12-08', 'sun print'],
    ['/log 3 two of them blue', 3, '2026-12-08', 'two of them blue'],
    ['log 2 rosettes for spring', 2, '2026-12-08', ''],
    ['/log 2 for the border', 2, '2026-12-08', 'for the border'],
    ['I made a dozen rosettes', 12, '2026-12-08', ''],
    ['did 2 last night', 2, '2026-12-07', ''],
    ['/log 2 this morning, green', 2, '2026-12-08', 'green'],
    ['i did 2 on the 3rd', 2, '2026-12-03', ''],
    ['i did 2 two days ago', 2, '2026-12-06', ''],
    ['i did 2 on 1 Dec', 2, '2026-12-01', ''],
    ['/log 2 day:13/12/2026', 2, '2026-12-13', ''],
    ['I did 2 at 45 minutes each', 2, '2026-12-08', ''],
    ['/log 2 for Christmas', 2, '2026-12-08', 'for Christmas'],
    ['/log 2 for Mum', 2, '2026-12-08', 'for Mum'],
    ['/log 2 rosettes and 20 min', 2, '2026-12-08', ''],
    ['/log 2 rosettes done last night', 2, '2026-12-07', ''],
    ['2 more rosettes done tonight', 2, '2026-12-08', ''],
    ['I finished sewing 2 rosettes of 19 hexies', 2, '2026-12-08', 'of 19 hexies'],
    ['/log 2 in 40 min', 2, '2026-12-08', ''],
    ['/log 2 rosettes, 20 min and blue', 2, '2026-12-08', 'blue'],
    ['/log 2 tonight', 2, '2026-12-08', ''],
  ])('%s: %d on %s, noted “%s”', async (words, pieces, day, note) => {
    const guild = await opened();
    expect(
      (await guild.ask(words, { now: `${day < '2026-12-08' ? '2026-12-08' : day}T12:00:00Z` })).error,
    ).toBeNull();
    const [kept] = await guild.facts.challenges.lastLogs('guild', 'ada', 1);
    expect(kept).toMatchObject({ pieces, day, note });
  });

  test.each([
    ['/log', 'option-missing'],
    ['/log 0', 'too-small'],
    ['/log -2', 'below-zero'],
    ['/log 1.5', 'not-whole'],
    ['/log 100001', 'too-large'],
    ['/log 2 in hexagons', 'words-unread'],
    ['/log 1 day:tomorrow', 'day-ahead'],
    ['/log 1 day:2026-11-30', 'day-outside'],
    ['/log 1 day:2026-02-30', 'day-unread'],
    ['/log 1 challenge:Autumn', 'together-unknown'],
    [`/log 1 note:${'x'.repeat(301)}`, 'text-too-long'],
    ['i did 2.5 rosettes', 'not-whole'],
    ['i made half a rosette', 'not-whole'],
    ['/log 2 and a half', 'not-whole'],
    ['i did two and a half today', 'not-whole'],
    ['log -2', 'below-zero'],
    ['i did minus 2', 'below-zero'],
    ['i made 7 hexagons today', 'other-unit'],
    ['/log 2 stars', 'other-unit'],
    ['i did 3 last week', 'day-vague'],
    ['/log 2 minutes:-30', 'below-zero'],
  ])('%s is met with %s', async (words, code) => {
    const guild = await opened();
    expect(await errorOf(guild, words)).toBe(code);
    expect(await guild.figure('/standings', 'total')).toBe(0);
  });

  test.each([
    ['i did 3 today and 2 yesterday', ['/log pieces:3 day:2026-12-08', '/log 2 yesterday']],
    ['did 2 on Dec 1 and 3 on Dec 2', ['/log pieces:2 day:2026-12-01', '/log 3 on Dec 2']],
    ['/log 2 this morning and 3 this afternoon', ['/log pieces:2 day:2026-12-08', '/log 3 this afternoon']],
    ['/log 3 for Eva', ['/log pieces:3 note:for Eva']],
    [
      'sewed two rosettes of 3 rounds',
      ['/log pieces:2 rosettes challenge:1 note:3 rounds', '/challenge show challenge:1'],
    ],
  ])('%s is asked back, and nothing is kept meanwhile', async (words, asks) => {
    const guild = await opened();
    const reply = await guild.ask(words);
    expect(reply.asks).not.toBeNull();
    expect(reply.choices.map(({ ask }) => ask)).toEqual(asks);
    expect(await guild.figure('/standings', 'total')).toBe(0);
    for (const ask of asks) expect((await guild.ask(ask)).error, ask).toBeNull();
  });

  test('what was sewn, and for which, tells the challenge that is meant', async () => {
    const guild = await opened();
    await guild.ask('/challenge open name:Kids stars counting:star rounds:2 first:2026-12-01');
    expect((await guild.ask('i did 2 stars today')).title).toBe('Kids stars');
    expect((await guild.ask('I made 3 rosettes')).title).toBe('Spring');
    expect((await guild.ask('i did 2 for spring')).title).toBe('Spring');
    expect((await guild.ask('i did 2 for the Kids stars challenge')).title).toBe('Kids stars');
    expect(await errorOf(guild, 'i did 2 for the Winter challenge')).toBe('together-unknown');
    expect(await errorOf(guild, 'join the Winter challenge', { as: 'Bea' })).toBe('together-unknown');
    expect((await guild.ask('Join Spring', { as: 'Bea' })).title).toBe('Joined Spring');
    expect((await guild.ask('i did 2')).asks).toBe('Which challenge do you mean?');
  });

  test('rosettes of other rounds are logged with all that was said of them', async () => {
    const guild = await opened();
    const asked = await guild.ask('/log 2 of 3 rounds, 95 min yesterday, blue');
    const ask = '/log pieces:2 minutes:95 min day:2026-12-07 challenge:1 note:3 rounds, blue';
    expect(asked.choices[0]?.ask).toBe(ask);
    const kept = await guild.ask(ask);
    expect(kept.lines).toContain('2 rosettes kept for 7 Dec 2026, 95 min.');
    expect(kept.lines).toContain('Noted: ‘3 rounds, blue’.');
  });

  test('a number is the whole of it: with a name or a day beside it nothing is taken back', async () => {
    const guild = await opened();
    await guild.ask('/log 2', { as: 'Bea' });
    await guild.ask('/log 3', { as: 'Cleo' });
    expect(await errorOf(guild, '/undo 2 whose:Cleo')).toBe('one-of-these');
    expect(await errorOf(guild, '/undo 2 day:yesterday')).toBe('one-of-these');
    expect(await guild.figure('/standings', 'total')).toBe(5);
  });

  test('of two members with one name it is asked whose log is meant', async () => {
    const guild = await opened();
    await guild.ask('/log 2', { as: 'Bea' });
    const { room } = guild;
    const other = { id: 'bea-2', name: 'bea', organiser: false };
    const now = new Date('2026-12-08T12:30:00Z');
    await room.answer({ who: other, guild: 'guild', place: 'home', event: null, words: '/log 3', now });
    const asked = await guild.ask("/undo Bea's last");
    expect(asked.asks).toMatch(/^More than one member/);
    expect(asked.choices.map(({ ask }) => ask).sort()).toEqual([
      '/undo 2 challenge:1',
      '/undo 3 challenge:1',
    ]);
    expect(await guild.figure('/standings', 'total')).toBe(5);
    expect(await guild.figure('/undo 3 challenge:1', 'total')).toBe(2);
    expect(await guild.figure("/undo Bea's last", 'total')).toBe(0);
  });

  test('the last log in a challenge is found behind any number of others', async () => {
    const guild = await opened();
    await guild.ask('/log 7 day:2026-12-02');
    await guild.ask('/challenge open name:Autumn goal:200 first:2026-12-01');
    for (let nth = 0; nth < 60; nth++) await guild.ask('/log 1 challenge:Autumn');
    expect(await guild.figure('/undo day:2026-12-02', 'logged')).toBe(-7);
    expect(await guild.figure('/undo challenge:Autumn', 'total')).toBe(59);
  });

  test('rosettes of other hexagons than the challenge’s are asked about', async () => {
    const guild = await opened();
    const asked = await guild.ask('/log 2 rosettes of 7 hexagons');
    expect(asked.choices[0]?.ask).toBe('/log pieces:2 rosettes challenge:1 note:7 hexagons');
    expect(await guild.figure('/standings', 'total')).toBe(0);
    expect(await guild.figure(asked.choices[0]?.ask ?? '', 'total')).toBe(2);
  });

  test('two logs with a time each are asked for one at a time', async () => {
    const guild = await opened();
    const asked = await guild.ask('did 1 rosette in 95 minutes and 2 in 80 each');
    const asks = asked.choices.map(({ ask }) => ask);
    expect(asks).toEqual(['/log pieces:1 rosette minutes:95 min', '/log 2 pieces, 80 min each']);
    expect(await guild.figure(asks[0] ?? '', 'minutes')).toBe(95);
    expect(await guild.figure(asks[1] ?? '', 'minutes')).toBe(160);
  });

  test('where no open challenge counts what was sewn, it is not asked which', async () => {
    const guild = await opened();
    await guild.ask('/challenge open name:Blocks counting:block goal:20 first:2026-12-01');
    expect(await errorOf(guild, '/log 2 stars')).toBe('none-counts');
    expect(await errorOf(guild, '/log 2 stars challenge:Blocks')).toBe('other-unit');
    expect((await guild.ask('/log 2 blocks')).title).toBe('Blocks');
  });

  test('a log is never another member’s', async () => {
    const guild = await opened();
    await guild.ask('/challenge join', { as: 'Bea' });
    expect(await errorOf(guild, 'log 3 for Bea')).toBe('own-log-only');
    expect(await errorOf(guild, '/log 3 for Bea', { as: 'Cleo' })).toBe('own-log-only');
    expect(await guild.figure('/log 3 for Bea', 'mine', { as: 'Bea' })).toBe(3);
  });

  test('the last log of a day, or of another member, is taken back by who may', async () => {
    const guild = await opened();
    await guild.ask('/log 2 yesterday', { as: 'Bea' });
    await guild.ask('/log 3', { as: 'Bea' });
    expect(await errorOf(guild, "undo Bea's last", { as: 'Cleo' })).toBe('line-not-hers');
    expect(await guild.figure('undo the one from yesterday', 'logged', { as: 'Bea' })).toBe(-2);
    expect(await errorOf(guild, 'undo the one from yesterday', { as: 'Bea' })).toBe('nothing-logged-then');
    expect(await guild.figure("/undo Bea's last", 'logged')).toBe(-3);
    expect(await errorOf(guild, "undo Bea's last")).toBe('nothing-of-hers');
  });

  test('nothing before the first day; after the last one with its day only', async () => {
    const guild = await opened();
    expect(await errorOf(guild, '/log 1', { now: '2026-11-20T10:00:00Z' })).toBe('challenge-not-begun');
    const late = { now: '2027-01-02T10:00:00Z' };
    expect(await errorOf(guild, '/log 1', late)).toBe('challenge-over');
    expect(await guild.figure('/log 1 day:2026-12-30', 'total', late)).toBe(1);
  });

  test('an event that is delivered again has one effect and the same reply', async () => {
    const guild = await opened();
    const first = await guild.ask('/log 3', { event: 'e17' });
    const again = await guild.ask('/log 3', { event: 'e17' });
    expect(again).toEqual(first);
    expect(await guild.figure('/standings', 'total')).toBe(3);
    await guild.ask('/undo', { event: 'e18' });
    await guild.ask('/undo', { event: 'e18' });
    expect(await guild.figure('/standings', 'total')).toBe(0);
  });

  test('an event that came to a fault had no effect, and has it when it comes again', async () => {
    const guild = await opened();
    const { facts } = guild;
    await expect(
      facts.together(async (bound) => {
        const of = await bound.challenges.one('guild', 1);
        const ada = { id: 'ada', name: 'Ada' };
        await bound.challenges.write(of!, {
          ...{ kind: 'log', member: ada, by: ada, day: '2026-12-08', pieces: 3, at: new Date() },
        });
        throw new Error('the power went');
      }),
    ).rejects.toThrow('the power went');
    expect(await guild.figure('/standings', 'total')).toBe(0);
    expect(await guild.figure('/log 3', 'total', { event: 'e17' })).toBe(3);
  });

  test('those who may log: the joined, or organisers alone', async () => {
    const guild = await opened(`${OPEN} who:joined`);
    const bea = { as: 'Bea' };
    expect(await errorOf(guild, '/log 1', bea)).toBe('joined-only');
    await guild.ask('/challenge join', bea);
    expect(await errorOf(guild, '/log 1', bea)).toBeUndefined();
    await guild.ask('/challenge edit who:organisers');
    expect(await errorOf(guild, '/log 1', bea)).toBe('guild-organisers-only');
    expect(await errorOf(guild, '/log 1')).toBeUndefined();
  });

  test('of several open ones the running one is meant, else it is asked which', async () => {
    const guild = await opened();
    await guild.ask('/challenge open name:Later counting:block goal:9 first:2027-02-01');
    expect((await guild.ask('/log 1')).title).toBe('Spring');
    await guild.ask('/challenge open name:Blocks counting:block goal:50 first:2026-12-01');
    const which = await guild.ask('/log 2 minutes:30 note:dark ones');
    expect(which.asks).toBe('Which challenge do you mean?');
    expect(which.choices.map(({ label }) => label)).toEqual(['Blocks, 0 of 50', 'Spring, 1 of 200']);
    const chosen = await guild.ask(which.choices[0]!.ask);
    expect(chosen).toMatchObject({
      title: 'Blocks',
      figures: { logged: { value: 2 }, minutes: { value: 30 } },
    });
    expect(chosen.lines).toContain('Noted: ‘dark ones’.');
    expect(await errorOf(guild, '/log 1 challenge:2')).toBe('challenge-not-begun');
  });

  test('one that is held elsewhere is not meant where another is', async () => {
    const guild = await opened();
    await guild.ask('/challenge open name:Blocks counting:block first:2026-12-01', { place: 'blocks' });
    expect((await guild.ask('/log 1', { place: 'blocks' })).title).toBe('Blocks');
    expect((await guild.ask('/log 1')).title).toBe('Spring');
  });

  test.each([
    'Ada "Hex" O’Neill 🧵',
    '@everyone `rm -rf` $(x) <b>',
    'ʇɐɥʇ',
    "'; DROP TABLE challenges; --",
    '名前',
  ])('odd names and notes are kept and shown as they are: %s', async (odd) => {
    const guild = await opened();
    const note = `${odd} =1+1 {{x}} %s`;
    const reply = await guild.ask(`/log 2 note:${note}`, { as: odd });
    expect(reply.error).toBeNull();
    const tidied = note.replaceAll('’', "'").replaceAll('`', "'");
    expect(reply.lines).toContain(`Noted: ‘${tidied}’.`);
    expect((await guild.ask('/standings')).table?.rows).toEqual([[odd, '2']]);
    expect(await guild.figure('/undo', 'total', { as: odd })).toBe(0);
  });
});

describe('putting right', () => {
  test('a fix takes the old line back and writes the right one; both stay in the book', async () => {
    const guild = await opened();
    await guild.ask('/log 3 note:blue');
    const fixed = await guild.ask('/fix pieces:2 minutes:80');
    expect(fixed.figures).toMatchObject({ logged: { value: 2 }, total: { value: 2 }, mine: { value: 2 } });
    const of = (await guild.facts.challenges.one('guild', 1))!;
    const lines = await guild.facts.challenges.lines(of, 1, 10);
    expect(lines.map(({ kind, pieces, of: about, note }) => [kind, pieces, about, note])).toEqual([
      ['log', 3, null, 'blue'],
      ['back', -3, 2, ''],
      ['log', 2, 2, 'blue'],
    ]);
  });

  test('an undo takes the last one back, then the one before; a number takes that one', async () => {
    const guild = await opened();
    for (const words of ['/log 3', '/log 5', '/log 7']) await guild.ask(words);
    expect(await guild.figure('/undo', 'total')).toBe(8);
    expect(await guild.figure('/undo', 'total')).toBe(3);
    await guild.ask('/log 4');
    expect(await guild.figure('/undo 2', 'total')).toBe(4);
    expect(await errorOf(guild, '/undo 2')).toBe('line-gone');
    expect(await errorOf(guild, '/undo 99')).toBe('line-unknown');
    expect(await errorOf(guild, '/undo 1')).toBe('line-unknown');
  });

  test('a member cannot touch another’s; an organiser can, and the book says who did', async () => {
    const guild = await opened();
    const bea = { as: 'Bea' };
    await guild.ask('/log 3', bea);
    expect(await errorOf(guild, '/undo 2', { as: 'Cea' })).toBe('line-not-yours');
    expect(await errorOf(guild, '/fix 2 pieces:1', { as: 'Cea' })).toBe('line-not-yours');
    expect(await errorOf(guild, '/undo', { as: 'Cea' })).toBe('nothing-logged');
    const fixed = await guild.ask('/fix 2 pieces:1');
    expect(fixed.lines[0]).toBe('Put right: Bea’s no. 2 is now 1 rosette on 8 Dec 2026.');
    expect((await guild.ask('/challenge history')).table?.rows.slice(0, 2)).toEqual([
      ['4', 'Ada, for Bea', '1 rosette on 8 Dec 2026, in place of 2'],
      ['3', 'Ada, for Bea', 'takes back 2: 3 rosettes'],
    ]);
    expect((await guild.ask('/standings')).table?.rows).toEqual([['Bea', '1']]);
  });

  test('what was taken back can be logged again by its choice', async () => {
    const guild = await opened();
    await guild.ask('/log 3 yesterday 95 min');
    const { choices } = await guild.ask('/undo');
    expect(await guild.figure(choices[0]!.ask, 'total')).toBe(3);
  });

  test('nothing is put right in one that is closed', async () => {
    const guild = await opened();
    await guild.ask('/log 3');
    await guild.ask('/challenge close');
    expect(await errorOf(guild, '/undo')).toBe('together-closed');
  });
});

describe('standings', () => {
  test('the worked example of the forecast: 57 in 6 weeks, 143 to go, 15 weeks left', async () => {
    const guild = await guildRoom(':memory:', '2026-12-01T12:00:00Z');
    await guild.ask('/challenge open name:Long goal:200 first:2026-10-20 last:2027-03-16');
    for (const [week, pieces] of [10, 9, 9, 10, 9, 10].entries())
      await guild.ask(
        `/log ${pieces} day:2026-${['10-20', '10-27', '11-03', '11-10', '11-17', '11-24'][week]}`,
      );
    const { figures, lines } = await guild.ask('how far are we?');
    expect(figures.total?.value).toBe(57);
    expect(figures.left?.value).toBe(143);
    expect(figures.perWeek?.value).toBe(9.5);
    expect(figures.chance?.value).toBeCloseTo(0.5, 2);
    expect(figures.weeksSure?.value).toBeCloseTo(17.1, 1);
    expect(lines[1]).toBe('9.5 rosettes a week: about 15 weeks more; four times in five 12 to 18.');
    expect(lines[2]).toBe('Chance of 200 by 16 Mar 2027: 50%; four times in five 173 to 230 by then.');
  });

  test('what is sewn today is counted with its day', async () => {
    const guild = await guildRoom(':memory:', '2026-12-02T12:00:00Z');
    await guild.ask('/challenge open name:Spring goal:200 first:2026-12-01 last:2026-12-31');
    await guild.ask('/log 4 day:2026-12-01');
    expect(await guild.figure('/standings', 'perWeek')).toBe(28);
    await guild.ask('/log 4');
    expect(await guild.figure('/standings', 'perWeek')).toBe(28);
  });

  test('members are unranked by name unless the guild chose otherwise', async () => {
    const guild = await opened();
    for (const [as, pieces] of [
      ['Cea', 5],
      ['Bea', 9],
      ['Dea', 5],
    ] as const)
      await guild.ask(`/log ${pieces}`, { as });
    expect((await guild.ask('/standings')).table).toEqual({
      columns: ['member', 'rosettes'],
      rows: [
        ['Bea', '9'],
        ['Cea', '5'],
        ['Dea', '5'],
      ],
    });
    await guild.ask('/guild set standings:ranked');
    const ranked = (await guild.ask('/standings')).table?.rows;
    expect(ranked?.map(([place, , pieces]) => [place, pieces])).toEqual([
      ['1', '9'],
      ['2', '5'],
      ['2', '5'],
    ]);
    await guild.ask('/guild set standings:totals');
    const totals = await guild.ask('/standings', { as: 'Bea' });
    expect(totals.table).toBeNull();
    expect(JSON.stringify(totals)).not.toMatch(/Cea|Dea/);
    expect(totals.figures.mine?.value).toBe(9);
  });

  test('many members are a short table and a count of the rest', async () => {
    const guild = await opened();
    for (let i = 10; i < 40; i++) await guild.ask('/log 1', { as: `M${i}` });
    const { table } = await guild.ask('/standings');
    expect(table?.rows).toHaveLength(21);
    expect(table?.rows.at(-1)).toEqual(['and 10 others', '']);
  });

  test('before anything is logged, after the goal, and when it is over, no forecast is made up', async () => {
    const guild = await opened();
    expect((await guild.ask('/standings')).figures.chance).toBeUndefined();
    await guild.ask('/log 200');
    const done = await guild.ask('/standings');
    expect(done.lines[0]).toBe('200 of 200 rosettes, the goal is reached.');
    expect(done.figures).toMatchObject({
      chance: { value: 1 },
      medianWeeks: { value: 0 },
      left: { value: 0 },
    });
    const over = await guild.ask('/standings', { now: '2027-02-01T10:00:00Z' });
    expect(over.figures.chance).toBeUndefined();
    expect(over.lines).toContain('The last day was 31 Dec 2026.');
  });

  test('the chart carries the numbers that the words do', async () => {
    const guild = await opened();
    await guild.ask('/log 9 day:2026-12-02');
    await guild.ask('/log 4');
    const { pictures } = await guild.ask('/standings');
    const { of, alt } = pictures[0]!;
    expect(of).toMatchObject({
      draw: 'chart',
      title: 'Spring: 13 of 200 rosettes',
      goal: { value: 200, words: 'goal 200' },
    });
    expect((of as { series?: { values: unknown[] }[] }).series?.[0]?.values.slice(0, 2)).toEqual([9, 13]);
    expect(alt).toContain('13 of 200 rosettes');
  });

  test('a goal for each is told to her alone, and how many have reached it', async () => {
    const guild = await opened('/challenge open name:Four counting:star side:3 each:4 first:2026-12-01');
    await guild.ask('/log 4', { as: 'Bea' });
    await guild.ask('/log 1', { as: 'Cea' });
    const { lines } = await guild.ask('/standings', { as: 'Cea' });
    expect(lines).toContain('By 2 members so far; 1 at 4 or more.');
    expect(lines).toContain('Yours: 1 of 4.');
  });
});

describe('pace', () => {
  test('after three logs with minutes /time uses them, and says so', async () => {
    const guild = await opened();
    const before = await guild.ask('/time rosette:2');
    expect(before.figures.minutes?.value).toBeCloseTo(94.5, 6);
    for (const minutes of [80, 84]) await guild.ask(`/log 1 ${minutes} min`);
    expect((await guild.ask('/time rosette:2')).figures.minutes?.value).toBeCloseTo(94.5, 6);
    await guild.ask('/log 1 88 min');
    const after = await guild.ask('/time rosette:2');
    expect(after.figures.minutes?.value).toBeCloseTo(84, 6);
    expect(after.lines).toContain('Your pace from your last 3 logs: 2 min a seam, a fifth either way.');
    expect((await guild.ask('/me')).notes).toEqual([
      'Your pace from your last 3 logs: 2 min for a seam of 1 in.',
    ]);
    expect((await guild.ask('/me', { as: 'Bea' })).notes).toEqual([]);
    expect((await guild.ask('/time rosette:2', { as: 'Bea' })).figures.minutes?.value).toBeCloseTo(94.5, 6);
  });

  test('only the last six count, and what was taken back does not', async () => {
    const guild = await opened();
    for (let i = 0; i < 6; i++) await guild.ask('/log 1 84 min', { now: `2026-12-08T1${i}:00:00Z` });
    await guild.ask('/log 1 840 min', { now: '2026-12-08T18:00:00Z' });
    await guild.ask('/undo', { now: '2026-12-08T18:01:00Z' });
    expect((await guild.ask('/time rosette:2')).figures.minutes?.value).toBeCloseTo(84, 6);
  });

  test('a pace that she set or gave goes before', async () => {
    const guild = await opened();
    for (let i = 0; i < 3; i++) await guild.ask('/log 1 84 min');
    expect(await guild.figure('/time rosette:2 pace:1', 'minutes')).toBeCloseTo(42, 6);
    await guild.ask('/me set pace:3');
    expect(await guild.figure('/time rosette:2', 'minutes')).toBeCloseTo(126, 6);
  });

  test('/plan takes it as /time does and says so; a kit, which others sew, does not', async () => {
    const guild = await opened();
    for (const minutes of [80, 84, 88]) await guild.ask(`/log 1 ${minutes} min`);
    const plan = await guild.ask('/plan rosette rounds:2 size:2in');
    const time = await guild.ask('/time rosette:2 size:2in');
    for (const name of ['minutesLow', 'minutes', 'minutesHigh', 'finishDate'])
      expect(plan.figures[name]?.value).toEqual(time.figures[name]?.value);
    expect(plan.notes.join(' ')).toContain('2.67 min a seam from your last 3 logs');
    expect(await guild.figure('/kit rosette rounds:2 members:4', 'minutes')).toBeCloseTo(94.5, 6);
    expect((await guild.ask('/plan rosette rounds:2', { as: 'Bea' })).notes.join(' ')).not.toMatch(/a seam/);
    await guild.ask('/me set pace:3');
    expect((await guild.ask('/plan rosette rounds:2')).notes.join(' ')).toContain('your 3 min a seam');
  });

  test('a kept plan keeps the pace it was made with, told for the length of its seams', async () => {
    const guild = await opened();
    for (const minutes of [80, 84, 88]) await guild.ask(`/log 1 ${minutes} min`);
    await guild.ask('/plan keep name:Star rosette rounds:2 size:1in');
    const shown = await guild.ask('/plan show Star', { as: 'Bea' });
    expect(shown.figures.minutes?.value).toBeCloseTo(84, 6);
    expect(shown.notes.join(' ')).toContain('2 min a seam');
    const changed = await guild.ask('/plan change name:Star size:2in');
    expect(changed.figures.minutes?.value).toBeCloseTo(
      Number(await guild.figure('/time rosette:2 size:2in', 'minutes')),
      6,
    );
  });
});

describe('writing out', () => {
  test('the book as CSV, formulas made harmless, and as JSON', async () => {
    const guild = await opened();
    await guild.ask('/log 3 note:=SUM(1), "blue"', { as: 'Bea' });
    await guild.ask('/undo', { as: 'Bea' });
    const csv = await guild.ask('/challenge export');
    const text = new TextDecoder().decode(await draw(csv.pictures[0]!.of));
    expect(text.split('\r\n')).toEqual([
      'number,day,kind,member,name,by,pieces,minutes,note,picture,of,at',
      '1,2026-12-08,open,ada,Ada,ada,0,,,,,2026-12-08T12:00:00.000Z',
      `2,2026-12-08,log,bea,Bea,bea,3,,"'=SUM(1), ""blue""",,,2026-12-08T12:00:00.000Z`,
      '3,2026-12-08,back,bea,Bea,bea,-3,,,,2,2026-12-08T12:00:00.000Z',
      '',
    ]);
    const json = await guild.ask('/challenge export format:json');
    const book = JSON.parse(new TextDecoder().decode(await draw(json.pictures[0]!.of)));
    expect(book.challenge).toMatchObject({ name: 'Spring', total: 0, goal: 200 });
    expect(book.lines.map(({ pieces }: { pieces: number }) => pieces)).toEqual([0, 3, -3]);
  });
});

describe('a member who is forgotten', () => {
  test('leaves her pieces as nobody’s: totals, heads and weeks stay true, her name and words are gone', async () => {
    const guild = await opened();
    for (const as of ['Bea', 'Cea', 'Dea']) await guild.ask(`/log 3 note:by ${as}`, { as });
    await guild.ask('/challenge join', { as: 'Eda' });
    const before = await guild.ask('/standings');
    for (const as of ['Bea', 'Cea', 'Eda']) await guild.ask('/me forget confirm:yes', { as });
    const after = await guild.ask('/standings');
    expect(after.figures).toEqual(before.figures);
    expect(after.table?.rows).toEqual([
      ['Dea', '3'],
      ['and 2 others', ''],
    ]);
    const { pictures } = await guild.ask('/challenge export');
    const book = new TextDecoder().decode(await draw(pictures[0]!.of));
    expect(book).not.toMatch(/Bea|bea|Cea|cea|Eda|eda/);
    expect(book).toContain('by Dea');
    const history = await guild.ask('/challenge history');
    expect(history.table?.rows.filter(([, who]) => who === 'nobody’s now')).toHaveLength(3);
  });

  test('starts anew when she comes back, and an organiser can still put right what is nobody’s', async () => {
    const guild = await opened();
    for (const as of ['Bea', 'Cea']) await guild.ask('/log 3', { as });
    for (const as of ['Bea', 'Cea']) await guild.ask('/me forget confirm:yes', { as });
    expect(await guild.figure('/log 2', 'mine', { as: 'Bea' })).toBe(2);
    expect(await errorOf(guild, '/undo 2', { as: 'Bea' })).toBe('line-not-yours');
    expect(await guild.figure('/undo 2', 'total')).toBe(5);
    expect(await guild.figure('/fix 3 pieces:1', 'total')).toBe(3);
    expect((await guild.ask('/standings')).figures.total?.value).toBe(3);
  });
});
