import { expect, type Page } from '@playwright/test';
import { inchesToM, mphToMps } from '../../core/units/convert.ts';
import { connectCoach, opening } from './coach.ts';
import { connectDevice, counted, keepBeating } from './device.ts';
import { startServer, temporaryFolder, type TestServer } from './server.ts';
import { FIVE_FASTBALLS, summedUp, type Summed } from './summed.ts';

/** The states in which a screen has to be understood. */
export const SCENES = ['empty', 'live', 'stale', 'closed'] as const;
type Scene = (typeof SCENES)[number];

/** A big screen and a hand. */
export const SIZES = [{ width: 1920, height: 1080 }, { width: 390, height: 844 }] as const;

/** Every screen of a mound and its session `s-1`, by name. */
export const SCREENS = { wall: '/wall/north-1', bench: '/bench/north-1', glance: '/glance/north-1', plan: '/plan/north-1', playback: '/playback', recording: '/playback/s-1', trials: '/trials/wren', report: '/report/s-1' } as const;

const FIRST_GRIP = [[84.1, 9.8, 11.2], [83.2, 8.1, 12.9], [84.4, 10.9, 10.3], [83.5, 9.1, 12.1], [83.8, 9.6, 11.8]] as const;
const SECOND_GRIP = [[82.9, 6.4, 13.9], [82.2, 5.1, 14.8], [83, 7.3, 13.1], [82.6, 2.2, 14.6]] as const;

/**
 * Brings a mound into a scene and keeps it there until the server stops. In `stale` the device has been heard
 * and is gone; screens say so once it is overdue. In the others it sends its heartbeats as a device does.
 */
async function playScene(server: TestServer, scene: Scene): Promise<void> {
  if (scene === 'empty') return;
  const coach = await connectCoach(server, 'north-1');
  const device = await connectDevice(server);
  const throws = counted(device);
  const throwAll = async (all: readonly Summed[]): Promise<void> => {
    for (const one of all) await throws(summedUp(one, { rate: 2100, tilt: 40, efficiency: 0.93 }));
  };
  await coach.say(opening('s-1'));
  await coach.say({ kind: 'intent-set', session: 's-1', intent: 'four-seam' });
  await throwAll(FIVE_FASTBALLS);
  await coach.say({
    kind: 'zone-set', session: 's-1', reason: null, speedBand: { lowMps: -mphToMps(10), highMps: -mphToMps(7) },
    zone: { kind: 'ellipse', verticalM: inchesToM(-10), armSideM: inchesToM(7), verticalRadiusM: inchesToM(3), armSideRadiusM: inchesToM(3) },
  });
  const grip = { seams: 'two-seam', spread: 'normal', thumbDeg: 0, pressure: 'middle', depth: 'normal', tiltDeg: 0 } as const;
  await coach.say({ kind: 'trial-begun', session: 's-1', intent: 'changeup', grip, cue: { words: 'Throw it through the glove', focus: 'external' } });
  await throwAll(FIRST_GRIP);
  await coach.say({ kind: 'trial-begun', session: 's-1', intent: 'changeup', grip: { ...grip, pressure: 'ring', tiltDeg: 20 }, cue: { words: 'Throw it through the glove', focus: 'external' } });
  await throwAll(SECOND_GRIP);
  if (scene === 'closed') await coach.say({ kind: 'session-closed', session: 's-1' });
  coach.close();
  if (scene === 'stale') await device.close();
  else keepBeating(device);
}

/** A server with a mound in a scene, for as long as `run` takes. */
export async function withScene(scene: Scene, run: (server: TestServer) => Promise<void>): Promise<void> {
  const { folder, remove } = temporaryFolder();
  const server = await startServer(folder);
  await playScene(server, scene);
  try {
    await run(server);
  } finally {
    await server.stop();
    remove();
  }
}

/** Waits until a screen that was opened shows its scene. */
export async function settled(page: Page, scene: Scene): Promise<void> {
  await page.evaluate(() => document.fonts.ready);
  await expect(page.locator('h1').first()).toBeVisible();
  await expect(page.locator('[data-standing="connecting"]')).toHaveCount(0);
  if (scene === 'stale' && /wall|glance/.test(page.url())) await expect(page.locator('.standing-word')).toHaveAttribute('data-standing', /silent/, { timeout: 20_000 });
  if (scene === 'closed' && /wall|glance/.test(page.url())) await expect(page.locator('.standing-word')).toHaveAttribute('data-standing', 'closed');
}
