import { type Kysely, sql } from 'kysely';
import type { Tables } from './tables.ts';

/**
 * Makes the tables of challenges. What every log changes lies together and has few indexes: each one would be
 * written to the disk with every log.
 */
export async function makeChallengeTables(tables: Kysely<Tables>): Promise<void> {
  const { schema } = tables;
  await schema
    .createTable('challenges')
    .addColumn('guild', 'text', (column) => column.notNull())
    .addColumn('number', 'integer', (column) => column.notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('counting', 'text', (column) => column.notNull())
    .addColumn('rounds', 'integer', (column) => column.notNull())
    .addColumn('size', 'real', (column) => column.notNull())
    .addColumn('goal', 'integer')
    .addColumn('each', 'integer')
    .addColumn('first', 'text', (column) => column.notNull())
    .addColumn('last', 'text')
    .addColumn('place', 'text', (column) => column.notNull())
    .addColumn('who', 'text', (column) => column.notNull())
    .addColumn('open', 'integer', (column) => column.notNull())
    .addColumn('opened_at', 'text', (column) => column.notNull())
    .addColumn('total', 'integer', (column) => column.notNull())
    .addColumn('lines', 'integer', (column) => column.notNull())
    .addPrimaryKeyConstraint('challenges_key', ['guild', 'number'])
    .execute();
  await schema
    .createTable('challenge_lines')
    .addColumn('guild', 'text', (column) => column.notNull())
    .addColumn('challenge', 'integer', (column) => column.notNull())
    .addColumn('number', 'integer', (column) => column.notNull())
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('member', 'text', (column) => column.notNull())
    .addColumn('by', 'text', (column) => column.notNull())
    .addColumn('day', 'text', (column) => column.notNull())
    .addColumn('pieces', 'integer', (column) => column.notNull())
    .addColumn('minutes', 'real')
    .addColumn('note', 'text', (column) => column.notNull())
    .addColumn('picture', 'text', (column) => column.notNull())
    .addColumn('of', 'integer')
    .addColumn('at', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('challenge_lines_key', ['guild', 'challenge', 'number'])
    // A book is read in the order of its lines: they lie in that order on the disk.
    .modifyEnd(sql`without rowid`)
    .execute();
  await schema
    .createIndex('challenge_lines_taken_back')
    .on('challenge_lines')
    .columns(['guild', 'challenge', 'of'])
    .where(sql.ref('of'), 'is not', null)
    .execute();
  await schema
    .createIndex('challenge_lines_of_member')
    .on('challenge_lines')
    .columns(['guild', 'member', 'at'])
    .execute();
  await schema
    .createTable('challenge_parts')
    .addColumn('guild', 'text', (column) => column.notNull())
    .addColumn('challenge', 'integer', (column) => column.notNull())
    .addColumn('member', 'text', (column) => column.notNull())
    .addColumn('since', 'integer', (column) => column.notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('joined', 'integer', (column) => column.notNull())
    .addColumn('pieces', 'integer', (column) => column.notNull())
    .addColumn('logs', 'integer', (column) => column.notNull())
    // Members who were forgotten are told apart by when they came.
    .addPrimaryKeyConstraint('challenge_parts_key', ['guild', 'challenge', 'member', 'since'])
    .modifyEnd(sql`without rowid`)
    .execute();
  await schema
    .createIndex('challenge_parts_by_name')
    .on('challenge_parts')
    .columns(['guild', 'challenge', 'name'])
    .execute();
  await schema
    .createTable('challenge_days')
    .addColumn('guild', 'text', (column) => column.notNull())
    .addColumn('challenge', 'integer', (column) => column.notNull())
    .addColumn('day', 'text', (column) => column.notNull())
    .addColumn('pieces', 'integer', (column) => column.notNull())
    .addPrimaryKeyConstraint('challenge_days_key', ['guild', 'challenge', 'day'])
    .modifyEnd(sql`without rowid`)
    .execute();
}
