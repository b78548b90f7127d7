import { expect, test } from '@playwright/test';
import { CHANGEUP, FASTBALL, LEFT_HANDER, begun, chooseThrow, coachAtMound, lines, tablet, throws, withMound } from './bench-mound.ts';
import { opening } from './coach.ts';

withMound();

test('many throws are tagged at once, one is excluded with a reason and restored, one gets a note', async ({ page }) => {
  const coach = await begun();
  await coach.say({ kind: 'trial-begun', session: 'one', intent: 'changeup', grip: null, cue: null });
  await coach.say({ kind: 'intent-set', session: 'one', intent: 'curve' });
  await throws(CHANGEUP, 3);
  await tablet(page);
  await expect(lines(page)).toHaveCount(8);
  await chooseThrow(page, 6);
  await page.getByRole('button', { name: 'All thrown since' }).click();
  await expect(page.getByText('3 throws selected')).toBeVisible();
  await page.getByRole('group', { name: 'These throws were meant as' }).getByRole('button', { name: 'Changeup' }).click();
  await expect(lines(page).filter({ hasText: 'Changeup trial A' })).toHaveCount(3);
  await expect(lines(page).filter({ hasText: 'tagged later' })).toHaveCount(3);
  await expect(page.getByText('3 throws selected')).toBeHidden();

  await chooseThrow(page, 7);
  await page.getByRole('button', { name: 'Exclude' }).click();
  await page.getByRole('button', { name: 'misread' }).click();
  await expect(lines(page).nth(1)).toContainText('excluded: misread');
  await chooseThrow(page, 7);
  await page.getByRole('button', { name: 'Restore' }).click();
  await expect(lines(page).nth(1)).not.toContainText('excluded');

  await chooseThrow(page, 8);
  await page.getByRole('button', { name: 'Note', exact: true }).click();
  await page.getByLabel('Note on this throw').fill('thumb slid');
  await page.getByRole('button', { name: 'Save note' }).first().click();
  await expect(lines(page).first()).toContainText('Note: thumb slid');
  coach.close();
});

test('throws of the next arm are moved to the session they belong to, and both sides are recomputed', async ({ page }) => {
  const coach = await begun();
  await coach.say(opening('two', LEFT_HANDER));
  await coach.say({ kind: 'mound-passed', session: 'one' });
  await throws(CHANGEUP, 4);
  await tablet(page);
  await expect(lines(page)).toHaveCount(9);
  await chooseThrow(page, 7);
  await page.getByRole('button', { name: 'All thrown since' }).click();
  await page.getByRole('button', { name: 'Move', exact: true }).click();
  await page.getByRole('group', { name: 'Move to' }).getByRole('button', { name: 'Ione Castellan' }).click();
  await expect(lines(page)).toHaveCount(6);
  await page.getByRole('button', { name: 'Pass to Ione Castellan' }).click();
  await expect(page.getByRole('heading', { name: 'Ione Castellan' })).toBeVisible();
  await expect(lines(page)).toHaveCount(3);
  await expect(lines(page).first()).toContainText('Intent not said');
  coach.close();
});

test('of many throws that nobody had Bench names the newest fifty and tells how many more there are, and one tap claims all', async ({ page }) => {
  await throws(FASTBALL, 57);
  await tablet(page);
  await expect(page.getByText('57 unclaimed throws')).toBeVisible();
  await expect(page.getByText('the newest 50 thrown')).toContainText('and 7 more before');
  const coach = await coachAtMound();
  await coach.say(opening('one'));
  await page.getByRole('button', { name: 'Claim for Wren Abelow' }).click();
  await expect(page.locator('.throws .count')).toHaveText('57');
  await expect(page.locator('.parts').getByText('unclaimed')).toHaveCount(0);
  coach.close();
});

test('throws that nobody had are claimed with one tap', async ({ page }) => {
  await throws(FASTBALL, 6);
  await tablet(page);
  await expect(page.getByText('6 unclaimed throws')).toBeVisible();
  const coach = await coachAtMound();
  await coach.say(opening('one'));
  await page.getByRole('button', { name: 'Claim for Wren Abelow' }).click();
  await expect(lines(page)).toHaveCount(6);
  await expect(page.locator('.parts').getByText('unclaimed')).toHaveCount(0);
  coach.close();
});

test('while a finger is on the list a new throw waits above it, so that the tap meets the line it began on', async ({ page }) => {
  const coach = await begun();
  await tablet(page);
  const line = lines(page).first();
  await expect(line).toContainText('5');
  const top = async (): Promise<number> => Math.round((await line.boundingBox())!.y);
  const under = await line.getByRole('checkbox').boundingBox();
  const before = await top();
  const kept = await line.elementHandle();
  await page.mouse.move(under!.x + under!.width / 2, under!.y + under!.height / 2);
  await page.mouse.down();
  await throws(FASTBALL, 1);
  await expect(lines(page)).toHaveCount(6);
  expect(Math.round((await kept!.boundingBox())!.y)).toBe(before);
  await page.mouse.up();
  await expect(lines(page).nth(1).getByRole('checkbox')).toBeChecked();
  await expect(lines(page).first().getByRole('checkbox')).not.toBeChecked();
  await expect.poll(async () => Math.round((await kept!.boundingBox())!.y)).toBeGreaterThan(before + 20);
  coach.close();
});
