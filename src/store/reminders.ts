import type { Kysely } from 'kysely';
import { GUILD_ITSELF } from '../chat/facts.ts';
import type { GuildStanding, Nudged, RemindersKept } from '../guild/reminder-facts.ts';
import { challengeOf } from './challenges.ts';
import type { Keeping } from './keeping.ts';
import { blockOf, monthOf } from './months.ts';
import { badRow, readSettingsRow } from './settings-row.ts';
import type { Tables } from './tables.ts';

/** What is open in any guild, and who wants to be nudged there: all that a reminder is reckoned from. */
export function remindersIn(tables: Kysely<Tables>, { report }: Keeping): RemindersKept {
  async function standing(): Promise<GuildStanding[]> {
    const challenges = await tables.selectFrom('challenges').selectAll().where('open', '=', 1).execute();
    const months = await tables.selectFrom('months').selectAll().where('open', '=', 1).execute();
    const guilds = [...new Set([...challenges, ...months].map(({ guild }) => guild))];
    return Promise.all(
      guilds.map(async (guild) => ({
        guild,
        settings: await settingsOf(guild),
        challenges: challenges
          .filter((row) => row.guild === guild)
          .map((row) => ({ of: challengeOf(row), since: row.opened_at })),
        months: await Promise.all(
          months
            .filter((row) => row.guild === guild)
            .map(async (row) => ({
              of: monthOf(row),
              since: row.opened_at,
              blocks: await blocksOf(guild, row.number),
            })),
        ),
        nudged: await nudgedIn(guild),
      })),
    );
  }

  async function settingsOf(guild: string): Promise<GuildStanding['settings']> {
    const row = await tables
      .selectFrom('defaults')
      .select('settings')
      .where('guild', '=', guild)
      .where('member', '=', GUILD_ITSELF)
      .executeTakeFirst();
    return readSettingsRow(row?.settings).settings;
  }

  async function blocksOf(guild: string, month: number) {
    const rows = await tables
      .selectFrom('month_blocks')
      .select(['slot', 'opens', 'block', 'words', 'pieces', 'inside', 'joining', 'width', 'height'])
      .where('guild', '=', guild)
      .where('month', '=', month)
      .execute();
    return rows.map(blockOf);
  }

  async function nudgedIn(guild: string): Promise<Nudged[]> {
    const rows = await tables
      .selectFrom('defaults')
      .select(['member', 'settings', 'changed_at as since'])
      .where('guild', '=', guild)
      .where('member', '<>', GUILD_ITSELF)
      // Most have not asked for one: their rows need not be read.
      .where('settings', 'like', '%"nudge":%')
      .execute();
    return rows.map(({ member, settings: text, since }) => {
      const { settings, bad } = readSettingsRow(text);
      if (bad.length > 0) report(badRow('defaults', guild, member, bad));
      return { member, settings, since };
    });
  }

  return { standing };
}
