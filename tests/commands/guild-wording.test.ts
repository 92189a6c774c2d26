import { describe, expect, test } from 'vitest';
import { type GuildRoom, guildRoom } from '../standin/guild-room.ts';
import { examples, wordsOf } from './asking.ts';
import { expectReadsWell } from './reads-well.ts';

/** Challenges and blocks of the month; swaps have a guild of their own kind. */
const SEWN_TOGETHER = /^\/(?:challenge|log|undo|fix|standings|month)\b/;

/** A guild in which each example can be asked: a challenge with seventeen lines, a block of the month. */
async function guildFor(words: string): Promise<GuildRoom> {
  const guild = await guildRoom(':memory:', '2026-12-10T10:00:00Z');
  const name = words.startsWith('/challenge open') ? 'Earlier' : 'Spring';
  await guild.ask(`/challenge open name:${name} rounds:2 goal:200 first:2026-12-01 last:2027-01-31`);
  for (let day = 1; day <= 8; day++) {
    await guild.ask(`/log 3 day:2026-12-0${day} 250 min`, { as: 'Bea' });
    await guild.ask(`/log 1 day:2026-12-0${day}`);
  }
  await guild.ask('/challenge join');
  await guild.ask('/log 2');
  await guild.ask('/plan keep name:Spring garden rosettes:7 rounds:2 outer:yes');
  const blocks = words.startsWith('/month open') ? 'Older' : 'Garden';
  await guild.ask(`/month open name:${blocks} rosettes:7 rounds:2 first:2026-09-01 catchup:4`);
  if (words.includes('undone')) await guild.ask('/month done 3');
  if (words.startsWith('/challenge reopen')) await guild.ask('/challenge close');
  if (words.startsWith('/month reopen')) await guild.ask('/month close');
  return guild;
}

const readers = ['in', 'cm'] as const;
const asks = examples.filter((one) => SEWN_TOGETHER.test(one));
const cases = readers.flatMap((unit) => asks.map((words) => [unit, words] as const));

describe('what the guild does together reads as all else does', () => {
  test.each(cases)('%s: %s', async (unit, words) => {
    const guild = await guildFor(words);
    await guild.ask(`/me set unit:${unit}`);
    const reply = await guild.ask(words);
    expectReadsWell(reply);
    const text = wordsOf(reply).replaceAll(/\d+(?:\.\d+)? stitches an inch/g, '');
    expect(text).not.toMatch(unit === 'in' ? /\d (?:mm|cm|m|sq cm)\b/ : /\d (?:in|sq in|yd)\b/);
    const dates = /\b\d{4}-\d{2}-\d{2}\b|\b(?:[A-Z][a-z]{2,8}) \d{4}\b/g;
    expect(text.replaceAll(dates, '')).not.toMatch(/(?<![\d,.])\d{4,}|\d\.\d{4,}/);
  });

  test('every choice under a reply can be asked, and is no mistake', async () => {
    for (const words of asks) {
      const guild = await guildFor(words);
      const { choices } = await guild.ask(words);
      for (const { ask } of choices) expect((await guild.ask(ask)).error, `${words}: ${ask}`).toBeNull();
    }
  });
});
