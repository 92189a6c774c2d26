import { defineConfig } from 'vitest/config';

/** `npm run test:print`: needs pdftoppm (Debian's poppler-utils), so it is not among the tests of `npm cit`. */
export default defineConfig({
  test: {
    include: ['tests/print/**/*.test.ts'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
