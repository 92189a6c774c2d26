import { form, type Here } from '../src/chat/command.ts';
import { bare, otherwise, required, usually } from '../src/chat/option.ts';
import { date } from '../src/chat/option-kinds.ts';
import { reply } from '../src/chat/reply.ts';
import {
  isOn,
  isOver,
  joinChoice,
  logChoice,
  renewed,
  standingsChoice,
} from '../src/guild/challenge-choices.ts';
import type { ChallengeTerms } from '../src/guild/challenge-facts.ts';
import { leftOfPlan, withPlan } from './challenge-plan.ts';
import {
  countingOption,
  eachOption,
  goalOption,
  nameTaken,
  openNameOption,
  placeOption,
  planOption,
  roundsOption,
  sizeOption,
  termsFrom,
  whoOption,
} from './challenge-terms.ts';
import { challengeFigures, shownChallenge, termsWords } from './challenge-words.ts';
import { challengeOption, whichChallenge } from './which-challenge.ts';
import { mayArrange } from './which-one.ts';

export const openForm = form({
  name: 'open',
  summary: 'Open a challenge: what is counted, how many, from when to when',
  examples: [
    '/challenge open name:Spring counting:rosette rounds:2 goal:200 first:2026-12-01 last:2026-12-31',
    '/challenge open name:Stars counting:star side:3 each:4 who:joined',
    '/challenge open name:Top plan:Spring garden last:2027-03-31',
  ],
  options: {
    name: required(openNameOption),
    counting: otherwise(bare(countingOption), 'rosette'),
    rounds: otherwise(roundsOption, 1),
    size: usually(sizeOption, '1in'),
    goal: goalOption,
    each: eachOption,
    first: usually(date('The first day'), 'today'),
    last: date('The last day'),
    place: usually(placeOption, 'here'),
    who: otherwise(whoOption, 'everyone'),
    plan: planOption,
  },
  keeps: true,
  async run(values, here) {
    const refused = mayArrange(here, '/challenge open');
    if (refused) return refused;
    const planned = await withPlan(values, here);
    if (!planned.ok) return planned;
    const terms = termsFrom(planned.value, here);
    if (!terms.ok) return terms;
    const taken = await nameTaken(terms.value.name, here);
    if (taken) return taken;
    const { facts, guild, who, now, today } = here;
    const opened = await facts.challenges.add(guild, terms.value);
    await facts.challenges.write(opened, { kind: 'open', member: who, by: who, day: today, at: now });
    const left = await leftOfPlan(opened, here);
    const assumed = assumedOf(terms.value, here);
    return reply({
      title: `${opened.name} is open${isOver(opened, today) ? ', though its days are over' : ''}`,
      lines: [...termsWords(opened, here), ...left.lines],
      figures: { ...challengeFigures(opened), ...left.figures },
      notes: assumed.length === 0 ? [] : [`Assumed: ${assumed.join(', ')}. \`/challenge edit\` changes it.`],
      choices: [
        joinChoice(opened),
        ...(isOn(opened, today) ? [logChoice(opened)] : []),
        standingsChoice(opened),
      ],
      renews: renewed(opened),
    });
  },
});

/** What was taken where neither she nor a plan said. */
function assumedOf({ counting, rounds, plan }: ChallengeTerms, { given, say }: Here): string[] {
  const open: readonly (readonly [boolean, string])[] = [
    [!given.has('counting') && plan === null, 'rosettes'],
    [!given.has('rounds') && plan === null && rounds > 0, counting === 'star' ? '1 a side' : '1 round each'],
    [!given.has('size') && plan === null, `${say.plain(1)} side`],
    [!given.has('last'), 'no last day'],
  ];
  return open.filter(([taken]) => taken).map(([, words]) => words);
}

export const closeForm = form({
  name: 'close',
  summary: 'Close a challenge: nothing more is logged, the standings stay',
  examples: ['/challenge close', '/challenge close Spring'],
  options: { challenge: bare(challengeOption) },
  keeps: true,
  run: (values, here) => turn('close', values.challenge, here),
});

export const reopenForm = form({
  name: 'reopen',
  summary: 'Open a closed challenge again',
  examples: ['/challenge reopen', '/challenge reopen Spring'],
  options: { challenge: bare(challengeOption) },
  keeps: true,
  run: (values, here) => turn('reopen', values.challenge, here),
});

async function turn(way: 'close' | 'reopen', named: string | undefined, here: Here) {
  const refused = mayArrange(here, `/challenge ${way}`);
  if (refused) return refused;
  const found = await whichChallenge(named, here, way === 'close' ? 'open' : 'closed');
  if ('asks' in found) return found.asks;
  if (!found.ok) return found;
  const taken = way === 'reopen' ? await nameTaken(found.value.name, here) : null;
  if (taken) return taken;
  const { facts, who, now, today } = here;
  const turned = await facts.challenges.change(found.value, { open: way === 'reopen' });
  await facts.challenges.write(turned, { kind: way, member: who, by: who, day: today, at: now });
  const back = way === 'close' ? 'reopen' : 'close';
  return reply({
    title: `${turned.name} is ${way === 'close' ? 'closed' : 'open again'}`,
    lines: shownChallenge(turned, here),
    figures: challengeFigures(turned),
    choices: [
      standingsChoice(turned),
      {
        label: back === 'reopen' ? 'Reopen it' : 'Close it',
        ask: `/challenge ${back} challenge:${turned.number}`,
      },
    ],
    renews: renewed(turned),
  });
}
