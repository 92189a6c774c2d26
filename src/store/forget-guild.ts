import { type Kysely, sql } from 'kysely';
import { heldTables, type Tables } from './tables.ts';

/** Removes all that is kept for a guild, in every table that says which guild a row is of. */
export async function forgetGuildIn(tables: Kysely<Tables>, guild: string): Promise<void> {
  for (const { table, guild: column } of heldTables) {
    if (column === undefined || guild === '') continue;
    await sql`DELETE FROM ${sql.table(table)} WHERE ${sql.ref(column)} = ${guild}`.execute(tables);
  }
}
