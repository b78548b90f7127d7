import { expect, type Locator, type Page } from '@playwright/test';
import type { Athlete } from '../../core/facts/coach.ts';
import { mpsToMph, mToInches } from '../../core/units/convert.ts';
import { LEFT_HANDER, tabTo } from './bench-mound.ts';
import { ATHLETE, opening, type TestCoach } from './coach.ts';
import { connectDevice, type TestDevice } from './device.ts';
import { expectAccessible, expectFits, PLAN } from './fits.ts';
import { inProve } from './in-prove.ts';
import type { TestServer } from './server.ts';
import { FIVE_FASTBALLS, summedUp } from './summed.ts';
import { takeHold } from './take-hold.ts';
import { test } from './with-server.ts';

const SIZES = [{ width: 390, height: 844 }, { width: 820, height: 1180 }, { width: 1920, height: 1080 }] as const;
/** Of the five fastballs: an interval that straddles 95 %. */
const EFFICIENCIES = [0.965, 0.94, 0.93, 0.955, 0.97] as const;
const FASTBALLS = FIVE_FASTBALLS.map((summed, index) => summedUp(summed, { rate: 2200, tilt: 25, efficiency: EFFICIENCIES[index]! }));

test.use({ viewport: { width: 1280, height: 900 } });

/** A session whose five fastballs are thrown. */
async function withFastballs(coach: TestCoach, device: TestDevice, athlete: Athlete = ATHLETE): Promise<void> {
  await coach.say(opening('one', athlete));
  await coach.say({ kind: 'intent-set', session: 'one', intent: athlete.mainFastball });
  for (const [index, fastball] of FASTBALLS.entries()) await device.throws(index + 1, fastball);
}

const plan = async (page: Page, { address }: TestServer, query = 'lang=en'): Promise<void> => void (await page.goto(`${address}/plan/north-1?${query}`));
const family = (page: Page, name: string): Locator => page.getByRole('radio', { name: new RegExp(`Plan with ${name}`) });
const setTarget = (page: Page): Locator => page.getByRole('button', { name: 'Set this target' });
const said = (page: Page): Locator => page.locator('.target-said');
const takes = (page: Page, what: string): Locator => page.locator('.plan-takes .measures div').filter({ hasText: what }).locator('dd');
const move = (page: Page): Locator => page.getByRole('slider', { name: 'Move the target zone' });
const newest = (coach: TestCoach) => [...coach.views.values()].at(-1)!;

test('before the first fastball Plan teaches the next step, and says it with one tap', async ({ page, server, coach, device }) => {
  await plan(page, server);
  await page.getByRole('link', { name: 'Open a session on Bench' }).waitFor();
  await coach.say(opening('one'));
  await expect(page.getByRole('heading', { name: 'Throw five fastballs' })).toBeVisible();
  await page.getByRole('button', { name: 'Say: next throw Four-seam' }).click();
  await expect(page.getByText('The next throw is meant as Four-seam.')).toBeVisible();
  for (const [index, fastball] of FASTBALLS.entries()) {
    await device.throws(index + 1, fastball);
    if (index === 1) await expect(page.getByRole('img', { name: '2 of 5 fastballs' })).toBeVisible();
    if (index === 3) await expect(page.getByRole('heading', { name: 'Throw one more fastball' })).toBeVisible();
  }
  await expect(page.locator('.plan-fastball')).toContainText('91.2 mph ± ');
  await expect(page.locator('.plan-families h2')).toContainText('Turnover first');
});

test('the fastball is said with its uncertainty, and an interval that straddles a mark is said to', async ({ page, server, coach, device }) => {
  await withFastballs(coach, device);
  await plan(page, server);
  const fastball = page.locator('.plan-fastball');
  // The median of the fifteen pairwise means of 91.2, 91.8, 90.9, 91.5 and 91 is 91.25; of the breaks 16.1 and 7.2.
  await expect(fastball.locator('dd')).toHaveText([/^91\.[23] mph ± 0\.\d mph$/, /^16\.1 in ± 0\.\d in$/, /^7\.2 in ± 0\.\d in arm side$/, '95 % (93 to 97)']);
  await expect(fastball).toContainText('5 fastballs, last of them');
  await expect(page.getByRole('img', { name: 'Fastball efficiency against the two marks' })).toBeVisible();
  await expect(page.locator('.plan-families')).toContainText('The interval straddles 95 %: more fastballs may move the order.');
  await expect(page.locator('.family')).toHaveCount(3);
});

test('a target that is set on Plan is the target on Bench and Wall, with its reason in the log', async ({ page, server, coach, device, context }) => {
  await withFastballs(coach, device);
  await plan(page, server);
  await expect(said(page)).toContainText('Proposed for Turnover.');
  expect(newest(coach).session?.zone).toBeNull();
  await setTarget(page).click();
  await expect(said(page)).toContainText('This is the target on Bench and Wall.');
  const { session, place } = newest(coach);
  const zone = session!.zone!;
  expect(session!.speedBand).not.toBeNull();
  await expect(said(page)).toContainText(`Middle ${Math.round(-mToInches(zone.verticalM))} in down`);

  const bench = await context.newPage();
  await bench.goto(`${server.address}/bench/north-1?lang=en`);
  await expect(bench.getByLabel('Centre, below fastball')).toHaveValue(String(Math.round(-mToInches(zone.verticalM) * 10) / 10));
  const wall = await context.newPage();
  await wall.goto(`${server.address}/wall/north-1`);
  await expect(wall.locator('.separation-plane .target-zone')).toHaveCount(1);
  const facts = (await (await fetch(`${server.address}/api/sessions/one`)).json()) as { facts: { place: number; said: { kind: string; reason?: string } }[] };
  expect(facts.facts.find((fact) => fact.place === place)?.said).toMatchObject({ kind: 'zone-set', reason: 'Turnover, as proposed by Plan' });
});

test('while the zone is dragged what it would take follows the finger, and nothing is set before it is said', async ({ page, server, coach, device }) => {
  await withFastballs(coach, device);
  await plan(page, server);
  await expect(page.locator('.left-over')).toContainText('Spin alone gets into the zone, ± ');
  const tilt = await takes(page, 'Tilt').textContent();
  const box = await takeHold(page, move(page));
  await page.mouse.move(box.x - 120, box.y + 170, { steps: 6 });
  await expect(page.locator('.left-over')).toContainText('a seam effect would have to add that');
  await expect(takes(page, 'Tilt')).not.toHaveText(tilt!);
  await page.mouse.up();
  await expect(said(page)).toContainText('Moved by hand, not set yet.');
  expect(newest(coach).session?.zone).toBeNull();
  await page.getByLabel('Reason').fill('more drop for his arm');
  await setTarget(page).click();
  await expect(said(page)).toContainText('This is the target on Bench and Wall.');
  expect(newest(coach).session?.zone?.verticalM).toBeLessThan(-0.25);
});

test('another family proposes its own target and grip, and its trial begins with them', async ({ page, server, coach, device }) => {
  await withFastballs(coach, device);
  await plan(page, server);
  await expect(family(page, 'Turnover')).toBeChecked();
  const turnover = await said(page).textContent();
  await family(page, 'Split').check();
  await expect(said(page)).toContainText('Proposed for Split.');
  await expect(said(page)).not.toHaveText(turnover!);
  await expect(page.locator('.plan-grip')).toContainText('fingers split');
  await page.getByRole('button', { name: 'Begin trial A with this grip' }).click();
  await expect(page.getByText('Trial A is being thrown with this grip.')).toBeVisible();
  expect(newest(coach).session?.trial).toMatchObject({ letter: 'A', intent: 'split', family: 'split', grip: { spread: 'split', seams: 'two-seam' } });
  expect(newest(coach).session?.intent).toBe('split');
  await family(page, 'Turnover').check();
  await expect(page.getByRole('button', { name: 'Begin trial B with this grip' })).toBeVisible();
});

test('pain takes every advice to throw away at once, and only its answer brings it back', async ({ page, server, coach, device }) => {
  await withFastballs(coach, device);
  await plan(page, server);
  await expect(page.getByRole('button', { name: /Begin trial/ })).toBeVisible();
  await coach.say({ kind: 'arm-reported', session: 'one', from: 'bench', said: 'pain', areas: ['elbow'] });
  const medical = page.getByRole('alert');
  await expect(medical).toContainText('see a licensed medical professional before throwing again');
  await expect(medical).toContainText('pain in elbow');
  for (const gone of ['.plan-families', '.plan-target', '.plan-takes', '.plan-grip', '.first-fastballs']) await expect(page.locator(gone)).toHaveCount(0);
  await expect(page.getByRole('button')).toHaveCount(0);
  await expect(page.locator('.plan-fastball')).toBeVisible();
  await coach.say({ kind: 'pain-answered', session: 'one', answer: 'reported-by-mistake', words: 'wrong button' });
  await expect(medical).toHaveCount(0);
  await expect(page.getByRole('button', { name: /Begin trial/ })).toBeVisible();
});

test('pain before the first fastball replaces the advice to throw five', async ({ page, server, coach }) => {
  await coach.say(opening('one'));
  await plan(page, server);
  await expect(page.getByRole('heading', { name: 'Throw five fastballs' })).toBeVisible();
  await coach.say({ kind: 'arm-reported', session: 'one', from: 'bench', said: 'numb', areas: ['hand'] });
  await expect(page.getByRole('alert')).toContainText('licensed medical professional');
  await expect(page.getByText('Throw five fastballs')).toHaveCount(0);
});

test('to a spin-only device a seam effect is not visible, and Plan says it where it matters', async ({ page, server, coach }) => {
  const device = await connectDevice(server, { device: 'spin-1', sight: 'spin-only', axis: 'inferred' });
  await coach.say(opening('one'));
  await coach.say({ kind: 'intent-set', session: 'one', intent: 'four-seam' });
  for (const [index, [speed]] of FIVE_FASTBALLS.entries()) await device.throws(index + 1, { summary: { releaseSpeed: speed }, spin: { rate: 2200 + index * 10, tilt: 25, efficiency: EFFICIENCIES[index]! } });
  await plan(page, server);
  await expect(page.locator('.family').filter({ hasText: 'Seam effect' })).toContainText('not visible to this device');
  await expect(page.locator('.plan-fastball')).toContainText('Movement is inferred from spin.');
  await move(page).focus();
  for (let pressed = 0; pressed < 6; pressed += 1) await page.keyboard.press('Shift+ArrowDown');
  for (let pressed = 0; pressed < 6; pressed += 1) await page.keyboard.press('Shift+ArrowLeft');
  await expect(page.locator('.left-over')).toContainText('Whether it does is not visible to this device.');
  await device.close();
});

test('a device that tells neither movement nor axis leaves a ranking without a target, and says why', async ({ page, server, coach }) => {
  const device = await connectDevice(server, { device: 'gun-1', sight: 'spin-only', axis: 'none' });
  await coach.say(opening('one'));
  await coach.say({ kind: 'intent-set', session: 'one', intent: 'four-seam' });
  for (let sequence = 1; sequence <= 5; sequence += 1) await device.throws(sequence, { summary: { releaseSpeed: 90 }, spin: { rate: 2200 } });
  await plan(page, server);
  await expect(page.getByText('The movement of these fastballs is not visible to this device')).toBeVisible();
  await expect(page.locator('.plan-fastball')).toContainText('Spin efficiencynot visible to this device');
  await expect(page.locator('.plan-families h2')).toContainText('Try all three, in this order');
  await expect(page.locator('.separation-plane')).toHaveCount(0);
  await device.close();
});

test('Plan works by keyboard alone', async ({ page, server, coach, device }) => {
  await withFastballs(coach, device);
  await plan(page, server);
  await tabTo(page, family(page, 'Turnover'));
  await page.keyboard.press('ArrowDown');
  await expect(said(page)).toContainText(/Proposed for (Split|Seam effect)\./);
  await tabTo(page, move(page));
  const before = await said(page).textContent();
  await page.keyboard.press('Shift+ArrowDown');
  await expect(said(page)).not.toHaveText(before!);
  await tabTo(page, setTarget(page));
  await page.keyboard.press('Enter');
  await expect(said(page)).toContainText('This is the target on Bench and Wall.');
  await tabTo(page, page.getByRole('button', { name: 'Begin trial A with this grip' }));
  await page.keyboard.press('Enter');
  await expect(page.getByText('Trial A is being thrown with this grip.')).toBeVisible();
  expect(newest(coach).session?.trial?.letter).toBe('A');
});

test('when the mound passes to another athlete nothing that was planned for the first is left', async ({ page, server, coach, device }) => {
  await withFastballs(coach, device);
  await plan(page, server);
  await family(page, 'Split').check();
  await move(page).press('ArrowDown');
  await expect(said(page)).toContainText('Moved by hand');
  await coach.say(opening('two', LEFT_HANDER));
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Ione Castellan');
  await expect(page.getByRole('heading', { name: 'Throw five fastballs' })).toBeVisible();
  await coach.say({ kind: 'mound-passed', session: 'one' });
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Wren Abelow');
  await expect(said(page)).toContainText('Proposed for Turnover.');
});

test('a target set elsewhere shows here, and a closed session can only be read', async ({ page, server, coach, device }) => {
  await withFastballs(coach, device);
  await plan(page, server);
  await expect(setTarget(page)).toBeVisible();
  await coach.say({ kind: 'zone-set', session: 'one', reason: null, speedBand: { lowMps: -5, highMps: -3 }, zone: { kind: 'ellipse', verticalM: -0.2032, armSideM: 0.1016, verticalRadiusM: 0.07, armSideRadiusM: 0.07 } });
  await expect(said(page)).toHaveText(`Middle 8 in down, 4 in arm side, ${Math.round(mpsToMph(3))} to ${Math.round(mpsToMph(5))} mph slower. This is the target on Bench and Wall.`);
  await coach.say({ kind: 'session-closed', session: 'one' });
  await expect(page.getByText('This session is closed: its plan can be read, nothing can be set.')).toBeVisible();
  await expect(page.locator('.standing-word')).toHaveAttribute('data-standing', 'closed');
  await expect(move(page)).toHaveCount(0);
  await expect(page.getByRole('button', { name: /Set this target|Begin trial/ })).toHaveCount(0);
});

test('the start page and Bench lead to Plan', async ({ page, server, coach }) => {
  await coach.say(opening('one'));
  await page.goto(`${server.address}/?lang=en`);
  await page.getByRole('link', { name: 'Plan', exact: true }).click();
  await expect(page).toHaveURL(/\/plan\/north-1/);
  await page.getByRole('link', { name: 'Bench' }).click();
  await page.getByRole('link', { name: 'Plan' }).click();
  await expect(page.getByRole('heading', { name: 'Throw five fastballs' })).toBeVisible();
});

for (const language of ['en', 'es'] as const) {
  test(`Plan clips and overlaps no word and passes the accessibility check on phone, tablet and big screen, in ${language}`, inProve(), async ({ page, server, coach, device }) => {
    await withFastballs(coach, device);
    for (const viewport of SIZES) {
      await page.setViewportSize(viewport);
      await page.emulateMedia({ colorScheme: viewport.width === 820 ? 'dark' : 'light' });
      await plan(page, server, `lang=${language}`);
      await expect(page.locator('.plan-grip')).toBeVisible();
      for (const chosen of await page.getByRole('radio').all()) {
        await chosen.check();
        await expectFits(page, PLAN);
      }
      await expectAccessible(page);
    }
    await coach.say({ kind: 'arm-reported', session: 'one', from: 'bench', said: 'pain', areas: ['shoulder', 'elbow'] });
    await expect(page.getByRole('alert')).toBeVisible();
    for (const viewport of SIZES) {
      await page.setViewportSize(viewport);
      await expectFits(page, PLAN);
      await expectAccessible(page);
    }
  });
}
