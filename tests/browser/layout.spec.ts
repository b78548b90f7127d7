import { expect, test } from '@playwright/test';
import { expectAccessible, expectWordsApart } from './fits.ts';
import { inProve } from './in-prove.ts';
import { readTexts } from './reading.ts';
import { SCENES, SCREENS, settled, SIZES, withScene } from './scenes.ts';

for (const scene of SCENES) {
  test(`in the scene "${scene}" no screen clips or overlaps its text, and axe finds nothing`, inProve(scene !== 'live'), async ({ browser }) => {
    await withScene(scene, async (server) => {
      for (const viewport of SIZES) {
        const context = await browser.newContext({ viewport, colorScheme: viewport.width > 1000 ? 'dark' : 'light', reducedMotion: 'reduce' });
        const page = await context.newPage();
        for (const [name, address] of Object.entries(SCREENS)) {
          if (scene === 'empty' && name === 'recording') continue;
          const where = `${name} at ${viewport.width}`;
          await page.goto(server.address + address);
          await settled(page, scene);
          await expectWordsApart(page, where);
          await expectAccessible(page, where);
        }
        await context.close();
      }
    });
  });
}

/** Millimetres to a CSS pixel of a 16:9 screen of 55 inches at 1920 × 1080, and the height that an angle has at 6 m. */
const MM_A_PIXEL = (55 * 25.4 * 16) / Math.hypot(16, 9) / 1920;
const pixelsOf = (arcMinutes: number): number => (6000 * Math.tan((arcMinutes / 60) * (Math.PI / 180))) / MM_A_PIXEL;

test('on a Wall of 55 inches read from 6 m the last throw has capitals of 30 minutes of arc, all else of 12', async ({ browser }) => {
  await withScene('live', async (server) => {
    const page = await browser.newPage({ viewport: { width: 1920, height: 1080 } });
    await page.goto(`${server.address}/wall/north-1`);
    await settled(page, 'live');
    const lead = (await readTexts(page)).filter(({ role }) => role.includes('wall-lead'));
    const texts = await readTexts(page);
    expect(lead.length).toBeGreaterThan(0);
    expect(Math.min(...lead.map(({ capitalPx }) => capitalPx))).toBeGreaterThanOrEqual(pixelsOf(30) - 1);
    expect(Math.min(...texts.map(({ capitalPx }) => capitalPx))).toBeGreaterThanOrEqual(pixelsOf(12) - 1);
    const fits = await page.evaluate(() => document.documentElement.scrollHeight <= innerHeight && document.documentElement.scrollWidth <= innerWidth);
    expect(fits, 'the Wall fits its screen without scrolling').toBe(true);
  });
});

test('stale and closed are told from live by word and by border, without colour', inProve(), async ({ browser }) => {
  const seen: { word: string; border: string }[] = [];
  for (const scene of ['live', 'stale', 'closed'] as const) {
    await withScene(scene, async (server) => {
      const page = await browser.newPage({ viewport: { width: 1920, height: 1080 } });
      await page.goto(`${server.address}/wall/north-1`);
      await settled(page, scene);
      const border = await page.locator('.standing-frame').evaluate((frame) => {
        const edge = (style: CSSStyleDeclaration): string => `${style.borderTopStyle} ${style.borderTopWidth} ${style.outlineStyle} ${style.outlineWidth}`;
        return `${edge(getComputedStyle(frame))} / ${edge(getComputedStyle(frame, '::before'))} / ${edge(getComputedStyle(frame, '::after'))}`;
      });
      seen.push({ word: (await page.locator('.standing-word').textContent())!.replace(/[\d:]+.*$/, ''), border });
      await page.close();
    });
  }
  expect(new Set(seen.map(({ word }) => word)).size).toBe(3);
  expect(new Set(seen.map(({ border }) => border)).size).toBe(3);
});
