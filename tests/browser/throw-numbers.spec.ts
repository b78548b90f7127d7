import { expect, type Page } from '@playwright/test';
import { easyFrame, WORKED_THROWS } from './by-hand.ts';
import { changeupIsNext } from './changeup-next.ts';
import { expectAccessible, expectWordsApart } from './fits.ts';
import { inProve } from './in-prove.ts';
import { test } from './with-server.ts';

const SIZES = [{ width: 1920, height: 1080 }, { width: 390, height: 844 }] as const;

test.beforeEach(async ({ coach, device }) => {
  await changeupIsNext(coach, device, { session: 's-1' });
  for (const [index, worked] of WORKED_THROWS.slice(0, 4).entries()) await device.throws(6 + index, { ...easyFrame(worked), extension: 5.5 });
});

/** Nothing cut, nothing over another, no violation of the accessibility rules. */
async function readable(page: Page, where: string): Promise<void> {
  await expectWordsApart(page, where);
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), where).toBe(true);
  await expectAccessible(page, where);
}

test('Playback shows the numbers of the throw on the screen at one key, follows it, and a link brings them back', async ({ page, server }) => {
  await page.setViewportSize(SIZES[0]);
  await page.goto(`${server.address}/playback/s-1`);
  await page.locator('.deck').waitFor();
  await page.keyboard.press('Home');
  await page.keyboard.press('n');
  await expect(page.getByText('Before the first throw there are no numbers.')).toBeVisible();
  await page.keyboard.press('End');
  const value = (number: string) => page.locator(`[data-number='${number}'] .number-value`);
  await expect(page.getByRole('heading', { name: 'Throw 9, Changeup A' })).toBeVisible();
  // 79 mph and 480 ms as they were thrown; 4 − 16 = −12 in, and 2 in off the circle.
  await expect(value('speed')).toHaveText('79.0 mph');
  await expect(value('flightTime')).toHaveText('480.0 ms');
  await expect(value('verticalSeparation')).toHaveText('12.0 in down');
  await expect(value('miss')).toHaveText('2 in deep, arm side');
  await expect(value('extension')).toHaveText('5.50 ft');
  await page.locator("[data-number='miss'] summary").click();
  const tells = page.getByText('How far the separation was from the nearest edge of the target zone.');
  await expect(tells).toBeVisible();
  await page.keyboard.press('ArrowLeft');
  await expect(value('miss')).toHaveText('2 in glove side');
  await expect(tells).toBeVisible();
  // The address follows once the playhead rests.
  const place = await page.locator('.mound-picture').getAttribute('data-place');
  await expect(page).toHaveURL(({ searchParams }) => searchParams.get('panel') === 'numbers' && searchParams.get('throw') === place);
  await page.reload();
  await expect(value('speed')).toHaveText('82.0 mph');
  await page.getByRole('button', { name: 'Numbers' }).click();
  await expect(page.locator('.player-numbers')).toHaveCount(0);
});

test('on Bench a throw opens by its own button, by hand and by keyboard, without being chosen', async ({ page, server }) => {
  await page.setViewportSize(SIZES[0]);
  await page.goto(`${server.address}/bench/north-1?lang=en`);
  const open = page.getByRole('button', { name: 'Numbers of Throw 9' });
  await open.click();
  await expect(open).toHaveAttribute('aria-expanded', 'true');
  await expect(page.locator("[data-number='horizontalSeparation'] .number-value")).toHaveText('7.0 in arm side');
  await expect(page.locator("[data-number='horizontalSeparation'] small")).toHaveText('Fastball baseline 1, from the path');
  await expect(page.getByRole('checkbox', { name: 'Select throw 9', exact: true })).not.toBeChecked();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(page.getByText('How fast the ball leaves the hand.')).toBeVisible();
  await open.press('Enter');
  await expect(page.locator('.throw-numbers')).toHaveCount(0);
});

for (const theme of ['light', 'dark'] as const) {
  test(`the numbers keep their words apart and pass the accessibility check on Bench and in Playback, in ${theme}`, inProve(), async ({ page, server }) => {
    for (const viewport of SIZES) {
      await page.setViewportSize(viewport);
      for (const language of ['en', 'es&units=metric']) {
        await page.goto(`${server.address}/playback/s-1?panel=numbers&throw=12&theme=${theme}&lang=${language}`);
        await page.locator('.throw-numbers').waitFor();
        await readable(page, `Playback, ${viewport.width}, ${language}`);
        await page.goto(`${server.address}/bench/north-1?theme=${theme}&lang=${language}`);
        await page.locator('.throw-open').first().click();
        await page.locator('.throw-opened summary').first().click();
        await readable(page, `Bench, ${viewport.width}, ${language}`);
      }
    }
  });
}
