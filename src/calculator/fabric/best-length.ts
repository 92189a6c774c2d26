import { MM_PER_INCH } from '../../measure/length.ts';
import type { CutPatch } from '../shapes/shape.ts';
import { type BestPlan, planFrom } from './best-plan.ts';
import type { Choice } from './search/choice.ts';
import { searched } from './search/search.ts';
import { type Ways, waysOf } from './search/ways.ts';
import { yardage } from './yardage.ts';

/** The least length of cloth for so many patches, and the plan that gives them. Inches. */
export interface BestLength {
  readonly length: number;
  readonly plan: BestPlan;
}

/** So much less cloth, in inches, must not give as many patches. */
const HAIR = 4e-7;
/** How near a length is drawn in; rows may be short by less than this and still count. */
const NEAR = 2e-8;
/** Lengths are first told apart by this part of a patch. */
const ROUGHLY = 1 / 16;

/**
 * The least length of cloth, of a usable width, from which the search gets so many patches; undefined where
 * not even one fits the width. It is never longer than the trade's, which may be handed in. Halving finds it
 * roughly. From there on, as long as the search finds the patches on a hair less, the length is drawn in to
 * the least at which that very way of cutting still gives them.
 */
export function bestLength(
  patch: CutPatch,
  pieces: number,
  width: number,
  known = tradeLength(patch, pieces, width),
): BestLength | undefined {
  if (known === undefined) return undefined;
  const ways = waysOf(patch);
  let [short, length] = [(pieces * patch.cut.area) / width - NEAR, known];
  while (length - short > ROUGHLY * ways.narrow) {
    const middle = (short + length) / 2;
    const enough = shortened(ways, pieces, width, short, middle);
    if (enough === undefined) short = middle;
    else length = enough;
  }
  for (;;) {
    const enough = shortened(ways, pieces, width, short, length - HAIR);
    if (enough === undefined) break;
    length = enough;
  }
  length = onMark(length, (mark) => searched(ways, width, mark, pieces - 1) !== undefined);
  let choice = searched(ways, width, length, pieces - 1)?.choice;
  // Drawn in by a hair too much, the search may miss on that length what it found on a longer one.
  for (let more = NEAR; !choice && length < known; more *= 2) {
    length = Math.min(known, length + more);
    choice = searched(ways, width, length, pieces - 1)?.choice;
  }
  if (!choice) throw new Error(`no plan gives ${pieces} on ${length}`);
  return { length, plan: planFrom(patch, { width, length }, 0, choice) };
}

function tradeLength(patch: CutPatch, pieces: number, width: number): number | undefined {
  const trade = yardage(patch, pieces, width);
  return trade.ok ? trade.value.best.length : undefined;
}

/** Lengths on these marks are met exactly: a ten-thousandth of an inch, a thousandth of a millimetre. */
const MARKS = [1e-4, 1e-3 / MM_PER_INCH];

/** A length that lies a hair above a mark is on the mark, if that is enough: shops sell by whole marks. */
function onMark(length: number, isEnough: (mark: number) => boolean): number {
  for (const step of MARKS) {
    const mark = Math.round(length / step) * step;
    if (mark < length && length - mark < HAIR / 4 && isEnough(mark)) return mark;
  }
  return length;
}

/** The least length at which the way of cutting that is best on some length is still enough, if it is. */
function shortened(ways: Ways, pieces: number, width: number, short: number, length: number) {
  const found = searched(ways, width, length, pieces - 1);
  return found && Math.min(length, drawnIn(found.choice, pieces, width, short, length) + NEAR);
}

function drawnIn(choice: Choice, pieces: number, width: number, short: number, enough: number): number {
  let [low, high] = [Math.min(short, enough), enough];
  while (high - low > NEAR / 4) {
    const middle = (low + high) / 2;
    if (choice.count(width, middle) >= pieces) high = middle;
    else low = middle;
  }
  return high;
}
