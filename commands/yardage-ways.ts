import type { BestLength } from '../src/calculator/fabric/best-length.ts';
import { cutsInAll } from '../src/calculator/fabric/cuts.ts';
import { type FewestCuts, isEasier } from '../src/calculator/fabric/fewest.ts';
import { planCuts } from '../src/calculator/fabric/plan-cuts.ts';
import type { Yardage, YardageWay } from '../src/calculator/fabric/yardage.ts';
import type { Here } from '../src/chat/command.ts';
import { count, type Figure, type Reply, type ReplyChoice } from '../src/chat/reply.ts';
import { grouped } from '../src/measure/ruler.ts';
import type { Speech } from '../src/measure/speech.ts';
import { bought, purchaseFigures, purchaseFor, roundUp } from './bought.ts';
import { blocksWords, cutsOfBest, cutsWords } from './cutting-words.ts';
import type { AskedPatch } from './patch.ts';
import { METHOD } from './plan-words.ts';

const METHODS = ['strips', 'lengthwise', 'nested', 'turned', 'squares'] as const;
export type MethodName = (typeof METHODS)[number];

/** How the ways are chosen and told. */
interface Choosing {
  readonly here: Here;
  readonly method: MethodName | 'best' | 'fewest';
  /** How much of its length the cloth loses. */
  readonly shrink: number;
}

/** What is told of one way: what to buy, how it is cut, what it takes. */
export interface Way {
  readonly buy: number;
  readonly words: readonly string[];
  readonly cuts: ReturnType<typeof cutsOfBest>;
  /** Patches that its plan gives: a few more than asked, perhaps. */
  readonly patches: number;
  readonly way?: YardageWay;
}

/** For the same purchase, with some to spare, a way of the trade: the one with the fewest cuts, else its least cloth. */
export function plainerWay(
  { best }: Yardage,
  fewest: FewestCuts<YardageWay> | undefined,
  least: Way,
  say: Speech,
): Way | undefined {
  const { amount } = purchaseFor(least.buy, say);
  const easier = fewest && isEasier(fewest, least.cuts, least.patches) ? [fewest.of] : [];
  const noHarder = eachOf(planCuts(best.plan), best.plan.count) <= eachOf(least.cuts, least.patches);
  const way = [...easier, ...(noHarder ? [best] : [])].find(({ buy }) => {
    const purchase = purchaseFor(buy, say);
    return purchase.amount === amount && !purchase.tight;
  });
  return way && tradeWay(way, say);
}

/** Cuts for each patch; what was not counted is the hardest. */
const eachOf = (cuts: Way['cuts'], patches: number): number =>
  cuts === undefined ? Number.POSITIVE_INFINITY : cutsInAll(cuts) / patches;

const tradeWay = (way: YardageWay, say: Speech): Way => ({
  buy: way.buy,
  words: [`${nameOf(way)}: ${cuttingWords(way, say)}`],
  cuts: planCuts(way.plan),
  patches: way.plan.count,
  way,
});

/** The way that needs the least of what is bought, where an easier one needs no other purchase. */
export const leastCloth = ({ buy }: Way, { say, again }: Here): ReplyChoice => ({
  label: `With the least cloth, ${say.plain(roundUp(buy, say))}`,
  ask: again({ method: 'best' }),
});

/** Shorter than the trade's best by less than this is no gain, in inches. */
export const NO_GAIN = 1e-5;

/** The way that was asked for; undefined where the shape is not cut so. */
export function wayOf(
  method: Choosing['method'],
  found: Yardage,
  least: BestLength,
  fewest: FewestCuts<YardageWay> | undefined,
  { here: { say }, shrink }: Choosing,
): Way | undefined {
  const isTrade = method !== 'best' || least.length > found.best.length - NO_GAIN;
  if (!isTrade) {
    const words = blocksWords(least.plan, say).map((line) => line.replace(/\.$/, ''));
    const { plan } = least;
    return {
      buy: least.length / (1 - shrink),
      words: periods(words),
      cuts: cutsOfBest(plan),
      patches: plan.count,
    };
  }
  const way = method === 'fewest' ? fewest?.of : found[method];
  return way && tradeWay(way, say);
}

/** All but the last line end here; what it takes is still to come. */
const periods = (lines: readonly string[]): string[] =>
  lines.map((line, i) => (i < lines.length - 1 ? `${line}.` : line));

export const fewestLine = ({ of, cuts }: FewestCuts<YardageWay>, say: Speech): string =>
  `Fewest cuts, ${bought(of.buy, say)}: ${cuttingWords(of, say)}; ${cutsWords(cuts)}.`;

const nameOf = ({ method, direction }: YardageWay): string =>
  method === 'strips' && direction === 'lengthwise' ? 'Strips lengthwise' : METHOD[method];

/** The cutting list: so many strips or rows, so many patches from each, what is left for the last. */
function cuttingWords({ list, plan, method }: YardageWay, say: Speech): string {
  const { rows, perRow, lastRow } = list;
  const along = plan.direction === 'lengthwise' && method !== 'strips' ? ' lengthwise' : '';
  const what = { strips: 'strips', nested: 'rows', turned: 'rows', squares: 'rows of squares' }[method];
  const each =
    perRow[0] === perRow[1] || rows < 2
      ? `${grouped(perRow[0])} from each`
      : `${grouped(perRow[0])} and ${grouped(perRow[1])} by turns`;
  const full = rows % 2 === 1 || rows < 2 ? perRow[0] : perRow[1];
  const last = rows > 1 && lastRow < full ? `, ${grouped(lastRow)} from the last` : '';
  return `${grouped(rows)} ${rows === 1 ? what.replace(/s( of.*)?$/, '$1') : what} of ${say.length(plan.rowHeight)}${along}, ${each}${last}`;
}

export function otherWays(
  found: Yardage,
  told: readonly (YardageWay | undefined)[],
  { patch }: AskedPatch,
  say: Speech,
): Reply['table'] {
  const rows = METHODS.flatMap((name) => {
    const way = found[name];
    if (!way || told.includes(way)) return [];
    if (name === 'lengthwise' && found.strips && way.length > found.strips.length - 1e-6) return [];
    const blunt = way.plan.patch.cornerStyle !== patch.cornerStyle ? ', blunt corners' : '';
    return [
      [
        nameOf(way),
        bought(way.buy, say),
        `${say.plain(roundUp(way.buy, say))}: ${cuttingWords(way, say)}${blunt}`,
      ],
    ];
  });
  return rows.length === 0 ? null : { columns: ['other ways', 'buy', 'needed'], rows };
}

export function figuresOf(
  found: Yardage,
  best: number,
  fewest: FewestCuts<YardageWay> | undefined,
): Record<string, Figure> {
  const figures: Record<string, Figure> = { pieces: count(found.pieces) };
  for (const name of METHODS) {
    const way = found[name];
    if (way) Object.assign(figures, purchaseFigures(name, way.buy));
  }
  Object.assign(figures, purchaseFigures('best', best));
  if (fewest) Object.assign(figures, purchaseFigures('fewest', fewest.of.buy));
  return figures;
}
