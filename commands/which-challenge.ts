import type { Here } from '../src/chat/command.ts';
import { type Option, suggesting, usually } from '../src/chat/option.ts';
import { words } from '../src/chat/option-kinds.ts';
import type { Challenge } from '../src/guild/challenge-facts.ts';
import { grouped } from '../src/measure/ruler.ts';
import { type Kind, type Meant, namesOf, type Settled, whichOne } from './which-one.ts';

/** A challenge by its number or its name; the only one open here where none is named. */
export const challengeOption: Option<string, false> = suggesting(
  usually(words('Which challenge, by number or name', 60, 'Spring'), 'the one open here'),
  async ({ facts, guild }) => namesOf(await facts.challenges.all(guild)),
);

/** So many members of a challenge are looked through for one who is named. */
export const MOST_NAMED = 500;

/** How one is opened, for those who look for one in vain. */
export const OPENING = '/challenge open name:Spring counting:rosette rounds:2 goal:200';

const CHALLENGES: Kind<Challenge> = {
  option: 'challenge',
  opening: OPENING,
  all: ({ facts, guild }) => facts.challenges.all(guild),
  one: ({ facts, guild }, number) => facts.challenges.one(guild, number),
  label: ({ name, total, goal }) =>
    `${name}, ${grouped(total)}${goal === null ? ' so far' : ` of ${grouped(goal)}`}`,
};

/** The challenge that is meant; see `whichOne`. */
export const whichChallenge = (
  named: string | undefined,
  here: Here,
  meant: Meant,
  fits?: (one: Challenge) => boolean,
): Promise<Settled<Challenge>> => whichOne(CHALLENGES, named, here, meant, fits);
