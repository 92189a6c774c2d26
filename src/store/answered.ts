import type { Kysely } from 'kysely';
import type { Answer, AnswersKept } from '../chat/facts.ts';
import type { Keeping } from './keeping.ts';
import { prepared } from './prepared.ts';
import type { Tables } from './tables.ts';

/** Looked for and kept with every ask that comes from outside. */
const answerTo = prepared((tables, { guild, event }: { guild: string; event: string }) =>
  tables
    .selectFrom('answered')
    .select(['member', 'command', 'reply'])
    .where('guild', '=', guild)
    .where('event', '=', event),
);

const keepAnswer = prepared(
  (tables, { guild, event, member, command, reply, answered_at }: Tables['answered']) =>
    tables
      .insertInto('answered')
      .values({ guild, event, member, command, reply, answered_at })
      .onConflict((conflict) => conflict.columns(['guild', 'event']).doNothing())
      .returning('event'),
);

/** The answers given, so that an event delivered twice is answered once. */
export function answersIn(tables: Kysely<Tables>, { now, report }: Keeping): AnswersKept {
  async function find(guild: string, event: string): Promise<Answer | undefined> {
    const [row] = await answerTo(tables, { guild, event });
    if (!row) return undefined;
    // Emptied when somebody whom it may name was forgotten.
    if (row.reply === '') return { ...row, reply: null };
    try {
      return { ...row, reply: JSON.parse(row.reply) as unknown };
    } catch {
      report({ code: 'store-bad-row', table: 'answered', guild, event });
      // Still an answer: the event must not be acted on a second time.
      return { ...row, reply: null };
    }
  }

  async function keep(guild: string, event: string, { member, command, reply }: Answer): Promise<boolean> {
    const row = {
      guild,
      event,
      member,
      command,
      reply: JSON.stringify(reply),
      answered_at: now().toISOString(),
    };
    return (await keepAnswer(tables, row)).length === 1;
  }

  return { find, keep };
}
