import type { PlaywrightTestConfig } from '@playwright/test';

process.env['TZ'] = 'America/Chicago';

const browser = process.env['OFFPACE_CHROMIUM'];
/** Chromium without windows: half of the time. Left out, the whole browser does everything. */
const shell = process.env['OFFPACE_HEADLESS_SHELL'];

const ARGS = ['--headless', '--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update'];
const launched = (program: string | undefined) => ({ launchOptions: { ...(program === undefined ? {} : { executablePath: program }), args: ARGS } });

/** The same Chromium, place, language and patience for every run with a browser. `npm test` finds the browser and names it. */
export const EVERY_BROWSER_RUN: PlaywrightTestConfig = {
  // One more than the cores this is made for: a test waits for its pages often enough to leave one to another.
  workers: 3,
  fullyParallel: true,
  forbidOnly: true,
  retries: 0,
  // What failed stands at the end, where whoever sees only the last lines finds it.
  reporter: 'list',
  // Every wait is for something that comes: a machine at half its speed takes longer, and nothing is won by giving up before.
  timeout: 300_000,
  expect: { timeout: 25_000 },
  outputDir: 'test-results',
  use: {
    browserName: 'chromium',
    headless: true,
    locale: 'en-US',
    timezoneId: 'America/Chicago',
    ...launched(browser),
  },
};

/** Tests of what only a whole browser has: a page that is installed and kept, a screen that is held awake, a full screen. */
const WHOLE = /\/(?:glance-phone|let-in|wall-hangs)\.spec\.ts$/;

/** As many of them at a time as there are workers, whichever they run in. */
export const IN_BOTH: PlaywrightTestConfig['projects'] = [
  { name: 'screens', testIgnore: WHOLE, use: launched(shell ?? browser) },
  { name: 'whole browser', testMatch: WHOLE },
];
