import type { BestPlan } from '../src/calculator/fabric/best-plan.ts';
import type { Cuts } from '../src/calculator/fabric/cuts.ts';
import type { CuttingPlan } from '../src/calculator/fabric/plan.ts';
import { planCuts } from '../src/calculator/fabric/plan-cuts.ts';
import type { Block } from '../src/calculator/fabric/search/block.ts';
import { count, type Figure } from '../src/chat/reply.ts';
import { decimal, grouped } from '../src/measure/ruler.ts';
import { capital, many, type Speech } from '../src/measure/speech.ts';
import { METHOD, planWords } from './plan-words.ts';

/** Cuts are told of plans up to so many patches; more are cut in parts anyway. */
const MOST_COUNTED = 2000;

/** The cuts of the best plan, where they are told. */
export function cutsOfBest(plan: BestPlan): Cuts | undefined {
  const [block] = plan.blocks;
  if (plan.blocks.length === 1 && block?.cut.as === 'lay') return planCuts(block.cut.plan);
  return plan.count <= MOST_COUNTED ? plan.cuts() : undefined;
}

/** `5 straight cuts, 245 sides to trace`; nothing where they are not told. */
export function cutsWords(cuts: Cuts | undefined): string {
  if (!cuts) return '';
  const { straight, traced } = cuts;
  const told = [
    straight > 0 ? many(straight, 'straight cut', 'straight cuts') : '',
    traced > 0 ? many(traced, 'side to trace', 'sides to trace') : '',
  ].filter((words) => words !== '');
  return told.length > 0 ? told.join(', ') : 'no cut';
}

export const cutsFigures = (cuts: Cuts | undefined): Record<string, Figure> =>
  cuts ? { straightCuts: count(cuts.straight), tracedSides: count(cuts.traced) } : {};

/** With its name: `Nested: 10 rows across, …`. */
export const namedPlanWords = (plan: CuttingPlan, say: Speech): string =>
  `${METHOD[plan.method]}: ${planWords(plan, say)}`;

/**
 * How the best plan is cut: a line for the whole, or one for each part with its size, in the order in which
 * they lie. Lines are counted on a phone, so the last two of four parts share one.
 */
export function blocksWords({ blocks }: BestPlan, say: Speech): string[] {
  const [only] = blocks;
  if (blocks.length === 1 && only?.cut.as === 'lay') return [`${namedPlanWords(only.cut.plan, say)}.`];
  if (blocks.length === 1 && only) return [`${capital(blockWords(only, say))}.`];
  const parts = blocks.map(
    (block) => `${say.size(block.width, block.length)}, ${grouped(block.count)}: ${blockWords(block, say)}`,
  );
  const last = parts.slice(2);
  return [...parts.slice(0, 2), ...(last.length > 0 ? [last.join('; then ')] : [])].map(
    (part, i) => `${i === 0 ? 'From' : 'Then'} ${part}.`,
  );
}

function blockWords({ cut, count: patches }: Block, say: Speech): string {
  switch (cut.as) {
    case 'lay':
      return cut.plan.method === 'strips'
        ? planWords(cut.plan, say)
        : namedPlanWords(cut.plan, say).replace(/^./, (letter) => letter.toLowerCase());
    case 'placed':
      return 'each patch in its own place, as drawn';
    case 'rows': {
      const { rows, direction, topAndTail, turnDegrees, step, lead, leads, rowSteps } = cut;
      const each = [Math.floor(patches / rows), Math.ceil(patches / rows)];
      const inRow = each[0] === each[1] ? `${each[0]} to a row` : `${each[0]} or ${each[1]} to a row`;
      const turn = turnDegrees % 180;
      return [
        `${many(rows, 'row', 'rows')} ${direction}, ${inRow}`,
        topAndTail ? 'top and tail' : '',
        turn > 1e-6 ? `turned ${decimal(turn, 1)}°` : '',
        patches > rows ? `one every ${say.length(step)}` : '',
        rows > 1 ? `a new row every ${rowStepWords(rowSteps, say)}` : '',
        rows > 1 && lead > 1e-3 ? `${leads} ${say.length(lead)} along` : '',
      ]
        .filter((words) => words !== '')
        .join(', ');
    }
  }
}

function rowStepWords([first, second]: readonly [number, number], say: Speech): string {
  if (Math.abs(first - second) < 1e-3) return say.length(first);
  return `${say.length(first)} and ${say.length(second)} by turns`;
}
