import type { BestPlan } from '../src/calculator/fabric/best-plan.ts';
import { type FewestCuts, fewestCuts, isEasier } from '../src/calculator/fabric/fewest.ts';
import type { CuttingMethod } from '../src/calculator/fabric/lay.ts';
import type { CuttingPlan } from '../src/calculator/fabric/plan.ts';
import { planCuts } from '../src/calculator/fabric/plan-cuts.ts';
import type { Yield } from '../src/calculator/fabric/yield.ts';
import { CATALOGUE } from '../src/calculator/shapes/catalogue.ts';
import type { Here } from '../src/chat/command.ts';
import { count, inches, type Reply, reply } from '../src/chat/reply.ts';
import { wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { capital } from '../src/measure/speech.ts';
import type { Selvage } from '../src/pictures/cloth.ts';
import { assumedNote } from './assumed.ts';
import { bladeCaution } from './cautions.ts';
import { blocksWords, cutsFigures, cutsOfBest, cutsWords, namedPlanWords } from './cutting-words.ts';
import type { AskedPatch } from './patch.ts';
import { cuttingPictures } from './pictures.ts';
import { METHOD, planWords } from './plan-words.ts';
import { inRosettes } from './yield-rosettes.ts';

export type Method = 'best' | 'fewest' | CuttingMethod;

/** What is told of one way: how many it gives, how it is cut, what it takes. */
interface Way {
  readonly count: number;
  readonly words: readonly string[];
  readonly cuts: ReturnType<typeof cutsOfBest>;
  readonly plan?: CuttingPlan;
}

/** How one piece of cloth is cut: the way that was asked for, and the others beside it. */
export function yieldReply(
  asked: AskedPatch,
  method: Method,
  found: Yield,
  best: BestPlan,
  here: Here & {
    readonly assumed: readonly string[];
    readonly title: string;
    readonly selvage: Selvage;
    readonly wanted: number | undefined;
    /** Of how many rounds the rosettes are that were asked for. */
    readonly rounds: number | undefined;
    /** Whether it is a sheet of paper that is cut. */
    readonly paper: boolean;
  },
): Reply | ReturnType<typeof wrong> {
  const { say, assumed, title, selvage, wanted, rounds, paper } = here;
  const fewest = fewestCuts(serving(found, best), (plan) => plan);
  const way = wayOf(method, found, best, fewest, here);
  if (!way) return wrong('method-not-for-shape', { method, shape: CATALOGUE[asked.shape].titles });
  const easier = fewest && isEasier(fewest, way.cuts, way.count) ? fewest : undefined;
  const rosettes = inRosettes(way.count, rounds);
  return reply({
    title,
    lines: [
      ...rosettes.lines,
      headline(way, found, best),
      ...wantedWords(wanted, way.count),
      ...withCuts(way.words, cutsWords(way.cuts), easier === undefined),
      ...(method === 'best' && easier ? [fewestLine(easier, say)] : []),
    ],
    table: otherWays(found, best, [way.plan, method === 'best' ? easier?.of : undefined], here),
    figures: {
      ...figuresOf(found, best, fewest),
      ...cutsFigures(way.cuts),
      ...rosettes.figures,
      ...(wanted === undefined
        ? {}
        : { pieces: count(wanted), clothPieces: count(Math.ceil(wanted / way.count)) }),
    },
    notes: [...paperNote(paper), ...assumedNote(assumed)],
    cautions: bladeCaution(here),
    choices: asked.otherwise,
    pictures: cuttingPictures(
      {
        ...{ title, patch: asked.patch, plan: way.plan ?? best, selvage },
        words: way.words.join(' '),
      },
      here,
    ),
  });
}

/** A sheet that is printed has bars to measure, which a plain one has not. */
const paperNote = (paper: boolean): string[] =>
  paper ? ['A sheet printed by `/template` holds fewer: its two bars to measure take room.'] : [];

/** The trade's plans that serve the patch as it was asked for, pointed or blunt. */
const serving = ({ plans }: Yield, { patch }: BestPlan): CuttingPlan[] =>
  plans.filter((plan) => plan.patch.cornerStyle === patch.cornerStyle);

function wayOf(
  method: Method,
  found: Yield,
  best: BestPlan,
  fewest: FewestCuts<CuttingPlan> | undefined,
  { say }: Here,
): Way | undefined {
  if (method === 'best') {
    const [block] = best.blocks;
    const plan = best.blocks.length === 1 && block?.cut.as === 'lay' ? block.cut.plan : undefined;
    const same = plan && found.plans.find((one) => isSame(one, plan));
    const words = blocksWords(best, say);
    return { count: best.count, words, cuts: cutsOfBest(best), ...(same && { plan: same }) };
  }
  const plan = method === 'fewest' ? fewest?.of : found.plans.find((one) => one.method === method);
  return plan && { count: plan.count, words: [`${namedPlanWords(plan, say)}.`], cuts: planCuts(plan), plan };
}

/** Whether two plans for one piece of cloth are the same one, made twice. */
const isSame = (one: CuttingPlan, other: CuttingPlan): boolean =>
  one.method === other.method &&
  one.direction === other.direction &&
  one.count === other.count &&
  one.rowHeight === other.rowHeight &&
  one.patch.cornerStyle === other.patch.cornerStyle;

function headline({ count: gives, plan }: Way, { ceiling }: Yield, best: BestPlan): string {
  if (gives < best.count) return `${grouped(gives)} this way; with the least cloth ${grouped(best.count)}.`;
  const blunt = plan && plan.patch.cornerStyle !== best.patch.cornerStyle ? ', blunt corners only' : '';
  if (gives === ceiling) return `${grouped(gives)}${blunt}, and no more can be cut.`;
  return `At least ${grouped(gives)} this way${blunt}; the area alone would allow ${grouped(ceiling)}.`;
}

/** Whether one piece of cloth is enough for so many patches, or how many are. */
function wantedWords(wanted: number | undefined, gives: number): string[] {
  if (wanted === undefined) return [];
  return wanted <= gives
    ? [`Enough for ${grouped(wanted)}.`]
    : [`${grouped(wanted)} take ${grouped(Math.ceil(wanted / gives))} of that piece.`];
}

/** The last line of how it is cut says what it takes. */
function withCuts(words: readonly string[], cuts: string, isFewest: boolean): string[] {
  if (cuts === '') return [...words];
  const none = isFewest ? '; no way of the trade takes clearly fewer' : '';
  return [...words, `${capital(cuts)}${none}.`];
}

const fewestLine = ({ of, cuts }: FewestCuts<CuttingPlan>, say: Here['say']): string =>
  `Fewest cuts, ${grouped(of.count)}: ${planWords(of, say)}; ${cutsWords(cuts)}.`;

/** One row a method: its better direction. Those told already are left out. */
function otherWays(
  { plans }: Yield,
  { patch }: BestPlan,
  told: readonly (CuttingPlan | undefined)[],
  { say }: Here,
): Reply['table'] {
  const seen = new Set<CuttingMethod>(told.flatMap((plan) => (plan ? [plan.method] : [])));
  const rows: string[][] = [];
  for (const plan of plans) {
    if (seen.has(plan.method)) continue;
    seen.add(plan.method);
    const blunt = plan.patch.cornerStyle !== patch.cornerStyle ? ' (blunt corners only)' : '';
    rows.push([METHOD[plan.method], grouped(plan.count), `${planWords(plan, say)}${blunt}`]);
  }
  return rows.length === 0 ? null : { columns: ['other ways', 'gives', 'how'], rows };
}

function figuresOf(
  { strips, nested, turned, squares, ceiling }: Yield,
  best: BestPlan,
  fewest: FewestCuts<CuttingPlan> | undefined,
): Reply['figures'] {
  return {
    strips: count(strips),
    ...(nested === undefined ? {} : { nested: count(nested) }),
    ...(turned === undefined ? {} : { turned: count(turned) }),
    ...(squares === undefined ? {} : { squares: count(squares) }),
    best: count(best.count),
    ...(fewest ? { fewest: count(fewest.of.count) } : {}),
    ceiling: count(ceiling),
    clothWidth: inches(best.cloth.width),
    clothLength: inches(best.cloth.length),
  };
}
