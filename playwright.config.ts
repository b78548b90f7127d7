import { defineConfig } from '@playwright/test';
import { EVERY_BROWSER_RUN, IN_BOTH } from './tests/browser.config.ts';

export default defineConfig({ ...EVERY_BROWSER_RUN, testDir: 'tests/browser', testMatch: '*.spec.ts', projects: IN_BOTH, grepInvert: /@prove/ });
