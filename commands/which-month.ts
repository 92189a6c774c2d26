import type { Here } from '../src/chat/command.ts';
import { type Option, suggesting, usually } from '../src/chat/option.ts';
import { words } from '../src/chat/option-kinds.ts';
import type { Month } from '../src/guild/month-facts.ts';
import { dayWords } from '../src/measure/speech.ts';
import { type Kind, type Meant, namesOf, type Settled, whichOne } from './which-one.ts';

/** A block of the month by its number or its name; the only one open here where none is named. */
export const monthOption: Option<string, false> = suggesting(
  usually(words('Which block of the month, by number or name', 60, 'Garden'), 'the one open here'),
  async ({ facts, guild }) => namesOf(await facts.months.all(guild)),
);

const MONTHS: Kind<Month> = {
  option: 'month',
  opening: '/month open name:Garden rosettes:7 rounds:2 path:one parts:12',
  all: ({ facts, guild }) => facts.months.all(guild),
  one: ({ facts, guild }, number) => facts.months.one(guild, number),
  label: ({ name, first }) => `${name}, from ${dayWords(first)}`,
};

/** The block of the month that is meant; see `whichOne`. */
export const whichMonth = (named: string | undefined, here: Here, meant: Meant): Promise<Settled<Month>> =>
  whichOne(MONTHS, named, here, meant);
