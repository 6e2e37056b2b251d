import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    setupFiles: ['tests/support/seed.ts'],
    // Nothing here keeps a state that another file could see, and loading the sources anew for each takes minutes.
    isolate: false,
    // Otherwise one core of a small machine stands idle.
    maxWorkers: '100%',
  },
});
