import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // They need pdftoppm, and have a script of their own.
    exclude: ['tests/print/**', '**/node_modules/**'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
