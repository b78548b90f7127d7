import { expect, type Page } from '@playwright/test';
import type { Athlete } from '../../core/facts/coach.ts';
import { easyFrame, FASTBALL, WORKED_THROWS } from './by-hand.ts';
import { changeupIsNext } from './changeup-next.ts';
import { ATHLETE, opening } from './coach.ts';
import { connectDevice, keepBeating } from './device.ts';
import { expectAccessible } from './fits.ts';
import { inProve } from './in-prove.ts';
import { startServer, type TestServer } from './server.ts';
import { test } from './with-server.ts';

const PHONE = { width: 390, height: 844 };
const YOUTH: Athlete = { ...ATHLETE, id: 'kit', name: 'Kit Sandoval', birthYear: new Date().getFullYear() - 15, language: 'es', units: 'metric' };

test.use({ viewport: PHONE });

const glance = (page: Page, server: TestServer, query = ''): Promise<unknown> => page.goto(`${server.address}/glance/north-1${query}`);
const lead = (page: Page) => page.locator('.glance-lead');

test('before a session Glance says that it waits, and warns about pain', async ({ page, server }) => {
  await glance(page, server);
  await expect(lead(page)).toHaveText('Waiting for a session');
  await expect(page.getByRole('status')).toHaveText('No session');
  await expect(page.locator('.glance-caution')).toHaveText('Pain or numbness: stop now and tell your coach; see a licensed medical professional.');
});

test('what the server cannot show is said to be its trouble, and no Glance is called over for it', async ({ page, server }) => {
  await page.goto(`${server.address}/glance/${'x'.repeat(65)}`);
  await expect(lead(page)).toHaveText('Cannot be shown');
  await expect(page.locator('.glance-sentence')).toContainText('What was thrown is safe. Tell your coach.');
});

test('a throw that belongs to nobody is said to be unclaimed, until it is claimed', async ({ page, server, coach, device }) => {
  await device.throws(1, easyFrame(FASTBALL));
  await glance(page, server);
  await expect(page.locator('.glance-unclaimed')).toContainText('1 unclaimed throw');
  await coach.say(opening('s1'));
  await coach.say({ kind: 'throws-moved', places: [1], session: 's1' });
  await expect(page.locator('.glance-unclaimed')).toHaveCount(0);
  await expect(lead(page)).toHaveText('90.0 mph');
});

test('until the baseline stands a fastball is counted, and a changeup has nothing to be held against', async ({ page, server, coach, device }) => {
  await glance(page, server);
  await coach.say(opening('s1'));
  await expect(lead(page)).toHaveText('Ready for the first throw');
  await coach.say({ kind: 'intent-set', session: 's1', intent: 'four-seam' });
  await device.throws(1, easyFrame(FASTBALL));
  await expect(page.locator('.glance-sentence')).toHaveText('1 of 5 fastballs.');
  await coach.say({ kind: 'intent-set', session: 's1', intent: 'changeup' });
  await device.throws(2, easyFrame(WORKED_THROWS[0]!));
  await expect(page.locator('.glance-sentence')).toHaveText('No fastball yet to hold this against.');
  await expect(page.locator('.glance-unknown')).toContainText('No target zone yet');
});

test('a throw is said by a mark, words and one sentence, with intent and trial', async ({ page, server, coach, device }) => {
  await changeupIsNext(coach, device);
  await glance(page, server);
  for (const [index, worked] of WORKED_THROWS.entries()) {
    await device.throws(6 + index, easyFrame(worked));
    await expect(lead(page)).toHaveText(worked.place);
    await expect(page.locator('.glance-what')).toHaveText('Changeup A');
    await expect(page.locator('.glance-sentence')).toContainText(worked.pace);
    const mark = page.locator('.glance-mark');
    if (worked.onTarget === 'yes') await expect(mark).toHaveClass(/filled/);
    else await expect(mark).not.toHaveClass(/filled/);
    await expect(page.locator('.glance-picture g.mark')).toHaveCount(1);
  }
});

test('an athlete who may be under 18 sees no speed, in any word, unless somebody asks', async ({ page, server, coach, device }) => {
  await changeupIsNext(coach, device, { athlete: YOUTH });
  await device.throws(6, easyFrame(WORKED_THROWS[3]!));
  await glance(page, server);
  await expect(lead(page)).toHaveText('5 cm pasado, lado del brazo');
  await expect(page.locator('.glance-unknown')).toHaveText('La velocidad no se muestra a menores de 18 años.');
  await expect(page.locator('main')).not.toContainText(/km\/h|lento|rápido|mph/);
  await coach.say({ kind: 'intent-set', session: 's1', intent: 'four-seam' });
  await device.throws(7, easyFrame(FASTBALL));
  await expect(lead(page)).toHaveText('Recta');
  await expect(page.locator('main')).not.toContainText(/km\/h|mph/);
  await glance(page, server, '?speed=shown');
  await expect(lead(page)).toHaveText('144.8 km/h');
});

test('a device that infers the movement has it said so, and one that cannot see it as well', async ({ page, server, coach }) => {
  const spinOnly = { sight: 'spin-only' } as const;
  const inferring = await connectDevice(server, { ...spinOnly, device: 'ear-1', axis: 'inferred' });
  await coach.say(opening('s1'));
  await inferring.throws(1, { summary: { releaseSpeed: 81 }, spin: { rate: 1700, tilt: 65, efficiency: 0.95 } });
  await glance(page, server);
  await expect(page.locator('.glance-unknown')).toContainText('Movement: inferred from spin.');
  await inferring.close();
  const blind = await connectDevice(server, { ...spinOnly, device: 'gun-1', axis: 'none' });
  await blind.throws(1, { summary: { releaseSpeed: 81 } });
  await expect(page.locator('.glance-unknown')).toContainText('Movement: not visible to this device.');
  await blind.close();
});

test('a throw that the coach has left out is said to be so', async ({ page, server, coach, device }) => {
  await changeupIsNext(coach, device);
  await device.throws(6, easyFrame(WORKED_THROWS[0]!));
  await glance(page, server);
  await expect(lead(page)).toHaveText('On target');
  const place = (await coach.reaches(0)).throws.at(-1)!.place;
  await coach.say({ kind: 'throws-excluded', session: 's1', places: [place], reason: 'misread' });
  await expect(lead(page)).toHaveText('Excluded');
  await expect(page.locator('.glance-mark')).toHaveCount(0);
});

test('closed and stale are told from live by word and by border, and what is stale is dimmed but can be read', async ({ page, server, coach, device }) => {
  keepBeating(device);
  await changeupIsNext(coach, device);
  await device.throws(6, easyFrame(WORKED_THROWS[0]!));
  await glance(page, server);
  const frame = page.locator('.standing-frame');
  const border = (): Promise<string> => frame.evaluate((element) => getComputedStyle(element).borderTopStyle + getComputedStyle(element).borderTopColor);
  await expect(page.getByRole('status')).toHaveText('Live');
  const live = await border();
  await coach.say({ kind: 'session-closed', session: 's1' });
  await expect(page.getByRole('status')).toHaveText(/^Closed \d+:\d+$/);
  const closed = await border();
  const port = Number(new URL(server.address).port);
  await server.stop();
  await expect(page.getByRole('status')).toHaveText(/^Stale since \d+:\d+:\d+$/);
  const stale = await border();
  expect(new Set([live, closed, stale]).size).toBe(3);
  await expect(lead(page)).toHaveText('On target');
  await expectAccessible(page);
  const again = await startServer(server.dataFolder, port);
  await expect(page.getByRole('status')).toHaveText(/^Closed/);
  await again.stop();
});

for (const [name, athlete, query] of [['English', ATHLETE, '?theme=dark'], ['Spanish', YOUTH, '?theme=light']] as const) {
  test(`Glance in ${name} passes the accessibility check, and nothing runs over the side of a phone`, inProve(), async ({ page, server, coach, device }) => {
    await changeupIsNext(coach, device, { athlete });
    await device.throws(6, easyFrame(WORKED_THROWS[3]!));
    await glance(page, server, query);
    await page.locator('.glance-picture g.mark').waitFor();
    await expect(page.locator('html')).toHaveAttribute('lang', athlete.language);
    await expectAccessible(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
    expect(await page.evaluate(() => document.documentElement.scrollHeight - innerHeight)).toBe(0);
  });
}
