import { countField } from '../../commands/layouts.ts';
import { median, shown } from './measure.ts';

/** Squares that take about a thousand, ten thousand … a million hexagons of 1 in. */
const SQUARES = [
  { named: '1k', side: 50.2 },
  { named: '10k', side: 160 },
  { named: '100k', side: 508.5 },
  { named: '1M', side: 1606 },
] as const;

/** The cost of a count should grow with its patches and no faster. */
export async function benchGrowth(): Promise<void> {
  console.log('\nA count grows with its patches: time a patch, as a ratio to 10k');
  const each: { named: string; total: number; ms: number }[] = [];
  for (const { named, side } of SQUARES) {
    let total = 0;
    const work = () => {
      const made = countField({ width: side, height: side, edge: 1, rows: 'across', sides: 'cover' });
      if (!made.ok) throw new Error(`${named}: ${made.problem.code}`);
      total = made.value.counted.total;
    };
    each.push({ named, ms: await median(work, { runs: named === '1M' ? 7 : 31, warm: 5 }), total });
  }
  const base = each[1]!;
  for (const { named, total, ms } of each) {
    const ratio = ms / total / (base.ms / base.total);
    console.log(
      `${named.padEnd(6)} ${String(total).padStart(9)} patches ${shown(ms).padStart(10)}   x ${ratio.toFixed(2)}`,
    );
  }
}
