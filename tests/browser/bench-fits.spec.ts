import { AxeBuilder } from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { CHANGEUP, LEFT_HANDER, begun, tablet, throws, withMound } from './bench-mound.ts';
import { opening } from './coach.ts';
import { overlaps, readTexts } from './reading.ts';

/** Width, height, and how many places there are to choose from: what is always there needs no choosing. */
const SCREENS = [[390, 844, 4], [820, 1180, 3], [1280, 720, 2], [1920, 1080, 2]] as const;

withMound();

for (const theme of ['light', 'dark'] as const) {
  test(`every place of Bench passes the accessibility check and clips no word, in ${theme}`, async ({ page }) => {
    test.setTimeout(120_000);
    await page.setViewportSize({ width: 390, height: 844 });
    await tablet(page, `theme=${theme}&lang=es`);
    await expect(page.getByRole('heading', { name: '¿Quién lanza?' })).toBeVisible();
    await expectFits(page);
    await expectReadable(page);
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
        await expectFits(page);
        if (width === 390) await expectReadable(page);
      }
      await expectReadable(page);
      await places[0]!.click();
      for (const panel of ['Intención', 'Excluir', 'Mover', 'Nota']) {
        await page.getByRole('checkbox', { name: 'Elegir tiro 8' }).check();
        await page.getByRole('button', { name: panel, exact: true }).click();
        await expectFits(page);
        if (width === 390) await expectReadable(page);
      }
      await page.getByRole('checkbox', { name: 'Elegir tiro 8' }).uncheck();
    }
    coach.close();
  });
}

/** No violation of the accessibility rules. */
async function expectReadable(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([]);
}

/** No text cut off or over another, nothing wider than its room, nothing to scroll sideways, and room for a thumb on every button. */
async function expectFits(page: Page): Promise<void> {
  const texts = await readTexts(page);
  expect(texts.filter(({ cut }) => cut).map(({ text }) => text)).toEqual([]);
  expect(overlaps(texts)).toEqual([]);
  const faults = await page.evaluate(() => {
    const shown = [...document.querySelectorAll<HTMLElement>('.bench *')].filter((element) => element.checkVisibility() && element.closest('svg') === null && element.closest('.unseen') === null);
    const wide = shown.filter((element) => getComputedStyle(element).display !== 'inline' && element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0 && element.tagName !== 'INPUT');
    const small = shown.filter((element) => element.matches('button, a, .choice-words label') && (element.offsetHeight < 43.5 || element.offsetWidth < 43.5));
    const sideways = document.documentElement.scrollWidth > innerWidth || document.documentElement.scrollHeight > innerHeight + 1;
    return [...wide.map((element) => `clipped: ${element.outerHTML}`), ...small.map((element) => `small: ${element.outerHTML}`), ...(sideways ? ['the page scrolls'] : [])];
  });
  expect(faults).toEqual([]);
}
