import type { Kysely, Selectable } from 'kysely';
import type {
  NewSwapEntry,
  PartState,
  Side,
  Swap,
  SwapEntry,
  SwapParcel,
  SwapState,
  SwapsKept,
} from '../guild/swap-facts.ts';
import type { SwapTables } from './swap-tables.ts';
import type { Tables } from './tables.ts';

/** The swaps of guilds, over a connection that is already in a transaction where it must be. */
export function swapsIn(tables: Kysely<Tables>): SwapsKept {
  return {
    async add(guild, terms) {
      const { last } = await tables
        .selectFrom('swaps')
        .select(({ fn }) => fn.max('number').as('last'))
        .where('guild', '=', guild)
        .executeTakeFirstOrThrow();
      const swap: Swap = { ...terms, guild, number: (last ?? 0) + 1, state: 'open' };
      await tables.insertInto('swaps').values(swap).execute();
      return swap;
    },

    async change({ guild, number }, changes) {
      await tables
        .updateTable('swaps')
        .set(changes)
        .where('guild', '=', guild)
        .where('number', '=', number)
        .execute();
    },

    async all(guild) {
      const rows = await tables
        .selectFrom('swaps')
        .selectAll()
        .where('guild', '=', guild)
        .orderBy('number', 'desc')
        .execute();
      return rows.map((row) => ({ ...row, state: row.state as SwapState }));
    },

    async people({ guild, number }) {
      const rows = await tables
        .selectFrom('swap_people')
        .select(['member', 'name', 'order', 'state'])
        .where('guild', '=', guild)
        .where('swap', '=', number)
        .orderBy('order')
        .execute();
      return rows.map((row) => ({ ...row, state: row.state as PartState }));
    },

    async take({ guild, number }, { id, name }, state) {
      const { last } = await tables
        .selectFrom('swap_people')
        .select(({ fn }) => fn.max('order').as('last'))
        .where('guild', '=', guild)
        .where('swap', '=', number)
        .executeTakeFirstOrThrow();
      await tables
        .insertInto('swap_people')
        .values({ guild, swap: number, member: id, name, order: (last ?? 0) + 1, state })
        .onConflict((conflict) => conflict.columns(['guild', 'swap', 'member']).doUpdateSet({ name, state }))
        .execute();
    },

    async entries({ guild, number }) {
      const rows = await tables
        .selectFrom('swap_entries')
        .selectAll()
        .where('guild', '=', guild)
        .where('swap', '=', number)
        .orderBy('number')
        .execute();
      return rows.map(entryOf);
    },

    async addEntry({ guild, number }, member, entry) {
      // A number that a parcel still goes by is not given to another line.
      const { last } = (await tables
        .selectFrom('swap_entries')
        .select('number as last')
        .where('guild', '=', guild)
        .where('swap', '=', number)
        .unionAll(
          tables
            .selectFrom('swap_parcels')
            .select('entry as last')
            .where('guild', '=', guild)
            .where('swap', '=', number)
            .where('entry', 'is not', null)
            .$narrowType<{ last: number }>(),
        )
        .orderBy('last', 'desc')
        .limit(1)
        .executeTakeFirst()) ?? { last: 0 };
      const added = { ...entry, member, number: last + 1 };
      await tables
        .insertInto('swap_entries')
        .values({ guild, swap: number, ...added, words: JSON.stringify(entry.words) })
        .execute();
      return added;
    },

    async changeEntry({ guild, number }, entry, { words, ...changes }: NewSwapEntry) {
      await tables
        .updateTable('swap_entries')
        .set({ ...changes, words: JSON.stringify(words) })
        .where('guild', '=', guild)
        .where('swap', '=', number)
        .where('number', '=', entry)
        .execute();
    },

    async removeEntries({ guild, number }, entries) {
      if (entries.length === 0) return;
      await tables
        .deleteFrom('swap_entries')
        .where('guild', '=', guild)
        .where('swap', '=', number)
        .where('number', 'in', entries)
        .execute();
      await tables
        .deleteFrom('swap_parcels')
        .where('guild', '=', guild)
        .where('swap', '=', number)
        .where('sent_at', 'is', null)
        .where(({ or, eb }) => or([eb('entry', 'in', entries), eb('wish', 'in', entries)]))
        .execute();
    },

    async parcels({ guild, number }) {
      const rows = await tables
        .selectFrom('swap_parcels')
        .selectAll()
        .where('guild', '=', guild)
        .where('swap', '=', number)
        .orderBy('number')
        .execute();
      return rows.map(parcelOf);
    },

    async replan({ guild, number }, parcels) {
      await tables
        .deleteFrom('swap_parcels')
        .where('guild', '=', guild)
        .where('swap', '=', number)
        .where('sent_at', 'is', null)
        .execute();
      const { last } = await tables
        .selectFrom('swap_parcels')
        .select(({ fn }) => fn.max('number').as('last'))
        .where('guild', '=', guild)
        .where('swap', '=', number)
        .executeTakeFirstOrThrow();
      const rows = parcels.map(({ from, ...parcel }, i) => ({
        guild,
        swap: number,
        number: (last ?? 0) + 1 + i,
        member: from,
        ...parcel,
        sent_at: null,
        received_at: null,
      }));
      for (let at = 0; at < rows.length; at += ROWS_AT_ONCE)
        await tables
          .insertInto('swap_parcels')
          .values(rows.slice(at, at + ROWS_AT_ONCE))
          .execute();
    },

    async mark({ guild, number }, parcels, as, at) {
      const moment = at?.toISOString() ?? null;
      for (let from = 0; from < parcels.length; from += ROWS_AT_ONCE)
        await tables
          .updateTable('swap_parcels')
          .set(({ fn, val }) => {
            if (as === 'sent') return { sent_at: moment };
            // What has come was sent, whoever forgot to say so.
            return {
              received_at: moment,
              ...(moment ? { sent_at: fn.coalesce('sent_at', val(moment)) } : {}),
            };
          })
          .where('guild', '=', guild)
          .where('swap', '=', number)
          .where('number', 'in', parcels.slice(from, from + ROWS_AT_ONCE))
          .execute();
    },
  };
}

/** One statement takes so many rows: each has a place for every one of its values. */
const ROWS_AT_ONCE = 500;

function entryOf({
  number,
  member,
  side,
  count,
  good,
  typed,
  words,
}: Selectable<SwapTables['swap_entries']>): SwapEntry {
  return { number, member, side: side as Side, count, good, typed, words: wordsOf(words) };
}

function wordsOf(text: string): string[] {
  try {
    const words: unknown = JSON.parse(text);
    return Array.isArray(words) ? words.filter((word) => typeof word === 'string') : [];
  } catch {
    return [];
  }
}

const parcelOf = (row: Selectable<SwapTables['swap_parcels']>): SwapParcel => ({
  number: row.number,
  from: row.member,
  to: row.to,
  entry: row.entry,
  wish: row.wish,
  good: row.good,
  count: row.count,
  typed: row.typed,
  sentAt: row.sent_at,
  receivedAt: row.received_at,
});
