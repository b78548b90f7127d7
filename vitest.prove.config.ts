import { defineConfig, mergeConfig } from 'vitest/config';
import { ProvedReporter } from './scripts/steps/proved-reporter.mjs';
import everyday from './vitest.config.ts';

// The long checks, whole: `npm test` runs a small seeded sample of each.
const long = defineConfig({ test: { testTimeout: 1_800_000, hookTimeout: 60_000, fileParallelism: false, reporters: ['default', new ProvedReporter()] } });
const merged = mergeConfig(everyday, long);

export default { ...merged, test: { ...merged.test, include: ['tests/**/*.prove.ts'] } };
