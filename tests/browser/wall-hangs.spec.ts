import { cpSync, readdirSync, readFileSync, renameSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, type Page } from '@playwright/test';
import { inchesToM } from '../../core/units/convert.ts';
import { CIRCLE, easyFrame, FASTBALL, WORKED_THROWS } from './by-hand.ts';
import { targetIsSet } from './changeup-next.ts';
import { ATHLETE, connectCoach, opening } from './coach.ts';
import { connectDevice, counted, keepBeating, type TestDevice } from './device.ts';
import { expectAccessible, expectWordsApart } from './fits.ts';
import { readTexts } from './reading.ts';
import { startProcess, temporaryFolder, type TestServer } from './server.ts';
import { test } from './with-server.ts';

/** What one mound has been through: an athlete, a fastball, a target and the changeups of the worked examples. */
async function bullpenOn(server: TestServer, mound: string, language: 'en' | 'es'): Promise<TestDevice> {
  const [coach, device] = [await connectCoach(server, mound), await connectDevice(server, { mound, device: `eye-${mound}` })];
  const session = `s-${mound}`;
  await coach.say(opening(session, { ...ATHLETE, id: `of-${mound}`, name: language === 'es' ? 'Ignacio Belmarez' : 'Theodora Vanterpool', language, units: language === 'es' ? 'metric' : 'imperial' }));
  await coach.say({ kind: 'intent-set', session, intent: 'four-seam' });
  for (let sequence = 1; sequence <= 5; sequence += 1) await device.throws(sequence, easyFrame(FASTBALL));
  await coach.say({ kind: 'zone-set', session, reason: null, speedBand: null, zone: CIRCLE });
  await coach.say({ kind: 'intent-set', session, intent: 'changeup' });
  for (const [index, thrown] of WORKED_THROWS.slice(0, 4).entries()) await device.throws(6 + index, easyFrame(thrown));
  coach.close();
  keepBeating(device);
  return device;
}

/** Minutes of arc of a capital so high, measured down to whole pixels of a screen of 1080 lines, on a screen of a diagonal seen from a distance; by the geometry of small angles. */
function arcMinutes(capitalPx: number, { width, height }: { width: number; height: number }, diagonalIn = 55, distanceM = 6): number {
  return (((capitalPx + Math.max(1, height / 1080)) * inchesToM(diagonalIn)) / Math.hypot(width, height) / distanceM) * (180 / Math.PI) * 60;
}

const scrolls = (page: Page): Promise<boolean> => page.evaluate(() => document.documentElement.scrollHeight > innerHeight || document.documentElement.scrollWidth > innerWidth);

test('the last throw is read from where the screen is read, at every size and for one mound, two and four', async ({ server, page }) => {
  const devices = await Promise.all([bullpenOn(server, 'north-1', 'en'), bullpenOn(server, 'south-2', 'es')]);
  const rows = [
    ['/wall/north-1?kiosk', 1920, 1080], ['/wall/south-2?kiosk', 3840, 2160], ['/wall/north-1?kiosk', 1280, 720], ['/wall/south-2?kiosk&theme=light', 1024, 768],
    ['/wall/north-1+south-2?kiosk', 1920, 1080], ['/wall/north-1+south-2+east-3+west-4?kiosk', 3840, 2160],
  ] as const;
  for (const [address, width, height] of rows) {
    const where = `${address} at ${width} × ${height}`;
    await page.setViewportSize({ width, height });
    await page.goto(server.address + address);
    await expect(page.locator('.wall-place-words').first()).not.toBeEmpty();
    await expect(page.locator('[data-standing="connecting"]')).toHaveCount(0);
    await expectWordsApart(page, where);
    const texts = await readTexts(page);
    const lead = texts.filter(({ role }) => role.includes('wall-place-words'));
    expect(lead.length, where).toBeGreaterThan(0);
    expect(Math.min(...lead.map(({ capitalPx }) => arcMinutes(capitalPx, { width, height }))), where).toBeGreaterThanOrEqual(30);
    expect(Math.min(...texts.map(({ capitalPx }) => arcMinutes(capitalPx, { width, height }))), where).toBeGreaterThanOrEqual(12);
    expect(await scrolls(page), `${where} scrolls`).toBe(false);
  }
  await expect(page.locator('.mound-picture')).toHaveCount(4);
  await expect(page.locator('.wall-rail')).toHaveCount(2);
  expect(await page.locator('.wall-rail, .wall-windows, .wall-count').evaluateAll((all) => all.filter((element) => element.checkVisibility()).length), 'plane and last throw only').toBe(0);
  await expectAccessible(page);
  await Promise.all(devices.map((device) => device.close()));
});

test('the picture of a mound among several stays where it is while the word of its standing grows', async ({ server, page, coach, device }) => {
  await targetIsSet(coach, counted(device), { athlete: { ...ATHLETE, name: 'Ana Rivas', language: 'es' } });
  keepBeating(device);
  for (const [address, width, height] of [['/wall/north-1+south-2', 1280, 800], ['/wall/north-1+south-2+east-3+west-4', 1920, 1080]] as const) {
    await page.setViewportSize({ width, height });
    await page.goto(server.address + address);
    const tile = page.locator('.tile').first();
    const plane = (): Promise<DOMRect> => tile.locator('.separation-plane').evaluate((svg) => svg.getBoundingClientRect().toJSON() as DOMRect);
    const word = tile.locator('.standing-word');
    await expect(word).toHaveAttribute('data-standing', 'live');
    const before = await plane();
    await word.evaluate((element: HTMLElement) => {
      // As it stands when a device falls silent: the longest of these words.
      element.dataset['standing'] = 'device-silent';
      element.textContent = 'Callado desde 14:56';
    });
    await expectWordsApart(page, address);
    expect(await plane(), address).toEqual(before);
  }
});

test('size and distance are told once and kept by the screen; where they cannot be met, from how near it is read is said', async ({ server, page }) => {
  const size = { width: 1920, height: 1080 };
  await page.setViewportSize(size);
  const device = await bullpenOn(server, 'north-1', 'en');
  await page.goto(`${server.address}/wall/north-1?diagonal=75&distance=5`);
  await expect(page.locator('.wall-place-words')).toHaveText('2 in deep, arm side');
  const leadPx = async (): Promise<number> => (await readTexts(page)).find(({ role }) => role.includes('wall-place-words'))!.capitalPx;
  const told = await leadPx();
  expect(arcMinutes(told, size, 75, 5)).toBeGreaterThanOrEqual(30);
  expect(arcMinutes(told, size, 75, 5)).toBeLessThan(31.5);
  await page.goto(`${server.address}/wall/north-1`);
  await expect(page.locator('.wall-place-words')).toHaveText('2 in deep, arm side');
  expect(await leadPx()).toBe(told);
  await page.goto(`${server.address}/wall/north-1?diagonal=24&distance=12`);
  await expect(page.locator('.wall-place-words')).toHaveText('2 in deep, arm side');
  const within = Number(/within ([\d.]+) m/.exec(await page.locator('.wall-too-far').innerText())![1]);
  expect(arcMinutes(await leadPx(), size, 24, within)).toBeGreaterThanOrEqual(30);
  expect(await scrolls(page)).toBe(false);
  await device.close();
});

test('a kiosk has no control and no cursor, keeps its screen awake, and says why where the browser does not', async ({ server, page }) => {
  await page.addInitScript(() => {
    const asked: string[] = [];
    Object.assign(globalThis, { asked });
    Object.defineProperty(navigator, 'wakeLock', { configurable: true, value: { request: async (kind: string) => (asked.push(kind), { release: async () => {} }) } });
  });
  await page.goto(`${server.address}/wall/north-1?kiosk`);
  await expect(page.locator('.standing-word')).toHaveAttribute('data-standing', 'waiting');
  await expect(page.locator('button')).toHaveCount(0);
  expect(await page.locator('h1').evaluate((element) => getComputedStyle(element).cursor)).toBe('none');
  expect(await page.evaluate(() => (globalThis as unknown as { asked: string[] }).asked)).toEqual(['screen']);
  await expect(page.locator('.wall-note')).toHaveCount(0);
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await expect.poll(() => page.evaluate(() => (globalThis as unknown as { asked: string[] }).asked.length)).toBe(2);

  await page.addInitScript(() => Object.defineProperty(navigator, 'wakeLock', { value: { request: () => Promise.reject(new Error('no')) } }));
  await page.reload();
  await expect(page.locator('.wall-note')).toContainText('the browser refused');
  await page.goto(`${server.address}/wall/north-1`);
  await expect(page.locator('button').first()).toBeAttached();
  await expect(page.locator('.wall-note')).toHaveCount(0);
});

test('a Wall rests where nothing was said for long, tells then how it stands, and wakes with the next throw', async ({ server, page, device, coach }) => {
  keepBeating(device);
  await coach.say(opening('s1'));
  await page.goto(`${server.address}/wall/north-1?kiosk&rest=0.01`);
  await expect(page.locator('.wall-resting')).toContainText(/Resting since \d+:\d\d/);
  await expect(page.locator('.wall-resting')).toContainText('north-1 Live');
  await expect(page.locator('.mound-picture')).toBeHidden();
  expect(await page.locator('.wall-resting').evaluate((face) => getComputedStyle(face).backgroundColor)).toBe('rgb(0, 0, 0)');
  await expectAccessible(page);
  const woken = page.locator('.mound-picture').waitFor({ state: 'visible' });
  await device.throws(1, easyFrame(FASTBALL));
  await woken;
});

test('each throw puts the rest of a Wall off', async ({ server, page, device, coach }) => {
  await coach.say(opening('s1'));
  await page.clock.install();
  // Rests after a minute.
  await page.goto(`${server.address}/wall/north-1?kiosk&rest=1`);
  await page.locator('.wall-forming').waitFor();
  for (let thrown = 1; thrown <= 4; thrown += 1) {
    await device.throws(thrown, easyFrame(FASTBALL));
    await expect(page.locator('.wall-count')).toHaveAttribute('data-all', String(thrown));
    await page.clock.runFor(40_000);
    await expect(page.locator('.wall-resting')).toHaveCount(0);
  }
  await page.clock.runFor(40_000);
  await expect(page.locator('.wall-resting')).toContainText('Resting since');
});

test('a Wall shifts its picture by less than its margin, unseen, and not at all for who wants no motion', async ({ server, browser }) => {
  const shifted = async (reducedMotion: 'reduce' | 'no-preference', steps: number): Promise<{ x: number; y: number }[]> => {
    const page = await browser.newPage({ viewport: { width: 1920, height: 1080 }, reducedMotion });
    await page.clock.install();
    await page.goto(`${server.address}/wall/north-1?rest=0`);
    // The first view has come: what stood for it is gone.
    await expect(page.locator('.standing-word')).toHaveAttribute('data-standing', 'waiting');
    const places: { x: number; y: number }[] = [];
    for (let step = 0; step < steps; step += 1) {
      places.push(await page.locator('.mound-picture').evaluate((picture) => ({ x: picture.getBoundingClientRect().x, y: picture.getBoundingClientRect().y })));
      await page.clock.runFor(30_000);
    }
    await page.close();
    return places;
  };
  const moved = await shifted('no-preference', 34);
  const [xs, ys] = [moved.map(({ x }) => x), moved.map(({ y }) => y)];
  expect(new Set(xs.map(Math.round)).size).toBeGreaterThan(4);
  expect(new Set(ys.map(Math.round)).size).toBeGreaterThan(4);
  expect(Math.max(...xs.map(Math.abs), ...ys.map(Math.abs))).toBeLessThan(10);
  moved.slice(1).forEach(({ x, y }, index) => expect(Math.hypot(x - xs[index]!, y - ys[index]!)).toBeLessThan(2.1));
  expect(new Set((await shifted('reduce', 4)).map(({ x, y }) => `${x} ${y}`)).size).toBe(1);
});

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** A copy of the built program and screens, so that one test can serve a newer build from the same place. */
function ownBuild(folder: string): { readonly program: string; renew(): void } {
  cpSync(path.join(ROOT, 'dist'), path.join(folder, 'dist'), { recursive: true });
  cpSync(path.join(ROOT, 'package.json'), path.join(folder, 'package.json'));
  symlinkSync(path.join(ROOT, 'node_modules'), path.join(folder, 'node_modules'));
  const page = path.join(folder, 'dist', 'web', 'index.html');
  const assets = path.join(folder, 'dist', 'web', 'assets');
  return {
    program: path.join(folder, 'dist', 'node', 'command', 'main.js'),
    /** The same program under other names, as another build has: what carries a hash in its name is kept by browsers for ever. */
    renew() {
      const programs = readdirSync(assets).filter((name) => name.endsWith('.js'));
      const renamed = (text: string): string => programs.reduce((now, name) => now.replaceAll(name, `newer-${name}`), text);
      for (const file of [page, ...programs.map((name) => path.join(assets, name))]) writeFileSync(file, renamed(readFileSync(file, 'utf8')));
      for (const name of programs) renameSync(path.join(assets, name), path.join(assets, `newer-${name}`));
    },
  };
}

test('through a night: the network goes and comes, the server is killed and updated, and the Wall loads the new build once', async ({ page }) => {
  const { folder, remove } = temporaryFolder();
  const build = ownBuild(folder);
  const data = path.join(folder, 'data');
  let server = await startProcess(data, 0, [], build.program);
  const port = Number(new URL(server.address).port);
  try {
    const device = await bullpenOn(server, 'north-1', 'en');
    let loads = 0;
    page.on('load', () => (loads += 1));
    await page.goto(`${server.address}/wall/north-1?kiosk`);
    await expect(page.locator('.wall-place-words')).toHaveText('2 in deep, arm side');

    // The server is gone: the last picture stays and says since when.
    await server.kill();
    await device.closed;
    await expect(page.locator('.standing-word')).toHaveAttribute('data-standing', 'server-silent', { timeout: 15_000 });
    await expect(page.locator('.wall-place-words')).toHaveText('2 in deep, arm side');
    await expect(page.locator('.standing-frame')).toHaveAttribute('data-dimmed', 'yes');
    expect(loads).toBe(1);

    // It comes back with the same build: nothing is loaded.
    server = await startProcess(data, port, [], build.program);
    await expect(page.locator('[data-dimmed="no"]')).toBeVisible({ timeout: 15_000 });
    expect(loads).toBe(1);

    // It comes back with another one: loaded once, with the session as it stood, and never again.
    await server.stop();
    build.renew();
    server = await startProcess(data, port, [], build.program);
    await expect.poll(() => loads, { timeout: 20_000 }).toBe(2);
    await expect(page.locator('.wall-place-words')).toHaveText('2 in deep, arm side');
    expect(await page.locator('script[type="module"]').getAttribute('src')).toContain('newer-');
    const again = await connectDevice(server, { device: 'eye-north-1' });
    await again.throws(10, easyFrame(WORKED_THROWS[0]!));
    await expect(page.locator('.wall-place-words')).toHaveText('On target');
    // Two more pulses name the new build.
    await page.context().setOffline(true);
    await expect(page.locator('.standing-word')).toHaveAttribute('data-standing', 'server-silent', { timeout: 15_000 });
    await page.context().setOffline(false);
    await expect(page.locator('[data-dimmed="no"]')).toBeVisible({ timeout: 15_000 });
    expect(loads).toBe(2);
    await again.close();
  } finally {
    await server.stop();
    remove();
  }
});
