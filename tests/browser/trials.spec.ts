import { expect, type Page } from '@playwright/test';
import type { CoachSays } from '../../core/facts/coach.ts';
import type { ThrowView } from '../../core/facts/views.ts';
import { expectBetter, expectReported, verdictOn } from './b-against-a.ts';
import { tabTo } from './bench-mound.ts';
import { CIRCLE, easyFrame } from './by-hand.ts';
import { targetIsSet } from './changeup-next.ts';
import type { TestCoach } from './coach.ts';
import { counted, type TestDevice } from './device.ts';
import { expectAccessible } from './fits.ts';
import { inProve } from './in-prove.ts';
import { test } from './with-server.ts';

const GRIP = { seams: 'two-seam', spread: 'normal', thumbDeg: 0, pressure: 'middle', depth: 'normal', tiltDeg: 0 } as const;
const begin = (more: Partial<typeof GRIP> | object, intent: 'changeup' | 'split' = 'changeup'): CoachSays =>
  ({ kind: 'trial-begun', session: 's-1', intent, grip: { ...GRIP, ...more }, cue: { words: 'Throw it through the glove', focus: 'external' } });

/** Inches of induced rise and of run to the arm side. */
type Block = readonly (readonly [number, number])[];
const HIGH: Block = [[13, 9.5], [12.1, 10.6], [13.8, 9], [12.6, 11.2], [13.3, 9.9]];
const LOW: Block = [[8.2, 10], [7, 11.1], [9.3, 9.4], [8.8, 11.9], [7.6, 10.7]];
const WIDE: Block = [[9, 4], [5, 8], [12, 7]];

/** An evening: five fastballs, a target, three trials, the first two in alternating blocks of five. Ends at the newest view. */
async function evening(coach: TestCoach, device: TestDevice): Promise<readonly ThrowView[]> {
  const throws = counted(device);
  const throwAll = async (block: Block): Promise<void> => {
    for (const [upIn, armSideIn] of block) await throws(easyFrame({ speedMph: 81, flightS: 0.46, upIn, armSideIn }));
  };
  await targetIsSet(coach, throws, { session: 's-1' });
  await coach.say(begin({}));
  await throwAll(HIGH);
  await coach.say(begin({ pressure: 'ring', tiltDeg: 20 }));
  await throwAll(LOW);
  await coach.say({ kind: 'trial-resumed', session: 's-1', trial: 'A' });
  await throwAll(HIGH);
  await coach.say({ kind: 'trial-resumed', session: 's-1', trial: 'B' });
  await throwAll(LOW);
  await coach.say(begin({ spread: 'split' }, 'split'));
  await throwAll(WIDE);
  const place = await coach.say({ kind: 'note-written', session: 's-1', text: 'Loose wrist from the second block on.', place: null });
  return (await coach.reaches(place)).throws;
}

const inches = (miss: number): string => Math.abs(miss * 2).toFixed(1);

async function openComparison(page: Page, address: string): Promise<void> {
  await page.goto(`${address}/trials/wren?pair=s-1.A.mound~s-1.B.mound`);
  await page.getByRole('button', { name: 'Open comparison 1' }).click();
  await expect(page.locator('.verdict')).toBeVisible();
}

test('three trials in blocks: the comparison is opened as a fact, the verdict is the one of core, and the report repeats it', async ({ page, server, coach, device }) => {
  const found = verdictOn(await evening(coach, device));
  await page.goto(`${server.address}/trials/wren`);
  await expect(page.locator('.trial-row')).toHaveCount(3);
  await expect(page.locator('.verdict')).toHaveCount(0);
  await expectBetter(page, found);
  await expect(page.locator('.because')).toContainText(`B misses by ${inches(found.difference)} in less than A; these throws leave room for ${inches(found.high)} in to ${inches(found.low)} in less.`);
  await expect(page.locator('.because')).toContainText(`Said with care: ${inches(found.shrunken)} in less.`);
  await expect(page.locator('.difference-line')).toHaveAttribute('aria-description', new RegExp(`from ${inches(found.low)} in less to ${inches(found.high)} in less`));
  await expect(page.locator('.clouds g.lettered')).toHaveCount(20);
  expect(await page.locator('.clouds g.lettered[data-trial="A"][data-on-target="yes"]').count()).toBe(0);
  const dropIn = (block: Block): number => block.reduce((sum, [up]) => sum + up, 0) / block.length;
  await expect(page.locator('[data-measure="verticalM"]')).toContainText(`${(dropIn(HIGH) - dropIn(LOW)).toFixed(1)} in more drop`);
  await expect(page.locator('.next-throws')).toContainText('This comparison is settled');

  await page.reload();
  await expect(page.locator('.verdict')).toHaveAttribute('data-verdict', 'better');
  await expectReported(page);
  await expect(page.locator('.sheet')).toContainText('Loose wrist from the second block on.');
  await expect(page.locator('.sheet')).toContainText(/UTC−0[56]:00 \(America\/Chicago\), still open/);
  await expect(page.locator('.sheet')).toContainText('28 of 120 throws from a mound');
  await expect(page.locator('.sheet-plane g.lettered')).toHaveCount(23);
});

test('a throw of an open session reaches Trials by itself, and moving the target offers the next number', async ({ page, server, coach, device }) => {
  await evening(coach, device);
  await openComparison(page, server.address);
  const ofC = page.locator('[data-trial="s-1.C.mound"] dd').first();
  await expect(ofC).toHaveText('3');
  await device.throws(99, easyFrame({ speedMph: 81, flightS: 0.46, upIn: 9, armSideIn: 5 }));
  await expect(ofC).toHaveText('4');
  await coach.say({ kind: 'zone-set', session: 's-1', zone: { ...CIRCLE, verticalM: -0.1 }, speedBand: null, reason: 'dragged' });
  await expect(page.locator('.moved')).toContainText('The target has moved since.');
  await expect(page.locator('.verdict')).toHaveAttribute('data-verdict', 'better');
  await page.getByRole('button', { name: 'Open comparison 2 as things stand now' }).click();
  await expect(page.locator('.pair')).toHaveAttribute('data-k', '2');
  await expect(page.locator('.moved')).toHaveCount(0);
});

test('excluded throws are listed with their reasons, and where they change the verdict both are said', async ({ page, server, coach, device }) => {
  const throws = await evening(coach, device);
  // Four of A are left, one less than a verdict takes.
  const ofA = throws.filter(({ trial }) => trial === 'A').map(({ place }) => place);
  await coach.say({ kind: 'throws-excluded', session: 's-1', places: ofA.slice(0, 6), reason: 'wind gust' });
  await openComparison(page, server.address);
  await expect(page.locator('.verdict')).toHaveAttribute('data-verdict', 'too-few');
  await expect(page.locator('.because')).toContainText('A has 4, B has 10.');
  const excluded = page.locator('.excluded');
  await expect(excluded.getByRole('listitem').filter({ hasText: 'wind gust' })).toHaveCount(6);
  await expect(excluded).toContainText('Without them: Too few throws for a verdict.');
  await expect(excluded).toContainText('With them: B is better than A.');
  await coach.say({ kind: 'throws-restored', session: 's-1', places: ofA.slice(0, 6) });
  await expect(page.locator('.verdict')).toHaveAttribute('data-verdict', 'better');
  await expect(excluded).toHaveCount(0);
});

test('after pain no number of further throws is shown', async ({ page, server, coach, device }) => {
  await evening(coach, device);
  await page.goto(`${server.address}/trials/wren?pair=s-1.B.mound~s-1.C.mound`);
  await page.getByRole('button', { name: 'Open comparison 1' }).click();
  await expect(page.locator('.next-throws')).toContainText('more of each');
  await coach.say({ kind: 'arm-reported', session: 's-1', from: 'bench', said: 'pain', areas: ['elbow'] });
  await expect(page.locator('.next-throws')).toContainText('see a licensed medical professional');
  await expect(page.locator('.next-throws')).not.toContainText(/\d/);
  await expect(page.locator('.pair-said')).not.toContainText(/blocks of five|It takes five/);
});

test('two trials are chosen and their comparison is opened by keys alone', async ({ page, server, coach, device }) => {
  await evening(coach, device);
  await page.goto(`${server.address}/trials/wren`);
  await tabTo(page, page.getByRole('checkbox', { name: /trial A, Mound/ }));
  await page.keyboard.press('Space');
  await expect(page).toHaveURL(/pair=s-1\.C\.mound%7Es-1\.A\.mound|pair=s-1\.C\.mound~s-1\.A\.mound/);
  await tabTo(page, page.getByRole('button', { name: /Open comparison 1/ }));
  await page.keyboard.press('Enter');
  await expect(page.locator('.pair')).toHaveAttribute('data-k', '1');
});

test('a comparison of an athlete nobody knows, and a report of no session, say so with the way back', async ({ page, server }) => {
  await page.goto(`${server.address}/trials/nobody`);
  await expect(page.getByRole('alert')).toContainText('There is no athlete with this id');
  await page.goto(`${server.address}/report/nothing`);
  await expect(page.getByRole('alert')).toContainText('There is no session with this id');
  await page.getByRole('link', { name: 'All recorded sessions' }).click();
  await expect(page).toHaveURL(/\/playback$/);
});

test('the start page, Bench and Playback lead to the trials of the athlete, and Playback to the report', async ({ page, server, coach, device }) => {
  await evening(coach, device);
  await page.goto(server.address);
  await page.getByRole('link', { name: 'Wren Abelow' }).click();
  await expect(page).toHaveURL(/\/trials\/wren/);
  await page.goto(`${server.address}/bench/north-1`);
  await page.getByRole('navigation', { name: 'Other screens' }).getByRole('link', { name: 'Trials' }).click();
  await expect(page.locator('.trial-row')).toHaveCount(3);
  await page.goto(`${server.address}/playback/s-1`);
  await page.getByRole('link', { name: 'Trials' }).click();
  await expect(page.getByRole('heading', { name: 'Wren Abelow' })).toBeVisible();
  await page.goBack();
  await page.getByRole('link', { name: 'Report' }).click();
  await expect(page.locator('.sheet')).toBeVisible();
});

for (const all of [false, true]) {
  test(`both screens fit a phone, a tablet and a wall in both languages, and pass the accessibility check in ${all ? 'each of them' : 'three of them'}`, inProve(all), async ({ page, server, coach, device }) => {
    await evening(coach, device);
    await openComparison(page, server.address);
    for (const [width, height] of [[390, 844], [820, 1180], [1920, 1080]] as const) {
      await page.setViewportSize({ width, height });
      for (const [language, units, theme] of [['en', 'imperial', 'light'], ['es', 'metric', 'dark']] as const) {
        for (const address of ['/trials/wren', '/report/s-1']) {
          await page.goto(`${server.address}${address}?lang=${language}&units=${units}&theme=${theme}`);
          await page.locator('g.lettered').first().waitFor();
          const where = `${address} ${language} ${width}`;
          expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth), where).toBe(0);
          if (all || (language === 'es') === (width === 390)) await expectAccessible(page, where);
        }
      }
    }
  });
}

test('printed the report is one page, black on white, whatever the theme, on A4 and on Letter, in both languages, with the aim of its trial', async ({ page, server, coach, device }) => {
  await evening(coach, device);
  await openComparison(page, server.address);
  await coach.say({ kind: 'trial-begun', session: 's-1', intent: 'changeup', grip: null, cue: { words: 'long fingers, and let the hand finish all the way through the front of the ball', focus: 'external' }, family: 'turnover' });
  for (const language of ['en', 'es']) {
    await page.emulateMedia({ media: 'screen' });
    await page.goto(`${server.address}/report/s-1?theme=dark&lang=${language}`);
    await page.locator('.sheet-verdict').waitFor();
    await expect(page.locator('.sheet-facts')).toContainText(language === 'en' ? /AimTurnover, tilt \d+:\d\d/ : /MiraGiro de mano, eje \d+:\d\d/);
    await page.emulateMedia({ media: 'print' });
    await expect(page.locator('.report-bar')).toBeHidden();
    const [ink, ground] = await page.evaluate(() => [getComputedStyle(document.querySelector('.sheet h1')!).color, getComputedStyle(document.documentElement).backgroundColor]);
    expect([ink, ground]).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
    for (const format of ['A4', 'Letter']) {
      const pdf = (await page.pdf({ format })).toString('latin1');
      expect(pdf.match(/\/Type\s*\/Page\b/g), `${format} ${language}`).toHaveLength(1);
    }
  }
});
