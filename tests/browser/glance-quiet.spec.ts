import { expect, type Page } from '@playwright/test';
import type { FeedbackMode } from '../../core/facts/feedback-says.ts';
import { easyFrame, WORKED_THROWS } from './by-hand.ts';
import { changeupIsNext } from './changeup-next.ts';
import { ATHLETE, type TestCoach } from './coach.ts';
import type { TestDevice } from './device.ts';
import { expectAccessible } from './fits.ts';
import { inProve } from './in-prove.ts';
import { test } from './with-server.ts';

test.use({ viewport: { width: 390, height: 844 } });

const [ON_TARGET, SHORT] = WORKED_THROWS.map(easyFrame);

/** As the tenth fact the feedback that the coach chose: the next throw is a changeup, at place 11. */
async function quiet(coach: TestCoach, device: TestDevice, mode: FeedbackMode, askFirst = false, athlete = ATHLETE): Promise<void> {
  await changeupIsNext(coach, device, { athlete });
  await coach.say({ kind: 'feedback-set', session: 's1', mode, askFirst });
}

const lead = (page: Page) => page.locator('.glance-lead');
const mode = (page: Page) => page.locator('.glance-mode');

test('with feedback outside the zone only, silence means good, and Glance says so', async ({ page, server, coach, device }) => {
  await quiet(coach, device, { kind: 'outside-band' });
  await page.goto(`${server.address}/glance/north-1`);
  await expect(mode(page)).toContainText('outside the zone only. Silence means good. It fades by itself as skill grows (Sherwood 1988, Cruz 2018; plausible');
  await expect(lead(page)).toHaveText('90.0 mph');
  await device.throws(6, ON_TARGET!);
  await expect(lead(page)).toHaveText('Quiet');
  await expect(page.locator('.glance-sentence')).toHaveText('Inside the target zone. Silence means good.');
  await expect(page.locator('.glance-picture')).toHaveCount(0);
  await device.throws(7, SHORT!);
  await expect(lead(page)).toHaveText('2 in short');
});

test('with a summary after three, two throws pass in silence and the third brings all three', async ({ page, server, coach, device }) => {
  await quiet(coach, device, { kind: 'summary', after: 3 });
  await page.goto(`${server.address}/glance/north-1`);
  await device.throws(6, ON_TARGET!);
  await expect(lead(page)).toHaveText('2 more throws');
  await device.throws(7, SHORT!);
  await expect(lead(page)).toHaveText('1 more throw');
  await expect(page.locator('main')).not.toContainText(/short|slower|\bin down/);
  await device.throws(8, ON_TARGET!);
  await expect(lead(page)).toHaveText('2 of 3 on target');
  await expect(page.locator('.glance-lines li')).toHaveText(['On target', '2 in short', 'On target']);
  await expect(page.locator('.glance-picture g.mark')).toHaveCount(3);
});

test('fading feedback shows the first ten throws and then every second', async ({ page, server, coach, device }) => {
  await quiet(coach, device, { kind: 'fading' });
  await page.goto(`${server.address}/glance/north-1`);
  for (let sequence = 6; sequence <= 15; sequence += 1) await device.throws(sequence, SHORT!);
  await expect(page.locator('.glance')).toHaveAttribute('data-place', '20');
  await expect(lead(page)).toHaveText('2 in short');
  await device.throws(16, SHORT!);
  await expect(lead(page)).toHaveText('1 more throw');
  await device.throws(17, SHORT!);
  await expect(lead(page)).toHaveText('2 in short');
});

test('a set without feedback shows no throw at all', async ({ page, server, coach, device }) => {
  await quiet(coach, device, { kind: 'none' });
  await page.goto(`${server.address}/glance/north-1`);
  await device.throws(6, SHORT!);
  await expect(page.locator('.glance')).toHaveAttribute('data-place', '11');
  await expect(lead(page)).toHaveText('No feedback in this set');
  await expect(page.locator('main')).not.toContainText(/short|slower/);
});

test('an athlete who says first taps where it went and how it moved, and then the numbers come', async ({ page, server, coach, device }) => {
  await quiet(coach, device, { kind: 'every-throw' }, true);
  await page.goto(`${server.address}/glance/north-1`);
  await device.throws(6, SHORT!);
  await expect(lead(page)).toHaveText('Where did it go?');
  await expect(page.locator('main')).not.toContainText(/2 in short|slower/);
  await page.getByRole('button', { name: 'Low, arm side' }).click();
  await expect(lead(page)).toHaveText('How did it move?');
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Above', exact: true }).click();
  await expect(lead(page)).toHaveText('2 in short');
  await expect(page.locator('.glance-own')).toHaveText('You said: low, arm side; above.');
  const recorded = await (await fetch(`${server.address}/api/sessions/s1`)).json() as { facts: { by: string; said: unknown }[] };
  expect(recorded.facts.at(-1)).toMatchObject({ by: 'athlete', said: { kind: 'throw-guessed', place: 11, went: { height: 'down', side: 'arm-side' }, moved: { vertical: 'above', side: 'on-target' } } });
});

test('an athlete who cannot say is not kept from the numbers, and can say it with the keyboard alone', async ({ page, server, coach, device }) => {
  await quiet(coach, device, { kind: 'every-throw' }, true);
  await page.goto(`${server.address}/glance/north-1`);
  await device.throws(6, SHORT!);
  for (const question of ['Where did it go?', 'How did it move?']) {
    await expect(lead(page)).toHaveText(question);
    await page.getByRole('button', { name: 'I cannot say' }).focus();
    await page.keyboard.press('Enter');
  }
  await expect(lead(page)).toHaveText('2 in short');
});

for (const [name, language] of [['English', 'en'], ['Spanish', 'es']] as const) {
  test(`a summary in ${name} fits a phone and passes the accessibility check`, inProve(), async ({ page, server, coach, device }) => {
    await quiet(coach, device, { kind: 'summary', after: 5 }, false, { ...ATHLETE, language });
    for (const [index, worked] of WORKED_THROWS.entries()) await device.throws(6 + index, easyFrame(worked));
    await page.goto(`${server.address}/glance/north-1`);
    await expect(page.locator('.glance-lines li')).toHaveCount(5);
    await expectAccessible(page);
    expect(await page.evaluate(() => [document.documentElement.scrollWidth - innerWidth, document.documentElement.scrollHeight - innerHeight])).toEqual([0, 0]);
  });
}
