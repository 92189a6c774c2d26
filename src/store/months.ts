import type { Kysely, Selectable } from 'kysely';
import type { Person } from '../guild/challenge-facts.ts';
import type {
  BlockPieces,
  Finished,
  Month,
  MonthBlock,
  MonthsKept,
  MonthTerms,
} from '../guild/month-facts.ts';
import type { Keeping } from './keeping.ts';
import type { Tables } from './tables.ts';

type Which = Pick<Month, 'guild' | 'number'>;

/** Blocks of the month, over a connection that is already in a transaction where it must be. */
export function monthsIn(tables: Kysely<Tables>, { now }: Keeping): MonthsKept {
  async function add(guild: string, terms: MonthTerms, blocks: readonly MonthBlock[]): Promise<Month> {
    const before = await tables
      .selectFrom('months')
      .select(({ fn }) => fn.max('number').as('last'))
      .where('guild', '=', guild)
      .executeTakeFirst();
    const number = (before?.last ?? 0) + 1;
    await tables
      .insertInto('months')
      .values({ guild, number, ...terms, open: 1, opened_at: now().toISOString() })
      .execute();
    for (const { pieces, ...block } of blocks)
      await tables
        .insertInto('month_blocks')
        .values({ guild, month: number, ...block, pieces: JSON.stringify(pieces) })
        .execute();
    return { guild, number, ...terms, open: true };
  }

  async function all(guild: string): Promise<Month[]> {
    const rows = await tables
      .selectFrom('months')
      .selectAll()
      .where('guild', '=', guild)
      .orderBy('open', 'desc')
      .orderBy('number', 'desc')
      .limit(200)
      .execute();
    return rows.map(monthOf);
  }

  async function one(guild: string, number: number): Promise<Month | undefined> {
    const row = await tables
      .selectFrom('months')
      .selectAll()
      .where('guild', '=', guild)
      .where('number', '=', number)
      .executeTakeFirst();
    return row && monthOf(row);
  }

  async function turn({ guild, number }: Which, open: boolean): Promise<Month> {
    const row = await tables
      .updateTable('months')
      .set({ open: open ? 1 : 0 })
      .where('guild', '=', guild)
      .where('number', '=', number)
      .returningAll()
      .executeTakeFirstOrThrow();
    return monthOf(row);
  }

  async function blocks({ guild, number }: Which): Promise<MonthBlock[]> {
    const rows = await tables
      .selectFrom('month_blocks')
      .select(['slot', 'opens', 'block', 'words', 'pieces', 'inside', 'joining', 'width', 'height'])
      .where('guild', '=', guild)
      .where('month', '=', number)
      .orderBy('slot')
      .execute();
    return rows.map(blockOf);
  }

  const standing = ({ guild, number }: Which) =>
    tables
      .selectFrom('month_finished')
      .select(['block', 'member', 'name'])
      .where('guild', '=', guild)
      .where('month', '=', number)
      .where('until', 'is', null);

  async function finish(of: Which, block: number, { id, name }: Person, at: Date): Promise<boolean> {
    const before = await standing(of).where('block', '=', block).where('member', '=', id).executeTakeFirst();
    if (before) return false;
    const { guild, number: month } = of;
    await tables
      .insertInto('month_finished')
      .values({ guild, month, block, member: id, name, at: at.toISOString(), until: null })
      .execute();
    return true;
  }

  async function unfinish(
    { guild, number }: Which,
    block: number,
    member: string,
    at: Date,
  ): Promise<boolean> {
    const taken = await tables
      .updateTable('month_finished')
      .set({ until: at.toISOString() })
      .where('guild', '=', guild)
      .where('month', '=', number)
      .where('block', '=', block)
      .where('member', '=', member)
      .where('until', 'is', null)
      .executeTakeFirst();
    return taken.numUpdatedRows > 0n;
  }

  const finished = (of: Which): Promise<Finished[]> =>
    standing(of).orderBy('block').orderBy('at').orderBy('name').execute();

  return { add, all, one, turn, blocks, finish, unfinish, finished };
}

export const monthOf = ({ opened_at: _, ...row }: Selectable<Tables['months']>): Month =>
  ({ ...row, open: row.open === 1 }) as Month;

type BlockRow = Omit<Selectable<Tables['month_blocks']>, 'guild' | 'month'>;

export const blockOf = (row: BlockRow): MonthBlock => ({
  ...row,
  pieces: JSON.parse(row.pieces) as BlockPieces[],
});
