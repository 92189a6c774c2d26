import { CompiledQuery, type Kysely, sql } from 'kysely';
import type {
  Challenge,
  ChallengesKept,
  LineInBook,
  LogsOf,
  NamedLine,
  NewLine,
  Part,
  Person,
  TimedLog,
  Written,
} from '../guild/challenge-facts.ts';
import { prepared } from './prepared.ts';
import type { Tables } from './tables.ts';
import { TIMED_LOGS } from './timed-logs.ts';

type Which = Pick<Challenge, 'guild' | 'number'>;

type Books = Pick<
  ChallengesKept,
  'write' | 'take' | 'line' | 'lastLogs' | 'lines' | 'part' | 'timedLogs' | 'names'
>;

const LINE = [
  'number',
  'kind',
  'member',
  'by',
  'day',
  'pieces',
  'minutes',
  'note',
  'picture',
  'of',
  'at',
] as const;

type Of = { guild: string; challenge: number };

const append = prepared((tables, line: Tables['challenge_lines']) =>
  tables.insertInto('challenge_lines').values({
    guild: line.guild,
    challenge: line.challenge,
    number: line.number,
    kind: line.kind,
    member: line.member,
    by: line.by,
    day: line.day,
    pieces: line.pieces,
    minutes: line.minutes,
    note: line.note,
    picture: line.picture,
    of: line.of,
    at: line.at,
  }),
);

const carry = prepared((tables, { guild, challenge, pieces }: Of & { pieces: number }) =>
  tables
    .updateTable('challenges')
    .set(({ eb }) => ({ total: eb('total', '+', pieces), lines: eb('lines', '+', 1) }))
    .where('guild', '=', guild)
    .where('number', '=', challenge)
    .returning(['total', 'lines']),
);

type PartChange = Of & { member: string; joined: number; pieces: number; logs: number };

/** A member's totals, and the name they are under. Who logs of her own takes part. */
const carryPart = prepared((tables, { guild, challenge, member, joined, pieces, logs }: PartChange) =>
  tables
    .updateTable('challenge_parts')
    .set(({ eb }) => ({
      joined: sql<number>`joined | ${joined}`,
      pieces: eb('pieces', '+', pieces),
      logs: eb('logs', '+', logs),
    }))
    .where('guild', '=', guild)
    .where('challenge', '=', challenge)
    .where('member', '=', member)
    .returning(['pieces', 'name as known']),
);

const rename = prepared((tables, { guild, challenge, member, name }: Of & { member: string; name: string }) =>
  tables
    .updateTable('challenge_parts')
    .set({ name })
    .where('guild', '=', guild)
    .where('challenge', '=', challenge)
    .where('member', '=', member),
);

const carryDay = prepared((tables, { guild, challenge, day, pieces }: Of & { day: string; pieces: number }) =>
  tables
    .insertInto('challenge_days')
    .values({ guild, challenge, day, pieces })
    .onConflict((conflict) =>
      conflict
        .columns(['guild', 'challenge', 'day'])
        .doUpdateSet(({ ref }) => ({ pieces: sql<number>`${ref('challenge_days.pieces')} + ${pieces}` })),
    ),
);

/** Run page after page over long books. */
const linesAfter = prepared(
  (tables, { guild, challenge, after, most }: Of & { after: number; most: number }) =>
    tables
      .selectFrom('challenge_lines as line')
      .leftJoin('challenge_parts as part', (join) =>
        join
          .onRef('part.guild', '=', 'line.guild')
          .onRef('part.challenge', '=', 'line.challenge')
          .onRef('part.member', '=', 'line.member')
          .on('part.member', '<>', sql.lit('')),
      )
      .select(LINE.map((column) => `line.${column}` as const))
      .select(({ fn }) => fn.coalesce('part.name', sql<string>`''`).as('name'))
      .where('line.guild', '=', guild)
      .where('line.challenge', '=', challenge)
      .where('line.number', '>', after)
      .orderBy('line.number')
      .limit(most),
);

/** The books of challenges: lines appended, totals carried on with each. */
export function booksIn(tables: Kysely<Tables>): Books {
  async function write(of: Which, line: NewLine): Promise<Written> {
    const { guild, number: challenge } = of;
    const { kind, member, by, day, pieces = 0, minutes = null, note = '', picture = '', at } = line;
    const logs = kind === 'log' ? 1 : kind === 'back' ? -1 : 0;
    const [totals] = await carry(tables, { guild, challenge, pieces });
    const { total, lines: number } = totals!;
    const joined = kind === 'log' && member.id === by.id ? 1 : 0;
    const mine = await addToPart({ guild, challenge, joined, pieces, logs }, member, number);
    if (pieces !== 0) await carryDay(tables, { guild, challenge, day, pieces });
    const written = { number, kind, member: member.id, by: by.id, day, pieces, minutes, note, picture };
    await append(tables, { guild, challenge, ...written, of: line.of ?? null, at: at.toISOString() });
    return { number, total, mine };
  }

  /** What she has now. One who was forgotten has no part to add to: what is said of her is nobody's. */
  async function addToPart(
    change: Omit<PartChange, 'member'>,
    { id: member, name }: Person,
    since: number,
  ): Promise<number> {
    const { guild, challenge } = change;
    const [carried] = member === '' ? [] : await carryPart(tables, { ...change, member });
    if (!carried) {
      await tables
        .insertInto('challenge_parts')
        .values({ ...change, member, since, name })
        .execute();
      return change.pieces;
    }
    // Seldom: an index on names is not rewritten with every log.
    if (carried.known !== name) await rename(tables, { guild, challenge, member, name });
    return carried.pieces;
  }

  async function take({ guild, number }: Which, { id, name }: Person, joined: boolean): Promise<void> {
    const now = { name, joined: joined ? 1 : 0 };
    const taken = await tables
      .updateTable('challenge_parts')
      .set(now)
      .where('guild', '=', guild)
      .where('challenge', '=', number)
      .where('member', '=', id)
      .executeTakeFirst();
    if (taken.numUpdatedRows > 0n) return;
    const { lines } = await tables
      .selectFrom('challenges')
      .select('lines')
      .where('guild', '=', guild)
      .where('number', '=', number)
      .executeTakeFirstOrThrow();
    const part = { guild, challenge: number, member: id, since: lines + 1, ...now, pieces: 0, logs: 0 };
    await tables.insertInto('challenge_parts').values(part).execute();
  }

  /** The lines, each with the number of the line that took it back. */
  const withEnd = () =>
    tables
      .selectFrom('challenge_lines as line')
      .leftJoin('challenge_lines as end', (join) =>
        join
          .onRef('end.guild', '=', 'line.guild')
          .onRef('end.challenge', '=', 'line.challenge')
          .onRef('end.of', '=', 'line.number')
          .on('end.kind', '=', 'back'),
      )
      .select(LINE.map((column) => `line.${column}` as const))
      .select(['line.challenge', 'end.number as takenBackBy']);

  async function line({ guild, number: challenge }: Which, number: number): Promise<LineInBook | undefined> {
    const row = await withEnd()
      .where('line.guild', '=', guild)
      .where('line.challenge', '=', challenge)
      .where('line.number', '=', number)
      .executeTakeFirst();
    return row as LineInBook | undefined;
  }

  const lastLogs = async (
    guild: string,
    member: string,
    most: number,
    { challenge, day }: LogsOf = {},
  ): Promise<LineInBook[]> =>
    (await withEnd()
      .where('line.guild', '=', guild)
      .where('line.member', '=', member)
      .where('line.kind', '=', 'log')
      .where('end.number', 'is', null)
      .$if(challenge !== undefined, (logs) => logs.where('line.challenge', '=', challenge ?? 0))
      .$if(day !== undefined, (logs) => logs.where('line.day', '=', day ?? ''))
      .orderBy('line.at', 'desc')
      .orderBy('line.challenge', 'desc')
      .orderBy('line.number', 'desc')
      .limit(most)
      .execute()) as LineInBook[];

  const lines = async ({ guild, number: challenge }: Which, after: number, most: number) =>
    (await linesAfter(tables, { guild, challenge, after, most })) as NamedLine[];

  async function part({ guild, number }: Which, member: string): Promise<Part | undefined> {
    const row = await tables
      .selectFrom('challenge_parts')
      .select(['member', 'name', 'joined', 'pieces', 'logs'])
      .where('guild', '=', guild)
      .where('challenge', '=', number)
      .where('member', '=', member)
      .executeTakeFirst();
    return row && { ...row, joined: row.joined === 1 };
  }

  const timedLogs = async (guild: string, member: string, most: number): Promise<TimedLog[]> =>
    (await tables.executeQuery(CompiledQuery.raw(TIMED_LOGS, [guild, member, most]))).rows as TimedLog[];

  async function names({ guild, number }: Which, members: readonly string[]) {
    const rows = await tables
      .selectFrom('challenge_parts')
      .select(['member', 'name'])
      .where('guild', '=', guild)
      .where('challenge', '=', number)
      .where('member', 'in', [...new Set(members)])
      .execute();
    return new Map(rows.map(({ member, name }) => [member, name]));
  }

  return { write, take, line, lastLogs, lines, part, timedLogs, names };
}
