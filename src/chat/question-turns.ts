import { BORDER_TURNS } from './questions/border.ts';
import { CLOTH_TURNS } from './questions/cloth.ts';
import { FINISH_TURNS } from './questions/finish.ts';
import { GARDEN_TURNS } from './questions/garden.ts';
import { LAYOUT_TURNS } from './questions/layout.ts';
import { PATCH_TURNS, SHAPE_TURNS } from './questions/patch.ts';
import { ROW_TURNS } from './questions/row.ts';
import { SIZE_TURNS } from './questions/size.ts';
import { TIME_TURNS } from './questions/time.ts';
import type { Turn } from './questions/turn.ts';

/** From the top. Where two would take the same words, the first has them. */
export const TURNS: readonly Turn[] = [
  ...SHAPE_TURNS,
  ...ROW_TURNS,
  ...LAYOUT_TURNS,
  ...SIZE_TURNS,
  ...CLOTH_TURNS,
  ...PATCH_TURNS,
  ...GARDEN_TURNS,
  ...TIME_TURNS,
  ...BORDER_TURNS,
  ...FINISH_TURNS,
];
