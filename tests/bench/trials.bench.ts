import { chromium, type Browser } from '@playwright/test';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { RunningServer } from '../../server/serve.ts';
import { EVERY_BROWSER_RUN } from '../browser.config.ts';
import { HISTORY_ATHLETE, longHistory } from './long-history.ts';
import { report } from './measure.ts';
import { seededFolder, serverOver } from './seeded-server.ts';

// A time, not a ratio, because a coach who asks a question on the field waits as long on a slow machine.
const SESSIONS = 60;
const THROWS = 80;
const READY_MS = 2000;
const TIMES = 3;

let server: RunningServer;
let browser: Browser;
let remove = (): void => {};

beforeAll(async () => {
  const seeded = seededFolder(longHistory(SESSIONS, THROWS));
  remove = seeded.remove;
  const startedMs = performance.now();
  server = await serverOver(seeded.folder);
  report(`a server over ${SESSIONS} sessions of ${THROWS} throws starts in ${(performance.now() - startedMs).toFixed(0)} ms`);
  browser = await chromium.launch(EVERY_BROWSER_RUN.use?.launchOptions);
}, 120_000);

afterAll(async () => {
  await browser.close();
  await server.close();
  remove();
});

/** The median time of what is awaited, in milliseconds. */
async function medianOf(work: () => Promise<void>): Promise<number> {
  const tookMs: number[] = [];
  for (let time = 0; time < TIMES; time += 1) {
    const startedMs = performance.now();
    // oxlint-disable-next-line no-await-in-loop -- one after the other is what is measured
    await work();
    tookMs.push(performance.now() - startedMs);
  }
  return tookMs.sort((a, b) => a - b)[TIMES >> 1]!;
}

test(`Trials of an athlete with ${SESSIONS} sessions of ${THROWS} throws over two mounds is ready in under ${READY_MS} ms`, async () => {
  const readyMs = await medianOf(async () => {
    const page = await browser.newPage();
    await page.goto(`${server.address}/trials/${HISTORY_ATHLETE}`);
    await page.locator('.trial-rows').waitFor();
    await page.close();
  });
  report(`Trials ready: ${readyMs.toFixed(0)} ms of ${READY_MS}`);
  expect(readyMs).toBeLessThan(READY_MS);
});

test(`its report is ready in under ${READY_MS} ms too`, async () => {
  const readyMs = await medianOf(async () => {
    const page = await browser.newPage();
    await page.goto(`${server.address}/report/session-${SESSIONS}`);
    await page.locator('.sheet').waitFor();
    await page.close();
  });
  report(`report ready: ${readyMs.toFixed(0)} ms of ${READY_MS}`);
  expect(readyMs).toBeLessThan(READY_MS);
});

test('a session of it is sent to Playback in under half a second', async () => {
  let bytes = 0;
  const askedMs = await medianOf(async () => {
    bytes = (await (await fetch(`${server.address}/api/sessions/session-${SESSIONS}`)).text()).length;
  });
  const recordsMs = await medianOf(async () => {
    const text = await (await fetch(`${server.address}/api/athletes/${HISTORY_ATHLETE}/records`)).text();
    expect((JSON.parse(text) as readonly unknown[]).length).toBe(SESSIONS);
  });
  report(`one session: ${askedMs.toFixed(0)} ms, ${(bytes / 1024).toFixed(0)} KiB; all records: ${recordsMs.toFixed(0)} ms`);
  expect(askedMs).toBeLessThan(500);
});
