import type { Kysely } from 'kysely';
import type { NotesKept, Whose } from '../chat/facts.ts';
import type { Keeping } from './keeping.ts';
import type { Tables } from './tables.ts';

const NOBODY: Whose = { guild: '', member: '' };

/** The notes of the platforms. A note that cannot be read back is reported and taken for none. */
export function notesIn(tables: Kysely<Tables>, { now, report }: Keeping): NotesKept {
  async function find(platform: string, key: string): Promise<unknown> {
    const row = await tables
      .selectFrom('notes')
      .select('value')
      .where('platform', '=', platform)
      .where('key', '=', key)
      .executeTakeFirst();
    if (!row) return undefined;
    try {
      return JSON.parse(row.value) as unknown;
    } catch {
      report({ code: 'store-bad-row', table: 'notes', guild: platform, names: [key] });
      return undefined;
    }
  }

  async function keep(platform: string, key: string, value: unknown, whose?: Whose): Promise<void> {
    const { guild, member } = whose ?? NOBODY;
    const row = { guild, member, value: JSON.stringify(value), kept_at: now().toISOString() };
    await tables
      .insertInto('notes')
      .values({ platform, key, ...row })
      .onConflict((conflict) => conflict.columns(['platform', 'key']).doUpdateSet(row))
      .execute();
  }

  async function remove(platform: string, key: string): Promise<void> {
    await tables.deleteFrom('notes').where('platform', '=', platform).where('key', '=', key).execute();
  }

  async function before(platform: string, keyBegins: string, moment: Date): Promise<readonly string[]> {
    const rows = await tables
      .selectFrom('notes')
      .select('key')
      .where('platform', '=', platform)
      .where('key', '>=', keyBegins)
      .where('key', '<', `${keyBegins}\u{10FFFF}`)
      .where('kept_at', '<', moment.toISOString())
      .orderBy('key')
      .execute();
    return rows.map(({ key }) => key);
  }

  async function prune(platform: string, keyBegins: string, before: Date): Promise<number> {
    const gone = await tables
      .deleteFrom('notes')
      .where('platform', '=', platform)
      .where('key', '>=', keyBegins)
      .where('key', '<', `${keyBegins}\u{10FFFF}`)
      .where('kept_at', '<', before.toISOString())
      .executeTakeFirst();
    return Number(gone.numDeletedRows);
  }

  return { find, keep, remove, before, prune };
}
