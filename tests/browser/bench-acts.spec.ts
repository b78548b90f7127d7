import { expect, test, type Page } from '@playwright/test';
import { CHANGEUP, LEFT_HANDER, begun, goTo, intent, lines, nextThrow, saidIn, tablet, throws, withMound } from './bench-mound.ts';
import { opening } from './coach.ts';
import { expectAccessible } from './fits.ts';

withMound();

const act = (page: Page, name: string) => page.getByRole('group', { name: 'Between two throws' }).getByRole('button', { name: new RegExp(`^${name}`) });
const acts = (page: Page) => page.locator('.sheet .act-list li');

test('between two throws everything is one tap away, and the last ten acts have a way back', async ({ page, browser }) => {
  const coach = await begun();
  await throws(CHANGEUP, 2);
  await page.setViewportSize({ width: 390, height: 844 });
  await tablet(page);

  await act(page, 'Trial').click();
  await page.getByRole('button', { name: 'Begin trial A' }).click();
  await expect(nextThrow(page)).toHaveText(/Changeup, trial A/);
  await act(page, 'Throw').click();
  await page.getByRole('button', { name: 'slipped' }).click();
  await expect(lines(page).first()).toContainText('excluded: slipped');
  // Another throw comes in: what was opened still speaks of the one it was opened for.
  await throws(CHANGEUP);
  await expect(page.getByRole('button', { name: 'Throw 8 came: go to it' })).toBeVisible();
  await page.getByRole('group', { name: 'These throws were meant as' }).getByRole('button', { name: 'Split' }).click();
  await expect(lines(page).nth(1)).toContainText('Split');
  await act(page, 'Note').click();
  await expect(page.getByLabel('Note on this throw')).toBeFocused();
  await page.keyboard.type('k m 4 ?');
  await page.keyboard.press('Enter');
  await expect(lines(page).first()).toContainText('Note: k m 4 ?');
  await act(page, 'Bookmark: Throw 8').click();
  await expect(act(page, 'Bookmark: Throw 8')).toHaveAttribute('aria-pressed', 'true');
  await act(page, 'Arm').click();
  await page.locator('.sheet').getByLabel('tired').check();
  await page.locator('.sheet').getByRole('button', { name: 'Save what was said' }).click();
  await expect(page.locator('.sheet')).toContainText('Said by the coach');

  await act(page, 'Undo').click();
  await expect(acts(page)).toHaveCount(6);
  await expect(acts(page).first()).toContainText('Pain is only answered, never undone.');
  for (const said of ['Throw 8 bookmarked', 'Note “k m 4 ?”', 'Throw 7 meant as Split', 'Throw 7 excluded: slipped', 'Trial begun: Changeup']) {
    await page.getByRole('button', { name: `Undo: ${said}` }).click();
    await expect(acts(page).filter({ hasText: said })).toContainText('undone at');
  }
  await expect(nextThrow(page)).toHaveText(/Changeup, no trial/);
  await expect(lines(page).nth(1)).not.toContainText('excluded');
  await expect(lines(page).nth(1)).toContainText('Changeup');
  await expect(lines(page).first()).not.toContainText('Note');
  await expect(act(page, 'Bookmark: Throw 8')).toHaveAttribute('aria-pressed', 'false');
  // The list is still there when the page is loaded again.
  await page.reload();
  await act(page, 'Undo').click();
  await expect(acts(page)).toHaveCount(6);
  await page.keyboard.press('Escape');

  // What another coach has said since is left alone, and that is said.
  await intent(page, 'Curve').click();
  await expect(nextThrow(page)).toHaveText(/Curve/);
  const elsewhere = await browser.newPage({ viewport: { width: 820, height: 1180 } });
  await tablet(elsewhere);
  await intent(elsewhere, 'Sinker').click();
  await expect(nextThrow(page)).toHaveText(/Sinker/);
  await act(page, 'Undo').click();
  await expect(acts(page).first()).toContainText('Something else was said of it since');
  await expect(elsewhere.locator('.acts-read').getByRole('button', { name: 'Undo: Next intent Sinker' })).toBeVisible();
  await elsewhere.close();
  coach.close();
});

test('where none of the last acts has a way back, their list is still reached and scrolled by keyboard', async ({ page }) => {
  const coach = await begun();
  await page.setViewportSize({ width: 1280, height: 720 });
  await tablet(page, 'lang=es');
  for (const name of ['Curva', 'Slider', 'Sinker']) {
    await page.getByRole('group', { name: 'Intención del próximo tiro' }).getByRole('button', { name }).click();
    await expect(nextThrow(page)).toContainText(name);
  }
  await coach.say(opening('two', LEFT_HANDER));
  const list = page.locator('.acts-read');
  await expect(list.locator('.act-list li[data-undoing="elsewhere"]')).toHaveCount(3);
  expect(await list.evaluate((room) => room.scrollHeight - room.clientHeight)).toBeGreaterThan(0);
  await expectAccessible(page);
  await list.focus();
  await page.keyboard.press('End');
  await expect(list.locator('li').last()).toBeInViewport({ ratio: 1 });
  coach.close();
});

test('keys do what the buttons do, are listed under the question mark, and can be put away', async ({ page }) => {
  const coach = await begun();
  await coach.say(opening('two', LEFT_HANDER));
  await coach.say({ kind: 'mound-passed', session: 'one' });
  await page.setViewportSize({ width: 1280, height: 720 });
  await tablet(page);
  await expect(nextThrow(page)).toHaveText(/Changeup, no trial/);
  await page.keyboard.press('6');
  await expect(nextThrow(page)).toHaveText(/Curve, no trial/);
  await expect(page.getByRole('button', { name: 'Undo: Next intent Curve' })).toBeVisible();
  await page.keyboard.press('z');
  await expect(nextThrow(page)).toHaveText(/Changeup/);
  // What is said before the answer to the act before has come has no way back.
  await expect(page.locator('.acts-read')).toContainText('undone at');
  await page.keyboard.press('g');
  await expect(nextThrow(page)).toHaveText(/Changeup, trial A/);
  await expect(page.getByRole('button', { name: 'Undo: Trial begun: Changeup' })).toBeVisible();
  await page.keyboard.press('m');
  await expect(page.getByRole('heading', { name: 'Ione Castellan' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Undo: Mound passed to Ione Castellan' })).toBeVisible();
  await page.keyboard.press('z');
  await expect(page.getByRole('heading', { name: 'Wren Abelow' })).toBeVisible();
  await page.keyboard.press('ArrowRight');
  await expect(page.getByRole('heading', { name: 'Notes' })).toBeVisible();

  await page.keyboard.press('?');
  const list = page.getByRole('dialog', { name: 'Keys' });
  await expect(list).toContainText('its intent, from Four-seam to Other');
  await page.keyboard.press('1');
  await list.getByLabel('Single keys act on this device').uncheck();
  await page.keyboard.press('Escape');
  await expect(list).toBeHidden();
  await page.keyboard.press('2');
  await intent(page, 'Slider').click();
  await expect(nextThrow(page)).toHaveText(/Slider/);
  // Neither under the dialog nor once they are put away has a key said anything: the last facts are the trial, the mound there and back, and the tap.
  expect((await saidIn('one')).flatMap((said) => (said.kind === 'intent-set' ? [said.intent] : []))).toEqual(['four-seam', 'changeup', 'curve', 'changeup', 'slider']);
  coach.close();
});

test('the light for the sun and the hand are chosen on the screen, and this device keeps them', async ({ page }) => {
  const coach = await begun();
  await page.setViewportSize({ width: 820, height: 1180 });
  await tablet(page);
  const side = async () => (await act(page, 'Trial').boundingBox())!.x > 410 / 2;
  expect(await side()).toBe(true);
  await page.getByRole('button', { name: 'Sun' }).click();
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'sun');
  await goTo(page, 'Session');
  await page.getByRole('group', { name: 'The hand whose thumb taps' }).getByLabel('left').check();
  expect(await side()).toBe(false);
  await page.goto(page.url().replace(/\?.*/, '?lang=en'));
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'sun');
  expect(await side()).toBe(false);
  await page.getByRole('button', { name: 'Sun' }).click();
  await expect(page.locator('html')).not.toHaveAttribute('data-theme');
  coach.close();
});
