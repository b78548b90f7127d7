import { defineConfig } from '@playwright/test';
import { EVERY_BROWSER_RUN } from './tests/browser.config.ts';

// Paints docs/screens again: `npm run screens`.
export default defineConfig({ ...EVERY_BROWSER_RUN, testDir: 'tests/pictures', testMatch: '*.spec.ts' });
