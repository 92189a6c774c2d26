import type { Kysely } from 'kysely';

/** Blocks of the month: the plan, its blocks with their days, and who has finished which. */
export interface MonthTables {
  months: {
    guild: string;
    number: number;
    name: string;
    of: string;
    size: number;
    first: string;
    every: string;
    place: string;
    open: number;
    opened_at: string;
  };
  month_blocks: {
    guild: string;
    month: number;
    slot: number;
    opens: string;
    block: number | null;
    words: string;
    pieces: string;
    inside: number;
    joining: number;
    width: number;
    height: number;
  };
  month_finished: {
    guild: string;
    month: number;
    block: number;
    member: string;
    name: string;
    at: string;
    until: string | null;
  };
}

/** Makes those tables. */
export async function makeMonthTables<Tables>({ schema }: Kysely<Tables>): Promise<void> {
  await schema
    .createTable('months')
    .addColumn('guild', 'text', (column) => column.notNull())
    .addColumn('number', 'integer', (column) => column.notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('of', 'text', (column) => column.notNull())
    .addColumn('size', 'real', (column) => column.notNull())
    .addColumn('first', 'text', (column) => column.notNull())
    .addColumn('every', 'text', (column) => column.notNull())
    .addColumn('place', 'text', (column) => column.notNull())
    .addColumn('open', 'integer', (column) => column.notNull())
    .addColumn('opened_at', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('months_key', ['guild', 'number'])
    .execute();
  await schema
    .createTable('month_blocks')
    .addColumn('guild', 'text', (column) => column.notNull())
    .addColumn('month', 'integer', (column) => column.notNull())
    .addColumn('slot', 'integer', (column) => column.notNull())
    .addColumn('opens', 'text', (column) => column.notNull())
    .addColumn('block', 'integer')
    .addColumn('words', 'text', (column) => column.notNull())
    .addColumn('pieces', 'text', (column) => column.notNull())
    .addColumn('inside', 'integer', (column) => column.notNull())
    .addColumn('joining', 'integer', (column) => column.notNull())
    .addColumn('width', 'real', (column) => column.notNull())
    .addColumn('height', 'real', (column) => column.notNull())
    .addPrimaryKeyConstraint('month_blocks_key', ['guild', 'month', 'slot'])
    .execute();
  await schema
    .createTable('month_finished')
    .addColumn('guild', 'text', (column) => column.notNull())
    .addColumn('month', 'integer', (column) => column.notNull())
    .addColumn('block', 'integer', (column) => column.notNull())
    .addColumn('member', 'text', (column) => column.notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('at', 'text', (column) => column.notNull())
    .addColumn('until', 'text')
    .execute();
  await schema
    .createIndex('month_finished_by_block')
    .on('month_finished')
    .columns(['guild', 'month', 'block'])
    .execute();
}
