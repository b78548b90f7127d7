import { defineConfig } from 'vitest/config';

// Read by every worker when it starts: a place far from Greenwich with summer time shows where a date was mistaken for a day.
process.env['TZ'] = 'America/Chicago';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**', 'tests/house/fixtures/**'],
    setupFiles: ['tests/quiet.ts', 'web/words/of-desk.ts'],
    maxWorkers: 2,
    // What is loaded once serves all files of a process: loading it for each file took more than half of the time of their tests.
    isolate: false,
    allowOnly: false,
    testTimeout: 20_000,
    hookTimeout: 20_000,
  },
});
