import { expect, type Locator, type Page } from '@playwright/test';
import type { Habit } from '../parity/flown.ts';
import { expectBetter, expectReported, verdictOn } from './b-against-a.ts';
import { chooseThrow, goTo, intent, LEFT_HANDER, lines, nextThrow } from './bench-mound.ts';
import { throwingAt } from './bullpen.ts';
import { opening } from './coach.ts';
import { test } from './with-server.ts';

const TABLET = { width: 820, height: 1180 };
const PHONE = { width: 390, height: 844 };
const BIG = { width: 1920, height: 1080 };

const FASTBALL: Habit = { speedMph: 91, spinRpm: 2250, tiltDeg: 22, efficiency: 0.97 };
/** A slower fastball: much of its rise is still there. */
const FLOATING: Habit = { speedMph: 82, spinRpm: 1900, tiltDeg: 35, efficiency: 0.95 };
/** Its spin turned over to the arm side. */
const TURNED: Habit = { speedMph: 80, spinRpm: 1600, tiltDeg: 62, efficiency: 0.95 };
/** Let out between the fingers: little spin. */
const DEAD: Habit = { speedMph: 82, spinRpm: 1100, tiltDeg: 50, efficiency: 0.8 };

const step = test.step;
const baseline = (page: Page): Locator => page.getByRole('region', { name: /Fastball baseline/ });
const block = (page: Page): Locator => page.locator('.next-block');

test.use({ viewport: TABLET, timezoneId: 'America/Chicago' });

test('a good evening: a new athlete, five fastballs, a plan, three trials in blocks, a verdict and the report', async ({ page, browser, server, coach, device }) => {
  const throws = throwingAt(device, 7);
  const wall = await browser.newPage({ viewport: BIG });

  await step('the start page leads to Bench, and Bench opens a session for somebody new', async () => {
    await page.goto(`${server.address}/?lang=en`);
    await wall.goto(`${server.address}/wall/north-1`);
    await expect(wall.locator('.wall-lead')).toHaveText('Nobody has the mound');
    await page.getByRole('link', { name: 'Bench' }).click();
    await expect(page.getByRole('heading', { name: 'Who throws?' })).toBeVisible();
    await page.getByLabel('Name').fill('Rowan Tellado');
    await page.getByLabel('Right-handed').check();
    await page.getByLabel('Birth year').fill('2001');
    await page.getByRole('button', { name: 'Open session for Rowan Tellado' }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Rowan Tellado');
    await expect(baseline(page)).toContainText('Forming: 0 of 5 fastballs of this stage.');
    await expect(wall.locator('h1')).toHaveText('Rowan Tellado');
    await expect(wall.locator('.wall-forming')).toContainText('5 more fastballs and separation shows.');
  });

  await step('five fastballs are the baseline', async () => {
    await intent(page, 'Four-seam').click();
    await expect(nextThrow(page)).toHaveText('Next throw Four-seam, no trial');
    await throws('right', FASTBALL, 4);
    await expect(baseline(page)).toContainText('Forming: 4 of 5 fastballs of this stage.');
    await expect(wall.locator('.wall-forming')).toContainText('1 more fastball and separation shows.');
    await throws('right', FASTBALL, 1);
    await expect(lines(page)).toHaveCount(5);
    await expect(baseline(page)).toContainText(/Fastball baseline 1\s*9[01]\.\d mph ± \d\.\d mph, Mound, 5 fastballs, last of them/);
    await expect(wall.locator('.separation-plane')).toBeVisible();
  });

  await step('Plan ranks the families, sets a target and begins trial A', async () => {
    await page.getByRole('link', { name: 'Plan', exact: true }).click();
    await expect(page.locator('.plan-fastball')).toContainText('5 fastballs');
    await expect(page.locator('.family')).toHaveCount(3);
    await page.getByRole('radio', { name: /Plan with Turnover/ }).check();
    await expect(page.locator('.target-said')).toContainText('Proposed for Turnover.');
    await page.getByRole('button', { name: 'Set this target' }).click();
    await expect(page.locator('.target-said')).toContainText('This is the target on Bench and Wall.');
    await page.getByRole('button', { name: 'Begin trial A with this grip' }).click();
    await expect(page.getByText('Trial A is being thrown with this grip.')).toBeVisible();
    await expect(wall.locator('.wall-intent')).toHaveText(/Changeup\s+Trial A/);
    await expect(wall.locator('.separation-plane .target-zone')).toHaveCount(1);
  });

  await step('A is thrown, B begun on Bench, and the dock leads through the blocks', async () => {
    await page.getByRole('link', { name: 'Bench' }).click();
    await expect(nextThrow(page)).toHaveText(/^Next throw Changeup, trial A two-seam/);
    await throws('right', FLOATING, 5);
    await expect(lines(page).first()).toContainText('Changeup trial A');
    await expect(lines(page).first()).toContainText('short');
    await goTo(page, 'Trial');
    await page.locator('.grip-fold > summary').click();
    await page.getByRole('group', { name: 'Pressure finger' }).getByLabel('ring').check();
    await page.getByLabel('The few words before a throw').fill('turn the doorknob');
    await expect(page.getByRole('group', { name: 'How it is meant to separate (optional)' }).getByLabel('Turnover')).toBeChecked();
    await page.getByRole('button', { name: 'Begin trial B' }).click();
    await expect(nextThrow(page)).toHaveText(/^Next throw Changeup, trial B .*ring finger presses.*“turn the doorknob”/);
    await throws('right', TURNED, 4);
    await expect(block(page)).toHaveText('1 more of B in this block');
    await throws('right', TURNED, 1);
    await expect(page.locator('.arm-warning')).toHaveText('Fifteen throws since anybody asked: ask how the arm feels. House rule.');
    await page.getByRole('button', { name: 'Nothing to report' }).click();
    await expect(page.locator('.arm-warning')).toHaveCount(0);
    await page.getByRole('button', { name: 'Next block: 5 of A' }).click();
    await expect(nextThrow(page)).toHaveText(/trial A/);
    await throws('right', FLOATING, 5);
    await page.getByRole('button', { name: 'Next block: 5 of B' }).click();
    await expect(nextThrow(page)).toHaveText(/trial B/);
    await throws('right', TURNED, 5);
    await expect(page.getByRole('button', { name: 'Next block: 5 of A' })).toBeVisible();
  });

  await step('a third trial takes turns with the one before it', async () => {
    await page.getByRole('group', { name: 'Finger spread' }).getByLabel('wide').check();
    await page.getByRole('button', { name: 'Begin trial C' }).click();
    await expect(nextThrow(page)).toHaveText(/trial C/);
    await throws('right', DEAD, 5);
    await page.getByRole('button', { name: 'Next block: 5 of B' }).click();
    await expect(nextThrow(page)).toHaveText(/trial B/);
    await throws('right', TURNED, 5);
    await page.getByRole('button', { name: 'Next block: 5 of C' }).click();
    await expect(nextThrow(page)).toHaveText(/trial C/);
    await throws('right', DEAD, 5);
    await expect(page.locator('.trials li')).toHaveText([/^C.*10 throws/, /^B.*15 throws/, /^A.*10 throws/]);
    await expect(page.locator('.arm-count')).toHaveText('Arm today: 40 of 120 from the mound');
    await expect(wall.locator('.wall-count')).toContainText('40 throws');
  });

  const thrown = (await coach.reaches(1)).throws;
  expect(thrown).toHaveLength(40);
  const found = verdictOn(thrown);

  await step('Trials compares A and B, and its verdict is the one of core', async () => {
    await page.getByRole('link', { name: 'Trials' }).click();
    await expect(page.getByRole('heading', { name: 'C against B' })).toBeVisible();
    await expectBetter(page, found);
    await expect(page.locator('.next-throws')).toContainText('before it counts as learned');
  });

  await step('the report repeats it on one printed page', async () => {
    await expectReported(page);
    await expect(page.locator('.sheet')).toContainText('40 of 120 throws from a mound');
    const pdf = (await page.pdf({ format: 'Letter' })).toString('latin1');
    expect(pdf.startsWith('%PDF-')).toBe(true);
    expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  });
});

test('a bad evening: unclaimed throws, the wrong athlete, throws that do not count, and pain', async ({ page, browser, server, coach, device }) => {
  const throws = throwingAt(device, 11);
  const open = async (screen: string, viewport: { width: number; height: number }): Promise<Page> => {
    const opened = await browser.newPage({ viewport });
    await opened.goto(`${server.address}/${screen}?lang=en`);
    return opened;
  };
  await page.goto(`${server.address}/bench/north-1?lang=en`);
  const wall = await open('wall/north-1', BIG);
  const glance = await open('glance/north-1', PHONE);
  const plan = await open('plan/north-1', TABLET);

  await step('three balls are thrown before anybody has the mound; one tap claims them', async () => {
    await throws('right', FASTBALL, 3);
    await expect(page.locator('.unclaimed')).toContainText('3 unclaimed throws');
    await expect(page.locator('.unclaimed')).toContainText('Open a session to claim them.');
    await expect(wall.locator('.wall-unclaimed')).toHaveText('3 unclaimed throws');
    await expect(glance.locator('.glance-unclaimed')).toContainText('3 unclaimed throws Thrown while nobody had the mound. Your coach can claim it.');
    await expect(plan.getByRole('heading', { name: 'A plan begins with an athlete and five fastballs.' })).toBeVisible();
    await coach.say(opening('wren'));
    await page.getByRole('button', { name: 'Claim for Wren Abelow' }).click();
    await expect(lines(page)).toHaveText([/Intent not said/, /Intent not said/, /Intent not said/]);
    await expect(page.locator('.unclaimed')).toHaveCount(0);
    await expect(wall.locator('.wall-count')).toHaveText('3 throws');
    await chooseThrow(page, 1);
    await page.getByRole('button', { name: 'All thrown since' }).click();
    await page.getByRole('group', { name: 'These throws were meant as' }).getByRole('button', { name: 'Four-seam' }).click();
    await expect(lines(page).first()).toContainText('tagged later');
    await expect(baseline(page)).toContainText('Forming: 3 of 5 fastballs of this stage.');
    await expect(plan.getByRole('heading', { name: 'Throw two fastballs' })).toBeVisible();
  });

  await step('two trials are thrown, one after the other', async () => {
    await intent(page, 'Four-seam').click();
    await expect(nextThrow(page)).toContainText('Four-seam');
    await throws('right', FASTBALL, 2);
    await expect(baseline(page)).toContainText('5 fastballs');
    await page.getByRole('button', { name: 'Draw a starting zone' }).click();
    await expect(plan.locator('.target-said')).toContainText('This is the target on Bench and Wall.');
    await goTo(page, 'Trial');
    await page.getByRole('group', { name: 'Intent of the trial' }).getByLabel('Changeup').check();
    await page.getByRole('button', { name: 'Begin trial A' }).click();
    await expect(nextThrow(page)).toHaveText(/trial A/);
    await throws('right', FLOATING, 5);
    await page.getByLabel('The few words before a throw').fill('let the ring finger lead');
    await page.getByRole('button', { name: 'Begin trial B' }).click();
    await expect(nextThrow(page)).toHaveText(/trial B/);
    await throws('right', TURNED, 5);
    await expect(page.locator('.mixed')).toHaveText('All of A came before all of B: grip and time are mixed.');
    await expect(page.getByRole('button', { name: 'Next block: 5 of A' })).toBeVisible();
  });

  const before = { all: '15 throws', trial: '5 in trial B', lead: await wall.locator('.wall-place-words').innerText() };

  await step('the next arm throws six into the wrong session; they are moved, and both sides are counted anew', async () => {
    await throws('left', FASTBALL, 6);
    await expect(lines(page)).toHaveCount(21);
    await expect(wall.locator('.wall-count')).toHaveText('21 throws11 in trial B');
    await expect(page.locator('.arm-count')).toHaveText('Arm today: 21 of 120 from the mound');
    await coach.say(opening('ione', LEFT_HANDER));
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Ione Castellan');
    await page.getByRole('button', { name: 'Pass to Wren Abelow' }).click();
    await chooseThrow(page, 16);
    await page.getByRole('button', { name: 'All thrown since' }).click();
    await expect(page.locator('.selection-bar')).toContainText('6 throws selected');
    await page.getByRole('button', { name: 'Move', exact: true }).click();
    await page.getByRole('group', { name: 'Move to' }).getByRole('button', { name: 'Ione Castellan' }).click();
    await expect(lines(page)).toHaveCount(15);
    await expect(wall.locator('.wall-count')).toHaveText(`${before.all}${before.trial}`);
    await expect(wall.locator('.wall-place-words')).toHaveText(before.lead);
    await expect(page.locator('.arm-count')).toHaveText('Arm today: 15 of 120 from the mound');
    await page.getByRole('button', { name: 'Pass to Ione Castellan' }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Ione Castellan');
    await expect(lines(page)).toHaveCount(6);
    await expect(page.locator('.arm-count')).toHaveText('Arm today: 6 of 120 from the mound');
    await chooseThrow(page, 1);
    await page.getByRole('button', { name: 'All thrown since' }).click();
    await page.getByRole('group', { name: 'These throws were meant as' }).getByRole('button', { name: 'Four-seam' }).click();
    await goTo(page, 'Target');
    await expect(baseline(page)).toContainText(/9\d\.\d mph ± \d\.\d mph, Mound, 5 fastballs/);
    await expect(wall.locator('h1')).toHaveText('Ione Castellan');
    await expect(wall.locator('.wall-count')).toHaveText('6 throws');
    await expect(plan.locator('.plan-fastball')).toContainText('5 fastballs');
    await page.getByRole('button', { name: 'Pass to Wren Abelow' }).click();
    await expect(lines(page)).toHaveCount(15);
  });

  await step('two throws are left out with their reasons, and the verdict says what that changes', async () => {
    await chooseThrow(page, 15);
    await page.getByRole('button', { name: 'Exclude', exact: true }).click();
    await page.getByRole('button', { name: 'slipped' }).click();
    await expect(lines(page).first()).toContainText('excluded: slipped');
    await chooseThrow(page, 14);
    await page.getByRole('button', { name: 'Exclude', exact: true }).click();
    await page.getByLabel('In your own words').fill('gust of wind');
    await page.getByRole('group', { name: 'Why they do not count' }).getByRole('button', { name: 'Exclude' }).click();
    await expect(lines(page).nth(1)).toContainText('excluded: gust of wind');
    await expect(wall.locator('.wall-count')).toHaveText('15 throws5 in trial B');
    await goTo(page, 'Trial');
    await expect(page.locator('.trials li').first()).toContainText('5 throws, 2 excluded');
  });

  const trials = await open('trials/wren', TABLET);
  await step('Trials repeats the reasons', async () => {
    await trials.getByRole('button', { name: 'Open comparison 1' }).click();
    await expect(trials.locator('.verdict')).toHaveAttribute('data-verdict', 'too-few');
    await expect(trials.locator('.excluded')).toContainText('gust of wind');
    await expect(trials.locator('.excluded')).toContainText('slipped');
    await expect(trials.locator('.next-throws')).toContainText('2 more of each would give a first interval');
  });

  await step('pain that is tapped on Glance takes every advice to throw from every screen', async () => {
    await glance.getByRole('button', { name: 'It hurts' }).click();
    await glance.getByRole('button', { name: 'Elbow' }).click();
    await expect(glance.locator('.glance-lead')).toHaveText('Stop throwing');
    await expect(page.getByRole('alert')).toContainText(/Said by the athlete, \d\d:\d\d: pain in elbow\./);
    await expect(page.locator('.dock')).toContainText('No throw is suggested while pain stands.');
    await expect(page.getByRole('button', { name: /Next block|Begin trial|Resume/ })).toHaveCount(0);
    await expect(page.getByRole('group', { name: 'Intent of the next throw' })).toHaveCount(0);
    await expect(plan.getByRole('alert')).toContainText('While this stands, Plan gives no advice to throw.');
    await expect(plan.getByRole('button', { name: /Begin trial|Set this target/ })).toHaveCount(0);
    await expect(trials.locator('.next-throws')).toContainText('Pain was reported, so no throws are suggested.');
    await expect(trials.locator('.pair-said')).not.toContainText(/more of each|alternating blocks|Next \d/);
    await expect(wall.locator('.wall-lead')).toHaveText('Stop throwing');
    await expect(wall.locator('.wall-plane')).toHaveCount(0);
  });

  await step('the coach answers, and the answer stands in the open', async () => {
    await page.getByRole('button', { name: 'Answer the report' }).click();
    await page.getByLabel('reported by mistake').check();
    await page.getByLabel('How the mistake came about').fill('the brother had the phone');
    await page.getByRole('button', { name: 'Save the answer' }).click();
    await expect(page.getByRole('alert')).toHaveCount(0);
    await expect(block(page)).toBeVisible();
    await expect(wall.locator('.wall-plane')).toBeVisible();
    await expect(plan.getByRole('alert')).toHaveCount(0);
    await expect(trials.locator('.next-throws')).toContainText('2 more of each');
    await page.locator('.arm-strip summary').click();
    await expect(page.locator('.arm-strip')).toContainText(/reported by mistake, “the brother had the phone”\. That clears nobody\./);
    await page.locator('.arm-strip summary').click();
  });

  await step('the session is closed, and every screen says so', async () => {
    await goTo(page, 'Session');
    await page.getByRole('button', { name: 'Close session' }).click();
    await page.getByRole('button', { name: 'Yes, close it' }).click();
    await expect(page.locator('.dock')).toContainText('This session is closed. Its throws can still be put right.');
    for (const screen of [page, wall, glance, plan]) await expect(screen.locator('.standing-word')).toHaveAttribute('data-standing', 'closed');
    await expect(glance.getByRole('button', { name: 'It hurts' })).toHaveCount(0);
    await expect(plan.getByRole('button', { name: /Begin trial|Set this target/ })).toHaveCount(0);
    await goTo(page, 'Target');
    await expect(page.locator('.part.target')).toContainText('Middle 8 in down, 2 in arm side, 7 to 12 mph slower.');
    await expect(page.getByRole('slider')).toHaveCount(0);
    await expect(page.getByLabel('Centre, below fastball')).toHaveCount(0);
    await goTo(page, 'Session');
    await expect(page.locator('.part.session')).toContainText(/Wren Abelow, open from \d\d:\d\d to \d\d:\d\d/);
    await page.getByRole('link', { name: 'Report' }).click();
    await expect(page.locator('.sheet')).toContainText('Excluded throws');
    await expect(page.locator('.sheet')).toContainText('Throw 14, Changeup B: gust of wind');
    await expect(page.locator('.sheet')).toContainText('15 throws: 5 four-seam, 10 changeup');
  });
});
