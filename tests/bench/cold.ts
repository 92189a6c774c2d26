import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { middle, shown } from './measure.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const RUNS = 21;

/** One ask as a whole process, beside the same Node doing nothing; turn by turn, so that both meet the same machine. */
export async function benchColdStart(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'honeycount-bench-'));
  const empty = join(folder, 'none.sqlite');
  const kept = join(folder, 'kept.sqlite');
  run(['src/entry.js', 'ask', '--data', kept, '/me set seam:3/8in']);
  const cases = [
    { named: '/cut, nothing kept yet', args: ['src/entry.js', 'ask', '--data', empty, '/cut hexagon 1in'] },
    { named: '/cut, defaults kept', args: ['src/entry.js', 'ask', '--data', kept, '/cut hexagon 1in'] },
    {
      named: '/count field 60x72 1in',
      args: ['src/entry.js', 'ask', '--data', empty, '/count field 60x72 1in'],
    },
  ];
  console.log('\nOne ask from cold, against the same Node running nothing (at most x 4)');
  for (const { named, args } of cases) {
    const [bare, asked]: [number[], number[]] = [[], []];
    for (let i = 0; i < 3; i++) run(args);
    for (let i = 0; i < RUNS; i++) {
      bare.push(run(['-e', '0']));
      asked.push(run(args));
    }
    const ratio = middle(asked.map((ms, i) => ms / (bare[i] ?? Number.NaN)));
    console.log(
      `${named.padEnd(28)} ${shown(middle(asked))} / ${shown(middle(bare))}   x ${ratio.toFixed(2)}`,
    );
  }
  rmSync(folder, { recursive: true });
}

function run(args: readonly string[]): number {
  const from = performance.now();
  const done = spawnSync(process.execPath, args, { cwd: ROOT, encoding: 'utf8' });
  const took = performance.now() - from;
  if (done.status !== 0)
    throw new Error(`${args.join(' ')} ended with ${done.status}: ${done.stderr}${done.stdout}`);
  return took;
}
