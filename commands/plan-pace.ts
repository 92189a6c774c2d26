import type { PlanWish } from '../src/calculator/plan/wish.ts';
import { oneInchSeams } from '../src/calculator/stitching/rates.ts';
import type { Here } from '../src/chat/command.ts';
import { decimal } from '../src/measure/ruler.ts';
import { whose } from './assumed.ts';
import { paceFor } from './own-pace.ts';

/** Whose hands sew it: the asker's own, or those of whoever gets a kit. */
export type Sewer = 'asker' | 'anyone';

/** The minutes a seam that a wish is worked out with, and how that is said; no words where none are in force. */
export interface PlanPace {
  readonly said: Pick<PlanWish, 'pace' | 'paceFrom'>;
  readonly words: readonly string[];
}

const NONE: PlanPace = { said: {}, words: [] };

/** A new wish takes the asker's pace as /time does; a kept one keeps its own; a kit takes nobody's own. */
export async function planPace(
  edge: number,
  base: PlanWish | null,
  sewer: Sewer,
  here: Here,
): Promise<PlanPace> {
  if (sewer === 'anyone') return guildPace(here);
  if (base) return { said: keptPace(base, edge), words: [] };
  const { minutes, from, logs = 0 } = await paceFor(undefined, edge, here);
  if (minutes === null) return NONE;
  const each = `${decimal(minutes, 2)} min a seam`;
  if (from === 'logs')
    return { said: { pace: minutes, paceFrom: 'logs' }, words: [`${each} from your last ${logs} logs`] };
  return { said: { pace: minutes }, words: [`${whose(here.defaults.pace.from)}${each}`] };
}

function guildPace({ defaults: { pace } }: Here): PlanPace {
  if (pace.from !== 'guild' || pace.value === null) return NONE;
  return { said: { pace: pace.value }, words: [`the guild’s ${decimal(pace.value, 2)} min a seam`] };
}

/** A pace from logs goes with the length of the seam, as in /time; one that was set is for any seam. */
function keptPace({ pace, paceFrom, edge: was }: PlanWish, edge: number): PlanPace['said'] {
  if (pace === undefined) return {};
  if (paceFrom === undefined) return { pace };
  return { pace: (pace * oneInchSeams(1, edge)) / oneInchSeams(1, was), paceFrom };
}
