import { form, type Here } from '../src/chat/command.ts';
import { date } from '../src/chat/option-kinds.ts';
import { reply } from '../src/chat/reply.ts';
import { renewed } from '../src/guild/challenge-choices.ts';
import type { Challenge, ChallengeTerms } from '../src/guild/challenge-facts.ts';
import { countedWords } from '../src/guild/counted.ts';
import { ok, type Result, type Wrong, wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { capital, dayWords } from '../src/measure/speech.ts';
import {
  countingOption,
  daysFit,
  eachOption,
  goalOption,
  nameOption,
  nameTaken,
  type OpenValues,
  placeNamed,
  placeOption,
  planOption,
  roundsOption,
  sizeOption,
  whoOption,
} from './challenge-terms.ts';
import { challengeFigures, termsWords } from './challenge-words.ts';
import { keptPlan } from './kept-plan.ts';
import { challengeOption, whichChallenge } from './which-challenge.ts';
import { mayArrange } from './which-one.ts';

const lastDay = date('The last day; none for no end');

/** A day, or none: an empty one. */
const lastOption: typeof lastDay = {
  ...lastDay,
  bounds: `${lastDay.bounds}, or none`,
  take(text, context) {
    const none = /^none\b/i.exec(text);
    return none ? ok({ value: '', rest: text.slice(none[0].length) }) : lastDay.take(text, context);
  },
  write: (value) => value || 'none',
};

export const editForm = form({
  name: 'edit',
  summary: 'Change the goal, days, name, place or who may log',
  examples: ['/challenge edit goal:250', '/challenge edit challenge:Spring last:2027-01-15 who:joined'],
  options: {
    challenge: challengeOption,
    name: nameOption,
    counting: countingOption,
    rounds: roundsOption,
    size: sizeOption,
    goal: goalOption,
    each: eachOption,
    first: date('The first day'),
    last: lastOption,
    place: placeOption,
    who: whoOption,
    plan: { ...planOption, bounds: `${planOption.bounds}; none for no plan` },
  },
  keeps: true,
  async run(values, here) {
    const refused = mayArrange(here, '/challenge edit');
    if (refused) return refused;
    const found = await whichChallenge(values.challenge, here, 'open');
    if ('asks' in found) return found.asks;
    if (!found.ok) return found;
    const changes = await changesTo(found.value, values, here);
    if (!changes.ok) return changes;
    const { facts, who, now, today } = here;
    const changed = await facts.challenges.change(found.value, changes.value);
    const note = whatChanged(found.value, changed, here).join('; ');
    await facts.challenges.write(changed, { kind: 'edit', member: who, by: who, day: today, note, at: now });
    return reply({
      title: `${changed.name} is changed`,
      lines: [`${capital(note)}.`, ...termsWords(changed, here)],
      figures: challengeFigures(changed),
      notes: ['The book keeps who changed what: `/challenge history`'],
      renews: renewed(changed),
    });
  },
});

type EditValues = Partial<OpenValues> & { readonly challenge?: string };

async function changesTo(
  before: Challenge,
  { challenge: _, ...values }: EditValues,
  here: Here,
): Promise<Result<Partial<ChallengeTerms>>> {
  const given = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
  if (Object.keys(given).length === 0)
    return wrong('nothing-to-change', { example: 'goal:250', instead: '/challenge edit goal:250' });
  const { goal, each, place, plan, last, ...plain } = given as EditValues;
  const kept = plan === undefined || plan.toLowerCase() === 'none' ? null : await keptPlan(plan, here);
  if (kept && !kept.ok) return kept;
  const changes = {
    ...plain,
    ...(plan === undefined ? {} : { plan: kept?.value.name ?? null }),
    ...(last === undefined ? {} : { last: last || null }),
    ...(goal === undefined ? {} : { goal: goal || null }),
    ...(each === undefined ? {} : { each: each || null }),
    ...(place === undefined ? {} : { place: placeNamed(place, here) }),
  };
  const after: Challenge = { ...before, ...changes };
  const problem =
    daysFit(after.first, after.last) ??
    (await countingFits(before, after, here)) ??
    (changes.name === undefined ? null : await nameTaken(after.name, here, before.number));
  if (problem) return problem;
  const whole = after.counting === 'rosette' || after.counting === 'star';
  return ok(whole && after.rounds === 0 ? { ...changes, rounds: 1 } : changes);
}

/** What is counted, and the days, must still hold all that was logged. */
async function countingFits(before: Challenge, after: Challenge, here: Here): Promise<Wrong | null> {
  const days = await here.facts.challenges.days(before);
  const [first, last] = [days[0]?.day, days.at(-1)?.day];
  if (first === undefined || last === undefined) return null;
  if (after.counting !== before.counting || after.rounds !== before.rounds || after.size !== before.size)
    return wrong('counting-fixed', { instead: '' });
  const outside = first < after.first ? first : after.last !== null && last > after.last ? last : null;
  return outside === null ? null : wrong('logs-outside', { day: dayWords(outside), instead: '' });
}

/** Each change in words: "goal 200 to 250". */
function whatChanged(before: Challenge, after: Challenge, { say }: Here): string[] {
  const many = (goal: number | null) => (goal === null ? 'none' : grouped(goal));
  const day = (one: string | null) => (one === null ? 'none' : dayWords(one));
  const rows: [string, string, string][] = [
    ['name', before.name, after.name],
    ['counting', countedWords(before), countedWords(after)],
    ['size', say.plain(before.size), say.plain(after.size)],
    ['goal', many(before.goal), many(after.goal)],
    ['goal each', many(before.each), many(after.each)],
    ['first day', day(before.first), day(after.first)],
    ['last day', day(before.last), day(after.last)],
    ['place', before.place, after.place],
    ['who may log', before.who, after.who],
    ['plan', before.plan ?? 'none', after.plan ?? 'none'],
  ];
  const changed = rows
    .filter(([, from, to]) => from !== to)
    .map(([what, from, to]) => `${what} ${from} to ${to}`);
  return changed.length > 0 ? changed : ['nothing differs'];
}
