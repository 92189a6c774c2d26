import { oneInchSeams } from '../src/calculator/stitching/rates.ts';
import type { Here } from '../src/chat/command.ts';
import { MOST_LOGS, paceOf } from '../src/guild/pace.ts';

/** Minutes a seam in force, and where they come from. */
export interface Pace {
  /** Minutes a seam of the length asked about; null where only common practice can tell. */
  readonly minutes: number | null;
  readonly from: 'given' | 'you' | 'logs' | 'guild' | 'usual';
  /** How many logs it was told from. */
  readonly logs?: number;
}

/** The pace said in the ask; else the one she set; else the one her logs have; else the guild's. */
export async function paceFor(said: number | undefined, edge: number, here: Here): Promise<Pace> {
  const { pace } = here.defaults;
  if (said !== undefined) return { minutes: said, from: 'given' };
  if (pace.from === 'you') return { minutes: pace.value, from: 'you' };
  const logs = await here.facts.challenges.timedLogs(here.guild, here.who.id, MOST_LOGS);
  const logged = paceOf(logs);
  if (logged) return { minutes: logged.perInchSeam * oneInchSeams(1, edge), from: 'logs', logs: logged.logs };
  return { minutes: pace.value, from: pace.from };
}

const WHOSE: Readonly<Record<Exclude<Pace['from'], 'logs' | 'usual'>, string>> = {
  given: 'The pace you gave',
  you: 'Your pace',
  guild: 'The guild’s pace',
};

/** Whose pace it is, in words. */
export const paceSource = ({ from, logs = 0 }: Pace): string =>
  from === 'logs' ? `Your pace from your last ${logs} logs` : from === 'usual' ? '' : WHOSE[from];
