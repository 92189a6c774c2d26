import type { Answer, Here } from '../src/chat/command.ts';
import { isInfantBed } from '../src/measure/size.ts';

/** Common practice with ruler and rotary cutter, no source. */
const BLADE = 'close the blade after every cut, cut away from you, fingers off the ruler’s edge.';

/** The caution on blades, with the first cutting answer of the day. */
export const bladeCaution = (here: Here): string[] => (here.firstToday('blade') ? [BLADE] : []);

/** Breaks: five minutes an hour cut strain with no loss of work (NIOSH). */
const HANDS =
  'rest your hands five minutes in each hour. Numbness or pain at night: stop, and see a clinician.';

export const handsCaution = (): string[] => [HANDS];

/** Safe sleep, as paediatric and product-safety bodies advise. */
const CRIB =
  'no quilt in a crib with a baby under twelve months. For floor play while watched, or the wall. Follow local advice on safe sleep.';

export const cribCaution = (): string[] => [CRIB];

/** The caution where an infant's size was asked for by its name; beside a mistake nothing. */
export const withCribCaution = (answer: Answer, bed: string | undefined): Answer =>
  isInfantBed(bed) && !('problem' in answer)
    ? { ...answer, cautions: [...answer.cautions, ...cribCaution()] }
    : answer;
