import type { ShapeName } from '../src/calculator/shapes/shape.ts';
import { form, type Here } from '../src/chat/command.ts';
import { alsoNamed, bare, otherwise } from '../src/chat/option.ts';
import { choice, length } from '../src/chat/option-kinds.ts';
import { count, type Figure, type Reply, reply, squareInches } from '../src/chat/reply.ts';
import type { SwapEntry } from '../src/guild/swap-facts.ts';
import { goodOf, goodWords, makes, SWAP_SHAPES } from '../src/guild/swap-goods.ts';
import { areaOf, type WholeSwap } from '../src/guild/swap-plan.ts';
import { grouped } from '../src/measure/ruler.ts';
import { dayWords, many } from '../src/measure/speech.ts';
import { shapeChoices } from './patch-options.ts';
import { rulesNote } from './swap-open.ts';
import { askedSwap, whichSwap } from './swap-which.ts';
import { areaWords, evenWords, namesIn } from './swap-words.ts';

export const list = form({
  name: 'list',
  summary: 'What is offered and wished for, with areas, and how many patches it makes',
  examples: ['/swap list', '/swap list size:1in', '/swap list size:2in shape:diamond'],
  options: {
    size: alsoNamed(length('How many patches of this side the offers make', 1 / 8, 40, '1in'), 'edge'),
    shape: otherwise(
      bare(
        choice(
          'The shape of those patches',
          shapeChoices.filter(({ name }) => SWAP_SHAPES.includes(name)),
        ),
      ),
      'hexagon' as ShapeName,
    ),
    swap: whichSwap,
  },
  async run({ size, shape, swap: name }, here) {
    const asked = await askedSwap(name, here, { settled: true });
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked.problem.code === 'swap-none' ? NONE : asked;
    const whole = asked.value;
    if (whole.swap.each !== null) return evenList(whole, here);
    const patches = size === undefined ? null : { shape: shape as ShapeName, edge: size };
    return matchedList(whole, patches, here);
  },
});

const NONE = reply({
  title: 'No swap yet',
  lines: ['No swap is open. An organiser opens one:', '`/swap open name:Stash`'],
});

function evenList({ swap, people }: WholeSwap, { say }: Here): Reply {
  const active = people.filter(({ state }) => state === 'in');
  return reply({
    title: swap.name,
    lines: [`${many(active.length, 'member is', 'members are')} in.`, evenWords(swap, say), ...when(swap)],
    figures: { members: count(active.length) },
    table:
      people.length === 0
        ? null
        : { columns: ['who', 'is'], rows: people.map((one) => [one.name, PART[one.state]]) },
    notes: rulesNote(swap),
  });
}

const PART = { in: 'in', out: 'out again', 'no-show': 'did not keep to it' } as const;

const when = ({ state, last }: WholeSwap['swap']): string[] => {
  if (state !== 'open') return [`It is ${state}.`];
  return last === null ? [] : [`Until ${dayWords(last)}.`];
};

interface Patches {
  readonly shape: ShapeName;
  readonly edge: number;
}

function matchedList(
  { swap, people, entries: all }: WholeSwap,
  patches: Patches | null,
  { say }: Here,
): Reply {
  const nameOf = namesIn(people);
  const gone = new Set(people.filter(({ state }) => state === 'out').map(({ member }) => member));
  const entries = all.filter(({ member }) => !gone.has(member));
  const offers = entries.filter(({ side }) => side === 'offer');
  const wants = entries.filter(({ side }) => side === 'want');
  const cut = patches && patchesFrom(offers, patches);
  return reply({
    title: swap.name,
    lines: [
      `Offered: ${totalWords(offers, say)}.`,
      `Wished for: ${totalWords(wants, say)}.`,
      ...(patches && cut !== null ? [madeWords(patches, cut, say)] : []),
      ...when(swap),
    ],
    figures: {
      offers: count(offers.length),
      wants: count(wants.length),
      offered: squareInches(areaOfAll(offers)),
      wished: squareInches(areaOfAll(wants)),
      members: count(new Set(entries.map(({ member }) => member)).size),
      ...(cut === null ? {} : ({ patches: count(cut) } satisfies Record<string, Figure>)),
    },
    table:
      entries.length === 0
        ? null
        : { columns: ['line', 'who', 'what'], rows: entries.map((entry) => rowOf(entry, nameOf)) },
    notes: [...rulesNote(swap), ...(patches ? ['Cut the best way known for each piece, ¼ in seam.'] : [])],
  });
}

/** How many patches the offers make; pieces that are alike are worked out once. */
function patchesFrom(offers: readonly SwapEntry[], { shape, edge }: Patches): number {
  const each = new Map(
    [...new Set(offers.map(({ good }) => good))].map((good) => [good, makes(goodOf(good), shape, edge)]),
  );
  return offers.reduce((sum, { good, count }) => sum + count * (each.get(good) ?? 0), 0);
}

const rowOf = ({ number, member, side, typed }: SwapEntry, nameOf: (member: string) => string): string[] => [
  String(number),
  nameOf(member),
  `${side === 'offer' ? 'offers' : 'would like'} ${typed}`,
];

const areaOfAll = (entries: readonly SwapEntry[]): number =>
  entries.reduce((sum, { good, count }) => sum + areaOf(good, count), 0);

function totalWords(entries: readonly SwapEntry[], say: Here['say']): string {
  if (entries.length === 0) return 'nothing yet';
  const pieces = entries.reduce((sum, { count }) => sum + count, 0);
  const members = new Set(entries.map(({ member }) => member)).size;
  return `${many(pieces, 'piece', 'pieces')}, ${areaWords(areaOfAll(entries), say)}, from ${many(members, 'member', 'members')}`;
}

const madeWords = ({ shape, edge }: Patches, cut: number, say: Here['say']): string =>
  `The offers make at least ${grouped(cut)} ${goodWords({ is: 'patch', shape, edge }, cut, say)}.`;
