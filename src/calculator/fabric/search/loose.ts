import { TOLERANCE } from '../../../measure/result.ts';
import type { Pattern } from './pattern.ts';
import { FAR, patternWith, type Stacks } from './patterns.ts';
import type { Roof } from './touch.ts';

/**
 * Rows that are not as close along as they could be, so that each sinks deeper into the one below: where a
 * piece of cloth is a little wider than the patches of a row, the rest is shared out between them and the
 * cloth holds more rows. Each row's patches stand over the gaps of the row below, as far from the tops on
 * both sides as can be: the wider the gap, the less the rise, until the next row but one is in the way.
 */
export interface Loose {
  readonly stacks: Stacks;
  /** Where a patch of the second row stands over the first row, from the middle of its gap. */
  readonly aside: number;
  /** At this period rows stand as close as they ever will. */
  readonly widest: number;
  /** The rise of a pair of rows at equal steps from the closest period to the widest. */
  readonly rises: readonly number[];
}

const STEPS = 32;

/**
 * The rows as they can be loosened; undefined where a patch's top and bottom lie so far apart along the row
 * that no place in the gap suits both.
 */
export function looseOf(stacks: Stacks): Loose | undefined {
  const { turned, up, on, low } = stacks;
  const [top, bottom] = [peakOf(up.links[0]!.roof), -peakOf(on.links[0]!.roof)];
  if (Math.abs(top - bottom) > low.period) return undefined;
  const aside = (top + bottom) / 2;
  const pairAt = (period: number) => {
    const { rises } = widened(stacks, aside, period);
    return rises[0] + rises[1];
  };
  const widest = leastPeriod(
    low.period,
    2 * (turned.width + Math.abs(aside)),
    (period) => pairAt(period) <= turned.height * (1 + TOLERANCE),
  );
  if (widest <= low.period * (1 + TOLERANCE)) return undefined;
  const rises = Array.from({ length: STEPS + 1 }, (_, i) =>
    pairAt(low.period + (i / STEPS) * (widest - low.period)),
  );
  return { stacks, aside, widest, rises };
}

/** Where along it a roof is highest: the middle of its ridge. */
function peakOf({ along, high }: Roof): number {
  const peak = Math.max(...high);
  const peaks = along.filter((_, i) => high[i]! > peak - 1e-9);
  return (peaks[0]! + peaks.at(-1)!) / 2;
}

/** The least of a range at which something comes true and stays so. */
function leastPeriod(from: number, to: number, isSo: (period: number) => boolean): number {
  if (isSo(from)) return from;
  let [low, high] = [from, to];
  while (high - low > TOLERANCE * high) {
    const middle = (low + high) / 2;
    if (isSo(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** The rows at their widest useful period: of use on every larger piece of cloth. */
export const widestPattern = ({ stacks, aside, widest }: Loose): Pattern => widened(stacks, aside, widest);

/**
 * The patterns that just fill a length of cloth, with one patch less in each second row or with as many, from
 * the most patches a row down to the widest useful period. Those that cannot give more than `beat` are left
 * out.
 */
export function filling(loose: Loose, along: number, deep: number, beat: number): Pattern[] {
  const { stacks, aside, widest } = loose;
  const { width, height } = stacks.turned;
  const room = Math.min(along, FAR * Math.max(width, height)) - width;
  const { period } = stacks.low;
  const patterns: Pattern[] = [];
  if (room < 0) return patterns;
  for (let many = Math.floor(room / period + TOLERANCE) + 1; many >= 1; many--) {
    const periods = [(room - aside) / (many - 0.5), (room + aside) / (many - 0.5), room / (many - 1)];
    if (periods[0]! >= widest && periods[1]! >= widest) break;
    periods.forEach((wide, i) => {
      if (wide <= period * (1 + TOLERANCE) || wide >= widest) return;
      if (i === 1 && aside === 0) return;
      const pairs = (2 * (deep - height)) / leastRise(loose, wide);
      const rows = Math.floor(pairs + TOLERANCE) + 2;
      const most = i < 2 ? rows * many : rows * many - Math.floor(rows / 2);
      if (most > beat) patterns.push(widened(stacks, aside, wide));
    });
  }
  return patterns;
}

/** No less than this is the rise of a pair of rows: what it is at the next wider step. */
function leastRise({ stacks, widest, rises }: Loose, period: number): number {
  const closest = stacks.low.period;
  const step = Math.ceil(((period - closest) / (widest - closest)) * STEPS);
  return rises[Math.min(STEPS, Math.max(0, step))]!;
}

function widened(stacks: Stacks, aside: number, period: number): Pattern {
  const { up, on, lows, highs, low, high } = stacks;
  return patternWith(
    {
      ...stacks,
      low: { ...low, period },
      high: { ...high, period },
      up: { ...up, period },
      on: { ...on, period },
      lows: { ...lows, period },
      highs: { ...highs, period },
    },
    (aside + 1.5 * period) % period,
    0,
  );
}
