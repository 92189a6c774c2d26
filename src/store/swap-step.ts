import type { Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/** Makes the tables of swaps. */
export async function makeSwapTables({ schema }: Kysely<Tables>): Promise<void> {
  await schema
    .createTable('swaps')
    .addColumn('guild', 'text', (column) => column.notNull())
    .addColumn('number', 'integer', (column) => column.notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('place', 'text', (column) => column.notNull())
    .addColumn('rules', 'text', (column) => column.notNull())
    .addColumn('first', 'text', (column) => column.notNull())
    .addColumn('last', 'text')
    .addColumn('share', 'real', (column) => column.notNull())
    .addColumn('each', 'integer')
    .addColumn('good', 'text')
    .addColumn('state', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('swaps_key', ['guild', 'number'])
    .execute();
  await schema
    .createTable('swap_people')
    .addColumn('guild', 'text', (column) => column.notNull())
    .addColumn('swap', 'integer', (column) => column.notNull())
    .addColumn('member', 'text', (column) => column.notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('order', 'integer', (column) => column.notNull())
    .addColumn('state', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('swap_people_key', ['guild', 'swap', 'member'])
    .execute();
  await schema
    .createTable('swap_entries')
    .addColumn('guild', 'text', (column) => column.notNull())
    .addColumn('swap', 'integer', (column) => column.notNull())
    .addColumn('number', 'integer', (column) => column.notNull())
    .addColumn('member', 'text', (column) => column.notNull())
    .addColumn('side', 'text', (column) => column.notNull())
    .addColumn('count', 'integer', (column) => column.notNull())
    .addColumn('good', 'text', (column) => column.notNull())
    .addColumn('typed', 'text', (column) => column.notNull())
    .addColumn('words', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('swap_entries_key', ['guild', 'swap', 'number'])
    .execute();
  await schema
    .createTable('swap_parcels')
    .addColumn('guild', 'text', (column) => column.notNull())
    .addColumn('swap', 'integer', (column) => column.notNull())
    .addColumn('number', 'integer', (column) => column.notNull())
    .addColumn('member', 'text', (column) => column.notNull())
    .addColumn('to', 'text', (column) => column.notNull())
    .addColumn('entry', 'integer')
    .addColumn('wish', 'integer')
    .addColumn('good', 'text', (column) => column.notNull())
    .addColumn('count', 'integer', (column) => column.notNull())
    .addColumn('typed', 'text', (column) => column.notNull())
    .addColumn('sent_at', 'text')
    .addColumn('received_at', 'text')
    .addPrimaryKeyConstraint('swap_parcels_key', ['guild', 'swap', 'number'])
    .execute();
}
