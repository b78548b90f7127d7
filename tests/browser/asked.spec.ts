import { expect, type Page } from '@playwright/test';
import { easyFrame, FASTBALL, WORKED_THROWS } from './by-hand.ts';
import { opening } from './coach.ts';
import { expectAccessible, expectWordsApart } from './fits.ts';
import { inProve } from './in-prove.ts';
import { test } from './with-server.ts';

const BIG_SCREEN = { width: 1920, height: 1080 };
const HAND = { width: 390, height: 844 };
/** Capitals of 12 minutes of arc from 6 m on a 16:9 screen of 55 inches, in CSS pixels of 1920. */
const LEAST_CAPITAL_PX = (6000 * Math.tan((12 / 60) * (Math.PI / 180))) / ((55 * 25.4 * 16) / Math.hypot(16, 9) / 1920);

async function readable(page: Page, where: string, leastCapitalPx: number): Promise<void> {
  const texts = await expectWordsApart(page, where);
  expect(Math.min(...texts.map(({ capitalPx }) => capitalPx)), where).toBeGreaterThanOrEqual(leastCapitalPx - 1);
}

test.beforeEach(async ({ coach, device }) => {
  await coach.say(opening('s-1'));
  await coach.say({ kind: 'intent-set', session: 's-1', intent: 'four-seam' });
  for (let sequence = 1; sequence <= 5; sequence += 1) await device.throws(sequence, easyFrame(FASTBALL));
  await coach.say({ kind: 'trial-begun', session: 's-1', intent: 'changeup', grip: null, cue: null });
  for (const [index, worked] of WORKED_THROWS.entries()) await device.throws(6 + index, { ...easyFrame(worked), seams: { latitude: 62, longitude: 20 } });
});

test('a coach asks the Wall for seam map, gap line and plate by one key each, one at a time, and a link brings them back', async ({ page, server }) => {
  await page.setViewportSize(BIG_SCREEN);
  await page.goto(`${server.address}/wall/north-1`);
  await page.locator('.wall-rail svg').waitFor();
  await page.keyboard.press('g');
  await expect(page.getByRole('img', { name: 'Gap to fastball' })).toBeVisible();
  await expect(page.locator('.wall-rail')).toBeHidden();
  expect(page.url()).toContain('picture=gap-line');
  await page.keyboard.press('p');
  await expect(page.getByRole('img', { name: 'Plate, seen by the catcher' })).toBeVisible();
  await expect(page.locator('.wall-picture .mark')).toHaveCount(5 + WORKED_THROWS.length);
  expect(page.url()).toContain('picture=plate');
  await page.keyboard.press('s');
  await expect(page.getByRole('img', { name: 'Seam map' })).toBeVisible();
  await expect(page.getByRole('img', { name: 'Gap to fastball' })).toHaveCount(0);
  await page.reload();
  await expect(page.getByRole('img', { name: 'Seam map' })).toBeVisible();
  await page.keyboard.press('s');
  await expect(page.locator('.wall-picture')).toHaveCount(0);
  await expect(page.locator('.wall-rail')).toBeVisible();
  expect(page.url()).not.toContain('picture');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: 'Show seam map' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Hide seam map' })).toHaveAttribute('aria-pressed', 'true');
});

test('Wall and Playback keep every word apart and large enough with a picture beside the plane, with and without windows', inProve(), async ({ browser, server }) => {
  for (const viewport of [BIG_SCREEN, HAND]) {
    const context = await browser.newContext({ viewport, colorScheme: viewport === HAND ? 'light' : 'dark', reducedMotion: 'reduce' });
    const page = await context.newPage();
    const wide = viewport === BIG_SCREEN;
    for (const picture of ['seam-map', 'gap-line', 'plate']) {
      for (const windows of ['', '&windows=1']) {
        for (const language of ['en', 'es&units=metric']) {
          const address = `/wall/north-1?picture=${picture}${windows}&lang=${language}`;
          await page.goto(server.address + address);
          await page.locator('.wall-picture svg').waitFor();
          await readable(page, `${address} at ${viewport.width}`, wide ? LEAST_CAPITAL_PX : 11);
          if (!wide) continue;
          expect(await page.evaluate(() => document.documentElement.scrollHeight <= innerHeight && document.documentElement.scrollWidth <= innerWidth), address).toBe(true);
        }
      }
      await page.goto(`${server.address}/playback/s-1?picture=${picture}&throw=12`);
      await page.locator('.wall-picture svg').waitFor();
      await readable(page, `Playback with ${picture} at ${viewport.width}`, 9);
      await expectAccessible(page);
    }
    await context.close();
  }
});

test('Playback shows the gap line that the Wall showed, throw by throw, at one key', async ({ page, context, server }) => {
  await page.setViewportSize(BIG_SCREEN);
  await page.goto(`${server.address}/wall/north-1?picture=gap-line`);
  const values = (on: Page): Promise<string[]> => on.locator('.gap-text').allTextContents();
  await page.locator('.gap-text').first().waitFor();
  const live = await values(page);
  expect(live.join(' ')).toMatch(/\d\.\d ball widthsat decision \d\.\d ball widthsat the plate/);
  const playback = await context.newPage();
  await playback.setViewportSize(BIG_SCREEN);
  await playback.goto(`${server.address}/playback/s-1`);
  await playback.locator('.deck').waitFor();
  await playback.keyboard.press('End');
  await playback.keyboard.press('g');
  await playback.locator('.gap-text').first().waitFor();
  expect(await values(playback)).toEqual(live);
  await playback.keyboard.press('ArrowLeft');
  await expect(playback.locator('.gap-text').first()).not.toHaveText(live[0]!);
  await expect(playback.getByRole('button', { name: 'Gap line' })).toHaveAttribute('aria-pressed', 'true');
});

test('the decision point that a coach sets on Bench is said beside the gap on Wall and in Playback', async ({ page, context, server, coach }) => {
  await page.setViewportSize(BIG_SCREEN);
  await page.goto(`${server.address}/wall/north-1?picture=gap-line`);
  const foot = (on: Page) => on.locator('.gap-line .foot-text');
  await expect(foot(page)).toContainText(/175 ms from arrival,\s*at the same time/);
  const usual = await page.locator('.gap-text.decision').textContent();
  const bench = await context.newPage();
  await bench.setViewportSize(HAND);
  await bench.goto(`${server.address}/bench/north-1`);
  await bench.getByRole('navigation', { name: 'Places of Bench' }).getByRole('button', { name: 'Session', exact: true }).click();
  await bench.getByRole('group', { name: 'Gap at decision' }).getByLabel('at the same distance').check();
  await expect(foot(page)).toContainText('at the same distance');
  await expect(page.locator('.gap-text.decision')).not.toHaveText(usual!);
  const slider = bench.getByRole('slider', { name: 'Decision before the fastball arrives' });
  await slider.focus();
  await slider.press('End');
  await expect(slider).toHaveAttribute('aria-valuetext', '225 ms');
  await expect(foot(page)).toContainText(/225 ms from arrival,\s*at the same distance/);
  expect((await coach.reaches(10 + WORKED_THROWS.length)).session!.decision).toEqual({ beforeS: 0.225, basis: 'same-distance' });
  const playback = await context.newPage();
  await playback.setViewportSize(BIG_SCREEN);
  await playback.goto(`${server.address}/playback/s-1?picture=gap-line`);
  await playback.locator('.deck').waitFor();
  await playback.keyboard.press('End');
  await expect(foot(playback)).toContainText(/225 ms from arrival,\s*at the same distance/);
  expect(await playback.locator('.gap-text').allTextContents()).toEqual(await page.locator('.gap-text').allTextContents());
});
