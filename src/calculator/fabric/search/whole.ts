import { inSquares } from '../known/known.ts';
import type { Direction } from '../plan.ts';
import { type Chosen, fittedChoice, layChoice, patternChoice } from './choice.ts';
import { bestLay } from './growth.ts';
import { filling, type Loose } from './loose.ts';
import { fitOf, mostOf, type Pattern } from './pattern.ts';
import type { Ways } from './ways.ts';

/** The best that a piece of cloth gives when the whole of it is cut in one way; undefined if no more than `beat`. */
export function wholeOf(ways: Ways, width: number, length: number, beat: number): Chosen | undefined {
  let best: Chosen | undefined;
  let known = beat;
  const consider = (chosen: Chosen | undefined): void => {
    if (chosen === undefined || chosen.count <= known) return;
    best = chosen;
    known = chosen.count;
  };
  const laid = bestLay(ways.lays, width, length);
  if (laid) consider({ count: laid.count, choice: layChoice(laid.lay, laid.direction) });
  consider(inRowsOf(ways.patterns, 'across', width, length, known));
  consider(inRowsOf(ways.patterns, 'lengthwise', length, width, known));
  for (const loose of ways.loose) {
    consider(loosened(loose, 'across', width, length, known));
    consider(loosened(loose, 'lengthwise', length, width, known));
  }
  if (ways.known) consider(inSquares(ways.known, width, length, known));
  return best;
}

function inRowsOf(
  patterns: readonly Pattern[],
  direction: Direction,
  along: number,
  deep: number,
  beat: number,
): Chosen | undefined {
  let best: Pattern | undefined;
  let known = beat;
  for (let i = 0; i < patterns.length; i++) {
    const pattern = patterns[i]!;
    if (mostOf(pattern, along, deep) <= known) continue;
    const { count } = fitOf(pattern, along, deep);
    if (count <= known) continue;
    best = pattern;
    known = count;
  }
  return best && { count: known, choice: patternChoice(best, direction) };
}

function loosened(
  loose: Loose,
  direction: Direction,
  along: number,
  deep: number,
  beat: number,
): Chosen | undefined {
  const best = bestFilling(loose, along, deep, beat);
  if (!best) return undefined;
  const again = (other: number, depth: number) => bestFilling(loose, other, depth, 0)?.pattern;
  return { count: best.count, choice: fittedChoice(direction, again) };
}

function bestFilling(loose: Loose, along: number, deep: number, beat: number) {
  let best: { pattern: Pattern; count: number } | undefined;
  for (const pattern of filling(loose, along, deep, beat)) {
    const { count } = fitOf(pattern, along, deep);
    if (count > (best?.count ?? beat)) best = { pattern, count };
  }
  return best;
}
