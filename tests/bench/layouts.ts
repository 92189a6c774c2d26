import { field } from '../../src/calculator/layouts/field.ts';
import type { PatchList } from '../../src/calculator/layouts/patches.ts';
import { tally } from '../../src/calculator/layouts/tally.ts';

/** One size of field, placed and tallied: patches, milliseconds at the median, nanoseconds a patch. */
export interface LayoutTiming {
  readonly patches: number;
  readonly milliseconds: number;
  readonly perPatch: number;
}

/** A square quilt whose covering takes about so many hexagons of one inch. */
function fieldOf(patches: number): PatchList {
  const side = Math.sqrt(patches * 2.598);
  const made = field({ width: side, height: side, edge: 1, rows: 'across', sides: 'whole' });
  if (!made.ok) throw new Error(made.problem.code);
  return made.value.patches;
}

const median = (times: number[]): number => times.sort((a, b) => a - b)[Math.floor(times.length / 2)]!;

/** Places and tallies a field of about so many patches, `runs` times after `warmUps`. */
export function timeField(patches: number, runs: number, warmUps = 2): LayoutTiming {
  const times: number[] = [];
  let placed = 0;
  for (let i = 0; i < runs + warmUps; i++) {
    const start = performance.now();
    const list = fieldOf(patches);
    const counted = tally(list);
    const taken = performance.now() - start;
    if (i >= warmUps) times.push(taken);
    placed = counted.total;
  }
  const milliseconds = median(times);
  return { patches: placed, milliseconds, perPatch: (milliseconds * 1e6) / placed };
}

/** The same from 1,000 to 1,000,000 patches, each with its cost a patch against the first's. */
export function timeGrowth(): (LayoutTiming & { ratio: number })[] {
  timeField(1_000, 200);
  const sizes: [number, number][] = [
    [1_000, 301],
    [10_000, 101],
    [100_000, 31],
    [990_000, 9],
  ];
  const timings = sizes.map(([patches, runs]) => timeField(patches, runs));
  return timings.map((timing) => ({ ...timing, ratio: timing.perPatch / timings[0]!.perPatch }));
}

/** Prints both. */
export function reportLayouts(print: (line: string) => void = console.log): void {
  const { patches, milliseconds } = timeField(50_000, 51);
  print(`/count field, ${patches} patches placed and tallied: ${milliseconds.toFixed(1)} ms at the median`);
  for (const { patches, milliseconds, perPatch, ratio } of timeGrowth()) {
    const cost = `${milliseconds.toFixed(2)} ms, ${perPatch.toFixed(0)} ns a patch, ${ratio.toFixed(2)} × the first`;
    print(`  ${patches} patches: ${cost}`);
  }
}

if (import.meta.main) reportLayouts();
