import type { PlaywrightTestConfig } from '@playwright/test';

process.env['TZ'] = 'America/Chicago';

const browser = process.env['OFFPACE_CHROMIUM'];

/** The same Chromium, place, language and patience for every run with a browser. `npm test` finds the browser and names it. */
export const EVERY_BROWSER_RUN: PlaywrightTestConfig = {
  workers: 2,
  fullyParallel: true,
  forbidOnly: true,
  retries: 0,
  reporter: 'line',
  timeout: 60_000,
  expect: { timeout: 10_000 },
  outputDir: 'test-results',
  use: {
    browserName: 'chromium',
    headless: true,
    locale: 'en-US',
    timezoneId: 'America/Chicago',
    launchOptions: {
      ...(browser === undefined ? {} : { executablePath: browser }),
      args: ['--headless', '--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update'],
    },
  },
};
