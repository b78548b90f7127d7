import { expect, type Page } from '@playwright/test';
import decodeQr from 'qr/decode.js';
import { changeupIsNext } from './changeup-next.ts';
import { expectAccessible } from './fits.ts';
import { test } from './with-server.ts';

test.use({ viewport: { width: 1920, height: 1080 } });

/** What a camera reads: the code as it is painted, through a reader that had no part in drawing it. */
async function scanned(page: Page): Promise<string> {
  const { width, height, data } = await page.locator('.code-picture').evaluate(async (svg) => {
    const side = 330;
    const drawn = svg.cloneNode(true) as SVGSVGElement;
    for (const [name, value] of Object.entries({ xmlns: 'http://www.w3.org/2000/svg', width: side, height: side })) drawn.setAttribute(name, String(value));
    const image = new Image();
    image.src = `data:image/svg+xml,${encodeURIComponent(drawn.outerHTML)}`;
    await image.decode();
    const { width: w, height: h } = Object.assign(document.createElement('canvas'), { width: side, height: side });
    const paper = Object.assign(document.createElement('canvas'), { width: w, height: h }).getContext('2d')!;
    paper.fillStyle = getComputedStyle(svg).backgroundColor;
    paper.fillRect(0, 0, w, h);
    paper.drawImage(image, 0, 0);
    return { width: w, height: h, data: [...paper.getImageData(0, 0, w, h).data] };
  });
  return decodeQr({ width, height, data: Uint8Array.from(data) });
}

test('the coach asks for a code on the Wall, a phone opens that session by it, and the Wall says so and puts it away', async ({ page, server, coach, device, browser }) => {
  await changeupIsNext(coach, device);
  await page.goto(`${server.address}/wall/north-1`);
  // Who may ask for a code is known once the server has said who sits here.
  await page.getByRole('button', { name: 'Show Glance code' }).waitFor({ state: 'attached' });
  await page.keyboard.press('q');
  const dialog = page.getByRole('dialog', { name: 'Glance for Wren Abelow' });
  const picture = dialog.getByRole('img', { name: 'QR code that opens Glance for Wren Abelow' });
  await expect(picture).toBeVisible();
  await expect(dialog).toContainText(/Opens once, on one phone, until \d+:\d\d\. It shows this session alone and ends with it\./);
  await expect(dialog).toContainText('Only this machine reaches the server now');
  // A fifth of a metre on a screen of 55 in, which is 0.685 m high.
  expect((await picture.boundingBox())!.height / 1080 * 0.685).toBeGreaterThan(0.2);
  await expectAccessible(page);
  const address = await scanned(page);
  expect(address).toMatch(new RegExp(`^${server.address}/open#`));
  const phone = await browser.newPage({ viewport: { width: 390, height: 844 } });
  // Said for a few seconds, in which a slow phone may still be opening.
  await Promise.all([expect(dialog).toContainText('Opened on a phone.'), phone.goto(address)]);
  await expect(phone).toHaveURL(`${server.address}/glance/north-1?session=s1`);
  await expect(phone.locator('h1')).toHaveText('Wren Abelow');
  await expect(dialog).toHaveCount(0);
  await phone.goto(address);
  await expect(phone.locator('main')).toContainText('This code was used already or is over.');
  await phone.close();
});

test('the code is put away with the keyboard, and with the session', async ({ page, server, coach, device }) => {
  await changeupIsNext(coach, device);
  await page.goto(`${server.address}/wall/north-1?lang=es`);
  await page.getByRole('button', { name: 'Mostrar código de Vistazo' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toContainText('Apunta la cámara del teléfono.');
  await page.keyboard.press('Escape');
  // Closed is one thing, put away the next: only then does the key ask anew.
  await expect(page.locator('.code-dialog')).toHaveCount(0);
  await page.keyboard.press('q');
  await expect(page.locator('.code-picture')).toBeVisible();
  await coach.say({ kind: 'session-closed', session: 's1' });
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Mostrar código de Vistazo' })).toHaveCount(0);
});
