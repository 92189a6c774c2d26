import { type Answer, form, type Here } from '../src/chat/command.ts';
import { bare, otherwise, required, usually } from '../src/chat/option.ts';
import { date, percent, whole as wholeNumber, words } from '../src/chat/option-kinds.ts';
import { count, day, type Reply, reply } from '../src/chat/reply.ts';
import { wordsUpTo } from '../src/chat/words-up-to.ts';
import type { Swap, SwapTerms } from '../src/guild/swap-facts.ts';
import { goodKey } from '../src/guild/swap-goods.ts';
import { wrong } from '../src/measure/result.ts';
import { dayWords } from '../src/measure/speech.ts';
import { goods } from './swap-goods.ts';
import { askedSwap, whichSwap } from './swap-which.ts';
import { evenWords, percentWords } from './swap-words.ts';

const NAMES = ['name', 'first', 'last', 'place', 'rules', 'share', 'each', 'of', 'swap', 'line', 'to'];

/** How much less than she sends somebody may receive, unless an organiser says otherwise: a judgement. */
const USUAL_SHARE = 0.2;

const name = wordsUpTo(words('What it is called', 60, 'Stash'), NAMES);
const first = date('The first day on which offers are taken');
const last = date('The last day');
const place = wordsUpTo(words('The room or channel it is held in', 60, 'home'), NAMES);
const rules = wordsUpTo(words('Its rules, in your words', 500, 'washed, from a home without smoke'), NAMES);
const share = percent('How much less area than she sends somebody may receive', 100, '20%');

/** What an organiser may change of a swap. */
export const termsOptions = { name, first, last, place, rules, share };

export const openSwap = form({
  name: 'open',
  summary: 'Open a swap: matched by what is offered and wished for, or even, each to every other',
  examples: [
    '/swap open name:Stash first:2026-12-01 last:2026-12-20',
    '/swap open name:Charms each:4 of:5in squares last:2026-12-20',
  ],
  options: {
    ...termsOptions,
    name: required(bare(name)),
    first: usually(first, 'today'),
    place: usually(place, 'here'),
    share: otherwise(share, USUAL_SHARE),
    each: wholeNumber('For an even swap: how many each gives to every other', 1, 1000, '4'),
    of: goods('For an even swap: of what', '5in squares', NAMES, true),
  },
  organisers: true,
  keeps: true,
  async run(values, here) {
    const { name, first = here.today, last = null, each, of } = values;
    if (last !== null && last < first)
      return wrong('swap-days', { first: dayWords(first), last: dayWords(last) });
    if ((each === undefined) !== (of === undefined)) return wrong('swap-each-of-what');
    const live = (await here.facts.swaps.all(here.guild)).filter(({ state }) => state !== 'settled');
    if (live.some((one) => one.name.toLowerCase() === name.toLowerCase()))
      return wrong('swap-name-taken', { got: name });
    const swap = await here.facts.swaps.add(here.guild, {
      ...{
        name,
        first,
        last,
        share: values.share,
        rules: values.rules ?? '',
        place: values.place ?? here.place,
      },
      each: each ?? null,
      good: of?.[0] ? goodKey(of[0].good) : null,
    });
    return opened(swap, here);
  },
});

function opened(swap: Swap, { say }: Here): Reply {
  const until = swap.last === null ? 'until an organiser closes it' : `until ${dayWords(swap.last)}`;
  const even = swap.each !== null;
  return reply({
    title: `${swap.name} is open`,
    lines: [
      even ? evenWords(swap, say) : `Offers and wishes are taken ${until}.`,
      even
        ? `Take part with \`/swap join\`, ${until}.`
        : `Nobody receives less area than she sends by more than ${percentWords(swap.share)}.`,
      ...(even ? [] : ['`/swap offer 6 fat quarters florals`', '`/swap want 60 1in hexagons blue`']),
    ],
    figures: {
      swap: count(swap.number),
      first: day(swap.first),
      ...(swap.last === null ? {} : { last: day(swap.last) }),
    },
    notes: rulesNote(swap),
  });
}

/** The rules as they were typed. */
export const rulesNote = ({ rules }: Swap): string[] => (rules === '' ? [] : [`Rules: ${rules}`]);

/** Changes what an organiser says of a swap. */
export async function changeTerms(values: Partial<SwapTerms>, swap: Swap, here: Here): Promise<Answer> {
  if (!here.who.organiser) return wrong('organisers-only', { what: '/swap edit of the swap itself' });
  const { first = swap.first, last = swap.last } = values;
  if (last !== null && last < first)
    return wrong('swap-days', { first: dayWords(first), last: dayWords(last) });
  await here.facts.swaps.change(swap, values);
  const now = { ...swap, ...values };
  return reply({
    title: `${now.name} is changed`,
    lines: [
      `From ${dayWords(now.first)}${now.last === null ? '' : ` to ${dayWords(now.last)}`}, in ${now.place}.`,
      ...(now.each === null
        ? [`A share of ${percentWords(now.share)} at most.`]
        : [evenWords(now, here.say)]),
    ],
    notes: rulesNote(now),
  });
}

export const closeSwap = form({
  name: 'close',
  summary: 'Take no more offers and wishes',
  examples: ['/swap close'],
  options: { swap: bare(whichSwap) },
  organisers: true,
  keeps: true,
  run: ({ swap }, here) =>
    turn(swap, here, 'closed', 'No more offers and wishes are taken. `/swap match` comes next.'),
});

export const reopenSwap = form({
  name: 'reopen',
  summary: 'Take offers and wishes again',
  examples: ['/swap reopen'],
  options: { swap: bare(whichSwap) },
  organisers: true,
  keeps: true,
  run: ({ swap }, here) =>
    turn(swap, here, 'open', 'Offers and wishes are taken again. What was sent stays sent.'),
});

async function turn(
  name: string | undefined,
  here: Here,
  state: 'open' | 'closed',
  line: string,
): Promise<Answer> {
  const asked = await askedSwap(name, here, { settled: state === 'open' });
  if ('asks' in asked) return asked.asks;
  if (!asked.ok) return asked;
  const { swap } = asked.value;
  await here.facts.swaps.change(swap, { state });
  return reply({ title: `${swap.name} is ${state}`, lines: [line] });
}
