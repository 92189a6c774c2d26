import { describe, expect, test } from 'vitest';
import { type GuildRoom, guildRoom } from '../standin/guild-room.ts';
import { examples, wordsOf } from './asking.ts';
import { expectReadsWell } from './reads-well.ts';

const asks = examples.filter((one) => /^\/swap\b|^\/me (?:export|forget)\b/.test(one));

/** A guild in which each example can be asked: three members with offers and wishes, matched where it must be. */
async function guildFor(words: string): Promise<GuildRoom> {
  const guild = await guildRoom(':memory:', '2026-12-10T10:00:00Z');
  if (words.startsWith('/swap open')) return guild;
  if (/^\/swap (?:join|rounds$)/.test(words)) {
    await guild.ask('/swap open name:Charms each:4 of:5in squares');
    for (const as of ['Bea', 'Cora']) await guild.ask('/swap join', { as });
    return guild;
  }
  await guild.ask('/swap open name:Stash first:2026-12-01 last:2026-12-20 rules:washed, please');
  await guild.ask('/swap offer 6 fat quarters florals, 10 5in squares, 4 fat eighths');
  await guild.ask('/swap want 12 strips');
  await guild.ask('/swap offer 2 1/2in strips x 20', { as: 'Bea' });
  await guild.ask('/swap want 4 fat quarters', { as: 'Bea' });
  await guild.ask('/swap offer 60 1in hexagons blue', { as: 'Cora' });
  await guild.ask('/swap want 10 charms', { as: 'Cora' });
  if (/^\/swap (?:envelopes|sent|received|settle|reopen|no-show)/.test(words)) await guild.ask('/swap match');
  // Ada is the one who asks: what comes to her was sent by Bea.
  if (words.startsWith('/swap received')) await guild.ask('/swap sent', { as: 'Bea' });
  return guild;
}

const readers = ['in', 'cm'] as const;
const cases = readers.flatMap((unit) => asks.map((words) => [unit, words] as const));

/** The example with the names and numbers that this guild has. */
function fitted(words: string): string {
  if (words === '/swap sent parcel:3') return '/swap sent parcel:1';
  if (words === '/swap received parcel:3') return '/swap received parcel:2';
  if (words === '/swap received from:Ada') return '/swap received from:Bea';
  return words;
}

describe('swaps and what is kept of a member read as all else does', () => {
  test.each(cases)('%s: %s', async (unit, words) => {
    const guild = await guildFor(words);
    await guild.ask(`/me set unit:${unit}`);
    const reply = await guild.ask(fitted(words));
    const five = words.startsWith('/swap match');
    if (five) expect(reply.table?.columns).toEqual(['from', 'to', 'what', 'count', 'area']);
    // An export is read out as it is in its file.
    const lines = reply.lines.filter((line) => !line.startsWith('{'));
    expectReadsWell({ ...reply, lines, table: five ? null : reply.table });
    if (words.startsWith('/me export')) return;
    // What a member typed is read back as she typed it, whatever her reader's units.
    const text = wordsOf({ ...reply, table: null });
    expect(text.replaceAll(/\d{4}-\d{2}-\d{2}|[A-Z][a-z]{2} \d{4}/g, '')).not.toMatch(/(?<![\d,.])\d{4,}/);
    if (unit === 'cm') expect(text).not.toMatch(/\dsq in\b|\d sq in\b/);
  });

  test('every choice under a reply can be asked, and is no mistake', async () => {
    for (const words of ['/swap withdraw', ...asks]) {
      const guild = await guildFor(words);
      const { choices } = await guild.ask(fitted(words));
      for (const { ask } of choices)
        expect((await (await guildFor(words)).ask(ask)).error, `${words}: ${ask}`).toBeNull();
    }
  });
});
