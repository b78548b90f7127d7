import { expect, type Page } from '@playwright/test';
import { easyFrame, FASTBALL } from './by-hand.ts';
import { BAND, targetIsSet } from './changeup-next.ts';
import { connectCoach } from './coach.ts';
import { connectDevice, counted } from './device.ts';
import { BENCH, expectAccessible, expectFits } from './fits.ts';
import { inProve } from './in-prove.ts';
import { startServer, temporaryFolder, type TestServer } from './server.ts';
import { cue, ON_TARGET, practisedBefore, SHORT } from './two-days.ts';
import { test } from './with-server.ts';

const PHONE = { width: 390, height: 844 };
const TABLET = { width: 820, height: 1180 };
const SIZES = [PHONE, TABLET, { width: 1920, height: 1080 }];

async function open(page: Page, server: TestServer, size: { width: number; height: number }, query = 'lang=en', screen = 'bench'): Promise<void> {
  await page.setViewportSize(size);
  await page.goto(`${server.address}/${screen}/north-1?${query}`);
  await page.locator('h1').first().waitFor();
}
const goTo = (page: Page, place: string | RegExp) => page.locator('.places').getByRole('button', { name: place, exact: true }).click();
const stage = (page: Page, name: string) => page.locator('.way-stages > li').filter({ has: page.locator('.way-stage', { hasText: name }) });

test('the way shows every gate with what is missing, and one tap passes a stage or goes back', async ({ page, server, coach, device }) => {
  const throwAll = counted(device);
  await targetIsSet(coach, throwAll, { session: 'one', speedBand: BAND });
  await coach.say(cue('one', 'Through the glove'));
  await throwAll(ON_TARGET, 9);
  await throwAll(SHORT, 1);
  await open(page, server, TABLET);
  await goTo(page, 'Session');
  await expect(page.locator('.way-stage')).toHaveText(['Catch play', 'Long toss', 'Flat ground', 'Mound', 'Hitters']);
  const mound = stage(page, 'Mound');
  await expect(mound).toHaveAttribute('aria-current', 'step');
  // 2¹⁰ / (11·10) = 9.3 against a half: not yet 20.
  await expect(mound.locator('.way-more')).toContainText(/9 of 10 on target: at least 4\d % is shown, more than 50 % is asked\. ?Comfort has not been asked yet\./);
  await expect(mound.locator('.way-history')).toHaveText(/: 9 of 10 on target$/);
  await stage(page, 'Catch play').locator('summary').first().click();
  await expect(stage(page, 'Catch play')).toContainText('No target zone in this stage: the gate is comfort alone, and the athlete says it.');

  await expect(mound.getByRole('button', { name: 'Not met, passed all the same: on to Hitters' })).toBeVisible();
  await mound.getByText('Set the gate of Mound').click();
  await mound.getByLabel('On-target share above').fill('40');
  await mound.getByLabel('On-target share above').press('Enter');
  await mound.getByRole('group', { name: 'The athlete says this grip is' }).getByLabel('comfortable', { exact: true }).check();
  await expect(mound.locator('.way-mark')).toHaveText('gate met');
  await expect(mound.locator('.way-advice')).toHaveText('The gate is met. Going on to Hitters is the coach’s to say.');

  await mound.getByRole('button', { name: 'Passed: on to Hitters' }).click();
  await expect(stage(page, 'Hitters')).toHaveAttribute('aria-current', 'step');
  await expect(mound.locator('.way-mark')).toHaveText('passed');
  await expect(mound.locator('.way-history')).toContainText('passed as trial A');
  await goTo(page, 'Target');
  await expect(page.locator('.part.target')).toContainText('No target zone yet.');
  await expect(page.locator('.throw-verdict').first()).toHaveText('2 in short');
  await goTo(page, 'Session');
  await stage(page, 'Hitters').getByRole('button', { name: 'Back to Mound' }).click();
  await expect(mound).toHaveAttribute('aria-current', 'step');
  await goTo(page, 'Target');
  await expect(page.getByLabel('Centre, below fastball')).toHaveValue('8');
  await goTo(page, 'Session');
  await mound.getByLabel('On-target share above').fill('80');
  await mound.getByLabel('On-target share above').press('Enter');
  await expect(mound.locator('.way-mark')).toHaveText('passed by the coach, not met');
  await expect(mound.locator('.way-more')).toContainText(/The coach passed it on .* as it stands now the gate is not met\./);
  await goTo(page, 'Target');
  await page.getByRole('button', { name: 'Take the target of Mound away' }).click();
  await page.getByLabel('Why', { exact: true }).fill('back to feel');
  await page.getByRole('button', { name: 'Take it away' }).click();
  await expect(page.locator('.part.target')).toContainText('No target zone yet.');
  await goTo(page, 'Session');
  await expect(mound.locator('.way-more')).toContainText('No target zone in this stage: the gate is comfort alone, and the athlete says it.');
  await expect(mound.locator('.way-mark')).toHaveText('passed');
});

test('a fastball that sinks is told, and one tap forms the baseline anew; the body’s line opens to its evidence', async ({ page, server, coach, device }) => {
  const throwAll = counted(device);
  await targetIsSet(coach, throwAll, { session: 'one', speedBand: BAND });
  await coach.say({ kind: 'intent-set', session: 'one', intent: 'four-seam' });
  await throwAll(easyFrame({ ...FASTBALL, speedMph: 87 }), 8);
  await coach.say(cue('one', 'Through the glove'));
  await throwAll(ON_TARGET, 1);
  await open(page, server, TABLET);
  await expect(page.locator('.drifted')).toHaveText('The fastball has left its baseline: a new one is offered under Target.');
  await goTo(page, 'Target');
  // 3·(1 − 0.7⁸) = 2.8
  await expect(page.locator('.drift')).toContainText('The fastball has sunk 2.8 mph below this baseline.');
  await expect(page.locator('.drift')).toContainText('Separation gained from a tiring or lazy fastball is not separation.');
  await page.getByRole('button', { name: 'Form a new baseline from the last five' }).click();
  await expect(page.locator('#baseline-title')).toHaveText('Fastball baseline 2');
  await expect(page.locator('.drift')).toHaveCount(0);
  await expect(page.locator('.drifted')).toHaveCount(0);

  await expect(page.locator('.body-line summary')).toHaveText('Body on this trial: cannot tell');
  await page.locator('.body-line summary').click();
  await expect(page.locator('.body-line')).toContainText('nothing here times delivery or arm');
  await expect(page.locator('.body-line')).toContainText('Fastballs of late against the first five: cannot tell yet. −3.0 mph');
});

test('a day later a set without feedback is offered, started with one tap, and told as what it is', async ({ page, context }) => {
  const { folder, remove } = temporaryFolder();
  await practisedBefore(folder);
  const server = await startServer(folder);
  const coach = await connectCoach(server, 'north-1');
  const device = await connectDevice(server, { run: 'run-b' });
  const throwAll = counted(device);
  await targetIsSet(coach, throwAll, { session: 'today', speedBand: BAND });
  const plan = await context.newPage();
  await open(plan, server, TABLET, 'lang=en', 'plan');
  await expect(plan.locator('.next-day')).toContainText(/Trial B of .* is near its gate\. Practice is not learning/);
  await open(page, server, PHONE);
  await goTo(page, 'Trial');
  await expect(page.locator('.next-day')).toContainText('“Through the glove”');
  await page.getByRole('button', { name: 'Start it: 10 throws without feedback' }).click();
  await expect(page.locator('.next-day')).toContainText('Feedback is off. No throw of the set yet.');
  await expect(page.locator('.next-throw')).toContainText('trial A');
  expect((await coach.reaches(1)).session).toMatchObject({ feedback: { mode: { kind: 'none' } }, trial: { letter: 'A', cue: { words: 'Through the glove' } } });
  await throwAll(ON_TARGET, 6);
  await throwAll(SHORT, 1);
  // Wilson for 6 of 7 at 95 %: 48.7 to 97.4 %.
  await expect(page.locator('.next-day')).toContainText('Trial A, without feedback: 6 of 7 on target (Wilson interval 49 % to 97 %).');
  await expect(page.locator('.next-day')).toContainText(/When last practised, .*: 9 of 9\./);
  await expect(page.locator('.next-day')).toContainText('no verdict rests on them');
  await coach.say({ kind: 'arm-reported', session: 'today', from: 'bench', said: 'pain', areas: ['elbow'] });
  await coach.say({ kind: 'stage-set', session: 'today', stage: 'hitters', distanceM: 18.4404, effort: 'full' });
  await expect(page.locator('.next-day')).toHaveCount(0);
  for (const screen of [page, plan]) await expectAccessible(screen);
  coach.close();
  await device.close();
  await server.stop();
  remove();
});

for (const lang of ['en', 'es'] as const) {
  test(`with everything opened Bench fits phone, tablet and wide screen and passes the accessibility check, in ${lang}`, inProve(), async ({ page, server, coach, device }) => {
    const throwAll = counted(device);
    await targetIsSet(coach, throwAll, { session: 'one', speedBand: BAND });
    await coach.say(cue('one', 'Through the glove'));
    await throwAll(SHORT, 6);
    await coach.say({ kind: 'intent-set', session: 'one', intent: 'four-seam' });
    await throwAll(easyFrame({ ...FASTBALL, speedMph: 87 }), 8);
    await coach.say({ kind: 'gate-passed', session: 'one', stage: 'mound', trial: 'A', reason: 'hitters wait tomorrow' });
    for (const theme of ['light', 'dark']) {
      for (const size of SIZES) {
        await open(page, server, size, `lang=${lang}&theme=${theme}`);
        for (const place of await page.locator('.places').getByRole('button').all()) {
          await place.click();
          await page.evaluate(() => document.querySelectorAll<HTMLDetailsElement>('.way details, .body-line').forEach((one) => { one.open = true; }));
          await expectFits(page, BENCH);
          if (size !== TABLET) await expectAccessible(page);
        }
      }
    }
  });
}
