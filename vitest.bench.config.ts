import { defineConfig } from 'vitest/config';

// Measurements, one at a time; each fails when the ratio that it is about is missed.
export default defineConfig({
  test: { include: ['tests/bench/*.bench.ts'], fileParallelism: false, testTimeout: 300_000, allowOnly: false },
});
