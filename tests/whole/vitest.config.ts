import { defineConfig } from 'vitest/config';

/** `npm run test:whole`: the program killed 200 times; `npm cit` has a short version of it. */
export default defineConfig({
  test: {
    include: ['tests/whole/kills.test.ts'],
    env: { HONEYCOUNT_KILLS: '200' },
    testTimeout: 600_000,
  },
});
