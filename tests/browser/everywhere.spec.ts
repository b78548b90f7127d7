import { expect, type Page } from '@playwright/test';
import { easyFrame, FASTBALL, WORKED_THROWS } from './by-hand.ts';
import { changeupIsNext } from './changeup-next.ts';
import { ATHLETE, connectCoach, opening } from './coach.ts';
import { connectDevice, keepBeating } from './device.ts';
import { drawn, expectAccessible, expectWordsApart } from './fits.ts';
import { inProve } from './in-prove.ts';
import { SCREENS } from './scenes.ts';
import { test } from './with-server.ts';

const ALL = { start: '/', nowhere: '/nowhere', ...SCREENS } as const;
const NAMES = Object.keys(ALL) as (keyof typeof ALL)[];

/** Opens a screen and waits until it says something of its own. */
async function open(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await expect(page.locator('main')).not.toBeEmpty();
  await page.evaluate(() => document.fonts.ready);
}

test('the accessibility check finds nothing on any screen that is still loading, or is refused an answer', inProve(), async ({ server, page }) => {
  let answer: 'none' | 'fault' = 'none';
  await page.route('**/socket.io/**', (route) => (answer === 'none' ? new Promise(() => {}) : route.abort()));
  await page.route('**/api/**', (route) => (answer === 'none' ? new Promise(() => {}) : route.fulfill({ status: 500, json: { code: 'internal', path: '', sentence: 'The server met a fault of its own.' } })));
  for (const state of ['none', 'fault'] as const) {
    answer = state;
    // Live screens say of both that they are connecting.
    for (const name of state === 'none' ? NAMES : (['nowhere', 'playback', 'recording', 'trials', 'report'] as const)) {
      await open(page, `${server.address}${ALL[name]}?lang=es`);
      await expectAccessible(page, `${name}, ${state}`);
      if (state === 'fault' && ['recording', 'trials', 'report'].includes(name)) await expect(page.locator('[role="alert"]'), name).toContainText('falla propia');
    }
  }
});

test('a Wall that was refused says so and why within the sides of a phone, however long the name of its mound is', async ({ server, page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await open(page, `${server.address}/wall/${'x'.repeat(65)}`);
  await expect(page.locator('.wall-poster')).toContainText('use 1 to 64 letters');
  await expect(page.getByRole('status')).toHaveText('This screen was refused');
  for (const said of [page.getByRole('status'), page.locator('.wall-poster p').first()]) {
    const { x, width } = (await said.boundingBox())!;
    expect(x).toBeGreaterThanOrEqual(0);
    expect(x + width).toBeLessThanOrEqual(390);
  }
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
});

test('until the program of a screen has come its name stands there, and where it does not come that is said, and tried again', async ({ server, page }) => {
  let comes: 'not yet' | 'never' | 'now' = 'not yet';
  const held: (() => void)[] = [];
  await page.route('**/assets/plan-*.js', async (route) => {
    if (comes === 'not yet') await new Promise<void>((resolve) => { held.push(resolve); });
    return comes === 'now' ? route.continue() : route.abort();
  });
  await page.goto(`${server.address}/plan/north-1?lang=es`, { waitUntil: 'commit' });
  await expect.poll(() => held.length).toBeGreaterThan(0);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Offpace');
  await expectAccessible(page, 'a screen on its way');
  comes = 'never';
  for (const release of held) release();
  await expect(page.getByRole('alert')).toContainText('Esta pantalla no se pudo cargar.');
  await expectAccessible(page, 'a screen that did not come');
  await expectWordsApart(page);
  comes = 'now';
  await expect(page.getByRole('heading', { name: 'Un plan empieza con un atleta y cinco rectas.' })).toBeVisible();
});

test('a screen that meets a fault of its own says so with the way on, and one that nobody stands at loads itself anew', async ({ server, coach, device, page }) => {
  await changeupIsNext(coach, device);
  await page.addInitScript(() => {
    ResizeObserver.prototype.observe = () => { throw new Error('a fault of its own'); };
  });
  await page.setViewportSize({ width: 390, height: 844 });
  for (const name of ['wall', 'bench'] as const) {
    await page.goto(`${server.address}${SCREENS[name]}?lang=es`);
    await expect(page.getByRole('alert')).toContainText('Lo lanzado y lo dicho está a salvo en el servidor.');
    await expect(page.getByText('Se carga sola de nuevo en medio minuto.')).toHaveCount(name === 'wall' ? 1 : 0);
    await expect(page.locator('html')).toHaveAttribute('lang', 'es');
    await expectAccessible(page, `${name} that failed`);
    await expectWordsApart(page, name);
  }
  await page.getByRole('link', { name: 'A todos los montículos' }).click();
  await expect(page).toHaveURL(`${server.address}/`);
  await page.clock.install();
  await page.goto(`${server.address}/wall/north-1`);
  await expect(page.getByRole('alert')).toBeVisible();
  await Promise.all([page.waitForEvent('load'), page.clock.runFor(30_000)]);
});

test('the longest names of a mound and an athlete stay within the sides of a phone, in one piece, on every screen', async ({ server, page }) => {
  const mound = 'm'.repeat(64);
  const [coach, device] = [await connectCoach(server, mound), await connectDevice(server, { mound })];
  await changeupIsNext(coach, device, { session: 's-1', athlete: { ...ATHLETE, name: 'Maximiliana-Konstantinopolitanskaya Featherstonehaugh-Vant' } });
  await device.throws(6, easyFrame(WORKED_THROWS[3]!));
  keepBeating(device);
  await page.setViewportSize({ width: 390, height: 844 });
  const refused = (['bench', 'glance', 'plan'] as const).map((name) => `/${name}/${mound}m`);
  for (const path of ['/', `/wall/${mound}+north-1`, ...refused, ...Object.values(SCREENS).map((path) => path.replace('north-1', mound))]) {
    await open(page, `${server.address}${path}?lang=es`);
    await expect(page.locator('#screen')).toContainText(/m{64}|Maximiliana/);
    await expect(page.locator('[data-standing="connecting"]')).toHaveCount(0);
    await expectWordsApart(page, path);
    expect(await page.evaluate(() => document.documentElement.scrollWidth), path).toBe(390);
  }
  // On a Wall of several, which does not scroll, they are cut: beside them the next mound begins.
  await page.setViewportSize({ width: 1920, height: 1080 });
  await open(page, `${server.address}/wall/${mound}+north-1`);
  await expect(page.locator('.wall-mound')).toBeVisible();
  const [name, tile] = await Promise.all(['.wall-mound', '.tile'].map(async (part) => (await page.locator(part).first().boundingBox())!));
  expect(name!.x + name!.width).toBeLessThan(tile!.x + tile!.width);
  coach.close();
  await device.close();
});

test('two mounds stand one below the other on a phone, with their words apart', async ({ server, coach, device, page }) => {
  await changeupIsNext(coach, device);
  await device.throws(6, easyFrame(WORKED_THROWS[0]!));
  await page.setViewportSize({ width: 390, height: 844 });
  await open(page, `${server.address}/wall/north-1+cage-9`);
  await expect(page.locator('.wall-count')).toContainText('6 throws');
  await expectWordsApart(page);
  const [first, second] = await Promise.all([0, 1].map(async (tile) => (await page.locator('.tile').nth(tile).boundingBox())!));
  expect(second!.y).toBeGreaterThanOrEqual(first!.y + first!.height);
});

test('a session of 200 throws passes the accessibility check on the screens that show them', inProve(), async ({ server, coach, device, page }) => {
  await changeupIsNext(coach, device, { session: 's-1' });
  for (let sequence = 6; sequence <= 200; sequence += 1) await device.throws(sequence, easyFrame(WORKED_THROWS[sequence % WORKED_THROWS.length]!));
  for (const name of ['wall', 'bench', 'recording', 'trials', 'report'] as const) {
    await open(page, `${server.address}${SCREENS[name]}`);
    await expect(page.locator('[data-standing="connecting"]')).toHaveCount(0);
    await expectAccessible(page, `${name} with 200 throws`);
  }
});

interface Shift {
  readonly value: number;
  /** What moved. */
  readonly of: readonly string[];
}
type WithShifts = typeof globalThis & { shifts: Shift[] };

/** How much of the page has moved under the eyes of who read it, as the Layout Instability specification counts it (W3C), and what did. */
const shifted = (page: Page): Promise<Shift> => page.evaluate(() => {
  const { shifts } = globalThis as WithShifts;
  return { value: shifts.reduce((sum, { value }) => sum + value, 0), of: [...new Set(shifts.flatMap(({ of }) => of))] };
});

/** Runs in the page: keeps what shifts. */
function noteShifts(): void {
  const shifts: Shift[] = [];
  Object.assign(globalThis, { shifts });
  new PerformanceObserver((list) => {
    for (const { value, sources } of list.getEntries() as (PerformanceEntry & { value: number; sources: { node?: Node }[] })[]) {
      shifts.push({ value, of: sources.map(({ node }) => (node instanceof Element ? `${node.tagName}.${node.getAttribute('class')}` : node?.parentElement?.className ?? 'gone')) });
    }
  }).observe({ type: 'layout-shift', buffered: true });
}

const [WIDE, TABLET, PHONE] = [{ width: 1280, height: 800 }, { width: 820, height: 1180 }, { width: 390, height: 844 }];
const READ = {
  wall: [SCREENS.wall, WIDE], several: ['/wall/north-1+south-2', WIDE], glance: [SCREENS.glance, PHONE], plan: [SCREENS.plan, WIDE], recording: [SCREENS.recording, WIDE], trials: [SCREENS.trials, WIDE], report: [SCREENS.report, WIDE],
  bench: [SCREENS.bench, WIDE], tablet: [SCREENS.bench, TABLET], phone: [SCREENS.bench, PHONE],
} as const;

test('nothing moves under the eyes of a reader while throws arrive', async ({ server, coach, device, browser }) => {
  await changeupIsNext(coach, device, { session: 's-1' });
  await device.throws(6, easyFrame(WORKED_THROWS[0]!));
  keepBeating(device);
  const pages = new Map<string, Page>();
  for (const [name, [path, viewport]] of Object.entries(READ)) {
    // A window of its own, so that each is in sight all the time.
    const context = await browser.newContext({ viewport });
    await context.addInitScript(noteShifts);
    const page = await context.newPage();
    await open(page, server.address + path);
    await expect(page.locator('[data-standing="connecting"]')).toHaveCount(0);
    // All that comes with the first view is there, its letters too, and has been painted.
    await drawn(page);
    await page.evaluate(() => (globalThis as WithShifts).shifts.splice(0));
    pages.set(name, page);
  }
  const benches = [pages.get('bench')!, pages.get('tablet')!, pages.get('phone')!];
  const next = (sequence: number) => device.throws(sequence, easyFrame(sequence === 10 ? FASTBALL : WORKED_THROWS[sequence % WORKED_THROWS.length]!));
  // The fifteenth throw brings the question about the arm.
  for (let sequence = 7; sequence <= 16; sequence += 1) {
    await next(sequence);
    for (const bench of benches) {
      await expect(bench.locator('.throw-line')).toHaveCount(sequence);
      // Nobody throws again before the lines have glided into place.
      await bench.evaluate(() => Promise.all(document.getAnimations().map(({ finished }) => finished)));
    }
  }
  for (const bench of benches) {
    await expect(bench.getByRole('group', { name: 'Ask how the arm feels' }).getByRole('button', { name: 'Nothing to report' })).toBeVisible();
    await bench.locator('.throw-line').first().hover();
    await bench.mouse.down();
  }
  // In quick succession under a finger: what a device had kept while it was cut off.
  for (let sequence = 17; sequence <= 24; sequence += 1) await next(sequence);
  for (const bench of benches) await expect(bench.locator('.throw-line')).toHaveCount(24);
  await expect(pages.get('wall')!.locator('.wall-count')).toContainText('24 throws');
  const moved: (Shift & { name: string })[] = [];
  for (const [name, page] of pages) {
    await drawn(page);
    moved.push({ name, ...(await shifted(page)) });
    if (benches.includes(page)) {
      await page.mouse.up();
      await expect(page.getByRole('checkbox', { checked: true })).toHaveAccessibleName('Select throw 16');
    }
    await page.context().close();
  }
  expect(moved.filter(({ value }) => value >= 0.01)).toEqual([]);
});

test('an unknown address leads on, and language and units that were asked for once hold from screen to screen', async ({ server, coach, page }) => {
  await coach.say(opening('s-1'));
  await page.goto(`${server.address}/wall?lang=es&units=metric`);
  await expect(page.locator('html')).toHaveAttribute('lang', 'es');
  await expect(page.locator('h1')).toHaveText('No hay pantalla en /wall.');
  await expect(page.locator('.start-hint')).toContainText('/wall/north-1');
  await page.getByRole('link', { name: 'Banca' }).click();
  await expect(page).toHaveURL(`${server.address}/bench/north-1`);
  await expect(page.locator('html')).toHaveAttribute('lang', 'es');
  await page.goto(server.address);
  await expect(page.getByLabel('Unidades')).toHaveValue('metric');
  await page.getByLabel('Idioma').selectOption('English');
  await expect(page.locator('h1')).toContainText('How far from your fastball');
  await page.getByRole('link', { name: 'Glance' }).click();
  await expect(page.locator('html')).toHaveAttribute('lang', 'en');
  await page.goto(server.address);
  await page.getByLabel('Language').selectOption('as the athlete has it');
  await page.reload();
  await expect(page.getByLabel('Language')).toHaveValue('');
});
