import { expect, test, type Page } from '@playwright/test';
import { CHANGEUP, LEFT_HANDER, begun, tablet, throws, withMound } from './bench-mound.ts';
import { opening } from './coach.ts';
import { BENCH, expectAccessible, expectContrast, expectFits } from './fits.ts';
import { inProve } from './in-prove.ts';

/** Width, height, and how many places there are to choose from: what is always there needs no choosing. */
const SCREENS = [[390, 844, 4], [820, 1180, 3], [1180, 820, 3], [1280, 720, 2], [1920, 1080, 2]] as const;
const SHEETS = ['Ensayo: empezar o retomar', 'Tiro: corregir el último', 'Brazo: lo que se dijo', 'Nota de un tiro o de la sesión', 'Deshacer: los últimos actos de esta banca'];

withMound();

/** A session that has everything on the screen at once: two trials in turns, a target, another athlete waiting, a question due. */
async function busy(): Promise<() => void> {
  const coach = await begun();
  await coach.say({ kind: 'trial-begun', session: 'one', intent: 'changeup', cue: { words: 'turn the doorknob', focus: 'external' }, grip: { seams: 'two-seam', spread: 'split', thumbDeg: 45, pressure: 'ring', depth: 'deep', tiltDeg: -20 } });
  await throws(CHANGEUP, 3);
  await coach.say({ kind: 'trial-begun', session: 'one', intent: 'changeup', cue: { words: 'through the mitt', focus: null }, grip: null });
  await throws(CHANGEUP, 7);
  await coach.say({ kind: 'zone-set', session: 'one', zone: { kind: 'ellipse', verticalM: -0.2, armSideM: 0.05, verticalRadiusM: 0.08, armSideRadiusM: 0.1 }, speedBand: { lowMps: -5, highMps: -3 }, reason: null });
  await coach.say(opening('two', LEFT_HANDER));
  await coach.say({ kind: 'mound-passed', session: 'one' });
  return () => coach.close();
}

/** Goes through every place and every sheet, and looks at each. */
async function everywhere(page: Page, choices: number, look: () => Promise<void>): Promise<void> {
  const buttons = page.getByRole('navigation', { name: 'Partes de Banca' }).getByRole('button');
  await expect(buttons).toHaveCount(choices);
  for (const place of (await buttons.all()).toReversed()) {
    await place.click();
    await look();
  }
  for (const sheet of SHEETS) {
    await page.getByRole('button', { name: sheet }).click();
    await expect(page.getByRole('group', { name: sheet })).toBeVisible();
    await look();
  }
  await page.keyboard.press('Escape');
  await expect(page.locator('.sheet')).toBeHidden();
}

/** What is said of the next throw, and every act, stands on the screen in full; the acts in the lower half. */
async function expectUnderThumb(page: Page): Promise<void> {
  await expect(page.locator('.next-throw')).toBeInViewport({ ratio: 1 });
  const { height } = page.viewportSize()!;
  for (const act of await page.locator('.acts button').all()) {
    await expect(act).toBeInViewport({ ratio: 1 });
    expect((await act.boundingBox())!.y).toBeGreaterThan(height / 2);
  }
}

test('every place and sheet of Bench clips no word, leaves room for a thumb, and keeps the next throw in sight', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await tablet(page, 'theme=light&lang=es');
  await expect(page.getByRole('heading', { name: '¿Quién lanza?' })).toBeVisible();
  await expectFits(page, BENCH);
  await expectAccessible(page);
  const leave = await busy();
  for (const [width, height, choices] of SCREENS) {
    await page.setViewportSize({ width, height });
    await everywhere(page, choices, async () => {
      await expectFits(page, BENCH);
      await expectUnderThumb(page);
    });
    await page.getByRole('navigation', { name: 'Partes de Banca' }).getByRole('button').first().click();
    await page.getByRole('checkbox', { name: 'Elegir tiro 8' }).check();
    for (const panel of ['Intención', 'Excluir', 'Mover', 'Nota']) {
      await page.getByRole('button', { name: panel, exact: true }).click();
      await expectFits(page, BENCH);
    }
    await page.getByRole('checkbox', { name: 'Elegir tiro 8' }).uncheck();
  }
  leave();
});

for (const theme of ['light', 'dark', 'sun'] as const) {
  test(`every place and sheet of Bench passes the accessibility check, in ${theme}`, inProve(), async ({ page }) => {
    const leave = await busy();
    await page.setViewportSize({ width: 390, height: 844 });
    await tablet(page, `theme=${theme}&lang=es`);
    await everywhere(page, 4, async () => {
      await expectAccessible(page);
      if (theme !== 'sun') return;
      await expectContrast(page);
      await expectFits(page, BENCH);
    });
    await page.keyboard.press('?');
    await expect(page.getByRole('dialog', { name: 'Teclas' })).toBeVisible();
    await expectAccessible(page);
    leave();
  });
}
