import type { Facts } from '../chat/facts.ts';
import { type Reply, reply } from '../chat/reply.ts';
import { grouped } from '../measure/ruler.ts';
import { dayWords, many } from '../measure/speech.ts';
import { isOn, logChoice, standingsChoice } from './challenge-choices.ts';
import type { Challenge } from './challenge-facts.ts';
import { countedWords, nounFor } from './counted.ts';
import { dayAfter, daysBetween } from './days.ts';
import type { Month, MonthBlock } from './month-facts.ts';
import type { Reminder } from './reminders.ts';

type Words = (of: Challenge, day: string, facts: Facts) => Promise<Partial<Reply>> | Partial<Reply>;

const ROOM_STOP = 'Organisers stop these: `/guild set reminders:off`';
const OWN_STOP = 'Stop these: `/me set nudge:off`';
/** Nobody asked for a reminder: whoever presses stops her own. */
const STOP_OWN = { label: 'Stop these', ask: '/me set nudge:off', open: true };

/**
 * What a reminder says; null where what it is about is gone. Nobody is named, nobody is chased: how far the
 * whole is, and what is next.
 */
export async function reminderReply(reminder: Reminder, facts: Facts): Promise<Reply | null> {
  const { about, guild, day } = reminder;
  if (about.kind === 'nudge') return ownWords(reminder, facts);
  if (about.kind === 'block') return blockWords(guild, about.month, about.slot, facts);
  const of = await facts.challenges.one(guild, about.challenge);
  if (!of?.open) return null;
  const words = await CHALLENGE_WORDS[about.kind](of, day, facts);
  const choices = [...(isOn(of, day) ? [logChoice(of)] : []), standingsChoice(of)];
  return reply({ command: 'standings', notes: [ROOM_STOP], choices, ...words });
}

const CHALLENGE_WORDS: Readonly<Record<'begins' | 'last-days' | 'last-day' | 'digest', Words>> = {
  begins: (of) => ({
    title: `${of.name} has begun`,
    lines: [
      `Wanted: ${of.goal === null ? '' : `${grouped(of.goal)} `}${countedWords(of)}${of.each === null ? '' : `, ${grouped(of.each)} each`}.`,
      ...(of.last === null ? [] : [`Until ${dayWords(of.last)}.`]),
      'When one is done: `/log 1`',
    ],
  }),
  'last-days': (of) => ({
    title: `${of.name} ends on ${dayWords(of.last ?? '')}`,
    lines: [`${soFar(of)}.`, 'What is sewn and not logged yet: `/log`'],
  }),
  'last-day': (of) => ({
    title: `Last day of ${of.name}`,
    lines: [`${soFar(of)}.`, 'What is sewn and not logged yet: `/log`'],
  }),
  async digest(of, day, facts) {
    const week = (await facts.challenges.days(of)).filter(
      (one) => one.day >= dayAfter(day, -7) && one.day < day,
    );
    const pieces = week.reduce((sum, one) => sum + one.pieces, 0);
    const left = of.last === null || of.last < day ? null : daysBetween(day, of.last);
    return {
      title: `${of.name}, the week to ${dayWords(dayAfter(day, -1))}`,
      lines: [
        `${many(pieces, nounFor(of.counting, 1), nounFor(of.counting, 2))} this week.`,
        `${soFar(of)}.`,
        ...(left === null ? [] : [left === 0 ? 'It ends today.' : `${many(left, 'day', 'days')} to go.`]),
      ],
    };
  },
};

const soFar = ({ total, goal, counting }: Challenge): string =>
  goal === null
    ? `${grouped(total)} ${nounFor(counting, total)} so far`
    : `${grouped(total)} of ${grouped(goal)} ${nounFor(counting, goal)}`;

async function blockWords(guild: string, month: number, slot: number, facts: Facts): Promise<Reply | null> {
  const of = await facts.months.one(guild, month);
  const slots = of?.open ? await facts.months.blocks(of) : [];
  const at = slots.findIndex((one) => one.slot === slot);
  const opened = slots[at];
  if (!of || !opened) return null;
  return reply({ command: 'month', notes: [ROOM_STOP], ...blockReply(of, opened, slots[at + 1]) });
}

function blockReply(of: Month, { block, words, inside, joining }: MonthBlock, next: MonthBlock | undefined) {
  const until = next ? [`The next one is from ${dayWords(next.opens)}.`] : [];
  if (block === null)
    return { title: `${of.name}: time to catch up`, lines: ['No new block this time.', ...until] };
  return {
    title: `${of.name}: block ${block} is open`,
    lines: [
      `${words.charAt(0).toUpperCase()}${words.slice(1)}.`,
      `${many(inside + joining, 'seam', 'seams')}.`,
      ...until,
    ],
    choices: [
      { label: 'Cut list and cloth', ask: `/month block ${block} month:${of.number}`, open: true },
      { label: 'Finished', ask: `/month done ${block} month:${of.number}`, open: true },
    ],
  };
}

/** A member's own: what she is in, and her own count. */
async function ownWords({ guild, member, day }: Reminder, facts: Facts): Promise<Reply | null> {
  if (member === null) return null;
  const open = (await facts.challenges.all(guild)).filter(
    (one) => one.open && one.first <= day && (one.last === null || day <= one.last),
  );
  const mine = await Promise.all(
    open.map(async (of) => ({ of, part: await facts.challenges.part(of, member) })),
  );
  const joined = mine.filter(({ part }) => part?.joined);
  const name = joined.find(({ part }) => part?.name)?.part?.name;
  if (joined.length === 0) return null;
  return reply({
    command: 'log',
    title: name ? `${name}, your own reminder` : 'Your own reminder',
    lines: [
      ...joined.map(({ of, part }) => {
        const left = of.last === null ? '' : `, until ${dayWords(of.last)}`;
        const each = of.each === null ? '' : ` of ${grouped(of.each)}`;
        return `${of.name}: ${grouped(part?.pieces ?? 0)}${each} ${nounFor(of.counting, of.each ?? part?.pieces ?? 0)} of yours${left}.`;
      }),
      'When one is done: `/log 1`',
    ],
    choices: [...joined.slice(0, 1).map(({ of }) => logChoice(of)), STOP_OWN],
    notes: [OWN_STOP],
    audience: 'asker',
  });
}
