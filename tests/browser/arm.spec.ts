import { expect, type Page } from '@playwright/test';
import { easyFrame, FASTBALL, WORKED_THROWS } from './by-hand.ts';
import { BAND, changeupIsNext } from './changeup-next.ts';
import { ATHLETE, connectCoach, opening } from './coach.ts';
import { connectDevice, counted } from './device.ts';
import { expectAccessible } from './fits.ts';
import type { TestServer } from './server.ts';
import { test } from './with-server.ts';

const [ON_TARGET, SHORT] = WORKED_THROWS.map(easyFrame);
const thisYear = new Date().getFullYear();
const YOUTH = { ...ATHLETE, id: 'kit', name: 'Kit Sandoval', birthYear: thisYear - 15 };

async function open(page: Page, server: TestServer, screen: string, size: { width: number; height: number }, query = ''): Promise<void> {
  await page.setViewportSize(size);
  await page.goto(`${server.address}/${screen}/north-1?lang=en${query}`);
  await page.locator('h1').first().waitFor();
}

const PHONE = { width: 390, height: 844 };
const TABLET = { width: 820, height: 1180 };
const BIG = { width: 1920, height: 1080 };

test('pain that is tapped on Glance takes every number and every advice from Glance, Bench and Wall at once, until the coach has answered', async ({ page, context, server, coach, device }) => {
  await changeupIsNext(coach, device, { speedBand: BAND });
  for (let sequence = 6; sequence <= 10; sequence += 1) await device.throws(sequence, SHORT!);
  await coach.say({ kind: 'trial-begun', session: 's1', intent: 'changeup', grip: null, cue: null });
  const [bench, wall] = [await context.newPage(), await context.newPage()];
  await open(page, server, 'glance', PHONE);
  await open(bench, server, 'bench', TABLET);
  await open(wall, server, 'wall', BIG);
  await expect(bench.locator('.next-block')).toHaveText('5 more of B in this block');
  await expect(wall.locator('.wall-place-words')).toHaveText('2\u00a0in short');

  await page.getByRole('group', { name: 'How does your arm feel?' }).getByRole('button', { name: 'It hurts' }).click();
  await expect(page.locator('.glance-lead')).toHaveText('Stop throwing');
  await expect(page.locator('.glance-pain')).toContainText('see a licensed medical professional before you throw again');
  await expect(page.locator('main')).not.toContainText('2 in short');
  await expect(bench.getByRole('alert')).toContainText('Stop throwing. Pain is for a licensed medical professional');
  await expect(bench.getByRole('alert')).toContainText(/Said by the athlete, \d+:\d+: pain\./);
  await expect(bench.locator('.dock')).toContainText('No throw is suggested while pain stands.');
  for (const advice of ['.next-block', '.intents', '.trial-form']) await expect(bench.locator(advice)).toHaveCount(0);
  await expect(wall.locator('.wall-lead')).toHaveText('Stop throwing');
  for (const number of ['.wall-plane', '.wall-rail', '.wall-count']) await expect(wall.locator(number)).toHaveCount(0);

  await page.getByRole('button', { name: 'Elbow' }).click();
  await page.getByRole('button', { name: 'Numbness' }).click();
  await expect(bench.getByRole('alert')).toContainText(': numbness in elbow.');
  await device.throws(11, SHORT!);
  await expect(page.locator('.glance')).toHaveAttribute('data-place', '19');
  await expect(wall.locator('.mound-picture')).toHaveAttribute('data-place', '19');
  for (const screen of [page, wall]) await expect(screen.locator('main')).not.toContainText('short');
  for (const screen of [page, bench, wall]) await expectAccessible(screen);

  await bench.getByRole('button', { name: 'Answer the report' }).click();
  await expect(bench.locator('.pain-answer')).toContainText('a licensed medical professional decides. The answer is kept word for word; it clears nobody.');
  await expect(bench.getByRole('button', { name: 'Save the answer' })).toBeDisabled();
  await bench.getByLabel('Who looked, and what was said').fill('Dr. Amari, on the phone');
  await expectAccessible(bench);
  await bench.getByRole('button', { name: 'Save the answer' }).click();
  await expect(bench.getByRole('alert')).toHaveCount(0);
  await expect(bench.locator('.next-block')).toHaveText('4 more of B in this block');
  await expect(page.locator('.glance-lead')).toHaveText('2 in short');
  await expect(wall.locator('.wall-plane')).toBeVisible();
  await bench.locator('.arm-strip summary').click();
  await expect(bench.locator('.arm-strip')).toContainText(/Answered at \d+:\d+: a professional has looked, “Dr. Amari, on the phone”. That clears nobody./);
});

test('one tap on Glance says how the arm feels, another whether the grip is comfortable', async ({ page, server, coach, device }) => {
  await changeupIsNext(coach, device, { speedBand: BAND });
  await open(page, server, 'glance', PHONE);
  const grip = page.getByRole('group', { name: 'And this grip?' });
  await grip.getByRole('button', { name: 'Comfortable', exact: true }).click();
  await expect(grip.getByRole('button', { name: 'Comfortable', exact: true })).toHaveAttribute('aria-pressed', 'true');
  expect((await coach.reaches(10)).session?.comfort?.comfortable).toBe(true);
  await page.getByRole('button', { name: 'Tired' }).click();
  await expect(page.getByRole('button', { name: 'Tired' })).toHaveAttribute('aria-pressed', 'true');
  expect((await coach.reaches(11)).session?.armTalk.lastReport).toMatchObject({ said: 'tired', from: 'glance' });
  await page.getByRole('button', { name: 'Sore' }).click();
  await expect(page.locator('.glance-sore')).toHaveText('You are sore. Tell your coach; no throws are suggested today.');
  expect((await coach.reaches(12)).session?.armCare.kind).toBe('soreness-reported');
});

test('the feedback that is chosen on Bench is what Glance shows', async ({ page, context, server, coach, device }) => {
  await changeupIsNext(coach, device, { speedBand: BAND });
  const bench = await context.newPage();
  await open(page, server, 'glance', PHONE);
  await open(bench, server, 'bench', PHONE);
  await bench.getByRole('navigation', { name: 'Places of Bench' }).getByRole('button', { name: 'Session' }).click();
  const modes = bench.getByRole('group', { name: 'Feedback on Glance' });
  await modes.getByLabel('outside the zone only').check();
  await expect(bench.locator('.feedback-choice')).toContainText('Silence means good. It fades by itself as skill grows (Sherwood 1988, Cruz 2018; plausible, small studies).');
  await expect(page.locator('.glance-mode')).toContainText('outside the zone only');
  await device.throws(6, ON_TARGET!);
  await expect(page.locator('.glance-lead')).toHaveText('Quiet');
  await bench.getByRole('group', { name: 'The athlete says first where it went' }).getByLabel('yes').check();
  await expect(page.locator('.glance-mode')).toContainText('You say first');
  await device.throws(7, SHORT!);
  await expect(page.locator('.glance-lead')).toHaveText('Where did it go?');
  await modes.getByLabel('none').check();
  await expect(page.locator('.glance-lead')).toHaveText('No feedback in this set');
  await expectAccessible(bench);
});

test('after five throws the other trial is offered, and one tap goes over to it', async ({ page, server, coach, device }) => {
  await changeupIsNext(coach, device, { speedBand: BAND });
  for (let sequence = 6; sequence <= 10; sequence += 1) await device.throws(sequence, SHORT!);
  await coach.say({ kind: 'trial-begun', session: 's1', intent: 'changeup', grip: null, cue: null });
  for (let sequence = 11; sequence <= 14; sequence += 1) await device.throws(sequence, ON_TARGET!);
  await open(page, server, 'bench', BIG);
  await expect(page.locator('.next-block')).toHaveText('1 more of B in this block');
  await expect(page.locator('.mixed')).toHaveText('All of A came before all of B: grip and time are mixed.');
  await device.throws(15, ON_TARGET!);
  await page.getByRole('button', { name: 'Next block: 5 of A' }).click();
  await expect(page.locator('.next-throw')).toContainText('trial A');
  await expect(page.locator('.next-block')).toHaveText('5 more of A in this block');
  await device.throws(16, SHORT!);
  await expect(page.locator('.next-block')).toHaveText('4 more of A in this block');
  await expect(page.locator('.mixed')).toHaveCount(0);
});

test('the count on Bench is of all mounds, names its row, and warns at three quarters and at the day’s most', async ({ page, server, coach, device }) => {
  const child = { ...ATHLETE, id: 'pip', name: 'Pip Orrin', birthYear: thisYear - 9 };
  const elsewhere = await connectCoach(server, 'south-2');
  await elsewhere.say(opening('s2', child));
  const second = await connectDevice(server, { device: 'eye-2', run: 'run-b', mound: 'south-2' });
  await counted(second)(easyFrame(FASTBALL), 33);
  await changeupIsNext(coach, device, { athlete: child, speedBand: BAND });
  await open(page, server, 'bench', TABLET);
  await expect(page.locator('.arm-count')).toHaveText('Arm today: 38 of 50 from the mound');
  await expect(page.locator('.arm-warning')).toHaveText(['Three quarters of the day’s most are thrown.']);
  await page.locator('.arm-strip summary').click();
  await expect(page.locator('.arm-more')).toContainText('Counted: every tracked throw at north-1, south-2, excluded ones too.');
  await expect(page.locator('.arm-more')).toContainText('(published, copy of 2015), ages 7–8: 50 a day at most. Read for age 8');
  await expect(page.locator('.arm-more')).toContainText('House rule: the table is for games');
  await expect(page.locator('.arm-next')).toContainText('no mound before');
  await expect(page.locator('.arm-more')).toContainText('12 left of the day’s most.');
  await page.getByLabel('Planned from the mound today').fill('45');
  await page.getByLabel('Planned from the mound today').press('Enter');
  await expect(page.locator('.arm-more')).toContainText('7 left of what is planned and of the day’s most.');
  await page.getByLabel('Most of a day, by league or club').fill('40');
  await page.getByLabel('Most of a day, by league or club').press('Enter');
  await expect(page.locator('.arm-count')).toHaveText('Arm today: 38 of 40 from the mound');
  await expect(page.locator('.arm-more')).toContainText('A rule of league or club: 40 a day at most.');
  await page.getByLabel('Most of a day, by league or club').fill('');
  await page.getByLabel('Most of a day, by league or club').press('Enter');
  await expectAccessible(page);
  for (let sequence = 6; sequence <= 17; sequence += 1) await device.throws(sequence, SHORT!);
  await expect(page.locator('.arm-count')).toHaveText('Arm today: 50 of 50 from the mound');
  await expect(page.locator('.arm-warning').first()).toHaveText('The day’s most is thrown: no more from the mound today.');
  await expect(page.locator('body')).not.toContainText(/\b(fine|cleared|safe to throw|good to go)\b/i);
  await second.close();
  elsewhere.close();
});

test('pain said at one mound stands at every mound at once, and is answered at any', async ({ page, server, coach, device }) => {
  await changeupIsNext(coach, device, { speedBand: BAND });
  const elsewhere = await connectCoach(server, 'south-2');
  await elsewhere.say(opening('s2'));
  await open(page, server, 'bench', PHONE);
  await expect(page.locator('.intents')).toHaveCount(1);
  await elsewhere.say({ kind: 'arm-reported', session: 's2', from: 'bench', said: 'pain', areas: ['shoulder'] });
  await expect(page.getByRole('alert')).toContainText('pain in shoulder.');
  await expect(page.locator('.intents')).toHaveCount(0);
  await page.getByRole('button', { name: 'Answer the report' }).click();
  await page.getByLabel('reported by mistake').check();
  await page.getByLabel('How the mistake came about').fill('it was the other athlete');
  await page.getByRole('button', { name: 'Save the answer' }).click();
  await expect(page.locator('.intents')).toHaveCount(1);
  await expect.poll(() => [...elsewhere.views.values()].at(-1)?.session?.armCare.kind).not.toBe('pain-reported');
  elsewhere.close();
});

test('the Wall hides the speed of an athlete who may be under 18 until somebody asks with V, and a link restores the asking', async ({ page, server, coach, device }) => {
  await changeupIsNext(coach, device, { athlete: YOUTH, speedBand: BAND });
  await device.throws(6, SHORT!);
  await open(page, server, 'wall', BIG, '&windows=1');
  await expect(page.locator('.wall-place-words')).toHaveText('2\u00a0in short');
  await expect(page.locator('.wall-without-speed')).toHaveText('speed hidden, V shows it');
  await expect(page.locator('main')).not.toContainText(/mph|slower|faster|ms later/i);
  // The words stand beside the plane: no room is left where the pace rail was.
  const [plane, words] = [(await page.locator('.wall-plane').boundingBox())!, (await page.locator('.wall-words').boundingBox())!];
  expect(words.x - plane.x - plane.width).toBeLessThan(60);
  await expectAccessible(page);
  await page.keyboard.press('v');
  await expect(page.locator('.wall-rail')).toContainText('90.0 mph');
  await expect(page).toHaveURL(/speed=shown/);
  await page.reload();
  await expect(page.locator('.wall-rail')).toContainText('90.0 mph');
  await page.getByRole('button', { name: 'Hide speed' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('.wall-rail')).toHaveCount(0);
  await expect(page).not.toHaveURL(/speed=/);
});

test('the speed of a grown-up is on the Wall without asking, and there is nothing to hide it with', async ({ page, server, coach, device }) => {
  await changeupIsNext(coach, device, { speedBand: BAND });
  await open(page, server, 'wall', BIG);
  await expect(page.locator('.wall-rail')).toContainText('90.0 mph');
  await expect(page.getByRole('button', { name: /speed/ })).toHaveCount(0);
});
