import type { Here } from '../src/chat/command.ts';
import { alsoNamed, bare, type Option } from '../src/chat/option.ts';
import { choice, length, whole, words } from '../src/chat/option-kinds.ts';
import { wordsUpTo } from '../src/chat/words-up-to.ts';
import type { ChallengeTerms } from '../src/guild/challenge-facts.ts';
import { daysBetween } from '../src/guild/days.ts';
import { ok, type Result, type Wrong, wrong } from '../src/measure/result.ts';
import { dayWords } from '../src/measure/speech.ts';
import { keptNameOption } from './plan-options.ts';

const MOST_GOAL = 10_000_000;
/** The most rounds of a rosette, or diamonds along a side of a star, that one log may stand for. */
const MOST_ROUNDS = 40;
const MOST_YEARS = 20;

export const countingOption = choice('What is counted', [
  { name: 'rosette', title: 'rosettes', words: ['flower'] },
  { name: 'block', title: 'blocks of three diamonds', words: ['tumbling block'] },
  { name: 'star', title: 'six-point stars' },
  { name: 'patch', title: 'patches', words: ['patches', 'piece', 'hexagon', 'diamond'] },
]);

export const whoOption = choice('Who may log', [
  { name: 'everyone', title: 'everyone', words: ['all'] },
  { name: 'joined', title: 'those who joined', words: ['members'] },
  { name: 'organisers', title: 'organisers', words: ['organizers'] },
]);

export const nameOption = words('What it is called', 60, 'Spring');
const OPTIONS = 'name|counting|rounds?|side|size|goal|each|first|last|place|who|plan';

/** The name of a new one, which may stand alone where it is no word for what is counted. */
export const openNameOption: Option<string, false> = {
  ...bare(wordsUpTo(nameOption, [OPTIONS])),
  bareWhen: /^(?!(?:rosette|flower|tumbling|block|star|patche?|piece|hexagon|diamond)s?\b)\p{L}/iu,
};
export const goalOption = whole('The goal together; 0 for none', 0, MOST_GOAL, '200');
export const eachOption = whole('The goal for each member; 0 for none', 0, MOST_GOAL, '6');
export const placeOption = words('The room or channel it is held in', 80, 'home');
export const roundsOption = alsoNamed(
  whole('Rounds of each rosette, or diamonds a side of each star', 1, MOST_ROUNDS, '2'),
  'round',
  'side',
);
/** A kept plan that the challenge sews. */
export const planOption = { ...keptNameOption, summary: 'A kept plan that is sewn' };
export const sizeOption = length('The finished side of one patch');

export interface OpenValues {
  readonly name: string;
  readonly counting: ChallengeTerms['counting'];
  readonly rounds: number;
  readonly size?: number;
  readonly goal?: number | null;
  readonly each?: number;
  readonly first?: string;
  readonly last?: string;
  readonly place?: string;
  readonly who: ChallengeTerms['who'];
  readonly plan?: string;
}

export function termsFrom(values: OpenValues, here: Here): Result<ChallengeTerms> {
  const { name, counting, size = 1, goal, each, first = here.today, last = null, who, plan = null } = values;
  const days = daysFit(first, last);
  if (days) return days;
  const rounds = counting === 'rosette' || counting === 'star' ? values.rounds : 0;
  const terms = {
    name,
    counting,
    rounds,
    size,
    first,
    last,
    who,
    plan,
    place: placeNamed(values.place, here),
  };
  return ok({ ...terms, goal: goal || null, each: each || null });
}

export const placeNamed = (place: string | undefined, here: Here): string =>
  place === undefined || place.toLowerCase() === 'here' ? here.place : place;

export function daysFit(first: string, last: string | null): Wrong | null {
  if (last === null) return null;
  if (last < first) return wrong('days-backward', { first: dayWords(first), last: dayWords(last) });
  return daysBetween(first, last) > MOST_YEARS * 366 ? wrong('days-too-far', { most: MOST_YEARS }) : null;
}

export async function nameTaken(name: string, here: Here, but?: number): Promise<Wrong | null> {
  const all = await here.facts.challenges.all(here.guild);
  const same = all.find(
    (one) => one.open && one.number !== but && one.name.toLowerCase() === name.toLowerCase(),
  );
  return same ? wrong('name-taken', { name: same.name, number: same.number, instead: '' }) : null;
}
