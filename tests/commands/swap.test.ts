import { describe, expect, test } from 'vitest';
import type { Reply } from '../../src/chat/reply.ts';
import { type GuildRoom, guildRoom } from '../standin/guild-room.ts';

const open = () => guildRoom(':memory:', '2026-12-02T10:00:00Z');

const codeOf = async (reply: Promise<Reply>) => (await reply).error?.code;
const rowsOf = async (reply: Promise<Reply>) => (await reply).table?.rows ?? [];
const value = (reply: Reply, name: string) => reply.figures[name]?.value;

/** Ada, Bea and Cora with what each offers and would like. */
async function stash(): Promise<GuildRoom> {
  const guild = await open();
  await guild.ask('/swap open name:Stash first:2026-12-01 last:2026-12-20');
  await guild.ask('/swap offer 6 fat quarters florals');
  await guild.ask('/swap want 60 1in hexagons blue, 20 5in squares');
  await guild.ask('/swap offer 2½in strips x 20, 60 1in hexagons blue', { as: 'Bea' });
  await guild.ask('/swap want 4 fat quarters', { as: 'Bea' });
  await guild.ask('/swap offer 40 charms', { as: 'Cora' });
  await guild.ask('/swap want 2½in strips x 10, 2 fat quarters floral', { as: 'Cora' });
  return guild;
}

describe('/swap open', () => {
  test.each([
    ['/swap offer half a yard of stripes', 18 * 42],
    ['/swap offer three quarters of a yard pink', 27 * 42],
    ['/swap offer a quarter of a yard blue', 9 * 42],
    ['/swap offer 3/4 of a yard blue', 27 * 42],
    ['/swap offer 1/2 of a yard', 18 * 42],
    ['/swap offer half of a yard', 18 * 42],
    ['/swap offer 1 1/2 of a yard teal', 54 * 42],
    ['/swap offer a fat quarter of a yard pink', 18 * 21],
    ['/swap offer 42 5in squares in a pack', 42 * 25],
    ['/swap offer 20 2 1/2in strips from a roll', 20 * 2.5 * 42],
  ])('%s is so much of a yard', async (words, area) => {
    const guild = await guildRoom();
    await guild.ask('/swap open name:Stash');
    expect(await guild.figure(words, 'offered')).toBe(area);
  });

  test('a quarter of a metre is told as it is', async () => {
    const guild = await guildRoom();
    await guild.ask('/swap open name:Stash');
    expect((await guild.ask('/swap offer 1/4 of a metre red')).lines[0]).toMatch(/^Line 1: 0\.25 m, /);
  });

  test.each([
    ['/swap offer 1 charm pack red', 'goods-pack'],
    ['/swap offer two bundles of blue', 'goods-pack'],
    ['/swap offer squares from a pack', 'goods-pack'],
    ['/swap want 4 fat quarters not florals', 'goods-but-not'],
    ['/swap want 3 fat quarters forget-me-not blue', undefined],
    ['/swap offer 4 fat quarters, washed, no smoke', undefined],
  ])('%s is met with %s', async (words, code) => {
    const guild = await guildRoom();
    await guild.ask('/swap open name:Stash');
    expect((await guild.ask(words)).error?.code).toBe(code);
  });

  test('says what was opened; a name is given once; the days stand in order', async () => {
    const guild = await open();
    const reply = await guild.ask(
      '/swap open name:Stash first:2026-12-01 last:2026-12-20 rules:washed, no smoke',
    );
    expect(reply.title).toBe('Stash is open');
    expect(reply.lines[0]).toContain('20 Dec 2026');
    expect(reply.notes).toEqual(['Rules: washed, no smoke']);
    expect(await codeOf(guild.ask('/swap open stash'))).toBe('swap-name-taken');
    expect(await codeOf(guild.ask('/swap open X first:2026-12-20 last:2026-12-01'))).toBe('swap-days');
    expect(await codeOf(guild.ask('/swap open X each:4'))).toBe('swap-each-of-what');
  });

  test.each(['/swap open name:X', '/swap match', '/swap close', '/swap reopen', '/swap no-show Bea'])(
    '%s is an organiser’s work',
    async (words) => {
      const guild = await stash();
      expect(await codeOf(guild.ask(words, { as: 'Bea' }))).toBe('organisers-only');
    },
  );
});

describe('offers and wishes', () => {
  test('are kept just as they were typed, with their area', async () => {
    const guild = await open();
    await guild.ask('/swap open name:Stash');
    const reply = await guild.ask('/swap offer 2½in strips × 20, 6 fat  quarters “florals”');
    expect(value(reply, 'lines')).toEqual([1, 2]);
    expect(value(reply, 'offered')).toBeCloseTo(20 * 105 + 6 * 378, 6);
    expect((await rowsOf(guild.ask('/swap list'))).map(([line, who, what]) => [line, who, what])).toEqual([
      ['1', 'Ada', 'offers 2½in strips × 20'],
      ['2', 'Ada', 'offers 6 fat quarters “florals”'],
    ]);
  });

  test('are totalled with their areas and with the patches they make', async () => {
    const guild = await stash();
    const reply = await guild.ask('/swap list size:1in');
    const hexagon = ((3 * Math.sqrt(3)) / 2) * (1 + 0.5 / Math.sqrt(3)) ** 2;
    expect(value(reply, 'offered')).toBeCloseTo(6 * 378 + 20 * 105 + 60 * hexagon + 40 * 25, 6);
    expect(value(reply, 'wished')).toBeCloseTo(60 * hexagon + 20 * 25 + 4 * 378 + 10 * 105 + 2 * 378, 6);
    // From the trade's table of yields: 75 from a quarter, 18 from a strip, 4 from a 5-inch square; 60 are cut.
    expect(value(reply, 'patches')).toBe(6 * 75 + 20 * 18 + 40 * 4 + 60);
    expect(value(reply, 'members')).toBe(3);
  });

  test('may be changed and taken out by who made them, and by an organiser', async () => {
    const guild = await stash();
    expect(await codeOf(guild.ask('/swap edit line:1 to:9 fat quarters', { as: 'Bea' }))).toBe(
      'swap-not-yours',
    );
    const edited = await guild.ask('/swap edit line:4 to:8 2½in strips red', { as: 'Bea' });
    expect(value(edited, 'lines')).toEqual([4]);
    expect((await rowsOf(guild.ask('/swap list')))[3]).toEqual(['4', 'Bea', 'offers 8 2½in strips red']);
    await guild.ask('/swap withdraw 7');
    expect((await rowsOf(guild.ask('/swap list'))).map(([line]) => line)).not.toContain('7');
    const which = await guild.ask('/swap withdraw', { as: 'Bea' });
    expect(which.choices.at(-1)?.ask).toContain('all:yes');
    await guild.ask('/swap withdraw all:yes', { as: 'Bea' });
    expect((await rowsOf(guild.ask('/swap list'))).map(([, who]) => who)).not.toContain('Bea');
  });

  test('are taken on the swap’s days only, in the member’s own time zone', async () => {
    const guild = await open();
    await guild.ask('/swap open name:Stash first:2026-12-05 last:2026-12-06');
    const offer = (now: string) => codeOf(guild.ask('/swap offer 1 fat quarter', { now }));
    expect(await offer('2026-12-04T23:00:00Z')).toBe('swap-not-begun');
    expect(await offer('2026-12-05T00:00:00Z')).toBeUndefined();
    expect(await offer('2026-12-07T00:30:00Z')).toBe('swap-over');
    await guild.ask('/me set zone:America/Chicago');
    expect(await offer('2026-12-07T00:30:00Z')).toBeUndefined();
    await guild.ask('/swap close');
    expect(await offer('2026-12-06T12:00:00Z')).toBe('swap-closed');
    await guild.ask('/swap reopen');
    expect(await offer('2026-12-06T12:00:00Z')).toBeUndefined();
  });

  test('that may be read in two ways are asked about, and each choice is kept', async () => {
    const guild = await stash();
    const asked = await guild.ask('/swap offer 6 1/2in hexagons blue, 2 charms');
    expect(asked.asks).toBe('Is that blue 1/2 in hexagons x 6, or blue 6 1/2 in hexagon x 1?');
    const kept = await guild.ask(asked.choices[0]?.ask ?? '');
    expect(kept.lines[0]).toMatch(/^Line \d+: 6 × 1\/2 in hexagons/);
    expect(kept.lines[1]).toMatch(/^Line \d+: 2 × 5-inch squares/);
  });

  test('are read back in the reader’s own units', async () => {
    const guild = await stash();
    await guild.ask('/me set unit:cm', { as: 'Bea' });
    const kept = await guild.ask('/swap offer 4 2½in strips, 2 yd', { as: 'Bea' });
    expect(kept.lines[0]).toMatch(/^Line \d+: 4 × 63.5 mm strips/);
    expect(kept.lines[1]).toMatch(/^Line \d+: 1.8 m,/);
  });

  test('delivered twice are kept once, and answered alike', async () => {
    const guild = await stash();
    const offer = () => guild.ask('/swap offer 3 yards of green', { as: 'Dora', event: 'e1' });
    const once = await offer();
    expect(await offer()).toEqual(once);
    expect((await rowsOf(guild.ask('/swap list'))).filter(([, who]) => who === 'Dora')).toHaveLength(1);
  });

  test('where several swaps are open it is asked which, or the one held here is meant', async () => {
    const guild = await stash();
    await guild.ask('/swap open name:Scraps place:attic');
    const which = await guild.ask('/swap offer 2 charms', { place: 'garden' });
    expect(which.asks).toMatch(/Which one\?/);
    expect(which.choices.map(({ label }) => label)).toEqual(['Scraps', 'Stash']);
    const there = await guild.ask('/swap offer 2 charms', { place: 'attic' });
    expect(there.title).toBe('Offered in Scraps');
    expect((await guild.ask(which.choices[1]!.ask, { place: 'garden' })).title).toBe('Offered in Stash');
  });
});

describe('/swap match', () => {
  test('lists every parcel line: from, to, what as it was offered, count, area', async () => {
    const guild = await stash();
    const reply = await guild.ask('/swap match');
    expect(reply.table?.columns).toEqual(['from', 'to', 'what', 'count', 'area']);
    const areas = new Map([
      ['6 fat quarters florals', 378],
      ['2½in strips x 20', 105],
      ['60 1in hexagons blue', 4.3145826],
      ['40 charms', 25],
    ]);
    const [sent, received] = [new Map<string, number>(), new Map<string, number>()];
    for (const [from = '', to = '', what = '', count = '', area = ''] of reply.table?.rows ?? []) {
      expect(from).not.toBe(to);
      expect([...areas.keys()]).toContain(what);
      const exact = Number(count) * areas.get(what)!;
      expect(Number(area.replaceAll(',', ''))).toBe(Math.round(exact));
      sent.set(from, (sent.get(from) ?? 0) + exact);
      received.set(to, (received.get(to) ?? 0) + exact);
    }
    for (const [who, area] of sent) expect(received.get(who) ?? 0).toBeGreaterThanOrEqual(0.8 * area - 1e-3);
    expect(value(reply, 'area')).toBeCloseTo(
      [...sent.values()].reduce((sum, one) => sum + one),
      3,
    );
    expect(await guild.ask('/swap match')).toEqual(reply);
  });

  test('with a smaller share holds back more; the share is kept', async () => {
    const guild = await stash();
    const even = await guild.ask('/swap match share:0%');
    const loose = await guild.ask('/swap match share:100%');
    expect(Number(value(loose, 'area'))).toBeGreaterThan(Number(value(even, 'area')));
    expect(value(loose, 'area')).toBeCloseTo(Number(value(loose, 'mostArea')), 6);
  });

  test('explains each member in a line, and why what is left is left', async () => {
    const guild = await stash();
    const file = (await guild.ask('/swap match')).pictures.find(({ name }) => name.endsWith('.txt'));
    const lines = String(file?.of.text).trim().split('\n');
    for (const who of ['Ada', 'Bea', 'Cora'])
      expect(lines.some((line) => line.startsWith(`${who} sends `))).toBe(true);
    expect(lines.some((line) => line.includes('line 1, 6 fat quarters florals'))).toBe(true);
  });

  test('says of an offer that nobody wished for more, of a wish that others had it, of one piece that it stays', async () => {
    const guild = await open();
    await guild.ask('/swap open name:Stash');
    await guild.ask('/swap offer 5 fat quarters florals');
    await guild.ask('/swap want 60 1in hexagons, 10 2 1/2in strips, 12 charms');
    await guild.ask('/swap offer 60 1in hexagons, 2 1/2in strips x 20, 1/2 yd dots', { as: 'Bea' });
    await guild.ask('/swap want 4 fat quarters florals', { as: 'Bea' });
    await guild.ask('/swap offer 12 charms red', { as: 'Cora' });
    await guild.ask('/swap want 2 fat quarters', { as: 'Cora' });
    const { notes, pictures } = await guild.ask('/swap match');
    const told = [...notes, ...pictures.map(({ of }) => String(of.text))].join('\n');
    expect(told).toMatch(/Bea’s line \d+, 2 1\/2in strips x 20: 10 stay with her; nobody wished for more/);
    expect(told).toMatch(/1\/2 yd dots: 1 stays with her; nobody else has a line like it/);
    expect(told).toMatch(/Cora’s line \d+, 2 fat quarters: 1 not met; it all went to others/);
  });

  test('that moves nothing says how more would, and leaves the swap open', async () => {
    const guild = await open();
    await guild.ask('/swap open name:Stash');
    await guild.ask('/swap offer 6 fat quarters florals');
    await guild.ask('/swap want 10 charms');
    await guild.ask('/swap offer 10 charms', { as: 'Bea' });
    await guild.ask('/swap want 4 fat quarters', { as: 'Bea' });
    const none = await guild.ask('/swap match');
    expect(none.title).toBe('Stash: no match');
    expect(none.lines.join(' ')).toContain('`/swap match share:40%`');
    expect((await guild.ask('/swap want 12 charms', { as: 'Bea' })).error).toBeNull();
    expect(Number(value(await guild.ask('/swap match share:50%'), 'pieces'))).toBeGreaterThan(0);
  });

  test('a wider share that is offered moves something', async () => {
    const guild = await open();
    await guild.ask('/swap open name:Stash');
    await guild.ask('/swap offer 6 fat quarters florals');
    await guild.ask('/swap want 10 charms');
    await guild.ask('/swap offer 1 charm', { as: 'Bea' });
    await guild.ask('/swap want 1 fat quarter', { as: 'Bea' });
    const none = await guild.ask('/swap match');
    const share = /share:\d+%/.exec(none.lines.join(' '))?.[0];
    expect((await guild.ask(`/swap match ${share}`)).title).toBe('Stash is matched');
  });

  test('tells the same totals as its table, when some is in the post already', async () => {
    const guild = await stash();
    const sums = (reply: Reply) => {
      const rows = reply.table?.rows ?? [];
      return [rows.length, rows.reduce((sum, row) => sum + Number(row[3]), 0)];
    };
    const first = await guild.ask('/swap match');
    expect([value(first, 'parcels'), value(first, 'pieces')]).toEqual(sums(first));
    expect(first.lines.at(-1)).toBe('Offers and wishes are closed; `/swap reopen` takes more.');
    await guild.ask('/swap sent', { as: 'Bea' });
    const second = await guild.ask('/swap match');
    expect([value(second, 'parcels'), value(second, 'pieces')]).toEqual(sums(second));
    expect(second.lines[0]).toMatch(/ of them sent already\.$/);
  });

  test('one for whom nothing is planned is told that, and who left has no lines in the list', async () => {
    const guild = await stash();
    await guild.ask('/swap offer 9 kites 1in', { as: 'Dot' });
    await guild.ask('/swap match');
    expect((await guild.ask('/swap envelopes', { as: 'Dot' })).lines[0]).toBe(
      'Nothing is planned for you: nothing to send, nothing to come.',
    );
    const offers = async () => value(await guild.ask('/swap list'), 'offers');
    expect(await offers()).toBe(5);
    await guild.ask('/swap leave', { as: 'Dot' });
    expect(await offers()).toBe(4);
    expect((await rowsOf(guild.ask('/swap list'))).join(' ')).not.toContain('kites');
  });

  test('nothing to send is met with what there is, not with the same ask', async () => {
    const guild = await stash();
    await guild.ask('/swap match');
    await guild.ask('/swap sent');
    expect((await guild.ask('/swap sent')).lines.at(-1)).toBe('`/swap envelopes`');
  });

  test('takes two', async () => {
    const guild = await open();
    await guild.ask('/swap open name:Stash');
    await guild.ask('/swap offer 2 charms');
    expect(await codeOf(guild.ask('/swap match'))).toBe('swap-too-few');
  });
});

describe('sending, coming, settling', () => {
  test('each marks her own, once; the settling list adds up', async () => {
    const guild = await stash();
    await guild.ask('/swap match');
    const mine = await guild.ask('/swap envelopes', { as: 'Bea' });
    expect(mine.audience).toBe('asker');
    expect((await rowsOf(Promise.resolve(mine))).some(([what]) => what?.includes('to Cora'))).toBe(true);
    expect(await codeOf(guild.ask('/swap envelopes who:Ada', { as: 'Bea' }))).toBe('organisers-only');
    const before = await guild.ask('/swap settle');
    expect(value(before, 'come')).toBe(0);
    await guild.ask('/swap sent to:Cora', { as: 'Bea' });
    expect(await codeOf(guild.ask('/swap sent to:Cora', { as: 'Bea' }))).toBe('swap-none-sent');
    expect(value(await guild.ask('/swap settle'), 'onItsWay')).toBe(1);
    await guild.ask('/swap received from:Bea', { as: 'Cora' });
    for (const as of ['Ada', 'Bea', 'Cora']) {
      await guild.ask('/swap sent', { as });
      await guild.ask('/swap received', { as });
    }
    await guild.ask('/swap received');
    const after = await guild.ask('/swap settle done:yes');
    expect(value(after, 'come')).toBe(value(after, 'parcels'));
    expect(after.title).toBe('Stash is settled');
    expect(await codeOf(guild.ask('/swap offer 1 charm'))).toBe('swap-none');
  });

  test('what has come was sent, whoever forgot to say so', async () => {
    const guild = await stash();
    await guild.ask('/swap match');
    await guild.ask('/swap received', { as: 'Cora' });
    await guild.ask('/swap no-show Cora');
    const after = await guild.ask('/swap settle');
    expect(Number(value(after, 'come'))).toBeGreaterThan(0);
  });

  test('what was said too soon is taken back', async () => {
    const guild = await stash();
    await guild.ask('/swap match');
    await guild.ask('/swap sent', { as: 'Cora' });
    await guild.ask('/swap sent undo:yes', { as: 'Cora' });
    expect(value(await guild.ask('/swap settle'), 'onItsWay')).toBe(0);
  });

  test('a no-show: what is not sent is dropped, what was sent to her comes back, the rest is matched anew', async () => {
    const guild = await stash();
    await guild.ask('/swap match');
    await guild.ask('/swap sent to:Cora', { as: 'Bea' });
    const marked = await guild.ask('/swap no-show Cora');
    expect(value(marked, 'toSendBack')).toBe(1);
    expect(value(await guild.ask('/swap settle'), 'toSendBack')).toBe(1);
    const anew = await guild.ask('/swap match');
    const unsent = (anew.table?.rows ?? []).slice(1);
    expect(unsent.flat()).not.toContain('Cora');
    await guild.ask('/swap no-show Cora undo:yes');
    expect(value(await guild.ask('/swap settle'), 'toSendBack')).toBe(0);
  });
});

describe('even swaps', () => {
  test.each([
    ['/swap rounds members:12 each:10', 110, 1320],
    ['/swap rounds 6', 5, 30],
    ['even swap among 12 members, 10 each', 110, 1320],
    ['/swap rounds members:Ada, Bea, Cora each:4', 8, 24],
  ])('%s', async (words, makePerMember, exchanged) => {
    const reply = await (await open()).ask(words);
    expect(reply.error).toBeNull();
    expect([value(reply, 'makePerMember'), value(reply, 'exchanged')]).toEqual([makePerMember, exchanged]);
  });

  test('a latecomer and a no-show: the rounds are made anew without what was sent', async () => {
    const guild = await open();
    await guild.ask('/swap open Charms each:4 of:5in squares');
    for (const as of ['Ada', 'Bea', 'Cora']) await guild.ask('/swap join', { as });
    expect(await codeOf(guild.ask('/swap offer 4 charms'))).toBe('swap-is-even');
    const match = await guild.ask('/swap match');
    expect(match.table?.rows).toHaveLength(6);
    await guild.ask('/swap sent', { as: 'Ada' });
    const late = await guild.ask('/swap join', { as: 'Dora' });
    expect(value(late, 'makePerMember')).toBe(12);
    // 4 × 3 pairs, less the two that Ada has sent.
    expect(value(await guild.ask('/swap settle'), 'toSend')).toBe(10);
    await guild.ask('/swap no-show Cora');
    const settle = await guild.ask('/swap settle');
    // Ada, Bea and Dora: six pairs, one of them sent; one more was sent to Cora and comes back.
    expect([value(settle, 'toSend'), value(settle, 'onItsWay'), value(settle, 'toSendBack')]).toEqual([
      5, 1, 1,
    ]);
  });
});

describe('an ask that only some swaps can be about', () => {
  test('goes to those: an even one is joined, offers go where they are taken', async () => {
    const guild = await stash();
    await guild.ask('/swap open name:Charms each:4 of:5in squares');
    expect((await guild.ask('/swap join', { as: 'Bea' })).title).toBe('You are in Charms');
    expect((await guild.ask('/swap offer 2 charms', { as: 'Bea' })).title).toBe('Offered in Stash');
  });

  test('envelopes are those still to be sent and still to come, not what is in the post or should come back', async () => {
    const guild = await open();
    await guild.ask('/swap open name:Charms each:4 of:5in squares');
    for (const as of ['Ada', 'Bea', 'Cora']) await guild.ask('/swap join', { as });
    await guild.ask('/swap match');
    const lines = async () => (await guild.ask('/swap envelopes', { as: 'Ada' })).lines;
    expect((await lines())[0]).toBe('2 envelopes to send, 2 to come.');
    await guild.ask('/swap sent to:Bea', { as: 'Ada' });
    expect((await lines())[0]).toBe('1 envelope to send, 2 to come.');
    await guild.ask('/swap leave', { as: 'Bea' });
    expect((await lines()).slice(0, 2)).toEqual([
      '1 envelope to send, 1 to come.',
      '1 parcel should come back.',
    ]);
    await guild.ask('/swap sent', { as: 'Ada' });
    await guild.ask('/swap received', { as: 'Ada' });
    await guild.ask('/swap received from:Cora', { as: 'Ada' });
    expect((await lines())[0]).toMatch(/^Nothing more to send, /);
  });

  test('who takes herself out is spoken to', async () => {
    const guild = await stash();
    await guild.ask('/swap match');
    for (const as of ['Ada', 'Bea']) await guild.ask('/swap sent', { as });
    const out = await guild.ask('/swap leave', { as: 'Cora' });
    expect(out.lines.join(' ')).toMatch(/to you|to or from you/);
    expect(out.lines.join(' ')).not.toMatch(/\bher\b/);
  });

  test('a line that an organiser changes for her is told as hers', async () => {
    const guild = await stash();
    const changed = await guild.ask('/swap edit line:1 to:5 fat quarters florals', {
      as: 'Zoe',
      organiser: true,
    });
    expect(changed.title).toBe('Changed in Stash');
    expect(changed.lines.join(' ')).toMatch(/She offers .* and wishes for/);
  });
});

describe('somebody forgotten', () => {
  test('leaves the swap, and what others were sent stays true', async () => {
    const guild = await stash();
    await guild.ask('/swap match');
    for (const as of ['Ada', 'Bea', 'Cora']) await guild.ask('/swap sent', { as });
    for (const as of ['Ada', 'Bea', 'Cora']) await guild.ask('/swap received', { as });
    const before = await guild.ask('/swap settle');
    await guild.ask('/me forget confirm:yes', { as: 'Bea' });
    const after = await guild.ask('/swap settle');
    expect(value(after, 'come')).toBe(value(before, 'come'));
    const row = (reply: Reply, who: string) => reply.table?.rows.find(([name]) => name === who);
    expect(row(after, 'Cora')).toEqual(row(before, 'Cora'));
    expect(JSON.stringify(after)).not.toContain('Bea');
    expect(JSON.stringify(await guild.ask('/swap list'))).not.toContain('Bea');
  });
});
