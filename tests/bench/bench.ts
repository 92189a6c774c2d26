import { benchAsks } from './asks.ts';
import { benchChallenges } from './challenge.ts';
import { benchColdStart } from './cold.ts';
import { benchDiscord } from './discord.ts';
import { benchGrowth } from './growth.ts';
import { benchPictures } from './pictures.ts';
import { benchSwaps } from './swap.ts';
import { benchYield } from './yield.ts';

const BENCHES: Readonly<Record<string, () => unknown>> = {
  asks: benchAsks,
  growth: benchGrowth,
  pictures: benchPictures,
  yield: benchYield,
  challenges: benchChallenges,
  swaps: benchSwaps,
  discord: benchDiscord,
  cold: benchColdStart,
};

/** These take minutes, and are run when they are named: `npm run bench -- matrix`. */
const LONG: typeof BENCHES = {
  matrix: async () => (await import('./matrix.ts')).benchMatrix(),
};

// Stopped by hand, it takes along what it started.
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => process.exit(1));

/** `npm run bench`: every figure of one run on one machine; ratios are what carries over to another. */
const all = { ...BENCHES, ...LONG };
const named = process.argv.slice(2);
const unknown = named.filter((name) => !Object.hasOwn(all, name));
if (unknown.length > 0) {
  console.error(`I know no bench ‘${unknown[0]}’. There is ${Object.keys(all).join(', ')}.`);
  process.exit(2);
}
for (const name of named.length > 0 ? named : Object.keys(BENCHES)) await all[name]?.();
if (named.length === 0)
  for (const name of Object.keys(LONG))
    console.log(`\n${name}: by name alone, as it takes minutes: npm run bench -- ${name}`);
