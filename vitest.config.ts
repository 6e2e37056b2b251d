import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    setupFiles: ['tests/support/seed.ts'],
    // Otherwise one core of a small machine stands idle.
    maxWorkers: '100%',
  },
});
