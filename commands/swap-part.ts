import { type Answer, form, type Here } from '../src/chat/command.ts';
import { bare, required } from '../src/chat/option.ts';
import { yesNo } from '../src/chat/option-kinds.ts';
import { count, reply } from '../src/chat/reply.ts';
import type { PartState, Swap, Swapper } from '../src/guild/swap-facts.ts';
import { planSwap, type WholeSwap } from '../src/guild/swap-plan.ts';
import { evenSwap } from '../src/guild/swap-rounds.ts';
import { type Result, wrong } from '../src/measure/result.ts';
import { many } from '../src/measure/speech.ts';
import { askedSwap, somebody, takesOffers, whichSwap } from './swap-which.ts';
import { evenWords, piecesWords } from './swap-words.ts';

export const join = form({
  name: 'join',
  summary: 'Take part in an even swap, at its start or late',
  examples: ['/swap join'],
  options: { swap: bare(whichSwap) },
  keeps: true,
  async run({ swap: name }, here) {
    const asked = await askedSwap(name, here, { first: ({ each }) => each !== null });
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked;
    const { swap, people } = asked.value;
    const planned = asked.value.parcels.length > 0;
    const taken = planned ? { ok: true as const } : takesOffers(swap, here);
    if (!taken.ok) return taken;
    await here.facts.swaps.take(swap, here.who, 'in');
    if (planned && swap.each !== null) await planAnew(swap, here);
    if (swap.each === null)
      return reply({ title: `You are in ${swap.name}`, lines: ['`/swap offer 6 fat quarters florals`'] });
    const now = people.filter(({ member, state }) => state === 'in' && member !== here.who.id).length + 1;
    const { makePerMember } = evenSwap(now, swap.each);
    return reply({
      title: `You are in ${swap.name}`,
      lines: [
        now === 1
          ? 'You are the first.'
          : `Make ${piecesWords(swap.good ?? '', makePerMember, here.say)}, as it stands.`,
        evenWords(swap, here.say),
        `${many(now, 'member is', 'members are')} in by now.${planned ? ' The rounds are made anew; what was sent stays.' : ''}`,
      ],
      figures: { members: count(now), makePerMember: count(makePerMember) },
    });
  },
});

/** Plans an even swap again for those who are in now. */
async function planAnew(swap: Swap, { facts }: Here): Promise<void> {
  const [people, parcels] = [await facts.swaps.people(swap), await facts.swaps.parcels(swap)];
  await facts.swaps.replan(swap, planSwap({ swap, people, entries: [], parcels }).parcels);
}

export const leave = form({
  name: 'leave',
  summary: 'Take yourself out of a swap, with all that you offer and wish for',
  examples: ['/swap leave'],
  options: { swap: bare(whichSwap) },
  keeps: true,
  async run({ swap: name }, here) {
    const asked = await askedSwap(name, here);
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked;
    const hers = asked.value.people.find(({ member }) => member === here.who.id);
    if (!hers) return wrong('swap-not-in', { name: asked.value.swap.name, instead: '' });
    return setPart(asked.value, hers, 'out', here, 'You are out');
  },
});

export const noShow = form({
  name: 'no-show',
  summary: 'Say that somebody did not keep to the swap, or that she is in it after all',
  examples: ['/swap no-show Bea', '/swap no-show Bea undo:yes'],
  options: {
    who: required(bare(somebody('Her name', ['undo', 'swap']))),
    undo: yesNo('Whether she is in it after all'),
    swap: whichSwap,
  },
  organisers: true,
  keeps: true,
  async run({ who, undo, swap: name }, here) {
    const asked = await askedSwap(name, here);
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked;
    const found = personNamed(asked.value.people, who);
    if (!found.ok) return found;
    const title = undo ? `${found.value.name} is in it after all` : `${found.value.name} is marked`;
    return setPart(asked.value, found.value, undo ? 'in' : 'no-show', here, title);
  },
});

/** Somebody of the swap by her name. */
export function personNamed(people: readonly Swapper[], name: string): Result<Swapper> {
  const plain = name.replace(/^@/, '').toLowerCase();
  const found = people.find((one) => one.name.toLowerCase() === plain || one.member.toLowerCase() === plain);
  return found
    ? { ok: true, value: found }
    : wrong('swap-nobody', { got: name, known: people.map((one) => one.name) });
}

async function setPart(
  whole: WholeSwap,
  person: Swapper,
  state: PartState,
  here: Here,
  title: string,
): Promise<Answer> {
  const { swap, parcels } = whole;
  await here.facts.swaps.take(swap, { id: person.member, name: person.name }, state);
  const touching = parcels.filter(
    ({ from, to, sentAt }) => sentAt === null && [from, to].includes(person.member),
  );
  const back = parcels.filter(
    ({ to, sentAt, receivedAt }) => sentAt !== null && receivedAt === null && to === person.member,
  );
  if (swap.each !== null && parcels.length > 0) await planAnew(swap, here);
  const out = state !== 'in';
  const whom = person.member === here.who.id ? 'you' : 'her';
  return reply({
    title,
    lines: [
      ...(out && touching.length > 0
        ? [`${many(touching.length, 'parcel', 'parcels')} to or from ${whom} need not be sent.`]
        : []),
      ...(out && back.length > 0
        ? [
            `${many(back.length, 'parcel was', 'parcels were')} sent to ${whom} and should ${whom === 'you' ? 'go' : 'come'} back.`,
          ]
        : []),
      ...(swap.each === null && parcels.length > 0 ? ['`/swap match` plans what is not sent yet anew.'] : []),
      ...(out && touching.length + back.length === 0
        ? [`Nothing was on its way to ${whom} or from ${whom}.`]
        : []),
    ],
    figures: { dropped: count(out ? touching.length : 0), toSendBack: count(out ? back.length : 0) },
  });
}
