import type { Here } from '../src/chat/command.ts';
import { type Option, type SuggestWhere, suggesting } from '../src/chat/option.ts';
import { words } from '../src/chat/option-kinds.ts';
import { type Reply, reply } from '../src/chat/reply.ts';
import { wordsUpTo } from '../src/chat/words-up-to.ts';
import type { Swap } from '../src/guild/swap-facts.ts';
import type { WholeSwap } from '../src/guild/swap-plan.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import { dayWords } from '../src/measure/speech.ts';
import { namesOf } from './which-one.ts';

const swapName = words('Which swap, by its name', 60, 'Stash');

/** Which swap is meant, where there are several. "A swap with 12 people" names none. */
export const whichSwap: Option<string, false> = {
  ...swapName,
  suggest: async (where) => namesOf(await liveSwaps(where)),
  take: (text, context) =>
    /^(?:with|among|between|of|in|for|and|by|at|is|[?.!])/i.test(text) ? null : swapName.take(text, context),
};

/** The swaps that are not done with. */
export const liveSwaps = async ({ facts, guild }: Pick<SuggestWhere, 'facts' | 'guild'>): Promise<Swap[]> =>
  (await facts.swaps.all(guild)).filter(({ state }) => state !== 'settled');

/** A member of a swap by her name, suggested from those who are in one now. */
export const somebody = (summary: string, names: readonly string[]): Option<string, false> =>
  suggesting(wordsUpTo(words(summary, 60, 'Bea'), names), async (where) => {
    const people = [];
    for (const swap of await liveSwaps(where)) people.push(...(await where.facts.swaps.people(swap)));
    return namesOf(people.filter(({ member }) => member !== where.member));
  });

interface Among {
  /** Those that are done with too. */
  readonly settled?: boolean;
  /** Where none is named, those that the ask can be about go before the others. */
  readonly first?: (swap: Swap) => boolean;
}

/** The swap that is meant: named, else the one that is held here, else the only one; or a question which. */
export async function askedSwap(
  name: string | undefined,
  here: Here,
  { settled = false, first = () => true }: Among = {},
): Promise<Result<WholeSwap> | { readonly asks: Reply }> {
  const all = (await here.facts.swaps.all(here.guild)).filter(({ state }) => settled || state !== 'settled');
  const meant = name === undefined ? usual(some(all, first), here) : byName(all, name);
  if (meant.length === 0)
    return name === undefined
      ? wrong('swap-none', { instead: '' })
      : wrong('swap-unknown', { got: name, known: all.map((one) => one.name) });
  const [swap] = meant;
  return meant.length === 1 && swap ? ok(await whole(swap, here)) : { asks: askWhich(meant, here) };
}

/** Those that fit, or all where none does. */
function some(all: readonly Swap[], fits: (swap: Swap) => boolean): readonly Swap[] {
  const fitting = all.filter(fits);
  return fitting.length > 0 ? fitting : all;
}

function usual(all: readonly Swap[], { place }: Here): Swap[] {
  const live = all.filter(({ state }) => state !== 'settled');
  if (live.length === 0) return all.slice(0, 1);
  const inPlace = live.filter((one) => one.place === place);
  return inPlace.length === 1 ? inPlace : live;
}

function byName(all: readonly Swap[], name: string): Swap[] {
  const plain = name.toLowerCase();
  const exact = all.filter((one) => one.name.toLowerCase() === plain);
  if (exact.length > 0) return exact.slice(0, 1);
  return all.filter((one) => one.name.toLowerCase().startsWith(plain));
}

/** So many swaps are offered to choose from. */
const FEW = 5;

const askWhich = (swaps: readonly Swap[], { again }: Here): Reply =>
  reply({
    title: 'Which swap?',
    asks: `There are ${swaps.length} swaps. Which one?`,
    choices: swaps.slice(0, FEW).map(({ name }) => ({ label: name, ask: again({ swap: name }) })),
  });

export async function whole(swap: Swap, { facts }: Here): Promise<WholeSwap> {
  const [people, entries, parcels] = [
    await facts.swaps.people(swap),
    await facts.swaps.entries(swap),
    await facts.swaps.parcels(swap),
  ];
  return { swap, people, entries, parcels };
}

/** Whether offers are taken today, or why not. */
export function takesOffers({ name, state, first, last }: Swap, { today }: Here): Result<void> {
  if (state !== 'open') return wrong('swap-closed', { name, instead: '' });
  if (today < first) return wrong('swap-not-begun', { name, first: dayWords(first), instead: '' });
  if (last !== null && today > last) return wrong('swap-over', { name, last: dayWords(last), instead: '' });
  return ok(undefined);
}
