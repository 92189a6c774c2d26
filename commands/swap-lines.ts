import { type Answer, form, type Here } from '../src/chat/command.ts';
import { alsoNamed, bare, required, suggesting } from '../src/chat/option.ts';
import { yesNo } from '../src/chat/option-kinds.ts';
import { listed, listedAs } from '../src/chat/option-listed.ts';
import { count, type Reply, reply, squareInches } from '../src/chat/reply.ts';
import type { Side, SwapEntry, SwapTerms } from '../src/guild/swap-facts.ts';
import { goodKey } from '../src/guild/swap-goods.ts';
import { areaOf, type WholeSwap } from '../src/guild/swap-plan.ts';
import { type Result, wrong } from '../src/measure/result.ts';
import { many } from '../src/measure/speech.ts';
import { tidy } from '../src/measure/tidy.ts';
import { type Goods, goods, linesOf, notWished } from './swap-goods.ts';
import { changeTerms, termsOptions } from './swap-open.ts';
import { askedSwap, liveSwaps, takesOffers, whichSwap } from './swap-which.ts';
import { areaFigure, areaUnit, areaWords, piecesWords } from './swap-words.ts';

/** So many lines one member may have in one swap. */
const MOST_OF_ONE = 60;

const STOPS = ['swap', 'line', 'to'];

const what = (summary: string, example: string) => required(bare(goods(summary, example, STOPS)));

export const offer = form({
  name: 'offer',
  summary: 'Offer cloth or patches to the swap, counted; several with a comma between',
  examples: [
    '/swap offer 6 fat quarters florals',
    '/swap offer 60 1in hexagons blue, 20 5in squares',
    '/swap offer 2 1/2in strips x 20',
  ],
  options: { what: what('How many of what you offer', '6 fat quarters florals'), swap: whichSwap },
  keeps: true,
  run: (values, here) => add('offer', values, here),
});

export const want = form({
  name: 'want',
  summary: 'Say what you would like from the swap; without a colour any will do',
  examples: ['/swap want 60 1in hexagons blue', '/swap want 4 fat quarters'],
  options: { what: what('How many of what you would like', '60 1in hexagons blue'), swap: whichSwap },
  keeps: true,
  run: (values, here) => add('want', values, here),
});

interface Asked {
  readonly what: readonly Goods[];
  readonly swap?: string;
}

async function add(side: Side, { what, swap: name }: Asked, here: Here): Promise<Answer> {
  const unwished = side === 'want' ? notWished(what) : null;
  if (unwished) return unwished;
  const asked = await askedSwap(name, here, {
    first: ({ each, state }) => each === null && state === 'open',
  });
  if ('asks' in asked) return asked.asks;
  if (!asked.ok) return asked;
  const { swap, entries } = asked.value;
  if (swap.each !== null) return wrong('swap-is-even', { name: swap.name, instead: '' });
  const taken = takesOffers(swap, here);
  if (!taken.ok) return taken;
  const unsure = what.find(({ or }) => or !== undefined);
  if (unsure) return askEither(what, unsure, 'what', here);
  const hers = entries.filter(({ member }) => member === here.who.id);
  if (hers.length + what.length > MOST_OF_ONE)
    return wrong('swap-lines-many', { most: String(MOST_OF_ONE), instead: '' });
  await here.facts.swaps.take(swap, here.who, 'in');
  const added: SwapEntry[] = [];
  for (const line of asTyped(what, 'what', here))
    added.push(await here.facts.swaps.addEntry(swap, here.who.id, entryOf(side, line)));
  const title = `${side === 'want' ? 'Wished for' : 'Offered'} in ${swap.name}`;
  return kept(title, added, [...hers, ...added], here);
}

/** Which of two readings of a line is meant. */
function askEither(lines: readonly Goods[], unsure: Goods, option: string, { again }: Here): Reply {
  const { or: other, ...one } = unsure;
  const both = other ? [one, other] : [one];
  return reply({
    title: 'How many, and how large?',
    asks: `Is that ${both.map(({ typed }) => typed).join(', or ')}?`,
    choices: both.map((meant) => ({
      label: meant.typed,
      ask: again({ [option]: lines.map((line) => (line === unsure ? meant : line)) }),
    })),
  });
}

const entryOf = (side: Side, { count, good, words, typed }: Goods) => ({
  side,
  count,
  good: goodKey(good),
  words,
  typed,
});

/** The lines with their words just as they were typed, where they can be told apart in what was. */
function asTyped(lines: readonly Goods[], option: string, { typed }: Here): readonly Goods[] {
  const raw = rawOf(typed, option);
  const last = linesOf(raw).slice(-lines.length);
  return lines.map((line, i) => {
    const words = endOf(last[i] ?? '', line.typed);
    return words === null ? line : { ...line, typed: words.replace(/\s+/gu, ' ') };
  });
}

/** What was typed for the option, before it was tidied. */
function rawOf(typed: Here['typed'], option: string): string {
  if (typeof typed === 'string') return typed;
  return ('ask' in typed ? typed.filled[option] : typed.options[option]) ?? '';
}

/** The end of a raw text that reads as this when it is tidied. */
function endOf(raw: string, tidied: string): string | null {
  for (const { index } of raw.matchAll(/\S+/gu)) {
    const end = raw.slice(index).trim();
    for (const words of [end, end.replace(/^[a-z]+[:=]\s*/i, '')]) if (tidy(words) === tidied) return words;
  }
  return null;
}

function kept(
  title: string,
  added: readonly SwapEntry[],
  hers: readonly SwapEntry[],
  { say, who }: Here,
): Reply {
  const [offered, wished] = [areaOfSide(hers, 'offer'), areaOfSide(hers, 'want')];
  const own = added.every(({ member }) => member === who.id);
  return reply({
    title,
    lines: [
      ...(added.length <= 3 ? added.map((entry) => lineWords(entry, say)) : []),
      `${own ? 'You offer' : 'She offers'} ${areaWords(offered, say)} and ${own ? 'wish' : 'wishes'} for ${areaWords(wished, say)}.`,
      ...(own ? hint(offered, wished) : []),
    ],
    table: added.length <= 3 ? null : tableOf(added, say),
    figures: {
      lines: count(added.map(({ number }) => number)),
      offered: squareInches(offered),
      wished: squareInches(wished),
    },
  });
}

const areaOfSide = (entries: readonly SwapEntry[], side: Side): number =>
  entries
    .filter((entry) => entry.side === side)
    .reduce((sum, { good, count }) => sum + areaOf(good, count), 0);

const lineWords = ({ number, good, count: pieces }: SwapEntry, say: Here['say']): string =>
  `Line ${number}: ${piecesWords(good, pieces, say)}, ${areaWords(areaOf(good, pieces), say)}.`;

function hint(offered: number, wished: number): string[] {
  if (wished === 0)
    return [
      'You are sent about as much as you send, so say what you would like: `/swap want 4 fat quarters`',
    ];
  if (offered === 0) return ['What do you offer for it? `/swap offer 6 fat quarters florals`'];
  return [];
}

const tableOf = (entries: readonly SwapEntry[], say: Here['say']) => ({
  columns: ['line', 'what', areaUnit(say)],
  rows: entries.map(({ number, typed, good, count }) => [
    String(number),
    typed,
    areaFigure(areaOf(good, count), say),
  ]),
});

/** A line of a swap by its number; her own lines are suggested. */
const lineOption = suggesting(listed('Which line', 1_000_000, '3'), async ({ guild, member, facts }) => {
  const lines: string[] = [];
  for (const swap of await liveSwaps({ guild, facts }))
    for (const entry of await facts.swaps.entries(swap))
      if (entry.member === member) lines.push(listedAs(entry.number, entry.typed));
  return lines;
});

export const edit = form({
  name: 'edit',
  summary: 'Change a line of yours; organisers also the swap itself',
  examples: [
    '/swap edit line:3 to:4 fat quarters florals',
    '/swap edit last:2027-01-10 rules:washed, please',
  ],
  options: {
    line: bare(lineOption),
    to: goods('What it should say', '4 fat quarters florals', ['swap', 'line']),
    ...termsOptions,
    swap: whichSwap,
  },
  keeps: true,
  async run({ line, to, swap: name, ...terms }, here) {
    const asked = await askedSwap(name, here);
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked;
    if (line === undefined) {
      const given = Object.fromEntries(Object.entries(terms).filter(([, value]) => value !== undefined));
      if (Object.keys(given).length === 0) return wrong('swap-edit-what');
      return changeTerms(given as Partial<SwapTerms>, asked.value.swap, here);
    }
    return changeLine(asked.value, line, to, here);
  },
});

async function changeLine(
  whole: WholeSwap,
  number: number,
  to: readonly Goods[] | undefined,
  here: Here,
): Promise<Answer> {
  const entry = ownEntry(whole, number, here);
  if (!entry.ok) return entry;
  const [line, more] = to ? asTyped(to, 'to', here) : [];
  if (!line || more) return wrong('swap-line-to');
  if (line.or) return askEither([line], line, 'to', here);
  const taken = takesOffers(whole.swap, here);
  if (!taken.ok) return taken;
  const changed = { ...entry.value, ...entryOf(entry.value.side, line) };
  await here.facts.swaps.changeEntry(whole.swap, number, entryOf(entry.value.side, line));
  const hers = whole.entries.filter(({ member }) => member === entry.value.member);
  return kept(
    `Changed in ${whole.swap.name}`,
    [changed],
    [...hers.filter((one) => one.number !== number), changed],
    here,
  );
}

/** A line that the asker may change: her own, or anybody's where she is an organiser. */
function ownEntry({ entries }: WholeSwap, number: number, { who }: Here): Result<SwapEntry> {
  const entry = entries.find((one) => one.number === number);
  if (!entry) return wrong('swap-no-line', { got: String(number), instead: '' });
  if (entry.member !== who.id && !who.organiser)
    return wrong('swap-not-yours', { got: String(number), instead: '' });
  return { ok: true, value: entry };
}

export const withdraw = form({
  name: 'withdraw',
  summary: 'Take a line of yours out of the swap, or all of them',
  examples: ['/swap withdraw 3', '/swap withdraw all:yes'],
  options: {
    line: bare(alsoNamed(lineOption, 'number')),
    all: yesNo('Whether all of yours'),
    swap: whichSwap,
  },
  keeps: true,
  async run({ line, all, swap: name }, here) {
    const asked = await askedSwap(name, here);
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked;
    const whole = asked.value;
    const hers = whole.entries.filter(({ member }) => member === here.who.id);
    if (all) return takeOut(whole, hers, here);
    if (line === undefined)
      return hers.length === 0 ? wrong('swap-no-lines', { instead: '' }) : whichLine(hers, here);
    const entry = ownEntry(whole, line, here);
    return entry.ok ? takeOut(whole, [entry.value], here) : entry;
  },
});

async function takeOut(
  { swap, entries }: WholeSwap,
  out: readonly SwapEntry[],
  { facts, who, say }: Here,
): Promise<Answer> {
  if (out.length === 0) return wrong('swap-no-lines', { instead: '' });
  await facts.swaps.removeEntries(
    swap,
    out.map(({ number }) => number),
  );
  const gone = new Set(out.map(({ number }) => number));
  const left = entries.filter(({ member, number }) => member === who.id && !gone.has(number));
  return reply({
    title: `Withdrawn from ${swap.name}`,
    lines: [
      `${many(out.length, 'line is', 'lines are')} taken out${out.length === 1 ? `: ${out[0]?.typed}` : ''}.`,
      `You offer ${areaWords(areaOfSide(left, 'offer'), say)} and wish for ${areaWords(areaOfSide(left, 'want'), say)}.`,
    ],
    figures: { lines: count(out.map(({ number }) => number)) },
  });
}

/** So many lines are offered to choose from. */
const FEW = 8;

const whichLine = (hers: readonly SwapEntry[], { again }: Here): Reply =>
  reply({
    title: 'Which line?',
    asks: 'Which line should go?',
    choices: [
      ...hers.slice(0, FEW).map(({ number, typed }) => ({ label: typed, ask: again({ line: number }) })),
      ...(hers.length > 1 ? [{ label: 'All of mine', ask: again({ all: true }) }] : []),
    ],
  });
