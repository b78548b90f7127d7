import { expect } from '@playwright/test';
import { ATHLETE, opening } from './coach.ts';
import { counted } from './device.ts';
import { BENCH, expectAccessible, expectFits, PLAN } from './fits.ts';
import { FIVE_FASTBALLS, summedUp, type Summed } from './summed.ts';
import { test } from './with-server.ts';

/** A changeup and its tilt in degrees, and where it crossed the plate in feet: to the catcher's right, and high. */
const CHANGEUPS: readonly (readonly [Summed, tilt: number, plate: { x: number; z: number }])[] = [
  [[81.8, 6.6, 13.4], 66, { x: -0.3, z: 1.6 }], [[82.3, 5.2, 14.6], 70, { x: -0.6, z: 1.4 }], [[81.5, 9.1, 11], 48, { x: 0.9, z: 2.9 }],
];

test('where a changeup is aimed follows the target on Plan, stands by it on Bench, and counts the trial’s throws', async ({ page, server, coach, device }) => {
  const throws = counted(device);
  await coach.say(opening('one', ATHLETE));
  await coach.say({ kind: 'intent-set', session: 'one', intent: 'four-seam' });
  for (const summed of FIVE_FASTBALLS) await throws(summedUp(summed, { rate: 2200, tilt: 25, efficiency: 0.96 }));
  await page.setViewportSize({ width: 1920, height: 1080 });
  await page.goto(`${server.address}/plan/north-1?lang=en`);
  const aims = page.locator('.aims');
  const tilt = aims.locator('dd').first();
  await expect(tilt).toHaveText(/^\d+:\d\d \(\d+:\d\d to \d+:\d\d\)$/);
  await expect(aims.getByRole('img', { name: 'Tilt on the clock that the pitcher sees' })).toBeVisible();
  const proposed = await tilt.textContent();
  const move = page.getByRole('slider', { name: 'Move the target zone' });
  await move.press('Shift+ArrowDown');
  await expect(tilt).not.toHaveText(proposed!);
  await page.getByRole('radio', { name: /Plan with Split/ }).check();
  await expect(tilt).toHaveText('none: tilt does not describe split');
  await page.getByRole('radio', { name: /Plan with Turnover/ }).check();
  await page.getByRole('button', { name: 'Set this target' }).click();
  await page.getByRole('button', { name: 'Begin trial A with this grip' }).click();
  await expect(page.getByRole('group', { name: 'Seen on trial A' })).toBeVisible();
  for (const [summed, degrees, plate] of CHANGEUPS) {
    const { summary, ...thrown } = summedUp(summed, { rate: 1750, tilt: degrees, efficiency: 0.93 });
    await throws({ ...thrown, summary: { ...summary!, plate } });
  }
  await expect(aims).toContainText('2 of 3 in trial A');
  await expect(aims.locator('.so-far')).toHaveText(['2 of 3 in trial A', '2 of 3 in trial A']);
  await expect(aims.locator('.tilt-clock .tilt[data-within="yes"]')).toHaveCount(2);
  await expect(aims.locator('.plate-aim')).toHaveCount(1);

  // What the coach sees: one tap, and it stands among the reasons.
  await page.getByRole('radio', { name: /Plan with Seam effect/ }).check();
  await page.getByRole('button', { name: 'Begin trial B with this grip' }).click();
  const seam = page.locator('.family').filter({ hasText: 'Seam effect' });
  await page.getByRole('group', { name: 'Seen on trial B' }).getByLabel('Slight cut speaks for seam effect').check();
  await expect(seam).toContainText('a slight cut, the coach saw');
  await coach.say({ kind: 'trial-resumed', session: 'one', trial: 'A' });
  await expect(page.getByRole('group', { name: 'Seen on trial A' }).getByLabel('Slight cut')).not.toBeChecked();

  for (const [width, height] of [[390, 844], [1280, 800]] as const) {
    await page.setViewportSize({ width, height });
    await page.goto(`${server.address}/plan/north-1?lang=es`);
    await expect(aims).toContainText('2 de 3 en ensayo A');
    await expectFits(page, PLAN);
    await page.goto(`${server.address}/bench/north-1?lang=es`);
    if (width === 390) await page.getByRole('navigation', { name: 'Partes de Banca' }).getByRole('button', { name: 'Blanco' }).click();
    await aims.scrollIntoViewIfNeeded();
    await expect(aims).toContainText('2 de 3 en ensayo A');
    await expectFits(page, BENCH);
    await page.getByRole('navigation', { name: 'Partes de Banca' }).getByRole('button', { name: 'Ensayo', exact: true }).click();
    await expect(page.getByRole('group', { name: 'Visto en el ensayo A' }).getByRole('checkbox')).toHaveCount(4);
    await expectFits(page, BENCH);
  }
  await expectAccessible(page);
});
