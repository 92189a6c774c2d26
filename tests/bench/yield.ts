import { bestPlan } from '../../src/calculator/fabric/best-plan.ts';
import { type Yield, yieldFrom } from '../../src/calculator/fabric/yield.ts';
import { cutPatch } from '../../src/calculator/shapes/cut.ts';
import type { CutPatch, Dimensions, ShapeName } from '../../src/calculator/shapes/shape.ts';
import { middle, shown } from './measure.ts';

/** Pieces of cloth by name: usable width × length in inches. */
const CLOTHS = [
  ['fat quarter', 18, 21],
  ['fat eighth', 9, 21],
  ['5 in square', 5, 5],
  ['10 in square', 10, 10],
  ['2½ in strip', 42, 2.5],
  ['¼ yd', 42, 9],
  ['½ yd', 42, 18],
  ['1 yd at 40 in', 40, 36],
  ['1 yd', 42, 36],
  ['1 m of 110 cm', 1100 / 25.4, 1000 / 25.4],
] as const;

/** Patches by name: shape and finished sizes in inches, pointed, with ¼ in seams. */
const PATCHES: readonly (readonly [ShapeName, readonly (number | Dimensions)[]])[] = [
  ['hexagon', [1 / 2, 3 / 4, 1, 1.25, 1.5]],
  ['diamond', [1, 1.5]],
  ['triangle', [1.5, 2]],
  ['half-hexagon', [1.5]],
  ['half-hexagon-flats', [1]],
  ['kite', [2]],
  ['third', [1.5]],
  ['rectangle', [{ edge: 1.5, side: 2.25 }]],
  ['long-hexagon', [{ edge: 1, side: 2 }]],
  ['diamond45', [1.5]],
  ['octagon', [1]],
  ['pentagon', [1]],
  ['tumbler', [2]],
  ['apple-core', [2]],
];

interface Case {
  readonly name: string;
  readonly width: number;
  readonly length: number;
  /** The patch, its edge longer by a hair: another one each time, so that nothing is remembered of it. */
  readonly patch: (hair: number) => CutPatch;
}

/** 200 cases: every patch from every piece. */
export const CASES: readonly Case[] = PATCHES.flatMap(([shape, sizes]) =>
  sizes.flatMap((size) =>
    CLOTHS.map(([cloth, width, length]) => {
      const dimensions = typeof size === 'number' ? { edge: size } : size;
      return {
        name: `${shape} ${dimensions.edge} in from a ${cloth}`,
        ...{ width, length },
        patch: (hair) => cutPatch(shape, { ...dimensions, edge: dimensions.edge + hair }, 1 / 4, 'pointed'),
      };
    }),
  ),
);

interface Outcome {
  readonly name: string;
  readonly trade: Yield;
  readonly best: number;
  readonly ms: number;
}

/** Every case from nothing: the patch's ways worked out, the cloth searched. Where no patch fits, there is no ratio. */
function outcomes(run: number): Outcome[] {
  return CASES.flatMap(({ name, width, length, patch }, i) => {
    const piece = patch(-1e-12 * (run * CASES.length + i));
    const from = performance.now();
    const best = bestPlan(piece, { width, length })?.count ?? 0;
    const ms = performance.now() - from;
    const trade = yieldFrom(piece, { width, length });
    return best === 0 ? [] : [{ name, trade, best, ms }];
  });
}

/** The yield as a share of the area ceiling: by strips, by plain nesting, by the trade's best, by the search. */
export function benchYield(): void {
  outcomes(1);
  const all = outcomes(2);
  console.log(
    `\nYield by the area ceiling, ${CASES.length} cases (${CASES.length - all.length} too small for one patch)`,
  );
  const lines: readonly (readonly [string, (one: Outcome) => number])[] = [
    ['strips', ({ trade }) => trade.strips],
    ['plain nesting', ({ trade }) => trade.nested ?? trade.strips],
    ['the trade’s best', ({ trade }) => trade.best],
    ['the search', ({ best }) => best],
  ];
  for (const [name, countOf] of lines) {
    const ratios = all.map((one) => countOf(one) / one.trade.ceiling);
    const worst = Math.min(...ratios);
    const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
    console.log(
      `${name.padEnd(18)} mean ${mean.toFixed(4)}   worst ${worst.toFixed(3)} (${all[ratios.indexOf(worst)]!.name})`,
    );
  }
  const more = all.filter(({ trade, best }) => best > trade.best).length;
  console.log(
    `more than the trade’s best in ${more} of ${all.length} cases, never less: ${all.every(({ trade, best }) => best >= trade.best)}`,
  );
  const times = all.map(({ ms }) => ms);
  const median = middle(times);
  console.log(
    `time a case        ${shown(median)} at the median, ${shown(Math.max(...times))} at the most   ${median <= 50 ? 'within' : 'OVER'} 50 ms`,
  );
}

if (import.meta.main) benchYield();
