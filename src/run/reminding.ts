import { Cron } from 'croner';
import type { Facts } from '../chat/facts.ts';
import type { Reply } from '../chat/reply.ts';
import { reminderReply } from '../guild/reminder-words.ts';
import { type Reminder, remindersDue } from '../guild/reminders.ts';

/** The notes under which it is kept what was told. */
const TOLD = 'reminders';
/** So long it is remembered: longer than any reminder is news. */
const REMEMBERED = 60 * 24 * 3_600_000;

/** So long platforms know by its `once` that a message was sent already: a few minutes, the shortest of them. */
const KNOWN_TWICE = 3 * 60_000;

export interface RemindingNeeds {
  readonly facts: Facts;
  now(): Date;
  /** Says it in its place; false where that place cannot be reached just now: it is tried again. */
  tell(reminder: Reminder, reply: Reply): Promise<boolean>;
  /** Told of what went wrong; the next minute is another try. */
  onFault(error: unknown): void;
}

/**
 * Tells the reminders whose time has come, each once: that it is being told is kept first, and then that it was.
 * After a crash between the two it is told again soon, when the platform still knows its `once` and says it one
 * time only; later it is rather lost than told twice. One that could not be told is tried again by the next call.
 * How many were told.
 */
export async function tellDue({ facts, now, tell, onFault }: RemindingNeeds): Promise<number> {
  const moment = now();
  const due = await remindersDue(await facts.reminders.standing(), moment);
  let told = 0;
  for (const reminder of due) {
    if (!(await claimed(facts, reminder, moment))) continue;
    try {
      const reply = await reminderReply(reminder, facts);
      if (reply !== null && !(await tell(reminder, reply))) {
        await facts.notes.remove(TOLD, reminder.once);
        continue;
      }
      await keepTold(facts, reminder, 'told');
      if (reply !== null) told++;
    } catch (error) {
      await facts.notes.remove(TOLD, reminder.once);
      onFault(error);
    }
  }
  return told;
}

/** Keeps that this one is being told now; false where it was told before, or may have been. */
const claimed = (facts: Facts, reminder: Reminder, now: Date): Promise<boolean> =>
  facts.together(async (bound) => {
    const before = await bound.notes.find(TOLD, reminder.once);
    if (before !== undefined && !brokenOff(before, now)) return false;
    await keepTold(bound, reminder, { telling: now.toISOString() });
    return true;
  });

const keepTold = ({ notes }: Facts, { once, guild, member }: Reminder, state: unknown): Promise<void> =>
  notes.keep(TOLD, once, state, { guild, member: member ?? '' });

/** Telling it was begun just now, and nobody kept how it ended. */
function brokenOff(state: unknown, now: Date): boolean {
  const begun = (state as { readonly telling?: unknown } | null)?.telling;
  return typeof begun === 'string' && now.getTime() - Date.parse(begun) < KNOWN_TWICE;
}

/** Looks each minute, until it is stopped; one look ends before the next begins. */
export function startReminding(needs: RemindingNeeds): { stop(): Promise<void> } {
  let looking: Promise<void> = Promise.resolve();
  const look = async () => {
    try {
      await tellDue(needs);
      await needs.facts.notes.prune(TOLD, '', new Date(needs.now().getTime() - REMEMBERED));
    } catch (error) {
      needs.onFault(error);
    }
  };
  const minutes = new Cron('* * * * *', { protect: true, unref: true }, () => {
    looking = look();
    return looking;
  });
  return {
    async stop() {
      minutes.stop();
      await looking;
    },
  };
}
