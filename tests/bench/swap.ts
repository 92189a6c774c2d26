import { matchSwap } from '../../src/guild/swap-match.ts';
import { madeUpSwap } from '../guild/swap/made-up.ts';
import { line, middle } from './measure.ts';

/** 300 members with 20 lines each, from many kinds and colours to one kind of which any will do. */
const SWAPS = [
  { named: '6 kinds, 10 colours', kinds: 6, words: 10, most: 12 },
  { named: '6 kinds, any colour', kinds: 6, words: 0, most: 12 },
  { named: '1 kind, any colour', kinds: 1, words: 0, most: 100 },
] as const;

const RUNS = 5;

/** A swap as large as a guild's may be is matched while its organiser waits. */
export function benchSwaps(): void {
  console.log('\nMatching a swap of 300 members with 20 lines each');
  for (const { named, ...of } of SWAPS) {
    const { offers, wants } = madeUpSwap(5, { members: 300, linesEach: 20, ...of });
    const times: number[] = [];
    let found = 0;
    for (let run = 0; run < RUNS; run++) {
      const from = performance.now();
      const match = matchSwap(offers, wants, { share: 0.2 });
      times.push(performance.now() - from);
      found = match.area / match.mostArea;
    }
    line(`${named}: ${(found * 100).toFixed(0)} % of what goes unfairly`, middle(times), 2000);
  }
}

if (import.meta.main) benchSwaps();
