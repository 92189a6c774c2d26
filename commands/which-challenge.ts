import type { Answer, Here } from '../src/chat/command.ts';
import type { Option } from '../src/chat/option.ts';
import { words } from '../src/chat/option-kinds.ts';
import { reply } from '../src/chat/reply.ts';
import type { Challenge } from '../src/guild/challenge-facts.ts';
import { ok, type Result, type Wrong, wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';

/** So many are offered when it must be asked which one. */
const MOST_OFFERED = 5;

/** A challenge by its number or its name; the only one open here where none is named. */
export const challengeOption: Option<string, false> = {
  ...words('Which challenge, by number or name', 60, 'Spring'),
  otherwise: 'the one open here',
};

/** How one is opened, for those who look for one in vain. */
export const OPENING = '/challenge open name:Spring counting:rosette rounds:2 goal:200';

/** Which challenges an ask may be about: those open, those closed, or any. */
export type Meant = 'open' | 'closed' | 'any';

/** A challenge that was settled on, or what is to be answered instead. */
export type Settled = Result<Challenge> | { readonly asks: Answer };

/**
 * The challenge that is meant: the one named; else the only one open in this place; else the question which.
 * Of several that are open, the only one whose days have come counts as the one.
 */
export async function whichChallenge(named: string | undefined, here: Here, meant: Meant): Promise<Settled> {
  const all = await here.facts.challenges.all(here.guild);
  if (named !== undefined) return byName(named, all, here, meant);
  const fitting = all.filter((one) => meant === 'any' || one.open === (meant === 'open'));
  const open = fitting.filter((one) => one.open);
  const near = nearest(open.length > 0 || meant === 'open' ? open : fitting, here, meant);
  const [first, ...more] = near;
  if (!first) return noneOf(meant, all);
  return more.length === 0 ? ok(first) : { asks: askWhich(near, here) };
}

/** Those in this place before those elsewhere; those running before those that have not begun or are over. */
function nearest(
  challenges: readonly Challenge[],
  { place, today }: Here,
  meant: Meant,
): readonly Challenge[] {
  const inPlace = challenges.filter((one) => one.place === place);
  const near = inPlace.length > 0 ? inPlace : challenges;
  const running = near.filter(({ first, last }) => first <= today && (last === null || today <= last));
  if (running.length > 0 && meant !== 'closed') return running;
  // Of those that are closed the latest is meant, when nobody says which.
  return near[0]?.open === false && meant === 'any' ? near.slice(0, 1) : near;
}

async function byName(named: string, all: readonly Challenge[], here: Here, meant: Meant): Promise<Settled> {
  const asked = named.toLowerCase().replace(/^(?:no\.?|#)\s*(?=\d)/, '');
  const numbered = /^\d{1,9}$/.test(asked)
    ? await here.facts.challenges.one(here.guild, Number(asked))
    : undefined;
  const called = all.filter(({ name }) => name.toLowerCase() === asked);
  const begun = all.filter(({ name }) => name.toLowerCase().startsWith(asked));
  const found = numbered ?? only(called, meant) ?? only(begun, meant);
  if (!found)
    return wrong('challenge-unknown', { got: named, known: all.slice(0, 8).map(({ name }) => name) });
  if (meant === 'open' && !found.open) return wrong('challenge-closed', { name: found.name });
  if (meant === 'closed' && found.open) return wrong('challenge-open-already', { name: found.name });
  return ok(found);
}

/** Of several with one name, one that fits; the newest of those. */
const only = (found: readonly Challenge[], meant: Meant): Challenge | undefined =>
  found.find(({ open }) => meant === 'any' || open === (meant === 'open')) ?? found[0];

function noneOf(meant: Meant, all: readonly Challenge[]): Wrong {
  if (meant === 'closed') return wrong('none-closed', { instead: '' });
  return wrong(all.length === 0 && meant === 'any' ? 'no-challenge' : 'no-challenge-open', {
    instead: OPENING,
  });
}

const askWhich = (challenges: readonly Challenge[], here: Here): Answer =>
  reply({
    title: 'Which challenge?',
    asks: 'Which challenge do you mean?',
    choices: challenges.slice(0, MOST_OFFERED).map(({ number, name, total, goal }) => ({
      label: `${name}, ${grouped(total)}${goal === null ? ' so far' : ` of ${grouped(goal)}`}`,
      ask: here.again({ challenge: String(number) }),
    })),
  });

/** Only those whom the guild lets open, edit and close may do so; null where she may. */
export const mayArrange = ({ who, defaults }: Here, what: string): Wrong | null =>
  who.organiser || defaults.openers.value === 'everyone'
    ? null
    : wrong('guild-organisers-only', { what, instead: '' });
