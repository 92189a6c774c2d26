import { benchAsks } from './asks.ts';
import { benchChallenges } from './challenge.ts';
import { benchColdStart } from './cold.ts';
import { benchGrowth } from './growth.ts';

/** `npm run bench`: every figure of one run on one machine; ratios are what carries over to another. */
await benchAsks();
await benchGrowth();
await benchChallenges();
await benchColdStart();
