import { ok, type Result, TOLERANCE } from '../../measure/result.ts';
import type { Arrangement } from '../layouts/arrangement.ts';
import { countedFrom } from '../layouts/counted.ts';
import type { Layout } from '../layouts/layout.ts';
import type { PlanSize } from './wish.ts';

type Make = (arrangement: Arrangement) => Result<Layout>;

const inRows = (rows: number, perRow: number): Arrangement => ({ kind: 'rows', rows, perRow });

/**
 * The least staggered rows whose outermost points reach as wide and as high as the quilt. Found by making
 * them: first guessed from the step between neighbours, then set right one at a time.
 */
export function asManyAsFill(quilt: PlanSize, edge: number, make: Make): Result<Arrangement> {
  const size = (rows: number, perRow: number) => countedFrom(make(inRows(rows, perRow)), edge);
  const reaches = (rows: number, perRow: number): Result<{ wide: boolean; high: boolean }> => {
    const made = size(rows, perRow);
    if (!made.ok) return made;
    const { width, height } = made.value;
    return ok({ wide: width >= quilt.width - TOLERANCE, high: height >= quilt.height - TOLERANCE });
  };
  const guess = firstGuess(quilt, size);
  if (!guess.ok) return guess;
  let { rows, perRow } = guess.value;
  for (;;) {
    const now = reaches(rows, perRow);
    if (!now.ok) return now;
    if (now.value.wide && now.value.high) break;
    if (!now.value.wide) perRow++;
    if (!now.value.high) rows++;
  }
  return fewest(rows, perRow, reaches);
}

type Size = (rows: number, perRow: number) => ReturnType<typeof countedFrom>;

/** Rows and places a little under what the steps between neighbours promise. */
function firstGuess({ width, height }: PlanSize, size: Size): Result<{ rows: number; perRow: number }> {
  const [one, wider, higher] = [size(1, 1), size(1, 2), size(2, 1)];
  if (!one.ok) return one;
  if (!wider.ok) return wider;
  if (!higher.ok) return higher;
  const across = wider.value.width - one.value.width;
  const down = higher.value.height - one.value.height;
  return ok({
    rows: Math.max(1, Math.floor((height - one.value.height) / down)),
    perRow: Math.max(1, Math.floor((width - one.value.width) / across)),
  });
}

function fewest(
  rows: number,
  perRow: number,
  reaches: (rows: number, perRow: number) => Result<{ wide: boolean; high: boolean }>,
): Result<Arrangement> {
  let [r, p] = [rows, perRow];
  const enough = (a: number, b: number): boolean => {
    const made = reaches(a, b);
    return made.ok && made.value.wide && made.value.high;
  };
  while (r > 1 && enough(r - 1, p)) r--;
  while (p > 1 && enough(r, p - 1)) p--;
  return ok(inRows(r, p));
}
