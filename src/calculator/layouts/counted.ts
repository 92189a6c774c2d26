import { ok, type Result } from '../../measure/result.ts';
import { finishedSize, type Layout } from './layout.ts';
import { type Tally, tally } from './tally.ts';

/** A layout with what was counted from it, and its finished size in inches. */
export interface Counted<L extends Layout = Layout> {
  readonly layout: L;
  readonly counted: Tally;
  readonly width: number;
  readonly height: number;
  readonly edge: number;
}

/** Counts a layout once: everything a reply says of it is read from here. */
export function countedFrom<L extends Layout>(made: Result<L>, edge: number): Result<Counted<L>> {
  if (!made.ok) return made;
  const counted = tally(made.value.patches);
  const { width, height } = finishedSize(made.value, counted, edge);
  return ok({ layout: made.value, counted, width, height, edge });
}
