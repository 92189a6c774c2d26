import type { Answer, Here } from '../src/chat/command.ts';
import { nearest } from '../src/chat/near.ts';
import { reply } from '../src/chat/reply.ts';
import { ok, type Result, type Wrong, wrong } from '../src/measure/result.ts';

/** What a guild does together, with a name and a number, open or closed, in one place. */
export interface Together {
  readonly number: number;
  readonly name: string;
  readonly place: string;
  readonly open: boolean;
  readonly first: string;
  readonly last?: string | null;
}

/** One kind of it: where the guild's are found, and how they are spoken of. */
export interface Kind<T extends Together> {
  /** The option that names one, and the word for it. */
  readonly option: string;
  /** An ask that opens one. */
  readonly opening: string;
  all(here: Here): Promise<readonly T[]>;
  one(here: Here, number: number): Promise<T | undefined>;
  /** Its name and how far it is, for a choice. */
  label(of: T): string;
}

/** So many are offered when it must be asked which one. */
const MOST_OFFERED = 5;
/** So many are named to one who named none that there is. */
const MOST_NAMED = 8;

/** Which an ask may be about: those open, those closed, or any. */
export type Meant = 'open' | 'closed' | 'any';

/** One that was settled on, or what is to be answered instead. */
export type Settled<T> = Result<T> | { readonly asks: Answer };

/**
 * The one that is meant: the one named; else the only one open in this place; else the question which. Of
 * several that are open, the only one whose days have come counts as the one; and where some fit what else was
 * said, only those are looked at.
 */
export async function whichOne<T extends Together>(
  kind: Kind<T>,
  named: string | undefined,
  here: Here,
  meant: Meant,
  fits: (one: T) => boolean = () => true,
): Promise<Settled<T>> {
  const all = await kind.all(here);
  if (named !== undefined) return byName(kind, named, all, here, meant);
  const turned = all.filter((one) => meant === 'any' || one.open === (meant === 'open'));
  const fitting = turned.some(fits) ? turned.filter(fits) : turned;
  const open = fitting.filter((one) => one.open);
  const near = closest(open.length > 0 || meant === 'open' ? open : fitting, here, meant);
  const [first, ...more] = near;
  if (!first) return noneOf(kind, meant, all);
  return more.length === 0 ? ok(first) : { asks: askWhich(kind, near, here) };
}

/** Those in this place before those elsewhere; those running before those that have not begun or are over. */
function closest<T extends Together>(all: readonly T[], { place, today }: Here, meant: Meant): readonly T[] {
  const inPlace = all.filter((one) => one.place === place);
  const near = inPlace.length > 0 ? inPlace : all;
  const running = near.filter(({ first, last }) => first <= today && (!last || today <= last));
  if (running.length > 0 && near[0]?.open) return running;
  // Of those that are closed the latest is meant, when nobody says which.
  return near[0]?.open === false && meant === 'any' ? near.slice(0, 1) : near;
}

async function byName<T extends Together>(
  { one, option }: Kind<T>,
  named: string,
  all: readonly T[],
  here: Here,
  meant: Meant,
): Promise<Settled<T>> {
  const asked = named.toLowerCase().replace(/^(?:no\.?|#)\s*(?=\d)/, '');
  const numbered = /^\d{1,9}$/.test(asked) ? await one(here, Number(asked)) : undefined;
  const called = all.filter(({ name }) => name.toLowerCase() === asked);
  const begun = all.filter(({ name }) => name.toLowerCase().startsWith(asked));
  const found = numbered ?? only(called, meant) ?? only(begun, meant);
  const known = all.slice(0, MOST_NAMED).map(({ name }) => name);
  if (!found) {
    const near = nearest(asked, known);
    const instead = near === null ? '' : here.again({ [option]: near });
    return wrong('together-unknown', { got: named, what: option, known, instead });
  }
  if (meant === 'open' && !found.open) return wrong('together-closed', { name: found.name, instead: '' });
  if (meant === 'closed' && found.open) return wrong('together-open', { name: found.name, instead: '' });
  return ok(found);
}

/** Of several with one name, one that fits; the newest of those. */
const only = <T extends Together>(found: readonly T[], meant: Meant): T | undefined =>
  found.find(({ open }) => meant === 'any' || open === (meant === 'open')) ?? found[0];

function noneOf<T extends Together>({ option, opening }: Kind<T>, meant: Meant, all: readonly T[]): Wrong {
  const what = option;
  if (meant === 'closed') return wrong('none-closed', { what, instead: '' });
  return wrong(all.length === 0 && meant === 'any' ? 'none-yet' : 'none-open', { what, instead: opening });
}

/** Their names, each once, for completion while typing. */
export const namesOf = (all: readonly { readonly name: string }[]): string[] => [
  ...new Set(all.map(({ name }) => name)),
];

const askWhich = <T extends Together>({ option, label }: Kind<T>, all: readonly T[], here: Here): Answer =>
  reply({
    title: 'More than one is meant',
    asks: `Which ${option} do you mean?`,
    choices: all.slice(0, MOST_OFFERED).map((one) => ({
      label: label(one),
      ask: here.again({ [option]: String(one.number) }),
    })),
  });

/** Only those whom the guild lets open, edit and close may do so; null where she may. */
export const mayArrange = ({ who, defaults }: Here, what: string): Wrong | null =>
  who.organiser || defaults.openers.value === 'everyone'
    ? null
    : wrong('guild-organisers-only', { what, instead: '' });
