import type { Answer, Here } from '../src/chat/command.ts';
import { reply } from '../src/chat/reply.ts';
import { A_WEEKDAY, of as inParts } from '../src/chat/sayings/saying.ts';
import type { Challenge } from '../src/guild/challenge-facts.ts';
import { countedWords, nounFor, worthOf } from '../src/guild/counted.ts';
import { type Wrong, wrong } from '../src/measure/result.ts';
import { minutesOption, piecesOption, type Sewn } from './log-words.ts';
import { MOST_NAMED } from './which-challenge.ts';

/** What was said of a log, as it was read. */
interface Read {
  readonly pieces: Sewn;
  readonly day?: string | undefined;
  readonly note?: string;
}

/** Those that count what was sewn, where that was said. */
export const ofKind = ({ of }: Sewn): ((one: Challenge) => boolean) | undefined =>
  of && ((one) => one.counting === of);

/** Several challenges are open, and none counts what was sewn: there is no choosing between them. */
export async function noneCounts(pieces: Sewn, { facts, guild }: Here): Promise<Wrong | null> {
  const counts = ofKind(pieces);
  const open = (await facts.challenges.all(guild)).filter((one) => one.open);
  if (!counts || open.length < 2 || open.some(counts)) return null;
  return wrong('none-counts', { got: pieces.called, instead: '/challenge list' });
}

/** A note that she did not call one; what is in it may have been meant otherwise. */
const looseNote = ({ note = '' }: { readonly note?: string | undefined }, { bare }: Here): string =>
  bare.has('note') ? note : '';

const AND_MORE = /^(?:and|then|plus|&)\s+(?=\S)/i;
const AND_A_PART = /^and (?:an? |one )?(?:half|quarter)\b/i;
/** "2 in 80": so many, and the minutes that they took. */
const IN_MINUTES = /^(\d+) in (\d+)(?:\s*min(?:ute)?s?)?(?=$|[\s,.;])/i;
const SOME_TIME = /^(last (?:week(?:end)?|month)|(?:at|over) the weekend|the other day)\b/i;

/** What cannot be kept as it was said: two logs in one line, or a day that is no one day. */
export function doubtIn(read: Read, here: Here): Answer | null {
  const note = looseNote(read, here);
  if (AND_A_PART.test(note)) return wrong('not-whole', { option: 'pieces', got: `${read.pieces.count} 1/2` });
  const more = AND_MORE.exec(note);
  const second = more && note.slice(more[0].length).replace(IN_MINUTES, '$1 pieces, $2 min');
  if (second && holdsCount(second, here)) return asTwo(second, here);
  const time = read.day === undefined ? SOME_TIME.exec(note)?.[1] : undefined;
  return time === undefined ? null : wrong('day-vague', { got: time, example: 'day:monday', instead: '' });
}

function holdsCount(text: string, { defaults, today }: Here): boolean {
  const context = { unit: defaults.unit.value, today };
  return !minutesOption.bareWhen?.test(text) && piecesOption.take(text, context)?.ok === true;
}

const asTwo = (second: string, here: Here): Answer =>
  reply({
    title: 'Two logs in one line',
    asks: 'Nothing is kept yet. One at a time: which first?',
    choices: [here.again({ note: undefined }), `/log ${second}`].map((ask) => ({
      label: ask.replace(/^\/log (?:pieces:)?/, ''),
      ask,
    })),
  });

const OF_THEM = /^(?:of|with)\s+/i;
/** Of so many hexagons is a rosette of so many rounds. */
const HEXAGONS = /^(?:of|with)\s+(\d{1,4}) (?:hexagons?|hexies|hexes|patches|pieces)\b/i;
const ROUNDS = /^(?:(?:of|with)\s+)?(\d{1,2})[- ]rounds?\b/i;

/** What was told beside how many, each by its own name. */
interface Told {
  readonly day?: string | undefined;
  readonly minutes?: number | undefined;
  readonly note?: string | undefined;
}

/** Something else was sewn than what the challenge counts. */
export function unlikeCounted(of: Challenge, pieces: Sewn, told: Told, here: Here): Answer | null {
  const counts = countedWords(of);
  if (pieces.of && pieces.of !== of.counting) return otherUnit(of, pieces);
  const note = looseNote(told, here);
  const rounds = ROUNDS.exec(note)?.[1];
  const hexagons = HEXAGONS.exec(note)?.[1];
  const alike = rounds ? Number(rounds) === of.rounds : Number(hexagons) === worthOf(of).pieces;
  if ((!rounds && !hexagons) || of.counting !== 'rosette' || alike) return null;
  return reply({
    title: of.name,
    asks: `${of.name} counts ${counts}. Log them all the same, or not?`,
    choices: [
      {
        label: 'Log them',
        ask: here.again({ ...told, challenge: String(of.number), note: note.replace(OF_THEM, '') }),
      },
      { label: 'See the challenge', ask: `/challenge show challenge:${of.number}` },
    ],
  });
}

/** What she calls it is not what is counted. */
export const otherUnit = ({ name, counting }: Challenge, { called = '' }: Sewn): Wrong =>
  wrong('other-unit', { name, counts: nounFor(counting, 2), got: called, instead: '' });

const FOR_ONE = /^for\s+(\p{L}[\p{L}’'-]*)$/iu;

/** Days that are sewn for, and kin: nobody of the guild is called that. */
const NO_MEMBER = inParts(
  "^(?:(?:christmas|xmas|easter|hanukkah|diwali|eid|thanksgiving|halloween)(?:['’]?s)?",
  '|mum(?:my)?|mom(?:my)?|dad(?:dy)?|gran(?:ny|ma|dma|dad|dpa)?|nan(?:na)?|baby',
  `|${A_WEEKDAY})$`,
);

/** A log is hers who types it: "3 for Bea" is not Bea's, and perhaps no note either; "3 for Christmas" is one. */
export async function forAnother(
  read: { readonly pieces: number; readonly note?: string },
  of: Challenge,
  here: Here,
): Promise<Answer | null> {
  const name = FOR_ONE.exec(looseNote(read, here))?.[1];
  if (name === undefined || name.toLowerCase() === here.who.name.toLowerCase()) return null;
  const names = await here.facts.challenges.joined(of, MOST_NAMED);
  const known = names.find((one) => one.toLowerCase() === name.toLowerCase());
  if (known) return wrong('own-log-only', { got: known, pieces: String(read.pieces), instead: '' });
  if (!/^\p{Lu}/u.test(name) || NO_MEMBER.test(name)) return null;
  return reply({
    title: of.name,
    asks: `A log counts for whoever types it. Is it yours, with the note ‘for ${name}’?`,
    choices: [{ label: 'It is mine', ask: here.again({ note: `for ${name}` }) }],
  });
}
