import { AxeBuilder } from '@axe-core/playwright';
import { expect, test, type Locator, type Page } from '@playwright/test';
import type { Athlete } from '../../core/facts/coach.ts';
import type { ThrowBody } from '../../core/facts/frames.ts';
import { ATHLETE, connectCoach, opening, type TestCoach } from './coach.ts';
import { connectDevice, type TestDevice } from './device.ts';
import { overlaps, readTexts } from './reading.ts';
import { startServer, temporaryFolder, type TestServer } from './server.ts';

const MOUND = 'north-1';
const LEFT_HANDER: Athlete = { ...ATHLETE, id: 'ione', name: 'Ione Castellan', hand: 'left' };
/** Width, height, and how many places there are to choose from: what is always there needs no choosing. */
const SCREENS = [[390, 844, 4], [820, 1180, 3], [1280, 720, 2], [1920, 1080, 2]] as const;

let server: TestServer;
let device: TestDevice;
let rid: () => void;
let sequence: number;

test.beforeEach(async () => {
  const { folder, remove } = temporaryFolder();
  rid = remove;
  sequence = 0;
  server = await startServer(folder);
  device = await connectDevice(server);
});
test.afterEach(async () => {
  await device.close();
  await server.stop();
  rid();
});

/** A fastball and a changeup of a right-hander, as a device sums them up: miles an hour and inches. */
const FASTBALL: ThrowBody = { summary: { releaseSpeed: 91, verticalBreak: 16, horizontalBreak: -7 } };
const CHANGEUP: ThrowBody = { summary: { releaseSpeed: 81, verticalBreak: 8, horizontalBreak: -9 } };

async function throws(body: ThrowBody, times = 1): Promise<void> {
  for (let thrown = 0; thrown < times; thrown += 1) {
    sequence += 1;
    await device.throws(sequence, body);
  }
}

async function tablet(page: Page): Promise<void> {
  await page.goto(`${server.address}/bench/${MOUND}?lang=en`);
}

/** Goes to a place of Bench, where the screen does not show it anyway. */
async function goTo(page: Page, place: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Places of Bench' }).getByRole('button', { name: place, exact: true }).click();
}

const nextThrow = (page: Page): Locator => page.locator('.next-throw');
const intent = (page: Page, name: string): Locator => page.getByRole('group', { name: 'Intent of the next throw' }).getByRole('button', { name });
const lines = (page: Page): Locator => page.locator('.throw-line');
const chooseThrow = (page: Page, number: number): Promise<void> => page.getByRole('checkbox', { name: `Select throw ${number}`, exact: true }).check();

/** A session with a baseline, told by a coach without a tablet. */
async function begun(): Promise<TestCoach> {
  const coach = await connectCoach(server, MOUND);
  await coach.say(opening('one'));
  await coach.say({ kind: 'intent-set', session: 'one', intent: 'four-seam' });
  await throws(FASTBALL, 5);
  await coach.say({ kind: 'intent-set', session: 'one', intent: 'changeup' });
  return coach;
}

test('a coach opens a session for someone new and says intent, grip, cue and trial', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await tablet(page);
  await page.getByRole('button', { name: 'Open session' }).click();
  await expect(page.getByText('A name is needed.')).toBeVisible();
  await page.getByLabel('Name').fill('Tobin Ashgrove');
  await page.getByLabel('Left-handed').check();
  await page.getByLabel('Birth year').fill('2007');
  await page.getByRole('button', { name: 'Open session for Tobin Ashgrove' }).click();
  await expect(page.getByRole('heading', { name: 'Tobin Ashgrove' })).toBeVisible();

  await intent(page, 'Changeup').click();
  await expect(intent(page, 'Changeup')).toHaveAttribute('aria-pressed', 'true');
  await goTo(page, 'Trial');
  await page.getByRole('button', { name: 'Say the grip' }).click();
  await page.getByLabel('wide').check();
  await page.getByRole('slider', { name: 'Thumb' }).press('ArrowRight');
  await page.getByLabel('The few words before a throw').fill('turn the doorknob');
  await page.getByRole('button', { name: 'Begin trial A' }).click();
  await expect(nextThrow(page)).toHaveText(/Next throw Changeup, trial A/);
  await throws(CHANGEUP);
  await goTo(page, 'Throws');
  await expect(lines(page)).toHaveCount(1);
  await expect(lines(page).first()).toContainText('Changeup trial A');

  const [athlete] = (await (await fetch(`${server.address}/api/athletes`)).json()) as Athlete[];
  expect(athlete).toMatchObject({ name: 'Tobin Ashgrove', hand: 'left', birthYear: 2007, mainFastball: 'four-seam', units: 'imperial', language: 'en' });
  const coach = await connectCoach(server, MOUND);
  const { session } = await coach.reaches(1);
  expect(session).toMatchObject({ timeZone: 'America/Chicago', stage: 'mound', effort: 'full' });
  // For a left-hander the arm side lies to the left, so the slider's right is the glove side.
  expect(session?.trial).toMatchObject({ letter: 'A', cue: { words: 'turn the doorknob', focus: null }, grip: { seams: 'two-seam', spread: 'wide', thumbDeg: -15 } });
  coach.close();
});

test('an earlier trial is resumed with one tap, and the next one carries its grip over', async ({ page }) => {
  const coach = await begun();
  const grip = { seams: 'one-seam', spread: 'split', thumbDeg: 0, pressure: 'ring', depth: 'deep', tiltDeg: 10 } as const;
  await coach.say({ kind: 'trial-begun', session: 'one', intent: 'changeup', grip, cue: { words: 'throw it through the mitt', focus: 'external' } });
  await coach.say({ kind: 'trial-begun', session: 'one', intent: 'split', grip: null, cue: null });
  await page.setViewportSize({ width: 1280, height: 720 });
  await tablet(page);
  await expect(nextThrow(page)).toHaveText(/Split, trial B/);
  await page.getByRole('button', { name: 'Resume trial A' }).click();
  await expect(nextThrow(page)).toHaveText(/Changeup, trial A/);
  await page.getByRole('button', { name: 'Begin trial C' }).click();
  await expect(nextThrow(page)).toHaveText(/Changeup, trial C/);
  const view = await coach.reaches(12);
  expect(view.session?.trial).toMatchObject({ letter: 'C', grip, cue: { words: 'throw it through the mitt', focus: 'external' } });
  coach.close();
});

test('the target zone is proposed, dragged, moved by keys and set in numbers', async ({ page }) => {
  const coach = await begun();
  await throws(CHANGEUP, 2);
  await page.setViewportSize({ width: 820, height: 1180 });
  await tablet(page);
  await page.getByRole('button', { name: 'Draw a starting zone' }).click();
  const below = page.getByLabel('Centre, below fastball');
  const side = page.getByLabel('Centre, to arm side');
  await expect(page.getByText('minus is above')).toBeVisible();
  await expect(lines(page).first()).toContainText('On target');
  await expect(below).toHaveValue('8');

  const middle = page.getByRole('slider', { name: 'Move the target zone' });
  const box = (await middle.boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2 + 60, { steps: 4 });
  await page.mouse.up();
  await expect(lines(page).first()).toContainText('short');
  const dragged = Number(await below.inputValue());
  expect(dragged).toBeGreaterThan(9);
  await expect(side).toHaveValue('2');

  await middle.press('ArrowUp');
  await expect(below).toHaveValue(String(Math.round((dragged - 0.5) * 10) / 10));
  await page.getByRole('slider', { name: 'Width of the target zone' }).press('Shift+ArrowRight');
  await expect(page.getByLabel('Width', { exact: true })).toHaveValue('12');

  await below.fill('200');
  await page.getByRole('button', { name: 'Set target' }).click();
  await expect(page.getByText(/Between .* and .* in\./)).toBeVisible();
  await below.fill('8.5');
  await page.getByLabel('Slower by at most').fill('13');
  await page.getByLabel('Why (optional)').fill('more depth');
  await page.getByRole('button', { name: 'Set target' }).click();
  await expect(page.getByRole('button', { name: 'Set target' })).toBeHidden();
  await expect(lines(page).first()).toContainText('On target');
  const said = (await coach.reaches(15)).session;
  // Views are rounded to a tenth of a millimetre and a millimetre a second.
  expect(said?.zone?.verticalM).toBeCloseTo(-8.5 * 0.0254, 3);
  expect(said?.zone?.armSideRadiusM).toBeCloseTo(6 * 0.0254, 3);
  expect(said?.speedBand?.lowMps).toBeCloseTo(-13 * 0.44704, 2);
  expect(said?.speedBand?.highMps).toBeCloseTo(-7 * 0.44704, 2);
  coach.close();
});

test('many throws are tagged at once, one is excluded with a reason and restored, one gets a note', async ({ page }) => {
  const coach = await begun();
  await coach.say({ kind: 'trial-begun', session: 'one', intent: 'changeup', grip: null, cue: null });
  await coach.say({ kind: 'intent-set', session: 'one', intent: 'curve' });
  await throws(CHANGEUP, 3);
  await tablet(page);
  await expect(lines(page)).toHaveCount(8);
  await chooseThrow(page, 6);
  await page.getByRole('button', { name: 'All thrown since' }).click();
  await expect(page.getByText('3 throws selected')).toBeVisible();
  await page.getByRole('group', { name: 'These throws were meant as' }).getByRole('button', { name: 'Changeup' }).click();
  await expect(lines(page).filter({ hasText: 'Changeup trial A' })).toHaveCount(3);
  await expect(lines(page).filter({ hasText: 'tagged later' })).toHaveCount(3);
  await expect(page.getByText('3 throws selected')).toBeHidden();

  await chooseThrow(page, 7);
  await page.getByRole('button', { name: 'Exclude' }).click();
  await page.getByRole('button', { name: 'misread' }).click();
  await expect(lines(page).nth(1)).toContainText('excluded: misread');
  await chooseThrow(page, 7);
  await page.getByRole('button', { name: 'Restore' }).click();
  await expect(lines(page).nth(1)).not.toContainText('excluded');

  await chooseThrow(page, 8);
  await page.getByRole('button', { name: 'Note', exact: true }).click();
  await page.getByLabel('Note on this throw').fill('thumb slid');
  await page.getByRole('button', { name: 'Save note' }).first().click();
  await expect(lines(page).first()).toContainText('Note: thumb slid');
  coach.close();
});

test('throws of the next arm are moved to the session they belong to, and both sides are recomputed', async ({ page }) => {
  const coach = await begun();
  await coach.say(opening('two', LEFT_HANDER));
  await coach.say({ kind: 'mound-passed', session: 'one' });
  await throws(CHANGEUP, 4);
  await tablet(page);
  await expect(lines(page)).toHaveCount(9);
  await chooseThrow(page, 7);
  await page.getByRole('button', { name: 'All thrown since' }).click();
  await page.getByRole('button', { name: 'Move', exact: true }).click();
  await page.getByRole('group', { name: 'Move to' }).getByRole('button', { name: 'Ione Castellan' }).click();
  await expect(lines(page)).toHaveCount(6);
  await page.getByRole('button', { name: 'Pass to Ione Castellan' }).click();
  await expect(page.getByRole('heading', { name: 'Ione Castellan' })).toBeVisible();
  await expect(lines(page)).toHaveCount(3);
  await expect(lines(page).first()).toContainText('Intent not said');
  coach.close();
});

test('throws that nobody had are claimed with one tap', async ({ page }) => {
  await throws(FASTBALL, 6);
  await tablet(page);
  await expect(page.getByText('6 unclaimed throws')).toBeVisible();
  const coach = await connectCoach(server, MOUND);
  await coach.say(opening('one'));
  await page.getByRole('button', { name: 'Claim for Wren Abelow' }).click();
  await expect(lines(page)).toHaveCount(6);
  await expect(page.getByText('unclaimed')).toHaveCount(0);
  coach.close();
});

test('two coaches at two tablets see what the other says, and two athletes alternate with one tap', async ({ page, browser }) => {
  const coach = await begun();
  await coach.say(opening('two', LEFT_HANDER));
  const elsewhere = await browser.newPage({ viewport: { width: 390, height: 844 } });
  await tablet(page);
  await tablet(elsewhere);
  await elsewhere.getByRole('button', { name: 'Pass to Wren Abelow' }).click();
  await expect(page.getByRole('heading', { name: 'Wren Abelow' })).toBeVisible();
  await intent(page, 'Slider').click();
  await expect(nextThrow(elsewhere)).toHaveText(/Slider/);
  await intent(elsewhere, 'Split').click();
  await expect(intent(page, 'Split')).toHaveAttribute('aria-pressed', 'true');
  await throws(CHANGEUP);
  await page.getByRole('button', { name: 'Pass to Ione Castellan' }).click();
  await expect(elsewhere.getByRole('heading', { name: 'Ione Castellan' })).toBeVisible();
  await throws(CHANGEUP);
  await expect(lines(elsewhere)).toHaveCount(1);
  await elsewhere.close();
  coach.close();
});

test('what the server refuses is said where it arose, and closing asks first', async ({ page }) => {
  const coach = await connectCoach(server, MOUND);
  await coach.say(opening('one'));
  await page.setViewportSize({ width: 1920, height: 1080 });
  await tablet(page);
  const baseline = page.getByRole('region', { name: 'Fastball baseline' });
  await baseline.getByRole('button', { name: 'Form a new baseline' }).click();
  await baseline.getByRole('button', { name: 'Yes, form it' }).click();
  await expect(baseline).toContainText('Not saved. A baseline needs 5 fastballs of this stage; there are 0.');

  await goTo(page, 'Session');
  await page.getByRole('button', { name: 'Close session' }).click();
  await page.getByRole('button', { name: 'Keep as it is' }).click();
  await page.getByRole('button', { name: 'Close session' }).click();
  await page.getByRole('button', { name: 'Yes, close it' }).click();
  await expect(page.getByText('This session is closed.')).toBeVisible();
  await expect(page.getByRole('group', { name: 'Intent of the next throw' })).toBeHidden();
  coach.close();
});

test('the stage brings its distance along, and is said in the athlete’s units', async ({ page }) => {
  const coach = await connectCoach(server, MOUND);
  await coach.say(opening('one', { ...ATHLETE, units: 'metric' }));
  await page.setViewportSize({ width: 390, height: 844 });
  await tablet(page);
  await goTo(page, 'Session');
  await expect(page.getByLabel('Distance')).toHaveValue('18.44');
  await page.getByLabel('Long toss').check();
  await expect(page.getByLabel('Distance')).toHaveValue('36.58');
  await page.getByLabel('Distance').fill('45');
  await page.getByLabel('Distance').press('Enter');
  await page.getByLabel('firm').check();
  await expect(page.getByText('saving')).toHaveCount(0);
  expect((await coach.reaches(4)).session).toMatchObject({ stage: 'long-toss', distanceM: 45, effort: 'firm' });
  coach.close();
});

for (const theme of ['light', 'dark'] as const) {
  test(`every place of Bench passes the accessibility check and clips no word, in ${theme}`, async ({ page }) => {
    test.setTimeout(120_000);
    await page.setViewportSize({ width: 390, height: 844 });
    await page.goto(`${server.address}/bench/${MOUND}?theme=${theme}&lang=es`);
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
