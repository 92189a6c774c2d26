import type { Kysely } from 'kysely';
import type { KeptDefaults } from '../chat/defaults.ts';
import { type BothDefaults, type DefaultChanges, type DefaultsKept, GUILD_ITSELF } from '../chat/facts.ts';
import type { Keeping } from './keeping.ts';
import { prepared } from './prepared.ts';
import { badRow, readSettingsRow } from './settings-row.ts';
import type { Tables } from './tables.ts';

const settingsOf = prepared((tables, { guild, member }: { guild: string; member: string }) =>
  tables.selectFrom('defaults').select('settings').where('guild', '=', guild).where('member', '=', member),
);

/** Read with every ask. */
const settingsOfBoth = prepared((tables, { guild, member }: { guild: string; member: string }) =>
  tables
    .selectFrom('defaults')
    .select(['member', 'settings'])
    .where('guild', '=', guild)
    .where('member', 'in', [member, GUILD_ITSELF]),
);

/** The defaults of members and guilds, over a connection that is already in a transaction where it must be. */
export function defaultsIn(tables: Kysely<Tables>, { now, report }: Keeping): DefaultsKept {
  async function read(guild: string, member: string): Promise<KeptDefaults> {
    const [row] = await settingsOf(tables, { guild, member });
    return understood(guild, member, row?.settings);
  }

  async function both(guild: string, member: string): Promise<BothDefaults> {
    const rows = await settingsOfBoth(tables, { guild, member });
    const of = (whose: string) =>
      understood(guild, whose, rows.find((row) => row.member === whose)?.settings);
    return { own: of(member), guild: of(GUILD_ITSELF) };
  }

  /** The settings in a row, and the operator is told of those that make no sense. */
  function understood(guild: string, member: string, row: string | undefined): KeptDefaults {
    const { settings, bad } = readSettingsRow(row);
    if (bad.length > 0) report(badRow('defaults', guild, member, bad));
    return settings;
  }

  async function set(guild: string, member: string, changes: DefaultChanges): Promise<KeptDefaults> {
    const settings = changed(await read(guild, member), changes);
    const row = { settings: JSON.stringify(settings), changed_at: now().toISOString() };
    await tables
      .insertInto('defaults')
      .values({ guild, member, ...row })
      .onConflict((conflict) => conflict.columns(['guild', 'member']).doUpdateSet(row))
      .execute();
    return settings;
  }

  async function clear(guild: string, member: string): Promise<void> {
    await tables.deleteFrom('defaults').where('guild', '=', guild).where('member', '=', member).execute();
  }

  return { read, both, set, clear };
}

function changed(settings: KeptDefaults, changes: DefaultChanges): KeptDefaults {
  const entries = Object.entries({ ...settings, ...changes });
  return Object.fromEntries(
    entries.filter(([, value]) => value !== null && value !== undefined),
  ) as KeptDefaults;
}
