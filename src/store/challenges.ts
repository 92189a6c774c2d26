import { type Kysely, type Selectable, sql } from 'kysely';
import type { Challenge, ChallengesKept, ChallengeTerms, Heads } from '../guild/challenge-facts.ts';
import { booksIn } from './challenge-books.ts';
import type { Keeping } from './keeping.ts';
import { prepared } from './prepared.ts';
import type { Tables } from './tables.ts';

/** Read with every log, to tell which one is meant: put in order here, for which SQLite takes ten times as long. */
const ofGuild = prepared((tables, { guild }: { guild: string }) =>
  tables.selectFrom('challenges').selectAll().where('guild', '=', guild),
);

/** All counted in one look at the parts, which lie together. */
const headsOf = prepared(
  (tables, { guild, challenge, each }: { guild: string; challenge: number; each: number }) =>
    tables
      .selectFrom('challenge_parts')
      .select(({ fn }) => [
        fn.sum<number>('joined').as('joined'),
        sql<number>`total(pieces > 0)`.as('sewing'),
        sql<number>`total(pieces >= ${each})`.as('reached'),
      ])
      .where('guild', '=', guild)
      .where('challenge', '=', challenge),
);

/** Challenges and their books, over a connection that is already in a transaction where it must be. */
export function challengesIn(tables: Kysely<Tables>, { now }: Keeping): ChallengesKept {
  async function add(guild: string, terms: ChallengeTerms): Promise<Challenge> {
    const before = await tables
      .selectFrom('challenges')
      .select(({ fn }) => fn.max('number').as('last'))
      .where('guild', '=', guild)
      .executeTakeFirst();
    const number = (before?.last ?? 0) + 1;
    await tables
      .insertInto('challenges')
      .values({ guild, number, ...terms, open: 1, opened_at: now().toISOString(), total: 0, lines: 0 })
      .execute();
    return { guild, number, ...terms, open: true, total: 0, lines: 0 };
  }

  async function change(
    { guild, number }: Pick<Challenge, 'guild' | 'number'>,
    { open, ...terms }: Parameters<ChallengesKept['change']>[1],
  ): Promise<Challenge> {
    const row = await tables
      .updateTable('challenges')
      .set({ ...terms, ...(open === undefined ? {} : { open: open ? 1 : 0 }) })
      .where('guild', '=', guild)
      .where('number', '=', number)
      .returningAll()
      .executeTakeFirstOrThrow();
    return challengeOf(row);
  }

  async function all(guild: string, most = 200): Promise<Challenge[]> {
    const rows = await ofGuild(tables, { guild });
    rows.sort((a, b) => b.open - a.open || b.number - a.number);
    return rows.slice(0, most).map(challengeOf);
  }

  async function one(guild: string, number: number): Promise<Challenge | undefined> {
    const row = await tables
      .selectFrom('challenges')
      .selectAll()
      .where('guild', '=', guild)
      .where('number', '=', number)
      .executeTakeFirst();
    return row && challengeOf(row);
  }

  async function parts(
    { guild, number }: Pick<Challenge, 'guild' | 'number'>,
    by: 'pieces' | 'name',
    most: number,
  ) {
    const rows = await tables
      .selectFrom('challenge_parts')
      .select(['member', 'name', 'joined', 'pieces', 'logs'])
      .where('guild', '=', guild)
      .where('challenge', '=', number)
      .where('member', '<>', '')
      .where('pieces', '>', 0)
      .orderBy(by, by === 'pieces' ? 'desc' : 'asc')
      .limit(most)
      .execute();
    return rows.map((row) => ({ ...row, joined: row.joined === 1 }));
  }

  async function joined({ guild, number }: Pick<Challenge, 'guild' | 'number'>, most: number) {
    const rows = await tables
      .selectFrom('challenge_parts')
      .select('name')
      .where('guild', '=', guild)
      .where('challenge', '=', number)
      .where('member', '<>', '')
      .where('joined', '=', 1)
      .orderBy('name', 'asc')
      .limit(most)
      .execute();
    return rows.map(({ name }) => name);
  }

  async function heads(
    { guild, number }: Pick<Challenge, 'guild' | 'number'>,
    each: number | null,
  ): Promise<Heads> {
    const [row] = await headsOf(tables, { guild, challenge: number, each: each ?? Number.MAX_SAFE_INTEGER });
    return { joined: row?.joined ?? 0, sewing: row?.sewing ?? 0, reached: row?.reached ?? 0 };
  }

  const days = ({ guild, number }: Pick<Challenge, 'guild' | 'number'>) =>
    tables
      .selectFrom('challenge_days')
      .select(['day', 'pieces'])
      .where('guild', '=', guild)
      .where('challenge', '=', number)
      .where('pieces', '<>', 0)
      .orderBy('day')
      .execute();

  return { add, change, all, one, parts, joined, heads, days, ...booksIn(tables) };
}

export const challengeOf = ({ opened_at: _, ...row }: Selectable<Tables['challenges']>): Challenge =>
  ({ ...row, open: row.open === 1 }) as Challenge;
