import type { SheetName } from '../src/calculator/plan/papers.ts';
import type { Here } from '../src/chat/command.ts';

/** Where one measures in centimetres or millimetres, or asks in them, one prints on A4. */
export const sheetFor = ({ defaults, say }: Pick<Here, 'defaults' | 'say'>): SheetName =>
  defaults.unit.value === 'in' && say.reading !== 'metric' ? 'letter' : 'a4';
