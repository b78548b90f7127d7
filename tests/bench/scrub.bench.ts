import { chromium, type Browser } from '@playwright/test';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { EVERY_BROWSER_RUN } from '../browser.config.ts';
import { sliceOf } from '../../core/session/recorded.ts';
import { startProcess, temporaryFolder, type TestServer } from '../browser/server.ts';
import { longSession, MOUND, SESSION } from './long-session.ts';
import { report } from './measure.ts';

const THROWS = 200;
const FRAMES = 150;
const MOST_SCRIPT_MS = 16;

let server: TestServer;
let browser: Browser;
const { folder, remove } = temporaryFolder();

beforeAll(async () => {
  server = await startProcess(folder);
  browser = await chromium.launch(EVERY_BROWSER_RUN.use?.launchOptions);
}, 60_000);

afterAll(async () => {
  await browser.close();
  await server.stop();
  remove();
});

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds; `tdur` is what the thread itself worked, whatever else the machine did meanwhile. */
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
}

const SCRIPT = new Set(['FunctionCall', 'EvaluateScript', 'FireAnimationFrame', 'TimerFire', 'EventDispatch', 'RunMicrotasks', 'v8.callFunction']);

/** Milliseconds of script from each frame's first callback to the next one's. */
function scriptMsByFrame(events: readonly TraceEvent[]): number[] {
  const frames = events.filter(({ name, ph }) => name === 'FireAnimationFrame' && ph === 'X');
  const { pid, tid } = frames[0]!;
  const starts = [...new Set(frames.filter((event) => event.tid === tid && event.pid === pid).map(({ ts }) => ts))].sort((a, b) => a - b);
  const script = events.filter((event) => event.ph === 'X' && event.pid === pid && event.tid === tid && SCRIPT.has(event.name)).sort((a, b) => a.ts - b.ts);
  const spent = starts.map(() => 0);
  let until = 0;
  let frame = 0;
  for (const { ts, dur = 0, tdur = dur } of script) {
    if (ts < until || ts < starts[0]!) continue;
    until = ts + dur;
    while (frame + 1 < starts.length && starts[frame + 1]! <= ts) frame += 1;
    spent[frame]! += tdur / 1000;
  }
  return spent;
}

test(`scrubbing through ${THROWS} throws has no frame with more than ${MOST_SCRIPT_MS} ms of script`, async () => {
  const page = await browser.newPage({ viewport: { width: 1920, height: 1080 } });
  // With the times at which its throws came, which a log that is filled at once does not have.
  const facts = longSession(THROWS);
  await page.route(`**/api/sessions/${SESSION}`, (route) => route.fulfill({ json: { session: SESSION, mound: MOUND, log: 'any', ...sliceOf(facts, SESSION) } }));
  await page.goto(`${server.address}/playback/${SESSION}`);
  const range = page.getByRole('slider', { name: 'Place in the session' });
  await range.waitFor();
  /** Gives how many places of the log were painted. */
  const scrub = async (): Promise<number> => range.evaluate(async (input: HTMLInputElement, frames) => {
    const painted = new Set<string | null | undefined>();
    for (let frame = 0; frame < frames; frame += 1) {
      await new Promise(requestAnimationFrame);
      // Back and forth over the whole session, as a hand looks for something.
      input.value = String(Number(input.max) * Math.abs(Math.sin(frame / 20)));
      input.dispatchEvent(new Event('input', { bubbles: true }));
      painted.add(document.querySelector('.mound-picture')?.getAttribute('data-place'));
    }
    return painted.size;
  }, FRAMES);
  await scrub();
  await browser.startTracing(page, { categories: ['devtools.timeline', 'disabled-by-default-devtools.timeline'] });
  expect(await scrub()).toBeGreaterThan(FRAMES / 3);
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as { traceEvents: TraceEvent[] };
  const spent = scriptMsByFrame(traceEvents).toSorted((a, b) => a - b);
  expect(spent.length).toBeGreaterThanOrEqual(FRAMES);
  report(`scrubbing ${THROWS} throws over ${FRAMES} frames: script of a frame median ${spent[Math.floor(spent.length / 2)]!.toFixed(1)} ms, longest ${spent.at(-1)!.toFixed(1)} ms, of at most ${MOST_SCRIPT_MS} ms`);
  expect(spent.at(-1)!).toBeLessThanOrEqual(MOST_SCRIPT_MS);
  await page.close();
});
