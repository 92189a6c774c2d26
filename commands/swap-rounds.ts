import { form, type Here } from '../src/chat/command.ts';
import { bare, type Option, otherwise } from '../src/chat/option.ts';
import { whole as wholeNumber } from '../src/chat/option-kinds.ts';
import { count, type Reply, reply } from '../src/chat/reply.ts';
import type { WholeSwap } from '../src/guild/swap-plan.ts';
import { evenSwap, roundsLeft, swapRounds } from '../src/guild/swap-rounds.ts';
import { takeNumber } from '../src/measure/number.ts';
import { ok, wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import { askedSwap, whichSwap } from './swap-which.ts';
import { namesIn, piecesWords } from './swap-words.ts';

/** An even swap is among so many at most; up to so many are written out round by round. */
const MOST_MEMBERS = 1000;
const WRITTEN_OUT = 30;

type Members = number | readonly string[];

const membersOption: Option<Members, false> = {
  kind: 'number of members, or their names',
  summary: 'How many take part, or their names with a comma between',
  example: '12',
  bounds: '2 to 1,000; Ada, Bea, Cora',
  shape: { as: 'words', longest: 600 },
  names: ['member'],
  // A number, or names one after another; other words of a question are none.
  bareWhen: /^\d{1,6}\b|^\p{Lu}[\p{L}'-]*(?:\s*[,;]\s*\p{Lu}[\p{L}'-]*)+\s*(?:$|(?:each|swap)\s*[:=])/u,
  take(text) {
    const number = takeNumber(text);
    if (number && /^\s*(?:members?|people|of us)?\s*(?:$|[,;]|each\b|\w+\s*[:=])/i.test(number.rest))
      return inRange(number.value, number.rest.replace(/^\s*(?:members?|people|of us)\b/i, ''));
    const end = /\s(?:each|swap)\s*[:=]/i.exec(text)?.index ?? text.length;
    const names = text
      .slice(0, end)
      .split(/\s*[,;]\s*/)
      .map((name) => name.trim())
      .filter(Boolean);
    if (names.length < 2) return null;
    if (new Set(names.map((name) => name.toLowerCase())).size < names.length)
      return wrong('swap-names-twice');
    if (names.length > WRITTEN_OUT)
      return wrong('too-large', { got: grouped(names.length), least: '2', most: String(WRITTEN_OUT) });
    return ok({ value: names, rest: text.slice(end) });
  },
  write: (value) => (typeof value === 'number' ? String(value) : value.join(', ')),
};

function inRange(value: number, rest: string) {
  if (!Number.isInteger(value)) return wrong('not-whole', { got: String(value) });
  const bounds = { got: value < 1e9 ? grouped(value) : 'that', least: '2', most: grouped(MOST_MEMBERS) };
  if (value < 2) return wrong('too-small', bounds);
  return value > MOST_MEMBERS ? wrong('too-large', bounds) : ok({ value, rest });
}

export const rounds = form({
  name: 'rounds',
  summary: 'An even swap: how many each makes, and who sends to whom in each round',
  examples: ['/swap rounds members:12 each:10', '/swap rounds members:Ada, Bea, Cora each:4', '/swap rounds'],
  options: {
    members: bare(membersOption),
    each: otherwise(wholeNumber('How many each gives to every other', 1, 10_000, '10'), 1),
    swap: whichSwap,
  },
  async run({ members, each, swap: name }, here) {
    if (members !== undefined && name === undefined)
      return ofMembers(members, each, here.given.has('each'), here);
    const asked = await askedSwap(name, here);
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked.problem.code === 'swap-none' ? wrong('swap-how-many') : asked;
    return asked.value.swap.each === null
      ? wrong('swap-is-matched', { name: asked.value.swap.name, instead: '' })
      : ofSwap(asked.value, here);
  },
});

function ofMembers(members: Members, each: number, said: boolean, { say }: Here): Reply {
  const size = typeof members === 'number' ? members : members.length;
  const called = (at: number) => (typeof members === 'number' ? String(at + 1) : (members[at] ?? ''));
  return reply({
    title: `An even swap among ${grouped(size)}`,
    ...told(size, each, '', say),
    notes: said ? [] : ['One to every other, as you did not say how many: `each:10`'],
    table:
      size > WRITTEN_OUT
        ? null
        : table(
            swapRounds(size).map((round) => round.map(({ from, to }) => [called(from), called(to)] as const)),
          ),
  });
}

function ofSwap({ swap, people, parcels }: WholeSwap, { say }: Here): Reply {
  const active = people.filter(({ state }) => state === 'in').map(({ member }) => member);
  if (active.length < 2) return reply({ title: swap.name, lines: ['Nobody to swap with yet: `/swap join`'] });
  const nameOf = namesIn(people);
  const sent = new Set(
    parcels.filter(({ sentAt }) => sentAt !== null).map(({ from, to }) => JSON.stringify([from, to])),
  );
  const left = roundsLeft(active, (from, to) => sent.has(JSON.stringify([from, to])));
  return reply({
    title: `${swap.name}, round by round`,
    ...told(active.length, swap.each ?? 1, swap.good ?? '', say),
    table:
      active.length > WRITTEN_OUT || left.length === 0
        ? null
        : table(left.map((round) => round.map(({ from, to }) => [nameOf(from), nameOf(to)] as const))),
    notes: sent.size > 0 ? [`${many(sent.size, 'parcel is', 'parcels are')} sent already and left out.`] : [],
  });
}

function told(members: number, each: number, good: string, say: Here['say']) {
  const { makePerMember, exchanged } = evenSwap(members, each);
  return {
    lines: [
      `Each makes ${piecesWords(good, makePerMember, say)}.`,
      `${grouped(exchanged)} change hands in ${many(members - 1, 'round', 'rounds')}.`,
      'In round k each sends to the one k places on in the list.',
    ],
    figures: {
      makePerMember: count(makePerMember),
      exchanged: count(exchanged),
      members: count(members),
      rounds: count(members - 1),
    },
  };
}

const table = (rounds: readonly (readonly (readonly [string, string])[])[]): Reply['table'] => ({
  columns: ['round', 'who sends to whom'],
  rows: rounds.map((round, k) => [String(k + 1), round.map(([from, to]) => `${from} → ${to}`).join(', ')]),
});
