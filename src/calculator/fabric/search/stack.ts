import type { RowKind, Turned } from './row-kinds.ts';
import { type Roof, riseAt } from './touch.ts';

/** How a row of one kind stands on a row of another of the same period: each pair of patches that may meet. */
export interface Stack {
  readonly links: readonly Link[];
  readonly period: number;
  readonly width: number;
}

interface Link {
  readonly roof: Roof;
  /** How far the upper patch stands ahead of the lower one, with no lead. */
  readonly ahead: number;
}

export function stackOf({ roofs, width }: Turned, low: RowKind, high: RowKind): Stack {
  const links = low.stands.flatMap((lower) =>
    high.stands.map((upper) => ({
      roof: roofs[lower.tail ? 1 : 0][upper.tail ? 1 : 0],
      ahead: upper.at - lower.at,
    })),
  );
  return { links, period: low.period, width };
}

/** How far above the lower row the upper one must start, when it starts so much further along. */
export function riseOf({ links, period, width }: Stack, lead: number): number {
  let rise = 0;
  for (let k = 0; k < links.length; k++) {
    const { roof, ahead } = links[k]!;
    const at = ahead + lead;
    for (let along = at - Math.floor((at + width) / period) * period; along < width; along += period) {
      const here = riseAt(roof, along);
      if (here > rise) rise = here;
    }
  }
  return rise;
}

/** The leads, within one period, at which a corner comes to stand over a corner. */
export function cornerLeads({ links, period }: Stack): number[] {
  return links.flatMap(({ roof, ahead }) =>
    roof.along.map((along) => (((along - ahead) % period) + period) % period),
  );
}

/** Leads nearer to each other than this part of the period are not told apart. */
const HAIR = 1e-7;

/**
 * The lead at which a height is least. Between two neighbouring corner leads the height is the largest of
 * some straight lines, so it sinks from both ends to one lowest place; at a corner lead it may drop.
 */
export function lowestLead(
  corners: readonly number[],
  period: number,
  heightAt: (lead: number) => number,
): { lead: number; height: number } {
  const hair = HAIR * period;
  let best = { lead: 0, height: heightAt(0) };
  const consider = (lead: number): number => {
    const height = heightAt(lead);
    if (height < best.height - 1e-10 * period) best = { lead, height };
    return height;
  };
  const sorted = corners.toSorted((a, b) => a - b);
  for (let i = 0; i < sorted.length; i++) {
    const from = sorted[i]!;
    const to = sorted[i + 1] ?? sorted[0]! + period;
    consider(from);
    if (to - from > 4 * hair) sink(from + hair, to - hair, hair, heightAt, consider, () => best.height);
  }
  return best;
}

/** Follows the straight lines down from both ends until they meet at the lowest place. */
function sink(
  from: number,
  to: number,
  hair: number,
  heightAt: (lead: number) => number,
  consider: (lead: number) => number,
  known: () => number,
): void {
  let [low, high] = [from, to];
  let lowHeight = heightAt(low);
  let highHeight = heightAt(high);
  for (let tries = 0; tries < 12; tries++) {
    const down = (heightAt(low + hair) - lowHeight) / hair;
    const up = (highHeight - heightAt(high - hair)) / hair;
    if (down >= -1e-7) return void consider(low);
    if (up <= 1e-7) return void consider(high);
    const meet = (highHeight - lowHeight + down * low - up * high) / (down - up);
    const expected = lowHeight + down * (meet - low);
    if (expected >= known() - 1e-9 || meet <= low + hair || meet >= high - hair) return void consider(meet);
    const height = consider(meet);
    if (height <= expected + 1e-9) return;
    // Another line is higher there: it falls or rises, and the lowest place is on its lower side.
    const slope = (heightAt(meet + hair) - height) / hair;
    if (slope < 0) [low, lowHeight] = [meet, height];
    else [high, highHeight] = [meet, height];
  }
}
