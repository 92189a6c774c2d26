import { randomBytes } from 'node:crypto';
import { type Kysely, type RawBuilder, sql } from 'kysely';
import type { Forgotten, KeptOf, KeptRows } from '../guild/kept-of-facts.ts';
import { type Held, heldTables, type Tables } from './tables.ts';
import type { Upkeep } from './upkeep.ts';

/** All that is kept of a member, found by walking what each table declares. */
export const keptOfIn = (tables: Kysely<Tables>, upkeep: Upkeep): KeptOf => ({
  read: (member) => rowsOf(tables, member),
  forget(member) {
    upkeep.sweepNext();
    return forget(tables, member);
  },
});

const membersTables = (): readonly Held[] => heldTables.filter(({ of }) => of === 'member');

async function rowsOf(tables: Kysely<Tables>, member: string): Promise<KeptRows[]> {
  const kept: KeptRows[] = [];
  for (const held of membersTables()) {
    const { rows } =
      await sql<Row>`SELECT * FROM ${sql.table(held.table)} WHERE ${names(held, member)}`.execute(tables);
    if (rows.length > 0)
      kept.push({ table: held.table, columns: held.columns, rows: rows.map((row) => legible(row, held)) });
  }
  return kept;
}

type Row = Record<string, unknown>;

/** JSON in a column is shown as what it says. */
function legible(row: Row, { json = [] }: Held): Row {
  const read = json.map((column) => [column, parsed(row[column])] as const);
  return { ...row, ...Object.fromEntries(read) };
}

function parsed(text: unknown): unknown {
  try {
    return JSON.parse(String(text));
  } catch {
    return text;
  }
}

const ownColumn = ({ member }: Held): string => String(member);
const namingColumns = (held: Held): string[] => [ownColumn(held), ...(held.also ?? []).map(String)];

const names = (held: Held, member: string): RawBuilder<unknown> =>
  sql.join(
    namingColumns(held).map((column) => sql`${sql.ref(column)} = ${member}`),
    sql` OR `,
  );

async function forget(tables: Kysely<Tables>, member: string): Promise<Forgotten> {
  const guilds = await guildsOf(tables, member);
  // One that nobody can have, and another for each who is forgotten: rows that were one person's stay together.
  const nobody = `nobody-${randomBytes(12).toString('hex')}`;
  let [gone, nobodys] = [0, 0];
  for (const held of membersTables()) {
    if (held.stays) nobodys += await emptyHers(tables, held, member, nobody);
    else gone += await removeHers(tables, held, member);
    for (const column of held.also ?? []) await unname(tables, held, String(column), member, nobody);
    if (held.quotes) for (const guild of guilds) await emptyQuotes(tables, held, guild);
  }
  return { gone, nobodys };
}

async function guildsOf(tables: Kysely<Tables>, member: string): Promise<Set<string>> {
  const found = new Set<string>();
  for (const held of membersTables()) {
    const guild = sql.ref(String(held.guild));
    const { rows } = await sql<{
      guild: string;
    }>`SELECT DISTINCT ${guild} AS guild FROM ${sql.table(held.table)} WHERE ${names(held, member)}`.execute(
      tables,
    );
    for (const row of rows) found.add(row.guild);
  }
  return found;
}

async function emptyHers(
  tables: Kysely<Tables>,
  held: Held,
  member: string,
  nobody: string,
): Promise<number> {
  const changes = { [ownColumn(held)]: nobody, ...held.stays };
  return changed(
    tables,
    sql`UPDATE ${sql.table(held.table)} SET ${setting(changes)} WHERE ${sql.ref(ownColumn(held))} = ${member}`,
  );
}

const removeHers = (tables: Kysely<Tables>, held: Held, member: string): Promise<number> =>
  changed(tables, sql`DELETE FROM ${sql.table(held.table)} WHERE ${sql.ref(ownColumn(held))} = ${member}`);

const unname = (tables: Kysely<Tables>, { table }: Held, column: string, member: string, nobody: string) =>
  changed(
    tables,
    sql`UPDATE ${sql.table(table)} SET ${setting({ [column]: nobody })} WHERE ${sql.ref(column)} = ${member}`,
  );

const emptyQuotes = (tables: Kysely<Tables>, { table, guild, quotes = {} }: Held, of: string) =>
  changed(
    tables,
    sql`UPDATE ${sql.table(table)} SET ${setting(quotes)} WHERE ${sql.ref(String(guild))} = ${of}`,
  );

const setting = (changes: object): RawBuilder<unknown> =>
  sql.join(Object.entries(changes).map(([column, value]) => sql`${sql.ref(column)} = ${value}`));

async function changed(tables: Kysely<Tables>, change: RawBuilder<unknown>): Promise<number> {
  return Number((await change.execute(tables)).numAffectedRows ?? 0n);
}
