import process from 'node:process';
import { expect, test } from 'vitest';
import { killAndKill } from './killing.ts';

/** So many kills, in so many guilds side by side. `npm run test:whole` has 200. */
const KILLS = Number(process.env.HONEYCOUNT_KILLS ?? 20);
const GUILDS = KILLS >= 100 ? 4 : 2;

const SEED = Number(process.env.HONEYCOUNT_SEED ?? Date.now() % 1_000_000);

test(
  `killed outright ${KILLS} times in the middle of logs and offers, nothing that was told is lost and nothing is there twice`,
  async () => {
    const survived = await Promise.all(
      Array.from({ length: GUILDS }, (_, guild) => killAndKill(KILLS / GUILDS, seeded(SEED + guild))),
    );
    for (const { acknowledged, wrongs } of survived) {
      expect(wrongs, `HONEYCOUNT_SEED=${SEED}`).toEqual([]);
      // Most kills come after an answer: a stream that got nowhere would prove nothing.
      expect(acknowledged, `HONEYCOUNT_SEED=${SEED}`).toBeGreaterThan(KILLS / GUILDS);
    }
  },
  120_000 + KILLS * 15_000,
);

function seeded(seed: number): () => number {
  let at = seed;
  return () => {
    at = (Math.imul(at ^ (at >>> 15), 0x2c1b3c6d) + 0x9e3779b9) >>> 0;
    return at / 4_294_967_296;
  };
}
