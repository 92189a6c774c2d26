import { defineConfig } from 'vitest/config';

/** The tests against a real homeserver: longer, and with a server to install, so apart from the quick ones. */
export default defineConfig({
  test: {
    include: ['tests/whole/matrix/*.homeserver.ts'],
    testTimeout: 120_000,
    hookTimeout: 400_000,
    fileParallelism: false,
    // The member's client, the same library, talks to the console.
    onConsoleLog: (words) => /kills|started/.test(words),
  },
});
