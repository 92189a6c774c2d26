import { Cron } from 'croner';
import type { Facts } from '../chat/facts.ts';
import type { Reply } from '../chat/reply.ts';
import { reminderReply } from '../guild/reminder-words.ts';
import { type Reminder, remindersDue } from '../guild/reminders.ts';

/** The notes under which it is kept what was told. */
const TOLD = 'reminders';
/** So long it is remembered: longer than any reminder is news. */
const REMEMBERED = 60 * 24 * 3_600_000;

export interface RemindingNeeds {
  readonly facts: Facts;
  now(): Date;
  /** Says it in its place; false where that place cannot be reached just now: it is tried again. */
  tell(reminder: Reminder, reply: Reply): Promise<boolean>;
  /** Told of what went wrong; the next minute is another try. */
  onFault(error: unknown): void;
}

/**
 * Tells the reminders whose time has come, each once: that it is being told is kept first, so that after a
 * crash half way it is rather lost than told twice. One that could not be told is tried again by the next call.
 * How many were told.
 */
export async function tellDue({ facts, now, tell, onFault }: RemindingNeeds): Promise<number> {
  const moment = now();
  const due = await remindersDue(await facts.reminders.standing(), moment);
  let told = 0;
  for (const reminder of due) {
    if (!(await claimed(facts, reminder))) continue;
    try {
      const reply = await reminderReply(reminder, facts);
      if (reply === null) continue;
      if (await tell(reminder, reply)) told++;
      else await facts.notes.remove(TOLD, reminder.once);
    } catch (error) {
      await facts.notes.remove(TOLD, reminder.once);
      onFault(error);
    }
  }
  return told;
}

/** Keeps that this one is told now; false where it was before. */
const claimed = (facts: Facts, { once, guild, member, about }: Reminder): Promise<boolean> =>
  facts.together(async (bound) => {
    if ((await bound.notes.find(TOLD, once)) !== undefined) return false;
    await bound.notes.keep(TOLD, once, about.kind, { guild, member: member ?? '' });
    return true;
  });

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
