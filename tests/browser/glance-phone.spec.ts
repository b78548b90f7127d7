import { expect, type Page } from '@playwright/test';
import { cpSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { easyFrame, WORKED_THROWS } from './by-hand.ts';
import { changeupIsNext } from './changeup-next.ts';
import { ATHLETE, opening } from './coach.ts';
import { keepBeating } from './device.ts';
import { expectAccessible, expectWordsApart } from './fits.ts';
import { startProcess, temporaryFolder } from './server.ts';
import { test } from './with-server.ts';

test.use({ viewport: { width: 390, height: 844 } });

const [ON_TARGET, SHORT] = WORKED_THROWS.map(easyFrame);
const YOUTH = { ...ATHLETE, birthYear: new Date().getFullYear() - 15 };
const BUILT = fileURLToPath(new URL('../../dist', import.meta.url));
/** The name of a part of Glance in a build. */
const PART = /\b(glance-[\w-]{8})\.js/g;
const lead = (page: Page) => page.locator('.glance-lead');
const portOf = (address: string): number => Number(new URL(address).port);

/** The phone has the page and all its parts. */
const pageIsKept = (page: Page): Promise<unknown> => page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state === 'activated' && navigator.serviceWorker.controller);

/** Programs that this page has loaded and the phone does not keep. */
const notKept = (page: Page): Promise<string[]> => page.evaluate(async () => {
  const loaded = performance.getEntriesByType('resource').map(({ name }) => name).filter((name) => name.endsWith('.js'));
  const kept = await Promise.all(loaded.map((name) => caches.match(name)));
  return loaded.filter((_, index) => kept[index] === undefined);
});

/** The same program with screens of another build: the parts of Glance have other names there, as they have whenever they change. */
function nextBuild(folder: string): string {
  for (const part of ['node', 'web']) cpSync(path.join(BUILT, part), path.join(folder, 'dist', part), { recursive: true, filter: (file) => !file.endsWith('.map') });
  for (const file of ['package.json', 'node_modules']) symlinkSync(path.join(BUILT, '..', file), path.join(folder, file));
  const web = path.join(folder, 'dist', 'web');
  for (const file of readdirSync(web, { recursive: true, encoding: 'utf8' }).filter((name) => /\.(?:js|html)$/.test(name))) {
    const text = readFileSync(path.join(web, file), 'utf8').replace(PART, '$1-next.js').replace(/glance-\$\{"\w+"\}/, 'glance-next');
    rmSync(path.join(web, file));
    writeFileSync(path.join(web, file.replace(PART, '$1-next.js')), text.replace('</body>', '<!-- next build --></body>'));
  }
  return path.join(folder, 'dist', 'node', 'command', 'main.js');
}

test('without a network a phone opens its last state, dimmed and said to be old, never that of another session, and goes on by itself', async ({ page, server, coach, device }) => {
  await coach.say(opening('s2', { ...ATHLETE, id: 'ben', name: 'Ben Ortiz' }));
  await changeupIsNext(coach, device);
  await page.goto(`${server.address}/glance/north-1?session=s1`);
  await device.throws(6, SHORT!);
  await expect(lead(page)).toHaveText('2 in short');
  await expect.poll(() => pageIsKept(page)).toBeTruthy();
  await expect(page.locator('.glance-picture g.mark')).toHaveCount(1);
  expect(await notKept(page)).toEqual([]);
  const devtools = await page.context().newCDPSession(page);
  // A test's browser keeps nothing behind, and says that this alone is in the way.
  expect((await devtools.send('Page.getInstallabilityErrors')).installabilityErrors.map(({ errorId }) => errorId)).toEqual(['in-incognito']);
  expect((await devtools.send('Page.getAppManifest')).errors).toEqual([]);
  await server.stop();
  await page.reload();
  await expect(page.getByRole('status').first()).toHaveText(/^Stale since \d+:\d+:\d+$/);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Wren Abelow');
  await expect(lead(page)).toHaveText('2 in short');
  await expect(page.locator('.glance-picture g.mark')).toHaveCount(1);
  await expect(page.locator('.standing-frame')).toHaveAttribute('data-dimmed', 'yes');
  await expectAccessible(page);
  await page.goto(`${server.address}/glance/`);
  await expect(page).toHaveURL(/\/glance\/north-1\?session=s1$/);
  await expect(lead(page)).toHaveText('2 in short');

  const { folder, remove } = temporaryFolder();
  const again = await startProcess(server.dataFolder, portOf(server.address), [], nextBuild(folder));
  await expect(page.getByRole('status').first()).toHaveText('No device heard yet');
  // It cannot be read while it loads itself anew.
  await expect.poll(() => page.content().catch(() => '')).toContain('next build');
  await expect(lead(page)).toHaveText('2 in short');
  expect(await page.evaluate(() => caches.keys())).toEqual(['glance-next']);
  await again.stop();
  remove();
  await page.goto(`${server.address}/glance/north-1?session=s2`);
  await expect(page.getByRole('status').first()).toHaveText('Connecting');
  await expect(page.locator('main')).not.toContainText(/Wren|Ben|short/);
});

test('what a phone keeps goes with the session', async ({ page, server, coach, device }) => {
  await changeupIsNext(coach, device);
  await page.goto(`${server.address}/glance/north-1?session=s1`);
  await expect.poll(() => page.evaluate(() => localStorage.length)).toBe(1);
  await coach.say({ kind: 'session-closed', session: 's1' });
  await expect(page.getByRole('status')).toContainText('Closed');
  await expect.poll(() => page.evaluate(() => localStorage.length)).toBe(0);
});

test('a phone stays awake while a session is open and Glance is in front, and not a minute longer', async ({ page, server, coach, device }) => {
  await page.addInitScript(() => {
    const held: string[] = [];
    Object.assign(globalThis, { held });
    Object.defineProperty(navigator, 'wakeLock', { value: { request: async (kind: string) => (held.push(kind), { release: async () => void held.pop() }) } });
  });
  const held = () => page.evaluate(() => (globalThis as unknown as { held: string[] }).held);
  await page.goto(`${server.address}/glance/north-1`);
  await expect(lead(page)).toHaveText('Waiting for a session');
  expect(await held()).toEqual([]);
  await changeupIsNext(coach, device);
  await expect.poll(held).toEqual(['screen']);
  await page.locator('.glance-phone summary').click();
  await expect(page.locator('.glance-phone [data-has="yes"] dt')).toHaveText(['Stays awake', 'Opens without a network', 'On the home screen', 'Reads aloud']);
  await expectAccessible(page);
  await coach.say({ kind: 'session-closed', session: 's1' });
  await expect.poll(held).toEqual([]);
});

test('Glance reads aloud by a tap, in the language of the athlete, what it shows and nothing that is withheld', async ({ page, server, coach, device }) => {
  await page.addInitScript(() => {
    const said: string[] = [];
    const voices = [{ lang: 'es-MX', name: 'Clara' }, { lang: 'en-GB', name: 'Alma' }];
    Object.assign(globalThis, { said, SpeechSynthesisUtterance: function Utterance(this: { text: string }, text: string) { this.text = text; } });
    Object.defineProperty(globalThis, 'speechSynthesis', { value: Object.assign(new EventTarget(), {
      getVoices: () => voices, cancel: () => {},
      speak: ({ text, lang, voice }: { text: string; lang: string; voice: { name: string } }) => void said.push(`${voice.name}, ${lang}: ${text}`),
    }) });
  });
  const said = () => page.evaluate(() => (globalThis as unknown as { said: string[] }).said);
  await changeupIsNext(coach, device, { athlete: YOUTH });
  await device.throws(6, SHORT!);
  // Nothing is read of a device that has fallen silent.
  keepBeating(device);
  await page.goto(`${server.address}/glance/north-1`);
  await expect(lead(page)).toHaveText('2 in short');
  await expect(page.locator('.standing-word')).toHaveAttribute('data-standing', 'live');
  expect(await said()).toEqual([]);
  const button = page.getByRole('button', { name: 'Read aloud' });
  await button.click();
  await expect(button).toHaveAttribute('aria-pressed', 'true');
  const short = 'Alma, en-US: 2 inches short. Against your fastball: 3 inches down, 4 inches arm side.';
  expect(await said()).toEqual([short]);
  await device.throws(7, SHORT!);
  await expect.poll(said).toEqual([short, short]);
  await page.getByRole('button', { name: 'Tired' }).click();
  await expect(page.locator('.glance-stored').first()).toHaveText(/^Stored \d+:\d+: tired\. Tap again to correct it\.$/);
  await coach.say({ kind: 'feedback-set', session: 's1', mode: { kind: 'outside-band' }, askFirst: false });
  await device.throws(8, ON_TARGET!);
  await expect(lead(page)).toHaveText('Quiet');
  expect(await said()).toEqual([short, short]);
  await button.click();
  await device.throws(9, SHORT!);
  await expect(lead(page)).toHaveText('2 in short');
  expect(await said()).toEqual([short, short]);
});

test('every answer is one tap, said back when it is stored, and corrected by another', async ({ page, server, coach, device }) => {
  await changeupIsNext(coach, device);
  await page.goto(`${server.address}/glance/north-1?lang=es`);
  const arm = page.getByRole('group', { name: '¿Cómo sientes el brazo?' });
  const grip = page.getByRole('group', { name: '¿Y este agarre?' });
  await arm.getByRole('button', { name: 'Molesto' }).click();
  await expect(arm.getByRole('status')).toHaveText(/^Guardado \d+:\d+: molestia\. Toca otra vez para corregir\.$/);
  await arm.getByRole('button', { name: 'Cansado' }).click();
  await expect(arm.getByRole('status')).toContainText(': cansancio.');
  await grip.getByRole('button', { name: 'Incómodo' }).click();
  await expect(grip.getByRole('status')).toContainText(': incómodo.');
  await grip.getByRole('button', { name: 'Cómodo', exact: true }).click();
  await expect(grip.getByRole('status')).toContainText(': cómodo.');
  expect((await coach.reaches(13)).session).toMatchObject({ comfort: { comfortable: true }, armTalk: { lastReport: { said: 'tired', from: 'glance' } } });
  await expectAccessible(page);
});

test('a throw fits every screen without scrolling, with room for a thumb on all that is tapped', async ({ page, server, coach, device }) => {
  await changeupIsNext(coach, device);
  await device.throws(6, easyFrame(WORKED_THROWS[3]!));
  await page.goto(`${server.address}/glance/north-1`);
  for (const [width, height] of [[360, 640], [844, 390], [768, 1024], [1920, 1080]] as const) {
    await page.setViewportSize({ width, height });
    await page.locator('.glance-picture g.mark').waitFor();
    await expectWordsApart(page, `${width}×${height}`);
    expect(await page.evaluate(() => [document.documentElement.scrollWidth - innerWidth, document.documentElement.scrollHeight - innerHeight]), `${width}×${height}`).toEqual([0, 0]);
    const small = await page.locator('.glance :is(button, summary)').evaluateAll((all) => all.filter((one) => one.getBoundingClientRect().height < 43.5 || one.getBoundingClientRect().width < 43.5).map(({ outerHTML }) => outerHTML));
    expect(small, `${width}×${height}`).toEqual([]);
  }
  // Asked first, nine places to tap are there as well, in the longer of the two languages too.
  await coach.say({ kind: 'feedback-set', session: 's1', mode: { kind: 'every-throw' }, askFirst: true });
  await device.throws(7, easyFrame(WORKED_THROWS[2]!));
  await page.setViewportSize({ width: 360, height: 640 });
  for (const language of ['en', 'es']) {
    await page.goto(`${server.address}/glance/north-1?lang=${language}`);
    await page.locator('.glance-nine button').first().waitFor();
    await expectWordsApart(page, `asked first, ${language}`);
    expect(await page.evaluate(() => [document.documentElement.scrollWidth - innerWidth, document.documentElement.scrollHeight - innerHeight]), `asked first, ${language}`).toEqual([0, 0]);
  }
});
