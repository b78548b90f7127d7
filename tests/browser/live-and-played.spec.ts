import { expect, test, type Page } from '@playwright/test';
import { seeded } from '../core/flight/noise.ts';
import { flown, frameOf } from '../parity/flown.ts';
import { CIRCLE, easyFrame, FASTBALL, WORKED_THROWS } from './by-hand.ts';
import { connectCoach, opening } from './coach.ts';
import { connectDevice } from './device.ts';
import { paintedAt, type Painted } from './painted.ts';
import { startServer, temporaryFolder } from './server.ts';

const SESSION = 's-wren';
const BIG_SCREEN = { width: 1920, height: 1080 };

/** Opened, intent, five fastballs, zone, trial: the log's first nine places. Throws follow from place 10 on. */
const FIRST_WORKED_PLACE = 10;

test('what the Wall painted live after each throw is what Playback paints at that throw, and five throws are as worked out by hand', async ({ page, context }) => {
  const { folder, remove } = temporaryFolder();
  const server = await startServer(folder);
  const device = await connectDevice(server);
  const coach = await connectCoach(server, 'north-1');
  const live: Painted[] = [];
  try {
    await page.setViewportSize(BIG_SCREEN);
    await coach.say(opening(SESSION));
    await page.goto(`${server.address}/wall/north-1?windows=1`);
    await coach.say({ kind: 'intent-set', session: SESSION, intent: 'four-seam' });

    let sequence = 0;
    let place = 2;
    const throwNow = async (body: ReturnType<typeof easyFrame>): Promise<void> => {
      sequence += 1;
      place += 1;
      await device.throws(sequence, body);
      live.push(await paintedAt(page, place));
    };
    const say = async (says: Parameters<typeof coach.say>[0]): Promise<void> => {
      place = await coach.say(says);
    };
    for (let count = 0; count < 5; count += 1) await throwNow(easyFrame(FASTBALL));
    await say({ kind: 'zone-set', session: SESSION, zone: CIRCLE, speedBand: { lowMps: -4.5, highMps: -3 }, reason: null });
    await say({ kind: 'trial-begun', session: SESSION, intent: 'changeup', grip: null, cue: null });
    for (const worked of WORKED_THROWS) await throwNow(easyFrame(worked));

    // And a stretch of a real sitting: noisy paths, a second trial, a fastball in between, a misread left out, a correction, a tag.
    const chance = seeded(71);
    const noisy = (intent: 'changeup' | 'four-seam'): ReturnType<typeof easyFrame> => frameOf(flown(intent, 'right', 18.4404, chance), 'path', chance);
    await throwNow(noisy('changeup'));
    await say({ kind: 'trial-begun', session: SESSION, intent: 'changeup', grip: null, cue: { words: 'let it roll', focus: 'external' } });
    for (let count = 0; count < 3; count += 1) await throwNow(noisy('changeup'));
    await say({ kind: 'intent-set', session: SESSION, intent: 'four-seam' });
    await throwNow(noisy('four-seam'));
    await say({ kind: 'throws-excluded', session: SESSION, places: [FIRST_WORKED_PLACE + 1], reason: 'misread' });
    await say({ kind: 'intent-set', session: SESSION, intent: 'changeup' });
    await throwNow(noisy('changeup'));
    sequence += 1;
    place += 1;
    expect(await device.send({ kind: 'correction', sequence, time: sequence * 1000, corrects: { sequence: 6 }, body: noisy('changeup') })).toEqual({ kind: 'stored', sequence });
    await throwNow(noisy('changeup'));
    await say({ kind: 'throws-tagged', session: SESSION, places: [place], intent: 'split', trial: null });
    await throwNow(noisy('changeup'));
    await say({ kind: 'session-closed', session: SESSION });

    checkByHand(live);

    const playback = await context.newPage();
    await playback.setViewportSize(BIG_SCREEN);
    await playback.goto(`${server.address}/playback/${SESSION}?windows=1`);
    await playback.locator('.deck').waitFor();
    for (const painted of live) {
      await playback.keyboard.press('ArrowRight');
      expect(await paintedAt(playback, painted.place)).toEqual(painted);
    }
    for (const painted of live.toReversed().slice(1)) {
      await playback.keyboard.press('ArrowLeft');
      expect(await paintedAt(playback, painted.place)).toEqual(painted);
    }
    await expectLinksToOpenThere(playback, server.address, live);
  } finally {
    coach.close();
    await device.close();
    await server.stop();
    remove();
  }
});

/** The five worked throws against the arithmetic in by-hand.ts. */
function checkByHand(live: readonly Painted[]): void {
  WORKED_THROWS.forEach((worked, index) => {
    const painted = live[5 + index]!;
    expect(painted).toMatchObject({
      place: FIRST_WORKED_PLACE + index, athlete: 'Wren Abelow', intent: 'Changeup Trial A',
      lead: worked.place, pace: worked.pace, lastOnTarget: worked.onTarget,
    });
    const marks = painted.marks.filter(({ trial }) => trial === 'A');
    expect(marks).toHaveLength(index + 1);
    for (const [earlier, mark] of marks.entries()) {
      const { onTarget, downIn, sideIn } = WORKED_THROWS[earlier]!;
      expect(mark).toMatchObject({ onTarget, newest: earlier === index });
      // Positions are drawn in radii of the circle, 3 in each; views are rounded to a tenth of a millimetre, 0.004 in.
      expect(mark.down! * 3).toBeCloseTo(downIn, 1);
      expect(mark.right! * 3).toBeCloseTo(sideIn, 1);
    }
  });
  const last = live[9]!;
  expect(last.counts).toContain('5 in trial A');
  // Down (8 + 3 + 8 + 12 + 6) / 5 = 7.4 in, arm side (4 + 4 − 1 + 7 + 6) / 5 = 4.0 in, slower (9 + 10 + 8 + 11 + 6) / 5 = 8.8 mph; 2 of 5 on target.
  const windows = last.windows.join(' | ');
  expect(windows).toMatch(/7\.4 ± \d/);
  expect(windows).toMatch(/4\.0 ± \d/);
  expect(windows).toMatch(/8\.8 ± \d/);
  expect(windows).toMatch(/2 of 5/);
}

async function expectLinksToOpenThere(page: Page, address: string, live: readonly Painted[]): Promise<void> {
  for (const painted of [live[7]!, live[12]!]) {
    await page.goto(`${address}/playback/${SESSION}?windows=1&throw=${painted.place}`);
    expect(await paintedAt(page, painted.place)).toEqual(painted);
    await expect(page.locator('.player')).toHaveAttribute('data-mode', 'paused');
  }
}
