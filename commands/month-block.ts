import { clothNeed } from '../src/calculator/fabric/cloth-need.ts';
import { purchase } from '../src/calculator/fabric/purchase.ts';
import { cutPatch, dimensionsFrom } from '../src/calculator/shapes/cut.ts';
import type { ShapeName } from '../src/calculator/shapes/shape.ts';
import { ownMinutes, usualMinutes } from '../src/calculator/stitching/rates.ts';
import { form, type Here } from '../src/chat/command.ts';
import { alsoNamed, bare, usually } from '../src/chat/option.ts';
import { whole } from '../src/chat/option-kinds.ts';
import { count, inches, minutes, type Reply, reply } from '../src/chat/reply.ts';
import type { BlockPieces, Month, MonthBlock } from '../src/guild/month-facts.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import { decimal, grouped } from '../src/measure/ruler.ts';
import { dayWords, many, range } from '../src/measure/speech.ts';
import { assumedNote, whose } from './assumed.ts';
import { bladeCaution, handsCaution } from './cautions.ts';
import { besideWords, currentSlot, patchesIn, seamsIn } from './month-look.ts';
import { paceFor, paceSource } from './own-pace.ts';
import { monthOption, whichMonth } from './which-month.ts';
import type { Settled } from './which-one.ts';

const blockOption = usually(
  bare(alsoNamed(whole('Which block, by its number', 1, 60, '3'), 'blocks')),
  'the one whose turn it is',
);
const options = { block: blockOption, month: monthOption };

interface Found {
  readonly of: Month;
  readonly block: MonthBlock & { readonly block: number };
}

/** The block that is meant, if it has opened (an organiser may look ahead). */
async function whichBlock(
  values: { readonly block?: number; readonly month?: string },
  here: Here,
  meant: 'open' | 'any',
): Promise<Settled<Found>> {
  const found = await whichMonth(values.month, here, meant);
  if ('asks' in found || !found.ok) return found;
  const of = found.value;
  const slots = await here.facts.months.blocks(of);
  const block =
    values.block === undefined ? latest(slots, here.today) : slots.find((one) => one.block === values.block);
  return fitting(of, block, slots, values.block, here);
}

/** The block whose turn it is; of a catch-up, the one before; before the first, the first. */
function latest(slots: readonly MonthBlock[], today: string): MonthBlock | undefined {
  const open = slots.filter(({ block, opens }) => block !== null && opens <= today);
  return open.at(-1) ?? currentSlot(slots, today) ?? slots[0];
}

function fitting(
  of: Month,
  block: MonthBlock | undefined,
  slots: readonly MonthBlock[],
  asked: number | undefined,
  { today, who }: Here,
): Result<Found> {
  const most = Math.max(...slots.map((one) => one.block ?? 0));
  if (!block || block.block === null)
    return wrong('block-unknown', { got: asked ?? 0, name: of.name, most, instead: '' });
  if (block.opens > today && !who.organiser)
    return wrong('block-not-open', { block: block.block, opens: dayWords(block.opens), instead: '' });
  return ok({ of, block: { ...block, block: block.block } });
}

export const blockForm = form({
  name: 'block',
  summary: 'One block: which part it is, what to cut, the cloth, the seams and the hours',
  examples: ['/month block', '/month block 3', '/month block 3 month:Garden'],
  options,
  async run(values, here) {
    const found = await whichBlock(values, here, 'any');
    if ('asks' in found) return found.asks;
    return found.ok ? shownBlock(found.value, here) : found;
  },
});

async function shownBlock({ of, block }: Found, here: Here): Promise<Reply> {
  const { say, defaults, who, facts } = here;
  const finished = (await facts.months.finished(of)).filter((one) => one.block === block.block);
  const seams = seamsIn(block);
  const time = await timeOf(of, seams, here);
  const cut = block.pieces.map((pieces) => ({ pieces, cloth: clothFor(pieces, of.size, here) }));
  const done = finished.some(({ member }) => member === who.id);
  return reply({
    title: `${of.name}, block ${block.block}`,
    lines: [
      `${many(patchesIn(block), 'patch', 'patches')}: ${block.words}.`,
      ...besideWords(of),
      `${many(seams, 'seam', 'seams')}, ${say.run(seams * of.size)}${block.joining > 0 ? `: ${grouped(block.joining)} of them join it on` : ''}.`,
      ...(seams > 0 ? [`${time.words}.`] : []),
      ...(block.width > 0
        ? [`Sewn to here it measures ${say.mark(block.width)} by ${say.mark(block.height)}.`]
        : []),
      `Open from ${dayWords(block.opens)}. ${finishedBy(finished.length)}`,
    ],
    figures: {
      block: count(block.block),
      pieces: count(patchesIn(block)),
      seams: count(seams),
      joining: count(block.joining),
      seamLength: inches(seams * of.size),
      minutesLow: minutes(time.low),
      minutesHigh: minutes(time.high),
      ...(block.width > 0 ? { width: inches(block.width), height: inches(block.height) } : {}),
      finished: count(finished.length),
    },
    table: {
      columns: ['cut', 'patches', 'cloth'],
      rows: cut.map(({ pieces, cloth }) => [pieceWords(pieces), grouped(pieces.count), cloth]),
    },
    choices: done
      ? [{ label: 'Not finished after all', ask: `/month undone ${block.block} month:${of.number}` }]
      : [{ label: 'Finished', ask: `/month done ${block.block} month:${of.number}` }],
    notes: assumedNote([
      `${whose(defaults.seam.from)}${say.plain(defaults.seam.value)} seam`,
      `${whose(defaults.width.from)}${say.plain(defaults.width.value)} usable width`,
      ...time.assumed,
    ]),
    cautions: [...bladeCaution(here), ...(time.high > LONG ? handsCaution() : [])],
  });
}

/** From so many minutes on the hands want a rest. */
const LONG = 120;

async function timeOf({ size }: Month, seams: number, here: Here) {
  const pace = await paceFor(undefined, size, here);
  const own = pace.minutes !== null;
  const { low, high } = own ? ownMinutes(seams, pace.minutes ?? 0) : usualMinutes(seams, size, 'whip');
  const [unit, per, places] = high < LONG ? ['minutes', 1, 0] : ['hours', 60, high < 600 ? 1 : 0];
  const between = range(decimal(low / per, places), decimal(high / per, places));
  const words = `About ${between} ${unit}${own ? `, ${paceSource(pace).toLowerCase()}` : ''}`;
  return { low, high, words, assumed: own ? [] : ['whipstitch over paper'] };
}

const ROLE_WORDS: Readonly<Record<string, string>> = {
  petal: 'rounds',
  centre: 'centres',
  trimmed: 'at the edge, trimmed later',
  whole: 'whole',
};

/** "hexagon, rounds": what is cut, and what it is for. */
const pieceWords = ({ role, kind }: BlockPieces): string =>
  role === kind ? kind : `${kind}, ${ROLE_WORDS[role] ?? role}`;

/** Cloth to buy for these patches alone, at the asker's seam and usable width. */
function clothFor({ kind, count: pieces }: BlockPieces, size: number, { defaults, say }: Here): string {
  const shape: ShapeName = kind;
  const seam = defaults.seam.value;
  const sized = dimensionsFrom(shape, {
    measure: 'edge',
    given: 'finished',
    value: size,
    seam,
    cornerStyle: 'pointed',
  });
  if (!sized.ok) return '';
  const found = clothNeed(cutPatch(shape, sized.value, seam, 'pointed'), pieces, defaults.width.value);
  if (!found.ok) return 'wider than the cloth';
  const needed = found.value.buy;
  return say.purchase(purchase(needed, 'yard').amount, purchase(needed, 'metric').amount);
}

export const doneForm = form({
  name: 'done',
  summary: 'Say that you have finished a block',
  examples: ['/month done', '/month done 3'],
  options,
  keeps: true,
  run: (values, here) => mark(values, here, true),
});

export const undoneForm = form({
  name: 'undone',
  summary: 'Say that a block of yours is not finished after all',
  examples: ['/month undone 3'],
  options,
  keeps: true,
  run: (values, here) => mark(values, here, false),
});

async function mark(values: { readonly block?: number; readonly month?: string }, here: Here, done: boolean) {
  const found = await whichBlock(values, here, 'open');
  if ('asks' in found) return found.asks;
  if (!found.ok) return found;
  const { of, block } = found.value;
  const { facts, who, now } = here;
  const changed = done
    ? await facts.months.finish(of, block.block, who, now)
    : await facts.months.unfinish(of, block.block, who.id, now);
  const finished = await facts.months.finished(of);
  const hers = finished.filter(({ member }) => member === who.id).map((one) => one.block);
  const state = done ? 'finished' : 'not finished';
  return reply({
    title: of.name,
    lines: [
      `Block ${block.block} is ${state}${changed ? '' : ', as it was'}.`,
      hers.length > 0 ? `Finished by you: ${hers.join(', ')}.` : 'None of yours is finished yet.',
      `Block ${block.block}: ${finishedBy(finished.filter((one) => one.block === block.block).length).toLowerCase()}`,
    ],
    figures: { block: count(block.block), mine: count(hers), finished: count(finished.length) },
    choices: [
      done
        ? { label: 'Not finished after all', ask: `/month undone ${block.block} month:${of.number}` }
        : { label: 'Finished', ask: `/month done ${block.block} month:${of.number}` },
    ],
  });
}

/** "Finished by 2 members." */
const finishedBy = (members: number): string =>
  members === 0 ? 'Nobody has finished it yet.' : `Finished by ${many(members, 'member', 'members')}.`;
