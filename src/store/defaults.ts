import type { Kysely } from 'kysely';
import type { KeptDefaults } from '../chat/defaults.ts';
import type { DefaultChanges, DefaultsKept } from '../chat/facts.ts';
import type { Keeping } from './keeping.ts';
import { prepared } from './prepared.ts';
import { badRow, readSettingsRow } from './settings-row.ts';
import type { Tables } from './tables.ts';

/** Read twice with every ask. */
const settingsOf = prepared((tables, { guild, member }: { guild: string; member: string }) =>
  tables.selectFrom('defaults').select('settings').where('guild', '=', guild).where('member', '=', member),
);

/** The defaults of members and guilds, over a connection that is already in a transaction where it must be. */
export function defaultsIn(tables: Kysely<Tables>, { now, report }: Keeping): DefaultsKept {
  async function read(guild: string, member: string): Promise<KeptDefaults> {
    const [row] = await settingsOf(tables, { guild, member });
    const { settings, bad } = readSettingsRow(row?.settings);
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

  return { read, set, clear };
}

function changed(settings: KeptDefaults, changes: DefaultChanges): KeptDefaults {
  const entries = Object.entries({ ...settings, ...changes });
  return Object.fromEntries(
    entries.filter(([, value]) => value !== null && value !== undefined),
  ) as KeptDefaults;
}
