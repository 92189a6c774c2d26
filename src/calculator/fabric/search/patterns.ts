import type { Pattern } from './pattern.ts';
import { allOneWay, type RowKind, type Turned, topAndTail } from './row-kinds.ts';
import { cornerLeads, lowestLead, riseOf, type Stack, stackOf } from './stack.ts';

/**
 * The patterns of a patch at one turn: rows that all lie one way and rows of top and tail; each set straight
 * above each other, or to and fro, or ever further along, as close as they go. A patch that is the same when
 * turned half round needs but the first.
 */
export function patternsAt(turned: Turned, isSameHalfRound: boolean): Pattern[] {
  const heads = allOneWay(turned);
  if (isSameHalfRound) return stacked(turned, heads, heads);
  const both = topAndTail(turned);
  return [...stacked(turned, heads, allOneWay(turned, true)), ...stacked(turned, both, both)];
}

/**
 * Past so many patches, one way or the other, cloth is cut in rows that repeat and a remainder: what else a
 * search would find there is a smaller and smaller part of it.
 */
export const FAR = 60;

/** Two kinds of row and how they stand on each other, themselves and the other. */
export interface Stacks {
  readonly turned: Turned;
  readonly low: RowKind;
  readonly high: RowKind;
  readonly up: Stack;
  readonly on: Stack;
  readonly lows: Stack;
  readonly highs: Stack;
}

export const stacksOf = (turned: Turned, low: RowKind, high: RowKind): Stacks => ({
  turned,
  low,
  high,
  up: stackOf(turned, low, high),
  on: stackOf(turned, high, low),
  lows: stackOf(turned, low, low),
  highs: stackOf(turned, high, high),
});

function stacked(turned: Turned, low: RowKind, high: RowKind): Pattern[] {
  const stacks = stacksOf(turned, low, high);
  const { up, on } = stacks;
  const { period } = low;
  const [ups, ons] = [cornerLeads(up), cornerLeads(on)];
  const back = (lead: number) => (period - lead) % period;
  const toAndFro = lowestLead([...ups, ...ons.map(back)], period, (lead) => {
    const rises = risesOf(stacks, lead, 0);
    return rises[0] + rises[1];
  });
  const furtherUp = lowestLead(ups, period, (lead) => riseOf(up, lead));
  const furtherOn = low === high ? furtherUp : lowestLead(ons, period, (lead) => riseOf(on, lead));
  const slide = (furtherUp.lead + furtherOn.lead) % period;
  const patterns = [patternWith(stacks, toAndFro.lead, 0)];
  if (low === high && toAndFro.lead > 0) patterns.push(patternWith(stacks, 0, 0));
  if (slide > 1e-9 * period) patterns.push(patternWith(stacks, furtherUp.lead, slide));
  return patterns;
}

/**
 * How far each row must stand above the last, when the second kind leads by so much and each next pair
 * starts further along by the slide: close, and clear of all rows below that are not wholly below.
 */
export function risesOf(
  { turned, up, on, lows, highs }: Stacks,
  lead: number,
  slide: number,
): [number, number] {
  const first = riseOf(up, lead);
  let pair = 0;
  for (let n = 1; n === 1 || n * pair - first < turned.height; n++) {
    const slid = n * slide;
    pair = Math.max(
      pair,
      riseOf(lows, slid) / n,
      riseOf(highs, slid) / n,
      (riseOf(up, slid + lead) - first) / n,
      (riseOf(on, slid - lead) + first) / n,
    );
  }
  return [first, pair - first];
}

export function patternWith(stacks: Stacks, lead: number, slide: number): Pattern {
  const { turnDegrees, width, height, origins } = stacks.turned;
  const { low, high } = stacks;
  const led = high.stands.map(({ at, tail }) => ({ at: at + lead, tail }));
  return {
    ...{ turnDegrees, width, height, origins, slide },
    deepest: slide === 0 ? Number.POSITIVE_INFINITY : FAR * Math.max(width, height),
    period: low.period,
    rows: [low.stands, low === high && lead === 0 ? low.stands : led],
    rises: risesOf(stacks, lead, slide),
  };
}
