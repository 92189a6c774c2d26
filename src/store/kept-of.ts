import { type Kysely, type RawBuilder, sql } from 'kysely';
import { guildAlone } from '../chat/facts.ts';
import type { Forgotten, KeptOf, KeptRows } from '../guild/kept-of-facts.ts';
import { forgetGuildIn } from './forget-guild.ts';
import { type Held, heldTables, type Tables } from './tables.ts';
import type { Upkeep } from './upkeep.ts';

/** All that is kept of a member, found by walking what each table declares. */
export const keptOfIn = (tables: Kysely<Tables>, upkeep: Upkeep): KeptOf => ({
  read: (member) => rowsOf(tables, member),
  async forget(member) {
    await upkeep.sweepNext(tables);
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
const namingColumns = (held: Held): string[] => [ownColumn(held), ...(held.others ?? []).map(String)];

const names = (held: Held, member: string): RawBuilder<unknown> =>
  sql.join(
    namingColumns(held).map((column) => sql`${sql.ref(column)} = ${member}`),
    sql` OR `,
  );

/** Who a row is left to when its member is forgotten. */
const NOBODY = '';

async function forget(tables: Kysely<Tables>, member: string): Promise<Forgotten> {
  const guilds = await guildsOf(tables, member);
  const names = await namesOf(tables, member);
  await forgetGuildIn(tables, guildAlone(member));
  let [gone, nobodys] = [0, 0];
  for (const held of membersTables()) {
    for (const writer of held.writers ?? []) await emptyWritten(tables, held, String(writer), member);
    if (held.forget === 'disown') nobodys += await disown(tables, held, member);
    else gone += await remove(tables, held, member);
    for (const column of held.others ?? []) await unname(tables, held, String(column), member);
    for (const guild of guilds) await removeMentions(tables, held, guild, [member, ...names]);
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

/** Every name that she is known by. */
async function namesOf(tables: Kysely<Tables>, member: string): Promise<Set<string>> {
  const found = new Set<string>();
  for (const held of membersTables()) {
    if (held.name === undefined) continue;
    const { rows } = await sql<{
      name: string;
    }>`SELECT DISTINCT ${sql.ref(String(held.name))} AS name FROM ${sql.table(held.table)}
       WHERE ${sql.ref(ownColumn(held))} = ${member}`.execute(tables);
    for (const { name } of rows) if (name !== '') found.add(name);
  }
  return found;
}

const disown = (tables: Kysely<Tables>, held: Held, member: string): Promise<number> =>
  changed(
    tables,
    sql`UPDATE ${sql.table(held.table)} SET ${emptied([ownColumn(held), ...(held.words ?? []).map(String)])}
      WHERE ${sql.ref(ownColumn(held))} = ${member}`,
  );

const remove = (tables: Kysely<Tables>, held: Held, member: string): Promise<number> =>
  changed(tables, sql`DELETE FROM ${sql.table(held.table)} WHERE ${sql.ref(ownColumn(held))} = ${member}`);

const unname = (tables: Kysely<Tables>, { table }: Held, column: string, member: string) =>
  changed(
    tables,
    sql`UPDATE ${sql.table(table)} SET ${emptied([column])} WHERE ${sql.ref(column)} = ${member}`,
  );

const emptyWritten = (tables: Kysely<Tables>, { table, words = [] }: Held, writer: string, member: string) =>
  changed(
    tables,
    sql`UPDATE ${sql.table(table)} SET ${emptied(words.map(String))} WHERE ${sql.ref(writer)} = ${member}`,
  );

/** Removes rows of anybody in the guild in which one of her names stands, as JSON has it. */
async function removeMentions(
  tables: Kysely<Tables>,
  { table, guild, mentions = [] }: Held,
  of: string,
  names: readonly string[],
): Promise<void> {
  const written = names.map((name) => JSON.stringify(name).slice(1, -1));
  for (const column of mentions.map(String))
    for (const name of written)
      await changed(
        tables,
        sql`DELETE FROM ${sql.table(table)}
            WHERE ${sql.ref(String(guild))} = ${of} AND instr(${sql.ref(column)}, ${name}) > 0`,
      );
}

const emptyQuotes = (tables: Kysely<Tables>, { table, guild, quotes = [] }: Held, of: string) =>
  changed(
    tables,
    sql`UPDATE ${sql.table(table)} SET ${emptied(quotes.map(String))} WHERE ${sql.ref(String(guild))} = ${of}`,
  );

const emptied = (columns: readonly string[]): RawBuilder<unknown> =>
  sql.join(columns.map((column) => sql`${sql.ref(column)} = ${NOBODY}`));

async function changed(tables: Kysely<Tables>, change: RawBuilder<unknown>): Promise<number> {
  return Number((await change.execute(tables)).numAffectedRows ?? 0n);
}
