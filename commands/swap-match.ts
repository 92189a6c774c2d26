import { type Answer, form, type Here } from '../src/chat/command.ts';
import { bare } from '../src/chat/option.ts';
import { percent } from '../src/chat/option-kinds.ts';
import { count, type Picture, type Reply, reply, squareInches } from '../src/chat/reply.ts';
import type { SwapParcel } from '../src/guild/swap-facts.ts';
import type { Left } from '../src/guild/swap-match.ts';
import { areaOf, type Plan, planSwap, type WholeSwap } from '../src/guild/swap-plan.ts';
import { wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import { askedSwap, whichSwap } from './swap-which.ts';
import { areaOfWords, areaUnit, areaWords, namesIn, percentWords, piecesWords } from './swap-words.ts';

export const match = form({
  name: 'match',
  summary: 'Plan who sends what to whom, fair by area; what was sent stays',
  examples: ['/swap match', '/swap match share:10%'],
  options: {
    share: percent('How much less area than she sends somebody may receive', 100, '20%'),
    swap: bare(whichSwap),
  },
  organisers: true,
  keeps: true,
  async run({ share, swap: name }, here) {
    const asked = await askedSwap(name, here);
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked;
    const whole = {
      ...asked.value,
      swap: { ...asked.value.swap, ...(share === undefined ? {} : { share }) },
    };
    return plan(whole, here);
  },
});

/** Fewer than this many cannot swap. */
const TWO = 2;

async function plan(whole: WholeSwap, here: Here): Promise<Answer> {
  const { swap, people } = whole;
  if (people.filter(({ state }) => state === 'in').length < TWO)
    return wrong('swap-too-few', { name: swap.name, instead: '' });
  const planned = planSwap(whole);
  await here.facts.swaps.replan(swap, planned.parcels);
  // With nothing to send yet members may still say what else they would like.
  const state = planned.parcels.length > 0 ? 'closed' : swap.state;
  await here.facts.swaps.change(swap, { share: swap.share, state });
  return told(whole, planned, await here.facts.swaps.parcels(swap), here);
}

function told(whole: WholeSwap, plan: Plan, parcels: readonly SwapParcel[], here: Here): Reply {
  const { swap, people } = whole;
  const { say } = here;
  const explained = explain(whole, plan, here);
  const receiving = [...plan.exchanged.values()].filter(({ received }) => received > 0).length;
  const pieces = parcels.reduce((sum, { count }) => sum + count, 0);
  const area = parcels.reduce((sum, { good, count }) => sum + areaOf(good, count), 0);
  return reply({
    title: plan.parcels.length === 0 ? `${swap.name}: no match` : `${swap.name} is matched`,
    lines:
      plan.parcels.length === 0
        ? ['Nothing more can be swapped fairly as it stands.', ...heldBack(whole, plan, here)]
        : [
            `${many(pieces, 'piece', 'pieces')}, ${areaWords(area, say)}, in ${many(envelopesOf(parcels), 'envelope', 'envelopes')}${sentBefore(parcels)}.`,
            `${many(receiving, 'member receives', 'members receive')} something.`,
            ...fairness(whole, plan, here),
            'Each sees hers with `/swap envelopes`.',
            'Offers and wishes are closed; `/swap reopen` takes more.',
          ],
    figures: {
      parcels: count(parcels.length),
      pieces: count(pieces),
      area: squareInches(area),
      mostArea: squareInches(plan.mostArea),
      members: count(people.filter(({ state }) => state === 'in').length),
      receiving: count(receiving),
      share: { value: swap.share, unit: '' },
    },
    table: parcels.length === 0 ? null : tableOf(whole, parcels, here),
    notes: [`Areas in ${areaUnit(say)}.`, ...(explained.length <= FEW ? explained : [])],
    pictures: [linesFile(swap.name, explained)],
  });
}

/** So many lines that explain are read out; more are in the file alone. */
const FEW = 6;

const envelopesOf = (parcels: readonly SwapParcel[]): number =>
  new Set(parcels.map(({ from, to }) => JSON.stringify([from, to]))).size;

function sentBefore(parcels: readonly SwapParcel[]): string {
  const sent = parcels.filter(({ sentAt }) => sentAt !== null).reduce((sum, { count }) => sum + count, 0);
  return sent === 0 ? '' : `, ${grouped(sent)} of them sent already`;
}

function fairness(whole: WholeSwap, plan: Plan, here: Here): string[] {
  const { swap, people } = whole;
  const { exchanged } = plan;
  const { say } = here;
  if (swap.each !== null) return ['Everyone gives and receives alike.'];
  const short = people.flatMap(({ member, name }) => {
    const { sent, received } = exchanged.get(member) ?? { sent: 0, received: 0 };
    const by = (1 - swap.share) * sent - received;
    return by > 0.5
      ? [`${name} stays short of ${areaWords(by, say)}: nobody can make up for what she has sent.`]
      : [];
  });
  return [
    ...(short.length > 0
      ? short.slice(0, 2)
      : [`Nobody receives less area than she sends by more than ${percentWords(swap.share)}.`]),
    ...heldBack(whole, plan, here),
  ];
}

/** What stays where it is so that it is fair, and how to let more go round. */
function heldBack(whole: WholeSwap, { area, mostArea }: Plan, { say }: Here): string[] {
  const held = mostArea - area;
  if (held <= 0.5) return [];
  const wider = widerShare(whole, area);
  const how = wider === null ? '' : ` A wider share: \`/swap match share:${wider}%\``;
  return [`${areaWords(held, say)} more would go round if that were no matter.${how}`];
}

/** The next wider share, in percent, with which more goes round; null where none does. */
function widerShare(whole: WholeSwap, area: number): number | null {
  const next = Math.min(100, Math.round(whole.swap.share * 100) + 20);
  if (next / 100 <= whole.swap.share) return null;
  if (area > 0) return next;
  const tried = [next, ...[60, 80, 100].filter((share) => share > next)];
  return (
    tried.find((share) => planSwap({ ...whole, swap: { ...whole.swap, share: share / 100 } }).area > 0) ??
    null
  );
}

/** One row a parcel line; what was offered as it was offered. */
function tableOf(
  { people, entries }: WholeSwap,
  parcels: readonly SwapParcel[],
  { say }: Here,
): Reply['table'] {
  const nameOf = namesIn(people);
  const typedOf = new Map(entries.map(({ number, typed }) => [number, typed]));
  return {
    columns: ['from', 'to', 'what', 'count', 'area'],
    rows: parcels.map(({ from, to, entry, typed, good, count: pieces }) => [
      nameOf(from),
      nameOf(to),
      typed ||
        (entry === null
          ? piecesWords(good, pieces, say)
          : (typedOf.get(entry) ?? piecesWords(good, pieces, say))),
      grouped(pieces),
      areaOfWords(good, pieces, say),
    ]),
  };
}

type Why = Readonly<Record<Left['why'], string>>;

const BOTH = {
  none: '',
  'nothing-like-it': 'nobody else has a line like it',
  'held-back': 'held back so that it stays fair',
};

/** An offer is left over when every wish for it is met; a wish is not met when others had all there was. */
const WHY: Readonly<Record<'offer' | 'want', Why>> = {
  offer: { ...BOTH, gone: 'nobody wished for more' },
  want: { ...BOTH, gone: 'it all went to others' },
};

/** A line for each member, and one for each of her lines that is not met in full. */
function explain({ people, entries }: WholeSwap, { exchanged, left }: Plan, { say }: Here): string[] {
  return people
    .filter(({ state }) => state === 'in')
    .flatMap(({ member, name }) => {
      const { sent, received } = exchanged.get(member) ?? { sent: 0, received: 0 };
      const part = sent > 0 ? ` (${Math.round((received / sent) * 100)} %)` : '';
      const over = entries
        .filter((entry) => entry.member === member && (left.get(entry.number)?.count ?? 0) > 0)
        .map(({ number, side, typed }) => {
          const { count: pieces, why } = left.get(number)!;
          const rest = side === 'want' ? 'not met' : `${pieces === 1 ? 'stays' : 'stay'} with her`;
          return `${name}’s line ${number}, ${typed}: ${grouped(pieces)} ${rest}; ${WHY[side][why]}`;
        });
      return [
        `${name} sends ${areaWords(sent, say)} and receives ${areaWords(received, say)}${part}.`,
        ...over,
      ];
    });
}

const linesFile = (name: string, lines: readonly string[]): Picture => ({
  name: 'swap-explained.txt',
  alt: `Who sends and receives how much in ${name}, and why what is left over is left`,
  of: { draw: 'text', text: `${lines.join('\n')}\n` },
});
