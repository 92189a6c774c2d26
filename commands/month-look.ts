import { form, type Here } from '../src/chat/command.ts';
import { bare } from '../src/chat/option.ts';
import { count, inches, type Picture, type Reply, reply } from '../src/chat/reply.ts';
import type { Every, Finished, Month, MonthBlock } from '../src/guild/month-facts.ts';
import { decimal, grouped } from '../src/measure/ruler.ts';
import { capital, dayWords, many, range } from '../src/measure/speech.ts';
import { monthOption, whichMonth } from './which-month.ts';

const EVERY: Readonly<Record<Every, string>> = {
  month: 'each month',
  'two-weeks': 'every two weeks',
  week: 'each week',
  day: 'each day',
};

export const showMonthForm = form({
  name: 'show',
  summary: 'All blocks of a block of the month: their days, and who has finished which',
  examples: ['/month show', '/month show Garden'],
  options: { month: bare(monthOption) },
  async run(values, here) {
    const found = await whichMonth(values.month, here, 'any');
    if ('asks' in found) return found.asks;
    return found.ok ? shownMonth(found.value, here) : found;
  },
});

export const seamsIn = ({ inside, joining }: MonthBlock): number => inside + joining;
export const patchesIn = ({ pieces }: MonthBlock): number => pieces.reduce((sum, one) => sum + one.count, 0);

/** The whole plan: how it is shared out, what is open, and each block with its day and its finishers. */
export async function shownMonth(of: Month, here: Here): Promise<Reply> {
  const slots = await here.facts.months.blocks(of);
  const finished = await here.facts.months.finished(of);
  const blocks = slots.filter((one) => one.block !== null);
  const lengths = blocks.map((one) => seamsIn(one) * of.size);
  const [least, most] = [Math.min(...lengths), Math.max(...lengths)];
  const hers = finished.filter(({ member }) => member === here.who.id).map(({ block }) => block);
  return reply({
    title: `${of.name}, no. ${of.number}${of.open ? '' : ', closed'}`,
    lines: [
      `${many(blocks.length, 'block', 'blocks')} of ${runRange(least, most, here)} of seam each.`,
      `Shared out: ${of.of}.`,
      ...besideWords(of),
      `One ${EVERY[of.every]} from ${dayWords(of.first)}.`,
      ...nowWords(of, slots, here),
      ...(hers.length > 0 ? [`Finished by you: ${hers.join(', ')}.`] : []),
    ],
    figures: {
      number: count(of.number),
      parts: count(blocks.length),
      blockSeamLengths: { value: lengths, unit: 'in' },
      blockPieces: count(blocks.map(patchesIn)),
      seams: count(blocks.reduce((sum, one) => sum + seamsIn(one), 0)),
      seamLength: inches(lengths.reduce((sum, one) => sum + one, 0)),
      pieces: count(blocks.reduce((sum, one) => sum + patchesIn(one), 0)),
      finished: count(finished.length),
      mine: count(hers),
    },
    table: {
      columns: ['opens', 'block', 'finished'],
      rows: slots.map((slot) => [dayWords(slot.opens), slotWords(slot), finishersOf(slot, finished, here)]),
    },
    pictures: [chartOf(of, blocks, lengths, here)],
    choices: of.open ? choicesFor(of, slots, hers, here) : [],
  });
}

/** What lies between rosettes is shared out with them, or "32 of rosette 1" is more than a rosette has. */
export function besideWords({ of }: Pick<Month, 'of'>): string[] {
  if (/\b(?:one path|a path to each)\b/.test(of)) return ['With each rosette goes the path beside it.'];
  return /\bdiamonds between\b/.test(of) ? ['With each rosette goes what is set beside it.'] : [];
}

/** A run of seam from one length to another, its unit said once. */
function runRange(least: number, most: number, { say }: Here): string {
  const [unit, size] = say.reading === 'metric' ? ['cm', 1 / 2.54] : ['in', 1];
  return `${range(decimal(least / size, 0), decimal(most / size, 0))} ${unit}`;
}

const slotWords = ({ block, words }: MonthBlock): string =>
  block === null ? 'catch up' : `${block}: ${words}`;

/** The block whose turn it is: the last that has opened. */
export const currentSlot = (slots: readonly MonthBlock[], today: string): MonthBlock | undefined =>
  slots.filter(({ opens }) => opens <= today).at(-1);

function nowWords({ open }: Month, slots: readonly MonthBlock[], { today }: Here): string[] {
  if (!open) return [];
  const now = currentSlot(slots, today);
  const next = slots.find(({ opens }) => opens > today);
  const at = now ? (now.block === null ? 'Time to catch up' : `Block ${now.block} is on`) : 'Not begun';
  if (!next) return [`${at}.`];
  const coming = next.block === null ? 'a catch-up' : `block ${next.block}`;
  return [`${at}; ${coming} from ${dayWords(next.opens)}.`];
}

/** So many are named of those who finished a block. */
const MOST_NAMED = 6;

/** Who finished a block, where the guild has members named; else how many. */
function finishersOf({ block }: MonthBlock, finished: readonly Finished[], { defaults }: Here): string {
  const names = finished.filter((one) => one.block === block).map(({ name }) => name);
  if (names.length === 0) return '';
  const named = names.filter((name) => name !== '').sort();
  if (defaults.standings.value === 'totals' || named.length === 0) return grouped(names.length);
  const more = names.length - Math.min(named.length, MOST_NAMED);
  return `${named.slice(0, MOST_NAMED).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

function choicesFor(of: Month, slots: readonly MonthBlock[], hers: readonly number[], { today }: Here) {
  const now = currentSlot(slots, today);
  if (!now?.block) return [];
  const block = now.block;
  return [
    { label: `Block ${block}: cut list and cloth`, ask: `/month block ${block} month:${of.number}` },
    ...(hers.includes(block)
      ? []
      : [{ label: `Block ${block} is finished`, ask: `/month done ${block} month:${of.number}` }]),
  ];
}

function chartOf(
  of: Month,
  blocks: readonly MonthBlock[],
  inches: readonly number[],
  { say }: Here,
): Picture {
  const metric = say.reading === 'metric';
  const lengths = inches.map((length) => (metric ? length * 2.54 : length));
  const what = `${metric ? 'centimetres' : 'inches'} of seam`;
  const each = lengths.map((length) => grouped(length)).join(', ');
  return {
    name: 'blocks.png',
    alt: `${capital(what)} in each block of ${of.name}, in order: ${each}.`,
    of: {
      draw: 'chart',
      title: `${of.name}: ${what} in each block`,
      labels: blocks.map(({ block }) => String(block)),
      series: [{ name: what, values: lengths, as: 'bars' }],
      words: [`Patches, in order: ${blocks.map((one) => grouped(patchesIn(one))).join(', ')}.`],
    },
  };
}

export const listMonthsForm = form({
  name: 'list',
  summary: 'Every block of the month of the guild, the open ones first',
  examples: ['/month list'],
  options: {},
  async run(_, here) {
    const all = await here.facts.months.all(here.guild);
    if (all.length === 0)
      return reply({
        title: 'No block of the month yet',
        lines: ['An organiser opens one:', '`/month open name:Garden rosettes:7 rounds:2 parts:12`'],
      });
    const open = all.filter((one) => one.open).length;
    return reply({
      title: 'Blocks of the month',
      lines: [`${many(open, 'is', 'are')} open, ${grouped(all.length - open)} closed.`],
      figures: { open: count(open), closed: count(all.length - open) },
      table: {
        columns: ['no.', 'name', 'of'],
        rows: all
          .slice(0, 15)
          .map((one) => [String(one.number), `${one.name}${one.open ? '' : ', closed'}`, one.of]),
      },
    });
  },
});
