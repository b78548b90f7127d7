import { readFileSync } from 'node:fs';
import { expect, type Download, type Page } from '@playwright/test';
import { easyFrame, WORKED_THROWS } from './by-hand.ts';
import { changeupIsNext } from './changeup-next.ts';
import { expectAccessible, expectWordsApart } from './fits.ts';
import { test } from './with-server.ts';

async function savedBy(page: Page, role: 'button' | 'link', name: string): Promise<Download> {
  const saving = page.waitForEvent('download');
  await page.getByRole(role, { name, exact: true }).click();
  return saving;
}

test('a coach takes out of Playback the pictures as they are drawn, each with what it shows, and the throws as a table', async ({ page, server, coach, device }) => {
  await changeupIsNext(coach, device);
  for (const [index, worked] of WORKED_THROWS.entries()) await device.throws(6 + index, easyFrame(worked));
  await coach.say({ kind: 'session-closed', session: 's1' });
  await page.goto(`${server.address}/playback/s1`);
  await expect(page.locator('.player')).toBeVisible();
  await page.keyboard.press('End');
  await expect(page.locator('.where')).toContainText('Throw 10 of 10');
  await page.getByText('Take out', { exact: true }).click();
  await expectAccessible(page, 'what can be taken out');

  const plane = (await page.locator('.separation-plane').getAttribute('aria-label'))!;
  const saved = await savedBy(page, 'button', `Save as SVG: ${plane}`);
  expect(saved.suggestedFilename()).toBe('offpace-s1-10.svg');
  const svg = readFileSync(await saved.path(), 'utf8');
  expect(svg).toMatch(/>Wren Abelow · north-1 · Throw 10 · Trial A<\/text>/);
  expect(svg).toMatch(/[+−]\d\d:\d\d \([\w/]+\) · Played back \d\d:\d\d:\d\d · science version \d+<\/text>/);
  expect(svg).not.toMatch(/class=|style=|href=|var\(/);
  const ground = await page.evaluate(() => getComputedStyle(document.body).getPropertyValue('--ground').trim());
  expect(svg).toContain(`fill="${ground}"`);
  // Drawn by itself it has the colours that it had on the screen.
  const work = await page.locator('.mark path').last().evaluate((mark) => getComputedStyle(mark).stroke);
  expect(svg).toContain(`stroke="${work}"`);
  const png = readFileSync(await (await savedBy(page, 'button', `Save as PNG: ${plane}`)).path());
  expect(png.subarray(1, 4).toString()).toBe('PNG');
  const { width } = (await page.locator('.separation-plane').boundingBox())!;
  expect(png.readUInt32BE(16)).toBeGreaterThanOrEqual(Math.floor(2 * width));

  const csv = readFileSync(await (await savedBy(page, 'link', 'CSV')).path(), 'utf8');
  expect(csv.trimEnd().split('\r\n')).toHaveLength(11);
  expect(csv).toContain('Wren Abelow');
  await page.getByLabel('Tables with names').uncheck();
  expect(readFileSync(await (await savedBy(page, 'link', 'CSV')).path(), 'utf8')).not.toContain('Wren');
});

/** Where each part of Playback begins and ends, from top to bottom of the page. */
function partsOf(page: Page): Promise<readonly (readonly [part: string, top: number, bottom: number])[]> {
  return page.evaluate(() => ['.player-title', '.player-picture', '.player-panel', '.deck', '.deck-more'].flatMap((part) => {
    const box = document.querySelector(part)?.getBoundingClientRect();
    return box === undefined ? [] : [[part, box.top + scrollY, box.bottom + scrollY] as const];
  }));
}

for (const [width, height] of [[820, 1180], [820, 700], [1000, 700]] as const) {
  test(`what can be taken out opens below everything else at ${width}×${height}, and the page scrolls to it`, async ({ page, server, coach, device }) => {
    await page.setViewportSize({ width, height });
    await changeupIsNext(coach, device);
    for (const [index, worked] of WORKED_THROWS.entries()) await device.throws(6 + index, easyFrame(worked));
    await coach.say({ kind: 'session-closed', session: 's1' });
    await page.goto(`${server.address}/playback/s1?throw=13`);
    await page.locator('g.mark').first().waitFor();
    const apart = async (what: string): Promise<void> => {
      await expectWordsApart(page, what);
      const parts = await partsOf(page);
      const over = parts.slice(1).flatMap(([part, top], index) => (top < parts[index]![2] - 1 ? [`${part} over ${parts[index]![0]}`] : []));
      expect(over, what).toEqual([]);
    };
    await apart('shut');
    await page.getByText('Take out', { exact: true }).click();
    await expect(page.getByRole('button', { name: /^Save as SVG/ }).first()).toBeVisible();
    await apart('open');
    await page.locator('.keys').scrollIntoViewIfNeeded();
    await expect(page.locator('.keys')).toBeInViewport({ ratio: 1 });
    await page.getByRole('button', { name: 'Notes', exact: true }).click();
    await expect(page.locator('.player-panel')).toBeVisible();
    expect(await page.locator('.player-panel').evaluate((panel) => panel.clientHeight)).toBeGreaterThan(150);
    await apart('with notes');
  });
}

test('the Wall saves its pictures by a key, and by a button while a mouse moves; one that hangs without either offers nothing', async ({ page, server, coach, device }) => {
  await changeupIsNext(coach, device);
  await device.throws(6, easyFrame(WORKED_THROWS[0]!));
  await page.goto(`${server.address}/wall/north-1`);
  await expect(page.locator('.mark.newest')).toBeVisible();
  const button = page.getByRole('button', { name: 'Save the pictures' });
  await expect(button).toHaveCSS('opacity', '0');
  await page.mouse.move(300, 300);
  await page.mouse.move(320, 310);
  await expect(button).toHaveCSS('opacity', '1');
  await button.click();
  const dialog = page.getByRole('dialog', { name: 'Save the pictures' });
  await expectAccessible(page, 'the pictures of the Wall');
  const plane = (await page.locator('.separation-plane').getAttribute('aria-label'))!;
  const saved = await savedBy(page, 'button', `Save as SVG: ${plane}`);
  expect(saved.suggestedFilename()).toBe('offpace-s1-6.svg');
  expect(readFileSync(await saved.path(), 'utf8')).toMatch(/>Wren Abelow · north-1 · Throw 6 · Trial A<\/text>/);
  await dialog.getByRole('button', { name: 'Back to the Wall' }).click();
  // Closed is one thing, put away the next: only then does the key open it anew.
  await expect(page.locator('.take-dialog')).toHaveCount(0);
  await page.keyboard.press('t');
  await expect(dialog).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();

  await page.goto(`${server.address}/wall/north-1?kiosk`);
  await expect(page.locator('.mark.newest')).toBeVisible();
  await page.mouse.move(300, 300);
  await page.keyboard.press('t');
  await expect(page.getByRole('button')).toHaveCount(0);
  await expect(dialog).toHaveCount(0);
});
