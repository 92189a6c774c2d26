import { ceilingOf } from '../ceiling.ts';
import { type Choice, type Chosen, layChoice, splitChoice } from './choice.ts';
import { bestLay, gainsOf, growthOf, halved } from './growth.ts';
import type { Ways } from './ways.ts';
import { wholeOf } from './whole.ts';

/*
 * The search for the plan that wastes least. A piece of cloth is cut in one way as a whole; or cut straight
 * through once, anywhere, each part in one of the trade's ways; or a narrow remainder is cut off, as wide as
 * a few patches at most, and searched for everything, while the rest is cut in the trade's ways, in one part
 * or two. Each of these looks at all places where anything can change, so that a larger piece of cloth never
 * gives less than a smaller one, and both sides are treated alike.
 */

type Way = 'width' | 'length';

const WAYS: readonly Way[] = ['width', 'length'];

/** The most patches from a piece of cloth, if more than `beat`; otherwise undefined. */
export function searched(ways: Ways, width: number, length: number, beat = 0): Chosen | undefined {
  let best = simply(ways, width, length, beat);
  for (const way of WAYS) best = withRemainder(ways, way, width, length, best?.count ?? beat) ?? best;
  if (!isFar(ways, width, length)) return best;
  // Just past the limit, the part within it may still give more.
  const { far } = ways;
  return searched(ways, Math.min(width, far), Math.min(length, far), best?.count ?? beat) ?? best;
}

const isFar = ({ far }: Ways, width: number, length: number): boolean => width > far || length > far;

/** In one way as a whole, or in two parts in the trade's ways. */
function simply(ways: Ways, width: number, length: number, beat: number): Chosen | undefined {
  if (ceilingOf(ways.patch.cut.area, width, length) <= beat) return undefined;
  let best = wholeOf(ways, width, length, beat);
  if (isFar(ways, width, length)) return best;
  for (const way of WAYS) best = twoParts(ways, way, width, length, best?.count ?? beat) ?? best;
  return best;
}

function twoParts(ways: Ways, way: Way, width: number, length: number, beat: number): Chosen | undefined {
  const { lays, patch } = ways;
  const [side, fixed] = way === 'width' ? [width, length] : [length, width];
  const ceiling = ceilingOf(patch.cut.area, width, length);
  const { count, at } = halved(growthOf(lays, fixed, side, ceiling), side);
  if (count <= beat) return undefined;
  return { count, choice: partsChoice(ways, way, at, width, length) };
}

/** The two parts of a cut at a length, each in the way that gives the most. */
function partsChoice({ lays }: Ways, way: Way, at: number, width: number, length: number): Choice {
  const part = (part: number): Choice => {
    const laid = way === 'width' ? bestLay(lays, part, length) : bestLay(lays, width, part);
    return laid ? layChoice(laid.lay, laid.direction) : NOTHING;
  };
  const side = way === 'width' ? width : length;
  return at === 0 ? part(side) : splitChoice(way, at, part(at), part(side - at));
}

const NOTHING: Choice = { count: () => 0, blocks: () => [] };

/**
 * A narrow remainder is cut off one side. The main part need only be as wide as makes it gain; and as it
 * grows, the remainder can only give less than it gave before.
 */
function withRemainder(
  ways: Ways,
  way: Way,
  width: number,
  length: number,
  beat: number,
): Chosen | undefined {
  const { lays, narrow, patch } = ways;
  const [side, fixed] = way === 'width' ? [width, length] : [length, width];
  const sized = (part: number): [number, number] => (way === 'width' ? [part, length] : [width, part]);
  const start = Math.max(0, side - narrow);
  let best: Chosen | undefined;
  let known = beat;
  let before = -1;
  let restMost = ceilingOf(patch.cut.area, ...sized(side - start));
  // With no main part at all the cloth has been searched already.
  if (start === 0) restMost = Math.min(restMost, known);
  for (const at of [start, ...gainsOf(lays, start, side)]) {
    if (at === 0) continue;
    const rest = side - at;
    restMost = Math.min(restMost, ceilingOf(patch.cut.area, ...sized(rest)));
    if (ceilingOf(patch.cut.area, ...sized(at)) + restMost <= known) continue;
    const main = mainPart(ways, way, at, fixed);
    if (main.count <= before) continue;
    before = main.count;
    if (main.count + restMost <= known) continue;
    const remainder = simply(ways, ...sized(rest), known - main.count);
    restMost = Math.min(restMost, remainder ? remainder.count : known - main.count);
    if (!remainder) continue;
    known = main.count + remainder.count;
    best = { count: known, choice: splitChoice(way, at, main.choice(), remainder.choice) };
  }
  return best;
}

/** The main part in the trade's ways: whole, or in two parts across the side that is being cut. */
function mainPart(ways: Ways, way: Way, at: number, fixed: number): { count: number; choice: () => Choice } {
  const { lays, patch } = ways;
  if (at <= 0) return { count: 0, choice: () => NOTHING };
  const [width, length] = way === 'width' ? [at, fixed] : [fixed, at];
  if (isFar(ways, width, length)) {
    const laid = bestLay(lays, width, length);
    return { count: laid?.count ?? 0, choice: () => (laid ? layChoice(laid.lay, laid.direction) : NOTHING) };
  }
  const ceiling = ceilingOf(patch.cut.area, at, fixed);
  const { count, at: cut } = halved(growthOf(lays, at, fixed, ceiling), fixed);
  return { count, choice: () => partsChoice(ways, way === 'width' ? 'length' : 'width', cut, width, length) };
}
