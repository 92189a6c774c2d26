import type { Renewal, ReplyChoice } from '../chat/reply.ts';
import type { Challenge } from './challenge-facts.ts';

/** One more, or with a form how many, how long it took, when, and a note. Anybody may press it. */
export const logChoice = ({ number }: Challenge): ReplyChoice => ({
  label: 'Log',
  ask: `/log 1 challenge:${number}`,
  open: true,
  fillIn: ['pieces', 'minutes', 'day', 'note'],
});

export const joinChoice = ({ number }: Challenge): ReplyChoice => ({
  label: 'Join',
  ask: `/challenge join challenge:${number}`,
  open: true,
});

export const standingsChoice = ({ number }: Challenge): ReplyChoice => ({
  label: 'Standings',
  ask: `/standings challenge:${number}`,
  open: true,
});

/** The name of the message in which a challenge's standings stay in its place. */
export const standingName = ({ number }: Challenge): string => `challenge-${number}`;

/** Whatever changes a challenge renews the standings that stand in its place. */
export const renewed = (of: Challenge): Renewal => ({ ask: standingsChoice(of).ask, place: of.place });

/** Whether it is on: open, begun and not over. */
export const isOn = ({ open, first, last }: Challenge, today: string): boolean =>
  open && first <= today && (last === null || today <= last);

/** Whether it is open though its last day is gone. */
export const isOver = ({ open, last }: Challenge, today: string): boolean =>
  open && last !== null && last < today;
