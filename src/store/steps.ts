import type { Kysely } from 'kysely';
import type { Problem } from '../measure/result.ts';
import type { Tables } from './tables.ts';

/** One change of the tables. A step that has been released is never edited: a new one is added. */
export interface Step {
  readonly name: string;
  take(tables: Kysely<Tables>): Promise<void>;
}

export const steps: readonly Step[] = [
  {
    name: 'defaults of members and guilds, answers given',
    async take(tables) {
      await tables.schema
        .createTable('defaults')
        .addColumn('guild', 'text', (column) => column.notNull())
        .addColumn('member', 'text', (column) => column.notNull())
        .addColumn('settings', 'text', (column) => column.notNull())
        .addColumn('changed_at', 'text', (column) => column.notNull())
        .addPrimaryKeyConstraint('defaults_key', ['guild', 'member'])
        .execute();
      await tables.schema
        .createTable('answered')
        .addColumn('guild', 'text', (column) => column.notNull())
        .addColumn('event', 'text', (column) => column.notNull())
        .addColumn('member', 'text', (column) => column.notNull())
        .addColumn('command', 'text', (column) => column.notNull())
        .addColumn('reply', 'text', (column) => column.notNull())
        .addColumn('answered_at', 'text', (column) => column.notNull())
        .addPrimaryKeyConstraint('answered_key', ['guild', 'event'])
        .execute();
    },
  },
  {
    name: 'notes of the platforms',
    async take(tables) {
      await tables.schema
        .createTable('notes')
        .addColumn('platform', 'text', (column) => column.notNull())
        .addColumn('key', 'text', (column) => column.notNull())
        .addColumn('guild', 'text', (column) => column.notNull())
        .addColumn('member', 'text', (column) => column.notNull())
        .addColumn('value', 'text', (column) => column.notNull())
        .addColumn('kept_at', 'text', (column) => column.notNull())
        .addPrimaryKeyConstraint('notes_key', ['platform', 'key'])
        .execute();
    },
  },
  {
    name: 'plans kept under a name',
    async take(tables) {
      await tables.schema
        .createTable('plans')
        .addColumn('guild', 'text', (column) => column.notNull())
        .addColumn('key', 'text', (column) => column.notNull())
        .addColumn('name', 'text', (column) => column.notNull())
        .addColumn('owner', 'text', (column) => column.notNull())
        .addColumn('owner_name', 'text', (column) => column.notNull())
        .addColumn('wish', 'text', (column) => column.notNull())
        .addColumn('kept_on', 'text', (column) => column.notNull())
        .addColumn('changed_on', 'text', (column) => column.notNull())
        .addPrimaryKeyConstraint('plans_key', ['guild', 'key'])
        .execute();
    },
  },
  {
    name: 'challenges, their books and totals',
    // Only who takes the step loads it: a single ask reads this list to see how many there are.
    take: async (tables) => (await import('./challenge-step.ts')).makeChallengeTables(tables),
  },
  {
    name: 'blocks of the month',
    take: async (tables) => (await import('./month-tables.ts')).makeMonthTables(tables),
  },
  {
    name: 'answers by their age',
    async take(tables) {
      await tables.schema.createIndex('answered_by_age').on('answered').column('answered_at').execute();
    },
  },
  {
    name: 'swaps',
    take: async (tables) => (await import('./swap-step.ts')).makeSwapTables(tables),
  },
  {
    name: 'plans that challenges sew',
    async take(tables) {
      await tables.schema.alterTable('challenges').addColumn('plan', 'text').execute();
    },
  },
];

/** A database that has taken more steps than these was made by a newer program. */
export const KNOWN_STEPS = steps.length;

export const newerThanKnown = (has: number, path: string): Problem | undefined =>
  has > KNOWN_STEPS ? { code: 'store-newer', path, has, knows: KNOWN_STEPS } : undefined;

/** Takes the steps that are still to come, in order, and counts each. Runs inside a transaction. */
export async function takeSteps(
  tables: Kysely<Tables>,
  now: () => Date,
  known: readonly Step[] = steps,
): Promise<void> {
  await tables.schema
    .createTable('steps')
    .ifNotExists()
    .addColumn('step', 'integer', (column) => column.primaryKey())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('done_at', 'text', (column) => column.notNull())
    .execute();
  const taken = await stepsTaken(tables);
  for (const [index, step] of known.entries()) {
    if (index < taken) continue;
    await step.take(tables);
    await tables
      .insertInto('steps')
      .values({ step: index + 1, name: step.name, done_at: now().toISOString() })
      .execute();
  }
}

async function stepsTaken(tables: Kysely<Tables>): Promise<number> {
  const last = await tables
    .selectFrom('steps')
    .select('step')
    .orderBy('step', 'desc')
    .limit(1)
    .executeTakeFirst();
  return last?.step ?? 0;
}
