import { defineConfig } from '@playwright/test';
import { EVERY_BROWSER_RUN, IN_BOTH } from './tests/browser.config.ts';

// What `npm test` leaves to `npm run prove`: screens in their other states, themes and languages.
export default defineConfig({ ...EVERY_BROWSER_RUN, testDir: 'tests/browser', testMatch: '*.spec.ts', projects: IN_BOTH, grep: /@prove/ });
