import { defineConfig } from 'vitest/config';

/** The tests against a real homeserver: longer, and with a server to install, so apart from the quick ones. */
export default defineConfig({
  test: {
    globalSetup: 'tests/whole/matrix/one-homeserver.ts',
    include: ['tests/whole/matrix/*.homeserver.ts'],
    testTimeout: 120_000,
    hookTimeout: 60_000,
    // Much of the time is waiting; more at once would only make it longer.
    maxWorkers: 2,
  },
});
