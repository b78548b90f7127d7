import { expect, type Browser, type BrowserContext, type Page } from '@playwright/test';
import { lookup } from 'node:dns/promises';
import { writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import path from 'node:path';
import { easyFrame, FASTBALL } from './by-hand.ts';
import { ATHLETE, connectCoach, opening } from './coach.ts';
import { connectDevice } from './device.ts';
import { expectAccessible } from './fits.ts';
import { startProcess, temporaryFolder, type TestServer } from './server.ts';
import { test } from './with-server.ts';

const PASSPHRASE = 'four quiet words at dusk';
const BEN = { ...ATHLETE, id: 'ben', name: 'Ben Ortiz' };
const lead = (page: Page) => page.locator('.glance-lead');

/** A server for the whole building, under the name of this machine where that is known here, otherwise under an address. */
async function openServer(more: readonly string[]): Promise<TestServer & { readonly outside: string; remove(): void }> {
  const { folder, remove } = temporaryFolder();
  const passphraseFile = path.join(folder, 'passphrase');
  writeFileSync(passphraseFile, `${PASSPHRASE}\n`);
  const server = await startProcess(folder, 0, ['--host', '0.0.0.0', '--passphrase-file', passphraseFile, ...more]);
  const name = await lookup(hostname()).then(() => hostname(), () => '127.0.0.1');
  return { ...server, remove, outside: `${more.includes('--tls') ? 'https' : 'http'}://${name}:${new URL(server.address).port}` };
}

function phone(browser: Browser): Promise<BrowserContext> {
  return browser.newContext({ ignoreHTTPSErrors: true, viewport: { width: 390, height: 844 } });
}

/** Signs in at the door of Bench, as a coach does, and stays there. */
async function signIn(page: Page, outside: string): Promise<void> {
  await page.goto(`${outside}/bench/north-1`);
  await expect(page).toHaveURL(`${outside}/sign-in?to=%2Fbench%2Fnorth-1`);
  await page.getByLabel('Your name').fill('Ines Marrow');
  await page.getByLabel('Passphrase of this server').fill('four quiet words at dawn');
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(page.getByRole('alert')).toHaveText('That is not the passphrase of this server.');
  await page.getByLabel('Passphrase of this server').fill(PASSPHRASE);
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(`${outside}/bench/north-1`);
}

for (const [over, options] of [['HTTP', []], ['TLS', ['--tls']]] as const) {
  test(`over ${over}, under a name of this machine, a code opens Glance of one session on one phone, until that closes`, async ({ browser }) => {
    const server = await openServer(options);
    const { outside } = server;
    const bench = await browser.newContext({ ignoreHTTPSErrors: true });
    const atBench = await bench.newPage();
    await signIn(atBench, outside);
    const cookie = (await bench.cookies()).map(({ name, value }) => `${name.replace('__Host-', '')}=${value}`).join('; ');
    const coach = await connectCoach(server, 'north-1', null, cookie);
    await coach.say(opening('s2', BEN));
    await coach.say(opening('s1'));
    const code = async () => (await (await bench.request.post(`${outside}/api/sessions/s1/glance-code`)).json()) as { id: string; url: string };

    const { id, url } = await code();
    expect(url).toContain(`${outside}/open#`);
    const first = await phone(browser);
    const page = await first.newPage();
    await page.goto(url);
    await expect(page).toHaveURL(`${outside}/glance/north-1?session=s1`);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(ATHLETE.name);
    expect(await page.evaluate(() => isSecureContext)).toBe(over === 'TLS');
    // What browsers hold back over plain HTTP is said, and why; reading aloud they never hold back.
    const phoneLine = page.locator('.glance-phone summary');
    await expect(phoneLine).toHaveText(over === 'TLS' ? 'This phone' : 'This phone: 3 things missing');
    await phoneLine.click();
    await expect(page.locator('.glance-phone [data-has="no"]')).toHaveText(over === 'TLS' ? [] : ['Stays awake', 'Opens without a network', 'On the home screen'].map((name) => `${name}no: needs an encrypted connection`));
    expect(await page.evaluate(() => document.cookie)).toBe('');
    expect(await (await bench.request.get(`${outside}/api/glance-codes/${id}`)).json()).toEqual({ state: 'used' });

    const device = await connectDevice(server);
    await coach.say({ kind: 'intent-set', session: 's1', intent: 'four-seam' });
    await device.throws(1, easyFrame(FASTBALL));
    await expect(lead(page)).toHaveText('90.0 mph');
    await page.getByRole('button', { name: 'Sore', exact: true }).click();
    expect((await coach.reaches(5)).session?.armCare.kind).toBe('soreness-reported');

    const second = await (await phone(browser)).newPage();
    await second.goto(url);
    await expect(second.getByRole('status')).toHaveText('This code was used already or is over. Ask the coach for a new one.');
    await expectAccessible(second, 'a code that was used');

    // What belongs to others stays shut, whatever address the phone asks for.
    for (const address of ['/api/sessions', '/api/sessions/s2', '/api/athletes/ben/records']) expect((await first.request.get(`${outside}${address}`)).status()).toBe(403);
    const other = await first.newPage();
    await other.goto(`${outside}/glance/north-1?session=s2`);
    await expect(other.getByRole('status')).toHaveText('This screen was refused');
    await expect(other.getByRole('heading', { level: 1 })).toHaveText('north-1');
    for (const address of ['/bench/north-1', '/playback', '/report/s1', '/']) {
      // oxlint-disable-next-line no-await-in-loop -- one page goes from address to address
      await other.goto(`${outside}${address}`);
      await expect(other).toHaveURL(`${outside}/sign-in?to=${encodeURIComponent(address)}`);
    }
    await expectAccessible(other, 'the door');

    await coach.say({ kind: 'session-closed', session: 's1' });
    await expect(page.locator('.standing-word')).toContainText('Closed');
    await page.reload();
    await expect(page).toHaveURL(/\/sign-in\?to=/);
    expect((await first.request.get(`${outside}/api/me`)).ok() && (await (await first.request.get(`${outside}/api/me`)).json())).toEqual({ kind: 'nobody' });

    coach.close();
    await device.close();
    await server.stop();
    server.remove();
  });
}

test('a link shows one mound on a screen without a keyboard, and nothing else, until the coach ends it', async ({ browser }) => {
  const server = await openServer(['--tls']);
  const { outside } = server;
  const bench = await browser.newContext({ ignoreHTTPSErrors: true });
  const door = await bench.newPage();
  await signIn(door, outside);
  await door.goto(`${outside}/let-in`);
  await door.getByLabel('Mound').fill('north-1');
  await door.getByRole('button', { name: 'Link for a Wall' }).click();
  const url = await door.locator('.door-secret').innerText();
  await expect(door.locator('.door-grants li')).toContainText(['Coach Ines Marrow', 'A Wall of north-1']);
  await expectAccessible(door, 'who is let in');
  const context = await browser.newContext({ ignoreHTTPSErrors: true, viewport: { width: 1920, height: 1080 } });
  const wall = await context.newPage();
  await wall.goto(url);
  await expect(wall).toHaveURL(`${outside}/wall/north-1?kiosk`);
  await expect(wall.getByRole('status')).toHaveText('No session');
  expect((await context.request.get(`${outside}/api/sessions`)).status()).toBe(403);
  await door.getByRole('button', { name: 'End: A Wall of north-1' }).click();
  await expect(door.locator('.door-grants li')).toHaveCount(1);
  await expect(wall.getByRole('status')).toHaveText('This screen was refused');

  // How a phone comes to trust a certificate that was made here.
  await wall.goto(`${outside}/certificate`);
  await expect(wall.locator('.door-fingerprint')).toHaveText(/^(?:[0-9A-F]{2}:){31}[0-9A-F]{2}$/);
  const file = await context.request.get(`${outside}/certificate.crt`);
  expect([file.headers()['content-type'], (await file.body())[0]]).toEqual(['application/x-x509-ca-cert', 0x30]);
  await expectAccessible(wall, 'the certificate');
  await server.stop();
  server.remove();
});

test('a coach whose sign-in has ended is led to the door and back to the same place, and signing out ends it on the server', async ({ browser }) => {
  const server = await openServer([]);
  const { outside } = server;
  const context = await browser.newContext();
  const page = await context.newPage();
  await signIn(page, outside);
  const ended = page.locator('.signed-out');
  // As it ends after twelve hours: on the server, without a word to the browser.
  const { cookies } = await context.storageState();
  await context.request.post(`${outside}/api/sign-out`);
  await context.addCookies(cookies);
  await expect(ended).toContainText('Nobody is signed in here any more.');
  await expectAccessible(page, 'a sign-in that has ended');
  await page.getByRole('link', { name: 'Sign in and come back here' }).click();
  await expect(page).toHaveURL(`${outside}/sign-in?to=%2Fbench%2Fnorth-1`);
  await page.getByLabel('Your name').fill('Ines Marrow');
  await page.getByLabel('Passphrase of this server').fill(PASSPHRASE);
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(`${outside}/bench/north-1`);
  await expect(page.locator('.standing-word')).toHaveText('No session');
  await expect(ended).toHaveCount(0);
  // Signing out on one screen ends it for the others of that browser; what was asked of them stays in the address.
  const bench = await context.newPage();
  await bench.goto(`${outside}/bench/north-1?lang=es`);
  await expect(bench.getByRole('button', { name: 'Sol' })).toBeVisible();
  await page.goto(outside);
  await expect(page.locator('.sign-out')).toContainText('Entró Ines Marrow.');
  await expectAccessible(page, 'the start page of a coach who is signed in');
  await page.getByRole('button', { name: 'Salir' }).click();
  await expect(page).toHaveURL(`${outside}/sign-in`);
  expect(await (await context.request.get(`${outside}/api/me`)).json()).toEqual({ kind: 'nobody' });
  await bench.getByRole('link', { name: 'Entrar y volver aquí' }).click();
  await expect(bench).toHaveURL(`${outside}/sign-in?to=%2Fbench%2Fnorth-1%3Flang%3Des`);
  await server.stop();
  server.remove();
});
