import { describe, expect, test } from 'vitest';
import { type GuildRoom, guildRoom } from '../standin/guild-room.ts';

/*
 * Counts of the layouts as the trade's tables have them: seven rosettes of two rounds with a path about the
 * outside are 217 hexagons, 84 of them path; a rosette of two rounds is 19 (OEIS A003215); a star of four a
 * side is 96 diamonds (OEIS A033581).
 */

const GARDEN = '/plan keep name:Spring garden layout:garden rosettes:7 rounds:2 outer:yes size:3/4in';

async function kept(plan: string, ...more: string[]): Promise<GuildRoom> {
  const guild = await guildRoom();
  for (const words of [plan, ...more]) expect((await guild.ask(words)).error, words).toBeNull();
  return guild;
}

const figuresOf = async (guild: GuildRoom, words: string) => {
  const { figures } = await guild.ask(words);
  return Object.fromEntries(Object.entries(figures).map(([name, { value }]) => [name, value]));
};

const OPEN = '/challenge open name:Top plan:spring GARDEN';

describe('a challenge of a kept plan', () => {
  test('takes from it what is counted, how large and how many', async () => {
    const guild = await kept(GARDEN);
    const opened = await guild.ask(OPEN);
    expect(opened.lines[0]).toBe('7 rosettes of 2 rounds.');
    expect(opened.figures).toMatchObject({ goal: { value: 7 }, piecesLeft: { value: 217 } });
    expect(opened.notes.join(' ')).not.toMatch(/rosettes|round|side/);
    expect(await figuresOf(guild, '/log 1')).toMatchObject({ total: 1 });
    // 42 seams of ¾ in.
    expect(await figuresOf(guild, '/standings')).toMatchObject({ seamLength: 31.5 });
  });

  test.each(['/standings', '/challenge show'])('%s says the pieces left, by part', async (words) => {
    const guild = await kept(GARDEN, OPEN, '/log 3');
    const reply = await guild.ask(words);
    expect(reply.lines).toContain(
      '160 of 217 pieces left in plan ‘Spring garden’: 4 centres, 72 petals, 84 for the path.',
    );
    expect(await figuresOf(guild, words)).toMatchObject({
      ...{ piecesLeft: 160, piecesPlanned: 217, centreLeft: 4, petalLeft: 72, pathLeft: 84 },
    });
  });

  test('what joins the rosettes is left when all of them are sewn', async () => {
    const guild = await kept(GARDEN, OPEN, '/log 9');
    expect((await guild.ask('/standings')).lines).toContain(
      '84 of 217 pieces left in plan ‘Spring garden’: 84 for the path.',
    );
  });

  test('counted in patches, in all', async () => {
    const guild = await kept(GARDEN, `${OPEN} counting:patch`, '/log 200');
    expect(await figuresOf(guild, '/standings')).toMatchObject({ goal: 217, left: 17, piecesLeft: 17 });
    await guild.ask('/log 17');
    expect((await guild.ask('/standings')).lines).toContain(
      'All 217 pieces of plan ‘Spring garden’ are sewn.',
    );
  });

  test.each([
    ['star number:3 side:4', '3 stars, 4 a side.', { goal: 3, piecesLeft: 288 }, { piecesLeft: 192 }],
    ['blocks blocks:10', '10 blocks of three.', { goal: 10, piecesLeft: 30 }, { piecesLeft: 27 }],
    [
      'rosette number:2 rounds:3',
      '2 rosettes of 3 rounds.',
      { piecesLeft: 74 },
      { piecesLeft: 37, round3Left: 18 },
    ],
    [
      'stars stars:7 set:hexagons',
      '7 stars, 1 a side.',
      { piecesLeft: 48 },
      { starLeft: 36, betweenLeft: 6 },
    ],
    ['shape:kite number:240 size:2in', '240 patches.', { piecesLeft: 240 }, { piecesLeft: 239 }],
  ])('/plan %s is counted as %s', async (plan, first, before, after) => {
    const guild = await kept(`/plan keep ${plan} name:Some`);
    const opened = await guild.ask('/challenge open name:Top plan:Some');
    expect(opened.lines[0]).toBe(first);
    expect(await figuresOf(guild, '/challenge show')).toMatchObject(before);
    await guild.ask('/log 1');
    expect(await figuresOf(guild, '/challenge show')).toMatchObject(after);
  });

  test('of something else than its rosettes, in all', async () => {
    const guild = await kept(GARDEN, `${OPEN} rounds:1`, '/log 2');
    const figures = await figuresOf(guild, '/challenge show');
    expect(figures).toMatchObject({ piecesLeft: 217 - 2 * 7 });
    expect(figures).not.toHaveProperty('goal');
    expect(figures).not.toHaveProperty('petalLeft');
  });

  test('goes by the plan as it is now, and says when it is gone', async () => {
    const guild = await kept(GARDEN, OPEN, '/log 3', '/plan change name:Spring garden rosettes:19 outer:no');
    // Nineteen of two rounds: 559 pieces with the outer path of 198, here without it.
    expect(await figuresOf(guild, '/standings')).toMatchObject({ centreLeft: 16, petalLeft: 16 * 18 });
    await guild.ask('/plan remove Spring garden');
    expect((await guild.ask('/standings')).lines).toContain('Its plan ‘Spring garden’ is kept no longer.');
  });

  test('is tied to a plan later, and untied', async () => {
    const guild = await kept(GARDEN, '/challenge open name:Top rounds:2 goal:7', '/log 1');
    const tied = await guild.ask('/challenge edit plan:spring garden');
    expect(tied.lines[0]).toBe('Plan none to Spring garden.');
    expect(await figuresOf(guild, '/standings')).toMatchObject({ piecesLeft: 198, goal: 7 });
    await guild.ask('/challenge edit plan:none');
    expect(await figuresOf(guild, '/standings')).not.toHaveProperty('piecesLeft');
  });

  test('a plan that is not kept is met with those that are', async () => {
    const guild = await kept(GARDEN);
    const { error, lines } = await guild.ask('/challenge open name:Top plan:Spring gardn');
    expect(error?.code).toBe('plan-unknown');
    expect(lines.join(' ')).toContain('`/challenge open name:Top plan:Spring garden`');
    expect((await guild.ask('/challenge edit plan:X')).error?.code).toBe('none-open');
  });
});
