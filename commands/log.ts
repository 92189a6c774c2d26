import { type Answer, type Command, form, type Here } from '../src/chat/command.ts';
import { bare, required, usually } from '../src/chat/option.ts';
import { words } from '../src/chat/option-kinds.ts';
import { count, minutes as minutesFigure, reply } from '../src/chat/reply.ts';
import { calledIn } from '../src/chat/sayings/saying.ts';
import { renewed, standingsChoice } from '../src/guild/challenge-choices.ts';
import type { Challenge } from '../src/guild/challenge-facts.ts';
import { nounFor } from '../src/guild/counted.ts';
import { type Wrong, wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { dayWords } from '../src/measure/speech.ts';
import { daysOf, mineWords, totalWords } from './challenge-words.ts';
import { doubtIn, forAnother, noneCounts, ofKind, unlikeCounted } from './log-doubts.ts';
import {
  afterEach,
  dayOption,
  fromNote,
  MOST_MINUTES,
  minutesOption,
  noteOption,
  piecesOption,
} from './log-words.ts';
import { challengeOption, whichChallenge } from './which-challenge.ts';
import type { Settled } from './which-one.ts';

/** Where a picture of it can be seen: an address, or where it hangs. */
export const pictureOption = words('Where a picture of it is', 300, 'https://example.org/blue.jpg');

const log: Command = {
  name: 'log',
  summary: 'Log what you have sewn for a challenge',
  forms: [
    form({
      name: '',
      summary: 'Log what you have sewn for a challenge, with the day, the minutes and a note',
      examples: [
        '/log 3',
        '/log 2 rosettes yesterday',
        '/log 1 rosette 95 min, blue one',
        '/log pieces:2 day:2026-12-03 minutes:95 note:for the border',
      ],
      options: {
        pieces: required(bare(piecesOption)),
        minutes: minutesOption,
        day: usually(dayOption, 'today'),
        picture: pictureOption,
        challenge: challengeOption,
        note: noteOption,
      },
      keeps: true,
      async run(values, here) {
        const doubted = doubtIn(values, here);
        if (doubted) return doubted;
        const { challenge, pieces: sewn, ...said } = await withChallengeInNote(values, here);
        const uncounted = challenge === undefined ? await noneCounts(sewn, here) : null;
        if (uncounted) return uncounted;
        const found = await whichChallenge(challenge, here, 'open', ofKind(sewn));
        if ('asks' in found || !found.ok) return notThat(found);
        const told = { ...said, pieces: sewn.count };
        const read = saidWithNote(told, here);
        const { day, minutes, note } = read;
        const unlike =
          unlikeCounted(found.value, sewn, { day, minutes, note }, here) ??
          (await forAnother(told, found.value, here));
        return unlike ?? logTo(found.value, read, here);
      },
    }),
  ],
};

export default log;

/** What is answered where no challenge was settled on. */
export const notThat = (found: Exclude<Settled<Challenge>, { ok: true }>): Answer =>
  'asks' in found ? found.asks : found;

/** What was said of a log. */
interface Said {
  readonly pieces: number;
  readonly minutes?: number | undefined;
  readonly day?: string | undefined;
  readonly note?: string | undefined;
  readonly picture?: string | undefined;
}

const FOR_CHALLENGE = /^(?:for|to|in)\s+(?:the\s+)?(.+?)(?:\s+challenge)?$/iu;

/** "2 rosettes for Spring": the end names an open challenge, and is no note. */
async function withChallengeInNote<S extends { readonly note?: string; readonly challenge?: string }>(
  said: S,
  { bare: nameless, facts, guild }: Here,
): Promise<S> {
  const name = nameless.has('note') ? FOR_CHALLENGE.exec(said.note ?? '')?.[1]?.toLowerCase() : undefined;
  if (name === undefined || said.challenge !== undefined) return said;
  const all = await facts.challenges.all(guild);
  const found = all.find((one) => one.open && one.name.toLowerCase() === name);
  if (found) return { ...said, challenge: String(found.number), note: undefined };
  const called = calledIn(said.note ?? '', 'challenge');
  return called ? { ...said, challenge: called } : said;
}

/** What stands in a note without its name is read out of it: she typed it in one line. */
function saidWithNote(said: Said, { bare: nameless, today, defaults }: Here): Said {
  if (said.note === undefined || !nameless.has('note')) return said;
  const behind = said.minutes === undefined ? null : afterEach(said.note);
  if (said.minutes !== undefined && behind !== null)
    return { ...said, note: behind || undefined, minutes: said.minutes * said.pieces };
  const { note, minutes, each, day } = fromNote(said.note, { unit: defaults.unit.value, today });
  const told = minutes !== undefined && each ? minutes * said.pieces : minutes;
  return {
    ...said,
    note: said.minutes === undefined || minutes === undefined ? note : said.note,
    minutes: said.minutes ?? told,
    day: said.day ?? day,
  };
}

async function logTo(of: Challenge, said: Said, here: Here): Promise<Answer> {
  const { facts, who, now, today } = here;
  const day = said.day ?? today;
  const problem = (await mayLog(of, here)) ?? dayFits(of, day, said.day !== undefined, here);
  if (problem) return problem;
  const { pieces, minutes = null, note = '', picture = '' } = said;
  if (minutes !== null && minutes > MOST_MINUTES)
    return wrong('too-large', {
      ...{ option: 'minutes', got: `${grouped(minutes)} min` },
      ...{ least: '1 min', most: `${MOST_MINUTES / 60} h` },
    });
  const line = { kind: 'log', member: who, by: who, day, pieces, minutes, note, picture, at: now } as const;
  const { number, total, mine } = await facts.challenges.write(of, line);
  const noun = nounFor(of.counting, pieces);
  const reached = of.goal !== null && total >= of.goal && total - pieces < of.goal;
  return reply({
    title: of.name,
    lines: [
      `${grouped(pieces)} ${noun} kept${day === today ? '' : ` for ${dayWords(day)}`}${minutes === null ? '' : `, ${grouped(minutes)} min`}.`,
      `${totalWords({ ...of, total })}. ${mineWords(mine, of.each)}`,
      ...(reached ? [`The goal of ${grouped(of.goal ?? 0)} is reached.`] : []),
      ...(note === '' ? [] : [`Noted: ‘${note}’.`]),
      ...(picture === '' ? [] : [`Picture: ‘${picture}’.`]),
    ],
    figures: {
      logged: count(pieces),
      total: count(total),
      mine: count(mine),
      line: count(number),
      ...(minutes === null ? {} : { minutes: minutesFigure(minutes) }),
    },
    choices: [
      { label: `Take no. ${number} back`, ask: `/undo ${number} challenge:${of.number}` },
      standingsChoice(of),
    ],
    renews: renewed(of),
  });
}

async function mayLog(of: Challenge, { who, facts }: Here): Promise<Wrong | null> {
  if (of.who === 'everyone' || who.organiser) return null;
  if (of.who === 'organisers')
    return wrong('guild-organisers-only', { what: `Logging for ${of.name}`, instead: '' });
  const part = await facts.challenges.part(of, who.id);
  return part?.joined
    ? null
    : wrong('joined-only', { name: of.name, instead: `/challenge join challenge:${of.number}` });
}

/** A day that is not to come, and within the challenge's. */
export function dayFits(of: Challenge, day: string, wasSaid: boolean, { today }: Here): Wrong | null {
  const { name } = of;
  const [first, last] = [dayWords(of.first), of.last === null ? '' : dayWords(of.last)];
  if (day > today) return wrong('day-ahead', { day: dayWords(day), instead: '' });
  if (today < of.first) return wrong('challenge-not-begun', { name, first, instead: '' });
  if (!wasSaid && of.last !== null && day > of.last)
    return wrong('challenge-over', { name, last, example: `day:${of.last}`, instead: '' });
  if (day < of.first || (of.last !== null && day > of.last))
    return wrong('day-outside', { day: dayWords(day), name, days: daysOf(of), instead: '' });
  return null;
}
