import { expect, test } from '@playwright/test';
import type { Athlete } from '../../core/facts/coach.ts';
import { CHANGEUP, LEFT_HANDER, begun, coachAtMound, goTo, intent, lines, nextThrow, saidIn, tablet, tabTo, testServer, throws, withMound } from './bench-mound.ts';
import { ATHLETE, opening } from './coach.ts';
import { startServer } from './server.ts';
import { takeHold } from './take-hold.ts';

withMound();

test('a coach opens a session for someone new and says intent, grip, cue and trial', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  // Who is known is told after how the mound stands; until then nobody can be missing.
  let tell = (): void => {};
  const told = new Promise<void>((resolve) => { tell = resolve; });
  await page.route('**/api/athletes', (route) => told.then(() => route.continue()));
  await tablet(page);
  const open = page.getByRole('button', { name: 'Open session' });
  await expect(open).toBeDisabled();
  tell();
  await open.click();
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

  const [athlete] = (await (await fetch(`${testServer().address}/api/athletes`)).json()) as Athlete[];
  expect(athlete).toMatchObject({ name: 'Tobin Ashgrove', hand: 'left', birthYear: 2007, mainFastball: 'four-seam', units: 'imperial', language: 'en' });
  const coach = await coachAtMound();
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
  const box = await takeHold(page, middle);
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

test('what is typed of the target stays while two moves of it come back one after the other and the next intent is said', async ({ page }) => {
  const coach = await begun();
  const heard: (() => void)[] = [];
  let holding = false;
  let through = 0;
  await page.routeWebSocket(/socket\.io/, (screen) => {
    screen.connectToServer().onMessage((message) => {
      through += 1;
      if (holding) heard.push(() => screen.send(message));
      else screen.send(message);
    });
  });
  await page.setViewportSize({ width: 820, height: 1180 });
  await tablet(page);
  await page.getByRole('button', { name: 'Draw a starting zone' }).click();
  const below = page.getByLabel('Centre, below fastball');
  await expect(below).toHaveValue('8');
  const placeNow = (await coach.reaches(9)).place;
  // The first message is the answer to whether a WebSocket comes through at all; what is said is said by it from the second on.
  await expect.poll(() => through).toBeGreaterThan(1);

  holding = true;
  await page.getByRole('slider', { name: 'Move the target zone' }).press('ArrowUp');
  await coach.reaches(placeNow + 1);
  await page.getByRole('slider', { name: 'Width of the target zone' }).press('Shift+ArrowRight');
  await coach.reaches(placeNow + 2);
  await below.fill('9.5');
  await expect(page.getByRole('button', { name: 'Set target' })).toBeVisible();
  await expect.poll(() => heard.length).toBeGreaterThan(0);
  holding = false;
  for (const hear of heard) hear();
  await coach.say({ kind: 'intent-set', session: 'one', intent: 'slider' });
  await expect(intent(page, 'Slider')).toHaveAttribute('aria-pressed', 'true');
  await expect(below).toHaveValue('9.5');
  await page.getByRole('button', { name: 'Set target' }).click();
  await expect(page.getByRole('button', { name: 'Set target' })).toBeHidden();
  expect((await coach.reaches(placeNow + 4)).session?.zone?.verticalM).toBeCloseTo(-9.5 * 0.0254, 3);
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
  const coach = await coachAtMound();
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
  const coach = await coachAtMound();
  await coach.say(opening('one', { ...ATHLETE, units: 'metric' }));
  await page.setViewportSize({ width: 390, height: 844 });
  await tablet(page);
  await goTo(page, 'Session');
  await expect(page.getByRole('spinbutton', { name: 'Distance' })).toHaveValue('18.44');
  await page.getByLabel('Long toss').check();
  await expect(page.getByRole('spinbutton', { name: 'Distance' })).toHaveValue('36.58');
  await page.getByRole('spinbutton', { name: 'Distance' }).fill('45');
  await page.getByRole('spinbutton', { name: 'Distance' }).press('Enter');
  await page.getByLabel('firm').check();
  expect((await coach.reaches(4)).session).toMatchObject({ stage: 'long-toss', distanceM: 45, effort: 'firm' });
  coach.close();
});

test('a coach without a pointer opens a session, says an intent, excludes a throw and goes on where the list begins', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 720 });
  await tablet(page);
  await tabTo(page, page.getByLabel('Name'));
  await page.keyboard.type('Tobin Ashgrove');
  await tabTo(page, page.getByLabel('Right-handed'));
  await page.keyboard.press('Space');
  await tabTo(page, page.getByLabel('Birth year'));
  await page.keyboard.type('2007');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Tobin Ashgrove' })).toBeVisible();
  await tabTo(page, intent(page, 'Changeup'));
  await page.keyboard.press('Enter');
  await expect(intent(page, 'Changeup')).toHaveAttribute('aria-pressed', 'true');
  await expect(intent(page, 'Changeup')).toBeFocused();

  await throws(CHANGEUP, 2);
  await tabTo(page, page.getByRole('checkbox', { name: 'Select throw 2' }));
  await page.keyboard.press('Space');
  // Another throw comes in while the keyboard stands on this one.
  await throws(CHANGEUP);
  await expect(lines(page)).toHaveCount(3);
  await expect(page.getByRole('checkbox', { name: 'Select throw 2' })).toBeFocused();
  await tabTo(page, page.getByRole('button', { name: 'Exclude' }));
  await page.keyboard.press('Enter');
  await tabTo(page, page.getByRole('button', { name: 'slipped' }));
  await page.keyboard.press('Enter');
  await expect(lines(page).nth(1)).toContainText('excluded: slipped');
  await expect(page.getByRole('heading', { name: /Throws/ })).toBeFocused();
});

test('a known athlete is chosen with one tap, and details can be put right', async ({ page }) => {
  const coach = await coachAtMound();
  await coach.say(opening('one'));
  await coach.say({ kind: 'session-closed', session: 'one' });
  await tablet(page);
  await page.getByRole('button', { name: 'Open another session' }).click();
  await page.getByRole('button', { name: /Wren Abelow/ }).click();
  await page.getByRole('button', { name: 'Correct the details of Wren Abelow' }).click();
  await page.getByLabel('centimetres').check();
  await page.getByRole('button', { name: 'Open session for Wren Abelow' }).click();
  await expect(page.getByText('This session is closed.')).toBeHidden();
  const view = await coach.reaches(3);
  expect(view.session?.athlete).toEqual({ ...ATHLETE, units: 'metric' });
  coach.close();
});

test('while the server is silent Bench says so, keeps what it shows and what was typed, and sends it when it is told to', async ({ page }) => {
  const coach = await begun();
  await tablet(page);
  await expect(lines(page)).toHaveCount(5);
  coach.close();
  const { dataFolder, address } = testServer();
  await testServer().stop();
  await expect(page.locator('.standing-word')).toContainText('Stale since');
  await expect(lines(page)).toHaveCount(5);
  await page.keyboard.press('n');
  await page.getByLabel('Note on this throw').fill('thumb slid');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await intent(page, 'Slider').click();
  await expect(page.locator('.dock')).toContainText('saving …');
  await expect(page.locator('.dock')).toContainText('Not saved. The server did not answer', { timeout: 30_000 });
  await expect(page.getByText('2 acts have not reached the server.')).toBeVisible();
  await expect(intent(page, 'Changeup')).toHaveAttribute('aria-pressed', 'true');

  const back = await startServer(dataFolder, Number(new URL(address).port));
  await expect(page.locator('.standing-word')).not.toContainText('Stale since', { timeout: 20_000 });
  await page.getByRole('group', { name: 'Not saved.' }).getByRole('button', { name: 'Send again' }).click();
  await expect(intent(page, 'Slider')).toHaveAttribute('aria-pressed', 'true');
  await expect(lines(page).first()).toContainText('Note: thumb slid');
  await expect(page.getByText('have not reached the server')).toBeHidden();
  expect((await saidIn('one')).filter(({ kind }) => kind === 'note-written')).toHaveLength(1);
  await back.stop();
});
