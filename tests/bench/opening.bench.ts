import { chromium } from '@playwright/test';
import { expect, onTestFinished, test } from 'vitest';
import { EVERY_BROWSER_RUN } from '../browser.config.ts';
import { longSession, MOUND, SESSION } from './long-session.ts';
import { report } from './measure.ts';
import { seededFolder, serverOver } from './seeded-server.ts';

const THROWS = 10_000;
const MOST_MS = 1000;
const TIMES = 3;

// A time, not a ratio: staff who open a recording wait as long on a slow machine.
test(`a session of ${THROWS} throws opens in Playback, up to its first picture, in under ${MOST_MS} ms`, async () => {
  const seeded = seededFolder([[MOUND, longSession(THROWS, 'summary')]]);
  onTestFinished(seeded.remove);
  const startedMs = performance.now();
  const server = await serverOver(seeded.folder);
  onTestFinished(server.close);
  report(`a server over it starts in ${(performance.now() - startedMs).toFixed(0)} ms`);
  const browser = await chromium.launch(EVERY_BROWSER_RUN.use?.launchOptions);
  onTestFinished(() => browser.close());
  const page = await browser.newPage();
  await page.goto(`${server.address}/playback`);
  await page.locator('.session-list table').waitFor();
  const tookMs: number[] = [];
  const wholeMs: number[] = [];
  for (let time = 0; time < TIMES; time += 1) {
    const askedMs = performance.now();
    // oxlint-disable-next-line no-await-in-loop -- one after the other is what is measured
    await page.goto(`${server.address}/playback/${SESSION}`, { waitUntil: 'commit' });
    // oxlint-disable-next-line no-await-in-loop -- the same
    await page.locator('main.player svg').first().waitFor();
    tookMs.push(performance.now() - askedMs);
    // oxlint-disable-next-line no-await-in-loop -- the same
    await page.locator('main.player .session-strip .ticks path').first().waitFor();
    wholeMs.push(performance.now() - askedMs);
  }
  const askedMs = performance.now();
  const bytes = (await (await fetch(`${server.address}/api/sessions/${SESSION}`)).text()).length;
  report(`opened in ${tookMs.map((ms) => ms.toFixed(0)).join(', ')} ms, with all of its ticks in ${wholeMs.map((ms) => ms.toFixed(0)).join(', ')} ms, of which the answer of the server, ${(bytes / 1e6).toFixed(1)} MB, ${(performance.now() - askedMs).toFixed(0)} ms`);
  expect(tookMs.toSorted((a, b) => a - b)[TIMES >> 1]).toBeLessThan(MOST_MS);
});
