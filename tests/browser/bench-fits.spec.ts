import { expect, test } from '@playwright/test';
import { CHANGEUP, LEFT_HANDER, begun, tablet, throws, withMound } from './bench-mound.ts';
import { opening } from './coach.ts';
import { BENCH, expectAccessible, expectFits } from './fits.ts';

/** Width, height, and how many places there are to choose from: what is always there needs no choosing. */
const SCREENS = [[390, 844, 4], [820, 1180, 3], [1280, 720, 2], [1920, 1080, 2]] as const;

withMound();

for (const theme of ['light', 'dark'] as const) {
  test(`every place of Bench passes the accessibility check and clips no word, in ${theme}`, async ({ page }) => {
    test.setTimeout(120_000);
    await page.setViewportSize({ width: 390, height: 844 });
    await tablet(page, `theme=${theme}&lang=es`);
    await expect(page.getByRole('heading', { name: '¿Quién lanza?' })).toBeVisible();
    await expectFits(page, BENCH);
    await expectAccessible(page);
    const coach = await begun();
    await coach.say({ kind: 'trial-begun', session: 'one', intent: 'changeup', cue: { words: 'turn the doorknob', focus: 'external' }, grip: { seams: 'two-seam', spread: 'split', thumbDeg: 45, pressure: 'ring', depth: 'deep', tiltDeg: -20 } });
    await throws(CHANGEUP, 3);
    await coach.say({ kind: 'zone-set', session: 'one', zone: { kind: 'ellipse', verticalM: -0.2, armSideM: 0.05, verticalRadiusM: 0.08, armSideRadiusM: 0.1 }, speedBand: { lowMps: -5, highMps: -3 }, reason: null });
    await coach.say(opening('two', LEFT_HANDER));
    await coach.say({ kind: 'mound-passed', session: 'one' });
    for (const [width, height, choices] of SCREENS) {
      await page.setViewportSize({ width, height });
      const buttons = page.getByRole('navigation', { name: 'Partes de Banca' }).getByRole('button');
      await expect(buttons).toHaveCount(choices);
      const places = await buttons.all();
      for (const place of places) {
        await place.click();
        await expectFits(page, BENCH);
        if (width === 390) await expectAccessible(page);
      }
      await expectAccessible(page);
      await places[0]!.click();
      for (const panel of ['Intención', 'Excluir', 'Mover', 'Nota']) {
        await page.getByRole('checkbox', { name: 'Elegir tiro 8' }).check();
        await page.getByRole('button', { name: panel, exact: true }).click();
        await expectFits(page, BENCH);
        if (width === 390) await expectAccessible(page);
      }
      await page.getByRole('checkbox', { name: 'Elegir tiro 8' }).uncheck();
    }
    coach.close();
  });
}
