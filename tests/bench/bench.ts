import { benchAsks } from './asks.ts';
import { benchChallenges } from './challenge.ts';
import { benchColdStart } from './cold.ts';
import { benchDiscord } from './discord.ts';
import { benchGrowth } from './growth.ts';
import { benchPictures } from './pictures.ts';
import { benchSwaps } from './swap.ts';
import { benchYield } from './yield.ts';

/** `npm run bench`: every figure of one run on one machine; ratios are what carries over to another. */
await benchAsks();
await benchGrowth();
await benchPictures();
benchYield();
await benchChallenges();
benchSwaps();
await benchDiscord();
await benchColdStart();
