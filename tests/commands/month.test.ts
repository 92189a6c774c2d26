import { describe, expect, test } from 'vitest';
import { clothNeed } from '../../src/calculator/fabric/cloth-need.ts';
import { purchase } from '../../src/calculator/fabric/purchase.ts';
import { cutPatch } from '../../src/calculator/shapes/cut.ts';
import { type GuildRoom, guildRoom } from '../standin/guild-room.ts';

const GARDEN =
  '/month open name:Garden rosettes:7 rounds:2 path:one outer:yes parts:12 first:2026-09-01 catchup:6';

async function opened(words = GARDEN): Promise<GuildRoom> {
  const guild = await guildRoom();
  expect((await guild.ask(words)).error).toBeNull();
  return guild;
}

const list = (value: unknown): number[] => value as number[];

describe('a block of the month', () => {
  test('says that the path goes with its rosette: its share is more than a rosette has', async () => {
    const guild = await opened();
    const beside = 'With each rosette goes the path beside it.';
    expect((await guild.ask('/month show')).lines).toContain(beside);
    expect((await guild.ask('/month block 1')).lines).toContain(beside);
    const none = await guild.ask('/month open name:Plain rosettes:7 rounds:2 path:none parts:6');
    expect(none.lines.join(' ')).not.toMatch(/With each rosette/);
    const set = await guild.ask('/month open name:Set rosettes:7 rounds:1 path:diamonds parts:6');
    expect(set.lines).toContain('With each rosette goes what is set beside it.');
  });

  test('of a quilt for a crib bears the caution', async () => {
    const guild = await guildRoom();
    const baby = await guild.ask('/month open name:Baby field:crib size:1in parts:6');
    expect(baby.cautions.join()).toMatch(/no quilt in a crib/);
  });

  test('is shared out by equal seam, not by equal patches', async () => {
    const guild = await opened();
    const { figures } = await guild.ask('/month show');
    const lengths = list(figures.blockSeamLengths?.value);
    const pieces = list(figures.blockPieces?.value);
    expect(lengths).toHaveLength(12);
    expect(Math.max(...lengths) - Math.min(...lengths)).toBeLessThanOrEqual(6);
    expect(Math.max(...pieces) - Math.min(...pieces)).toBeGreaterThan(6);
    // The garden as /count has it: nothing is lost, nothing twice.
    const whole = await guild.ask('/count garden rosettes:7 rounds:2 path:one outer:yes');
    expect(pieces.reduce((sum, one) => sum + one, 0)).toBe(whole.figures.total?.value);
    expect(figures.seams?.value).toBe(whole.figures.seams?.value);
    expect(figures.seamLength?.value).toBe(whole.figures.seamLength?.value);
  });

  test('has a day for each block, and turns to catch up', async () => {
    const guild = await opened();
    const { table, lines } = await guild.ask('/month show');
    expect(table?.rows).toHaveLength(14);
    expect(table?.rows.map(([opens]) => opens)).toEqual([
      ...['1 Sep 2026', '1 Oct 2026', '1 Nov 2026', '1 Dec 2026', '1 Jan 2027', '1 Feb 2027', '1 Mar 2027'],
      ...['1 Apr 2027', '1 May 2027', '1 Jun 2027', '1 Jul 2027', '1 Aug 2027', '1 Sep 2027', '1 Oct 2027'],
    ]);
    expect(table?.rows[6]?.[1]).toBe('catch up');
    expect(lines).toContain('Block 4 is on; block 5 from 1 Jan 2027.');
  });

  test('a block has its cut list and cloth from the calculator', async () => {
    const guild = await opened(
      '/month open name:Field field:40x50in size:1in parts:6 every:week first:2026-12-01',
    );
    const { figures, table } = await guild.ask('/month block 1 month:Field');
    const [row] = table!.rows.filter(([what]) => what === 'hexagon, whole');
    const pieces = Number(row![1]);
    expect(table!.rows.reduce((sum, one) => sum + Number(one[1]), 0)).toBe(figures.pieces?.value);
    const found = clothNeed(cutPatch('hexagon', { edge: 1 }, 0.25, 'pointed'), pieces, 42);
    if (!found.ok) throw new Error('no yardage');
    expect(row![2]).toBe(`${yardsWords(purchase(found.value.buy, 'yard').amount)} yd`);
    expect(figures.width?.value).toBeGreaterThan(40);
  });

  test('when the last block is sewn it is as large as the layout', async () => {
    const guild = await opened();
    const last = await guild.ask('/month block 12');
    const whole = await guild.ask('/count garden rosettes:7 rounds:2 path:one outer:yes');
    expect(last.figures.width?.value).toBeCloseTo(Number(whole.figures.width?.value), 9);
    expect(last.figures.height?.value).toBeCloseTo(Number(whole.figures.height?.value), 9);
  });

  test('whole blocks are shared out whole', async () => {
    const guild = await opened('/month open name:Sampler list:rosette 3 x4, star 4 x4, block x12 parts:6');
    const { figures, table } = await guild.ask('/month show');
    // 90 seams in a rosette of three rounds (A045945), 168 in a star of four a side (A152746), 3 in a block.
    expect(figures.seams?.value).toBe(4 * 90 + 4 * 168 + 12 * 3);
    expect(list(figures.blockSeamLengths?.value)).toEqual([177, 177, 177, 177, 180, 180]);
    expect(table?.rows[4]?.[1]).toBe('5: 2 rosettes of 3 rounds');
  });

  test('who has finished which is said, taken back, and counted where the guild names nobody', async () => {
    const guild = await opened();
    const bea = { as: 'Bea' };
    expect((await guild.ask('/month done 3', bea)).lines[0]).toBe('Block 3 is finished.');
    expect((await guild.ask('/month done 3', bea)).lines[0]).toBe('Block 3 is finished, as it was.');
    await guild.ask('/month done', bea);
    await guild.ask('/month done 3', { as: 'Cea' });
    const finished = async () =>
      (await guild.ask('/month show', bea)).table?.rows.map((row) => row[2]).slice(0, 4);
    expect(await finished()).toEqual(['', '', 'Bea, Cea', 'Bea']);
    expect((await guild.ask('/month show', bea)).figures.mine?.value).toEqual([3, 4]);
    await guild.ask('/month undone 3', bea);
    expect(await finished()).toEqual(['', '', 'Cea', 'Bea']);
    await guild.ask('/guild set standings:totals');
    expect(await finished()).toEqual(['', '', '1', '1']);
  });

  test.each([
    ['what is this month’s block?', 'Garden, block 1'],
    ["show me the month's block", 'Garden, block 1'],
    ['how is the block of the month going', 'Garden, no. 1'],
  ])('%s', async (words, title) => {
    const guild = await guildRoom();
    await guild.ask('/month open name:Garden rosettes:7 rounds:2 parts:6 first:2026-12-01');
    expect((await guild.ask(words)).title).toBe(title);
  });

  test('a block that is to come is for organisers alone to look at', async () => {
    const guild = await opened();
    expect((await guild.ask('/month block 5', { as: 'Bea' })).error?.code).toBe('block-not-open');
    expect((await guild.ask('/month block 5')).error).toBeNull();
    expect((await guild.ask('/month block 13')).error?.code).toBe('block-unknown');
  });

  test.each([
    ['/month open name:X parts:12', 'what-to-share'],
    ['/month open name:X field:40x50in star:4', 'one-of-these'],
    ['/month open name:X star:1 parts:12', 'more-parts-than-patches'],
    ['/month open name:X list:rosette 3 parts:4', 'more-parts-than-blocks'],
    ['/month open name:X list:rosette 3, teapot 2', 'list-unread'],
    ['/month open name:X field:480x480in size:1/4in', 'too-many-patches'],
    [GARDEN, 'name-taken'],
  ])('%s is met with %s', async (words, code) => {
    const guild = await opened();
    expect((await guild.ask(words)).error?.code).toBe(code);
  });

  test('members do not open, close or reopen one', async () => {
    const guild = await opened();
    for (const words of [GARDEN, '/month close', '/month reopen'])
      expect((await guild.ask(words, { as: 'Bea' })).error?.code).toBe('guild-organisers-only');
    expect((await guild.ask('/month close')).title).toBe('Garden is closed');
    expect((await guild.ask('/month done 3', { as: 'Bea' })).error?.code).toBe('none-open');
    expect((await guild.ask('/month reopen')).title).toBe('Garden is open again');
  });
});

describe('a whole month', () => {
  test('shows what opens and ends, and what was logged week by week', async () => {
    const guild = await opened();
    await guild.ask('/challenge open name:Spring goal:200 first:2026-12-01 last:2026-12-31');
    for (const day of ['01', '02', '06', '07']) await guild.ask(`/log 2 day:2026-12-${day}`);
    const view = await guild.ask('/month view');
    expect(view.title).toBe('December 2026');
    expect(view.figures.logged?.value).toBe(8);
    expect(view.table?.rows).toEqual([
      ['Tue 1', 'Spring begins'],
      ['Tue 1', 'Garden: block 4 opens'],
      ['Sun 6', 'Spring: 6 rosettes in the week'],
      ['Sun 13', 'Spring: 2 rosettes in the week'],
      ['Thu 31', 'last day of Spring'],
    ]);
    expect(view.pictures[0]?.of.draw).toBe('chart');
    expect((await guild.ask('/month view February')).title).toBe('February 2027');
    expect((await guild.ask('/month view next')).title).toBe('January 2027');
    expect((await guild.ask('/month view 2026-13')).error?.code).toBe('month-unread');
  });
});

function yardsWords(yards: number): string {
  const [whole, eighths] = [Math.floor(yards), Math.round((yards % 1) * 8)];
  const part = ['', '1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8'][eighths];
  return [whole || '', part].filter(Boolean).join(' ');
}
