import type { Here } from '../src/chat/command.ts';
import { count, day, type Figure, inches } from '../src/chat/reply.ts';
import type { Challenge, Line } from '../src/guild/challenge-facts.ts';
import { countedWords, nounFor, piecesFor, worthOf } from '../src/guild/counted.ts';
import { grouped } from '../src/measure/ruler.ts';
import { dayWords } from '../src/measure/speech.ts';

/** The figures of a challenge itself. */
export function challengeFigures(of: Challenge): Record<string, Figure> {
  const { pieces, seams } = worthOf(of);
  return {
    number: count(of.number),
    total: count(of.total),
    ...(of.goal === null ? {} : { goal: count(of.goal), left: count(Math.max(0, of.goal - of.total)) }),
    ...(of.each === null ? {} : { each: count(of.each) }),
    first: day(of.first),
    ...(of.last === null ? {} : { last: day(of.last) }),
    pieces: count(pieces * of.total),
    seams: count(seams * of.total),
    seamLength: inches(seams * of.size * of.total),
  };
}

/** "57 of 200 rosettes", or "57 rosettes so far". */
export const totalWords = ({
  total,
  goal,
  counting,
}: Pick<Challenge, 'total' | 'goal' | 'counting'>): string =>
  goal === null
    ? `${grouped(total)} ${nounFor(counting, total)} so far`
    : `${grouped(total)} of ${grouped(goal)} ${nounFor(counting, goal)}`;

/**
 * A member's own count, beside what each is to reach.
 *
 * @example
 * mineWords(3, 4) // "Yours: 3 of 4."
 * mineWords(5, 4) // "Yours: 5, the goal of 4 reached."
 */
export function mineWords(mine: number, each: number | null): string {
  if (each === null) return `Yours: ${grouped(mine)}.`;
  return mine < each
    ? `Yours: ${grouped(mine)} of ${grouped(each)}.`
    : `Yours: ${grouped(mine)}, the goal of ${grouped(each)} reached.`;
}

/** "1 Dec 2026 to 31 Dec 2026", or without an end. */
export function daysOf({ first, last }: Pick<Challenge, 'first' | 'last'>): string {
  if (last === null) return `from ${dayWords(first)} on`;
  return first === last ? `on ${dayWords(first)}` : `${dayWords(first)} to ${dayWords(last)}`;
}

const WHO: Readonly<Record<Challenge['who'], string>> = {
  everyone: 'Everyone may log.',
  joined: 'Those who have joined may log.',
  organisers: 'Organisers log.',
};

/** What an organiser has said of a challenge, in lines. */
export function termsWords(of: Challenge, here: Here): string[] {
  const counted = countedWords(of);
  if (of.goal === null && of.each !== null)
    return [`${grouped(of.each)} ${counted} each, no goal for all.`, ...restWords(of, here)];
  const goal = of.goal === null ? `As many as you like: ${counted}` : `${grouped(of.goal)} ${counted}`;
  return [`${goal}${eachWords(of)}.`, ...restWords(of, here)];
}

/** How far a challenge is, and its terms, in lines. */
export function shownChallenge(of: Challenge, here: Here): string[] {
  const goal = of.goal === null ? '' : ` of ${grouped(of.goal)}`;
  const end = of.goal === null ? ' so far' : '';
  return [`${grouped(of.total)}${goal} ${countedWords(of)}${end}${eachWords(of)}.`, ...restWords(of, here)];
}

const eachWords = ({ each }: Challenge): string => (each === null ? '' : `, ${grouped(each)} each`);

function restWords(of: Challenge, { say, place }: Here): string[] {
  const { pieces, seams } = worthOf(of);
  const each = `${grouped(pieces)} ${piecesFor(of.counting, pieces)}, ${grouped(seams)} seams`;
  return [
    `${upper(daysOf(of))}${of.place === place ? '' : `, in ${of.place}`}.`,
    ...(seams > 0 ? [`One is ${each}, ${say.run(seams * of.size)}.`] : []),
    ...(of.open ? [WHO[of.who]] : []),
  ];
}

const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** One line of a book in words. */
export function lineWords(line: Line, { counting }: Pick<Challenge, 'counting'>): string {
  const { kind, pieces, minutes, note, of, day } = line;
  const count = `${grouped(Math.abs(pieces))} ${nounFor(counting, Math.abs(pieces))}`;
  const said: Readonly<Record<Line['kind'], string>> = {
    log: `${count} on ${dayWords(day)}${of === null ? '' : `, in place of ${of}`}`,
    back: `takes back ${of}: ${count}`,
    open: 'opened it',
    close: 'closed it',
    reopen: 'opened it again',
    join: 'joined',
    leave: 'left',
    edit: 'changed it',
  };
  const time = kind === 'log' && minutes !== null ? `, ${grouped(minutes)} min` : '';
  return `${said[kind]}${time}${note ? `: ${note}` : ''}`;
}
