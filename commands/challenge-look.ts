import { form, type Here } from '../src/chat/command.ts';
import { bare, otherwise } from '../src/chat/option.ts';
import { whole } from '../src/chat/option-kinds.ts';
import { count, type Reply, reply } from '../src/chat/reply.ts';
import { isOn, isOver, joinChoice, logChoice, standingsChoice } from '../src/guild/challenge-choices.ts';
import type { Challenge, Line } from '../src/guild/challenge-facts.ts';
import { nounFor } from '../src/guild/counted.ts';
import { daysBetween } from '../src/guild/days.ts';
import { wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { dayWords, many } from '../src/measure/speech.ts';
import { leftOfPlan } from './challenge-plan.ts';
import { challengeFigures, daysOf, lineWords, shownChallenge, totalWords } from './challenge-words.ts';
import { challengeOption, OPENING, whichChallenge } from './which-challenge.ts';

export const joinForm = form({
  name: 'join',
  summary: 'Take part in a challenge',
  examples: ['/challenge join', '/challenge join Spring'],
  options: { challenge: bare(challengeOption) },
  keeps: true,
  async run(values, here) {
    const found = await whichChallenge(values.challenge, here, 'open');
    if ('asks' in found) return found.asks;
    if (!found.ok) return found;
    const { facts, who, today, now } = here;
    const part = await facts.challenges.part(found.value, who.id);
    if (!part?.joined) {
      await facts.challenges.take(found.value, who, true);
      await facts.challenges.write(found.value, { kind: 'join', member: who, by: who, day: today, at: now });
    }
    return reply({
      title: `Joined ${found.value.name}`,
      lines: shownChallenge(found.value, here),
      figures: { ...challengeFigures(found.value), mine: count(part?.pieces ?? 0) },
      choices: [
        ...(isOn(found.value, today) ? [logChoice(found.value)] : []),
        { label: 'Leave again', ask: `/challenge leave challenge:${found.value.number}` },
      ],
      notes: [howToLog(found.value, today)],
    });
  },
});

function howToLog(of: Challenge, today: string): string {
  if (isOver(of, today))
    return `Its last day was ${dayWords(of.last ?? '')}. Sewn before then? \`/log 1 day:${of.last}\``;
  return today < of.first
    ? `From ${dayWords(of.first)} on, when one is done: \`/log 1\``
    : 'When one is done: `/log 1`';
}

export const leaveForm = form({
  name: 'leave',
  summary: 'Leave a challenge; what was logged stays in the total',
  examples: ['/challenge leave', '/challenge leave Spring'],
  options: { challenge: bare(challengeOption) },
  keeps: true,
  async run(values, here) {
    const found = await whichChallenge(values.challenge, here, 'any');
    if ('asks' in found) return found.asks;
    if (!found.ok) return found;
    const { facts, who, today, now } = here;
    const part = await facts.challenges.part(found.value, who.id);
    if (!part?.joined) return wrong('not-joined', { name: found.value.name, instead: '' });
    await facts.challenges.take(found.value, who, false);
    await facts.challenges.write(found.value, { kind: 'leave', member: who, by: who, day: today, at: now });
    const stays =
      part.pieces > 0
        ? `Your ${grouped(part.pieces)} ${nounFor(found.value.counting, part.pieces)} stay in the total.`
        : 'Nothing of yours was logged.';
    return reply({
      title: `Left ${found.value.name}`,
      lines: [stays],
      figures: { ...challengeFigures(found.value), mine: count(part.pieces) },
      choices: [{ label: 'Join again', ask: `/challenge join challenge:${found.value.number}` }],
    });
  },
});

export const showForm = form({
  name: 'show',
  summary: 'What is counted, the goal, the days and how far it is',
  examples: ['/challenge show', '/challenge show Spring'],
  options: { challenge: bare(challengeOption) },
  async run(values, here) {
    const found = await whichChallenge(values.challenge, here, 'any');
    if ('asks' in found) return found.asks;
    if (!found.ok) return found;
    const of = found.value;
    const part = await here.facts.challenges.part(of, here.who.id);
    const heads = await here.facts.challenges.heads(of, of.each);
    const left = await leftOfPlan(of, here);
    return reply({
      title: `${of.name}, no. ${of.number}${of.open ? '' : ', closed'}`,
      lines: [
        ...shownChallenge(of, here),
        ...daysLeftWords(of, here.today),
        ...left.lines,
        await joinedWords(of, heads.joined, here),
        ...(part && part.pieces > 0 ? [`Yours: ${grouped(part.pieces)}.`] : []),
      ],
      figures: {
        ...challengeFigures(of),
        ...left.figures,
        joined: count(heads.joined),
        mine: count(part?.pieces ?? 0),
      },
      choices: [
        ...(isOn(of, here.today) ? [logChoice(of)] : []),
        standingsChoice(of),
        ...(of.open && !part?.joined ? [joinChoice(of)] : []),
      ],
    });
  },
});

/** "23 days left." Today is not one of them. */
function daysLeftWords(of: Challenge, today: string): string[] {
  if (of.last === null || !isOn(of, today)) return [];
  const left = daysBetween(today, of.last);
  return [left === 0 ? 'Today is the last day.' : `${many(left, 'day', 'days')} left after today.`];
}

/** So many names are told of those who take part: two lines of a phone. */
const MOST_NAMED = 8;

/** "3 members take part: Ada, Bea, Cleo." One more is named as well: "and 1 more" would be as long. */
async function joinedWords(of: Challenge, joined: number, { facts, defaults }: Here): Promise<string> {
  const takePart = many(joined, 'member takes', 'members take');
  if (joined === 0 || defaults.standings.value === 'totals') return `${takePart} part.`;
  const names = await facts.challenges.joined(of, MOST_NAMED + 1);
  const told = joined > MOST_NAMED + 1 ? names.slice(0, MOST_NAMED) : names;
  const more = joined > told.length ? ` and ${grouped(joined - told.length)} more` : '';
  return `${takePart} part${told.length > 0 ? `: ${told.join(', ')}${more}` : ''}.`;
}

const MOST_LISTED = 15;

export const listForm = form({
  name: 'list',
  summary: 'All challenges of the guild, the open ones first',
  examples: ['/challenge list'],
  options: {},
  async run(_, here): Promise<Reply> {
    const all = await here.facts.challenges.all(here.guild);
    if (all.length === 0)
      return reply({ title: 'No challenge yet', lines: ['An organiser opens one:', `\`${OPENING}\``] });
    const open = all.filter((one) => one.open).length;
    const over = all.filter((one) => isOver(one, here.today)).length;
    const shown = all.slice(0, MOST_LISTED);
    const more = all.length - shown.length;
    return reply({
      title: 'Challenges',
      lines: [
        `${many(open, 'is', 'are')} open${over > 0 ? ` (${grouped(over)} past the last day)` : ''}, ${grouped(all.length - open)} closed.`,
      ],
      figures: { open: count(open), closed: count(all.length - open), over: count(over) },
      table: {
        columns: ['no.', 'challenge', 'so far'],
        rows: shown.map((one) => [String(one.number), listed(one), totalWords(one)]),
      },
      notes: more > 0 ? [`And ${many(more, 'older one', 'older ones')}.`] : [],
    });
  },
});

const listed = (of: Challenge): string => `${of.name}, ${of.open ? daysOf(of) : `closed, ${daysOf(of)}`}`;

export const historyForm = form({
  name: 'history',
  summary: 'The last lines of a challenge’s book: who logged and changed what',
  examples: ['/challenge history', '/challenge history lines:30'],
  options: { challenge: bare(challengeOption), lines: otherwise(whole('How many lines', 1, 50, '15'), 15) },
  async run(values, here) {
    const found = await whichChallenge(values.challenge, here, 'any');
    if ('asks' in found) return found.asks;
    if (!found.ok) return found;
    const of = found.value;
    const lines = await here.facts.challenges.lines(of, Math.max(0, of.lines - values.lines), values.lines);
    const names = await here.facts.challenges.names(
      of,
      lines.flatMap(({ member, by }) => [member, by]),
    );
    return reply({
      title: `The book of ${of.name}`,
      lines: [`${many(of.lines, 'line', 'lines')}; the last ${grouped(lines.length)}, the latest first.`],
      figures: { lines: count(of.lines) },
      table: {
        columns: ['no.', 'who', 'what'],
        rows: [...lines]
          .reverse()
          .map((line) => [String(line.number), whoWrote(line, names), lineWords(line, of)]),
      },
      notes: ['Nothing is rubbed out: what was wrong is taken back by a later line.'],
    });
  },
});

function whoWrote({ member, by }: Line, names: ReadonlyMap<string, string>): string {
  const named = (id: string) => (id === '' ? 'nobody’s now' : (names.get(id) ?? 'somebody'));
  return by === member ? named(by) : `${named(by)}, for ${named(member)}`;
}
